//! Quantities: what kinds there are, in which units they are typed and shown, and the exact factors between them.
//!
//! At the boundaries values are typed quantities of the `uom` library ([`Length`], [`Pressure`], ...); kernels
//! take plain SI `f64`. Factors between units are our own table ([`Unit`]), because the library rounds
//! pounds and psi to seven digits where their definitions are exact.

mod kind;
mod measure;
mod number;
mod unit;

pub use kind::Kind;
pub use measure::{Measure, MeasureError, shown};
pub use number::{NumberError, decimal, fixed, parse_number};
pub use unit::{UNITS, Unit, UnitSystem};

pub use uom::si::f64::{Angle, AngularVelocity, Force, Length, Mass, MassDensity, Power, Pressure, Ratio};
