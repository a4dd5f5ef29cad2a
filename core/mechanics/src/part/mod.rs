//! The turned part as a spring: a body of revolution under loads that are not.
//!
//! A [`Profile`] of steps is meshed ([`Mesh`]), its stiffness assembled once for all harmonics
//! ([`PartModel`]), and solved order by order into a [`PartSpring`].

mod element;
pub(crate) mod envelope;
mod error;
mod harmonic;
mod load;
mod mesh;
mod numbering;
mod profile;
mod sizing;
mod spring;
mod strips;
mod subdivision;
mod surface;

#[cfg(test)]
mod manufactured;
#[cfg(test)]
mod properties;
#[cfg(test)]
mod reference;

pub use element::Elastic;
pub use error::PartError;
pub use mesh::{Edge, MAX_NODES, Mesh, TooLarge};
pub use profile::{LARGEST_DIAMETER, MAX_STEPS, Profile, ProfileError, Step, THINNEST_WALL};
pub use spring::{MAX_HARMONICS, MAX_ORDER, PartModel, PartSpring, Response, Stations};
pub use surface::{Band, Side, Surface};
