//! Where the jaws stand: serrations, stroke, and the tooth on which a blank jaw is screwed down.
//!
//! A master jaw travels by its stroke `S`: it stands at 0 when the chuck is fully closed, nearest the axis, and at
//! `S` when it is fully open. Its innermost groove then stands at `g + s` from the axis. The grooves of a top jaw
//! sit on the teeth of the master jaw, midway between its grooves; on tooth `k` the first groove of the top jaw,
//! counted from its gripping end, stands at `g + s + (k - 1/2) p`. Tooth 1 lies between the two innermost grooves.
//!
//! Everything on the top jaw is measured from its gripping end: the inner end for an outside grip, the outer end
//! for an inside grip. One sign then serves both grips.

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
