//! Putting markup into the sheet without losing the reader's place in it.

mod patch;

use std::collections::BTreeMap;

use maud::Markup;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement, NodeList};

use crate::root;

use patch::patch;

/// The regions of the sheet and what they show.
#[derive(Debug, Default)]
pub(crate) struct Regions {
    shown: BTreeMap<String, String>,
    /// What is to be shown later, one after another.
    held: Vec<(String, String)>,
    holding: bool,
}

impl Regions {
    /// Shows `markup` in the element with this id, unless it already does.
    pub(crate) fn show(&mut self, id: &str, markup: Markup) {
        let markup = markup.into_string();
        // What was held back before is older.
        self.held.retain(|(held, _)| held != id);
        if self.shown.get(id) == Some(&markup) {
            return;
        }
        if self.holding {
            return self.held.push((id.to_owned(), markup));
        }
        self.put(id, markup);
    }

    fn put(&mut self, id: &str, markup: String) {
        let Some(element) = root::by_id(id) else { return };
        let patched = self.shown.get(id).is_some_and(|shown| patch(&element, shown, &markup, replace));
        if !patched {
            replace(&element, &markup);
        }
        self.shown.insert(id.to_owned(), markup);
    }

    /// From now on, whether what is shown is held back until [`Self::release`].
    pub(crate) fn hold(&mut self, holding: bool) {
        self.holding = holding;
    }

    /// Shows the first of what was held back; false when nothing was.
    pub(crate) fn release(&mut self) -> bool {
        if self.held.is_empty() {
            return false;
        }
        let (id, markup) = self.held.remove(0);
        self.put(&id, markup);
        true
    }

    /// Lets go of what was held back: it is out of date.
    pub(crate) fn drop_held(&mut self) {
        self.held.clear();
    }

    /// Shows `markup` in the element with this id, whatever it shows; regions inside it begin anew.
    pub(crate) fn rebuild(&mut self, id: &str, markup: Markup) {
        if let Some(element) = root::by_id(id) {
            self.forget(&element);
            self.show(id, markup);
        }
    }

    /// Tells that `markup` stands in the element with this id as part of what was drawn around it.
    pub(crate) fn drawn(&mut self, id: String, markup: Markup) {
        self.shown.insert(id, markup.into_string());
    }

    /// Regions around `element` and inside it are made anew when they are shown next: something was changed in it.
    pub(crate) fn forget(&mut self, element: &Element) {
        for inner in found(element, "[id]") {
            self.shown.remove(&inner.id());
        }
        let mut around = Some(element.clone());
        while let Some(region) = around {
            self.shown.remove(&region.id());
            around = region.parent_element();
        }
    }
}

/// Replaces what is in `element`; what was opened or closed stays so, and the keyboard stays where it was.
pub(super) fn replace(element: &Element, markup: &str) {
    let opened = disclosures(element);
    let focus =
        root::focused().filter(|focused| element.contains(Some(focused)) && !element.is_same_node(Some(focused)));
    let place = focus.as_ref().map(|focused| (focused.id(), selection(focused)));
    root::show(element, markup);
    for (id, open) in opened {
        let Some(disclosure) = root::by_id(&id) else { continue };
        let _set = if open { disclosure.set_attribute("open", "") } else { disclosure.remove_attribute("open") };
    }
    if let Some((id, selected)) = place {
        give_back(element, &id, selected);
    }
}

/// The disclosures in `element` by id, and whether each is open.
fn disclosures(element: &Element) -> Vec<(String, bool)> {
    found(element, "details[id]").map(|disclosure| (disclosure.id(), disclosure.has_attribute("open"))).collect()
}

/// What a selector finds in `element`.
fn found(element: &Element, selector: &str) -> impl Iterator<Item = Element> {
    let found = element.query_selector_all(selector).ok();
    let count = found.as_ref().map_or(0, NodeList::length);
    (0..count).filter_map(move |at| found.as_ref()?.item(at)?.dyn_into().ok())
}

type Selection = Option<(u32, u32)>;

fn selection(focused: &Element) -> Selection {
    let field = focused.dyn_ref::<HtmlInputElement>()?;
    Some((field.selection_start().ok()??, field.selection_end().ok()??))
}

/// Focus goes back to the element with this id; if that is gone, to what tells what came of it, or to the region.
fn give_back(region: &Element, id: &str, selected: Selection) {
    let told = || region.query_selector(&format!("[data-after='{id}']")).ok().flatten();
    let Some(element) = root::by_id(id).or_else(told) else {
        let _set = region.set_attribute("tabindex", "-1");
        return root::give_keyboard_back(region);
    };
    root::give_keyboard_back(&element);
    if let (Some(field), Some((from, to))) = (element.dyn_ref::<HtmlInputElement>(), selected) {
        let _selected = field.set_selection_range(from, to);
    }
}
