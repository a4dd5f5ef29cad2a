//! Readings of an indicator around a part: what goes round once, twice, as often as there are jaws and twice as often.
//!
//! Lengths in m, angles in rad. A wave of order n is `a cos(n t) + b sin(n t)`, t from the middle of jaw 1 in the
//! direction in which the jaws are numbered.
//!
//! ```
//! use holdround_mechanics::indicator::{
//!     Fit, IndicatorError, Parted, Readings, Sight, Wave, looks_like, orders, part, sight,
//! };
//! use std::f64::consts::TAU;
//!
//! // Twelve readings of a part that is 20 um off centre and lobed by 5 um at each of three jaws.
//! let read = |squeezed: f64| -> Vec<Option<f64>> {
//!     let around = (0..12).map(|at| TAU * at as f64 / 12.0);
//!     around.map(|t| Some(20e-6 * t.cos() - squeezed * (3.0 * t).cos())).collect()
//! };
//! let fit = |departures: &[Option<f64>]| -> Result<Fit, IndicatorError> {
//!     let readings = Readings { departures, start: 0.0, jaws: 3, resolution: 1e-6 };
//!     assert!((readings.angle(3) - TAU / 4.0).abs() < 1e-12);
//!     readings.fit()
//! };
//! let hard = fit(&read(5e-6))?;
//! let lobes: &Wave = hard.wave(3).unwrap();
//! assert!((lobes.height() - 5e-6).abs() < 1e-12 && lobes.is_seen());
//! assert!((lobes.crest() - TAU / 6.0).abs() < 1e-9, "the metal stands up midway between the jaws");
//! assert_eq!(orders(3).collect::<Vec<_>>(), [1, 2, 3, 6]);
//!
//! // At half the grip half of it is left: all of the lobing is the grip's, none of the offset.
//! let soft = fit(&read(2.5e-6))?;
//! let parted: Vec<Parted> = part(&hard, &soft, 0.5)?;
//! let three = parted.iter().find(|one| one.squeezed.order == 3).unwrap();
//! assert!((three.squeezed.height() - 5e-6).abs() < 1e-12 && three.there.height() < 1e-12);
//!
//! // Six stations cannot tell five times round from once; twelve see three lobes whole.
//! assert_eq!(looks_like(6, 5), 1);
//! assert_eq!(sight(12, 3, 0.0), Sight::Whole);
//! # Ok::<(), IndicatorError>(())
//! ```

mod error;
mod fit;
mod parted;
mod sight;

pub use error::IndicatorError;
pub use fit::{Fit, Readings, Wave};
pub use parted::{Parted, part};
pub use sight::{Sight, looks_like, orders, sight};
