//! The few questions from which a job of one's own is set up.

use super::input::{Input, When, optional, quantity};
use super::{chuck_inputs as chuck, part_inputs as part};
use crate::quantity::Kind;

/// Diameter that the jaws touch.
pub static GRIPPED: Input = Input {
    path: "start.gripped",
    name: "Gripped diameter",
    form: quantity(Kind::Length, 8e-3, 2.0),
    default: "",
    help: "Where the jaws touch the part: its outside, or its bore if you grip from inside.",
    source: "range: what soft jaws are bored for, common practice, no source",
    when: When::Always,
};
/// Wall of the part.
pub static WALL: Input = Input {
    path: "start.wall",
    name: "Wall",
    form: optional(Kind::Length, 1e-4, 0.95),
    default: "",
    help: "Half of outside less bore, as left by this cut. Leave empty for a solid part.",
    source: "our own range",
    when: When::Always,
};
/// Length of the part.
pub static LENGTH: Input =
    Input { path: "start.length", default: "", form: quantity(Kind::Length, 2e-3, 2.0), ..part::PART_LENGTH };

/// The questions, in the order in which they are asked.
pub static QUESTIONS: [&Input; 7] =
    [&part::GRIP_SIDE, &GRIPPED, &WALL, &LENGTH, &part::PART_MATERIAL, &part::ROUNDNESS_LIMIT, &chuck::BODY_DIAMETER];
