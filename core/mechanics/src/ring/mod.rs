//! The turned part as a plane-stress ring or solid disc, solved exactly.
//!
//! A radial load on the outside or the bore is split into a Fourier series
//! around the axis and each harmonic is answered by Michell's general solution
//! of the plane problem (Timoshenko & Goodier, *Theory of Elasticity*).
//! Lengths are in metres, stresses in pascals, forces in newtons, angles in
//! radians. Radial displacement is positive outward, stress positive in tension.
//!
//! The part is taken as linear elastic, of one section along its length, gripped
//! along all of it, with no friction at the jaws. Yield, buckling of a thin wall
//! and a grip over part of the length are outside this model: check them elsewhere.
//!
//! ```
//! use holdround_mechanics::ring::{
//!     Annulus, Edge, EdgeState, Harmonic, JawLoad, PeakHoop, Response, RingError, Shape, Spin, Squeeze,
//! };
//!
//! // A steel ring of 150 by 138 mm in three jaws of 20 degrees, 1 kN each.
//! let ring = Annulus { inner: 0.069, outer: 0.075, modulus: 205e9, poisson: 0.29 };
//! let load = JawLoad { edge: Edge::Outside, jaws: 3, half_angle: 0.1745, force_per_jaw: 1e3, length: 0.02 };
//! let Squeeze { bore, .. } = ring.squeeze(&load)?;
//! let shape: Shape = bore.unwrap();
//! assert!(shape.radial(0.0) < 0.0 && shape.radial(core::f64::consts::PI / 3.0) > 0.0, "in at a jaw, out between");
//! assert_eq!(shape.sampled(6).len(), 6);
//! assert!(shape.mean < 0.0 && shape.peak_to_valley() > shape.mean.abs());
//! let first: &Harmonic = &shape.harmonics[0];
//! assert_eq!(first.order, 3);
//! let PeakHoop { outside, bore } = ring.peak_hoop(&load)?;
//! assert!(outside > 0.0 && bore.unwrap() > 0.0, "bent, it is pulled somewhere on either surface");
//!
//! // One wave of stress, and spin.
//! let Response { outside, bore } = ring.response(3, Edge::Outside, -1e6)?;
//! let at_bore: EdgeState = bore.unwrap();
//! assert!((outside.radial - at_bore.radial).abs() < 0.05 * outside.radial.abs(), "both surfaces of a thin ring move alike");
//! let Spin { bore_growth, peak_hoop, .. } = ring.spin(300.0, 7850.0)?;
//! assert!(bore_growth.unwrap() > 0.0 && peak_hoop > 0.0);
//!
//! assert_eq!(JawLoad { jaws: 0, ..load }.pressure(0.075), Err(RingError::Jaws));
//! # Ok::<(), RingError>(())
//! ```

mod annulus;
mod clausen;
mod extremum;
mod hoop;
mod jaw_load;
mod shape;
mod spin;
mod squeeze;

pub use annulus::{Annulus, Edge, EdgeState, Response, RingError};
pub use hoop::PeakHoop;
pub use jaw_load::{JawLoad, NARROWEST_HALF_ANGLE};
pub use shape::{Harmonic, Shape};
pub use spin::Spin;
pub use squeeze::Squeeze;
