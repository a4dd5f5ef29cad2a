//! What lies on the desk: the set-up as typed, what was found, and how the reader wants to see it.

use std::collections::BTreeSet;

use holdround_core::findings::Findings;
use holdround_core::quantity::{Kind, UnitSystem, fixed};
use holdround_core::setup::jaw_inputs::{BORED_DIAMETER, TAPER};
use holdround_core::setup::part_inputs::PART_SHAPE;
use holdround_core::setup::recut_inputs::AS_BEFORE;
use holdround_core::setup::{Entries, Fault, Form, Input, LISTS, Setup, declared};
use holdround_core::{BoreChoice, Effort, Engine, Progress};

use super::earlier::Earlier;
use super::entry_text;
use super::history::History;
use super::items;
use super::notice::{self, Notice};
use super::preferences::{Preferences, Theme};
use super::window::Tracing;
use crate::units::Units;

/// Told when an answer is taken back with the size it was given for.
const ASKED_AGAIN: &str = "The jaws’ size has changed, so “Mounted as before” is open again: it was answered for the size before. Undo brings both back.";
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
    pub(crate) opened: BTreeSet<String>,
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
            opened: BTreeSet::new(),
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

    /// Reads the entries anew; while they are at fault the last good findings stay. What needs shape work waits
    /// for [`Self::work`].
    pub(super) fn evaluate(&mut self) {
        self.waiting = None;
        self.bore = None;
        match Setup::read(&self.entries) {
            Ok(setup) => {
                self.faults.clear();
                match self.engine.prepare(&setup) {
                    Progress::Done => self.find(setup, Effort::Sliding),
                    Progress::Under(share) => self.waiting = Some((setup, share)),
                }
            }
            Err(faults) => self.faults = faults,
        }
    }

    /// Does one slice of the work that waits: of the shape work, or, once that is done, the findings. True while the
    /// next slice is a short one.
    pub(crate) fn work(&mut self) -> bool {
        let Some((setup, share)) = self.waiting.take() else { return false };
        if share == 1.0 {
            self.find(setup, Effort::Full);
            return false;
        }
        let share = match self.engine.prepare(&setup) {
            Progress::Under(share) => share,
            Progress::Done => 1.0,
        };
        self.waiting = Some((setup, share));
        share < 1.0
    }

    /// Works out what a finger on a slider does not wait for: bands and bounds of the present set-up.
    pub(crate) fn complete(&mut self) {
        if self.waiting.is_none()
            && let Some((setup, _)) = self.good.take()
        {
            self.find(setup, Effort::Full);
        }
    }

    fn find(&mut self, setup: Setup, effort: Effort) {
        let findings = self.engine.evaluate(&setup, effort);
        self.good = Some((setup, findings));
        self.tell_weighed();
        self.find_mesh();
    }

    /// Looks for the bored diameter with which parts come out roundest.
    pub(crate) fn study_bore(&mut self) {
        self.bore = self
            .good
            .as_ref()
            .filter(|_| self.waiting.is_none() && self.faults.is_empty())
            .map(|(setup, _)| self.engine.bore_choice(setup));
    }

    /// Enters the diameter that was found.
    pub(crate) fn adopt_bore(&mut self) {
        let best = self.bore.as_ref().and_then(|choice| choice.findings.first());
        let Some(best) = best.and_then(|best| best.value.as_ref().ok().copied()) else { return };
        self.enter_found(&BORED_DIAMETER, Kind::Length, best);
    }

    /// Enters the taper that is to be cut now.
    pub(crate) fn adopt_taper(&mut self) {
        let good = self.good.as_ref().filter(|_| self.faults.is_empty());
        if let Some(taper) = good.and_then(|(_, findings)| findings.scene.cut_taper) {
            self.enter_found(&TAPER, Kind::Departure, taper);
        }
    }

    /// Enters a size that was worked out, to what is told of such: nobody bores finer.
    fn enter_found(&mut self, input: &Input, kind: Kind, si: f64) {
        let unit = self.units.unit(kind);
        self.history.rest();
        self.type_in(input.path, &fixed(unit.from_si(si), unit.decimals));
        self.history.rest();
    }

    fn find_mesh(&mut self) {
        self.mesh = if self.meshed { self.engine.mesh() } else { None };
    }

    /// Shows the mesh in the section, or leaves it out again.
    pub(crate) fn toggle_mesh(&mut self) {
        self.meshed = !self.meshed;
        self.find_mesh();
    }

    /// Takes what stands in the field of the input at `path`.
    pub(crate) fn type_in(&mut self, path: &str, typed: &str) {
        let Some(input) = declared(path) else { return };
        let text = match input.form {
            Form::Quantity { kind, optional, .. } => {
                let text = entry_text::stored(kind, self.units.unit(kind), typed);
                // An emptied field takes its assumed value back.
                if text.is_empty() && (optional || !input.default.is_empty()) { None } else { Some(text) }
            }
            Form::Choice(_) | Form::Material(_) | Form::Text(_) => Some(typed.to_owned()).filter(|t| !t.is_empty()),
        };
        match text {
            Some(text) => self.change(Some(path), |entries| {
                entries.set(path, &text);
                if (path, text.as_str()) == (PART_SHAPE.path, "steps") {
                    items::ring_as_first_step(entries);
                }
            }),
            None => {
                // What stood there is one undo away.
                if self.entries.get(path).is_some() {
                    self.history.rest();
                }
                self.take_back(path);
            }
        }
    }

    /// Takes an entry back, so that the assumed value holds again.
    pub(crate) fn assume(&mut self, path: &str) {
        self.history.rest();
        self.take_back(path);
        self.history.rest();
    }

    fn take_back(&mut self, path: &str) {
        let Some(input) = declared(path) else { return };
        self.change(Some(path), |entries| {
            // A list item without any entry would vanish: its place is held by its assumed values.
            if input.in_list() && entries.get(path).is_some() && !input.default.is_empty() {
                entries.set(path, input.default);
            } else {
                entries.unset(path);
            }
        });
    }

    /// Adds an item at the end of the list `name`, like the last one.
    pub(crate) fn add_item(&mut self, name: &str) {
        match self.shown_items(name).checked_sub(1) {
            Some(last) => self.add_after(name, last),
            None => self.change(None, |entries| {
                entries.add_item(name);
            }),
        }
    }

    /// Adds an item to the list `name` after the one at `index`: like it, but for what has no assumed value.
    pub(crate) fn add_after(&mut self, name: &str, index: usize) {
        let shown = self.shown_items(name);
        if self.is_full(name) {
            return;
        }
        self.change(None, |entries| {
            items::change(entries, name, shown, |items| {
                let Some(mut item) = items.get(index).cloned() else { return };
                for (text, input) in item.iter_mut().zip(items::inputs(name)) {
                    if input.default.is_empty() {
                        *text = (!input.is_optional()).then(String::new);
                    }
                }
                items.insert(index + 1, item);
            });
        });
    }

    /// Parts a step of the part in two of half its length.
    pub(crate) fn split_step(&mut self, index: usize) {
        let shown = self.shown_items("steps");
        if !self.is_full("steps") {
            self.change(None, |entries| items::split(entries, shown, index, None));
        }
    }

    /// Chooses the step of the part that can be dragged.
    pub(crate) fn choose_step(&mut self, index: usize) {
        if self.step != index {
            (self.step, self.parting) = (index, None);
        }
    }

    /// Parts the chosen step `length` m from its near end, in the unit shown; a ring becomes a part of steps by it.
    pub(crate) fn part_chosen(&mut self, length: f64) {
        let (step, unit) = (self.step, self.units.unit(Kind::Length));
        let stepped = self.entries.text_or_default(PART_SHAPE.path, &PART_SHAPE) == "steps";
        if stepped && self.is_full("steps") {
            return;
        }
        let shown = self.shown_items("steps");
        self.change(None, |entries| {
            if stepped {
                items::split(entries, shown, step, Some((length, unit)));
            } else {
                items::ring_as_only_step(entries);
                items::split(entries, 1, 0, Some((length, unit)));
            }
        });
        self.choose_step(if stepped { step + 1 } else { 1 });
    }

    /// Exchanges the items at `index` and after it in the list `name`.
    pub(crate) fn exchange(&mut self, name: &str, index: usize) {
        let shown = self.shown_items(name);
        if index + 1 < shown {
            self.change(None, |entries| items::change(entries, name, shown, |items| items.swap(index, index + 1)));
        }
    }

    /// Removes an item of the list `name`.
    pub(crate) fn remove_item(&mut self, name: &str, index: usize) {
        self.change(None, |entries| entries.remove_item(name, index));
    }

    /// Whether the list `name` takes no more items.
    fn is_full(&self, name: &str) -> bool {
        LISTS.iter().find(|list| list.name == name).is_none_or(|list| self.shown_items(name) >= list.most)
    }

    /// How many items of the list `name` are shown: those entered, and at least as many as are needed.
    pub(crate) fn shown_items(&self, name: &str) -> usize {
        if name == "dial" {
            return self.stations();
        }
        let least = LISTS.iter().find(|list| list.name == name).map_or(0, |list| list.least);
        self.entries.count(name).max(least)
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

    /// What stands in the field of `input` at `path`; empty while its assumed value holds.
    pub(crate) fn in_field(&self, input: &Input, path: &str) -> String {
        let text = self.entries.get(path).unwrap_or_default();
        input.kind().map_or_else(|| text.to_owned(), |kind| entry_text::in_field(kind, self.units.unit(kind), text))
    }

    /// The faults of the entry at `path`.
    pub(crate) fn faults_at(&self, path: &str) -> impl Iterator<Item = &Fault> {
        self.faults.iter().filter(move |fault| fault.path == path)
    }

    /// Units and theme, to be stored.
    pub(crate) fn preferences(&self) -> Preferences {
        Preferences::of(self.units, self.theme)
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
    use holdround_core::setup::INPUTS;

    #[test]
    fn a_fault_keeps_the_last_good_findings_and_the_text() {
        let mut desk = Desk::worked_out(Entries::default());
        desk.type_in("part.length", "long");
        assert_eq!(desk.faults.len(), 1, "a length that is no number is a fault");
        assert_eq!(desk.faults_at("part.length").count(), 1, "at its entry");
        assert!(desk.good.is_some(), "the last good findings stay");
        desk.assume("part.length");
        assert!(desk.faults.is_empty(), "the assumed length holds again");
        desk.undo();
        assert_eq!(desk.entries.get("part.length"), Some("long mm"), "undo brings back even a fault");
    }

    #[test]
    fn an_emptied_field_takes_its_assumed_value_back_and_what_stood_there_is_one_undo_away() {
        let mut desk = Desk::worked_out(Entries::default());
        desk.type_in("part.length", "4");
        desk.type_in("part.length", "40");
        desk.type_in("part.length", "");
        assert!(desk.faults.is_empty() && desk.entries.get("part.length").is_none(), "assumed again, as at first");
        desk.undo();
        assert_eq!(desk.entries.get("part.length"), Some("40 mm"), "all that was typed, in one step");
        desk.undo();
        assert_eq!(desk.entries.get("part.length"), None, "and before it was typed");
        // A field that assumes nothing, and must be filled in, stays empty and says so.
        desk.add_item("rings");
        desk.type_in("rings.0.outside", "150");
        desk.type_in("rings.0.outside", "");
        assert_eq!(
            desk.entries.get("rings.0.outside"),
            declared("rings.0.outside").map(|input| input.default),
            "an item keeps its place by what is assumed"
        );
    }

    #[test]
    fn a_second_cut_leaves_the_assumed_first_one_in_place() {
        let mut desk = Desk::worked_out(Entries::default());
        desk.add_item("cuts");
        assert_eq!(desk.shown_items("cuts"), 2, "one was shown, now two");
        desk.type_in("cuts.1.feed", "0.3");
        desk.add_item("cuts");
        assert_eq!(desk.entries.get("cuts.2.feed"), Some("0.3 mm/rev"), "a new cut is like the last");
        desk.undo();
        desk.assume("cuts.1.feed");
        desk.assume("cuts.1.kind");
        desk.assume("cuts.1.distance");
        assert_eq!(desk.shown_items("cuts"), 2, "assumed values do not make a cut vanish");
        desk.remove_item("cuts", 0);
        assert_eq!(desk.shown_items("cuts"), 1, "one went");
        desk.undo();
        assert_eq!(desk.shown_items("cuts"), 2, "and came back");
    }

    #[test]
    fn the_ring_becomes_the_first_step_and_stays_itself() {
        let mut desk = Desk::worked_out(Entries::default());
        desk.type_in("part.outside_diameter", "6 1/2 in");
        desk.type_in("part.shape", "steps");
        assert_eq!(desk.entries.get("steps.0.outside"), Some("6 1/2 in"), "as it was typed");
        assert_eq!(desk.entries.get("steps.0.bore"), Some("140 mm"), "or as it was assumed");
        assert!(desk.faults.is_empty(), "the same part, given otherwise: {:?}", desk.faults);
        desk.split_step(0);
        desk.type_in("steps.1.outside", "170 mm");
        desk.type_in("part.shape", "ring");
        assert_eq!(desk.entries.get("part.outside_diameter"), Some("6 1/2 in"), "the ring is still there");
        desk.type_in("part.shape", "steps");
        assert_eq!(desk.shown_items("steps"), 2, "and so are the steps");
        assert_eq!(desk.entries.get("steps.1.outside"), Some("170 mm"), "as they were left");
    }

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
    fn what_is_done_to_steps_can_be_taken_back() {
        let mut desk = Desk::worked_out(Entries::default());
        desk.type_in("part.shape", "steps");
        let lengths = |desk: &Desk| -> Vec<String> {
            (0..desk.shown_items("steps"))
                .map(|at| desk.entries.get(&format!("steps.{at}.length")).unwrap_or("assumed").to_owned())
                .collect()
        };
        desk.split_step(0);
        desk.type_in("steps.1.length", "20");
        assert_eq!(lengths(&desk), ["15 mm", "20 mm"], "parted in two, the second made longer");
        desk.add_after("steps", 0);
        assert_eq!(lengths(&desk), ["15 mm", "15 mm", "20 mm"], "a step like the first, after it");
        desk.exchange("steps", 1);
        assert_eq!(lengths(&desk), ["15 mm", "20 mm", "15 mm"], "the last two change places");
        desk.exchange("steps", 2);
        assert_eq!(lengths(&desk), ["15 mm", "20 mm", "15 mm"], "the last one has nowhere to go");
        desk.remove_item("steps", 0);
        assert_eq!(lengths(&desk), ["20 mm", "15 mm"], "the first one goes");
        for left in [3, 3, 2, 2, 1] {
            desk.undo();
            assert_eq!(desk.shown_items("steps"), left, "one change back: {:?}", lengths(&desk));
        }
        assert_eq!(lengths(&desk), ["30 mm"], "the ring as one step");
    }

    #[test]
    fn surfaces_come_and_go() {
        let mut desk = Desk::worked_out(Entries::default());
        assert_eq!(desk.shown_items("surfaces"), 0, "none need be named");
        desk.add_item("surfaces");
        desk.add_item("surfaces");
        assert_eq!(desk.shown_items("surfaces"), 2, "two were asked for");
        assert!(desk.faults.is_empty(), "as they come they are on the part: {:?}", desk.faults);
        desk.remove_item("surfaces", 0);
        desk.remove_item("surfaces", 0);
        assert_eq!(desk.shown_items("surfaces"), 0, "and both go");
        for _ in 0..20 {
            desk.add_item("surfaces");
        }
        assert_eq!(desk.shown_items("surfaces"), 8, "no more than are declared");
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

    #[test]
    fn hostile_entries_never_panic() {
        let hostile =
            ["", "0", "-1", "NaN", "1e308", "1e999", "inf", "∞", "१२", "1/0", "\u{0}", "<b>", "e", "1e", "\""];
        for group in INPUTS {
            for input in group.inputs {
                for text in hostile {
                    let mut desk = Desk::new(Entries::default());
                    desk.type_in(&input.at(0), text);
                    let shown = desk.in_field(input, &input.at(0));
                    assert!(shown.len() < 400, "{}: {text:?} is shown as {shown:?}", input.path);
                }
            }
        }
    }
}
