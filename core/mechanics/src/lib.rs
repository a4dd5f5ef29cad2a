//! The laws of holding turned parts in lathe chucks with soft jaws: quantities and their units, grip at rest and at
//! speed, cutting loads, hold by limit analysis, rings and turned parts on their jaws, contact, taper and roundness.
//!
//! Nothing here knows what a user enters or reads. It is a crate of its own because these are the numbers that must
//! come fast, so it alone is built for speed in the page; `holdround-core` passes all of it on.
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;
#[cfg(feature = "std")]
extern crate std;

pub mod bore;
pub mod contact;
pub mod cutting;
pub mod grip;
pub mod hold;
pub mod indicator;
pub mod jaw;
pub mod jaw_spring;
pub mod part;
pub mod quantity;
#[cfg(test)]
mod refusals;
pub mod ring;
pub mod roundness;
pub mod sampling;
pub mod sorting;
mod square_root;
mod student;
pub mod taper;
pub mod text;
pub mod window;

pub use square_root::sqrt;
