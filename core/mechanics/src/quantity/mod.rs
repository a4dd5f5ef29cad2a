//! Quantities: what kinds there are, in which units they are typed and shown, and the exact factors between them.
//!
//! At the boundaries values are typed quantities of the `uom` library ([`Length`], [`Pressure`], ...); kernels
//! take plain SI `f64`. Factors between units are our own table ([`Unit`]), because the library rounds
//! pounds and psi to seven digits where their definitions are exact.
//!
//! ```
//! use holdround_mechanics::quantity::{Kind, Measure, MeasureError, NumberError, Unit, UnitSystem, shown};
//!
//! // A bare number is read in the first unit of its kind; whoever thinks in inches is shown inches.
//! let typed = Measure::parse(Kind::Length, "2 1/4\"").unwrap();
//! assert_eq!((typed.unit.symbol, typed.si), ("in", 0.05715));
//! let millimetre: &Unit = Kind::Length.bare_unit();
//! assert_eq!(millimetre.from_si(typed.si), 57.15);
//! assert_eq!(millimetre.to_si(57.15), typed.si);
//! assert_eq!(shown(typed.si, Kind::Length.unit_in(UnitSystem::Metric)), "57.15 mm");
//! assert_eq!(Kind::Length.si_symbol(), "m");
//! assert_eq!(Measure::parse(Kind::Length, "").unwrap_err(), MeasureError::Number(NumberError::Empty));
//! ```

mod kind;
mod measure;
mod number;
mod unit;

pub use kind::Kind;
pub use measure::{Measure, MeasureError, shown};
pub use number::{NumberError, decade, decimal, fixed, parse_number};
pub use unit::{UNITS, Unit, UnitSystem};

pub use uom::si::f64::{Angle, AngularVelocity, Force, Length, Mass, MassDensity, Power, Pressure, Ratio};
