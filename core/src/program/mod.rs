//! The program that cuts soft jaws: path of the tool, what it sweeps, what it would hit, and its text.
//!
//! All of it is planned in the plane of `u` and `z`. `u` grows into the metal: it is the radius where jaws are
//! bored for an outside grip, and minus the radius where their outer ends are turned for an inside grip, so that
//! one plan serves both. `z` is 0 at the front of the jaws after the skim, and negative toward the chuck.
//!
//! ```
//! use holdround_core::grip::Side;
//! use holdround_core::program::{
//!     Collision, Cutting, JawCut, Move, Obstacle, Plan, PlanError, Purpose, Tool, ToolPart, collisions,
//! };
//! let cut = JawCut {
//!     side: Side::Outside, diameter: 0.1, taper: 0.02e-3, depth: 0.02, chamfer: 0.5e-3,
//!     relief: [2e-3, 0.5e-3], standing: 0.092, inner: 0.08, skim: 0.25e-3, skim_width: 5e-3,
//! };
//! // The taper is metal left at the front: the face runs outward toward the seat.
//! assert_eq!((cut.sign(), cut.stands()), (1.0, 0.046));
//! assert!((cut.face(0.0) - 0.05).abs() < 1e-12 && (cut.face(-0.02) - 0.05 - 0.02e-3).abs() < 1e-12);
//!
//! let tool = Tool { nose: 0.4e-3, behind: 0.6, bar: 0.02, reach: 0.06, holder: 0.04 };
//! let cutting = Cutting { depth: 1e-3, allowance: 0.2e-3, rough_feed: 0.15e-3, finish_feed: 0.08e-3, start: 0.05 };
//! let plan = Plan::new(&cut, &tool, &cutting)?;
//! let last: &Move = plan.moves.last().unwrap();
//! assert_eq!(last.purpose, Purpose::Retract);
//! assert!(!last.purpose.words().is_empty());
//! assert!(plan.largest_diameter() > 0.1, "the relief groove is cut deeper than the face");
//!
//! // A part standing in the jaws is in the way.
//! let part = Obstacle { name: "part", radial: [0.0, 0.045], z: [-0.02, 0.01] };
//! let hits: Vec<Collision> = collisions(&plan, &[part]);
//! assert!(hits.iter().any(|hit| hit.part == ToolPart::Bar && hit.part.words() == ToolPart::Bar.words()));
//!
//! assert_eq!(Plan::new(&JawCut { standing: 0.11, ..cut }, &tool, &cutting).err(), Some(PlanError::NothingToCut));
//! # Ok::<(), PlanError>(())
//! ```

mod collision;
mod error;
mod outline;
mod plan;
mod swept;
mod text;

pub use collision::{Collision, Obstacle, ToolPart, collisions};
pub use error::PlanError;
pub use outline::{JawCut, Tool, least_relief_width};
pub use plan::{Cutting, LIFT, Move, Plan, Purpose, STAND_OFF};
pub use swept::swept;
pub use text::{Heading, decimals, text};

#[cfg(test)]
mod tests;
