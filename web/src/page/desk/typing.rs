//! What is typed on the desk, and what is entered for the user.

use holdround_core::quantity::{Kind, fixed};
use holdround_core::setup::jaw_inputs::{BORED_DIAMETER, TAPER};
use holdround_core::setup::part_inputs::PART_SHAPE;
use holdround_core::setup::{Form, Input, declared};

use super::Desk;
use crate::page::{entry_text, items};

impl Desk {
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
            if input.in_list().is_some() && entries.get(path).is_some() && !input.default.is_empty() {
                entries.set(path, input.default);
            } else {
                entries.unset(path);
            }
        });
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

    /// What stands in the field of `input` at `path`; empty while its assumed value holds.
    pub(crate) fn in_field(&self, input: &Input, path: &str) -> String {
        let text = self.entries.get(path).unwrap_or_default();
        input.kind().map_or_else(|| text.to_owned(), |kind| entry_text::in_field(kind, self.units.unit(kind), text))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use holdround_core::setup::{Entries, INPUTS};

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
