//! One cut, as inputs.

use super::input::{Form, Input, When, choice, quantity};
use super::jaw_inputs::PRESSURES;
use crate::quantity::Kind;

/// What the cut does.
pub static CUT_KIND: Input = Input {
    path: "cuts.*.kind",
    name: "Cut",
    form: Form::Choice(&[
        choice("turning", "Turning the outside"),
        choice("facing", "Facing"),
        choice("boring", "Boring"),
        choice("grooving", "Grooving or parting"),
        choice("drilling", "Drilling"),
        choice("power", "From spindle power"),
    ]),
    default: "turning",
    help: "Several cuts may be listed; the one that strains the grip most decides.",
    source: "our own starting value",
    when: When::Always,
};
/// At which of two pressures it is taken.
pub static CUT_STAGE: Input = Input {
    path: "cuts.*.stage",
    name: "Taken while",
    form: Form::Choice(&[
        choice("rough", "Roughing, at the clamping pressure"),
        choice("finish", "Finishing, at its own pressure"),
    ]),
    default: "rough",
    help: "Each cut is held against slipping at its own pressure.",
    source: "our own starting value",
    when: When::Chosen(&PRESSURES, &["two"]),
};
/// Diameter at which the tool cuts.
pub static CUT_DIAMETER: Input = Input {
    path: "cuts.*.diameter",
    name: "Diameter at the tool",
    form: quantity(Kind::Length, 0.0, 2.0),
    default: "160 mm",
    help: "Where the tool touches the part. The larger, the more it turns the part in the jaws.",
    source: "our own starting value",
    when: When::Chosen(&CUT_KIND, &["turning", "facing", "boring", "grooving", "power"]),
};
/// Distance of the tool from the front of the jaws.
pub static CUT_DISTANCE: Input = Input {
    path: "cuts.*.distance",
    name: "Tool in front of the jaws by",
    form: quantity(Kind::Length, -0.5, 2.0),
    default: "10 mm",
    help: "Along the axis, at its farthest. The farther out, the more it tips the part. Negative inside the jaws.",
    source: "our own starting value",
    when: When::Always,
};
/// Depth of cut.
pub static CUT_DEPTH: Input = Input {
    path: "cuts.*.depth",
    name: "Depth of cut, per side",
    form: quantity(Kind::Length, 1e-5, 0.05),
    default: "1 mm",
    help: "On radius; for facing, along the axis.",
    source: "our own starting value",
    when: When::Chosen(&CUT_KIND, &["turning", "facing", "boring"]),
};
/// Width of a groove.
pub static CUT_WIDTH: Input = Input {
    path: "cuts.*.width",
    name: "Width of the insert",
    form: quantity(Kind::Length, 1e-4, 0.05),
    default: "3 mm",
    help: "The whole width cuts at once.",
    source: "our own starting value",
    when: When::Chosen(&CUT_KIND, &["grooving"]),
};
/// Drill diameter.
pub static DRILL_DIAMETER: Input = Input {
    path: "cuts.*.drill",
    name: "Drill diameter",
    form: quantity(Kind::Length, 1e-4, 0.3),
    default: "20 mm",
    help: "Into the solid.",
    source: "our own starting value",
    when: When::Chosen(&CUT_KIND, &["drilling"]),
};
/// Feed per revolution.
pub static CUT_FEED: Input = Input {
    path: "cuts.*.feed",
    name: "Feed",
    form: quantity(Kind::Feed, 1e-6, 5e-3),
    default: "0.2 mm/rev",
    help: "Per turn of the spindle.",
    source: "our own starting value",
    when: When::Chosen(&CUT_KIND, &["turning", "facing", "boring", "grooving", "drilling"]),
};
/// Angle of the cutting edge to the feed.
pub static APPROACH_ANGLE: Input = Input {
    path: "cuts.*.approach",
    name: "Cutting edge angle",
    form: quantity(Kind::Angle, 0.17, 2.36),
    default: "95°",
    help: "Between the cutting edge and the direction of feed (kappa, ISO 3002-1); 95° for the usual turning and facing tool.",
    source: "range 10° to 135°",
    when: When::Chosen(&CUT_KIND, &["turning", "facing", "boring"]),
};
/// Power at the spindle.
pub static CUT_POWER: Input = Input {
    path: "cuts.*.power",
    name: "Power the cut takes",
    form: quantity(Kind::Power, 1.0, 5e5),
    default: "3 kW",
    help: "From the load meter: its share of the drive's power.",
    source: "our own starting value",
    when: When::Chosen(&CUT_KIND, &["power"]),
};
/// Feed force as a share of the cutting force.
pub static FEED_SHARE: Input = Input {
    path: "cuts.*.feed_share",
    name: "Feed force, share of cutting force",
    form: quantity(Kind::Plain, 0.0, 2.0),
    default: "0.5",
    help: "Along the feed.",
    source: "0.3 to 0.6, from memory",
    when: When::Chosen(&CUT_KIND, &["turning", "facing", "boring", "grooving", "power"]),
};
/// Passive force as a share of the cutting force.
pub static PASSIVE_SHARE: Input = Input {
    path: "cuts.*.passive_share",
    name: "Passive force, share of cutting force",
    form: quantity(Kind::Plain, 0.0, 2.0),
    default: "0.4",
    help: "Square to the machined surface: it pushes the part away from the tool. A large nose radius or a light cut raises it.",
    source: "0.2 to 0.5, from memory",
    when: When::Chosen(&CUT_KIND, &["turning", "facing", "boring", "power"]),
};
/// Allowance for a worn edge.
pub static WEAR: Input = Input {
    path: "cuts.*.wear",
    name: "Worn edge allowance",
    form: quantity(Kind::Plain, 1.0, 3.0),
    default: "1.3",
    help: "1 for a fresh edge; a worn one takes 1.3 to 1.5 times the force.",
    source: "from memory",
    when: When::Chosen(&CUT_KIND, &["turning", "facing", "boring", "grooving", "drilling"]),
};
/// Which way the feed goes along the axis.
pub static FEED_WAY: Input = Input {
    path: "cuts.*.feed_way",
    name: "Feed goes",
    form: Form::Choice(&[choice("toward", "Toward the chuck"), choice("away", "Away from the chuck")]),
    default: "toward",
    help: "Feeding away from the chuck pulls the part out of the jaws.",
    source: "our own starting value",
    when: When::Chosen(&CUT_KIND, &["turning", "boring", "power"]),
};

/// One cut, in shop order.
pub static CUT_INPUTS: &[&Input] = &[
    &CUT_KIND,
    &CUT_STAGE,
    &CUT_DIAMETER,
    &CUT_DISTANCE,
    &CUT_DEPTH,
    &CUT_WIDTH,
    &DRILL_DIAMETER,
    &CUT_FEED,
    &APPROACH_ANGLE,
    &CUT_POWER,
    &FEED_SHARE,
    &PASSIVE_SHARE,
    &WEAR,
    &FEED_WAY,
];
