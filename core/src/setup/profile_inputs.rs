//! A stepped part, and the surfaces of it that matter, as inputs.

use super::input::{Form, Input, When, choice, optional, quantity};
use super::part_inputs::PART_SHAPE;
use crate::quantity::Kind;

const STEPS: When = When::Chosen(&PART_SHAPE, &["steps"]);

/// Length of a step.
pub static STEP_LENGTH: Input = Input {
    path: "steps.*.length",
    name: "Length",
    form: quantity(Kind::Length, 1e-4, 2.0),
    default: "10 mm",
    help: "Along the axis. Steps follow each other from the chuck side of the part outward.",
    source: "our own starting value",
    when: STEPS,
};
/// Outside diameter of a step.
pub static STEP_OUTSIDE: Input = Input {
    path: "steps.*.outside",
    name: "Outside diameter",
    form: quantity(Kind::Length, 1e-3, 2.0),
    default: "100 mm",
    help: "At the end of the step nearer the chuck.",
    source: "our own starting value",
    when: STEPS,
};
/// Outside diameter of a step at its far end.
pub static STEP_OUTSIDE_END: Input = Input {
    path: "steps.*.outside_end",
    name: "Outside diameter at the far end",
    form: optional(Kind::Length, 1e-3, 2.0),
    default: "",
    help: "Only for a cone. Leave empty if it is straight.",
    source: "our own starting value",
    when: STEPS,
};
/// Bore diameter of a step.
pub static STEP_BORE: Input = Input {
    path: "steps.*.bore",
    name: "Bore diameter",
    form: quantity(Kind::Length, 0.0, 2.0),
    default: "80 mm",
    help: "At the end of the step nearer the chuck; 0 where the part is solid, as in a floor.",
    source: "our own starting value",
    when: STEPS,
};
/// Bore diameter of a step at its far end.
pub static STEP_BORE_END: Input = Input {
    path: "steps.*.bore_end",
    name: "Bore diameter at the far end",
    form: optional(Kind::Length, 0.0, 2.0),
    default: "",
    help: "Only for a conical bore. Leave empty if it is straight.",
    source: "our own starting value",
    when: STEPS,
};
/// Name of a surface of interest.
pub static SURFACE_NAME: Input = Input {
    path: "surfaces.*.name",
    name: "Name",
    form: Form::Text(30),
    default: "surface",
    help: "Your own word for it, such as “bore” or “front face”.",
    source: "our own starting value",
    when: When::Always,
};
/// Where a surface of interest lies.
pub static SURFACE_SIDE: Input = Input {
    path: "surfaces.*.side",
    name: "Where",
    form: Form::Choice(&[choice("outside", "Outside"), choice("bore", "Bore"), choice("face", "Face")]),
    default: "bore",
    help: "Which kind of surface to judge.",
    source: "our own starting value",
    when: When::Always,
};
/// Start of a surface of interest.
pub static SURFACE_FROM: Input = Input {
    path: "surfaces.*.from",
    name: "From",
    form: quantity(Kind::Length, 0.0, 4.0),
    default: "0 mm",
    help: "Along the axis, from the chuck side of the part.",
    source: "our own starting value",
    when: When::Always,
};
/// End of a surface of interest.
pub static SURFACE_TO: Input = Input {
    path: "surfaces.*.to",
    name: "To",
    form: quantity(Kind::Length, 0.0, 4.0),
    default: "10 mm",
    help: "Along the axis, from the chuck side of the part. For a face: the same place as From.",
    source: "our own starting value",
    when: When::Always,
};

/// One step, in the order in which a drawing gives it.
pub static STEP_INPUTS: &[&Input] = &[&STEP_LENGTH, &STEP_OUTSIDE, &STEP_OUTSIDE_END, &STEP_BORE, &STEP_BORE_END];

/// One surface of interest.
pub static SURFACE_INPUTS: &[&Input] = &[&SURFACE_NAME, &SURFACE_SIDE, &SURFACE_FROM, &SURFACE_TO];
