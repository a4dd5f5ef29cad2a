//! The lesson that is open: its set-up lies on the desk in place of the job, which comes back when it is left.

use std::mem;

use holdround_core::findings::Findings;
use holdround_core::lessons::{Change, Check, LESSONS, Lesson};
use holdround_core::setup::{Entries, Setup};
use holdround_core::{Effort, Engine, Progress};

use super::desk::Desk;
use super::history::History;
use super::{Page, SLICE, lessons_store, now};
use crate::document;
use crate::root;
use crate::view::lessons as view;

/// A lesson that is open.
#[derive(Debug)]
pub(crate) struct Open {
    /// The lesson.
    pub(crate) lesson: &'static Lesson,
    /// Its set-up at the start.
    pub(crate) start: Entries,
    /// What lay on the desk before.
    pub(crate) before: Entries,
    /// What could be taken back then.
    history: History,
    /// What was found for the start, once it is known.
    pub(crate) was: Option<Findings>,
    /// How the task stands; none before anything was found.
    pub(crate) check: Option<Check>,
    /// How it stood when the page last came to rest: what makes the lesson longer waits for that.
    pub(crate) rested: Option<Check>,
    /// A set-up the learner did not make: it came by a link, or was shown.
    given: Option<Entries>,
    /// Works out the start, where it does not lie on the desk.
    engine: Engine,
}

/// The lesson with this key.
pub(crate) fn named(key: &str) -> Option<&'static Lesson> {
    LESSONS.iter().find(|lesson| lesson.key == key)
}

impl Open {
    /// The lesson after this one.
    pub(crate) fn next(&self) -> Option<&'static Lesson> {
        let at = LESSONS.iter().position(|lesson| lesson.key == self.lesson.key)?;
        LESSONS.get(at + 1)
    }

    /// Whether the learner did not make these entries: they came by a link, or were shown.
    pub(crate) fn is_given(&self, entries: &Entries) -> bool {
        self.given.as_ref() == Some(entries)
    }

    /// Does one slice of working out what is found for the start; true once it is known.
    fn recall(&mut self) -> bool {
        let Ok(setup) = Setup::read(&self.start) else { return true };
        let done = self.engine.prepare(&setup) == Progress::Done;
        if done {
            self.was = Some(self.engine.evaluate(&setup, Effort::Full));
        }
        done
    }
}

impl Desk {
    /// Opens a lesson in place of what lies on the desk, at its start or with these entries.
    pub(crate) fn open_lesson(&mut self, lesson: &'static Lesson, entries: Option<Entries>) {
        let Ok(start) = document::entries(lesson.json) else { return };
        if self.lesson.as_ref().is_some_and(|open| open.lesson.key == lesson.key) {
            // It is open already: what was done in it stays.
            if let Some(entries) = entries {
                self.open(entries);
            }
            return;
        }
        self.close_lesson();
        let given = entries.clone();
        let before = mem::replace(&mut self.entries, entries.unwrap_or_else(|| start.clone()));
        self.lesson = Some(Open {
            lesson,
            start,
            before,
            history: mem::take(&mut self.history),
            was: None,
            check: None,
            rested: None,
            given,
            engine: Engine::default(),
        });
        self.evaluate();
    }

    /// Leaves the lesson: what lay on the desk before comes back, and what was done can be taken back to.
    pub(crate) fn leave_lesson(&mut self) {
        if self.close_lesson() {
            self.evaluate();
        }
    }

    fn close_lesson(&mut self) -> bool {
        let Some(open) = self.lesson.take() else { return false };
        let done = mem::replace(&mut self.entries, open.before);
        self.history = open.history;
        if done != open.start {
            self.history.note(&self.entries, None);
            self.history.note(&done, None);
        }
        true
    }

    /// Puts the lesson's solution on the desk; it can be taken back.
    fn show_solution(&mut self) {
        let Some(open) = &mut self.lesson else { return };
        let mut solved = open.start.clone();
        for (path, text) in open.lesson.solution {
            solved.set(path, text);
        }
        open.given = Some(solved.clone());
        self.open(solved);
    }

    /// Puts the lesson's start back on the desk; it can be taken back.
    fn start_over(&mut self) {
        if let Some(start) = self.lesson.as_ref().map(|open| open.start.clone()) {
            self.open(start);
        }
    }

    /// Puts back what the lesson is not about; it can be taken back.
    fn put_back(&mut self) {
        let Some(open) = &self.lesson else { return };
        let (start, strayed) = (open.start.clone(), strayed(open).to_vec());
        self.change(None, |entries| {
            for change in &strayed {
                match start.get(&change.path) {
                    Some(text) => {
                        entries.set(&change.path, text);
                    }
                    None => entries.unset(&change.path),
                }
            }
        });
    }

    /// Looks how the task stands. What is not worked out yet, or is at fault, changes nothing.
    pub(super) fn look_at_task(&mut self) {
        let settled = self.waiting.is_none() && self.faults.is_empty();
        if let (Some(open), Some((_, findings)), true) = (&mut self.lesson, &self.good, settled) {
            open.check = Some(Check::of(open.lesson, &open.start, &self.entries, findings));
        }
    }

    /// Looks at it once all has come to rest; gives the lesson if the learner has just done its task.
    fn rest_task(&mut self) -> Option<&'static Lesson> {
        self.look_at_task();
        let open = self.lesson.as_mut()?;
        open.rested.clone_from(&open.check);
        if open.was.is_none() && self.entries == open.start && self.faults.is_empty() {
            open.was = self.good.as_ref().map(|(_, findings)| findings.clone());
        }
        let own = !open.is_given(&self.entries);
        let done = own && self.faults.is_empty() && open.rested.as_ref().is_some_and(Check::is_done);
        let fresh = done && !self.done.contains(&open.lesson.key);
        fresh.then_some(open.lesson)
    }

    /// The user's own set-up: while a lesson is open, the one that waits behind it.
    pub(crate) fn job(&self) -> &Entries {
        self.lesson.as_ref().map_or(&self.entries, |open| &open.before)
    }

    /// The lesson and what was made of it, as the address has them.
    pub(crate) fn lesson_link(&self) -> Option<String> {
        let open = self.lesson.as_ref()?;
        let made = if self.entries == open.start { String::new() } else { format!("&{}", self.entries.to_link()) };
        Some(format!("{}{made}", open.lesson.key))
    }
}

/// What was changed that the lesson is not about.
pub(crate) fn strayed(open: &Open) -> &[Change] {
    open.rested.as_ref().map_or(&[], |check| &check.strayed)
}

impl Page {
    /// Shows the lesson and how its task stands.
    pub(super) fn show_lesson(&mut self) {
        self.regions.show("lesson", view::show(&self.desk));
    }

    pub(super) fn show_lessons(&mut self) {
        self.regions.show("lessons", view::list(&self.desk, self.keeps));
    }

    /// All that was asked for has been worked out and drawn.
    pub(super) fn rest_lesson(&mut self) {
        if let Some(lesson) = self.desk.rest_task() {
            self.desk.done.push(lesson.key);
            if self.frame.is_own() {
                lessons_store::keep_done(&self.desk.done);
            }
            self.show_lessons();
        }
        self.recalling.restart();
        self.show_lesson();
    }

    /// Goes on working out the start of a lesson, while nothing else waits.
    pub(super) fn recall(&mut self) {
        let Some(open) = &mut self.desk.lesson else { return };
        if open.was.is_some() {
            return;
        }
        let begun = now();
        while !open.recall() {
            if now() - begun > SLICE {
                return self.recalling.restart();
            }
        }
        self.show_lesson();
    }

    /// Does what a button of the lesson asks for.
    pub(super) fn act_on_lesson(&mut self, what: &str) {
        match what {
            "show" => self.desk.show_solution(),
            "over" => self.desk.start_over(),
            "back" => self.desk.put_back(),
            "leave" => self.desk.leave_lesson(),
            "next" => {
                if let Some(next) = self.desk.lesson.as_ref().and_then(Open::next) {
                    self.desk.open_lesson(next, None);
                }
            }
            _ => return to_lesson(),
        }
        self.refresh();
        match what {
            "leave" => root::focus("lessons"),
            "next" => to_lesson(),
            _ => {}
        }
    }
}

/// Gives the keyboard, and the eye, to the lesson.
pub(super) fn to_lesson() {
    root::focus("lesson");
}

#[cfg(test)]
mod tests {
    use super::*;

    fn job(length: &str) -> Entries {
        let mut entries = Entries::default();
        entries.set("part.length", length);
        entries
    }

    fn settled(desk: &mut Desk) -> Option<&'static str> {
        while desk.waiting.is_some() {
            desk.work();
        }
        desk.rest_task().map(|lesson| lesson.key)
    }

    #[test]
    fn a_lesson_takes_the_place_of_the_job_and_gives_it_back_with_all_that_was_typed() {
        let mut desk = Desk::new(job("40 mm"));
        desk.type_in("part.length", "50");
        desk.open_lesson(&LESSONS[0], None);
        assert!(!desk.history.can_undo(), "a lesson begins with nothing to take back");
        desk.type_in("run.pressure", "0.9");
        let made = desk.entries.clone();
        desk.open_lesson(&LESSONS[1], None);
        assert_eq!(desk.lesson.as_ref().map(|open| &open.before), Some(&job("50 mm")), "the job waits behind both");
        desk.leave_lesson();
        assert_eq!(desk.entries, job("50 mm"), "and is on the desk again");
        desk.undo();
        assert_eq!(desk.entries, made, "what was made of the lesson is not lost");
        desk.undo();
        desk.undo();
        assert_eq!(desk.entries, job("40 mm"), "nor is what came before it");
    }

    #[test]
    fn a_task_counts_as_done_when_the_learner_did_it_and_not_when_it_was_shown() {
        let mut desk = Desk::new(Entries::default());
        desk.open_lesson(&LESSONS[0], None);
        assert_eq!(settled(&mut desk), None, "nothing was done yet");
        assert!(desk.lesson.as_ref().is_some_and(|open| open.was.is_some()), "what the start gives is known");
        desk.show_solution();
        assert_eq!(settled(&mut desk), None, "it was shown");
        let met = |desk: &Desk| desk.lesson.as_ref().and_then(|open| Some(open.rested.as_ref()?.is_done()));
        assert_eq!(met(&desk), Some(true), "though the goals are met");
        desk.type_in("run.pressure", "many");
        assert_eq!(settled(&mut desk), None, "an entry at fault does nothing");
        desk.type_in("run.pressure", "0.39");
        assert_eq!(settled(&mut desk), Some(LESSONS[0].key), "this the learner did");
        desk.start_over();
        assert_eq!(settled(&mut desk), None, "the start is not done");
        desk.undo();
        desk.type_in("part.roundness_limit", "80");
        assert_eq!(settled(&mut desk), None, "the allowance is not for the learner to change");
        assert_eq!(strayed(desk.lesson.as_ref().unwrap()).len(), 1, "and it is told");
        desk.put_back();
        assert_eq!(settled(&mut desk), Some(LESSONS[0].key), "put back, it counts");
    }

    #[test]
    fn a_lesson_opened_again_keeps_what_was_made_of_it_and_knows_its_start() {
        let mut desk = Desk::new(Entries::default());
        desk.open_lesson(&LESSONS[0], None);
        assert_eq!(desk.lesson_link().as_deref(), Some("thin-ring"), "at the start its name is enough");
        desk.type_in("run.pressure", "0.4");
        let made = desk.entries.clone();
        let link = desk.lesson_link().unwrap();
        desk.open_lesson(&LESSONS[0], None);
        assert_eq!(desk.entries, made, "its link, followed once more, takes nothing away");
        let mut other = Desk::new(Entries::default());
        let (key, entries) = link.split_once('&').unwrap();
        other.open_lesson(named(key).unwrap(), Entries::from_link(entries).ok());
        assert_eq!(other.entries, made, "the address holds it all");
        assert_eq!(settled(&mut other), None, "what came by a link was not done here");
        let open = other.lesson.as_mut().unwrap();
        while !open.recall() {}
        let roundness = |findings: &Findings| findings.value("shape.roundness");
        assert!(
            open.was.as_ref().and_then(roundness) > other.good.as_ref().and_then(|(_, found)| roundness(found)),
            "it was worse at the start"
        );
    }
}
