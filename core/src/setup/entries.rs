//! A set-up as it was typed: text by path. What is saved, linked, undone and never lost.

use alloc::collections::BTreeMap;
use alloc::string::{String, ToString};

use super::inputs::{LISTS, declared, every_input};
use super::{Input, When};

/// A set-up as typed. What was never entered is absent, and its default is taken.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Entries(BTreeMap<String, String>);

impl Entries {
    /// The text entered at `path`, if any.
    #[must_use]
    pub fn get(&self, path: &str) -> Option<&str> {
        self.0.get(path).map(String::as_str)
    }

    /// Enters `text` at `path`; false if no input is declared there.
    ///
    /// ```
    /// use holdround_core::setup::Entries;
    /// let mut entries = Entries::default();
    /// assert!(entries.set("part.length", "2 1/4 in"));
    /// assert!(!entries.set("part.colour", "red"));
    /// assert_eq!(entries.get("part.length"), Some("2 1/4 in"));
    /// ```
    pub fn set(&mut self, path: &str, text: &str) -> bool {
        let known = declared(path).is_some();
        if known {
            self.0.insert(path.to_string(), text.to_string());
        }
        known
    }

    /// Enters `text` at a path that is known to be declared, here or among the questions of a start.
    pub(super) fn put(&mut self, path: &str, text: &str) {
        self.0.insert(path.to_string(), text.to_string());
    }

    /// Takes the entry at `path` back, so that the default holds again.
    pub fn unset(&mut self, path: &str) {
        self.0.remove(path);
    }

    /// Every entry, by path.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().map(|(path, text)| (path.as_str(), text.as_str()))
    }

    /// What holds at `path`: the entry, without the brackets that mark it as assumed, or else the default of `input`.
    #[must_use]
    pub fn text_or_default<'a>(&'a self, path: &str, input: &Input) -> &'a str {
        self.get(path).map_or(input.default, |text| bracketed(text).unwrap_or(text))
    }

    /// How many items the list `name` has: one more than the highest index entered.
    #[must_use]
    pub fn count(&self, name: &str) -> usize {
        self.0.keys().filter_map(|path| index_in(path, name)).max().map_or(0, |last| last + 1)
    }

    /// Adds an item to the list `name`, with the defaults of its inputs written out, but for those that hang on a
    /// choice made in the item itself; false when it is full.
    pub fn add_item(&mut self, name: &str) -> bool {
        let index = self.count(name);
        let full = LISTS.iter().find(|list| list.name == name).is_none_or(|list| index >= list.most);
        if !full {
            for input in list_inputs(name) {
                let chosen_within = matches!(input.when, When::Chosen(chooser, _) if chooser.path.starts_with(name));
                if input.default.is_empty() || !chosen_within {
                    self.0.insert(input.at(index), input.default.to_string());
                }
            }
        }
        !full
    }

    /// Removes item `index` of the list `name`; those behind it move up.
    pub fn remove_item(&mut self, name: &str, index: usize) {
        let count = self.count(name);
        for at in index..count {
            for input in list_inputs(name) {
                match self.0.remove(&input.at(at + 1)) {
                    Some(text) => self.0.insert(input.at(at), text),
                    None => self.0.remove(&input.at(at)),
                };
            }
        }
    }

    /// Whether `input` matters in item `index` of its list (any index outside lists).
    #[must_use]
    pub fn matters(&self, input: &Input, index: usize) -> bool {
        match input.when {
            When::Always => true,
            When::Chosen(chooser, keys) => keys.contains(&self.text_or_default(&chooser.at(index), chooser)),
        }
    }
}

/// What stands between the brackets that mark an entry as assumed, as they mark a reference dimension on a drawing;
/// none where it has none.
///
/// ```
/// use holdround_core::setup::bracketed;
/// assert_eq!(bracketed("(125 mm)"), Some("125 mm"));
/// assert_eq!(bracketed("125 mm"), None);
/// ```
#[must_use]
pub fn bracketed(text: &str) -> Option<&str> {
    text.trim().strip_prefix('(')?.strip_suffix(')')
}

/// The inputs of one item of the list `name`.
///
/// ```
/// use holdround_core::setup::list_inputs;
/// assert!(list_inputs("cuts").any(|input| input.path == "cuts.*.feed"));
/// assert_eq!(list_inputs("chucks").count(), 0, "there is no such list");
/// ```
pub fn list_inputs(name: &str) -> impl Iterator<Item = &'static Input> {
    every_input().filter(move |input| input.in_list().is_some_and(|(list, _)| list == name))
}

/// The index in `list` that `path` stands at, e.g. 2 for `cuts.2.feed`.
fn index_in(path: &str, list: &str) -> Option<usize> {
    path.strip_prefix(list)?.strip_prefix('.')?.split('.').next()?.parse().ok()
}

#[cfg(test)]
impl Entries {
    /// The assumed job with these texts at these paths, each of which must be declared.
    pub(crate) fn typed<'a>(texts: impl IntoIterator<Item = &'a (&'a str, &'a str)>) -> Self {
        let mut entries = Self::default();
        for (path, text) in texts {
            assert!(entries.set(path, text), "{path} is declared");
        }
        entries
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn items_are_added_up_to_the_bound_and_close_ranks_when_one_goes() {
        let mut entries = Entries::default();
        while entries.add_item("cuts") {}
        assert_eq!(entries.count("cuts"), 8, "the declared bound");
        for index in 0..8 {
            entries.set(&alloc::format!("cuts.{index}.feed"), &alloc::format!("0.{index} mm/rev"));
        }
        entries.remove_item("cuts", 2);
        assert_eq!(entries.count("cuts"), 7, "one fewer");
        assert_eq!(entries.get("cuts.1.feed"), Some("0.1 mm/rev"), "before it nothing moves");
        assert_eq!(entries.get("cuts.2.feed"), Some("0.3 mm/rev"), "the next moves up");
        assert_eq!(entries.get("cuts.7.feed"), None, "the last place is empty");
    }

    #[test]
    fn an_item_is_added_though_its_list_hangs_on_a_choice_elsewhere() {
        let mut entries = Entries::default();
        entries.set("stroke.plan", "yes");
        assert!(entries.add_item("rings") && entries.add_item("rings"), "there is room for two rings");
        assert_eq!(entries.count("rings"), 2, "each holds its place");
        assert!(entries.add_item("readings"), "and for a reading");
        assert_eq!(entries.get("readings.0.gap"), Some(""), "where nothing is assumed an entry waits for its text");
        assert_eq!(entries.get("cuts.1.approach"), None, "there is no second cut");
        assert!(entries.add_item("cuts"), "nor is it refused one");
        let within = list_inputs("cuts").find(|input| {
            !input.default.is_empty()
                && matches!(input.when, When::Chosen(chooser, _) if chooser.path.starts_with("cuts"))
        });
        let within = within.expect("some entries of a cut hang on its kind");
        assert_eq!(entries.get(&within.at(1)), None, "what hangs on a choice within the item is not written");
    }

    #[test]
    fn a_reading_just_added_is_no_fault_and_one_without_its_feeler_tells_nothing() {
        let mut entries = Entries::default();
        assert!(entries.add_item("readings"), "there is room for a reading");
        let readings = |entries: &Entries| crate::setup::Setup::read(entries).unwrap().boring.readings.len();
        assert_eq!(readings(&entries), 1, "bluing at both ends, in brackets");
        entries.set("readings.0.shows", "gap");
        assert_eq!(readings(&entries), 0, "no feeler yet");
        entries.set("readings.0.gap", "0.03 mm");
        assert_eq!(readings(&entries), 1, "now it tells");
    }

    #[test]
    fn an_input_matters_only_under_its_choice() {
        let mut entries = Entries::default();
        let width = declared("jaws.width").unwrap();
        assert!(entries.matters(width, 0), "ordinary jaws are the default");
        entries.set("jaws.kind", "pie");
        assert!(!entries.matters(width, 0), "pie jaws have no width");
    }
}
