//! The page: findings become markup, events become set-ups.
//!
//! Data flow one way. Events change what lies on the desk (`page`); the views turn the desk into markup;
//! the regions of the sheet take it. [`api`] offers the same engines to other pages.

pub mod api;
mod document;
mod language;
mod page;
mod root;
mod units;
mod view;

use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

/// Draws the page into the element that is there for it; runs once, when the module has loaded. Another page, which
/// only wants the functions of [`api`], has no such element and is left alone.
///
/// # Errors
/// When the browser does not let the page listen.
#[wasm_bindgen(start)]
pub fn start() -> Result<(), JsValue> {
    console_error_panic_hook::set_once();
    if root::by_id(root::PLACE).is_some() { page::open() } else { Ok(()) }
}
