//! The chuck and what drives it, as inputs.

use super::input::{Form, Input, When, choice, optional, quantity};
use crate::quantity::Kind;

/// Number of jaws.
pub static JAW_COUNT: Input = Input {
    path: "chuck.jaws",
    name: "Jaws",
    form: Form::Choice(&[
        choice("2", "2 jaws"),
        choice("3", "3 jaws"),
        choice("4", "4 jaws"),
        choice("5", "5 jaws"),
        choice("6", "6 jaws"),
    ]),
    default: "3",
    help: "All jaws move together and share the grip equally.",
    source: "our own starting value",
    when: When::Always,
};
/// Diameter of the chuck body.
pub static BODY_DIAMETER: Input = Input {
    path: "chuck.body_diameter",
    name: "Chuck body diameter",
    form: quantity(Kind::Length, 0.05, 2.0),
    default: "210 mm",
    help: "The size of the chuck, as in an 8 inch chuck.",
    source: "our own starting value",
    when: When::Always,
};
/// Greatest speed on the plate.
pub static MAX_SPEED: Input = Input {
    path: "chuck.max_speed",
    name: "Greatest speed on the plate",
    form: quantity(Kind::RotationalSpeed, 1.0, 2000.0),
    default: "4200 rev/min",
    help: "Stamped on the chuck. It holds for the jaws the maker tested; taller, heavier or further-out jaws must turn slower.",
    source: "our own starting value",
    when: When::Always,
};
/// Greatest total grip on the plate.
pub static MAX_GRIP: Input = Input {
    path: "chuck.max_grip",
    name: "Greatest total grip on the plate",
    form: quantity(Kind::Force, 100.0, 2e6),
    default: "75 kN",
    help: "Sum over all jaws. If the plate gives it per jaw, multiply by the number of jaws.",
    source: "our own starting value",
    when: When::Always,
};
/// Greatest draw force on the plate.
pub static MAX_DRAW: Input = Input {
    path: "chuck.max_draw",
    name: "Greatest draw force on the plate",
    form: quantity(Kind::Force, 100.0, 2e6),
    default: "30 kN",
    help: "The greatest pull or push the draw tube may put on the chuck.",
    source: "our own starting value",
    when: When::Always,
};
/// Jaw height for which the plate is given.
pub static REFERENCE_HEIGHT: Input = Input {
    path: "chuck.reference_height",
    name: "Jaw height the plate is for",
    form: quantity(Kind::Length, 5e-3, 0.5),
    default: "40 mm",
    help: "The plate grip holds up to this height above the chuck face. Beyond it the allowed grip falls in proportion.",
    source: "grip times height kept constant: common practice, no source",
    when: When::Always,
};
/// Greatest swing of the jaws.
pub static MAX_SWING: Input = Input {
    path: "chuck.max_swing",
    name: "Greatest swing of the jaws",
    form: optional(Kind::Length, 0.05, 3.0),
    default: "",
    help: "Largest diameter the outermost jaw corner may describe, from the chuck manual or the guard.",
    source: "our own starting value",
    when: When::Always,
};
/// Condition of the chuck.
pub static CONDITION: Input = Input {
    path: "chuck.condition",
    name: "Chuck condition",
    form: quantity(Kind::Plain, 0.2, 1.0),
    default: "0.8",
    help: "1 for a chuck as tested when new, 0.8 for one greased on schedule, 0.5 to 0.7 for a dry one. A grip gauge tells; this is a guess until then.",
    source: "poor grease can cost 30 to 50 % of grip, from memory",
    when: When::Chosen(&GRIP_FROM, &["plate", "chart"]),
};
/// How the grip at rest is known.
pub static GRIP_FROM: Input = Input {
    path: "chuck.grip_from",
    name: "Grip at rest known from",
    form: Form::Choice(&[
        choice("plate", "Plate and cylinder"),
        choice("chart", "One point of the chuck's chart"),
        choice("gauge", "Grip gauge readings"),
    ]),
    default: "plate",
    help: "Readings of a grip gauge on this chuck are worth most, the plate least.",
    source: "our own starting value",
    when: When::Always,
};
/// Bore of the clamping cylinder.
pub static CYLINDER_BORE: Input = Input {
    path: "cylinder.bore",
    name: "Cylinder bore",
    form: quantity(Kind::Length, 0.01, 1.0),
    default: "125 mm",
    help: "Inside diameter of the rotary cylinder behind the spindle. Its plate or manual has it.",
    source: "our own starting value",
    when: When::Chosen(&GRIP_FROM, &["plate", "gauge"]),
};
/// Rod or draw tube diameter in the cylinder.
pub static CYLINDER_ROD: Input = Input {
    path: "cylinder.rod",
    name: "Cylinder rod diameter",
    form: quantity(Kind::Length, 0.0, 1.0),
    default: "55 mm",
    help: "Takes area away on the rod side. For a through-hole cylinder: the outside of the tube through the piston.",
    source: "our own starting value",
    when: When::Chosen(&GRIP_FROM, &["plate", "gauge"]),
};
/// Which side of the piston acts.
pub static CYLINDER_SIDE: Input = Input {
    path: "cylinder.side",
    name: "Oil acts on",
    form: Form::Choice(&[choice("rod", "Rod side (draw tube pulls)"), choice("full", "Full side (draw tube pushes)")]),
    default: "rod",
    help: "Most chucks pull to close on an outside and push to open into a bore: the full side gives more force at the same pressure.",
    source: "common practice, no source",
    when: When::Chosen(&GRIP_FROM, &["plate", "gauge"]),
};
/// Share of the pressure force that reaches the draw tube.
pub static CYLINDER_EFFICIENCY: Input = Input {
    path: "cylinder.efficiency",
    name: "Cylinder efficiency",
    form: quantity(Kind::Plain, 0.5, 1.0),
    default: "0.95",
    help: "Seals and draw tube cost some of the force.",
    source: "from memory",
    when: When::Chosen(&GRIP_FROM, &["plate", "gauge"]),
};
/// Greatest pressure of the cylinder.
pub static MAX_PRESSURE: Input = Input {
    path: "cylinder.max_pressure",
    name: "Greatest cylinder pressure",
    form: quantity(Kind::Pressure, 1e4, 3e7),
    default: "4 MPa",
    help: "From the cylinder's plate.",
    source: "our own starting value",
    when: When::Always,
};
/// Pressure of a point on the chart.
pub static CHART_PRESSURE: Input = Input {
    path: "chart.pressure",
    name: "Chart point: pressure",
    form: quantity(Kind::Pressure, 1e4, 3e7),
    default: "2 MPa",
    help: "Any one point of the chuck's pressure and grip chart, as high up as you can read it.",
    source: "our own starting value",
    when: When::Chosen(&GRIP_FROM, &["chart"]),
};
/// Grip of a point on the chart.
pub static CHART_GRIP: Input = Input {
    path: "chart.grip",
    name: "Chart point: total grip",
    form: quantity(Kind::Force, 10.0, 2e6),
    default: "40 kN",
    help: "Sum over all jaws at that pressure.",
    source: "our own starting value",
    when: When::Chosen(&GRIP_FROM, &["chart"]),
};
/// Mass of one master jaw with nuts and screws.
pub static MASTER_MASS: Input = Input {
    path: "chuck.master_mass",
    name: "Master jaw, nuts and screws, each",
    form: quantity(Kind::Mass, 0.0, 100.0),
    default: "0.9 kg",
    help: "One master jaw with its T-nuts and screws. They are thrown outward with the top jaws, and are easily forgotten.",
    source: "our own starting value for a 210 mm chuck; weigh or ask the maker",
    when: When::Always,
};
/// Radius of the centre of mass of the master jaw.
pub static MASTER_RADIUS: Input = Input {
    path: "chuck.master_radius",
    name: "Master jaw's centre of mass from the axis",
    form: quantity(Kind::Length, 1e-3, 1.0),
    default: "65 mm",
    help: "Measured from the spindle axis with the jaws where they grip.",
    source: "our own starting value",
    when: When::Always,
};
/// Tilt stiffness of a master jaw.
pub static TILT_STIFFNESS: Input = Input {
    path: "chuck.tilt_stiffness",
    name: "Tilt stiffness of a master jaw",
    form: quantity(Kind::TiltStiffness, 1e4, 1e9),
    default: "1000000 N·m/rad",
    help: "How hard a master jaw is to tilt in its guideway. It decides how far tall jaws open at the tip; a feeler gauge reading tells it better.",
    source: "common practice, no source: it reproduces openings that shops report",
    when: When::Always,
};
/// Radial stiffness of a master jaw.
pub static RADIAL_STIFFNESS: Input = Input {
    path: "chuck.radial_stiffness",
    name: "Radial stiffness of a master jaw",
    form: quantity(Kind::Stiffness, 1e6, 1e11),
    default: "216 N/µm",
    help: "How hard a master jaw with its serrations is to push back. It moves no lobes: an indicator tells nothing of it.",
    source: "216 N/µm for a jaw with steel top jaws: Ito, Modular Design for Machine Tools, 2008, p. 452",
    when: When::Always,
};
/// Least share of the spin force that reaches the part.
pub static SPIN_SHARE_LEAST: Input = Input {
    path: "chuck.spin_share_least",
    name: "Spin force reaching the part, at least",
    form: quantity(Kind::Plain, 0.0, 1.0),
    default: "0",
    help: "Between jaw and draw tube the wedge sticks or slides: none, some or all of the jaws' spin force is felt by the part. 0 to 1 covers every chuck; a gauge reading at speed narrows it.",
    source: "0 and 1 are the ends of the spring model: part and mechanism in series",
    when: When::Always,
};
/// Greatest share of the spin force that reaches the part.
pub static SPIN_SHARE_MOST: Input = Input {
    path: "chuck.spin_share_most",
    name: "Spin force reaching the part, at most",
    form: quantity(Kind::Plain, 0.0, 1.0),
    default: "1",
    help: "1 is what VDI 3106 takes: all of it is lost or gained. Slip is judged at the bad end of the range, distortion at the other.",
    source: "VDI 3106 as quoted in secondary literature",
    when: When::Always,
};

/// The chuck, in shop order.
pub static CHUCK_INPUTS: &[&Input] = &[
    &JAW_COUNT,
    &BODY_DIAMETER,
    &MAX_SPEED,
    &MAX_GRIP,
    &MAX_DRAW,
    &REFERENCE_HEIGHT,
    &MAX_SWING,
    &CONDITION,
    &GRIP_FROM,
    &CYLINDER_BORE,
    &CYLINDER_ROD,
    &CYLINDER_SIDE,
    &CYLINDER_EFFICIENCY,
    &MAX_PRESSURE,
    &CHART_PRESSURE,
    &CHART_GRIP,
    &MASTER_MASS,
    &MASTER_RADIUS,
    &TILT_STIFFNESS,
    &RADIAL_STIFFNESS,
    &SPIN_SHARE_LEAST,
    &SPIN_SHARE_MOST,
];
