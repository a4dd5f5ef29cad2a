//! Jaws that come back: what stands on them, whether that is enough and not too much, and how often more.
//!
//! Stock is metal per side between the gripping face as it stands on the ring and the face wanted: to be bored away
//! from jaws of an outside grip, to be turned off those of an inside grip.
//!
//! ```
//! use holdround_core::grip::Side;
//! use holdround_core::recut::{Old, Outlook, needed_stock, stock_per_side};
//! // Jaws bored to 98 mm that are wanted at 100 mm, and run out by 0.1 mm.
//! let old = Old { runout: 0.1e-3, measured: true, taper: 0.0, damage: 0.0 };
//! let stock = stock_per_side(Side::Outside, 0.098, 0.1);
//! assert_eq!(Outlook::of(stock, needed_stock(&old, 0.0), 2e-3), Outlook::Enough);
//! ```

mod life;
mod stock;

pub use life::recuts_left;
pub use stock::{Old, Outlook, needed_stock, reusable, ring_change, stock_per_side, teeth_to_middle};

#[cfg(test)]
mod tests;
