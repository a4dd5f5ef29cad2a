//! How fast the spindle may turn while jaws are bored.

/// What rules the speed while boring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ceiling {
    /// The surface speed wanted.
    Surface,
    /// The user's own limit with a ring in the jaws.
    Own,
    /// The chuck's plate.
    Plate,
}

/// Spindle speed, rad/s, that gives a surface speed (m/s) on a diameter (m): `omega = 2 v / D`.
///
/// ```
/// use holdround_mechanics::bore::turning_speed;
/// // 200 m/min on 50 mm: 1273 rev/min.
/// let speed = turning_speed(200.0 / 60.0, 0.05) * 30.0 / core::f64::consts::PI;
/// assert!((speed - 1273.24).abs() < 0.005);
/// ```
#[must_use]
pub fn turning_speed(surface_speed: f64, diameter: f64) -> f64 {
    2.0 * surface_speed / diameter
}

/// The least of the three speeds, rad/s, and which it is.
#[must_use]
pub fn ceiling(surface: f64, own: f64, plate: f64) -> (f64, Ceiling) {
    let mut rules = (surface, Ceiling::Surface);
    for other in [(own, Ceiling::Own), (plate, Ceiling::Plate)] {
        if other.0 < rules.0 {
            rules = other;
        }
    }
    rules
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_turning_speed_goes_down_as_the_diameter_goes_up() {
        assert_eq!([0.05, 0.1].map(|diameter| turning_speed(3.0, diameter)), [120.0, 60.0], "3 m/s, in rad/s");
    }

    #[test]
    fn the_least_speed_rules_and_says_which_it_is() {
        assert_eq!(ceiling(90.0, 95.0, 200.0), (90.0, Ceiling::Surface), "a large bore");
        assert_eq!(ceiling(190.0, 95.0, 200.0), (95.0, Ceiling::Own), "a small bore");
        assert_eq!(ceiling(190.0, 95.0, 80.0), (80.0, Ceiling::Plate), "a slow chuck");
    }
}
