//! The load of one cut on the part.
//!
//! Chuck coordinates: the origin lies on the spindle axis in the plane of the
//! jaws' front faces; `z` points out of the chuck, toward the tailstock. The
//! tool stands at angle `phi` from the first jaw, counted about `+z`. The
//! spindle turns about `+z`, so the tool drags the part about `-z`; turning the
//! spindle the other way mirrors every load and changes no magnitude.
//!
//! ```
//! use holdround_mechanics::cutting::{
//!     AxialFeed, Cut, ForceRatios, Operation, SpecificForce, ToolPosition, Turning,
//! };
//!
//! let cut = Cut {
//!     operation: Operation::Turning(Turning {
//!         depth: 2e-3,
//!         feed: 0.25e-3,
//!         approach: core::f64::consts::FRAC_PI_2,
//!         direction: AxialFeed::TowardChuck,
//!     }),
//!     material: SpecificForce { kc11: 2220e6, mc: 0.14 },
//!     correction: 1.0,
//!     ratios: ForceRatios { feed: 0.4, passive: 0.3 },
//!     tool: ToolPosition { radius: 0.04, z: 0.02 },
//! };
//! let forces = cut.forces()?;
//! assert!((forces.cutting - 1347.756).abs() < 1e-3, "C45 main force in newtons");
//! # Ok::<(), holdround_mechanics::cutting::CuttingError>(())
//! ```

use core::fmt;

mod cut;
mod kienzle;
mod operation;
mod wrench;

pub use cut::{Cut, CutLoad, CuttingForces, ForceRatios, SpindleDemand, ToolPosition};
pub use kienzle::{Chip, SpecificForce};
pub use operation::{
    AxialFeed, Boring, Directions, Drilling, Facing, Grooving, Operation, RadialFeed, SpindlePower, Surface, Turning,
    twist_drill_thrust_ratio,
};
pub(crate) use wrench::cross;
pub use wrench::{RotatingWrench, Wrench};

/// Why a cut has no load: the input outside its valid range.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CuttingError {
    /// `kc1.1` must be positive and finite.
    SpecificForce,
    /// The exponent `mc` must lie in `[0, 1)`.
    ChipExponent,
    /// Depth of cut must be positive and finite.
    Depth,
    /// Feed per revolution must be positive and finite.
    Feed,
    /// The approach angle (half the point angle of a drill) must lie strictly
    /// between 0 and 180 degrees.
    Approach,
    /// Groove width must be positive and finite.
    Width,
    /// Drill diameter must be positive, and larger than the pilot hole's, which
    /// must not be negative.
    Diameter,
    /// Spindle power must not be negative.
    Power,
    /// Efficiency must lie in `(0, 1]`.
    Efficiency,
    /// Angular speed must be positive where a force is found from power, and
    /// never negative.
    Speed,
    /// The correction factor must be positive and finite.
    Correction,
    /// Force ratios must be finite and not negative.
    Ratios,
    /// The tool's radius must not be negative (positive where a force is found
    /// from power), and its position must be finite.
    Tool,
    /// The inputs are each valid, but the force overflows.
    Overflow,
}

impl fmt::Display for CuttingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::SpecificForce => "the cutting resistance is out of range",
            Self::ChipExponent => "the chip thickness exponent is out of range",
            Self::Depth => "the depth of cut is out of range",
            Self::Feed => "the feed is out of range",
            Self::Approach => "the cutting edge angle is out of range",
            Self::Width => "the width of the groove is out of range",
            Self::Diameter => "the drill diameter is out of range",
            Self::Power => "the power is out of range",
            Self::Efficiency => "the efficiency is out of range",
            Self::Speed => "the speed is out of range",
            Self::Correction => "the allowance for wear is out of range",
            Self::Ratios => "the force shares are out of range",
            Self::Tool => "the tool's place is out of range",
            Self::Overflow => "the force is too large to be told",
        })
    }
}

impl core::error::Error for CuttingError {}
