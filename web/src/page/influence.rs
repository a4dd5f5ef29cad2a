//! What moves the findings most: worked out once steps or assumptions are opened, a slice at a time.

use holdround_core::InfluenceWork;
use holdround_core::setup::Entries;

use super::desk::Desk;
use super::{Page, SLICE, now};
use crate::root;
use crate::view::{notes, title_block};

/// What is opened that tells of it.
const OPEN: &str = "details.line[open], #assumed[open]";

/// What is weighed, and for which entries.
#[derive(Debug)]
pub(super) struct Weighing {
    of: Entries,
    work: InfluenceWork,
    under: bool,
}

impl Desk {
    /// Begins to weigh the inputs of the present set-up, unless that was begun; false where there is nothing to do.
    fn begin_weighing(&mut self) -> bool {
        if self.good.is_none() || self.waiting.is_some() || !self.faults.is_empty() {
            return false;
        }
        if self.weighing.as_ref().is_none_or(|weighing| weighing.of != self.entries) {
            let work = InfluenceWork::new(&self.entries);
            self.weighing = Some(Weighing { of: self.entries.clone(), work, under: true });
        }
        self.weighing.as_ref().is_some_and(|weighing| weighing.under)
    }

    /// Does one slice; true while something is left to do for the present set-up.
    fn weigh(&mut self) -> bool {
        let Some(weighing) = self.weighing.as_mut().filter(|weighing| weighing.of == self.entries) else {
            return false;
        };
        weighing.under = weighing.under && weighing.work.step();
        weighing.under
    }

    /// Tells the findings what moves them, if that is known.
    pub(super) fn tell_weighed(&mut self) {
        let known = self.weighing.as_ref().filter(|weighing| !weighing.under && weighing.of == self.entries);
        if let Some((weighing, (_, findings))) = known.zip(self.good.as_mut()) {
            weighing.work.tell(findings);
        }
    }
}

impl Page {
    /// Something was opened, or drawn anew: what moves the findings is wanted, once things have settled.
    pub(super) fn weigh_anew(&self) {
        let wanted = root::document().and_then(|document| document.query_selector(OPEN).ok().flatten());
        if wanted.is_some() {
            self.before_weighing.restart();
        }
    }

    /// Begins to weigh, if that is still to be done.
    pub(super) fn begin_weighing(&mut self) {
        if self.desk.begin_weighing() {
            self.weighing.restart();
        }
    }

    /// Weighs for a while, and goes on after it.
    pub(super) fn weigh(&mut self) {
        let begun = now();
        let mut more = true;
        while more && now() - begun < SLICE {
            more = self.desk.weigh();
        }
        if more {
            return self.weighing.restart();
        }
        self.desk.tell_weighed();
        self.regions.show("verdict", title_block::show(&self.desk));
        self.show_findings();
        self.regions.show("notes", notes::show(&self.desk));
    }
}
