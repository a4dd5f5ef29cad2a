//! What the browser keeps between visits: the set-up as typed, those before it and of other windows, units, theme and
//! language.
//!
//! What cannot be read, as when a newer page wrote it, is set aside before anything is written over it. It is told
//! with every opening until it is put away, or until a page that can read it offers it again.

use holdround_core::setup::Entries;
use web_sys::Storage;

use super::desk::Desk;
use super::earlier::Earlier;
use super::notice::{Notice, tell};
use super::opening::is_work;
use super::preferences::Preferences;
use super::stamp::new_id;

/// Where this version's state is kept.
const KEY: &str = "holdround.desk.1";
/// Opens the keys of what was set aside.
const ASIDE: &str = "holdround.damaged";
/// Opens the line of the set-up.
const SETUP: &str = "setup";
/// Opens the line of a set-up before it, or of another window.
const EARLIER: &str = "earlier";
/// Opens the line of the window that wrote all this.
const WINDOW: &str = "window";
/// Opens the line of units, theme and language.
const PREFERENCES: &str = "preferences";

const ANOTHER_WINDOW: &str =
    "Another window of this page has a set-up of its own. Both are kept; you can go to the other one from here.";
const UNREADABLE: &str = "Something that this browser kept cannot be read by this page, in whole or in part: it is damaged, or a newer version wrote it. It stays kept until you put this note away.";

/// What was kept.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Kept {
    /// The set-up that was last on a desk.
    pub(crate) setup: Option<Entries>,
    /// Others.
    pub(crate) earlier: Earlier,
    /// Units, theme and language.
    pub(crate) preferences: Option<Preferences>,
    /// What is to be told.
    pub(crate) notices: Vec<Notice>,
    /// The window that kept it.
    pub(crate) window: String,
    /// Whether all of it was read.
    pub(crate) whole: bool,
}

/// The browser's store as this window knows it.
#[derive(Debug, Default)]
pub(crate) struct Store {
    window: String,
    /// What it last found or put there.
    known: Option<String>,
    /// Keys of what was set aside and can be read by now.
    recovered: Vec<String>,
}

impl Store {
    /// Reads what is kept; nothing where the browser keeps nothing for this page.
    pub(crate) fn open() -> (Self, Option<Kept>) {
        let mut store = Self { window: new_id(), ..Self::default() };
        let kept = storage().and_then(|storage| store.read(&storage));
        (store, kept)
    }

    fn read(&mut self, storage: &Storage) -> Option<Kept> {
        let text = storage.get_item(KEY).ok()?;
        let mut kept = text.as_deref().map(parse).unwrap_or_default();
        if kept.whole || text.as_deref().is_none_or(|text| set_aside(storage, text)) {
            self.known = text;
        } else {
            kept.notices.extend(text.map(unreadable));
        }
        for (key, text) in aside(storage) {
            let before = parse(&text);
            if !before.whole {
                kept.notices.push(unreadable(text));
                continue;
            }
            self.recovered.push(key);
            let others = before.earlier.0.into_iter().map(|(entries, _)| entries);
            let offered = |entries: &Entries| kept.setup.as_ref() != Some(entries) && is_work(entries);
            for entries in others.chain(before.setup).filter(offered) {
                kept.earlier.add(entries, String::new());
            }
        }
        Some(kept)
    }

    /// Keeps what lies on the desk, and what other windows have kept since; false when the browser does not.
    pub(crate) fn write(&mut self, desk: &mut Desk) -> bool {
        let Some(storage) = storage().filter(|storage| self.take_in(storage, desk)) else { return false };
        let text = self.told(desk);
        if storage.set_item(KEY, &text).is_err() {
            return false;
        }
        self.known = Some(text);
        for key in self.recovered.drain(..) {
            let _removed = storage.remove_item(&key);
        }
        true
    }

    /// Another window may have written: true if what lies on this desk must be kept anew beside that.
    pub(crate) fn hear(&mut self, desk: &mut Desk) -> bool {
        let Some(storage) = storage().filter(|storage| self.take_in(storage, desk)) else { return false };
        let link = desk.job().to_link();
        is_work(desk.job())
            && storage.get_item(KEY).ok().flatten().is_some_and(|text| text.split([' ', '\n']).all(|word| word != link))
    }

    /// Takes in what another window has written since; false when that cannot be read, nor set aside.
    fn take_in(&mut self, storage: &Storage, desk: &mut Desk) -> bool {
        let Some(text) = storage.get_item(KEY).ok().flatten().filter(|text| self.known.as_ref() != Some(text)) else {
            return true;
        };
        let theirs = parse(&text);
        if !theirs.whole {
            tell(&mut desk.notices, unreadable(text.clone()));
            if !set_aside(storage, &text) {
                return false;
            }
        }
        self.known = Some(text);
        if self.add(desk, theirs) {
            tell(&mut desk.notices, Notice::new(ANOTHER_WINDOW));
        }
        true
    }

    /// Adds what another window has; true if there is anything new in it.
    fn add(&self, desk: &mut Desk, theirs: Kept) -> bool {
        let mut new = false;
        let open = theirs.setup.map(|entries| (entries, theirs.window));
        for (entries, window) in theirs.earlier.0.into_iter().rev().chain(open) {
            if window != self.window && entries != *desk.job() && is_work(&entries) {
                new |= desk.earlier.add(entries, window);
            }
        }
        new
    }

    fn told(&self, desk: &Desk) -> String {
        let mut text = format!(
            "{SETUP} {}\n{WINDOW} {}\n{PREFERENCES} {}\n",
            desk.job().to_link(),
            self.window,
            desk.preferences()
        );
        for (entries, window) in &desk.earlier.0 {
            text.push_str(&format!("{EARLIER} {} {window}\n", entries.to_link()));
        }
        text
    }
}

/// What was kept: a word a line, and what it is about.
fn parse(text: &str) -> Kept {
    let mut kept = Kept { whole: true, ..Kept::default() };
    let mut before = Vec::new();
    for line in text.lines() {
        let (word, about) = line.split_once(' ').unwrap_or((line, ""));
        let (link, window) = about.split_once(' ').unwrap_or((about, ""));
        match (word, Entries::from_link(link)) {
            (SETUP, Ok(entries)) => kept.setup = Some(entries),
            (EARLIER, Ok(entries)) => before.push((entries, window.to_owned())),
            (WINDOW, _) => kept.window = about.to_owned(),
            (PREFERENCES, _) => {
                let read = Preferences::parse(about);
                kept.whole &= read.as_ref().is_some_and(|(_, all)| *all);
                kept.preferences = read.map(|(preferences, _)| preferences);
            }
            _ => kept.whole = false,
        }
    }
    kept.earlier = Earlier(before);
    kept.whole &= kept.setup.is_some() && kept.preferences.is_some();
    kept
}

fn unreadable(text: String) -> Notice {
    Notice::about(UNREADABLE, text)
}

/// What was set aside, each with its key.
fn aside(storage: &Storage) -> Vec<(String, String)> {
    let keys = (0..storage.length().unwrap_or(0)).filter_map(|at| storage.key(at).ok().flatten());
    keys.filter(|key| key.starts_with(ASIDE))
        .filter_map(|key| storage.get_item(&key).ok().flatten().map(|text| (key, text)))
        .collect()
}

/// Sets a text aside; false when the browser does not.
fn set_aside(storage: &Storage, text: &str) -> bool {
    let known = aside(storage).iter().any(|(_, there)| there == text);
    known || storage.set_item(&format!("{ASIDE}.{}", new_id()), text).is_ok()
}

/// The note about a text that was set aside was put away: so is the text.
pub(crate) fn let_go(text: &str) {
    let Some(storage) = storage() else { return };
    for (key, _) in aside(&storage).into_iter().filter(|(_, there)| there == text) {
        let _removed = storage.remove_item(&key);
    }
}

/// What is kept at `key`; none where there is nothing, or the browser keeps nothing.
pub(super) fn kept(key: &str) -> Option<String> {
    storage()?.get_item(key).ok()?
}

/// Keeps `text` at `key`, where the browser does.
pub(super) fn put(key: &str, text: &str) {
    let _kept = storage().map(|storage| storage.set_item(key, text));
}

/// The browser's storage; none where it is forbidden, as in a sandboxed frame.
pub(super) fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok()?
}

#[cfg(test)]
mod tests {
    use super::*;

    fn work(length: &str) -> Entries {
        let mut entries = Entries::default();
        entries.set("part.length", length);
        entries
    }

    fn store(window: &str) -> Store {
        Store { window: window.into(), ..Store::default() }
    }

    #[test]
    fn what_is_kept_can_be_read_and_junk_cannot() {
        let mut desk = Desk::new(Entries::default());
        desk.type_in("part.length", "wide");
        desk.earlier.add(work("1 mm"), String::new());
        desk.earlier.add(work("2 mm"), "b".into());
        let text = store("a").told(&desk);
        let kept = parse(&text);
        let wanted = Kept {
            setup: Some(desk.entries.clone()),
            earlier: desk.earlier.clone(),
            preferences: Some(desk.preferences()),
            notices: Vec::new(),
            window: "a".into(),
            whole: true,
        };
        assert_eq!(kept, wanted, "the same again");
        let newer = [
            text.replace("2-", "3-"),
            text.replace("setup", "desk"),
            format!("{text}colour blue\n"),
            text.replace("device", "night"),
            text.replace("device", "device large"),
        ];
        for other in &newer {
            assert!(other != &text && !parse(other).whole, "what a newer page may write is not read in part: {other}");
        }
        for junk in ["", "{}", "null", "setup", "setup 2-00000000", &text.replace('$', "-"), &text.replace('\n', " ")] {
            assert!(!parse(junk).whole, "{junk:?} must be reported as damaged");
        }
    }

    #[test]
    fn two_windows_keep_each_others_work() {
        let (a, b) = (store("a"), store("b"));
        let (mut of_a, mut of_b) = (Desk::new(work("1 mm")), Desk::new(work("2 mm")));
        assert!(b.add(&mut of_b, parse(&a.told(&of_a))), "b finds what a wrote");
        of_a.type_in("part.length", "1.5");
        let newest = of_a.entries.clone();
        assert!(b.add(&mut of_b, parse(&a.told(&of_a))), "and what a wrote since");
        assert_eq!(of_b.earlier.0, [(newest, "a".to_owned())], "the newest of it");
        assert!(a.add(&mut of_a, parse(&b.told(&of_b))), "a finds what b wrote");
        assert_eq!(of_a.earlier.0, [(work("2 mm"), "b".to_owned())], "but not its own");
        assert!(!a.add(&mut of_a, parse(&b.told(&of_b))), "and the same is not told twice");
    }

    #[test]
    fn the_job_is_kept_while_a_lesson_lies_on_the_desk() {
        let mut desk = Desk::new(Entries::default());
        desk.type_in("part.length", "44");
        let job = desk.entries.clone();
        desk.open_lesson(&holdround_core::lessons::LESSONS[0], None);
        desk.type_in("run.pressure", "0.9");
        assert_eq!(parse(&Store::default().told(&desk)).setup, Some(job), "the lesson does not take its place");
    }
}
