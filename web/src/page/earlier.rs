//! Set-ups that lay on the desk before, or that other windows keep, to be gone back to.

use holdround_core::setup::Entries;

/// Set-ups, the newest first, each with the name of the window that has it on its desk; empty if none has.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Earlier(pub(crate) Vec<(Entries, String)>);

impl Earlier {
    /// Adds a set-up, in place of what the same window had before; false if it is there already.
    pub(crate) fn add(&mut self, entries: Entries, window: String) -> bool {
        if self.0.iter().any(|(known, _)| *known == entries) {
            return false;
        }
        self.0.retain(|(_, by)| window.is_empty() || *by != window);
        self.0.insert(0, (entries, window));
        true
    }

    /// Takes one out.
    pub(crate) fn take(&mut self, at: usize) -> Option<Entries> {
        (at < self.0.len()).then(|| self.0.remove(at).0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_newest_of_each_window_is_kept_and_nothing_twice() {
        let work = |length: &str| {
            let mut entries = Entries::default();
            entries.set("part.length", length);
            entries
        };
        let mut earlier = Earlier::default();
        for (length, window) in [("1 mm", ""), ("2 mm", "b"), ("3 mm", "b"), ("4 mm", ""), ("3 mm", "")] {
            earlier.add(work(length), window.into());
        }
        let kept: Vec<_> = earlier.0.iter().map(|(entries, _)| entries.get("part.length").unwrap_or("")).collect();
        assert_eq!(kept, ["4 mm", "3 mm", "1 mm"], "what lay on this desk stays, the other window's is its newest");
        assert_eq!(earlier.take(1), Some(work("3 mm")), "one is taken out");
        assert_eq!(earlier.take(2), None, "there are two left");
    }
}
