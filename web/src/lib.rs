//! The page: findings become markup, events become set-ups.

mod root;
mod units;
mod view;

use maud::html;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

/// Draws the page; runs once, when the module has loaded.
///
/// # Errors
/// When the document has no `main` element to draw into.
#[wasm_bindgen(start)]
pub fn start() -> Result<(), JsValue> {
    console_error_panic_hook::set_once();
    let main = root::main_element()?;
    main.set_inner_html(&html! { h1 { "Holdround " (env!("CARGO_PKG_VERSION")) } }.into_string());
    Ok(())
}
