//! The questions for a job of one's own, over the parts list.

use holdround_core::setup::Input;
use holdround_core::setup::start_inputs::QUESTIONS;
use maud::{Markup, html};

use super::{field, words};
use crate::language::{fill, said, say};
use crate::page::entry_text;
use crate::page::own::Own;
use crate::units::Units;

/// The group of the questions.
pub(crate) const GROUP: &str = "own-box";
/// Its heading.
pub(crate) const SUMMARY: &str = "own-heading";

/// The group.
pub(crate) fn show(own: &Own, units: Units) -> Markup {
    html! {
        details.group.own id=(GROUP) {
            summary id=(SUMMARY) { h2 { (say("Start my own")) } }
            p.hint { (say("Answer what you know. Everything else is assumed to suit, stands in brackets, and is yours to correct. What is on the sheet now comes back with Undo.")) }
            div.rows {
                @for (at, question) in QUESTIONS.iter().enumerate() { (asked(own, at, question, units)) }
            }
            button type="button" id="start" data-act="start" { (say("Set it up")) }
        }
    }
}

fn asked(own: &Own, at: usize, question: &Input, units: Units) -> Markup {
    let answer = own.answers[at].as_str();
    let faults = || own.faults.iter().filter(|fault| fault.path == question.path);
    let unit = question.kind().map(|kind| (kind, units.unit(kind)));
    let (id, told) = (format!("answer-{at}"), format!("told-{at}"));
    let invalid = faults().next().is_some();
    html! {
        div.field.long[unit.is_none()] {
            label for=(id) { (say(question.name)) @if let Some((_, unit)) = unit { " " span.unit { (say(unit.symbol)) } } }
            @if let Some((kind, unit)) = unit {
                input type="text" id=(id) data-answer=(at) inputmode="decimal" autocomplete="off" spellcheck="false"
                    value=(entry_text::in_field(kind, unit, answer)) placeholder=(field::assumed(units, question))
                    aria-describedby=(told) aria-invalid=(invalid);
            } @else {
                select id=(id) data-answer=(at) aria-describedby=(told) aria-invalid=(invalid) {
                    (field::options(question, Some(answer).filter(|answer| !answer.is_empty())))
                }
            }
            details.about id={ "about-answer-" (at) } {
                summary { (say("About")) span.heard { ": " (say(question.name)) } }
                p { (say(question.help)) }
                (words::in_text(&format!("{} {}", question.name, question.help)))
            }
            div.message id=(told) {
                @for fault in faults() {
                    p.fault { (fill("Allowed: {}. {}", &[&said(&fault.allowed), &said(&fault.remedy)])) }
                }
            }
        }
    }
}
