//! The page inside another one: which part of it is shown, whether it can be changed, and how high it is.
//!
//! What is asked for stands in the address after the set-up, each word opened by `&`: `#example=thin-ring&show=face&locked`.
//! A page that was asked for so keeps nothing in the browser.

use std::mem;

use js_sys::{Object, Reflect};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, HtmlInputElement, HtmlSelectElement, ResizeObserver, Window};

use super::Page;
use super::address;
use crate::root;

/// Parts of the page that a frame can show alone, each with its name.
pub(crate) const PARTS: [(&str, &str); 7] = [
    (WHOLE, "the whole sheet"),
    ("verdict", "the verdict"),
    ("face", "the chuck face"),
    ("section", "the section"),
    ("trace", "the roundness trace"),
    ("window", "the window"),
    ("findings", "all findings"),
];
/// The whole sheet.
pub(crate) const WHOLE: &str = "sheet";

/// What an address asks for beside its set-up.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Frame {
    /// Everything that was asked for, as it stands in the address; empty if nothing was.
    pub(crate) asked: String,
    /// The part to show alone.
    pub(crate) part: Option<&'static str>,
    /// Whether nothing can be changed.
    pub(crate) locked: bool,
    /// Unit of length, look and language, by their keys.
    preferences: Vec<(&'static str, String)>,
}

impl Frame {
    /// What `hash`, which may begin with `#`, asks for beside its set-up.
    pub(crate) fn of(hash: &str) -> Self {
        let mut frame = Self::default();
        for (name, value) in address::words(hash) {
            frame.asked.extend(["&", name]);
            if !value.is_empty() {
                frame.asked.extend(["=", value]);
            }
            match name {
                "show" => frame.part = PARTS.iter().map(|(key, _)| *key).find(|key| *key == value),
                "locked" => frame.locked = true,
                "units" => frame.preferences.push(("length", value.to_owned())),
                "language" => frame.preferences.push(("language", value.to_owned())),
                _ => frame.preferences.push(("theme", value.to_owned())),
            }
        }
        frame
    }

    /// What the address of the page asks for.
    pub(crate) fn at_opening() -> Self {
        Self::of(&address::hash())
    }

    /// Whether nothing was asked for: the page is the reader's own.
    pub(crate) fn is_own(&self) -> bool {
        self.asked.is_empty()
    }
}

impl Page {
    /// Takes over what the address asks for beside its set-up.
    pub(super) fn take_over_frame(&mut self) {
        self.desk.locked = self.frame.locked;
        for (key, value) in mem::take(&mut self.frame.preferences) {
            self.prefer(key, &value);
        }
    }

    /// Shows no more than the frame is for.
    pub(super) fn wear_frame(&mut self) {
        root::tell_styles("data-framed", (!self.frame.is_own()).then_some(""));
        root::tell_styles("data-locked", self.frame.locked.then_some(""));
        root::tell_styles("data-show", self.frame.part.filter(|part| *part != WHOLE));
        if self.frame.part == Some("trace")
            && let Some(trace) = root::by_id("trace-box")
        {
            let _opened = trace.set_attribute("open", "");
        }
    }

    /// Fields of a locked page can be read and copied from, not changed.
    pub(super) fn lock_fields(&self) {
        let fields = root::document().filter(|_| self.frame.locked).and_then(|document| {
            document.query_selector_all("main :is(input, select[data-path]):not([readonly], [disabled])").ok()
        });
        let Some(fields) = fields else { return };
        for field in (0..fields.length()).filter_map(|at| fields.item(at)) {
            if let Some(select) = field.dyn_ref::<HtmlSelectElement>() {
                select.set_disabled(true);
            } else if let Some(input) = field.dyn_ref::<HtmlInputElement>() {
                // Sliders and files know no reading alone; the slider of the tool changes nothing.
                match input.type_().as_str() {
                    "text" => input.set_read_only(true),
                    _ => input.set_disabled(input.has_attribute("data-slide")),
                }
            }
        }
    }
}

/// Tells the page around this one how high it is, whenever that changes.
pub(super) fn keep_telling_height() {
    let Some(body) = body().filter(|_| around().is_some()) else { return };
    let tell = Closure::<dyn Fn()>::new(tell_height);
    if let Ok(observer) = ResizeObserver::new(tell.as_ref().unchecked_ref()) {
        observer.observe(&body);
    }
    // It is told for as long as the page is open.
    tell.forget();
}

/// Tells it now: far from what is in sight a browser notices no change by itself. Only a number is told, and so anyone may
/// hear it.
pub(super) fn tell_height() {
    let Some((around, body)) = around().zip(body()) else { return };
    let message = Object::new();
    let _set = Reflect::set(&message, &"holdround".into(), &"height".into());
    let _set = Reflect::set(&message, &"height".into(), &body.get_bounding_client_rect().height().ceil().into());
    let _told = around.post_message(&message, "*");
}

fn body() -> Option<Element> {
    root::document()?.body().map(Into::into)
}

/// The window around this one.
fn around() -> Option<Window> {
    let window = web_sys::window()?;
    window.parent().ok().flatten().filter(|around| !Object::is(around, &window))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_asks_for_a_part_and_a_lock_beside_its_set_up() {
        let hash = "#example=thin-ring&show=face&locked&units=in&look=shop&language=de&more=1";
        let frame = Frame::of(hash);
        assert_eq!((frame.part, frame.locked), (Some("face"), true), "the part and the lock");
        assert_eq!(frame.asked, "&show=face&locked&units=in&look=shop&language=de", "to be written back");
        assert_eq!(frame.preferences.len(), 3, "units, look and language: {:?}", frame.preferences);
        assert!(Frame::of("#example=thin-ring").is_own() && Frame::of("").is_own(), "nothing else was asked for");
        assert_eq!(Frame::of("#&show=everything").part, None, "no such part");
    }
}
