//! The set-up in the address: what follows `#`.

use holdround_core::setup::{Entries, LinkError};
use js_sys::Reflect;
use wasm_bindgen::JsValue;
use web_sys::{Event, Storage};

use super::desk::Desk;

/// What an address asks for.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Asked {
    /// Nothing.
    Nothing,
    /// This set-up.
    Setup(Entries),
    /// The worked example with this id.
    Example(String),
    /// The lesson with this key, at its start or with what was made of it.
    Lesson(String, Option<Entries>),
    /// Something that cannot be opened.
    Damaged(LinkError, String),
}

/// Opens the name of a worked example.
const EXAMPLE: &str = "example=";
/// Opens the key of a lesson.
pub(crate) const LESSON: &str = "lesson=";
/// Where work is handed on from a page that was left to the one that opens in its place.
const HANDED_ON: &str = "holdround.handed-on";

impl Asked {
    /// What `hash`, which may begin with `#`, asks for.
    pub(crate) fn read(hash: &str) -> Self {
        let link = what(hash);
        if link.is_empty() {
            return Self::Nothing;
        }
        if let Some(id) = link.strip_prefix(EXAMPLE) {
            return Self::Example(id.to_owned());
        }
        let damaged = |error| Self::Damaged(error, link.clone());
        if let Some(lesson) = link.strip_prefix(LESSON) {
            return match lesson.split_once('&') {
                None => Self::Lesson(lesson.to_owned(), None),
                Some((key, made)) => {
                    Entries::from_link(made).map_or_else(damaged, |entries| Self::Lesson(key.to_owned(), Some(entries)))
                }
            };
        }
        Entries::from_link(&link).map_or_else(damaged, Self::Setup)
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

/// The words in `hash` that say how the page is to be shown, in whatever order.
pub(super) fn words(hash: &str) -> impl Iterator<Item = (&str, &str)> {
    hash.split('&').filter_map(word)
}

fn word(piece: &str) -> Option<(&str, &str)> {
    let (name, value) = piece.split_once('=').unwrap_or((piece, ""));
    matches!(name, "show" | "locked" | "units" | "look" | "language").then_some((name, value))
}

/// What is to be shown, without those words and without what is not known. Only a lesson has more behind it: what was
/// made of it.
fn what(hash: &str) -> String {
    let mut pieces = hash.strip_prefix('#').unwrap_or(hash).split('&').filter(|piece| word(piece).is_none());
    let first = pieces.next().unwrap_or_default();
    let made = pieces.next().filter(|_| first.starts_with(LESSON));
    made.map_or_else(|| first.to_owned(), |made| format!("{first}&{made}"))
}

/// The address, within this page, of a worked example.
pub(crate) fn of_example(id: &str) -> String {
    format!("#{EXAMPLE}{id}")
}

/// The address, within this page, of a lesson, with what was made of it behind `&`.
pub(crate) fn of_lesson(lesson: &str) -> String {
    format!("#{LESSON}{lesson}")
}

/// The address, within this page, of what lies on the desk.
fn of(desk: &Desk) -> String {
    desk.lesson_link().map_or_else(|| format!("#{}", desk.entries.to_link()), |lesson| of_lesson(&lesson))
}

/// Keeps work that the address may not hold when the page opens again: a reload under way asks for the old one.
pub(crate) fn hand_on(desk: &Desk) {
    let text = format!("{}\n{}", hash(), of(desk));
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

/// Writes what lies on the desk into the address, and after it what else was `asked` for, without a step in the
/// browser's history.
pub(crate) fn write(desk: &Desk, asked: &str) {
    let link = format!("{}{asked}", of(desk));
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
        assert_eq!(Asked::read(&format!("#{}", entries.to_link())), Asked::Setup(entries.clone()), "a set-up");
        assert_eq!(Asked::read(&of_example("thin-ring")), Asked::Example("thin-ring".into()), "an example");
        assert_eq!(Asked::read(&of_lesson("taper")), Asked::Lesson("taper".into(), None), "a lesson");
        let made = of_lesson(&format!("taper&{}", entries.to_link()));
        assert_eq!(Asked::read(&made), Asked::Lesson("taper".into(), Some(entries)), "and what was made of it");
        let cut = Asked::Damaged(LinkError::Version, "lesson=taper&".into());
        assert_eq!(Asked::read("#lesson=taper&"), cut, "a lesson cut off is kept too");
        assert_eq!(Asked::read(&format!("{made}&locked&show=face")), Asked::read(&made), "a lesson in a frame");
        assert_eq!(
            Asked::read("#example=a&locked&more"),
            Asked::Example("a".into()),
            "what is not known is passed over"
        );
        assert_eq!(Asked::read("#x"), Asked::Damaged(LinkError::Version, "x".into()), "junk is kept");
    }
}
