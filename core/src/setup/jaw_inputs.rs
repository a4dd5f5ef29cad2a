//! The jaws, and pressure and speed of the run, as inputs.

use super::input::{Form, Input, MaterialUse, When, choice, optional, quantity};
use crate::quantity::Kind;

/// Shape of the top jaws.
pub static JAW_KIND: Input = Input {
    path: "jaws.kind",
    name: "Soft jaws",
    form: Form::Choice(&[
        choice("ordinary", "Ordinary: a block"),
        choice("wide", "Wide: a sector"),
        choice("pie", "Pie: full circle, sawn apart"),
    ]),
    default: "ordinary",
    help: "Ordinary jaws touch along their width. Wide jaws wrap further. Pie jaws wrap the whole part but for the saw cuts.",
    source: "our own starting value",
    when: When::Always,
};
/// Material of the top jaws.
pub static JAW_MATERIAL: Input = Input {
    path: "jaws.material",
    name: "Jaw material",
    form: Form::Material(MaterialUse::Jaw),
    default: "low-carbon-steel-1018",
    help: "Aluminium jaws weigh a third of steel ones, and mark the part less.",
    source: "our own starting value",
    when: When::Always,
};
/// Width of an ordinary jaw.
pub static JAW_WIDTH: Input = Input {
    path: "jaws.width",
    name: "Jaw width",
    form: quantity(Kind::Length, 2e-3, 0.5),
    default: "40 mm",
    help: "Across the jaw block, along the circle it grips.",
    source: "our own starting value",
    when: When::Chosen(&JAW_KIND, &["ordinary"]),
};
/// Angle a wide jaw covers.
pub static JAW_ANGLE: Input = Input {
    path: "jaws.angle",
    name: "Angle each jaw covers",
    form: quantity(Kind::Angle, 0.05, 3.1),
    default: "90°",
    help: "The wrap of one jaw. Together the jaws cannot cover more than 360°.",
    source: "our own starting value",
    when: When::Chosen(&JAW_KIND, &["wide"]),
};
/// Width of the saw cut between pie jaws.
pub static SAW_CUT: Input = Input {
    path: "jaws.saw_cut",
    name: "Saw cut between jaws",
    form: quantity(Kind::Length, 1e-4, 0.05),
    default: "3 mm",
    help: "The gap left between neighbouring pie jaws when they grip.",
    source: "our own starting value",
    when: When::Chosen(&JAW_KIND, &["pie"]),
};
/// Radial length of the blank jaw.
pub static JAW_LENGTH: Input = Input {
    path: "jaws.length",
    name: "Jaw length, toward the axis",
    form: quantity(Kind::Length, 5e-3, 1.0),
    default: "45 mm",
    help: "From the inner to the outer end of the blank, along the chuck's radius.",
    source: "our own starting value",
    when: When::Always,
};
/// Height of the blank jaw above the serrations.
pub static JAW_HEIGHT: Input = Input {
    path: "jaws.height",
    name: "Jaw height",
    form: quantity(Kind::Length, 5e-3, 0.5),
    default: "45 mm",
    help: "From the serrations to the front of the jaw. Tall jaws lean more and are thrown harder.",
    source: "our own starting value",
    when: When::Always,
};
/// How far jaw metal reaches past the gripping face under the part.
pub static JAW_STEP: Input = Input {
    path: "jaws.step",
    name: "Step under the part",
    form: quantity(Kind::Length, 0.0, 0.5),
    default: "10 mm",
    help: "Jaw metal left under the part, radially, for it to seat on.",
    source: "our own starting value",
    when: When::Always,
};
/// Diameter the jaws are bored to.
pub static BORED_DIAMETER: Input = Input {
    path: "jaws.bored_diameter",
    name: "Jaws bored to",
    form: optional(Kind::Length, 1e-3, 2.0),
    default: "",
    help: "Leave empty for the nominal gripped diameter. Bored larger, jaws on an outside bear in the middle; bored smaller, at their edges.",
    source: "our own starting value",
    when: When::Always,
};
/// Taper bored into the jaws.
pub static TAPER: Input = Input {
    path: "jaws.taper",
    name: "Taper, per side, more metal at the tip",
    form: quantity(Kind::Departure, -1e-3, 1e-3),
    default: "0 µm",
    help: "How much more metal stands at the front of the bore than at its bottom, per side. On diameter it is twice this. It cancels the jaws opening at the tip.",
    source: "our own starting value",
    when: When::Always,
};
/// Pressure on the boring ring.
pub static BORING_PRESSURE: Input = Input {
    path: "jaws.boring_pressure",
    name: "Pressure while bored",
    form: optional(Kind::Pressure, 0.0, 3e7),
    default: "",
    help: "Clamping pressure on the boring ring or plug while the jaws were bored. Leave empty if the same as for the part; 0 if they were bored loose.",
    source: "our own starting value",
    when: When::Always,
};
/// Height at which the boring ring bears.
pub static RING_HEIGHT: Input = Input {
    path: "jaws.ring_height",
    name: "Boring ring above the serrations",
    form: quantity(Kind::Length, 0.0, 0.5),
    default: "20 mm",
    help: "Middle of the ring or plug on which the jaws closed while they were bored.",
    source: "our own starting value",
    when: When::Always,
};
/// How the jaw mass is known.
pub static JAW_MASS_FROM: Input = Input {
    path: "jaws.mass_from",
    name: "Jaw mass",
    form: Form::Choice(&[choice("geometry", "Worked out from its size"), choice("weighed", "Weighed")]),
    default: "geometry",
    help: "Worked out: the blank less what is bored away, screw holes not taken off. Weighed is better.",
    source: "our own starting value",
    when: When::Always,
};
/// Mass of one top jaw.
pub static JAW_MASS: Input = Input {
    path: "jaws.mass",
    name: "One top jaw weighs",
    form: quantity(Kind::Mass, 1e-3, 200.0),
    default: "1 kg",
    help: "As bored, on the scales.",
    source: "our own starting value",
    when: When::Chosen(&JAW_MASS_FROM, &["weighed"]),
};
/// Radius of the centre of mass of one top jaw.
pub static JAW_MASS_RADIUS: Input = Input {
    path: "jaws.mass_radius",
    name: "Top jaw's centre of mass from the axis",
    form: optional(Kind::Length, 1e-3, 2.0),
    default: "",
    help: "Leave empty to have it worked out.",
    source: "our own starting value",
    when: When::Chosen(&JAW_MASS_FROM, &["weighed"]),
};
/// Clamping pressure.
pub static PRESSURE: Input = Input {
    path: "run.pressure",
    name: "Clamping pressure",
    form: quantity(Kind::Pressure, 1e4, 3e7),
    default: "1.5 MPa",
    help: "What the gauge on the machine shows while the part is clamped for this cut.",
    source: "our own starting value",
    when: When::Always,
};
/// Whether all cuts are taken at one pressure.
pub static PRESSURES: Input = Input {
    path: "run.pressures",
    name: "Clamping pressures",
    form: Form::Choice(&[choice("one", "One for all cuts"), choice("two", "Two: rough, then clamp anew and finish")]),
    default: "one",
    help: "Rough at a pressure that holds, then unclamp, clamp again at a lower one and finish: the released shape follows the last pressure.",
    source: "our own starting value",
    when: When::Always,
};
/// Clamping pressure for finishing.
pub static FINISH_PRESSURE: Input = Input {
    path: "run.finish_pressure",
    name: "Clamping pressure for finishing",
    form: optional(Kind::Pressure, 1e4, 3e7),
    default: "",
    help: "At most the one for roughing; leave empty for the same. Lowering the pressure on a clamped part does not let the grip down: unclamp first.",
    source: "our own starting value",
    when: When::Chosen(&PRESSURES, &["two"]),
};
/// Spindle speed.
pub static SPEED: Input = Input {
    path: "run.speed",
    name: "Spindle speed",
    form: quantity(Kind::RotationalSpeed, 0.0, 2000.0),
    default: "1200 rev/min",
    help: "The fastest the spindle turns in this operation. With constant surface speed: at the smallest diameter, or at its limit.",
    source: "our own starting value",
    when: When::Always,
};

/// The jaws, in shop order.
pub static JAW_INPUTS: &[&Input] = &[
    &JAW_KIND,
    &JAW_MATERIAL,
    &JAW_WIDTH,
    &JAW_ANGLE,
    &SAW_CUT,
    &JAW_LENGTH,
    &JAW_HEIGHT,
    &JAW_STEP,
    &BORED_DIAMETER,
    &TAPER,
    &BORING_PRESSURE,
    &RING_HEIGHT,
    &JAW_MASS_FROM,
    &JAW_MASS,
    &JAW_MASS_RADIUS,
];

/// What is set at the machine.
pub static RUN_INPUTS: &[&Input] = &[&PRESSURE, &PRESSURES, &FINISH_PRESSURE, &SPEED];
