//! The diameter to bore soft jaws to, and how fast the spindle may turn meanwhile.
//!
//! ```
//! use holdround_mechanics::bore::{Best, Ceiling, best, ceiling, turning_speed};
//! // Say that the part is least lobed where the jaws are bored 0.04 mm over its 80 mm.
//! let Best { at, value, .. } = best([80e-3, 80.2e-3], &mut |bored| Some((bored - 80.04e-3).powi(2))).unwrap();
//! assert!((at - 80.04e-3).abs() < 5e-6 && value < 1e-10);
//! // 150 m/min there, but the boring ring may turn at 40 rad/s only.
//! let wanted = turning_speed(2.5, at);
//! assert_eq!(ceiling(wanted, 40.0, 400.0), (40.0, Ceiling::Own));
//! ```

mod best;
mod speed;

pub use best::{Best, best};
pub use speed::{Ceiling, ceiling, turning_speed};
