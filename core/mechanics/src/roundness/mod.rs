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
//!
//! ```
//! use holdround_mechanics::roundness::{Assessment, Profile, ReferenceCircle, RoundnessError};
//!
//! // Three lobes of 10 um on a part 20 um off centre, read every 10 degrees.
//! let angles: Vec<f64> = (0..36).map(|at| f64::from(at * 10).to_radians()).collect();
//! let read: Vec<f64> = angles.iter().map(|t| 20e-6 * t.cos() + 10e-6 * (3.0 * t).cos()).collect();
//! let profile = Profile::at_angles(&angles, &read)?;
//! let Assessment { least_squares, minimum_zone, minimum_circumscribed, maximum_inscribed, .. } = profile.assess();
//! assert_eq!(least_squares, profile.least_squares());
//! assert!((least_squares.eccentricity() - 20e-6).abs() < 1e-12);
//! assert!((least_squares.roundness() - 20e-6).abs() < 1e-12);
//! assert!(minimum_zone.roundness() <= least_squares.roundness() + 1e-15);
//! let (ring, plug): (ReferenceCircle, _) = (profile.minimum_circumscribed(), profile.maximum_inscribed());
//! assert_eq!((ring, plug), (minimum_circumscribed, maximum_inscribed));
//! assert!(ring.radius > plug.radius);
//!
//! // The indicator sees both, a micrometer no odd lobes.
//! assert!(profile.total_indicator_reading() > 20e-6);
//! assert!(profile.two_point_range().unwrap() < 1e-15);
//! assert_eq!(Profile::equally_spaced(&[0.0; 3]).unwrap_err(), RoundnessError::TooFew);
//! # Ok::<(), RoundnessError>(())
//! ```

mod exchange;
mod fit;
mod profile;

pub use fit::{Assessment, ReferenceCircle};
pub use profile::{Profile, RoundnessError};
