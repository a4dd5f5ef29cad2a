//! A whole set-up from a few answers: what was not asked is assumed to suit, and marked so by brackets.

use alloc::string::String;
use alloc::vec::Vec;

mod assumed;
mod blank;
#[cfg(test)]
mod tests;

use super::fault::range_words;
use super::reader::Reader;
use super::start_inputs::{GRIPPED, LENGTH, QUESTIONS, WALL};
use super::{Entries, Fault, Setup, chuck_inputs as chuck, part_inputs as part};
use crate::materials::Material;
use crate::text::Text;

/// Smallest bore that assumed jaws go into, m.
const SMALLEST_BORE: f64 = 0.02;
/// Thinnest wall, as a share of the outside radius: a little more than the model needs.
const THINNEST: f64 = 1.02 / 150.0;

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
    let entries = assumed::set_up(&read, &typed);
    let faults = Setup::read(&entries).err();
    match faults.and_then(|faults| faults.into_iter().next()) {
        None => Ok(entries),
        Some(fault) => {
            let allowed = Text::of("what makes a set-up; {} would have to be {}").with(fault.name).with(fault.allowed);
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
        let least = Text::quantity(SMALLEST_BORE, reader.unit_of(&GRIPPED, 0));
        reader.conflict(
            &GRIPPED,
            0,
            Text::of("at least {} from inside").with(least),
            "Soft jaws hardly go into a smaller bore: grip the outside.",
        );
    }
    if gripped > body {
        let least = Text::quantity(gripped, reader.unit_of(&chuck::BODY_DIAMETER, 0));
        reader.conflict(
            &chuck::BODY_DIAMETER,
            0,
            Text::of("at least {}, the diameter gripped").with(least),
            "Name a larger chuck.",
        );
    }
    let Some(wall) = wall else {
        if inside {
            reader.conflict(
                &WALL,
                0,
                "a wall",
                "A part gripped from inside has a bore: say how thick it is around it.",
            );
        }
        return;
    };
    let least = answers.outside() / 2.0 * THINNEST;
    let most = if inside { 1.0 - gripped / 2.0 } else { gripped * 0.49 };
    if wall < least || wall > most {
        let unit = reader.unit_of(&WALL, 0);
        let allowed = range_words(least, most, unit);
        reader.conflict(&WALL, 0, allowed, "Correct it or the diameter gripped; leave it empty for a solid part.");
    }
}
