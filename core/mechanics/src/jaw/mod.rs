//! The jaw as a solid, as bored: its gripping arc, mass and centroid.
//!
//! Screw holes, counterbores, chamfers and serrations are ignored: the solid is a little heavier
//! than the jaw. Screws, T-nuts and master jaw are lumps the caller adds at their own radii.
//!
//! Axes: `x` along the jaw's own axis away from the spindle axis, `z` above the serrations.
//!
//! ```
//! use holdround_mechanics::grip::Side;
//! use holdround_mechanics::jaw::{BoredJaw, Dimension, Jaw, JawError, Shape};
//!
//! let jaw = Jaw {
//!     shape: Shape::Ordinary { width: 0.04 },
//!     side: Side::Outside,
//!     count: 3,
//!     length: 0.06,
//!     height: 0.045,
//!     step: 0.02,
//!     bored_depth: 0.02,
//!     grip_radius: 0.05,
//! };
//! let bored = BoredJaw::new(jaw)?;
//! assert_eq!(bored.jaw(), &jaw);
//! // A jaw 40 mm wide touches a part of 100 mm over the arc whose half is asin(20 / 50), and is bored right across.
//! assert!((bored.contact_half_angle() - 0.4_f64.asin()).abs() < 1e-12 && bored.cleans_up());
//! assert!(bored.volume() < 0.06 * 0.04 * 0.045, "less than the block");
//! let mass = bored.rotating_mass(2700.0)?;
//! assert_eq!((mass.mass, mass.radius), (bored.mass(2700.0)?, bored.centroid_radius()));
//! assert!(bored.centroid_height() < 0.0225, "the step is bored away at the top");
//! assert!(bored.inner_radius() < 0.05 && bored.outer_radius() < bored.swing_radius());
//! assert!(bored.inward_clearance() > 0.0, "such jaws do not meet");
//!
//! let flat = BoredJaw::new(Jaw { height: 0.0, ..jaw });
//! assert!(matches!(flat, Err(JawError::OutOfRange { dimension: Dimension::Height, .. })));
//! # Ok::<(), JawError>(())
//! ```

mod bored;
mod error;
mod section;

pub use bored::{BoredJaw, Jaw, Shape};
pub use error::{Dimension, JawError};
