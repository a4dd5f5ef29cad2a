//! Jaws that come back: what stands on them, whether that is enough and not too much, and how often more.
//!
//! Stock is metal per side between the gripping face as it stands on the ring and the face wanted: to be bored away
//! from jaws of an outside grip, to be turned off those of an inside grip.

mod life;
mod stock;

pub use life::recuts_left;
pub use stock::{Old, Outlook, needed_stock, reusable, ring_change, stock_per_side, teeth_to_middle};

#[cfg(test)]
mod tests;
