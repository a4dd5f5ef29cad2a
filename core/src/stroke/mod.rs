//! Where the jaws stand: serrations, stroke, and the tooth on which a blank jaw is screwed down.
//!
//! A master jaw travels by its stroke `S`: it stands at 0 when the chuck is fully closed, nearest the axis, and at
//! `S` when it is fully open. Its innermost groove then stands at `g + s` from the axis. The grooves of a top jaw
//! sit on the teeth of the master jaw, midway between its grooves; on tooth `k` the first groove of the top jaw,
//! counted from its gripping end, stands at `g + s + (k - 1/2) p`. Tooth 1 lies between the two innermost grooves.
//!
//! Everything on the top jaw is measured from its gripping end: the inner end for an outside grip, the outer end
//! for an inside grip. One sign then serves both grips.
//!
//! ```
//! use holdround_core::grip::Side;
//! use holdround_core::jaw::{Jaw, Shape};
//! use holdround_core::stroke::{
//!     Blank, Check, Choice, MasterJaw, Placed, SERRATIONS, Stand, StrokeError, Task, choose, place,
//! };
//! let master = MasterJaw { stroke: 4e-3, first_groove: 0.035, face: 0.06, body: 0.1, serration: SERRATIONS[3].1 };
//! let blank = Blank { length: 0.07, first_groove: 0.0015, near_screw: 0.03, far_screw: 0.05, counterbore: 0.02,
//!     counterbore_depth: 0.035, nut: 0.03 };
//! // The nut lies evenly under screws at 30 and 50 mm; the wall that bears on a ring is half a counterbore behind 30 mm.
//! assert!((blank.nut_middle() - 0.04).abs() < 1e-12 && (blank.bearing_wall() - 0.04).abs() < 1e-12);
//! // Between a face 10 mm from the end and the counterbore from 20 mm on, 10 mm of metal.
//! assert!((blank.wall_at(0.01) - 0.01).abs() < 1e-12 && (blank.metal_behind(0.01) - 0.01).abs() < 1e-12);
//! assert!((blank.extended(3e-3).length - 0.073).abs() < 1e-12);
//!
//! let jaw = Jaw { shape: Shape::Ordinary { width: 0.04 }, side: Side::Outside, count: 3, length: 0.07, height: 0.045,
//!     step: 0.01, bored_depth: 0.015, grip_radius: 0.05 };
//! let task = Task { jaw, part: [0.05; 3], passing: 0.05, least_wall: 3e-3, least_clearance: 0.5e-3, swing: None,
//!     stand: Stand::At(2e-3) };
//! let choice: Choice = choose(&master, &blank, &task)?;
//! let first: &Placed = choice.best_first(0.01)[0];
//! assert_eq!(first.tooth, choice.best.tooth);
//! // Bored at the end of the stroke, the same tooth has a fault.
//! let late: Placed = place(&master, &blank, &Task { stand: Stand::At(4e-3), ..task }, first.tooth);
//! assert!(late.fails.contains(&Check::MiddleThird));
//!
//! let crossed = Blank { near_screw: 0.05, far_screw: 0.03, ..blank };
//! assert_eq!(choose(&master, &crossed, &task).err(), Some(StrokeError::ScrewsCrossed));
//! # Ok::<(), StrokeError>(())
//! ```

mod blank;
mod choose;
mod error;
mod placed;
mod serration;

pub use blank::{Blank, MasterJaw};
pub use choose::{Choice, Remedy, choose, remedies};
pub use error::StrokeError;
pub use placed::{Check, Placed, Stand, Task, place};
pub(crate) use placed::{HEAD_IN_COUNTERBORE, outward};
pub use serration::{SERRATIONS, Serration};

#[cfg(test)]
mod tests;
