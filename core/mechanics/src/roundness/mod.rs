//! Roundness of a turned surface from small radial departures (ISO 12181).
//!
//! A [`Profile`] holds departures from any nominal radius at known angles about the
//! spindle axis. Four reference circles are fitted: least squares (LSCI), minimum zone
//! (MZCI), minimum circumscribed (MCCI) and maximum inscribed (MICI), the definitions of
//! ISO 12181-1:2011 (from memory).
//!
//! A circle off the axis by `(x, y)` is taken as the limacon `R + x cos(theta) + y
//! sin(theta)`, the custom of roundness measurement: right to `e^2 / (2 R)` for an
//! eccentricity `e` on a radius `R`. On 50 mm, 0.1 mm off centre makes 0.1 um of false
//! ovality and 1 mm makes 10 um: centre the part or correct the readings beyond that.

mod exchange;
mod fit;
mod profile;

pub use fit::{Assessment, ReferenceCircle};
pub use profile::{Profile, RoundnessError};
