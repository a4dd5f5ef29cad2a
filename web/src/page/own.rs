//! A job of one's own: a few answers, from which a whole set-up is made.

use holdround_core::setup::start_inputs::QUESTIONS;
use holdround_core::setup::{Fault, start};

use super::notice::{Notice, tell};
use super::{Page, entry_text, keep, opening};
use crate::root;
use crate::view::own as view;

/// Where the answers are kept, a line each.
const KEY: &str = "holdround.answers.1";
/// Said once it is set up.
/// Told of a job that was just set up.
pub(super) const SET_UP: &str = "Your own job is set up. What was not asked is assumed, in brackets: correct it where you know better. Undo brings back what was on the sheet.";

/// What was answered.
#[derive(Debug, Default)]
pub(crate) struct Own {
    /// The answers as they are stored, in the order of the questions.
    pub(crate) answers: [String; 7],
    /// What is wrong with them, once they were to be taken.
    pub(crate) faults: Vec<Fault>,
}

impl Own {
    /// As it was left at the last visit.
    pub(crate) fn kept() -> Self {
        let mut own = Self::default();
        for (answer, line) in own.answers.iter_mut().zip(keep::kept(KEY).unwrap_or_default().lines()) {
            line.clone_into(answer);
        }
        own
    }
}

impl Page {
    /// Takes an answer.
    pub(super) fn answer(&mut self, question: &str, typed: &str) {
        let Some(at) = question.parse::<usize>().ok() else { return };
        let Some((answer, input)) = self.own.answers.get_mut(at).zip(QUESTIONS.get(at)) else { return };
        *answer = match input.kind() {
            Some(kind) => entry_text::stored(kind, self.desk.units.unit(kind), typed),
            None => typed.to_owned(),
        };
        if self.frame.is_own() {
            keep::put(KEY, &self.own.answers.join("\n"));
        }
    }

    /// Sets the job up, or tells what is wrong with the answers.
    pub(super) fn start(&mut self) {
        let mut at = None;
        match start(&self.own.answers) {
            Ok(entries) => {
                self.own.faults.clear();
                opening::replace(&mut self.desk, entries);
                tell(&mut self.desk.notices, Notice::new(SET_UP));
                if let Some(group) = root::by_id(view::GROUP) {
                    let _closed = group.remove_attribute("open");
                }
            }
            Err(faults) => {
                at = QUESTIONS.iter().position(|question| faults.iter().any(|fault| fault.path == question.path));
                self.own.faults = faults;
            }
        }
        self.show_own();
        self.refresh();
        match at {
            Some(at) => root::focus(&format!("answer-{at}")),
            None => {
                let _focused = root::by_id(view::SUMMARY).map(|heading| root::give_keyboard(&heading));
            }
        }
    }
}
