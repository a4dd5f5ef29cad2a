//! How a lesson's task stands.

use alloc::vec::Vec;

use super::{Change, Lesson, Seen, changes};
use crate::findings::Findings;
use crate::setup::Entries;

/// How a lesson's task stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// How each goal of the lesson stands, in their order.
    pub seen: Vec<Seen>,
    /// What was changed that is meant to be.
    pub changed: Vec<Change>,
    /// What was changed that the lesson is not about, such as what is allowed. It must be put back before the task
    /// counts as done.
    pub strayed: Vec<Change>,
}

impl Check {
    /// How the task of `lesson` stands: its set-up at the `start`, the entries now, and what was found for them.
    #[must_use]
    pub fn of(lesson: &Lesson, start: &Entries, entries: &Entries, findings: &Findings) -> Self {
        let (changed, strayed) =
            changes(start, entries).into_iter().partition(|change| lesson.change.contains(&change.path.as_str()));
        Self { seen: lesson.goals.iter().map(|goal| goal.seen(findings)).collect(), changed, strayed }
    }

    /// How many goals are met.
    #[must_use]
    pub fn met(&self) -> usize {
        self.seen.iter().filter(|seen| seen.met).count()
    }

    /// Whether every goal is met.
    #[must_use]
    pub fn all_met(&self) -> bool {
        self.met() == self.seen.len()
    }

    /// Whether the task is done: every goal is met, by what the lesson is about alone.
    #[must_use]
    pub fn is_done(&self) -> bool {
        self.all_met() && self.strayed.is_empty()
    }
}
