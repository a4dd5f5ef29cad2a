//! The boring ring or plug, and the rings a shop keeps, as inputs.

use super::input::{Form, Input, When, choice, optional, quantity};
use super::stroke_inputs::PLAN;
use crate::quantity::Kind;

const PLANNED: When = When::Chosen(&PLAN, &["yes"]);

/// Where the jaws bear while they are bored.
pub static BEARING: Input = Input {
    path: "ring.bearing",
    name: "Ring or plug bears on",
    form: Form::Choice(&[
        choice("counterbores", "Screw counterbores"),
        choice("plug", "Jaw ends, a plug between them"),
        choice("groove", "A groove cut in the jaw faces"),
        choice("around", "Jaw ends, a ring around them"),
    ]),
    default: "counterbores",
    help: "It must push back the way the part will: jaws that close need a ring in the counterbores, in a groove, or a plug; jaws that open a ring in the counterbores, in a groove, or around them.",
    source: "our own starting value",
    when: PLANNED,
};
/// Which of the user's own rings is used.
pub static RING_USED: Input = Input {
    path: "ring.used",
    name: "Ring in use, by its number",
    form: optional(Kind::Plain, 1.0, 24.0),
    default: "",
    help: "Its place in the list of your own rings. Leave empty for a ring made to suit.",
    source: "our own starting value",
    when: PLANNED,
};
/// Radial thickness of a ring to be made.
pub static RING_THICKNESS: Input = Input {
    path: "ring.thickness",
    name: "Ring to make: wall",
    form: quantity(Kind::Length, 5e-4, 0.2),
    default: "10 mm",
    help: "From its inside to its outside.",
    source: "our own starting value",
    when: PLANNED,
};
/// Height of a ring to be made.
pub static RING_SECTION_HEIGHT: Input = Input {
    path: "ring.height",
    name: "Ring to make: height",
    form: quantity(Kind::Length, 5e-4, 0.2),
    default: "8 mm",
    help: "Along the axis.",
    source: "our own starting value",
    when: PLANNED,
};
/// Clearance kept between ring and tool.
pub static TOOL_CLEARANCE: Input = Input {
    path: "ring.tool_clearance",
    name: "Clearance between ring and tool",
    form: quantity(Kind::Length, 0.0, 0.05),
    default: "1 mm",
    help: "Kept free between the ring and what is bored.",
    source: "our own starting value",
    when: PLANNED,
};
/// Name of a ring of the user's own.
pub static OWN_RING_NAME: Input = Input {
    path: "rings.*.name",
    name: "Name",
    form: Form::Text(30),
    default: "ring",
    help: "Your own word for it.",
    source: "our own starting value",
    when: PLANNED,
};
/// Outside of a ring of the user's own.
pub static OWN_RING_OUTSIDE: Input = Input {
    path: "rings.*.outside",
    name: "Outside diameter",
    form: quantity(Kind::Length, 1e-3, 2.0),
    default: "100 mm",
    help: "Measured, not stamped.",
    source: "our own starting value",
    when: PLANNED,
};
/// Inside of a ring of the user's own.
pub static OWN_RING_INSIDE: Input = Input {
    path: "rings.*.inside",
    name: "Inside diameter",
    form: quantity(Kind::Length, 0.0, 2.0),
    default: "80 mm",
    help: "0 for a plug.",
    source: "our own starting value",
    when: PLANNED,
};
/// Height of a ring of the user's own.
pub static OWN_RING_HEIGHT: Input = Input {
    path: "rings.*.height",
    name: "Height",
    form: quantity(Kind::Length, 5e-4, 0.2),
    default: "8 mm",
    help: "Along the axis.",
    source: "our own starting value",
    when: PLANNED,
};

/// Ring or plug, in shop order.
pub static RING_INPUTS: &[&Input] = &[
    &BEARING,
    &RING_USED,
    &RING_THICKNESS,
    &RING_SECTION_HEIGHT,
    &TOOL_CLEARANCE,
    &OWN_RING_NAME,
    &OWN_RING_OUTSIDE,
    &OWN_RING_INSIDE,
    &OWN_RING_HEIGHT,
];
