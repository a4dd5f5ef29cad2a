//! Stroke, serrations and the blank jaw, as inputs.

use super::input::{Form, Input, When, choice, optional, quantity};
use crate::quantity::Kind;

const PLANNED: When = When::Chosen(&PLAN, &["yes"]);

/// Whether tooth and ring are worked out.
pub static PLAN: Input = Input {
    path: "stroke.plan",
    name: "Tooth, stroke and boring ring",
    form: Form::Choice(&[choice("no", "Leave out"), choice("yes", "Work out")]),
    default: "no",
    help: "Worked out from the stroke of the chuck, its serrations and the blank jaw.",
    source: "our own starting value",
    when: When::Always,
};
/// Radial travel of one master jaw.
pub static STROKE: Input = Input {
    path: "stroke.travel",
    name: "Stroke of one jaw",
    form: quantity(Kind::Length, 5e-4, 0.2),
    default: "3.7 mm",
    help: "How far one master jaw moves along the radius from fully closed to fully open. Chuck plates often give it on diameter: halve that.",
    source: "from memory: common for a 210 mm chuck",
    when: PLANNED,
};
/// Serrations of master jaws and blanks.
pub static SERRATION: Input = Input {
    path: "stroke.serration",
    name: "Serrations",
    form: Form::Choice(&[
        choice("sixteenth", "1/16 in by 90°"),
        choice("three-thirty-seconds", "3/32 in by 90°"),
        choice("one-and-a-half", "1.5 mm by 60°"),
        choice("three", "3 mm by 60°"),
        choice("typed", "Other"),
    ]),
    default: "one-and-a-half",
    help: "From groove to groove, and the angle of a groove. Blank and master jaw must have the same.",
    source: "ISO 3442-3 has serrations of 60° and 90°; the pitches are from memory",
    when: PLANNED,
};
/// Pitch of other serrations.
pub static PITCH: Input = Input {
    path: "stroke.pitch",
    name: "Pitch of the serrations",
    form: quantity(Kind::Length, 5e-4, 0.02),
    default: "2 mm",
    help: "From groove to groove. Measure over ten and divide.",
    source: "our own starting value",
    when: When::Chosen(&SERRATION, &["typed"]),
};
/// Angle of other serrations.
pub static SERRATION_ANGLE: Input = Input {
    path: "stroke.angle",
    name: "Angle of a groove",
    form: quantity(Kind::Angle, 0.5, 2.5),
    default: "90°",
    help: "Between the flanks of a groove.",
    source: "our own starting value",
    when: When::Chosen(&SERRATION, &["typed"]),
};
/// Where the serrations of the master jaw begin.
pub static FIRST_GROOVE: Input = Input {
    path: "stroke.first_groove",
    name: "Innermost groove of the master jaw from the axis, closed",
    form: quantity(Kind::Length, 0.0, 1.0),
    default: "32 mm",
    help: "Radius of the master jaw's innermost serration groove with the chuck fully closed.",
    source: "our own starting value",
    when: PLANNED,
};
/// Length of the serrated face of the master jaw.
pub static FACE: Input = Input {
    path: "stroke.face",
    name: "Serrated face of the master jaw",
    form: quantity(Kind::Length, 5e-3, 1.0),
    default: "65 mm",
    help: "Along the radius, from its innermost groove to its outer end. The T-nuts must stay under it.",
    source: "our own starting value",
    when: PLANNED,
};
/// Which way round the jaws are mounted.
pub static MOUNTED: Input = Input {
    path: "stroke.mounted",
    name: "Jaws are mounted",
    form: Form::Choice(&[choice("as-measured", "As measured below"), choice("turned", "Turned round")]),
    default: "as-measured",
    help: "Turned round, the other end of the blank grips. Give the sizes below from the same end in either case.",
    source: "our own starting value",
    when: PLANNED,
};
/// Where the grooves of the blank begin.
pub static BLANK_GROOVE: Input = Input {
    path: "blank.first_groove",
    name: "Gripping end to the first groove of the blank",
    form: quantity(Kind::Length, 0.0, 0.5),
    default: "1 mm",
    help: "Along the underside of the blank jaw, from the end that grips. The gripping end is the inner one for an outside grip, the outer one for an inside grip.",
    source: "our own starting value",
    when: PLANNED,
};
/// Where the near screw is.
pub static NEAR_SCREW: Input = Input {
    path: "blank.near_screw",
    name: "Gripping end to the near screw",
    form: quantity(Kind::Length, 0.0, 1.0),
    default: "10 mm",
    help: "To the middle of the screw that is nearer the end that grips.",
    source: "our own starting value",
    when: PLANNED,
};
/// Where the far screw is.
pub static FAR_SCREW: Input = Input {
    path: "blank.far_screw",
    name: "Gripping end to the far screw",
    form: quantity(Kind::Length, 0.0, 1.0),
    default: "25 mm",
    help: "To the middle of the other screw.",
    source: "our own starting value",
    when: PLANNED,
};
/// Diameter of the screw counterbores.
pub static COUNTERBORE: Input = Input {
    path: "blank.counterbore",
    name: "Counterbore diameter",
    form: quantity(Kind::Length, 2e-3, 0.1),
    default: "15 mm",
    help: "Of the counterbores for the heads of the jaw screws.",
    source: "our own starting value",
    when: PLANNED,
};
/// Depth of the screw counterbores.
pub static COUNTERBORE_DEPTH: Input = Input {
    path: "blank.counterbore_depth",
    name: "Counterbore depth",
    form: quantity(Kind::Length, 1e-3, 0.5),
    default: "30 mm",
    help: "From the front of the blank jaw.",
    source: "our own starting value",
    when: PLANNED,
};
/// Length of the T-nut.
pub static NUT: Input = Input {
    path: "blank.nut",
    name: "T-nut length",
    form: quantity(Kind::Length, 5e-3, 0.5),
    default: "32 mm",
    help: "Along the radius. One nut for both screws, lying evenly under them; for two nuts, from end to end over both.",
    source: "our own starting value",
    when: PLANNED,
};
/// Least metal before the counterbores.
pub static LEAST_WALL: Input = Input {
    path: "stroke.least_wall",
    name: "Least metal to the screw counterbores",
    form: quantity(Kind::Length, 0.0, 0.1),
    default: "3 mm",
    help: "Between the bored face and the wall of a counterbore.",
    source: "common practice, no source",
    when: PLANNED,
};
/// Least clearance for loading.
pub static LEAST_CLEARANCE: Input = Input {
    path: "stroke.least_clearance",
    name: "Least clearance for loading, per side",
    form: quantity(Kind::Length, 0.0, 0.1),
    default: "0.5 mm",
    help: "Between part and jaws when the chuck is open for an outside grip, closed for an inside grip.",
    source: "our own starting value",
    when: PLANNED,
};
/// Another diameter that must pass.
pub static PASSING: Input = Input {
    path: "stroke.passing",
    name: "Another diameter that must pass",
    form: optional(Kind::Length, 1e-3, 2.0),
    default: "",
    help: "A burr, a flash or a larger part that the open jaws must let by; for an inside grip the smallest hole. Leave empty for the part's own.",
    source: "our own starting value",
    when: PLANNED,
};
/// The tooth chosen.
pub static TOOTH: Input = Input {
    path: "stroke.tooth",
    name: "Tooth",
    form: optional(Kind::Plain, -2000.0, 2000.0),
    default: "",
    help: "The first groove of the blank sits on this tooth of the master jaw. Tooth 1 is the innermost, between the first two grooves; 0 and below hang over it. Leave empty for the recommended one.",
    source: "our own starting value",
    when: PLANNED,
};
/// Where in the stroke the jaws are bored.
pub static BORED_AT: Input = Input {
    path: "stroke.bored_at",
    name: "Position in the stroke while bored",
    form: optional(Kind::Length, 0.0, 0.2),
    default: "",
    help: "How far the master jaw stands from fully closed. Leave empty for the middle of the stroke, or where the ring in use puts it.",
    source: "the middle of the stroke: common practice, no source",
    when: PLANNED,
};

/// Stroke, serrations and blank, in shop order.
pub static STROKE_INPUTS: &[&Input] = &[
    &PLAN,
    &STROKE,
    &SERRATION,
    &PITCH,
    &SERRATION_ANGLE,
    &FIRST_GROOVE,
    &FACE,
    &MOUNTED,
    &BLANK_GROOVE,
    &NEAR_SCREW,
    &FAR_SCREW,
    &COUNTERBORE,
    &COUNTERBORE_DEPTH,
    &NUT,
    &LEAST_WALL,
    &LEAST_CLEARANCE,
    &PASSING,
    &TOOTH,
    &BORED_AT,
];
