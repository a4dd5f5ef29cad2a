//! The part as typed values: its profile, its surfaces, what it is made of and what it must keep to.

use alloc::string::String;
use alloc::vec::Vec;

use crate::materials::Material;
use crate::part::Profile;
/// Where a surface lies.
pub use crate::part::Side as SurfaceSide;
use crate::quantity::{Length, Pressure, Ratio};

/// The part as it sits in the jaws.
#[derive(Clone, Debug)]
pub struct Part {
    /// Its steps along the axis, from the chuck side outward; a plain ring has one.
    pub profile: Profile,
    /// Whether it was given as steps; a plain ring is given by its three sizes.
    pub stepped: bool,
    /// Surfaces that matter; empty for the whole outside and bore.
    pub surfaces: Vec<PartSurface>,
    /// Its material.
    pub material: &'static Material,
    /// Young's modulus.
    pub modulus: Pressure,
    /// Yield stress; none where the material breaks without yielding and the user gave no figure.
    pub yield_stress: Option<Pressure>,
    /// Specific cutting force at 1 mm chip thickness; none if neither table nor user knows it.
    pub cutting_resistance: Option<Pressure>,
    /// Exponent of the chip thickness.
    pub chip_exponent: Option<Ratio>,
    /// Roundness allowed.
    pub roundness_limit: Length,
    /// Run-out allowed.
    pub runout_limit: Length,
    /// Size change allowed, if it matters.
    pub size_limit: Option<Length>,
}

/// A surface of interest.
#[derive(Clone, Debug, PartialEq)]
pub struct PartSurface {
    /// The user's own name for it.
    pub name: String,
    /// Where it lies.
    pub side: SurfaceSide,
    /// From, along the axis, from the chuck side of the part.
    pub from: Length,
    /// To, along the axis.
    pub to: Length,
}

/// Which of two steps is meant where they meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Toward {
    /// The one nearer the chuck.
    Chuck,
    /// The one farther from the chuck.
    Far,
}

impl Part {
    /// Length along the axis, m.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.profile.length()
    }

    /// Largest outside diameter, m.
    #[must_use]
    pub fn largest_outside(&self) -> f64 {
        self.profile.steps().iter().flat_map(|step| step.outer).fold(0.0, f64::max)
    }

    /// Smallest bore diameter, m; 0 where it is solid somewhere.
    #[must_use]
    pub fn smallest_bore(&self) -> f64 {
        self.profile.steps().iter().flat_map(|step| step.inner).fold(f64::INFINITY, f64::min)
    }

    /// Outside and bore diameter, m, at `z` m from the chuck side; beyond the ends, those of the end.
    #[must_use]
    pub fn diameters_at(&self, z: f64, toward: Toward) -> [f64; 2] {
        // Where two steps meet to within rounding, `toward` decides.
        let rounding = 1e-9 * self.length();
        let mut from = 0.0;
        let mut found = [0.0; 2];
        for step in self.profile.steps() {
            let past_start = if toward == Toward::Far { z >= from - rounding } else { z > from + rounding };
            if past_start || from == 0.0 {
                let share = ((z - from) / step.length).clamp(0.0, 1.0);
                let at = |ends: [f64; 2]| ends[0] + (ends[1] - ends[0]) * share;
                found = [at(step.outer), at(step.inner)];
            }
            from += step.length;
        }
        found
    }
}
