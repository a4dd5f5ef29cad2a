//! Sampling of uncertain inputs: reproducible draws, a table in place of a dear function, and whose doing the spread is.
//!
//! ```
//! use holdround_mechanics::sampling::{Share, Table, draw, first_order};
//!
//! // A dear function of one input, asked at five places and read between them.
//! let sides = [5];
//! let asked = Table::places(&sides).iter().map(|place| place[0] * place[0]).collect();
//! let table = Table::new(&sides, asked).unwrap();
//!
//! // All of the spread of what hangs on one input alone is its doing.
//! let draws: Vec<f64> = (0..512).map(|sample| draw(7, sample, 0)).collect();
//! let outputs: Vec<f64> = draws.iter().map(|draw| table.at(&[*draw])).collect();
//! let Share { of_variance, rising } = first_order(&draws, &outputs).unwrap();
//! assert!(of_variance > 0.95 && rising);
//! ```

mod draw;
mod share;
mod table;

pub use draw::draw;
pub use share::{Share, first_order};
pub use table::Table;
