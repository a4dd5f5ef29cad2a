//! A QR code (ISO/IEC 18004) of the address that opens a set-up, drawn as one path.

use std::fmt::Write;

use holdround_core::setup::Entries;
use maud::{Markup, html};
use qrcodegen::{QrCode, QrCodeEcc};

/// Light modules around the code that the standard asks for.
const QUIET: i32 = 4;

/// The code of a set-up, or why there is none.
pub(crate) fn of(entries: &Entries) -> Markup {
    let address = here() + "#" + &entries.to_link();
    html! {
        @match QrCode::encode_binary(address.as_bytes(), QrCodeEcc::Low) {
            Ok(code) => {
                @let size = code.size() + 2 * QUIET;
                svg.code viewBox={ "0 0 " (size) " " (size) } role="img" aria-label="QR code that opens this set-up" {
                    path d=(path(&code)) {}
                }
            }
            Err(_) => p { "The set-up is too long for a QR code: save its link." },
        }
    }
}

/// Each run of dark modules in a row as one rectangle.
fn path(code: &QrCode) -> String {
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let run = (x..code.size()).take_while(|at| code.get_module(*at, y)).count() as i32;
            if run > 0 {
                let _written = write!(path, "M{} {}h{run}v1h-{run}z", x + QUIET, y + QUIET);
            }
            x += run + 1;
        }
    }
    path
}

#[cfg(target_arch = "wasm32")]
fn here() -> String {
    let address = web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default();
    address.split('#').next().unwrap_or_default().to_owned()
}

#[cfg(not(target_arch = "wasm32"))]
fn here() -> String {
    "https://localhost/".to_owned()
}
