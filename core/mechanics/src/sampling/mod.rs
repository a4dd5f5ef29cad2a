//! Sampling of uncertain inputs: reproducible draws, a table in place of a dear function, and whose doing the spread is.

mod draw;
mod share;
mod table;

pub use draw::draw;
pub use share::{Share, first_order};
pub use table::Table;
