//! What suits the answers: part, jaws, chuck and cut as entries, in brackets where they are assumed.
//!
//! Sizes of chuck, jaws and cut are common practice, no source, but where one is named; they are there to be corrected.

use alloc::format;
use alloc::string::String;
use core::f64::consts::{PI, TAU};

use super::Answers;
use super::blank::Around;
use crate::cutting::SpecificForce;
use crate::materials::{Family, Material};
use crate::quantity::{Kind, Measure, UnitSystem, decade, decimal};
use crate::setup::start_inputs::{GRIPPED, LENGTH};
use crate::setup::{Entries, Input, chuck_inputs as chuck, part_inputs as part, stroke_inputs as stroke};
use crate::stroke::HEAD_IN_COUNTERBORE;

/// The chuck that the assumed sizes are of; others are in proportion, m.
const USUAL_CHUCK: f64 = 0.21;
/// Depth and feed of a light finishing cut, m and m per turn.
const LIGHT_CUT: (f64, f64) = (0.25e-3, 0.1e-3);

/// Writes what suits the answers.
struct Writer<'a> {
    entries: Entries,
    typed: &'a Entries,
    system: UnitSystem,
}

impl Writer<'_> {
    /// What was typed, at the path of the set-up.
    fn answer(&mut self, path: &str, question: &str) {
        if let Some(text) = self.typed.get(question) {
            self.entries.put(path, text);
        }
    }

    /// A length that follows from answers.
    fn follows(&mut self, path: &str, si: f64) {
        let text = self.exact(si);
        self.entries.put(path, &text);
    }

    fn exact(&self, si: f64) -> String {
        let unit = Kind::Length.unit_in(self.system);
        format!("{} {}", decimal(unit.from_si(si), 6), unit.symbol)
    }

    /// A choice that is assumed.
    fn chosen(&mut self, path: &str, text: &str) {
        self.entries.put(path, &format!("({text})"));
    }

    /// A figure that is assumed, rounded down to two figures.
    fn assumed(&mut self, path: &str, kind: Kind, si: f64) {
        let unit = kind.unit_in(self.system);
        let value = unit.from_si(si);
        let (exponent, ten) = decade(value.max(1e-9));
        // What is a round number but for its last bit must not lose a whole figure.
        let rounded = libm::floor(value / ten * 10.0 + 1e-6) * ten / 10.0;
        let symbol = unit.symbol;
        let gap = if symbol.is_empty() { "" } else { " " };
        self.chosen(path, &format!("{}{gap}{symbol}", decimal(rounded, (1 - exponent).max(0) as usize)));
    }

    fn length(&mut self, path: &str, si: f64) {
        self.assumed(path, Kind::Length, si);
    }
}

/// The whole set-up.
pub(super) fn set_up(answers: &Answers, typed: &Entries) -> Entries {
    let unit = typed.get(GRIPPED.path).and_then(|text| Measure::parse(Kind::Length, text).ok());
    let inch = unit.is_some_and(|measure| measure.unit.symbol == Kind::Length.unit_in(UnitSystem::Inch).symbol);
    let system = if inch { UnitSystem::Inch } else { UnitSystem::Metric };
    let mut to = Writer { entries: Entries::default(), typed, system };
    the_part(answers, &mut to);
    let grip_length = the_jaws(answers, &mut to);
    let chuck = the_chuck(answers, &mut to);
    the_cut(answers, &chuck, grip_length, &mut to);
    to.entries
}

fn the_part(answers: &Answers, to: &mut Writer<'_>) {
    for same in [&part::GRIP_SIDE, &part::PART_MATERIAL, &part::ROUNDNESS_LIMIT, &chuck::BODY_DIAMETER] {
        to.answer(same.path, same.path);
    }
    to.answer(part::PART_LENGTH.path, LENGTH.path);
    if answers.inside {
        to.answer(part::BORE_DIAMETER.path, GRIPPED.path);
        to.follows(part::OUTSIDE_DIAMETER.path, answers.outside());
    } else {
        to.answer(part::OUTSIDE_DIAMETER.path, GRIPPED.path);
        to.follows(part::BORE_DIAMETER.path, answers.bore());
    }
    // Run-out is usually allowed somewhat more than roundness.
    to.assumed(part::RUNOUT_LIMIT.path, Kind::Departure, (1.5 * answers.roundness).min(5e-3));
}

/// The jaws, in proportion to the chuck and narrow enough for the part; how deep they are bored, m.
fn the_jaws(answers: &Answers, to: &mut Writer<'_>) -> f64 {
    let Answers { inside, gripped, body, length, .. } = *answers;
    let asked = |input: &Input| Measure::parse(Kind::Length, input.default).map_or(0.0, |measure| measure.si);
    let usual = |input: &Input| asked(input) * body / USUAL_CHUCK;
    let radius = gripped / 2.0;
    let width = (0.19 * body).min(if inside { 0.35 } else { 0.45 } * gripped);
    let half = width / 2.0;
    // A square end has metal in its corners only where the bore reaches past its middle.
    let cleans_up = if inside { 0.0 } else { 1.15 * (radius - crate::sqrt(radius * radius - half * half)) + 1e-3 };
    let step = (0.05 * body).min(0.1 * gripped).min(answers.wall.unwrap_or(f64::INFINITY)).max(cleans_up);
    let longest = if inside { radius + step - 0.7 * width } else { (0.6 * body - radius).max(0.12 * body) };
    let from = usual(&stroke::FIRST_GROOVE);
    let sizes = Around {
        inside,
        radius,
        body: body / 2.0,
        width,
        step,
        length: (0.28 * body).min(longest),
        face: [from, from + usual(&stroke::FACE)],
        stroke: usual(&stroke::STROKE),
        nut: usual(&stroke::NUT),
        apart: usual(&stroke::FAR_SCREW) - usual(&stroke::NEAR_SCREW),
        near: usual(&stroke::NEAR_SCREW),
        counterbore: usual(&stroke::COUNTERBORE),
        wall: asked(&stroke::LEAST_WALL),
    }
    .sizes();
    // A screw head below the seat must stay below it.
    let head = usual(&stroke::COUNTERBORE_DEPTH) - HEAD_IN_COUNTERBORE * usual(&stroke::COUNTERBORE);
    let deepest = if sizes.covers { 0.9 * head } else { 0.12 * body };
    let grip_length = (if inside { 0.8 * length } else { 0.5 * length }).min(deepest).min(0.12 * body);
    let height = 0.21 * body;
    for (path, si) in [
        (part::GRIP_LENGTH.path, grip_length),
        ("jaws.width", width),
        ("jaws.step", sizes.step),
        ("jaws.length", sizes.length),
        ("jaws.height", height),
        ("jaws.ring_height", 0.45 * height),
        (stroke::NEAR_SCREW.path, sizes.near_screw),
        (stroke::FAR_SCREW.path, sizes.far_screw),
        (stroke::NUT.path, sizes.nut),
    ] {
        to.length(path, si);
    }
    for input in
        [&stroke::STROKE, &stroke::FIRST_GROOVE, &stroke::FACE, &stroke::COUNTERBORE, &stroke::COUNTERBORE_DEPTH]
    {
        to.length(input.path, usual(input));
    }
    grip_length
}

/// What the rest hangs on in the chuck, in SI.
struct Chuck {
    grip: f64,
    draw: f64,
    area: f64,
    speed: f64,
}

/// A power chuck of its size, and a cylinder that goes with it: an invented class, in proportion to the usual one.
fn the_chuck(answers: &Answers, to: &mut Writer<'_>) -> Chuck {
    let by = answers.body / USUAL_CHUCK;
    let grip = (75e3 * by * crate::sqrt(by)).min(2e6);
    let draw = 0.4 * grip;
    let speed = (4200.0 / by).min(8000.0) * TAU / 60.0;
    let bore = 0.125 * crate::sqrt(by * crate::sqrt(by));
    let rod = 0.44 * bore;
    to.assumed(chuck::MAX_SPEED.path, Kind::RotationalSpeed, speed);
    to.assumed(chuck::MAX_GRIP.path, Kind::Force, grip);
    to.assumed(chuck::MAX_DRAW.path, Kind::Force, draw);
    to.length(chuck::REFERENCE_HEIGHT.path, 0.2 * answers.body);
    to.assumed(chuck::MASTER_MASS.path, Kind::Mass, (0.9 * by * by * by).min(100.0));
    to.length(chuck::MASTER_RADIUS.path, 0.31 * answers.body);
    to.length(chuck::CYLINDER_BORE.path, bore);
    to.length(chuck::CYLINDER_ROD.path, rod);
    to.chosen(chuck::CYLINDER_SIDE.path, if answers.inside { "full" } else { "rod" });
    let rod_area = if answers.inside { 0.0 } else { rod * rod };
    Chuck { grip, draw, area: PI / 4.0 * (bore * bore - rod_area), speed }
}

/// A light finishing cut at the front of the part, and a pressure and speed to go with it.
fn the_cut(answers: &Answers, chuck: &Chuck, grip_length: f64, to: &mut Writer<'_>) {
    const SMALLEST_BORED: f64 = 0.01;
    let Answers { inside, gripped, wall, length, material, .. } = *answers;
    let bored = !inside && answers.bore() >= SMALLEST_BORED;
    let diameter = if bored { answers.bore() } else { answers.outside() };
    let overhang = length - grip_length;
    let depth = LIGHT_CUT.0.min(diameter / 8.0).min(wall.map_or(f64::INFINITY, |wall| wall / 4.0));
    let force = match material.cutting {
        None => {
            to.chosen("cuts.0.kind", "power");
            to.assumed("cuts.0.power", Kind::Power, 500.0);
            500.0 / surface_speed(material)
        }
        Some(cutting) => {
            to.chosen("cuts.0.kind", if bored { "boring" } else { "turning" });
            to.length("cuts.0.depth", depth);
            to.assumed("cuts.0.feed", Kind::Feed, LIGHT_CUT.1);
            let (kc11, mc) = (cutting.specific_force.value, cutting.exponent.value);
            1.3 * SpecificForce { kc11, mc }.at(LIGHT_CUT.1).unwrap_or(kc11) * depth * LIGHT_CUT.1
        }
    };
    let text = to.exact(diameter);
    to.chosen("cuts.0.diameter", &text);
    to.length("cuts.0.distance", overhang);
    let speed = (surface_speed(material) * 2.0 / diameter).min(0.5 * chuck.speed);
    to.assumed("run.speed", Kind::RotationalSpeed, speed);
    // Enough for twice the cut at a friction of 0.1, with a lever for what stands out of the jaws.
    let needed = 25.0 * force * (diameter / gripped).max(1.0) * (1.0 + overhang / grip_length);
    let grip = needed.max((0.15 * chuck.grip).min(round_enough(answers))).min(0.6 * chuck.grip);
    let pressure = grip * chuck.draw / chuck.grip / (0.8 * 0.95 * chuck.area);
    to.assumed("run.pressure", Kind::Pressure, pressure.clamp(1e5, 4e6));
}

/// The total grip of three jaws at which a thin ring is lobed by half the roundness allowed, N: three forces on a thin
/// ring, 0.03 F R³ / (E I) from peak to valley, from memory.
fn round_enough(answers: &Answers) -> f64 {
    let Some(wall) = answers.wall else { return f64::INFINITY };
    let radius = (answers.outside() - wall) / 2.0;
    let second_moment = answers.length * wall * wall * wall / 12.0;
    let modulus = answers.material.youngs_modulus.value;
    3.0 * 0.5 * answers.roundness * modulus * second_moment / (0.03 * radius * radius * radius)
}

/// A careful surface speed for carbide, m/s: from memory.
fn surface_speed(material: &Material) -> f64 {
    let metres_a_minute = match material.family {
        Family::Aluminium | Family::Magnesium | Family::Brass => 250.0,
        Family::Bronze | Family::Copper | Family::Plastic => 150.0,
        Family::Steel | Family::GreyIron => 120.0,
        Family::StainlessSteel | Family::DuctileIron | Family::ToolSteel => 90.0,
        Family::Titanium => 50.0,
        Family::Nickel => 30.0,
    };
    metres_a_minute / 60.0
}
