//! Jaws that have been bored before, as inputs.

use super::input::{Form, Input, When, choice, optional, quantity};
use crate::quantity::Kind;

const BACK: When = When::Chosen(&RECUT_JAWS, &["bored"]);

/// Whether the jaws have been bored before.
pub static RECUT_JAWS: Input = Input {
    path: "recut.jaws",
    name: "Jaws",
    form: Form::Choice(&[choice("new", "New blanks"), choice("bored", "Bored before")]),
    default: "new",
    help: "Jaws that come back need only what cleans them up, or nothing.",
    source: "our own starting value",
    when: When::Always,
};
/// Diameter at which the jaws stand on the ring.
pub static STANDING: Input = Input {
    path: "recut.standing",
    name: "Jaws stand at, on the ring",
    form: optional(Kind::Length, 1e-3, 2.0),
    default: "",
    help: "Diameter of the old gripping faces, clamped on the ring, touched off with the boring tool on each jaw: midway between the smallest and the largest.",
    source: "our own starting value",
    when: BACK,
};
/// Whether the jaws are mounted as before.
pub static AS_BEFORE: Input = Input {
    path: "recut.as_before",
    name: "Mounted as before",
    form: Form::Choice(&[
        choice("ask", "Not answered"),
        choice("yes", "Same chuck, same teeth, same order"),
        choice("no", "No, or not known"),
    ]),
    default: "ask",
    help: "Jaws run true again only on the chuck, the teeth and the master jaws they were bored on. It decides about jaws that are on size.",
    source: "our own starting value",
    when: BACK,
};
/// Run-out of the old faces on the ring.
pub static OLD_RUNOUT: Input = Input {
    path: "recut.runout",
    name: "Run-out of the old faces, full reading",
    form: quantity(Kind::Departure, 0.0, 5e-3),
    default: "50 µm",
    help: "Indicator on the faces while the chuck is turned by hand, clamped on the ring. Measure it before jaws are used as they are.",
    source: "our own starting value",
    when: BACK,
};
/// Taper that is in the old faces.
pub static OLD_TAPER: Input = Input {
    path: "recut.taper",
    name: "Taper in the old faces, per side",
    form: quantity(Kind::Departure, -1e-3, 1e-3),
    default: "0 µm",
    help: "More metal at the tip counts positive, as for the new taper.",
    source: "our own starting value",
    when: BACK,
};
/// Depth of the old bore.
pub static OLD_DEPTH: Input = Input {
    path: "recut.depth",
    name: "Depth of the old bore, front to seat",
    form: optional(Kind::Length, 1e-4, 0.5),
    default: "",
    help: "From the front of the jaws to the face on which the part sat. It tells how much comes off that face. Leave empty if it is the new depth.",
    source: "our own starting value",
    when: BACK,
};
/// Depth of damage.
pub static DAMAGE: Input = Input {
    path: "recut.damage",
    name: "Deepest dent or scratch",
    form: quantity(Kind::Length, 0.0, 0.02),
    default: "0 mm",
    help: "Below the old face.",
    source: "our own starting value",
    when: BACK,
};
/// Stock that one recut may take.
pub static STOCK: Input = Input {
    path: "recut.stock",
    name: "Stock one recut takes, per side",
    form: quantity(Kind::Length, 1e-5, 0.02),
    default: "0.25 mm",
    help: "What you are content to cut away each time beyond what cleans up.",
    source: "our own starting value",
    when: BACK,
};
/// Departure from the target with which jaws are used as they are.
pub static REUSE_TOLERANCE: Input = Input {
    path: "recut.tolerance",
    name: "Jaws used as they are within, on diameter",
    form: quantity(Kind::Departure, 0.0, 1e-3),
    default: "20 µm",
    help: "How far the old diameter may be from the one wanted.",
    source: "our own starting value",
    when: BACK,
};
/// Metal measured before the counterbores.
pub static METAL_LEFT: Input = Input {
    path: "recut.metal",
    name: "Metal to the screw counterbores now",
    form: optional(Kind::Length, 0.0, 0.5),
    default: "",
    help: "Measured from the old face. Leave empty to take it from the tooth, where that is worked out.",
    source: "our own starting value",
    when: BACK,
};

/// Jaws that come back, in shop order.
pub static RECUT_INPUTS: &[&Input] = &[
    &RECUT_JAWS,
    &STANDING,
    &AS_BEFORE,
    &OLD_RUNOUT,
    &OLD_TAPER,
    &OLD_DEPTH,
    &DAMAGE,
    &STOCK,
    &REUSE_TOLERANCE,
    &METAL_LEFT,
];
