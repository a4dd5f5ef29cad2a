//! What lies on the desk: the set-up as typed, what was found, and how the reader wants to see it.

use holdround_core::findings::Findings;
use holdround_core::quantity::UnitSystem;
use holdround_core::setup::{Entries, Fault, Form, INPUTS, Input, LISTS, Setup, declared};

use super::entry_text;
use super::history::History;
use super::notice::Notice;
use super::preferences::{Preferences, Theme};
use crate::units::Units;

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
    /// What is wrong with the entries now.
    pub(crate) faults: Vec<Fault>,
    /// What the reader must be told about links, storage and the like.
    pub(crate) notices: Vec<Notice>,
    /// A stored set-up that a link took the place of.
    pub(crate) earlier: Option<Entries>,
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
            faults: Vec::new(),
            notices: Vec::new(),
            earlier: None,
        };
        desk.evaluate();
        desk
    }

    /// Computes the findings anew; while entries are at fault the last good ones stay.
    fn evaluate(&mut self) {
        match Setup::read(&self.entries) {
            Ok(setup) => {
                let findings = holdround_core::evaluate(&setup);
                self.good = Some((setup, findings));
                self.faults.clear();
            }
            Err(faults) => self.faults = faults,
        }
    }

    /// Takes what stands in the field of the input at `path`.
    pub(crate) fn type_in(&mut self, path: &str, typed: &str) {
        let Some(input) = declared(path) else { return };
        let text = match input.form {
            Form::Quantity { kind, optional, .. } => {
                let text = entry_text::stored(kind, self.units.unit(kind), typed);
                if optional && text.is_empty() { None } else { Some(text) }
            }
            Form::Choice(_) | Form::Material(_) | Form::Text(_) => Some(typed.to_owned()).filter(|t| !t.is_empty()),
        };
        match text {
            Some(text) => self.change(Some(path), |entries| {
                entries.set(path, &text);
            }),
            None => self.take_back(path),
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

    /// Adds an item to the list `name`: like the last one, but for what must be entered each time.
    pub(crate) fn add_item(&mut self, name: &str) {
        let last = self.shown_items(name).saturating_sub(1);
        self.change(None, |entries| {
            while entries.count(name) < last + 2 && entries.add_item(name) {}
            for input in item_inputs(name).filter(|input| !input.default.is_empty()) {
                if let Some(text) = entries.get(&input.at(last)).map(str::to_owned) {
                    entries.set(&input.at(last + 1), &text);
                }
            }
        });
    }

    /// Removes an item of the list `name`.
    pub(crate) fn remove_item(&mut self, name: &str, index: usize) {
        self.change(None, |entries| entries.remove_item(name, index));
    }

    /// How many items of the list `name` are shown: those entered, and at least as many as are needed.
    pub(crate) fn shown_items(&self, name: &str) -> usize {
        let least = LISTS.iter().find(|list| list.name == name).map_or(0, |list| list.least);
        self.entries.count(name).max(least)
    }

    /// Puts another set-up in place of this one; it can be taken back.
    pub(crate) fn open(&mut self, entries: Entries) {
        self.change(None, |present| *present = entries);
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

    fn change(&mut self, path: Option<&str>, change: impl FnOnce(&mut Entries)) {
        let before = self.entries.clone();
        change(&mut self.entries);
        if self.entries != before {
            self.history.note(&before, path);
            self.evaluate();
        }
    }
}

/// The inputs of one item of the list `name`.
fn item_inputs(name: &str) -> impl Iterator<Item = &'static Input> {
    let inputs = INPUTS.iter().flat_map(|group| group.inputs.iter().copied());
    inputs.filter(move |input| input.path.split_once(".*.").is_some_and(|(list, _)| list == name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_keeps_the_last_good_findings_and_the_text() {
        let mut desk = Desk::new(Entries::default());
        desk.type_in("part.length", "");
        assert_eq!(desk.faults.len(), 1, "a length of nothing is a fault");
        assert_eq!(desk.faults_at("part.length").count(), 1, "at its entry");
        assert!(desk.good.is_some(), "the last good findings stay");
        desk.assume("part.length");
        assert!(desk.faults.is_empty(), "the assumed length holds again");
        desk.undo();
        assert_eq!(desk.entries.get("part.length"), Some(""), "undo brings back even a fault");
    }

    #[test]
    fn a_second_cut_leaves_the_assumed_first_one_in_place() {
        let mut desk = Desk::new(Entries::default());
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
