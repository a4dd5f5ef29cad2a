//! The load of one cut on the part.
//!
//! Chuck coordinates: the origin lies on the spindle axis in the plane of the
//! jaws' front faces; `z` points out of the chuck, toward the tailstock. The
//! tool stands at angle `phi` from the first jaw, counted about `+z`. The
//! spindle turns about `+z`, so the tool drags the part about `-z`; turning the
//! spindle the other way mirrors every load and changes no magnitude.
//!
//! ```
//! use core::f64::consts::FRAC_PI_2;
//! use holdround_mechanics::cutting::{
//!     AxialFeed, Boring, Chip, Cut, CutLoad, CuttingError, CuttingForces, Directions, Drilling, Facing, ForceRatios,
//!     Grooving, Operation, RadialFeed, RotatingWrench, SpecificForce, SpindleDemand, SpindlePower, Surface,
//!     ToolPosition, Turning, Wrench, twist_drill_thrust_ratio,
//! };
//!
//! // C45, 2 mm deep at 0.25 mm a turn.
//! let steel = SpecificForce { kc11: 2220e6, mc: 0.14 };
//! let (depth, feed, approach) = (2e-3, 0.25e-3, FRAC_PI_2);
//! let cut = Cut {
//!     operation: Operation::Turning(Turning { depth, feed, approach, direction: AxialFeed::TowardChuck }),
//!     material: steel,
//!     correction: 1.0,
//!     ratios: ForceRatios { feed: 0.4, passive: 0.3 },
//!     tool: ToolPosition { radius: 0.04, z: 0.02 },
//! };
//! let CuttingForces { cutting, torque, chip, .. } = cut.forces()?;
//! assert!((cutting - 1347.756).abs() < 1e-3, "main force in newtons");
//! assert_eq!(chip, Some(Chip { width: 2e-3, thickness: 0.25e-3 }));
//! assert_eq!(cutting, steel.at(0.25e-3)? * 2e-3 * 0.25e-3);
//! assert_eq!(cutting, steel.cutting_force(Chip { width: 2e-3, thickness: 0.25e-3 })?);
//!
//! // At 80 rad/s through a drive that keeps 80 %.
//! let SpindleDemand { power, .. } = cut.demand(80.0, 0.8)?;
//! assert!((power - torque * 80.0 / 0.8).abs() < 1e-9);
//!
//! // The load on the part is a force at the tool's tip, wherever the tool stands to the jaws.
//! let CutLoad { radial, tangential, axial, .. } = cut.load()?;
//! let turning: RotatingWrench = cut.load()?.rotating();
//! let wrench = Wrench::of_force_at([radial, tangential, axial], [0.04, 0.0, 0.02]);
//! for ((turned, fixed), stood) in turning.at(0.0).moment.iter().zip(wrench.moment).zip(cut.load()?.wrench(0.0).moment) {
//!     assert!((turned - fixed).abs() < 1e-9 && (stood - fixed).abs() < 1e-9);
//! }
//!
//! // Other operations push elsewhere.
//! let boring = Operation::Boring(Boring { depth, feed, approach, direction: AxialFeed::AwayFromChuck });
//! assert!(Cut { operation: boring, ..cut }.load()?.radial > 0.0);
//! let facing = Operation::Facing(Facing { depth, feed, approach, direction: RadialFeed::Inward });
//! assert!(Cut { operation: facing, ..cut }.load()?.axial < 0.0);
//! let groove = Operation::Grooving(Grooving { width: 3e-3, feed: 0.1e-3, surface: Surface::Outside });
//! assert_eq!(groove.directions(), Directions::Grooving(Surface::Outside));
//! let point_angle = 118_f64.to_radians();
//! let drill = Operation::Drilling(Drilling { diameter: 20e-3, pilot: 0.0, feed: 0.2e-3, point_angle });
//! let thrust = ForceRatios { feed: twist_drill_thrust_ratio(point_angle), passive: 0.0 };
//! assert!(Cut { operation: drill, ratios: thrust, ..cut }.forces()?.torque > 0.0);
//!
//! // A cut known by what it draws.
//! let directions = Directions::Turning(AxialFeed::TowardChuck);
//! let drawn = Operation::SpindlePower(SpindlePower { power, efficiency: 0.8, angular_speed: 80.0, directions });
//! assert!((Cut { operation: drawn, ..cut }.forces()?.cutting - cutting).abs() < 1e-9);
//! assert_eq!(Cut { correction: 0.0, ..cut }.forces(), Err(CuttingError::Correction));
//! # Ok::<(), CuttingError>(())
//! ```

use core::fmt;

use crate::text::Text;

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

impl From<&CuttingError> for Text {
    fn from(error: &CuttingError) -> Self {
        Self::Words(match error {
            CuttingError::SpecificForce => "the cutting resistance is out of range",
            CuttingError::ChipExponent => "the chip thickness exponent is out of range",
            CuttingError::Depth => "the depth of cut is out of range",
            CuttingError::Feed => "the feed is out of range",
            CuttingError::Approach => "the cutting edge angle is out of range",
            CuttingError::Width => "the width of the groove is out of range",
            CuttingError::Diameter => "the drill diameter is out of range",
            CuttingError::Power => "the power is out of range",
            CuttingError::Efficiency => "the efficiency is out of range",
            CuttingError::Speed => "the speed is out of range",
            CuttingError::Correction => "the allowance for wear is out of range",
            CuttingError::Ratios => "the force shares are out of range",
            CuttingError::Tool => "the tool's place is out of range",
            CuttingError::Overflow => "the force is too large to be told",
        })
    }
}

impl fmt::Display for CuttingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for CuttingError {}
