//! The page draws itself into whatever document holds it.
#![cfg(target_arch = "wasm32")]

use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
fn start_says_what_is_missing_then_draws_into_main() -> Result<(), JsValue> {
    let document = web_sys::window().and_then(|window| window.document()).ok_or("there is no document")?;
    let refused = holdround_web::start();
    assert_eq!(
        refused.err().and_then(|reason| reason.as_string()).as_deref(),
        Some("the document has no main element"),
        "without a main element the page must say so"
    );

    let main = document.create_element("main")?;
    document.document_element().ok_or("the document is empty")?.append_child(&main)?;
    holdround_web::start()?;
    let text = main.text_content().unwrap_or_default();
    assert!(text.contains(env!("CARGO_PKG_VERSION")), "the version is not in {text:?}");
    main.remove();
    Ok(())
}
