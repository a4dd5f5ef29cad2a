//! The document and the elements in it.

use js_sys::{Function, Object, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Document, Element, FocusOptions, HtmlElement, ScrollIntoViewOptions, ScrollLogicalPosition, SvgElement};

/// The document, if there is one.
pub(crate) fn document() -> Option<Document> {
    web_sys::window()?.document()
}

/// The id of the element that the page is drawn into.
pub(crate) const PLACE: &str = "holdround";

/// The element with this id.
pub(crate) fn by_id(id: &str) -> Option<Element> {
    document()?.get_element_by_id(id)
}

/// The element with this id, as what it is.
pub(crate) fn by_id_as<T: JsCast>(id: &str) -> Option<T> {
    by_id(id)?.dyn_into().ok()
}

/// Says something of the whole page to its styles, or no longer.
pub(crate) fn tell_styles(name: &str, value: Option<&str>) {
    let Some(whole) = document().and_then(|document| document.document_element()) else { return };
    let _set = match value {
        Some(value) => whole.set_attribute(name, value),
        None => whole.remove_attribute(name),
    };
}

/// Puts markup into an element. Nothing else on the page may turn text into elements: its policy asks for what only
/// this can make, where the browser knows trusted types.
pub(crate) fn show(element: &Element, markup: &str) {
    let trusted = POLICY.with(|policy| {
        let policy = policy.as_ref()?;
        let make = Reflect::get(policy, &"createHTML".into()).ok()?.dyn_into::<Function>().ok()?;
        make.call1(policy, &markup.into()).ok()
    });
    let _shown = Reflect::set(element, &"innerHTML".into(), &trusted.unwrap_or_else(|| markup.into()));
}

thread_local! {
    static POLICY: Option<JsValue> = policy();
}

/// The policy by which markup is trusted. It takes all of it: what comes from outside was escaped where it was put in.
fn policy() -> Option<JsValue> {
    let window = web_sys::window()?;
    let factory = Reflect::get(&window, &"trustedTypes".into()).ok().filter(|factory| factory.is_object())?;
    let rules = Object::new();
    Reflect::set(&rules, &"createHTML".into(), &Reflect::get(&window, &"String".into()).ok()?).ok()?;
    let create = Reflect::get(&factory, &"createPolicy".into()).ok()?.dyn_into::<Function>().ok()?;
    create.call2(&factory, &"holdround-markup".into(), &rules).ok()
}

/// The element that has the keyboard, unless it is the whole page.
pub(crate) fn focused() -> Option<Element> {
    document()?.active_element().filter(|active| active.tag_name() != "BODY")
}

/// Gives the keyboard to `element`, of the page or of a drawing, and brings it into view.
pub(crate) fn give_keyboard(element: &Element) {
    focus_on(element, &FocusOptions::new());
}

/// Gives the keyboard back to `element`, which took the place of the one that had it: the page stays where it was
/// scrolled to meanwhile.
pub(crate) fn give_keyboard_back(element: &Element) {
    let asked = FocusOptions::new();
    asked.set_prevent_scroll(true);
    focus_on(element, &asked);
}

fn focus_on(element: &Element, asked: &FocusOptions) {
    let _focused = match element.dyn_ref::<SvgElement>() {
        Some(drawn) => drawn.focus_with_options(asked),
        None => element.unchecked_ref::<HtmlElement>().focus_with_options(asked),
    };
}

/// Whether any of the element with this id lies in the window, up or down.
pub(crate) fn is_in_view(id: &str) -> bool {
    let height = web_sys::window().and_then(|window| window.inner_height().ok()?.as_f64());
    let place = by_id(id).map(|element| element.get_bounding_client_rect());
    height
        .zip(place)
        .is_some_and(|(height, place)| place.height() > 0.0 && place.top() < height && place.bottom() > 0.0)
}

/// Whether nothing around the element with this id is closed.
pub(crate) fn is_opened(id: &str) -> bool {
    by_id(id).is_some_and(|element| element.closest("details:not([open])").is_ok_and(|closed| closed.is_none()))
}

/// Scrolls as little as shows all of `element`, or its beginning where it is taller than there is room.
pub(crate) fn bring_into_view(element: &Element) {
    let asked = ScrollIntoViewOptions::new();
    asked.set_block(ScrollLogicalPosition::Nearest);
    element.scroll_into_view_with_scroll_into_view_options(&asked);
}

/// Gives the keyboard to the element with this id, opening what hides it.
pub(crate) fn focus(id: &str) {
    let Some(element) = by_id_as::<HtmlElement>(id) else { return };
    let mut around = element.parent_element();
    while let Some(hidden) = around.and_then(|parent| parent.closest("details:not([open])").ok().flatten()) {
        let _opened = hidden.set_attribute("open", "");
        around = hidden.parent_element();
    }
    let _focused = element.focus();
}
