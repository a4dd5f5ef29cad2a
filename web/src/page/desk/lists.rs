//! Lists on the desk: cuts, steps of the part, rings.

use holdround_core::quantity::Kind;
use holdround_core::setup::part_inputs::PART_SHAPE;
use holdround_core::setup::{LISTS, list_inputs};

use super::Desk;
use crate::page::items;

impl Desk {
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
                for (text, input) in item.iter_mut().zip(list_inputs(name)) {
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
}

#[cfg(test)]
mod tests {
    use super::*;
    use holdround_core::setup::Entries;

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
}
