//! What the browser keeps between visits: the set-up as typed, the one before it, units and theme.

use holdround_core::setup::Entries;
use web_sys::Storage;

use super::desk::Desk;
use super::preferences::Preferences;

/// Where this version's state is kept.
const KEY: &str = "holdround.desk.1";
/// Where text is kept that could not be read.
const DAMAGED: &str = "holdround.damaged";
/// Opens the line of the set-up.
const SETUP: &str = "setup";
/// Opens the line of the set-up before it.
const EARLIER: &str = "earlier";
/// Opens the line of units and theme.
const PREFERENCES: &str = "preferences";

/// What was found in the store.
pub(crate) enum Found {
    /// Nothing was ever kept.
    Nothing,
    /// The browser keeps nothing for this page.
    Refused,
    /// What is there cannot be read.
    Damaged(String),
    /// A set-up, the one before it, and preferences.
    Kept(Entries, Option<Entries>, Preferences),
}

/// Where the answers for a job of one's own are kept.
const ANSWERS: &str = "holdround.answers.1";

/// The answers that were kept, a line each.
pub(crate) fn answers() -> Option<String> {
    storage()?.get_item(ANSWERS).ok()?
}

/// Keeps the answers, a line each.
pub(crate) fn write_answers(lines: &str) {
    let _kept = storage().map(|storage| storage.set_item(ANSWERS, lines));
}

/// Reads the store.
pub(crate) fn read() -> Found {
    let Some(text) = storage().map(|storage| storage.get_item(KEY)) else { return Found::Refused };
    match text {
        Err(_) => Found::Refused,
        Ok(None) => Found::Nothing,
        Ok(Some(text)) => parse(&text).unwrap_or_else(|| {
            // A copy under another key outlives the next save.
            let _kept = storage().map(|storage| storage.set_item(DAMAGED, &text));
            Found::Damaged(text)
        }),
    }
}

/// What was kept: a word a line, and what it is about.
fn parse(text: &str) -> Option<Found> {
    let (mut setup, mut earlier, mut preferences) = (None, None, None);
    for line in text.lines() {
        let (word, about) = line.split_once(' ')?;
        match word {
            SETUP => setup = Entries::from_link(about).ok(),
            EARLIER => earlier = Entries::from_link(about).ok(),
            PREFERENCES => preferences = Preferences::parse(about),
            _ => return None,
        }
    }
    Some(Found::Kept(setup?, earlier, preferences?))
}

fn told(desk: &Desk) -> String {
    let mut text = format!("{SETUP} {}\n{PREFERENCES} {}\n", desk.entries.to_link(), desk.preferences());
    if let Some(earlier) = &desk.earlier {
        text.push_str(&format!("{EARLIER} {}\n", earlier.to_link()));
    }
    text
}

/// Keeps what lies on the desk; false when the browser does not.
pub(crate) fn write(desk: &Desk) -> bool {
    storage().is_some_and(|storage| storage.set_item(KEY, &told(desk)).is_ok())
}

/// The browser's storage; none where it is forbidden, as in a sandboxed frame.
fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok()?
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_kept_can_be_read_and_junk_cannot() {
        let mut desk = Desk::new(Entries::default());
        desk.type_in("part.length", "wide");
        desk.earlier = Some(Entries::default());
        let text = told(&desk);
        let Some(Found::Kept(entries, earlier, preferences)) = parse(&text) else { panic!("not read: {text}") };
        assert_eq!(
            (entries, earlier, preferences),
            (desk.entries.clone(), desk.earlier.clone(), desk.preferences()),
            "the same again"
        );
        for junk in ["", "{}", "null", "setup", "setup 2-00000000", &text.replace('$', "-"), &text.replace('\n', " ")] {
            assert!(parse(junk).is_none(), "{junk:?} must be reported as damaged");
        }
    }
}
