//! What the browser keeps between visits: the set-up as typed, the one before it, units and theme.

use holdround_core::setup::Entries;
use serde::{Deserialize, Serialize};
use web_sys::Storage;

use super::desk::Desk;
use super::preferences::Preferences;

/// Where this version's state is kept.
const KEY: &str = "holdround.desk.1";
/// Where text is kept that could not be read.
const DAMAGED: &str = "holdround.damaged";

/// What is kept.
#[derive(Debug, PartialEq, Serialize, Deserialize)]
pub(crate) struct Kept {
    setup: String,
    earlier: Option<String>,
    preferences: Preferences,
}

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

fn parse(text: &str) -> Option<Found> {
    let kept: Kept = serde_json::from_str(text).ok()?;
    let setup = Entries::from_json(&kept.setup).ok()?;
    let earlier = kept.earlier.and_then(|earlier| Entries::from_json(&earlier).ok());
    Some(Found::Kept(setup, earlier, kept.preferences))
}

/// Keeps what lies on the desk; false when the browser does not.
pub(crate) fn write(desk: &Desk) -> bool {
    let kept = Kept {
        setup: desk.entries.to_json(),
        earlier: desk.earlier.as_ref().map(Entries::to_json),
        preferences: desk.preferences(),
    };
    let Ok(text) = serde_json::to_string(&kept) else { return false };
    storage().is_some_and(|storage| storage.set_item(KEY, &text).is_ok())
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
        let kept = Kept {
            setup: desk.entries.to_json(),
            earlier: desk.earlier.as_ref().map(Entries::to_json),
            preferences: desk.preferences(),
        };
        let text = serde_json::to_string(&kept).unwrap();
        let Some(Found::Kept(entries, earlier, preferences)) = parse(&text) else { panic!("not read: {text}") };
        assert_eq!((entries, earlier, preferences), (desk.entries, desk.earlier, kept.preferences), "the same again");
        for junk in ["", "{}", "null", "[", "{\"setup\":\"\"}"] {
            assert!(parse(junk).is_none(), "{junk:?} must be reported as damaged");
        }
    }
}
