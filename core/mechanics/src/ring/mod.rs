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
