//! Comparing jaws: asked for by a button, worked out a slice at a time.

use holdround_core::Comparison;
use holdround_core::setup::Entries;

use super::desk::Desk;
use super::{Page, SLICE, now};
use crate::view::compare;

/// Other jaws beside those on the desk.
#[derive(Debug, Default)]
pub(crate) struct Beside {
    /// What is compared; none until it is asked for.
    pub(crate) comparison: Option<Comparison>,
    /// The set-up it was begun with.
    of: Entries,
}

impl Beside {
    fn begin(entries: &Entries) -> Self {
        Self { comparison: Some(Comparison::of(entries)), of: entries.clone() }
    }

    /// Takes the jaws at a place of the table over.
    pub(crate) fn take(&self, desk: &mut Desk, at: usize) {
        if let Some(one) = self.comparison.as_ref().and_then(|comparison| comparison.done().get(at)) {
            desk.open(one.choice.entries.clone());
        }
    }
}

impl Page {
    /// Begins to compare the jaws on the desk with others.
    pub(crate) fn compare(&mut self) {
        self.beside = Beside::begin(&self.desk.entries);
        self.comparing.restart();
        self.show_comparison();
    }

    /// Goes on comparing, a slice at a time.
    pub(super) fn go_on_comparing(&mut self) {
        let begun = now();
        let Some(comparison) = &mut self.beside.comparison else { return };
        let before = comparison.done().len();
        while comparison.work() && now() - begun < SLICE {}
        let news = comparison.done().len() > before;
        if !comparison.is_done() {
            self.comparing.restart();
        }
        if news {
            self.show_comparison();
        }
    }

    /// Shows the table as far as it has come.
    pub(super) fn show_comparison(&mut self) {
        let current = self.beside.of == self.desk.entries;
        self.regions.show("comparison", compare::show(&self.beside, self.desk.units, current));
    }
}
