//! The window: curves in the plane of clamping pressure and speed at which a limit is reached.
//!
//! A limit is a function of pressure and speed that is 1 where it is reached and about proportional to the pressure,
//! such as a hold factor over the one wanted, or a roundness over the one allowed. Its curve is found by root finding
//! on that function, never read off a grid. It is sought as a pressure over the *square* of the speed, because spin
//! forces follow the square, so that most curves are straight there and a few roots make a curve.

mod curve;
mod root;

pub use curve::{Curve, Keep, Over, PLOTTING_ACCURACY, Plane};
