//! Photos of jaws: made small by the browser before they are kept. What a camera wrote into the file beside the
//! picture, such as where it was taken, is not kept.

use holdround_core::record::is_picture;
use holdround_core::text::Text;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CanvasRenderingContext2d, Element, HtmlCanvasElement, HtmlInputElement, ImageBitmap};

use super::notice::Notice;
use super::{Page, stamp, with_page};
use crate::root;

/// Longest side of what is kept, in pixels; less where that is still too much to keep.
const LONGEST_SIDE: f64 = 1000.0;
/// How often it is tried with fewer pixels, and with how many less.
const ATTEMPTS: usize = 6;
const SMALLER: f64 = 0.75;
/// Share of its quality that JPEG keeps.
const QUALITY: f64 = 0.7;
/// Largest file that is looked at, in bytes.
const LARGEST: f64 = 67_108_864.0;

impl Page {
    /// Takes the photo that was chosen in `field` for the record `id`.
    pub(super) fn take_photo(&mut self, id: String, field: &HtmlInputElement) {
        let Some(file) = field.files().and_then(|files| files.get(0)) else { return };
        // The same file may be chosen again.
        field.set_value("");
        let (kind, name) = (file.type_(), file.name());
        // A drawing that may hold a program is no photo.
        let photo = kind.starts_with("image/") && kind != "image/svg+xml" && file.size() <= LARGEST;
        let window = web_sys::window().filter(|_| photo);
        let Some(read) = window.and_then(|window| window.create_image_bitmap_with_blob(&file).ok()) else {
            return self.refuse_photo(&name);
        };
        let refused = name.clone();
        let take = Closure::once(move |bitmap: JsValue| {
            let picture = shrunk(bitmap.unchecked_ref());
            with_page(|page| page.photo_read(&id, &name, picture));
        });
        let refuse = Closure::once(move |_: JsValue| with_page(|page| page.photo_read("", &refused, None)));
        let _later = read.then2(&take, &refuse);
        take.forget();
        refuse.forget();
    }

    fn photo_read(&mut self, id: &str, name: &str, picture: Option<String>) {
        match picture {
            Some(picture) => self.keep_photo(id, stamp::new_id(), &picture),
            None => self.refuse_photo(name),
        }
    }

    fn refuse_photo(&mut self, name: &str) {
        const REFUSED: &str =
            "{} was not kept: no photo that this browser reads, or more than 64 MB. Take a JPEG, PNG or WebP picture.";
        self.desk.notices.push(Notice::new(Text::of(REFUSED).with(Text::typed(name))));
        self.show();
    }

    /// Puts pictures where they can be seen: markup that held them would weigh too much to be compared.
    pub(super) fn show_photos(&self) {
        let unseen = root::document()
            .and_then(|document| document.query_selector_all("details[open] img[data-photo]:not([src])").ok());
        let Some(unseen) = unseen else { return };
        for image in (0..unseen.length()).filter_map(|at| unseen.item(at)?.dyn_into::<Element>().ok()) {
            let at = image.get_attribute("data-photo").unwrap_or_default();
            if let Some(picture) = self.shelf.picture(&at) {
                let _set = image.set_attribute("src", picture);
            }
        }
    }
}

/// The photo as a picture that can be kept.
fn shrunk(photo: &ImageBitmap) -> Option<String> {
    let canvas: HtmlCanvasElement = root::document()?.create_element("canvas").ok()?.dyn_into().ok()?;
    let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    let (width, height) = (f64::from(photo.width()), f64::from(photo.height()));
    let mut side = LONGEST_SIDE;
    for _ in 0..ATTEMPTS {
        let share = (side / width.max(height)).min(1.0);
        let (across, down) = ((width * share).max(1.0), (height * share).max(1.0));
        canvas.set_width(across as u32);
        canvas.set_height(down as u32);
        // JPEG knows nothing transparent.
        context.set_fill_style_str("#fff");
        context.fill_rect(0.0, 0.0, across, down);
        context.draw_image_with_image_bitmap_and_dw_and_dh(photo, 0.0, 0.0, across, down).ok()?;
        let picture = canvas.to_data_url_with_type_and_encoder_options("image/jpeg", &QUALITY.into()).ok()?;
        if is_picture(&picture) {
            return Some(picture);
        }
        side *= SMALLER;
    }
    None
}
