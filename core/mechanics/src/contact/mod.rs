//! Contact between jaws and part: a frictionless, one-sided contact that decides for itself
//! where it bears.
//!
//! A [`Face`] joins a [`crate::part::PartSpring`] and a jaw ([`JawGive`]); pressing it over a
//! [`Gap`] gives a [`Contact`], whose effect on the part's surfaces is a [`Lobing`] per station.

mod active_set;
mod arc;
mod bearing;
mod compliance;
mod face;
mod lobing;
mod short_waves;

pub use arc::Arc;
pub use compliance::JawGive;
pub use face::{Contact, ContactError, Face, Gap, SHORTEST_DENT};
pub use lobing::Lobing;

#[cfg(test)]
mod reference;
