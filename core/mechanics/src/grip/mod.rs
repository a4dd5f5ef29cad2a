//! Grip: the sum of the jaws' radial forces on the part, at rest and at speed.
//!
//! All forces are totals over the jaws, N; pressures in Pa, angular speeds in rad/s.

mod error;
mod gauge;
mod line;
mod rest;
mod speed;
mod spin_line;

pub use error::{GripError, Input};
pub use gauge::{GripLine, Prediction, Reading, Scatter};
pub use rest::{ChartPoint, Cylinder, Limit, PistonFace, Plate, PlateLimits};
pub use speed::{Demand, GripRange, RotatingMass, Share, SpinningGrip, centrifugal_moment};
pub use spin_line::{SpinCoefficient, SpinLine, SpinReading};

/// Which way the jaws push.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The jaws close on an outside, toward the axis (the trade also says OD gripping).
    Outside,
    /// The jaws open into a bore, away from the axis (the trade also says ID gripping).
    Inside,
}
