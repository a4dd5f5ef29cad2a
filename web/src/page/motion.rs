//! Motion that outlives a redrawing: jaws glide from where they stood, and a turning spindle turns on.

use holdround_core::quantity::fixed;
use maud::Markup;
use wasm_bindgen::JsCast;
use web_sys::{Element, SvgElement};

use super::regions::Regions;
use crate::root;

/// Draws a view anew, in the state it was in, and then lets it go over into its new state.
pub(crate) fn show(regions: &mut Regions, id: &str, markup: Markup) {
    let before = drawing(id);
    let state = before.as_ref().and_then(|drawing| drawing.get_attribute("class"));
    regions.show(id, markup);
    let Some(after) = drawing(id) else { return };
    let wanted = after.get_attribute("class");
    let turns =
        |state: &Option<String>| state.as_ref().is_some_and(|state| state.split(' ').any(|word| word == "spinning"));
    let stays = before.is_some_and(|before| before.is_same_node(Some(&after)));
    if !stays || turns(&wanted) && !turns(&state) {
        begin_to_turn(&after);
    }
    if stays {
        return;
    }
    if let (Some(state), Some(wanted)) = (state, wanted)
        && state != wanted
    {
        let _set = after.set_attribute("class", &state);
        // Asking for its place makes the browser lay out the old state, from which the new one glides.
        let _place = after.get_bounding_client_rect();
        let _set = after.set_attribute("class", &wanted);
    }
}

/// A spindle that turns stands where it would be, had it turned since the page began.
fn begin_to_turn(drawing: &Element) {
    if let Some(turning) = drawing.dyn_ref::<SvgElement>() {
        let _set = turning.style().set_property("--since", &format!("-{}ms", fixed(super::now(), 0)));
    }
}

fn drawing(id: &str) -> Option<Element> {
    root::by_id(id)?.first_element_child()
}
