//! The page: findings become markup, events become set-ups.
//!
//! Data flow one way. Events change what lies on the desk (`page`); the views turn the desk into markup;
//! the regions of the sheet take it. [`api`] offers the same engines to other pages.

pub mod api;
mod document;
mod page;
mod root;
mod units;
mod view;

use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

/// Draws the page; runs once, when the module has loaded.
///
/// # Errors
/// When the document has no `main` element to draw into.
#[wasm_bindgen(start)]
pub fn start() -> Result<(), JsValue> {
    console_error_panic_hook::set_once();
    page::open(&root::main_element()?)
}
