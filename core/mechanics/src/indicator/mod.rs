//! Readings of an indicator around a part: what goes round once, twice, as often as there are jaws and twice as often.
//!
//! Lengths in m, angles in rad. A wave of order n is `a cos(n t) + b sin(n t)`, t from the middle of jaw 1 in the
//! direction in which the jaws are numbered.

mod error;
mod fit;
mod parted;
mod sight;

pub use error::IndicatorError;
pub use fit::{Fit, Readings, Wave};
pub use parted::{Parted, part};
pub use sight::{Sight, looks_like, orders, sight};
