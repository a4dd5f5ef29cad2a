//! The jaw as a solid, as bored: its gripping arc, mass and centroid.
//!
//! Screw holes, counterbores, chamfers and serrations are ignored: the solid is a little heavier
//! than the jaw. Screws, T-nuts and master jaw are lumps the caller adds at their own radii.
//!
//! Axes: `x` along the jaw's own axis away from the spindle axis, `z` above the serrations.

mod bored;
mod error;
mod section;

pub use bored::{BoredJaw, Jaw, Shape};
pub use error::{Dimension, JawError};
