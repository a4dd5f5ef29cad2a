//! The diameter to bore soft jaws to, and how fast the spindle may turn meanwhile.

mod best;
mod speed;

pub use best::{Best, best};
pub use speed::{Ceiling, ceiling, turning_speed};
