//! A whole set-up from a few answers: what was not asked is assumed to suit, and marked so by brackets.
//!
//! Sizes of chuck, jaws and cut are common practice, no source, but where one is named; they are there to be corrected.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::f64::consts::{PI, TAU};

use super::reader::Reader;
use super::start_blank::Around;
use super::start_inputs::{GRIPPED, LENGTH, QUESTIONS, WALL};
use super::{Entries, Fault, Input, Setup, chuck_inputs as chuck, part_inputs as part, stroke_inputs as stroke};
use crate::materials::{Family, Material};
use crate::quantity::{Kind, Measure, UnitSystem, decimal, shown};
use crate::stroke::HEAD_IN_COUNTERBORE;

/// The chuck that the assumed sizes are of; others are in proportion, m.
const USUAL_CHUCK: f64 = 0.21;
/// Smallest bore that assumed jaws go into, m.
const SMALLEST_BORE: f64 = 0.02;
/// Thinnest wall, as a share of the outside radius: a little more than the model needs.
const THINNEST: f64 = 1.02 / 150.0;
/// Depth and feed of a light finishing cut, m and m per turn.
const LIGHT_CUT: (f64, f64) = (0.25e-3, 0.1e-3);

/// The answers in SI.
struct Answers {
    inside: bool,
    gripped: f64,
    /// None if it is solid.
    wall: Option<f64>,
    length: f64,
    material: &'static Material,
    roundness: f64,
    body: f64,
}

impl Answers {
    fn outside(&self) -> f64 {
        if self.inside { self.gripped + 2.0 * self.wall.unwrap_or(0.0) } else { self.gripped }
    }

    fn bore(&self) -> f64 {
        match self.wall {
            None => 0.0,
            Some(_) if self.inside => self.gripped,
            Some(wall) => self.gripped - 2.0 * wall,
        }
    }
}

/// Sets a job up from the answers to [`QUESTIONS`], as typed; an empty one is taken as assumed where that can be.
///
/// # Errors
/// What is wrong with the answers, each fault at its question.
///
/// ```
/// use holdround_core::setup::{Setup, start};
/// let answers = ["inside", "5 1/2 in", "3/8 in", "1 in", "", "", "8 in"].map(String::from);
/// let entries = start(&answers).unwrap();
/// assert_eq!(entries.get("part.bore_diameter"), Some("5 1/2 in"));
/// assert_eq!(entries.get("cylinder.side"), Some("(full)"), "in brackets: assumed");
/// assert!(Setup::read(&entries).is_ok());
/// ```
pub fn start(answers: &[String; 7]) -> Result<Entries, Vec<Fault>> {
    let mut typed = Entries::default();
    for (question, answer) in QUESTIONS.iter().zip(answers).filter(|(_, answer)| !answer.trim().is_empty()) {
        typed.put(question.path, answer.trim());
    }
    let mut reader = Reader::new(&typed);
    let read = read(&mut reader);
    let Some(read) = read.filter(|_| reader.faults.is_empty()) else { return Err(reader.faults) };
    let entries = set_up(&read, &typed);
    let faults = Setup::read(&entries).err();
    match faults.as_ref().and_then(|faults| faults.first()) {
        None => Ok(entries),
        Some(fault) => {
            let allowed = format!("what makes a set-up; {} would have to be {}", fault.name, fault.allowed);
            reader.conflict(&GRIPPED, 0, allowed, "Correct an answer, or set the job up field by field.");
            Err(reader.faults)
        }
    }
}

fn read(reader: &mut Reader<'_>) -> Option<Answers> {
    let side = reader.choice(&part::GRIP_SIDE, 0);
    let gripped = reader.length(&GRIPPED);
    let wall = reader.length(&WALL).map(|wall| wall.value);
    let length = reader.length(&LENGTH);
    let material = reader.material(&part::PART_MATERIAL);
    let roundness = reader.length(&part::ROUNDNESS_LIMIT);
    let body = reader.length(&chuck::BODY_DIAMETER);
    let answers = Answers {
        inside: side? == "inside",
        gripped: gripped?.value,
        wall,
        length: length?.value,
        material: material?,
        roundness: roundness?.value,
        body: body?.value,
    };
    check(&answers, reader);
    Some(answers)
}

/// Whether the answers go together.
fn check(answers: &Answers, reader: &mut Reader<'_>) {
    let Answers { inside, gripped, wall, body, .. } = *answers;
    if inside && gripped < SMALLEST_BORE {
        let least = shown(SMALLEST_BORE, reader.unit_of(&GRIPPED, 0));
        reader.conflict(
            &GRIPPED,
            0,
            format!("at least {least} from inside"),
            "Soft jaws hardly go into a smaller bore: grip the outside.",
        );
    }
    if gripped > body {
        let least = shown(gripped, reader.unit_of(&chuck::BODY_DIAMETER, 0));
        reader.conflict(
            &chuck::BODY_DIAMETER,
            0,
            format!("at least {least}, the diameter gripped"),
            "Name a larger chuck.",
        );
    }
    let Some(wall) = wall else {
        if inside {
            reader.conflict(
                &WALL,
                0,
                "a wall".to_string(),
                "A part gripped from inside has a bore: say how thick it is around it.",
            );
        }
        return;
    };
    let least = answers.outside() / 2.0 * THINNEST;
    let most = if inside { 1.0 - gripped / 2.0 } else { gripped * 0.49 };
    if wall < least || wall > most {
        let unit = reader.unit_of(&WALL, 0);
        let allowed = format!("{} to {}", shown(least, unit), shown(most, unit));
        reader.conflict(&WALL, 0, allowed, "Correct it or the diameter gripped; leave it empty for a solid part.");
    }
}

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
        let places = 1.0 - libm::floor(libm::log10(value.max(1e-9)));
        let scale = libm::pow(10.0, places);
        // What is a round number but for its last bit must not lose a whole figure.
        let rounded = libm::floor(value * scale + 1e-6) / scale;
        let symbol = unit.symbol;
        let gap = if symbol.is_empty() { "" } else { " " };
        self.chosen(path, &format!("{}{gap}{symbol}", decimal(rounded, places.max(0.0) as usize)));
    }

    fn length(&mut self, path: &str, si: f64) {
        self.assumed(path, Kind::Length, si);
    }
}

fn set_up(answers: &Answers, typed: &Entries) -> Entries {
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
            let thin = libm::pow(LIGHT_CUT.1 / 1e-3, -cutting.exponent.value);
            1.3 * cutting.specific_force.value * thin * depth * LIGHT_CUT.1
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

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn answers(texts: [&str; 7]) -> [String; 7] {
        texts.map(String::from)
    }

    #[test]
    fn an_answer_that_does_not_serve_is_told_at_its_question() {
        let cases = [
            (["", "", "", "30 mm", "", "", ""], "start.gripped"),
            (["", "wide", "", "30 mm", "", "", ""], "start.gripped"),
            (["", "100 mm", "60 mm", "30 mm", "", "", ""], "start.wall"),
            (["", "100 mm", "0.2 mm", "30 mm", "", "", ""], "start.wall"),
            (["inside", "100 mm", "", "30 mm", "", "", ""], "start.wall"),
            (["inside", "12 mm", "5 mm", "30 mm", "", "", ""], "start.gripped"),
            (["", "100 mm", "10 mm", "", "", "", ""], "start.length"),
            (["", "100 mm", "10 mm", "30 mm", "butter", "", ""], "part.material"),
            (["", "100 mm", "10 mm", "30 mm", "", "9 m", ""], "part.roundness_limit"),
            (["", "300 mm", "10 mm", "30 mm", "", "", ""], "chuck.body_diameter"),
        ];
        for (texts, question) in cases {
            let faults = start(&answers(texts)).unwrap_err();
            assert_eq!(faults.iter().map(|fault| fault.path.as_str()).collect::<Vec<_>>(), [question], "{texts:?}");
            assert!(!faults[0].remedy.is_empty(), "{texts:?}: it is said what to do");
        }
    }

    #[test]
    fn what_was_answered_stands_as_typed_and_the_rest_is_assumed() {
        let entries = start(&answers(["outside", "6 1/2 in", "1/4 in", "2 in", "", "0.001 in", "10 in"])).unwrap();
        let setup = Setup::read(&entries).unwrap();
        for (path, text) in [("part.outside_diameter", "6 1/2 in"), ("part.bore_diameter", "6 in")] {
            assert_eq!(entries.get(path), Some(text), "{path} is what was answered");
        }
        let assumed: Vec<&str> = setup.assumed.iter().map(|assumed| assumed.path.as_str()).collect();
        for path in ["chuck.max_grip", "cylinder.bore", "jaws.width", "run.pressure", "run.speed", "cuts.0.depth"] {
            assert!(entries.get(path).unwrap().starts_with('('), "{path} is in brackets");
            assert!(assumed.contains(&path), "{path} is among the assumptions");
        }
        for path in ["part.outside_diameter", "part.bore_diameter", "part.length", "part.roundness_limit"] {
            assert!(!assumed.contains(&path), "{path} is no assumption");
        }
        assert!(entries.get("jaws.width").unwrap().ends_with("in)"), "assumed in the unit of the answers");
    }

    #[test]
    fn a_part_of_any_material_can_be_set_up() {
        for material in crate::materials::all().filter(|material| material.part) {
            for side in ["outside", "inside"] {
                let entries = start(&answers([side, "100 mm", "8 mm", "30 mm", material.id, "", ""]));
                assert!(entries.is_ok(), "{} gripped {side}: {entries:?}", material.id);
            }
        }
    }

    #[test]
    fn usual_answers_find_a_tooth_for_the_jaws() {
        for body in [0.135, 0.165, 0.21, 0.25, 0.315, 0.6] {
            for (side, twentieth) in
                ["outside", "inside"].into_iter().flat_map(|side| (5..20).map(move |at| (side, at)))
            {
                let share = f64::from(twentieth) / 20.0;
                let write = |si: f64| format!("{} mm", decimal(si * 1e3, 1));
                let gripped = share * body;
                // Thin and short or stout and long.
                let (thick, long) = if twentieth % 2 == 0 { (0.03, 0.3) } else { (0.1, 0.9) };
                let wall = write(thick * gripped);
                let texts = [side, &write(gripped), &wall, &write(long * gripped), "", "", &write(body)];
                let mut entries = start(&answers(texts)).unwrap();
                entries.put("stroke.plan", "yes");
                let findings = crate::evaluate(&Setup::read(&entries).unwrap());
                let tooth = findings.get("stroke.tooth").map(|tooth| &tooth.value);
                assert!(tooth.is_some_and(Result::is_ok), "{texts:?}: {tooth:?}");
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 2000, ..ProptestConfig::default() })]

        #[test]
        fn any_answers_make_a_set_up_or_are_refused_at_a_question(
            inside: bool,
            body in -1.3..0.4f64,
            gripped in -2.2..0.35f64,
            wall in -4.2..0.0f64,
            length in -3.0..0.4f64,
            solid: bool,
            inch: bool,
        ) {
            let write = |power: f64| {
                let si = libm::pow(10.0, power);
                if inch { format!("{} in", decimal(si / 0.0254, 4)) } else { format!("{} mm", decimal(si * 1e3, 3)) }
            };
            let side = if inside { "inside" } else { "outside" };
            let wall = if solid { String::new() } else { write(wall) };
            let texts = [side.to_string(), write(gripped), wall, write(length), String::new(), String::new(), write(body)];
            match start(&texts) {
                Ok(entries) => prop_assert!(Setup::read(&entries).is_ok(), "{texts:?}"),
                Err(faults) => {
                    prop_assert!(!faults.is_empty(), "{texts:?}: why it is refused is told");
                    for fault in faults {
                        prop_assert!(QUESTIONS.iter().any(|question| question.path == fault.path), "{texts:?}: {fault}");
                        prop_assert!(!fault.allowed.contains("what makes a set-up"), "{texts:?}: {fault}");
                    }
                }
            }
        }

        #[test]
        fn answers_of_the_usual_sizes_are_never_refused(
            inside: bool,
            body in 0.13..0.6f64,
            gripped in 0.2..0.95f64,
            wall in 0.02..0.4f64,
            length in 0.05..1.0f64,
        ) {
            let write = |si: f64| format!("{} mm", decimal(si * 1e3, 2));
            let side = if inside { "inside" } else { "outside" };
            let texts = [
                side.to_string(), write(gripped * body), write(wall * gripped * body), write(length * body),
                String::new(), String::new(), write(body),
            ];
            let started = start(&texts);
            prop_assert!(started.is_ok(), "{texts:?}: {started:?}");
        }
    }
}
