//! The mechanics of holding turned parts in lathe chucks with soft jaws.
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;

pub mod bore;
pub mod boring_ring;
pub mod contact;
pub mod cutting;
mod evaluate;
pub mod examples;
pub mod findings;
pub mod grip;
pub mod hold;
pub mod jaw;
pub mod jaw_spring;
pub mod materials;
pub mod part;
pub mod program;
pub mod quantity;
pub mod record;
pub mod recut;
pub mod ring;
pub mod roundness;
pub mod setup;
mod sorting;
pub mod stroke;
pub mod taper;

pub use evaluate::{BoreChoice, Effort, Engine, Progress, evaluate, jaw_program};
