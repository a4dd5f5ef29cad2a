//! Grip at rest from the cylinder and the plate, or through one point of the chuck's chart.

use super::error::{GripError, Input, fraction, not_negative, positive};
use core::f64::consts::FRAC_PI_4;

/// Which face of the piston the pressure acts on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PistonFace {
    /// The whole bore.
    Full,
    /// The ring around the rod.
    Rod,
}

/// Actuating cylinder.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cylinder {
    /// Bore, m.
    pub bore: f64,
    /// Diameter of the rod or draw tube through the acting side, m; 0 for none.
    pub rod: f64,
}

impl Cylinder {
    /// Effective area for one acting face, m2: `pi/4 D^2`, or `pi/4 (D^2 - d^2)` on the rod side.
    ///
    /// # Errors
    /// [`GripError`] when bore or rod are not lengths or the rod fills the bore.
    pub fn effective_area(&self, face: PistonFace) -> Result<f64, GripError> {
        let bore = positive(Input::Bore, self.bore)?;
        let rod = not_negative(Input::Rod, self.rod)?;
        if rod >= bore {
            return Err(GripError::RodFillsBore { rod, bore });
        }
        Ok(match face {
            PistonFace::Full => FRAC_PI_4 * bore * bore,
            PistonFace::Rod => FRAC_PI_4 * (bore - rod) * (bore + rod),
        })
    }

    /// Draw force `Fd = eta p A`, N, at a pressure in Pa and an efficiency in (0, 1].
    ///
    /// ```
    /// use holdround_mechanics::grip::{Cylinder, PistonFace};
    /// let cylinder = Cylinder { bore: 0.125, rod: 0.045 };
    /// let pull = cylinder.draw_force(3e6, PistonFace::Rod, 1.0)?;
    /// assert!((pull - 32_044.2).abs() < 0.1);
    /// # Ok::<(), holdround_mechanics::grip::GripError>(())
    /// ```
    ///
    /// # Errors
    /// [`GripError`] when an input is out of its range.
    pub fn draw_force(&self, pressure: f64, face: PistonFace, efficiency: f64) -> Result<f64, GripError> {
        let pressure = positive(Input::Pressure, pressure)?;
        Ok(fraction(Input::Efficiency, efficiency)? * pressure * self.effective_area(face)?)
    }
}

/// What the chuck's plate says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plate {
    /// Greatest total grip, N.
    pub greatest_grip: f64,
    /// Greatest draw force, N.
    pub greatest_draw_force: f64,
    /// Jaw height above the serrations for which the grip is given, m.
    pub jaw_height: f64,
}

/// A value beside the greatest allowed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    /// The value.
    pub value: f64,
    /// The greatest allowed.
    pub greatest: f64,
}

impl Limit {
    /// Share of the limit that is used.
    #[must_use]
    pub fn used(&self) -> f64 {
        self.value / self.greatest
    }

    /// Whether the value is over the limit.
    #[must_use]
    pub fn exceeded(&self) -> bool {
        self.value > self.greatest
    }
}

/// Draw force and grip beside what the plate allows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlateLimits {
    /// Draw force against the plate's, N.
    pub draw_force: Limit,
    /// Total grip against the plate's, reduced for tall jaws, N.
    pub grip: Limit,
}

impl Plate {
    /// Total grip `F0 = Fd R c`, N, with `R` the plate's greatest grip over its greatest draw
    /// force and `c` the chuck's condition in (0, 1]: 1 as new and freshly greased, less when dry
    /// or worn (common practice, no source; a gauge reading overrides it).
    ///
    /// ```
    /// use holdround_mechanics::grip::Plate;
    /// let plate = Plate { greatest_grip: 90e3, greatest_draw_force: 36e3, jaw_height: 0.04 };
    /// assert_eq!(plate.grip(12e3, 0.8)?, 24e3);
    /// # Ok::<(), holdround_mechanics::grip::GripError>(())
    /// ```
    ///
    /// # Errors
    /// [`GripError`] when an input is out of its range.
    pub fn grip(&self, draw_force: f64, condition: f64) -> Result<f64, GripError> {
        let ratio = positive(Input::PlateGrip, self.greatest_grip)?
            / positive(Input::PlateDrawForce, self.greatest_draw_force)?;
        Ok(positive(Input::DrawForce, draw_force)? * ratio * fraction(Input::Condition, condition)?)
    }

    /// Greatest grip the plate allows at a jaw height, N: the plate's up to the height for which
    /// it is given, beyond that falling as reference height / height, which keeps the tilting
    /// moment on the jaw guides (common practice, no source).
    ///
    /// # Errors
    /// [`GripError`] when a height or the plate's grip is not positive.
    pub fn grip_limit(&self, jaw_height: f64) -> Result<f64, GripError> {
        let reference = positive(Input::PlateJawHeight, self.jaw_height)?;
        let height = positive(Input::JawHeight, jaw_height)?;
        Ok(positive(Input::PlateGrip, self.greatest_grip)? * (reference / height).min(1.0))
    }

    /// Draw force and grip beside what the plate allows for jaws of this height. Nothing is
    /// refused here: going over a limit is a finding, which the caller must show.
    ///
    /// # Errors
    /// [`GripError`] when an input is out of its range.
    pub fn limits(&self, draw_force: f64, grip: f64, jaw_height: f64) -> Result<PlateLimits, GripError> {
        Ok(PlateLimits {
            draw_force: Limit {
                value: not_negative(Input::DrawForce, draw_force)?,
                greatest: positive(Input::PlateDrawForce, self.greatest_draw_force)?,
            },
            grip: Limit { value: not_negative(Input::Grip, grip)?, greatest: self.grip_limit(jaw_height)? },
        })
    }
}

/// One point of the chuck's chart of grip against pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChartPoint {
    /// Pressure of the point, Pa.
    pub pressure: f64,
    /// Total grip at that pressure, N.
    pub grip: f64,
}

impl ChartPoint {
    /// Total grip at another pressure, N, in proportion to the pressure.
    ///
    /// ```
    /// use holdround_mechanics::grip::ChartPoint;
    /// let point = ChartPoint { pressure: 2e6, grip: 50e3 };
    /// assert_eq!(point.grip_at(1e6)?, 25e3);
    /// # Ok::<(), holdround_mechanics::grip::GripError>(())
    /// ```
    ///
    /// # Errors
    /// [`GripError`] when an input is not positive.
    pub fn grip_at(&self, pressure: f64) -> Result<f64, GripError> {
        let slope = positive(Input::Grip, self.grip)? / positive(Input::Pressure, self.pressure)?;
        Ok(slope * positive(Input::Pressure, pressure)?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const CYLINDER: Cylinder = Cylinder { bore: 0.125, rod: 0.045 };
    const PLATE: Plate = Plate { greatest_grip: 90e3, greatest_draw_force: 36e3, jaw_height: 0.04 };

    #[test]
    fn a_limit_is_exceeded_above_it_and_not_at_it() {
        let at = |value| Limit { value, greatest: 90e3 };
        assert!(!at(90e3).exceeded() && at(90.1e3).exceeded() && at(45e3).used() == 0.5, "90 kN on the plate");
    }

    #[test]
    fn rod_must_fit_the_bore() {
        let tight = Cylinder { bore: 0.05, rod: 0.05 };
        assert_eq!(
            tight.effective_area(PistonFace::Full),
            Err(GripError::RodFillsBore { rod: 0.05, bore: 0.05 }),
            "a rod as thick as the bore is refused"
        );
    }

    #[test]
    fn grip_limit_falls_with_tall_jaws_only() {
        assert_eq!(PLATE.grip_limit(0.02).unwrap(), 90e3, "short jaws keep the plate's grip");
        assert_eq!(PLATE.grip_limit(0.04).unwrap(), 90e3, "at the plate's own height");
        assert_eq!(PLATE.grip_limit(0.08).unwrap(), 45e3, "twice the height, half the grip");
    }

    #[test]
    fn going_over_the_plate_is_a_finding_not_a_refusal() {
        let limits = PLATE.limits(40e3, 80e3, 0.08).unwrap();
        assert!(limits.draw_force.exceeded(), "40 kN over 36 kN");
        assert!(limits.grip.exceeded(), "80 kN over the 45 kN of tall jaws");
        assert!((limits.grip.used() - 80.0 / 45.0).abs() < 1e-15, "share of the limit, to rounding");
    }

    #[test]
    fn nonsense_is_refused_by_name() {
        for bad in [f64::NAN, f64::INFINITY, 0.0, -1.0] {
            let refused = CYLINDER.draw_force(bad, PistonFace::Full, 1.0);
            assert!(
                matches!(refused, Err(GripError::OutOfRange { input: Input::Pressure, .. })),
                "pressure {bad} is refused"
            );
        }
        let refused = PLATE.grip(1e3, 1.2);
        assert!(
            matches!(refused, Err(GripError::OutOfRange { input: Input::Condition, .. })),
            "a condition better than new is refused"
        );
    }

    proptest! {
        #[test]
        fn grip_is_proportional_to_pressure(p in 1e5..7e6_f64, k in 0.1..3.0_f64) {
            let grip = |pressure| {
                let draw = CYLINDER.draw_force(pressure, PistonFace::Rod, 0.9).unwrap();
                PLATE.grip(draw, 0.8).unwrap()
            };
            prop_assert!((grip(k * p) / grip(p) - k).abs() < 1e-12 * k, "proportional to rounding");
            let chart = ChartPoint { pressure: p, grip: grip(p) };
            prop_assert!((chart.grip_at(k * p).unwrap() / grip(k * p) - 1.0).abs() < 1e-12, "chart agrees");
        }
    }
}
