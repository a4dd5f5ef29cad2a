//! Every input, in the order in which a job is set up.

use super::boring_inputs::BORING_INPUTS;
use super::chuck_inputs::CHUCK_INPUTS;
use super::cut_inputs::CUT_INPUTS;
use super::gauge_inputs::GAUGE_INPUTS;
use super::indicator_inputs::INDICATOR_INPUTS;
use super::input::Input;
use super::jaw_inputs::{JAW_INPUTS, RUN_INPUTS};
use super::part_inputs::PART_INPUTS;
use super::profile_inputs::{STEP_INPUTS, SURFACE_INPUTS};
use super::range_inputs::RANGE_INPUTS;
use super::recut_inputs::RECUT_INPUTS;
use super::ring_inputs::RING_INPUTS;
use super::stroke_inputs::STROKE_INPUTS;
use super::taper_inputs::READING_INPUTS;

/// A group of inputs that belong together on the sheet.
#[derive(Clone, Copy, Debug)]
pub struct Group {
    /// Its key.
    pub key: &'static str,
    /// Its heading.
    pub name: &'static str,
    /// Its inputs, in order.
    pub inputs: &'static [&'static Input],
}

/// A list that may have several items.
#[derive(Clone, Copy, Debug)]
pub struct List {
    /// The first part of its inputs' paths.
    pub name: &'static str,
    /// Least number of items where it matters.
    pub least: usize,
    /// Greatest number of items.
    pub most: usize,
}

/// Every input by group, in shop order.
pub static INPUTS: &[Group] = &[
    Group { key: "part", name: "The part", inputs: PART_INPUTS },
    Group { key: "steps", name: "Steps of the part", inputs: STEP_INPUTS },
    Group { key: "surfaces", name: "Surfaces that matter", inputs: SURFACE_INPUTS },
    Group { key: "chuck", name: "The chuck", inputs: CHUCK_INPUTS },
    Group { key: "gauge", name: "Grip gauge", inputs: GAUGE_INPUTS },
    Group { key: "jaws", name: "The jaws", inputs: JAW_INPUTS },
    Group { key: "run", name: "Pressure and speed", inputs: RUN_INPUTS },
    Group { key: "cuts", name: "The cuts", inputs: CUT_INPUTS },
    Group { key: "indicator", name: "Reading the indicator", inputs: INDICATOR_INPUTS },
    Group { key: "ranges", name: "How well it is known", inputs: RANGE_INPUTS },
    Group { key: "boring", name: "Boring the jaws", inputs: BORING_INPUTS },
    Group { key: "readings", name: "How the bored jaws bear", inputs: READING_INPUTS },
    Group { key: "stroke", name: "Teeth and stroke", inputs: STROKE_INPUTS },
    Group { key: "ring", name: "Boring ring or plug", inputs: RING_INPUTS },
    Group { key: "recut", name: "Jaws coming back", inputs: RECUT_INPUTS },
];

/// The lists among them.
pub static LISTS: &[List] = &[
    List { name: "steps", least: 1, most: 200 },
    List { name: "surfaces", least: 0, most: 8 },
    List { name: "cuts", least: 1, most: 8 },
    List { name: "gauge", least: 2, most: 12 },
    List { name: "spun", least: 0, most: 12 },
    List { name: "dial", least: 0, most: 36 },
    List { name: "readings", least: 0, most: 8 },
    List { name: "rings", least: 0, most: 24 },
];

/// Every input, group after group.
///
/// ```
/// use holdround_core::setup::every_input;
/// assert!(every_input().any(|input| input.path == "run.pressure"));
/// ```
pub fn every_input() -> impl Iterator<Item = &'static Input> {
    // Unrolled over the constants, each search would weigh more in the page than the declarations do.
    core::hint::black_box(INPUTS).iter().flat_map(|group| group.inputs.iter().copied())
}

/// The input declared at `path`, which may name a list item: `cuts.2.feed`.
///
/// ```
/// use holdround_core::setup::declared;
/// assert_eq!(declared("cuts.2.feed").unwrap().name, "Feed");
/// assert!(declared("cuts.99.feed").is_none());
/// ```
#[must_use]
pub fn declared(path: &str) -> Option<&'static Input> {
    let mut all = every_input();
    let Some((list, index, field)) = item_path(path) else {
        return all.find(|input| input.path == path);
    };
    let list = LISTS.iter().find(|known| known.name == list)?;
    if index.is_some_and(|index| index >= list.most) {
        return None;
    }
    all.find(|input| input.in_list() == Some((list.name, field)))
}

/// Parts `cuts.2.feed` into list, index and field; `*` stands for any index.
fn item_path(path: &str) -> Option<(&str, Option<usize>, &str)> {
    let (list, rest) = path.split_once('.')?;
    let (index, field) = rest.split_once('.')?;
    if index == "*" {
        return Some((list, None, field));
    }
    let canonical = index == "0" || !index.starts_with('0');
    if canonical && index.bytes().all(|b| b.is_ascii_digit()) { Some((list, index.parse().ok(), field)) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Measure;
    use crate::setup::input::{Form, When};
    use alloc::collections::BTreeSet;

    #[test]
    fn paths_are_unique_and_find_their_own_declaration() {
        let mut seen = BTreeSet::new();
        for input in every_input() {
            assert!(seen.insert(input.path), "{} is declared twice", input.path);
            let found = declared(&input.at(0)).unwrap();
            assert_eq!(found.path, input.path, "lookup finds the same declaration");
        }
        for path in ["cuts.08.feed", "cuts.-1.feed", "cuts.8.feed", "cuts.x.feed", "cuts", "part", "", "gauge.*"] {
            assert!(declared(path).is_none(), "{path:?} is no input");
        }
    }

    #[test]
    fn every_default_is_within_its_own_range() {
        for input in every_input().filter(|input| !input.default.is_empty()) {
            match input.form {
                Form::Quantity { kind, least, most, .. } => {
                    let si = Measure::parse(kind, input.default).unwrap().si;
                    assert!(si >= least && si <= most, "{}: default {} leaves its range", input.path, input.default);
                }
                Form::Choice(choices) => {
                    assert!(choices.iter().any(|c| c.key == input.default), "{}: default is no choice", input.path);
                }
                Form::Material(_) | Form::Text(_) => {}
            }
        }
    }

    #[test]
    fn conditions_name_a_choice_and_its_keys() {
        for input in every_input() {
            if let When::Chosen(chooser, keys) = input.when {
                let declared = declared(chooser.path).unwrap();
                assert!(core::ptr::eq(declared, chooser), "{}: it hangs on a choice that is declared", input.path);
                for key in keys {
                    assert!(chooser.choices().iter().any(|c| c.key == *key), "{}: no key {key}", input.path);
                }
            }
        }
    }

    #[test]
    fn every_input_explains_itself() {
        for input in every_input() {
            assert!(input.help.len() > 10 && input.help.ends_with('.'), "{}: help is a sentence", input.path);
            assert!(!input.source.is_empty(), "{}: source is named", input.path);
        }
    }
}
