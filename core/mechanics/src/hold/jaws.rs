//! Contact points of equal jaws under uniform pressure.

use super::{ContactPoint, HoldError};
use crate::grip::Side;
use alloc::vec::Vec;
use core::f64::consts::{PI, TAU};

/// Whether the wrap of a jaw around the part is credited.
///
/// A jaw's force is the resultant along its own axis. Pressed evenly over a
/// half-angle `beta`, the normal forces sum to `beta / sin beta` times that.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Wrap {
    /// The normal forces sum to the grip force: conservative.
    #[default]
    Ignored,
    /// The normal forces sum to `beta / sin beta` times the grip force.
    Credited,
}

/// Equal jaws, evenly spaced, each pressing evenly on its arc; the first at
/// angle 0, the faces at `z = 0`, the grip reaching to `z = -length`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JawGrip {
    /// Number of jaws, 1 to 64.
    pub jaws: usize,
    /// Half the angle a jaw bears on in rad, 0 to `pi / jaws`.
    pub half_angle: f64,
    /// Gripped radius in m.
    pub radius: f64,
    /// Grip length in m.
    pub length: f64,
    /// Grip force in N: the sum over the jaws of the resultant along each jaw's
    /// axis. Nil or negative (lost at speed) leaves no normal force.
    pub force: f64,
    /// Side gripped.
    pub side: Side,
    /// Whether wrap is credited.
    pub wrap: Wrap,
}

impl JawGrip {
    /// Contact points at Gauss points, `along_arc` by `along_length` to a jaw.
    ///
    /// Five by three is exact for torque and pull and within about 1 % for
    /// tipping; more points cost time in proportion.
    ///
    /// # Errors
    /// Names the input that is outside its valid range.
    pub fn contacts(&self, along_arc: usize, along_length: usize) -> Result<Vec<ContactPoint>, HoldError> {
        self.check(along_arc, along_length)?;
        let sum = self.force.max(0.0) / self.jaws as f64 * self.wrap_factor();
        let inward = match self.side {
            Side::Outside => -1.0,
            Side::Inside => 1.0,
        };
        let arc = gauss_legendre(along_arc);
        let depth = gauss_legendre(along_length);
        let mut contacts = Vec::with_capacity(self.jaws * along_arc * along_length);
        for jaw in 0..self.jaws {
            let axis = TAU * jaw as f64 / self.jaws as f64;
            for &(x, arc_weight) in &arc {
                let angle = axis + self.half_angle * x;
                let (sin, cos) = (libm::sin(angle), libm::cos(angle));
                for &(y, depth_weight) in &depth {
                    contacts.push(ContactPoint {
                        position: [self.radius * cos, self.radius * sin, -self.length * (1.0 + y) / 2.0],
                        normal: [inward * cos, inward * sin, 0.0],
                        normal_force: sum * arc_weight * depth_weight / 4.0,
                    });
                }
            }
        }
        Ok(contacts)
    }

    /// Sum of a jaw's normal forces over its resultant.
    fn wrap_factor(&self) -> f64 {
        match self.wrap {
            Wrap::Credited if self.half_angle > 0.0 => self.half_angle / libm::sin(self.half_angle),
            Wrap::Credited | Wrap::Ignored => 1.0,
        }
    }

    fn check(&self, along_arc: usize, along_length: usize) -> Result<(), HoldError> {
        let is_length = |x: f64| x > 0.0 && x.is_finite();
        if !(1..=64).contains(&self.jaws) {
            Err(HoldError::Jaws)
        } else if !(1..=64).contains(&along_arc) || !(1..=64).contains(&along_length) {
            Err(HoldError::Points)
        } else if !(self.half_angle >= 0.0 && self.half_angle <= PI / self.jaws as f64 && self.half_angle < PI) {
            Err(HoldError::HalfAngle)
        } else if !is_length(self.radius) {
            Err(HoldError::Radius)
        } else if !is_length(self.length) {
            Err(HoldError::Length)
        } else if !self.force.is_finite() {
            Err(HoldError::Force)
        } else {
            Ok(())
        }
    }
}

/// Nodes on `[-1, 1]` and weights (sum 2) of Gauss-Legendre quadrature: Newton's
/// method on the three-term recurrence (Press et al., *Numerical Recipes* 4.6).
fn gauss_legendre(order: usize) -> Vec<(f64, f64)> {
    let n = order as f64;
    (0..order)
        .map(|k| {
            let mut x = libm::cos(PI * (k as f64 + 0.75) / (n + 0.5));
            let mut slope = 1.0;
            for _ in 0..8 {
                let (mut previous, mut value) = (0.0, 1.0);
                for j in 0..order {
                    let j = j as f64;
                    (previous, value) = (value, ((2.0 * j + 1.0) * x * value - j * previous) / (j + 1.0));
                }
                slope = n * (x * value - previous) / (x * x - 1.0);
                x -= value / slope;
            }
            (x, 2.0 / ((1.0 - x * x) * slope * slope))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hold::Clamped;

    fn grip() -> JawGrip {
        JawGrip {
            jaws: 3,
            half_angle: 60.0_f64.to_radians(),
            radius: 0.05,
            length: 0.03,
            force: 12_000.0,
            side: Side::Outside,
            wrap: Wrap::Credited,
        }
    }

    // Abramowitz & Stegun 25.4, three points: 0 and sqrt(3/5), 8/9 and 5/9.
    #[test]
    fn three_gauss_points_match_the_table() {
        let points = gauss_legendre(3);
        let tolerance = 1e-14; // rounding
        assert!((points[0].0 - crate::sqrt(0.6)).abs() < tolerance, "outer node");
        assert!((points[0].1 - 5.0 / 9.0).abs() < tolerance, "outer weight");
        assert!(points[1].0.abs() < tolerance, "middle node");
        assert!((points[1].1 - 8.0 / 9.0).abs() < tolerance, "middle weight");
    }

    // beta / sin beta at 60 degrees is 1.209199576 (derived independently: the
    // integral of cos over the arc).
    #[test]
    fn credited_wrap_keeps_the_resultant_and_raises_the_sum() {
        let contacts = grip().contacts(8, 2).unwrap();
        let sum: f64 = contacts.iter().map(|c| c.normal_force).sum();
        assert!((sum / 12_000.0 - 1.209199576).abs() < 1e-9, "sum of normals is {sum}");
        let first_jaw: f64 = contacts[..16].iter().map(|c| -c.normal_force * c.normal[0]).sum();
        // Eight Gauss points integrate a cosine over 2 rad to rounding.
        assert!((first_jaw - 4000.0).abs() < 1e-8, "resultant of a jaw is {first_jaw}");
    }

    #[test]
    fn ignored_wrap_sums_to_the_grip() {
        let contacts = JawGrip { wrap: Wrap::Ignored, ..grip() }.contacts(5, 3).unwrap();
        let sum: f64 = contacts.iter().map(|c| c.normal_force).sum();
        assert!((sum - 12_000.0).abs() < 1e-8, "sum of normals is {sum}");
    }

    #[test]
    fn normal_forces_of_equal_jaws_balance() {
        for side in [Side::Outside, Side::Inside] {
            let contacts = JawGrip { side, ..grip() }.contacts(5, 3).unwrap();
            let imbalance = Clamped::new(&contacts, 0.1, None).unwrap().imbalance();
            assert!(imbalance < 1e-12, "{side:?}: imbalance is {imbalance}");
        }
    }

    #[test]
    fn inputs_outside_their_range_are_refused() {
        let refused = |grip: JawGrip| grip.contacts(5, 3).unwrap_err();
        assert_eq!(refused(JawGrip { jaws: 0, ..grip() }), HoldError::Jaws, "no jaws");
        let overlapping = JawGrip { half_angle: 1.1, ..grip() };
        assert_eq!(refused(overlapping), HoldError::HalfAngle, "overlapping jaws");
        assert_eq!(refused(JawGrip { radius: 0.0, ..grip() }), HoldError::Radius, "no radius");
        assert_eq!(refused(JawGrip { length: f64::NAN, ..grip() }), HoldError::Length, "NaN");
        assert_eq!(refused(JawGrip { force: f64::INFINITY, ..grip() }), HoldError::Force, "inf");
        assert_eq!(grip().contacts(0, 3).unwrap_err(), HoldError::Points, "no points");
    }
}
