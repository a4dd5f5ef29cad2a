//! A drawing of the page as a picture by itself: an SVG that needs no style sheet, or a PNG made from it.
//!
//! What the style sheet says of each piece is written into the piece, as it is under the look with black on white.

use js_sys::encode_uri_component;
use maud::{PreEscaped, html};
use wasm_bindgen::JsCast;
use web_sys::{
    CanvasRenderingContext2d, CssStyleDeclaration, Element, HtmlCanvasElement, HtmlImageElement, XmlSerializer,
};

use super::{device, files};
use crate::language::say;
use crate::root;
use holdround_core::quantity::{fixed, parse_number};

/// What is resolved where it differs from the piece around it.
const HANDED_DOWN: [&str; 13] = [
    "fill",
    "fill-opacity",
    "fill-rule",
    "font-family",
    "font-size",
    "font-weight",
    "paint-order",
    "stroke",
    "stroke-dasharray",
    "stroke-linecap",
    "stroke-linejoin",
    "stroke-width",
    "text-anchor",
];
/// What belongs to one piece alone, and how it is while nothing is said of it.
const ITS_OWN: [(&str, &str); 3] = [("opacity", "1"), ("transform", "none"), ("vector-effect", "none")];
/// What is for fingers, keyboards and style sheets.
const OF_THE_PAGE: [&str; 13] = [
    "class",
    "style",
    "tabindex",
    "data-act",
    "data-index",
    "data-drag",
    "data-axis",
    "data-scale",
    "data-entry",
    "data-path",
    "data-plane",
    "data-id",
    "aria-hidden",
];
/// Shown pieces.
const DRAWN: &str = ":is(path, circle, rect, text):not(defs *)";
/// Width of a PNG, in pixels.
const WIDTH: f64 = 2000.0;
/// Room for the words below, over the width of the drawing, and the height of their letters.
const FOOT: f64 = 0.12;
const LETTERS: f64 = 0.028;
/// What stands below every picture.
const HEED: [&str; 2] =
    ["Calculated, no certificate. The chuck's plate and manual rule.", "Check the grip with a gauge."];

/// A picture.
pub(super) struct Picture {
    /// It as SVG.
    pub(super) svg: String,
    /// Height over width.
    slender: f64,
}

/// The drawing in the region `id` as a picture, with the name of the job below it.
pub(super) fn of(id: &str, job: &str) -> Option<Picture> {
    let drawing = root::by_id(id)?.query_selector("svg.view").ok()??;
    let view_box = drawing.get_attribute("viewBox")?;
    let [left, top, width, height] = numbers(&view_box)?;
    let alone = as_shop_light(|| resolved(&drawing))?;
    for (name, size) in ["x", "y", "width", "height"].into_iter().zip([left, top, width, height]) {
        let _set = alone.set_attribute(name, &fixed(size, 2));
    }
    let serial = XmlSerializer::new().ok()?.serialize_to_string(&alone).ok()?;
    let foot = width * FOOT;
    let [whole, letters] = [height + foot, width * LETTERS].map(|size| fixed(size, 2));
    let [x, y, across] = [left, top, width].map(|size| fixed(size, 2));
    let [name_at, heed_at, more_at] = [0.3, 0.6, 0.9].map(|share| fixed(top + height + foot * share, 2));
    let inset = fixed(left + 0.01 * width, 2);
    let svg = html! {
        svg xmlns="http://www.w3.org/2000/svg" viewBox={ (x) " " (y) " " (across) " " (whole) } width=(across) height=(whole) font-family="sans-serif" font-size=(letters) {
            rect x=(x) y=(y) width=(across) height=(whole) fill="#fff" {}
            (PreEscaped(serial))
            text x=(inset) y=(name_at) font-weight="bold" { @if job.is_empty() { "Holdround" } @else { (job) } }
            text x=(inset) y=(heed_at) { (say(HEED[0])) }
            text x=(inset) y=(more_at) { (say(HEED[1])) }
        }
    };
    Some(Picture { svg: svg.into_string(), slender: (height + foot) / width })
}

impl Picture {
    /// Makes a PNG of it and hands that out under `name`.
    pub(super) fn as_png(&self, name: String) {
        let high = (WIDTH * self.slender).round();
        let address = format!("data:image/svg+xml,{}", String::from(encode_uri_component(&self.svg)));
        let Ok(image) = HtmlImageElement::new() else { return files::picture_saved(&name, None, "") };
        image.set_src(&address);
        let (drawn, refused) = (image.clone(), name.clone());
        let size = format!("{} × {}", fixed(WIDTH, 0), fixed(high, 0));
        let keep = move |_| files::picture_saved(&name, painted(&drawn, high).as_deref(), &size);
        device::then(&image.decode(), keep, move || files::picture_saved(&refused, None, ""));
    }
}

/// The image as the address of a PNG.
fn painted(image: &HtmlImageElement, high: f64) -> Option<String> {
    let canvas: HtmlCanvasElement = root::document()?.create_element("canvas").ok()?.dyn_into().ok()?;
    let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    canvas.set_width(WIDTH as u32);
    canvas.set_height(high as u32);
    // A picture whose last line of pixels is not quite filled lies on white there as well.
    context.set_fill_style_str("#fff");
    context.fill_rect(0.0, 0.0, WIDTH, high);
    context.draw_image_with_html_image_element_and_dw_and_dh(image, 0.0, 0.0, WIDTH, high).ok()?;
    canvas.to_data_url_with_type("image/png").ok()
}

/// Four numbers.
fn numbers(text: &str) -> Option<[f64; 4]> {
    let read: Vec<f64> = text.split(' ').filter_map(|word| parse_number(word).ok()).collect();
    read.try_into().ok()
}

/// Does something while the page wears black on white; it is not drawn meanwhile.
fn as_shop_light<T>(act: impl FnOnce() -> Option<T>) -> Option<T> {
    const LOOK: &str = "data-theme";
    let whole = root::document()?.document_element()?;
    let worn = whole.get_attribute(LOOK).unwrap_or_default();
    let _set = whole.set_attribute(LOOK, "shop");
    let done = act();
    let _set = whole.set_attribute(LOOK, &worn);
    done
}

/// A copy of the drawing with its styles in it and what is only for fingers left out.
fn resolved(drawing: &Element) -> Option<Element> {
    let copy: Element = drawing.clone_node_with_deep(true).ok()?.dyn_into().ok()?;
    let style = |element: &Element| web_sys::window()?.get_computed_style(element).ok()?;
    let (pieces, copies) = (drawing.query_selector_all("*").ok()?, copy.query_selector_all("*").ok()?);
    let pairs = (0..pieces.length()).filter_map(|at| {
        let [piece, copy]: [Element; 2] = [pieces.item(at)?.dyn_into().ok()?, copies.item(at)?.dyn_into().ok()?];
        Some((piece, copy))
    });
    write(&copy, &style(drawing)?, None);
    for (piece, copied) in pairs.collect::<Vec<_>>() {
        let Some(own) = style(&piece) else { continue };
        let told = |name: &str| own.get_property_value(name).unwrap_or_default();
        let unseen = ["fill", "stroke"].iter().all(|paint| matches!(told(paint).as_str(), "none" | CLEAR));
        // What only others refer to is never seen itself.
        let drawn = piece.matches(DRAWN).unwrap_or(false);
        let hidden = told("display") == "none" && (drawn || piece.tag_name() == "g");
        if hidden || (drawn && unseen) || piece.matches(".handles, .handle").unwrap_or(false) {
            copied.remove();
            continue;
        }
        let around = piece.parent_element().and_then(|around| style(&around));
        write(&copied, &own, around.as_ref());
    }
    Some(copy)
}

/// A colour that cannot be seen, as browsers write it.
const CLEAR: &str = "rgba(0, 0, 0, 0)";

/// Writes what the style sheet says of a piece into it.
fn write(copy: &Element, own: &CssStyleDeclaration, around: Option<&CssStyleDeclaration>) {
    let told = |style: &CssStyleDeclaration, name: &str| style.get_property_value(name).unwrap_or_default();
    for name in HANDED_DOWN {
        let value = told(own, name);
        let _set = if around.is_some_and(|around| told(around, name) == value) {
            copy.remove_attribute(name)
        } else {
            copy.set_attribute(name, if value == CLEAR { "none" } else { &value })
        };
    }
    for (name, plain) in ITS_OWN {
        let value = told(own, name);
        let _set = if value.is_empty() || value == plain {
            copy.remove_attribute(name)
        } else {
            copy.set_attribute(name, &value)
        };
    }
    for name in OF_THE_PAGE {
        let _gone = copy.remove_attribute(name);
    }
}
