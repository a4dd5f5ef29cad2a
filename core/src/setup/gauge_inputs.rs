//! Readings of a grip gauge, as inputs.

use super::chuck_inputs::GRIP_FROM;
use super::input::{Input, When, quantity};
use crate::quantity::Kind;

const READ: When = When::Chosen(&GRIP_FROM, &["gauge"]);

/// Pressure of a gauge reading.
pub static GAUGE_PRESSURE: Input = Input {
    path: "gauge.*.pressure",
    name: "Pressure",
    form: quantity(Kind::Pressure, 1e4, 3e7),
    default: "",
    help: "The pressure at which the reading was taken.",
    source: "our own starting value",
    when: READ,
};
/// Grip of a gauge reading.
pub static GAUGE_GRIP: Input = Input {
    path: "gauge.*.grip",
    name: "Total grip",
    form: quantity(Kind::Force, 10.0, 2e6),
    default: "",
    help: "Sum over all jaws. Read after unclamping and clamping again; lowering the pressure alone does not let the grip down.",
    source: "our own starting value",
    when: READ,
};
/// Speed of a gauge reading.
pub static SPUN_SPEED: Input = Input {
    path: "spun.*.speed",
    name: "Speed",
    form: quantity(Kind::RotationalSpeed, 0.0, 2000.0),
    default: "",
    help: "With these jaws at about this diameter, all at one pressure; standstill counts as one. Mind the plate's speed: the gauge is lighter than a part, the jaws are not.",
    source: "our own starting value",
    when: READ,
};
/// Grip of a gauge reading at speed.
pub static SPUN_GRIP: Input = Input {
    path: "spun.*.grip",
    name: "Total grip at that speed",
    form: quantity(Kind::Force, 10.0, 2e6),
    default: "",
    help: "Sum over all jaws. Two readings tell how much of the jaws' spin force the part feels, three how far to trust it.",
    source: "our own starting value",
    when: READ,
};

/// What a grip gauge showed.
pub static GAUGE_INPUTS: &[&Input] = &[&GAUGE_PRESSURE, &GAUGE_GRIP, &SPUN_SPEED, &SPUN_GRIP];
