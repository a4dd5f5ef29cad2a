//! Where the page is drawn.

use wasm_bindgen::JsValue;
use web_sys::Element;

/// The document's `main` element.
///
/// # Errors
/// When there is no document, or it has no such element.
pub(crate) fn main_element() -> Result<Element, JsValue> {
    web_sys::window()
        .and_then(|window| window.document())
        .ok_or("there is no document")?
        .query_selector("main")?
        .ok_or_else(|| "the document has no main element".into())
}
