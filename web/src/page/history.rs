//! Undo and redo: set-ups as they were before each change.

use holdround_core::setup::Entries;

/// Most changes that can be taken back.
const LONGEST: usize = 200;

/// Set-ups before and after the present one.
#[derive(Debug, Default)]
pub(crate) struct History {
    past: Vec<Entries>,
    future: Vec<Entries>,
    touched: Option<String>,
}

impl History {
    /// Notes the set-up before a change; a run of changes to the same `path` counts as one.
    pub(crate) fn note(&mut self, before: &Entries, path: Option<&str>) {
        let goes_on = path.is_some() && self.touched.as_deref() == path;
        self.touched = path.map(str::to_owned);
        self.future.clear();
        if goes_on {
            return;
        }
        if self.past.len() == LONGEST {
            self.past.remove(0);
        }
        self.past.push(before.clone());
    }

    /// Ends a run of changes to one path.
    pub(crate) fn rest(&mut self) {
        self.touched = None;
    }

    /// The set-up before the last change, given the present one.
    pub(crate) fn undo(&mut self, present: &Entries) -> Option<Entries> {
        self.rest();
        let before = self.past.pop()?;
        self.future.push(present.clone());
        Some(before)
    }

    /// The set-up that was last taken back, given the present one.
    pub(crate) fn redo(&mut self, present: &Entries) -> Option<Entries> {
        self.rest();
        let after = self.future.pop()?;
        self.past.push(present.clone());
        Some(after)
    }

    /// Whether anything can be taken back.
    pub(crate) fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    /// Whether anything can be done again.
    pub(crate) fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(text: &str) -> Entries {
        let mut entries = Entries::default();
        entries.set("part.length", text);
        entries
    }

    #[test]
    fn a_run_of_keys_in_one_field_is_taken_back_at_once() {
        let mut history = History::default();
        let states = [length(""), length("3"), length("30"), length("30 mm")];
        for before in &states[..3] {
            history.note(before, Some("part.length"));
        }
        let undone = history.undo(&states[3]).unwrap();
        assert_eq!(undone, states[0], "the whole run goes");
        assert!(!history.can_undo(), "it was one change");
        assert_eq!(history.redo(&undone).unwrap(), states[3], "and comes back");
    }

    #[test]
    fn leaving_the_field_parts_two_changes_and_a_new_change_ends_redo() {
        let mut history = History::default();
        history.note(&length("1"), Some("part.length"));
        history.rest();
        history.note(&length("2"), Some("part.length"));
        assert_eq!(history.undo(&length("3")), Some(length("2")), "the second change first");
        history.note(&length("2"), None);
        assert!(!history.can_redo(), "what was undone is gone once something else is done");
    }
}
