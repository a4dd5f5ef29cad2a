//! Handing texts and pictures out of the page: as files, or through the clipboard.

use js_sys::Array;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, HtmlAnchorElement, HtmlDocument, Url};

use crate::root;

/// Copies the text that is chosen; false where the browser does not.
pub(super) fn copy_chosen() -> bool {
    let document = root::document().and_then(|document| document.dyn_into::<HtmlDocument>().ok());
    document.is_some_and(|document| document.exec_command("copy").unwrap_or(false))
}

/// An address at which the browser holds `text` as a file.
pub(super) fn file_address(text: &str) -> Result<String, JsValue> {
    Url::create_object_url_with_blob(&Blob::new_with_str_sequence(&Array::of1(&text.into()))?)
}

/// Hands `text` out as a file called `name`.
pub(super) fn save(name: &str, text: &str) -> Result<(), JsValue> {
    let address = file_address(text)?;
    hand_out(name, &address)?;
    Url::revoke_object_url(&address)
}

/// Hands what is at `address` out as a file called `name`.
pub(super) fn hand_out(name: &str, address: &str) -> Result<(), JsValue> {
    let document = root::document().ok_or(JsValue::NULL)?;
    let link: HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    link.set_href(address);
    link.set_download(name);
    link.click();
    Ok(())
}
