//! Readings of how bored jaws bear, as inputs.

use super::input::{Form, Input, When, choice, optional, quantity};
use crate::quantity::Kind;

/// Taper at the reading.
pub static READING_TAPER: Input = Input {
    path: "readings.*.taper",
    name: "Taper cut, per side",
    form: quantity(Kind::Departure, -1e-3, 1e-3),
    default: "0 µm",
    help: "Of the jaws when this reading was taken: more metal at the tip, per side. On diameter it is twice this.",
    source: "our own starting value",
    when: When::Always,
};
/// What the reading showed.
pub static READING_SHOWS: Input = Input {
    path: "readings.*.shows",
    name: "What it showed",
    form: Form::Choice(&[
        choice("gap", "A feeler goes in at the tip"),
        choice("base", "Bluing at the base only"),
        choice("even", "Bluing at both ends"),
        choice("tip", "Bluing at the tip only"),
    ]),
    default: "even",
    help: "Clamp a true plug or a sound part at the clamping pressure. With the spindle stopped, try the gap at the tip with feelers, or look at where bluing rubs off.",
    source: "our own starting value",
    when: When::Always,
};
/// Feeler at the tip.
pub static READING_GAP: Input = Input {
    path: "readings.*.gap",
    name: "Thickest feeler that goes in",
    form: optional(Kind::Departure, 1e-6, 2e-3),
    default: "",
    help: "In the middle of a jaw, at its tip. Until it is entered the reading tells nothing.",
    source: "our own starting value",
    when: When::Chosen(&READING_SHOWS, &["gap"]),
};
/// Length of the band that is rubbed blank.
pub static READING_BAND: Input = Input {
    path: "readings.*.band",
    name: "Length rubbed blank from that end",
    form: optional(Kind::Length, 1e-4, 0.5),
    default: "",
    help: "Along the axis, from the end that is rubbed: from the seat's groove, or from the chamfer. It tells how far the taper is off, so that fewer cuts are needed.",
    source: "our own starting value",
    when: When::Chosen(&READING_SHOWS, &["base", "tip"]),
};
/// Pressure of the reading.
pub static READING_PRESSURE: Input = Input {
    path: "readings.*.pressure",
    name: "Pressure then",
    form: optional(Kind::Pressure, 1e4, 3e7),
    default: "",
    help: "Leave empty if it was the clamping pressure.",
    source: "our own starting value",
    when: When::Always,
};

/// One reading.
pub static READING_INPUTS: &[&Input] =
    &[&READING_TAPER, &READING_SHOWS, &READING_GAP, &READING_BAND, &READING_PRESSURE];
