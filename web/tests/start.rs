//! The page draws itself into whatever document holds it.
#![cfg(target_arch = "wasm32")]

use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
fn the_page_is_drawn_into_the_element_that_is_there_for_it_and_into_no_other() -> Result<(), JsValue> {
    let document = web_sys::window().and_then(|window| window.document()).ok_or("there is no document")?;
    let main = document.create_element("main")?;
    main.set_text_content(Some("of another page"));
    document.document_element().ok_or("the document is empty")?.append_child(&main)?;
    holdround_web::start()?;
    assert_eq!(main.text_content().as_deref(), Some("of another page"), "another page is left alone");
    main.set_id("holdround");
    holdround_web::start()?;
    let text = main.text_content().unwrap_or_default();
    assert!(text.contains(env!("CARGO_PKG_VERSION")), "the version is not in {text:?}");
    main.remove();
    Ok(())
}
