//! The set-up in the address: what follows `#`.

use holdround_core::setup::{Entries, LinkError};
use js_sys::Reflect;
use wasm_bindgen::JsValue;
use web_sys::{Event, Storage};

use super::frame;

/// What an address asks for.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Asked {
    /// Nothing.
    Nothing,
    /// This set-up.
    Setup(Entries),
    /// The worked example with this id.
    Example(String),
    /// Something that cannot be opened.
    Damaged(LinkError, String),
}

/// Opens the name of a worked example.
const EXAMPLE: &str = "example=";
/// Where work is handed on from a page that was left to the one that opens in its place.
const HANDED_ON: &str = "holdround.handed-on";

impl Asked {
    /// What `hash`, which may begin with `#`, asks for.
    pub(crate) fn read(hash: &str) -> Self {
        let link = frame::setup_in(hash.strip_prefix('#').unwrap_or(hash));
        if link.is_empty() {
            return Self::Nothing;
        }
        if let Some(id) = link.strip_prefix(EXAMPLE) {
            return Self::Example(id.to_owned());
        }
        Entries::from_link(link).map_or_else(|error| Self::Damaged(error, link.to_owned()), Self::Setup)
    }

    /// What the address asks for to which it was changed; by now work may have been saved over it.
    pub(crate) fn by(change: &Event) -> Self {
        Self::read(&changed_to(change))
    }

    /// What the address asks for when the page opens: newer work, if the page was left with that at this address.
    pub(crate) fn at_opening() -> Self {
        let hash = hash();
        let session = session();
        let handed_on = session.as_ref().and_then(|session| session.get_item(HANDED_ON).ok().flatten());
        let _taken = session.map(|session| session.remove_item(HANDED_ON));
        let newer = handed_on.as_deref().and_then(|text| text.split_once('\n')).filter(|(left, _)| *left == hash);
        Self::read(newer.map_or(&hash, |(_, newer)| newer))
    }
}

/// The address, within this page, of a worked example.
pub(crate) fn of_example(id: &str) -> String {
    format!("#{EXAMPLE}{id}")
}

/// Keeps work that the address may not hold when the page opens again: a reload under way asks for the old one.
pub(crate) fn hand_on(entries: &Entries) {
    let text = format!("{}\n{}", hash(), entries.to_link());
    let _kept = session().map(|session| session.set_item(HANDED_ON, &text));
}

/// What follows `#` in the address after `change`.
pub(super) fn changed_to(change: &Event) -> String {
    let address = Reflect::get(change, &"newURL".into()).ok().and_then(|address| address.as_string());
    address.as_deref().and_then(|address| address.split_once('#')).map_or_else(String::new, |(_, link)| link.to_owned())
}

/// What the address has from `#` on.
pub(super) fn hash() -> String {
    web_sys::window().and_then(|window| window.location().hash().ok()).unwrap_or_default()
}

/// What the browser keeps for this tab alone.
fn session() -> Option<Storage> {
    web_sys::window()?.session_storage().ok()?
}

/// Writes the set-up into the address, and after it what else was `asked` for, without a step in the browser's history.
pub(crate) fn write(entries: &Entries, asked: &str) {
    let link = format!("#{}{asked}", entries.to_link());
    let history = web_sys::window().and_then(|window| window.history().ok());
    // Where the frame forbids it the address stays as it is; the set-up is still in the store.
    let _written = history.map(|history| history.replace_state_with_url(&JsValue::NULL, "", Some(&link)));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_asks_for_one_thing() {
        let mut entries = Entries::default();
        entries.set("part.length", "2 1/4 in");
        assert_eq!(Asked::read(""), Asked::Nothing, "no link");
        assert_eq!(Asked::read("#"), Asked::Nothing, "an empty one");
        assert_eq!(Asked::read(&format!("#{}", entries.to_link())), Asked::Setup(entries), "a set-up");
        assert_eq!(Asked::read(&of_example("thin-ring")), Asked::Example("thin-ring".into()), "an example");
        assert_eq!(Asked::read("#x"), Asked::Damaged(LinkError::Version, "x".into()), "junk is kept");
    }
}
