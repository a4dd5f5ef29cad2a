//! A QR code (ISO/IEC 18004) of the address that opens a set-up, drawn as one path.

use std::fmt::Write;

use holdround_core::setup::Entries;
use maud::{Markup, html};
use qrcodegen::{DataTooLong, Mask, QrCode, QrCodeEcc, QrSegment, Version};

use crate::language::{fill, say};

/// Light modules around the code that the standard asks for.
const QUIET: i32 = 4;
/// Largest version, 77 modules across: on paper a module is then still half a millimetre.
const LARGEST: u8 = 15;

/// The code of a set-up; where it would be too dense, how to come back without: by the jaw record of this name.
pub(crate) fn of(entries: &Entries, record: &str) -> Markup {
    html! {
        @match code(&here(), &entries.to_short_link()) {
            Ok(code) => {
                @let size = code.size() + 2 * QUIET;
                svg.code viewBox={ "0 0 " (size) " " (size) } role="img" aria-label=(say("QR code that opens this set-up")) {
                    path d=(path(&code)) {}
                }
            }
            Err(_) => p.code {
                (say("This set-up is too long for a code that reads well from paper.")) " "
                @if record.is_empty() { (say("Keep the jaws as a record, and open that.")) } @else { (fill("Open the jaw record {}.", &[&html! { b { (record) } }])) }
            }
        }
    }
}

/// The page's address byte by byte, and the link, which packs closer.
fn code(page: &str, link: &str) -> Result<QrCode, DataTooLong> {
    let page = format!("{page}#");
    let segments = [QrSegment::make_bytes(page.as_bytes()), QrSegment::make_alphanumeric(link)];
    QrCode::encode_segments_advanced(&segments, QrCodeEcc::Low, Version::MIN, Version::new(LARGEST), None::<Mask>, true)
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
