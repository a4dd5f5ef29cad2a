//! How well what goes into a job is known, as inputs. Each range is meant either way of what is entered elsewhere.

use super::chuck_inputs::GRIP_FROM;
use super::input::{Input, When, quantity};
use crate::quantity::Kind;

const fn share(path: &'static str, name: &'static str, most: f64, texts: [&'static str; 3], when: When) -> Input {
    let [default, help, source] = texts;
    Input { path, name, form: quantity(Kind::Plain, 0.0, most), default, help, source, when }
}

/// Share by which friction may be off.
pub static FRICTION_RANGE: Input = share(
    "ranges.friction",
    "Friction, share either way",
    0.9,
    [
        "0.3",
        "Coolant, oil and the surface change it from part to part. 0.3 of 0.10 is 0.07 to 0.13.",
        "0.07 for ground or oily to 0.12 and more for rough turned parts, VDI 3106 as used in the trade, from memory",
    ],
    When::Always,
);
/// Share by which the chuck's condition may be off.
pub static CONDITION_RANGE: Input = share(
    "ranges.condition",
    "Chuck condition, share either way",
    0.6,
    [
        "0.15",
        "How far the grip may be from what plate or chart and the condition entered give. Gauge readings bring a range of their own.",
        "common practice, no source; from greased to dry a chuck loses 30 to 50 %, from memory",
    ],
    When::Chosen(&GRIP_FROM, &["plate", "chart"]),
);
/// How far the pressure gauge may be off.
pub static GAUGE_RANGE: Input = Input {
    path: "ranges.pressure",
    name: "Pressure gauge, either way",
    form: quantity(Kind::Pressure, 0.0, 2e6),
    default: "0.06 MPa",
    help: "A class 1.6 gauge may be off by 1.6 % of its full scale wherever it stands: it counts most at low pressures.",
    source: "class 1.6 of EN 837-1 on a gauge to 4 MPa, from memory",
    when: When::Always,
};
/// How far the wall may be off.
pub static WALL_RANGE: Input = Input {
    path: "ranges.wall",
    name: "Wall, either way",
    form: quantity(Kind::Departure, 0.0, 5e-3),
    default: "50 µm",
    help: "How much thinner or thicker the wall may be than drawn when it is clamped. Half the wall has about eight times the lobes.",
    source: "common practice, no source",
    when: When::Always,
};
/// How far the bored diameter may be off.
pub static BORE_RANGE: Input = Input {
    path: "ranges.bore",
    name: "Jaw bore on diameter, either way",
    form: quantity(Kind::Departure, 0.0, 1e-3),
    default: "10 µm",
    help: "How well the diameter of the bored jaws is known. The part's own diameter has its two deviations above.",
    source: "common practice, no source",
    when: When::Always,
};
/// Share by which the cutting force may be off.
pub static FORCE_RANGE: Input = share(
    "ranges.force",
    "Cutting force, share either way",
    0.9,
    [
        "0.2",
        "What the material's cutting resistance and the worn edge leave open.",
        "cutting-data tables differ by 10 to 20 %, from memory",
    ],
    When::Always,
);
/// The least hold factor accepted at the worst end of every range.
pub static WORST_HOLD: Input = Input {
    path: "ranges.worst_hold",
    name: "Hold factor wanted at its worst",
    form: quantity(Kind::Plain, 1.0, 10.0),
    default: "1.2",
    help: "With the least friction and grip and the greatest cutting force all at once. The hold factor wanted above is for what is entered.",
    source: "1 is about to slip; 1.2 is our own starting value, no source",
    when: When::Always,
};

/// How well it is known, in the order of the flow.
pub static RANGE_INPUTS: &[&Input] =
    &[&FRICTION_RANGE, &CONDITION_RANGE, &GAUGE_RANGE, &WALL_RANGE, &BORE_RANGE, &FORCE_RANGE, &WORST_HOLD];
