//! Reading the indicator on the page: the station in hand, readings stepped or pasted, and a condition adopted.

use holdround_core::quantity::{Kind, Measure, decimal, parse_number};
use holdround_core::setup::indicator_inputs as inputs;
use holdround_core::text::Text;
use web_sys::HtmlTextAreaElement;

use super::Page;
use super::desk::Desk;
use crate::root;
use crate::view::{indicator as view, moves};

/// Where a column is pasted.
pub(crate) const PASTE: &str = "dial-text";
/// Least and most stations.
const STATIONS: [usize; 2] = [6, 36];

/// What is in hand while readings are entered.
#[derive(Debug, Default)]
pub(crate) struct InHand {
    /// The station, counted from 0.
    pub(crate) station: usize,
    /// What stands in the field for a column.
    pub(crate) pasted: String,
    /// What came of the last one.
    pub(crate) told: Vec<Text>,
}

impl Desk {
    /// The number of stations entered; the assumed one while that cannot be read.
    pub(super) fn stations(&self) -> usize {
        let text = self.entries.text_or_default(inputs::STATIONS.path, &inputs::STATIONS);
        let count = [text, inputs::STATIONS.default].iter().find_map(|text| {
            let count = Measure::parse(Kind::Plain, text).ok()?.si;
            (count >= STATIONS[0] as f64 && count <= STATIONS[1] as f64).then_some(count as usize)
        });
        count.unwrap_or(STATIONS[0])
    }

    /// Moves a reading by a step that can be read.
    fn nudge(&mut self, path: &str, up: bool) {
        let si = |kind, input: &holdround_core::setup::Input| {
            Measure::parse(kind, self.entries.text_or_default(input.path, input)).map(|measure| measure.si)
        };
        let (Ok(step), Ok(one)) = (si(Kind::Departure, &inputs::RESOLUTION), si(Kind::Length, &inputs::UNIT)) else {
            return;
        };
        let step = step / one;
        let from = self.entries.get(path).and_then(|text| parse_number(text).ok());
        // What was not read begins at nought.
        let to = from.map_or(0.0, |from| if up { from + step } else { from - step });
        self.type_in(path, &decimal(to, 6));
    }

    /// Takes a column as one set of readings, or tells its bad lines.
    fn take_column(&mut self, field: &str) {
        let column = match column(&self.dial.pasted) {
            Ok(column) => column,
            Err(wrong) => {
                self.dial.told = wrong;
                return;
            }
        };
        let count = column.len();
        if field == "second" && count != self.stations() {
            let says = Text::of("The second set has {} lines; the first is of {} stations. Read the same ones.");
            self.dial.told = vec![says.with(count).with(self.stations())];
            return;
        }
        let read = column.iter().filter(|text| !text.is_empty()).count();
        self.history.rest();
        self.change(None, |entries| {
            if field != "second" {
                entries.set(inputs::STATIONS.path, &count.to_string());
            }
            for at in 0..STATIONS[1] {
                let path = format!("dial.{at}.{field}");
                match column.get(at).filter(|text| !text.is_empty()) {
                    Some(text) => {
                        entries.set(&path, text);
                    }
                    None => entries.unset(&path),
                }
            }
        });
        self.dial.pasted.clear();
        self.dial.told = vec![Text::of("{} readings taken at {} stations.").with(read).with(count)];
    }

    /// Takes a correction over from the readings.
    fn adopt(&mut self, at: usize) {
        let Some((_, input, adopted)) = view::CORRECTIONS.get(at) else { return };
        let told = self.good.as_ref().and_then(|(_, findings)| view::correction(findings, at));
        let Some(told) = told else { return };
        self.history.rest();
        self.change(None, |entries| {
            entries.set(input.path, &told);
            entries.set(adopted.path, &told);
        });
        let says = Text::of("{} is now {}, from the indicator. Undo takes it back.").with(input.name);
        self.dial.told = vec![says.with(Text::number(moves::as_typed(input.path, &told, self.units)))];
    }
}

/// The readings of a column: numbers by lines, tabs or semicolons, empty where none was read; or what is wrong with it.
fn column(text: &str) -> Result<Vec<String>, Vec<Text>> {
    let (mut column, mut wrong) = (Vec::new(), Vec::new());
    for (at, line) in text.trim_end().lines().enumerate() {
        for cell in line.split(['\t', ';']) {
            let cell = cell.trim();
            let none = matches!(cell, "" | "-" | "–" | "—");
            if !none && parse_number(cell).is_err() {
                wrong.push(Text::of("Line {}: “{}” is no number.").with(at + 1).with(Text::typed(cell)));
            }
            column.push(if none { String::new() } else { cell.to_owned() });
        }
    }
    let [least, most] = STATIONS;
    if wrong.is_empty() && !(least..=most).contains(&column.len()) {
        let says = Text::of("{} readings are there; {} to {} make a set.");
        wrong.push(says.with(column.len()).with(least).with(most));
    }
    if wrong.is_empty() { Ok(column) } else { Err(wrong) }
}

impl Page {
    /// Draws the dial and tells what the readings tell.
    pub(super) fn show_indicator(&mut self) {
        let desk = &self.desk;
        self.regions.show("dial", view::at_hand(desk));
        self.regions.show("dial-told", view::told(desk));
        self.regions.show("made-indicator", view::found(desk));
    }

    /// Something was typed into the field for a column.
    pub(super) fn column_typed(&mut self, field: &HtmlTextAreaElement) {
        if field.id() == PASTE {
            self.desk.dial.pasted = field.value();
        }
    }

    /// Does what a button of the indicator asks for.
    pub(super) fn act_on_dial(&mut self, what: &str, path: &str, at: usize) {
        match what {
            "dial-station" => self.desk.dial.station = at,
            "dial-less" | "dial-more" => self.desk.nudge(path, what == "dial-more"),
            "dial-adopt" => self.desk.adopt(at),
            _ => {
                self.desk.take_column(path);
                if let Some(field) = root::by_id_as::<HtmlTextAreaElement>(PASTE) {
                    field.set_value(&self.desk.dial.pasted);
                }
            }
        }
        if what != "dial-station" {
            self.refresh();
        }
        self.show_indicator();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use holdround_core::setup::Entries;

    #[test]
    fn a_column_is_read_as_it_comes_from_a_sheet() {
        let read = column("1,5\n-2.25\n\u{2212}3\n\n-\n0\n").unwrap();
        assert_eq!(read, ["1,5", "-2.25", "\u{2212}3", "", "", "0"], "as typed, with what is missing");
        assert_eq!(column("1\t2\t3\r\n4;5;6\r\n").unwrap().len(), 6, "tabs, semicolons and lines");
        let wrong = column("1\n2\nabc\n4\n1.2.3\n6").unwrap_err();
        assert_eq!(wrong, ["Line 3: “abc” is no number.", "Line 5: “1.2.3” is no number."], "bad lines are named");
        assert!(column("1\n2").unwrap_err()[0].contains("2 readings"), "too few are said");
        assert!(column("").is_err(), "and none");
    }

    #[test]
    fn a_column_sets_the_stations_and_is_taken_back_at_once() {
        let mut entries = Entries::default();
        entries.set("indicator.use", "twice");
        let mut desk = Desk::worked_out(entries.clone());
        assert_eq!(desk.shown_items("dial"), 12, "as many fields as stations");
        desk.dial.pasted = "1\n2\n3\n4\n5\n6\n7\n8".into();
        desk.take_column("reading");
        assert_eq!(desk.shown_items("dial"), 8, "eight lines, eight stations");
        assert_eq!(desk.entries.get("dial.7.reading"), Some("8"), "the last one");
        desk.dial.pasted = "1\n2\n3\n4\n5\n6".into();
        desk.take_column("second");
        assert!(desk.dial.told[0].contains("6 lines"), "a second set of another length is not taken");
        assert!(!desk.dial.pasted.is_empty(), "and stays where it was");
        desk.undo();
        assert_eq!(desk.entries, entries, "one change");
    }

    #[test]
    fn a_reading_is_stepped_by_what_can_be_read() {
        let mut entries = Entries::default();
        entries.set("indicator.use", "once");
        let mut desk = Desk::worked_out(entries);
        for expected in ["0", "0.5", "1"] {
            desk.nudge("dial.2.reading", true);
            assert_eq!(desk.entries.get("dial.2.reading"), Some(expected), "half a division of 0.01 mm is 5 µm");
        }
        desk.nudge("dial.2.reading", false);
        assert_eq!(desk.entries.get("dial.2.reading"), Some("0.5"), "and back");
    }
}
