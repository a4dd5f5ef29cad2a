//! Boring the jaws, as inputs: shape, tool, cutting, and the program.

use super::input::{Form, Input, When, choice, optional, quantity};
use crate::quantity::Kind;

/// Diameter at which the jaws stand before the cut.
pub static STANDING: Input = Input {
    path: "boring.standing",
    name: "Jaws stand at, before the cut",
    form: optional(Kind::Length, 1e-3, 2.0),
    default: "",
    help: "Measured between the jaws (around them for an inside grip) while they press on the boring ring. Leave empty to take it from the blank.",
    source: "our own starting value",
    when: When::Always,
};
/// Metal taken off the front of the jaws.
pub static SKIM: Input = Input {
    path: "boring.skim",
    name: "Taken off the front face",
    form: quantity(Kind::Length, 0.0, 5e-3),
    default: "0.010 in",
    help: "A light skim makes the front a true face to measure from, also of jaws that come back. 0 for none.",
    source: "customary skim: common practice, no source",
    when: When::Always,
};
/// How far the front is skimmed.
pub static SKIM_WIDTH: Input = Input {
    path: "boring.skim_width",
    name: "Skimmed beyond the chamfer",
    form: quantity(Kind::Length, 0.0, 0.2),
    default: "5 mm",
    help: "How far the skim goes along the front, counted from the chamfer.",
    source: "our own starting value",
    when: When::Always,
};
/// Lead chamfer.
pub static CHAMFER: Input = Input {
    path: "boring.chamfer",
    name: "Lead chamfer",
    form: quantity(Kind::Length, 0.0, 0.01),
    default: "0.5 mm",
    help: "Leg of the 45° chamfer at the mouth, so that parts find their way in. 0 for none.",
    source: "our own starting value",
    when: When::Always,
};
/// Width of the relief groove.
pub static RELIEF_WIDTH: Input = Input {
    path: "boring.relief_width",
    name: "Relief groove, along the axis",
    form: quantity(Kind::Length, 0.0, 0.02),
    default: "2 mm",
    help: "A groove in the corner between face and seat, so that a sharp edge of the part sits flush. 0 for none.",
    source: "our own starting value",
    when: When::Always,
};
/// Depth of the relief groove.
pub static RELIEF_DEPTH: Input = Input {
    path: "boring.relief_depth",
    name: "Relief groove, into the metal",
    form: quantity(Kind::Length, 0.0, 5e-3),
    default: "0.5 mm",
    help: "At least the nose radius, or the round that the nose leaves stands under the part's edge.",
    source: "our own starting value",
    when: When::Always,
};
/// Nose radius of the insert.
pub static NOSE_RADIUS: Input = Input {
    path: "boring.nose_radius",
    name: "Nose radius",
    form: quantity(Kind::Length, 5e-5, 5e-3),
    default: "0.4 mm",
    help: "Of the insert; it stands in the insert's code.",
    source: "our own starting value",
    when: When::Always,
};
/// Angle behind the nose.
pub static BEHIND: Input = Input {
    path: "boring.behind",
    name: "Angle behind the nose",
    form: quantity(Kind::Angle, 0.0, 1.5),
    default: "32°",
    help: "Between the finished face and the edge that follows the nose. 32° for a 55° insert held at 93°; 5° for an 80° insert held at 95°.",
    source: "geometry of insert and holder: 180° less both angles",
    when: When::Always,
};
/// Boring bar, or thickness of the shank.
pub static BAR_DIAMETER: Input = Input {
    path: "boring.bar_diameter",
    name: "Bar diameter",
    form: quantity(Kind::Length, 0.0, 0.2),
    default: "20 mm",
    help: "Of the boring bar. For jaws turned on the outside: how thick the shank is along the axis.",
    source: "our own starting value",
    when: When::Always,
};
/// How far the bar stands out.
pub static BAR_REACH: Input = Input {
    path: "boring.bar_reach",
    name: "Bar stands out",
    form: quantity(Kind::Length, 0.0, 1.0),
    default: "60 mm",
    help: "From the edge to the holder.",
    source: "our own starting value",
    when: When::Always,
};
/// Width of the holder.
pub static HOLDER_WIDTH: Input = Input {
    path: "boring.holder_width",
    name: "Holder width",
    form: quantity(Kind::Length, 0.0, 0.5),
    default: "50 mm",
    help: "Of the block or sleeve that holds the bar.",
    source: "our own starting value",
    when: When::Always,
};
/// Roughing depth of cut.
pub static DEPTH_OF_CUT: Input = Input {
    path: "boring.depth_of_cut",
    name: "Roughing depth of cut, per side",
    form: quantity(Kind::Length, 1e-5, 0.01),
    default: "1 mm",
    help: "Per side. Jaws hit the edge with every turn: less than in a solid bore.",
    source: "our own starting value",
    when: When::Always,
};
/// Left for finishing.
pub static ALLOWANCE: Input = Input {
    path: "boring.allowance",
    name: "Left for the finishing pass, per side",
    form: quantity(Kind::Length, 0.0, 2e-3),
    default: "0.2 mm",
    help: "On the face and on the seat.",
    source: "our own starting value",
    when: When::Always,
};
/// Feed of roughing.
pub static ROUGH_FEED: Input = Input {
    path: "boring.rough_feed",
    name: "Roughing feed",
    form: quantity(Kind::Feed, 1e-6, 2e-3),
    default: "0.15 mm/rev",
    help: "Per revolution. At most half the nose radius, since the edge hits every jaw.",
    source: "our own starting value",
    when: When::Always,
};
/// Feed of finishing.
pub static FINISH_FEED: Input = Input {
    path: "boring.finish_feed",
    name: "Finishing feed",
    form: quantity(Kind::Feed, 1e-6, 2e-3),
    default: "0.08 mm/rev",
    help: "Per revolution.",
    source: "our own starting value",
    when: When::Always,
};
/// Surface speed wanted.
pub static SURFACE_SPEED: Input = Input {
    path: "boring.surface_speed",
    name: "Surface speed wanted",
    form: quantity(Kind::SurfaceSpeed, 0.01, 50.0),
    default: "120 m/min",
    help: "As for the same metal in one piece.",
    source: "our own starting value",
    when: When::Always,
};
/// Share of the surface speed for interrupted cutting.
pub static INTERRUPTED: Input = Input {
    path: "boring.interrupted",
    name: "Surface speed where the cut is broken, share",
    form: quantity(Kind::Plain, 0.1, 1.0),
    default: "75 %",
    help: "The edge enters every jaw anew; a lower surface speed saves it.",
    source: "common practice, no source",
    when: When::Always,
};
/// Greatest speed while boring on a ring.
pub static SPEED_LIMIT: Input = Input {
    path: "boring.speed_limit",
    name: "Your speed limit while boring",
    form: quantity(Kind::RotationalSpeed, 1.0, 2000.0),
    default: "900 rev/min",
    help: "Jaws that close on a loose ring are thrown, and so is the ring. Your own limit rules; 900 rev/min is a common ceiling.",
    source: "common practice, no source",
    when: When::Always,
};
/// Where the tool starts and ends.
pub static START_DISTANCE: Input = Input {
    path: "boring.start",
    name: "Tool starts in front of the jaws",
    form: quantity(Kind::Length, 2e-3, 1.0),
    default: "50 mm",
    help: "Far enough to clear the ring and whatever stands out of the jaws.",
    source: "our own starting value",
    when: When::Always,
};
/// Units of the program.
pub static PROGRAM_UNITS: Input = Input {
    path: "boring.units",
    name: "Program in",
    form: Form::Choice(&[
        choice("shown", "As lengths are shown"),
        choice("mm", "Millimetres"),
        choice("inch", "Inches"),
    ]),
    default: "shown",
    help: "Must be what the control is set to: the program itself does not switch it.",
    source: "our own starting value",
    when: When::Always,
};
/// Which way the spindle turns.
pub static SPINDLE_TURNS: Input = Input {
    path: "boring.spindle",
    name: "Spindle turns",
    form: Form::Choice(&[choice("forward", "Forward, M3"), choice("backward", "Reverse, M4")]),
    default: "forward",
    help: "As the edge of your tool faces.",
    source: "our own starting value",
    when: When::Always,
};
/// Program number.
pub static PROGRAM_NUMBER: Input = Input {
    path: "boring.number",
    name: "Program number",
    form: Form::Text(4),
    default: "",
    help: "Up to four digits, written after an O. Leave empty for none.",
    source: "our own starting value",
    when: When::Always,
};
/// Name of the program.
pub static PROGRAM_NAME: Input = Input {
    path: "boring.name",
    name: "Program name",
    form: Form::Text(40),
    default: "",
    help: "Written in the heading of the program.",
    source: "our own starting value",
    when: When::Always,
};

/// Boring the jaws, in shop order.
pub static BORING_INPUTS: &[&Input] = &[
    &STANDING,
    &SKIM,
    &SKIM_WIDTH,
    &CHAMFER,
    &RELIEF_WIDTH,
    &RELIEF_DEPTH,
    &NOSE_RADIUS,
    &BEHIND,
    &BAR_DIAMETER,
    &BAR_REACH,
    &HOLDER_WIDTH,
    &DEPTH_OF_CUT,
    &ALLOWANCE,
    &ROUGH_FEED,
    &FINISH_FEED,
    &SURFACE_SPEED,
    &INTERRUPTED,
    &SPEED_LIMIT,
    &START_DISTANCE,
    &PROGRAM_UNITS,
    &SPINDLE_TURNS,
    &PROGRAM_NUMBER,
    &PROGRAM_NAME,
];
