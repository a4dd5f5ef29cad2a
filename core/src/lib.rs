//! The mechanics of holding turned parts in lathe chucks with soft jaws.
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;

pub mod boring_ring;
mod evaluate;
pub mod examples;
pub mod findings;
pub mod glossary;
pub mod lessons;
pub mod materials;
pub mod program;
pub mod record;
pub mod recut;
pub mod setup;
pub mod stroke;

pub use holdround_mechanics::{
    bore, contact, cutting, grip, hold, indicator, jaw, jaw_spring, part, quantity, ring, roundness, sampling, sqrt,
    taper, window,
};

pub use evaluate::{
    Better, BoreChoice, Boundary, Choice, Compared, Comparison, Decider, Effort, Engine, Fitted, HEADLINES,
    InfluenceWork, Mover, Opening, OpeningWork, Progress, QUESTION, ROWS, Row, SampleWork, Sampled, SampledOutput,
    Span, Window, WindowWork, evaluate, jaw_program,
};
