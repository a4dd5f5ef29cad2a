//! How the part moves when it gives way.

use super::ContactPoint;
use crate::cutting::{Wrench, cross};

/// A rigid motion.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Motion {
    /// Velocity in m/s of the part at the chuck's origin.
    pub velocity: [f64; 3],
    /// Angular velocity in rad/s.
    pub rotation: [f64; 3],
}

/// What a motion mostly is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mode {
    /// The part comes out of the jaws along the axis.
    PullOut,
    /// It is pushed into the chuck along the axis.
    PushIn,
    /// It spins about the axis.
    Spin,
    /// It tips over.
    Tip,
    /// It slides across the axis.
    Slide,
}

impl Motion {
    /// Velocity in m/s at a point in m.
    #[must_use]
    pub fn velocity_at(&self, point: [f64; 3]) -> [f64; 3] {
        let turned = cross(self.rotation, point);
        core::array::from_fn(|k| self.velocity[k] + turned[k])
    }

    /// An upper bound on the speed in m/s within a distance of the origin.
    pub(crate) fn speed(&self, distance: f64) -> f64 {
        crate::sqrt(dot(self.velocity, self.velocity)) + distance * crate::sqrt(2.0 * dot(self.rotation, self.rotation))
    }

    /// Speed in m/s at which the part slips along the jaw at a contact point.
    pub(crate) fn slip_at(&self, contact: &ContactPoint) -> f64 {
        let v = self.velocity_at(contact.position);
        let along_normal = dot(v, contact.normal);
        let tangential: [f64; 3] = core::array::from_fn(|k| v[k] - along_normal * contact.normal[k]);
        crate::sqrt(dot(tangential, tangential))
    }

    /// Power in W of a load on this motion.
    #[must_use]
    pub fn power_of(&self, load: &Wrench) -> f64 {
        dot(load.force, self.velocity) + dot(load.moment, self.rotation)
    }
}

/// The largest component of a velocity given at the centre of the contact, with
/// rotations as speeds at the contact's mean distance from it.
pub(crate) fn mode_of(scaled: &[f64; 6]) -> Mode {
    let [ux, uy, uz, wx, wy, wz] = *scaled;
    let axial = if uz > 0.0 { Mode::PullOut } else { Mode::PushIn };
    let parts = [
        (axial, uz.abs()),
        (Mode::Spin, wz.abs()),
        (Mode::Tip, libm::hypot(wx, wy)),
        (Mode::Slide, libm::hypot(ux, uy)),
    ];
    let largest = parts.into_iter().reduce(|a, b| if b.1 > a.1 { b } else { a });
    largest.map_or(Mode::Slide, |(mode, _)| mode)
}

pub(crate) fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}
