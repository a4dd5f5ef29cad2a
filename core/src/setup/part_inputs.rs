//! The part and how it is gripped, as inputs.

use super::input::{Form, Input, MaterialUse, When, choice, optional, quantity};
use crate::quantity::Kind;

const OURS: &str = "our own starting value";
const RING: When = When::Chosen(&PART_SHAPE, &["ring"]);
const STEPS: When = When::Chosen(&PART_SHAPE, &["steps"]);

/// What the job is called.
pub static JOB_NAME: Input = Input {
    path: "job.name",
    name: "Job",
    form: Form::Text(80),
    default: "",
    help: "Your own words for this job. It heads the sheet and the saved file.",
    source: OURS,
    when: When::Always,
};

/// Which way the jaws grip.
pub static GRIP_SIDE: Input = Input {
    path: "grip.side",
    name: "Grip",
    form: Form::Choice(&[
        choice("outside", "Outside grip (OD): jaws close on the part"),
        choice("inside", "Inside grip (ID): jaws open into the bore"),
    ]),
    default: "outside",
    help: "Outside grip: the jaws push toward the axis, and spin takes grip away. Inside grip: they push outward, and spin adds grip.",
    source: OURS,
    when: When::Always,
};
/// How the shape of the part is given.
pub static PART_SHAPE: Input = Input {
    path: "part.shape",
    name: "Shape",
    form: Form::Choice(&[choice("ring", "Plain ring or disc"), choice("steps", "Steps along the axis")]),
    default: "ring",
    help: "A plain ring needs three sizes. Flanges, floors, shoulders and cones are given as steps.",
    source: "our own starting value",
    when: When::Always,
};
/// Outside diameter of the part.
pub static OUTSIDE_DIAMETER: Input = Input {
    path: "part.outside_diameter",
    name: "Outside diameter",
    form: quantity(Kind::Length, 1e-3, 2.0),
    default: "160 mm",
    help: "The part's outside as it sits in the jaws for this operation.",
    source: OURS,
    when: RING,
};
/// Bore diameter of the part.
pub static BORE_DIAMETER: Input = Input {
    path: "part.bore_diameter",
    name: "Bore diameter",
    form: quantity(Kind::Length, 0.0, 2.0),
    default: "140 mm",
    help: "The part's bore as it sits in the jaws. 0 means solid. The wall left at the last cut decides how round the part comes out.",
    source: OURS,
    when: RING,
};
/// Length of the part.
pub static PART_LENGTH: Input = Input {
    path: "part.length",
    name: "Length",
    form: quantity(Kind::Length, 1e-3, 2.0),
    default: "30 mm",
    help: "Along the axis, from end to end.",
    source: OURS,
    when: RING,
};
/// Material of the part.
pub static PART_MATERIAL: Input = Input {
    path: "part.material",
    name: "Material",
    form: Form::Material(MaterialUse::Part),
    default: "carbon-steel-c45",
    help: "Sets stiffness, weight, yield and cutting resistance. Open the figures below to put in your own.",
    source: OURS,
    when: When::Always,
};
/// Young's modulus in place of the material's.
pub static PART_MODULUS: Input = Input {
    path: "part.modulus",
    name: "Modulus of elasticity E",
    form: optional(Kind::Stress, 1e8, 1e12),
    default: "",
    help: "Only if you have a better figure than the material table.",
    source: "range: plastics to tungsten carbide, from memory",
    when: When::Always,
};
/// Yield stress in place of the material's.
pub static PART_YIELD: Input = Input {
    path: "part.yield",
    name: "Yield stress",
    form: optional(Kind::Stress, 1e6, 5e9),
    default: "",
    help: "From the material certificate. The jaws must not press the part beyond it.",
    source: "range: soft plastics to hardened steel, from memory",
    when: When::Always,
};
/// Specific cutting force in place of the material's.
pub static PART_CUTTING_RESISTANCE: Input = Input {
    path: "part.cutting_resistance",
    name: "Cutting resistance kc1.1",
    form: optional(Kind::Stress, 5e7, 1e10),
    default: "",
    help: "Force per area for a chip 1 mm thick and 1 mm wide. Cutting-data tables differ by 10 to 20 %.",
    source: "range: plastics to hardened steel, from memory",
    when: When::Always,
};
/// Exponent of the chip thickness in place of the material's.
pub static PART_CHIP_EXPONENT: Input = Input {
    path: "part.chip_exponent",
    name: "Chip thickness exponent mc",
    form: optional(Kind::Plain, 0.0, 0.6),
    default: "",
    help: "How much thinner chips cost more force for their size; goes with kc1.1.",
    source: "range: Kienzle's rule in German cutting tables, from memory",
    when: When::Always,
};
/// How out of round the released part may be.
pub static ROUNDNESS_LIMIT: Input = Input {
    path: "part.roundness_limit",
    name: "Roundness allowed",
    form: quantity(Kind::Departure, 1e-7, 5e-3),
    default: "20 µm",
    help: "The roundness tolerance on the drawing (ISO 1101), for the surface turned in this clamping, after release.",
    source: OURS,
    when: When::Always,
};
/// How much an indicator may swing on the clamped part.
pub static RUNOUT_LIMIT: Input = Input {
    path: "part.runout_limit",
    name: "Run-out allowed (TIR)",
    form: quantity(Kind::Departure, 1e-7, 5e-3),
    default: "30 µm",
    help: "Full reading of an indicator on a round surface of the clamped part, from the squeeze of the jaws alone.",
    source: OURS,
    when: When::Always,
};
/// How much a turned diameter may change on release.
pub static SIZE_LIMIT: Input = Input {
    path: "part.size_limit",
    name: "Size change allowed",
    form: optional(Kind::Departure, 1e-7, 5e-3),
    default: "",
    help: "On diameter, between what you measure in the jaws and what you measure on the bench. Leave empty if the size is corrected by offset.",
    source: OURS,
    when: When::Always,
};

/// How far along the axis the jaws hold.
pub static GRIP_LENGTH: Input = Input {
    path: "grip.length",
    name: "Grip length",
    form: quantity(Kind::Length, 5e-4, 0.5),
    default: "20 mm",
    help: "How deep the jaws are bored, and so how much of the part's length they touch.",
    source: OURS,
    when: When::Always,
};
/// Where the grip starts along the part.
pub static GRIP_START: Input = Input {
    path: "grip.start",
    name: "Grip starts at",
    form: quantity(Kind::Length, 0.0, 4.0),
    default: "0 mm",
    help: "From the chuck side of the part to the bottom of the jaw bore.",
    source: "our own starting value",
    when: STEPS,
};
/// Upper deviation of the gripped diameter.
pub static LARGEST_PART: Input = Input {
    path: "grip.upper_deviation",
    name: "Gripped diameter, upper deviation",
    form: quantity(Kind::Departure, -5e-3, 5e-3),
    default: "0 µm",
    help: "How far above nominal the largest part may be, on diameter. The worst of the range is what is told.",
    source: "our own starting value",
    when: When::Always,
};
/// Lower deviation of the gripped diameter.
pub static SMALLEST_PART: Input = Input {
    path: "grip.lower_deviation",
    name: "Gripped diameter, lower deviation",
    form: quantity(Kind::Departure, -5e-3, 5e-3),
    default: "0 µm",
    help: "How far below nominal the smallest part may be, on diameter; negative as on the drawing.",
    source: "our own starting value",
    when: When::Always,
};
/// Whether the part rests against the bottom of the jaw bore.
pub static SEATED: Input = Input {
    path: "grip.seat",
    name: "Seat",
    form: Form::Choice(&[
        choice("seated", "Part rests on the jaw step"),
        choice("free", "Part is held by friction alone"),
    ]),
    default: "seated",
    help: "A part pressed back against the step cannot be pushed into the chuck, and tips less easily.",
    source: OURS,
    when: When::Always,
};
/// What stands in the tail end.
pub static TAIL: Input = Input {
    path: "grip.tail",
    name: "Tail support",
    form: Form::Choice(&[choice("none", "None"), choice("centre", "Live centre in the tail end")]),
    default: "none",
    help: "A centre presses the part on the jaw step and keeps its far end from tipping. It takes no torque. The tail end must be solid.",
    source: OURS,
    when: When::Always,
};
/// How hard the centre presses.
pub static THRUST: Input = Input {
    path: "grip.thrust",
    name: "Thrust of the centre, at least",
    form: quantity(Kind::Force, 50.0, 1e5),
    default: "2 kN",
    help: "The least that the quill gives: its pressure times its piston's area. A quill moved by hand gives what nobody knows: measure it, or enter little.",
    source: "our own starting value, no source; range: bench lathes to heavy quills, from memory",
    when: When::Chosen(&TAIL, &["centre"]),
};
/// Friction between jaw and part.
pub static FRICTION: Input = Input {
    path: "grip.friction",
    name: "Friction, jaw to part",
    form: quantity(Kind::Plain, 0.02, 0.6),
    default: "0.10",
    help: "0.10 is a careful figure for bored jaws on a clean turned part, 0.07 when oily or ground. Dry laboratory figures (0.5 and more) do not belong here: coolant gets in.",
    source: "bored jaws on turned or ground parts 0.07 to 0.10, VDI 3106 as used in the trade, from memory",
    when: When::Always,
};
/// The least hold factor the user accepts.
pub static REQUIRED_HOLD: Input = Input {
    path: "grip.required_hold",
    name: "Hold factor wanted",
    form: quantity(Kind::Plain, 1.0, 10.0),
    default: "2",
    help: "How many times the cutting load the grip must bear. 1.5 is the least in the trade's rule, 2 is usual for a steady cut; interrupted or overhung work wants 3 to 4.",
    source: "VDI 3106 asks 1.5 or more, as quoted in secondary literature; 2 and 4 are common practice, no source",
    when: When::Always,
};

/// The job, the part and the grip, in shop order.
pub static PART_INPUTS: &[&Input] = &[
    &JOB_NAME,
    &GRIP_SIDE,
    &PART_SHAPE,
    &OUTSIDE_DIAMETER,
    &BORE_DIAMETER,
    &PART_LENGTH,
    &PART_MATERIAL,
    &ROUNDNESS_LIMIT,
    &RUNOUT_LIMIT,
    &SIZE_LIMIT,
    &PART_MODULUS,
    &PART_YIELD,
    &PART_CUTTING_RESISTANCE,
    &PART_CHIP_EXPONENT,
    &GRIP_LENGTH,
    &GRIP_START,
    &LARGEST_PART,
    &SMALLEST_PART,
    &SEATED,
    &TAIL,
    &THRUST,
    &FRICTION,
    &REQUIRED_HOLD,
];
