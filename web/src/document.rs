//! Set-ups as JSON text, read by the JSON of wherever the page runs.

use holdround_core::setup::{Document, Entries, Fault, LARGEST_DOCUMENT};
use holdround_core::text::Text;

/// Reads JSON text as a document; none if it is none.
#[cfg(not(target_arch = "wasm32"))]
pub(crate) fn read(text: &str) -> Option<Document> {
    Document::from_json(text)
}

/// Reads JSON text as a document; none if it is none.
#[cfg(target_arch = "wasm32")]
pub(crate) fn read(text: &str) -> Option<Document> {
    js_sys::JSON::parse(text).ok().map(|value| browser::document(&value, browser::DEEPEST))
}

/// Reads a set-up from JSON text. See [`Entries::from_document`].
pub(crate) fn entries(text: &str) -> Result<Entries, Vec<Fault>> {
    if text.len() > LARGEST_DOCUMENT {
        let reason = Text::of("{} bytes, more than {}").with(text.len()).with(LARGEST_DOCUMENT);
        return Err(vec![Document::unreadable(reason)]);
    }
    Entries::from_document(&read(text).ok_or_else(|| vec![Document::unreadable("not JSON")])?)
}

#[cfg(target_arch = "wasm32")]
mod browser {
    use std::collections::BTreeMap;

    use holdround_core::setup::Document;
    use js_sys::{Array, Number, Object};
    use wasm_bindgen::{JsCast, JsValue};

    /// Levels that are read; a set-up has three.
    pub(super) const DEEPEST: usize = 16;

    /// What the browser's JSON has read.
    pub(super) fn document(value: &JsValue, levels: usize) -> Document {
        if value.is_null() {
            Document::Nothing
        } else if let Some(text) = value.as_string() {
            Document::Text(text)
        } else if let Some(number) = value.dyn_ref::<Number>() {
            Document::Number(number.to_string_with_radix(10).map_or_else(|_| String::new(), String::from))
        } else if let Some(flag) = value.as_bool() {
            Document::Strange(if flag { "true" } else { "false" }.to_owned())
        } else if levels == 0 {
            Document::Strange("too deep".to_owned())
        } else if let Some(items) = value.dyn_ref::<Array>() {
            Document::List(items.iter().map(|item| document(&item, levels - 1)).collect())
        } else {
            let entries = Object::entries(value.unchecked_ref());
            let mut named = BTreeMap::new();
            for entry in entries.iter().filter_map(|entry| entry.dyn_into::<Array>().ok()) {
                named.insert(entry.get(0).as_string().unwrap_or_default(), document(&entry.get(1), levels - 1));
            }
            Document::Group(named)
        }
    }
}
