//! Items of a list, taken out of a set-up, changed as a whole and put back.

use holdround_core::quantity::{Kind, Measure, Unit, decimal};
use holdround_core::setup::{Entries, list_inputs, part_inputs as ring, profile_inputs as step};

/// The entries of one item, beside the declarations of the list; none where the assumed value holds.
type Item = Vec<Option<String>>;

/// Decimals that halve any length a drawing gives without rounding it.
const EXACT: usize = 7;

/// Changes the list `name`, of which `shown` items are shown, as a whole.
pub(crate) fn change(entries: &mut Entries, name: &str, shown: usize, change: impl FnOnce(&mut Vec<Item>)) {
    let item = |at: usize| list_inputs(name).map(|input| entries.get(&input.at(at)).map(str::to_owned)).collect();
    let mut items: Vec<Item> = (0..shown).map(item).collect();
    change(&mut items);
    for at in (0..entries.count(name)).rev() {
        entries.remove_item(name, at);
    }
    for (at, item) in items.into_iter().enumerate() {
        // An item without any entry would vanish: its place is held by an assumed value.
        let bare = item.iter().all(Option::is_none);
        for (place, (input, text)) in list_inputs(name).zip(item).enumerate() {
            if let Some(text) = text.or_else(|| (bare && place == 0).then(|| input.default.to_owned())) {
                entries.set(&input.at(at), &text);
            }
        }
    }
}

/// Parts step `at` in two: of half its length, or the near one `place` m long in a unit; leaves it when its length
/// cannot be read. Diameters stay; those of a cone are shared out along it.
pub(crate) fn split(entries: &mut Entries, shown: usize, at: usize, place: Option<(f64, &Unit)>) {
    let length = entries.text_or_default(&step::STEP_LENGTH.at(at), &step::STEP_LENGTH);
    let Ok(length) = Measure::parse(Kind::Length, length) else { return };
    let (near, unit) = place.unwrap_or((length.si / 2.0, length.unit));
    let share = near / length.si;
    if !(share > 0.0 && share < 1.0) {
        return;
    }
    let lengths = [near, length.si - near].map(|si| typed(si, unit));
    let cones = [(&step::STEP_OUTSIDE, &step::STEP_OUTSIDE_END), (&step::STEP_BORE, &step::STEP_BORE_END)];
    let middles = cones.map(|(near, far)| {
        let near = entries.text_or_default(&near.at(at), near);
        entries.get(&far.at(at)).filter(|far| !far.trim().is_empty()).and_then(|far| between(near, far, share))
    });
    change(entries, "steps", shown, |items| {
        if let Some(item) = items.get(at).cloned() {
            items.insert(at, item);
        }
    });
    for (at, length) in (at..).zip(&lengths) {
        entries.set(&step::STEP_LENGTH.at(at), length);
    }
    for ((near, far), middle) in cones.into_iter().zip(middles) {
        if let Some(middle) = middle {
            entries.set(&far.at(at), &middle);
            entries.set(&near.at(at + 1), &middle);
        }
    }
}

/// A share of the way between two lengths, in the unit the first was typed in.
fn between(from: &str, to: &str, share: f64) -> Option<String> {
    let [from, to] = [from, to].map(|text| Measure::parse(Kind::Length, text));
    let (from, to) = (from.ok()?, to.ok()?);
    Some(typed(from.si + (to.si - from.si) * share, from.unit))
}

fn typed(si: f64, unit: &Unit) -> String {
    format!("{} {}", decimal(unit.from_si(si), EXACT), unit.symbol)
}

/// Gives a part that has no steps yet the plain ring as its first step.
pub(crate) fn ring_as_first_step(entries: &mut Entries) {
    if entries.count("steps") == 0 {
        set_ring(entries);
    }
}

/// Makes the plain ring a part of one step, gripped where it was; steps from before go.
pub(crate) fn ring_as_only_step(entries: &mut Entries) {
    change(entries, "steps", 0, Vec::clear);
    entries.unset(ring::GRIP_START.path);
    entries.set(ring::PART_SHAPE.path, "steps");
    set_ring(entries);
}

fn set_ring(entries: &mut Entries) {
    let taken = [
        (&ring::PART_LENGTH, &step::STEP_LENGTH),
        (&ring::OUTSIDE_DIAMETER, &step::STEP_OUTSIDE),
        (&ring::BORE_DIAMETER, &step::STEP_BORE),
    ];
    for (of_ring, of_step) in taken {
        let text = entries.text_or_default(of_ring.path, of_ring).to_owned();
        entries.set(&of_step.at(0), &text);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(entries: &Entries, at: usize) -> Vec<Option<&str>> {
        let paths = list_inputs("steps").map(|input| input.at(at));
        paths.map(|path| entries.get(&path)).collect()
    }

    #[test]
    fn a_split_cone_keeps_its_length_and_its_slope() {
        let mut entries = Entries::default();
        for (field, text) in
            [("length", "1 1/2 in"), ("outside", "4 in"), ("outside_end", "76.2 mm"), ("bore", "20 mm")]
        {
            entries.set(&format!("steps.0.{field}"), text);
        }
        entries.set("steps.1.length", "5 mm");
        split(&mut entries, 2, 0, None);
        assert_eq!(
            texts(&entries, 0),
            [Some("0.75 in"), Some("4 in"), Some("3.5 in"), Some("20 mm"), None],
            "the near half ends where the cone is midway"
        );
        assert_eq!(
            texts(&entries, 1),
            [Some("0.75 in"), Some("3.5 in"), Some("76.2 mm"), Some("20 mm"), None],
            "and the far half goes on from there"
        );
        assert_eq!(entries.get("steps.2.length"), Some("5 mm"), "the next step moves on");
    }

    #[test]
    fn a_step_is_parted_where_it_was_said_in_the_unit_it_was_said_in() {
        let mut entries = Entries::default();
        for (field, text) in [("length", "2 in"), ("outside", "90 mm"), ("outside_end", "140.8 mm"), ("bore", "20 mm")]
        {
            entries.set(&format!("steps.0.{field}"), text);
        }
        let before = entries.clone();
        let unit = Unit::named(Kind::Length, "mm").unwrap();
        for outside in [0.0, -0.01, 0.0508, 1.0, f64::NAN] {
            split(&mut entries, 1, 0, Some((outside, unit)));
            assert_eq!(entries, before, "{outside} m is not within a step of 2 in");
        }
        split(&mut entries, 1, 0, Some((0.0127, unit)));
        assert_eq!(entries.get("steps.0.length"), Some("12.7 mm"), "a quarter of the step");
        assert_eq!(entries.get("steps.1.length"), Some("38.1 mm"), "and the rest");
        assert_eq!(entries.get("steps.0.outside_end"), Some("102.7 mm"), "a quarter up the cone");
        assert_eq!(entries.get("steps.1.outside"), Some("102.7 mm"), "from where it goes on");
    }

    #[test]
    fn a_length_that_cannot_be_read_is_not_split() {
        let mut entries = Entries::default();
        entries.set("steps.0.length", "long mm");
        let before = entries.clone();
        split(&mut entries, 1, 0, None);
        assert_eq!(entries, before, "nothing typed is lost");
    }

    #[test]
    fn items_of_assumed_values_keep_their_places() {
        let mut entries = Entries::default();
        entries.set("steps.1.length", "7 mm");
        change(&mut entries, "steps", 2, |items| items.swap(0, 1));
        assert_eq!(entries.get("steps.0.length"), Some("7 mm"), "moved up");
        assert_eq!(entries.count("steps"), 2, "the assumed step is still there");
    }
}
