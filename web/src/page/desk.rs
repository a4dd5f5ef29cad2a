//! What lies on the desk: the set-up as typed, what was found, and how the reader wants to see it.

mod found;
mod lists;
mod typing;

use holdround_core::findings::Findings;
use holdround_core::quantity::UnitSystem;
use holdround_core::setup::recut_inputs::AS_BEFORE;
use holdround_core::setup::{Entries, Fault, Setup};
use holdround_core::{BoreChoice, Engine};

use super::earlier::Earlier;
use super::history::History;
use super::notice::{self, Notice};
use super::preferences::{Preferences, Theme};
use super::window::Tracing;
use crate::language::Tongue;
use crate::units::Units;

/// Told when an answer is taken back with the size it was given for.
const ASKED_AGAIN: &str = "The jaws' size has changed, so “Mounted as before” is open again: it was answered for the size before. Undo brings both back.";
/// Radii nearer than this are the same, m.
const SAME_SIZE: f64 = 1e-9;

/// Everything the page shows, and all it remembers.
#[derive(Debug)]
pub(crate) struct Desk {
    /// The set-up as typed.
    pub(crate) entries: Entries,
    /// What can be taken back.
    pub(crate) history: History,
    /// The units to write in.
    pub(crate) units: Units,
    /// The look.
    pub(crate) theme: Theme,
    /// The language that was chosen; none while it is that of the device.
    pub(crate) tongue: Option<Tongue>,
    /// Whether the jaws are closed.
    pub(crate) clamped: bool,
    /// Whether the spindle turns.
    pub(crate) spinning: bool,
    /// The last valid set-up and what was found for it.
    pub(crate) good: Option<(Setup, Findings)>,
    /// A valid set-up whose shape work is under way, and how far it has come; 1 when only the findings are wanting.
    pub(crate) waiting: Option<(Setup, f64)>,
    /// Keeps the shape work from one set-up to the next.
    pub(super) engine: Engine,
    /// The window.
    pub(super) tracing: Tracing,
    /// Whether the section shows the mesh on which the part was solved.
    pub(crate) meshed: bool,
    /// The mesh it shows.
    pub(crate) mesh: Option<Vec<[f64; 4]>>,
    /// The step of the part that can be dragged.
    pub(crate) step: usize,
    /// Where that step would be parted, m from its near end; in its middle if it was not said.
    pub(crate) parting: Option<f64>,
    /// What the bored diameter does to the part, once asked for and until something changes.
    pub(crate) bore: Option<BoreChoice>,
    /// What is wrong with the entries now.
    pub(crate) faults: Vec<Fault>,
    /// What the reader must be told about links, storage and the like.
    pub(crate) notices: Vec<Notice>,
    /// Set-ups that others took the place of, and those of other windows.
    pub(crate) earlier: Earlier,
    /// A set-up with rings of the user's own that this one could take over.
    pub(crate) rings: Option<Entries>,
    /// Whether nothing can be changed.
    pub(crate) locked: bool,
    /// The findings whose steps are open, by the id of their line.
    pub(crate) opened: Vec<String>,
    /// What is in hand of readings of the indicator.
    pub(crate) dial: super::indicator::InHand,
    /// The lesson that is open.
    pub(crate) lesson: Option<super::lessons::Open>,
    /// The lessons that are done, by key.
    pub(crate) done: Vec<&'static str>,
    /// What moves the findings, once it is asked for.
    pub(super) weighing: Option<super::influence::Weighing>,
}

impl Desk {
    /// A desk with a set-up on it.
    pub(crate) fn new(entries: Entries) -> Self {
        let mut desk = Self {
            entries,
            history: History::default(),
            units: Units::of(UnitSystem::Metric),
            theme: Theme::Device,
            tongue: None,
            clamped: true,
            spinning: false,
            good: None,
            waiting: None,
            engine: Engine::default(),
            tracing: Tracing::default(),
            meshed: false,
            mesh: None,
            step: 0,
            parting: None,
            bore: None,
            faults: Vec::new(),
            notices: Vec::new(),
            earlier: Earlier::default(),
            rings: None,
            locked: false,
            opened: Vec::new(),
            dial: super::indicator::InHand::default(),
            lesson: None,
            done: Vec::new(),
            weighing: None,
        };
        desk.evaluate();
        desk
    }

    /// A desk on which no work waits.
    #[cfg(test)]
    pub(crate) fn worked_out(entries: Entries) -> Self {
        let mut desk = Self::new(entries);
        while desk.waiting.is_some() {
            desk.work();
        }
        desk
    }

    /// Puts another set-up in place of this one; it can be taken back.
    pub(crate) fn open(&mut self, entries: Entries) {
        self.take(None, entries);
    }

    /// Takes the user's own rings over from another set-up.
    pub(crate) fn take_rings(&mut self, from: &Entries) {
        self.change(None, |entries| {
            for (path, text) in from.iter().filter(|(path, _)| path.starts_with("rings.")) {
                entries.set(path, text);
            }
        });
    }

    /// Takes the last change back.
    pub(crate) fn undo(&mut self) {
        if let Some(entries) = self.history.undo(&self.entries) {
            self.entries = entries;
            self.evaluate();
        }
    }

    /// Does again what was taken back.
    pub(crate) fn redo(&mut self) {
        if let Some(entries) = self.history.redo(&self.entries) {
            self.entries = entries;
            self.evaluate();
        }
    }

    /// The faults of the entry at `path`.
    pub(crate) fn faults_at(&self, path: &str) -> impl Iterator<Item = &Fault> {
        self.faults.iter().filter(move |fault| fault.path == path)
    }

    /// Units, theme and language, to be stored.
    pub(crate) fn preferences(&self) -> Preferences {
        Preferences::of(self.units, self.theme, self.tongue)
    }

    pub(super) fn change(&mut self, path: Option<&str>, change: impl FnOnce(&mut Entries)) {
        let mut entries = self.entries.clone();
        change(&mut entries);
        let answered = [&self.entries, &entries].iter().all(|entries| entries.get(AS_BEFORE.path) == Some("yes"));
        if answered && self.bored_otherwise(&entries) && !self.locked {
            entries.unset(AS_BEFORE.path);
            notice::tell(&mut self.notices, Notice::new(ASKED_AGAIN));
        }
        self.take(path, entries);
    }

    /// Whether the jaws are bored to another size for `entries` than for what was last worked out.
    fn bored_otherwise(&self, entries: &Entries) -> bool {
        let known = self.waiting.as_ref().map(|(setup, _)| setup).or(self.good.as_ref().map(|(setup, _)| setup));
        let Some((known, Ok(setup))) = known.zip(Some(Setup::read(entries))) else { return false };
        (setup.bored_radius() - known.bored_radius()).abs() > SAME_SIZE
    }

    fn take(&mut self, path: Option<&str>, entries: Entries) {
        if !self.locked && self.entries != entries {
            self.history.note(&self.entries, path);
            self.entries = entries;
            self.evaluate();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_answer_about_the_mounting_goes_with_the_size_it_was_given_for() {
        let mut desk = Desk::worked_out(Entries::default());
        for (path, text) in [("recut.jaws", "bored"), ("recut.standing", "160"), ("recut.as_before", "yes")] {
            desk.type_in(path, text);
        }
        desk.type_in("part.length", "31");
        assert_eq!(desk.entries.get("recut.as_before"), Some("yes"), "another length is no other size");
        assert_eq!(desk.notices, [], "and nothing is told");
        desk.type_in("part.outside_diameter", "161");
        assert_eq!(desk.entries.get("recut.as_before"), None, "asked again for another gripped diameter");
        assert_eq!(desk.notices, [Notice::new(ASKED_AGAIN)], "and that is told");
        desk.undo();
        assert_eq!(desk.entries.get("recut.as_before"), Some("yes"), "one undo brings it back");
        desk.type_in("recut.as_before", "no");
        desk.type_in("part.outside_diameter", "161");
        assert_eq!(desk.entries.get("recut.as_before"), Some("no"), "that it is not known stays so");
        let mut other = desk.entries.clone();
        other.set("part.outside_diameter", "165 mm");
        other.set("recut.as_before", "yes");
        desk.open(other);
        assert_eq!(desk.entries.get("recut.as_before"), Some("yes"), "a set-up brings its own answer");
    }

    #[test]
    fn a_locked_desk_stays_as_it_is() {
        let mut desk = Desk::worked_out(Entries::default());
        desk.locked = true;
        let before = desk.entries.clone();
        desk.type_in("part.length", "40");
        desk.add_item("cuts");
        desk.assume("part.length");
        desk.open(Entries::default());
        desk.undo();
        assert_eq!(desk.entries, before, "nothing was changed");
        assert!(desk.good.is_some(), "and its findings are there");
    }
}
