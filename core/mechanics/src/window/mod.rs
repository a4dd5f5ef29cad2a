//! The window: curves in the plane of clamping pressure and speed at which a limit is reached.
//!
//! A limit is a function of pressure and speed that is 1 where it is reached and about proportional to the pressure,
//! such as a hold factor over the one wanted, or a roundness over the one allowed. Its curve is found by root finding
//! on that function, never read off a grid. It is sought as a pressure over the *square* of the speed, because spin
//! forces follow the square, so that most curves are straight there and a few roots make a curve.
//!
//! ```
//! use holdround_mechanics::window::{Curve, Keep, Over, Plane};
//!
//! // A lobing of 1 um per MPa, of which 8 um are allowed, hangs on no speed: one root is a curve.
//! let plane = Plane { pressure: [0.0, 10e6], speed: 300.0 };
//! let mut round = Curve::new(Keep::AtMost, Over::Any, plane);
//! assert!(round.is_empty() && round.points(4).is_empty());
//! while round.step(&|pressure, _| pressure / 8e6) {}
//! assert_eq!(round.keep(), Keep::AtMost);
//! assert!(round.points(4).iter().all(|[_, pressure]| (pressure / 8e6 - 1.0).abs() < 1e-3));
//! ```

mod curve;
mod root;

pub use curve::{Curve, Keep, Over, PLOTTING_ACCURACY, Plane};
