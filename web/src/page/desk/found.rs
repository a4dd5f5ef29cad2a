//! What is found for the set-up on the desk, a slice at a time.

use holdround_core::setup::Setup;
use holdround_core::{Effort, Progress};

use super::Desk;

impl Desk {
    /// Reads the entries anew; while they are at fault the last good findings stay. What needs shape work waits
    /// for [`Self::work`].
    pub(in crate::page) fn evaluate(&mut self) {
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

    fn find_mesh(&mut self) {
        self.mesh = if self.meshed { self.engine.mesh() } else { None };
    }

    /// Shows the mesh in the section, or leaves it out again.
    pub(crate) fn toggle_mesh(&mut self) {
        self.meshed = !self.meshed;
        self.find_mesh();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use holdround_core::setup::Entries;

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
}
