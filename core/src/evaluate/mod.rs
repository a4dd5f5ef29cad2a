//! From a valid set-up to findings: the engines, called in the order of the flow.
//!
//! Grip at rest and at speed, the jaws pressed on the part, the cuts, the hold against each, the speed all
//! this allows, and the shape of the part. Each file turns one engine's answer into findings with their
//! limits and steps.
//!
//! Two costs are kept apart. Shape work, done when a size or material changes, is kept by an [`Engine`] and
//! can be done in slices; load work (pressure, speed, cut, bored size) reuses it.

mod bore;
mod boring_ring;
mod cautions;
mod compare;
mod contact;
mod cuts;
mod elastic;
mod engine;
mod finish;
mod gauge;
mod grip_at_rest;
mod grip_at_speed;
mod groove;
mod hold;
mod indicator;
mod indicator_corrections;
mod indicator_words;
mod influence;
mod jaw;
mod own_rings;
mod placing;
mod pressed;
mod program;
mod recut;
#[cfg(test)]
mod refusals;
mod released;
mod shape;
mod speed;
mod stroke;
mod taper;
mod tooth;
mod window;

pub use bore::BoreChoice;
pub use compare::{Better, Choice, Compared, Comparison, Fitted, ROWS, Row};
pub use engine::{Engine, Progress};
pub use influence::{HEADLINES, InfluenceWork};
pub use pressed::Effort;
pub use program::jaw_program;
pub use recut::QUESTION;
pub use window::{
    Boundary, Decider, Mover, Opening, OpeningWork, SampleWork, Sampled, SampledOutput, Span, Window, WindowWork,
};

use crate::findings::Findings;
use crate::setup::Setup;

/// Computes everything there is to know about a set-up, from scratch. To follow changes, keep an [`Engine`].
///
/// ```
/// use holdround_core::{evaluate, setup::{Entries, Setup}};
/// let setup = Setup::read(&Entries::default()).unwrap();
/// let findings = evaluate(&setup);
/// assert!(findings.get("hold.factor").unwrap().value.is_ok());
/// ```
#[must_use]
pub fn evaluate(setup: &Setup) -> Findings {
    Engine::default().evaluate(setup, Effort::Full)
}
