//! Readings of an indicator around the part, as inputs.

use super::input::{Form, Input, When, choice, optional, quantity};
use crate::quantity::Kind;

const READ: When = When::Chosen(&USE, &["once", "twice"]);
const TWICE: When = When::Chosen(&USE, &["twice"]);

/// Whether the indicator was read.
pub static USE: Input = Input {
    path: "indicator.use",
    name: "Indicator read",
    form: Form::Choice(&[choice("no", "No"), choice("once", "Once"), choice("twice", "Twice, at two grips")]),
    default: "no",
    help: "Readings around the part tell why it is out. A second set after loosening, or at a lower pressure, tells what the jaws squeeze from what is bored off-centre.",
    source: "our own starting value",
    when: When::Always,
};
/// Number of stations.
pub static STATIONS: Input = Input {
    path: "indicator.stations",
    name: "Stations around the part",
    form: quantity(Kind::Plain, 6.0, 36.0),
    default: "12",
    help: "Evenly spaced; some may be left out. Four for each jaw or more tell most: with N stations what goes round n times and N − n times look alike.",
    source: "sampling theorem",
    when: READ,
};
/// Where station 1 stands.
pub static START: Input = Input {
    path: "indicator.start",
    name: "Station 1 from the middle of jaw 1",
    form: quantity(Kind::Angle, -core::f64::consts::PI, core::f64::consts::PI),
    default: "0 °",
    help: "In the direction in which the jaws are numbered, as are the stations. 0 is best: a station at every jaw.",
    source: "our own starting value",
    when: READ,
};
/// Which surface was read.
pub static SURFACE: Input = Input {
    path: "indicator.surface",
    name: "Read on",
    form: Form::Choice(&[choice("outside", "The outside"), choice("bore", "The bore")]),
    default: "outside",
    help: "The hand goes up as the plunger goes in: outward on an outside, toward the axis in a bore. The page allows for it.",
    source: "our own starting value",
    when: READ,
};
/// Where along the part.
pub static DISTANCE: Input = Input {
    path: "indicator.distance",
    name: "At, from the front of the jaws",
    form: optional(Kind::Length, -2.0, 2.0),
    default: "",
    help: "Minus toward the chuck. Left empty: at the free end of the part.",
    source: "our own starting value",
    when: READ,
};
/// In which state.
pub static STATE: Input = Input {
    path: "indicator.state",
    name: "The part was",
    form: Form::Choice(&[
        choice("clamped", "Clamped; the surface was true before"),
        choice("released", "Turned in these jaws, then released"),
    ]),
    default: "clamped",
    help: "Clamped, a surface that was true shows what the jaws press into it. Turned true while clamped, it shows the opposite once released.",
    source: "our own starting value",
    when: READ,
};
/// What one on the dial is.
pub static UNIT: Input = Input {
    path: "indicator.unit",
    name: "One on the dial is",
    form: Form::Choice(&[
        choice("0.01 mm", "0.01 mm"),
        choice("0.001 mm", "0.001 mm (1 µm)"),
        choice("1 mm", "1 mm"),
        choice("0.001 in", "0.001 in"),
        choice("0.0001 in", "0.0001 in"),
        choice("1 in", "1 in"),
    ]),
    default: "0.01 mm",
    help: "Readings are typed as they stand on the dial: 3.5 is three and a half of these. Where the dial is set to nought does not matter.",
    source: "our own starting value",
    when: READ,
};
/// What can be read.
pub static RESOLUTION: Input = Input {
    path: "indicator.resolution",
    name: "Smallest step you can read",
    form: quantity(Kind::Departure, 1e-8, 1e-3),
    default: "5 µm",
    help: "Half a division, for most. Nothing is told finer than the indicator shows.",
    source: "half a division of 0.01 mm: common practice, no source",
    when: READ,
};
/// Pressure of the first set.
pub static PRESSURE: Input = Input {
    path: "indicator.pressure",
    name: "Pressure then",
    form: optional(Kind::Pressure, 1e4, 3e7),
    default: "",
    help: "At which the part was held when it was read, or turned. Leave empty if it was the clamping pressure.",
    source: "our own starting value",
    when: READ,
};
/// Pressure of the second set.
pub static SECOND_PRESSURE: Input = Input {
    path: "indicator.second_pressure",
    name: "Pressure of the second set",
    form: optional(Kind::Pressure, 1e4, 3e7),
    default: "",
    help: "Half of the first or less. Leave empty if the jaws were loosened until they hardly grip. Do not move the part, and read the same stations.",
    source: "our own starting value",
    when: TWICE,
};
/// The chuck condition that was taken over.
pub static ADOPTED: Input = Input {
    path: "indicator.adopted",
    name: "Chuck condition taken from readings",
    form: optional(Kind::Plain, 0.2, 1.0),
    default: "",
    help: "Written here when a corrected condition is adopted. While the chuck's condition is this, the findings say that it comes from measured readings.",
    source: "your readings",
    when: READ,
};
/// The tilt stiffness that was taken over.
pub static ADOPTED_TILT: Input = Input {
    path: "indicator.adopted_tilt",
    name: "Tilt stiffness taken from readings",
    form: optional(Kind::TiltStiffness, 1e4, 1e9),
    default: "",
    help: "Written here when a corrected tilt stiffness is adopted. While the master jaw's is this, it is listed as from the indicator.",
    source: "your readings",
    when: READ,
};
/// A reading.
pub static DIAL_READING: Input = Input {
    path: "dial.*.reading",
    name: "Reading",
    form: optional(Kind::Plain, -1e5, 1e5),
    default: "",
    help: "As it stands on the dial, with its sign. Leave empty what was not read.",
    source: "your readings",
    when: READ,
};
/// A reading of the second set.
pub static DIAL_SECOND: Input = Input {
    path: "dial.*.second",
    name: "Second reading",
    form: optional(Kind::Plain, -1e5, 1e5),
    default: "",
    help: "After loosening, or at the lower pressure.",
    source: "your readings",
    when: TWICE,
};

/// What an indicator showed.
pub static INDICATOR_INPUTS: &[&Input] = &[
    &USE,
    &STATIONS,
    &START,
    &SURFACE,
    &DISTANCE,
    &STATE,
    &UNIT,
    &RESOLUTION,
    &PRESSURE,
    &SECOND_PRESSURE,
    &ADOPTED,
    &ADOPTED_TILT,
    &DIAL_READING,
    &DIAL_SECOND,
];
