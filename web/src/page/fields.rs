//! Keeping the fields in step with the desk while they stay where they are.

use holdround_core::quantity::Kind;
use holdround_core::setup::{Group, INPUTS, Input, bracketed, declared};
use maud::Markup;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement, HtmlSelectElement};

use super::desk::Desk;
use super::regions::Regions;
use crate::root;
use crate::units::Units;
use crate::view::{field, inputs, play_bar};

/// What decides which fields of a group there are; when it changes they are drawn anew.
pub(crate) fn structure(desk: &Desk, group: &Group) -> String {
    let mut structure = String::new();
    for (input, path) in inputs::fields(desk, group) {
        // A choice in brackets is one more to choose.
        let choice = desk.entries.get(&path).filter(|text| input.kind().is_none() && bracketed(text).is_some());
        structure = structure + &path + " " + choice.unwrap_or_default();
    }
    structure.push_str(if inputs::matters(desk, group) { "needed" } else { "" });
    structure + &units(desk)
}

/// What decides which sliders there are.
pub(crate) fn sliding(desk: &Desk) -> String {
    units(desk) + if desk.good.is_some() { " found" } else { "" }
}

fn units(desk: &Desk) -> String {
    let Units { pressure, force, .. } = desk.units;
    [desk.units.unit(Kind::Length), pressure, force].map(|unit| unit.symbol).concat()
}

/// Brings values, messages and sliders up to date; the field being typed in is left alone.
pub(crate) fn update(desk: &Desk, regions: &mut Regions) {
    let typing = root::focused().map(|focused| focused.id()).unwrap_or_default();
    for (input, path) in INPUTS.iter().flat_map(|group| inputs::fields(desk, group)) {
        bring_up(desk, regions, input, &path, &typing);
    }
    slides(desk, regions, &typing);
}

/// The same for the entries at `paths` alone, and for the sliders.
pub(crate) fn follow(desk: &Desk, regions: &mut Regions, paths: &[&str]) {
    let typing = root::focused().map(|focused| focused.id()).unwrap_or_default();
    for path in paths {
        if let Some(input) = declared(path) {
            bring_up(desk, regions, input, path, &typing);
        }
    }
    slides(desk, regions, &typing);
}

fn bring_up(desk: &Desk, regions: &mut Regions, input: &Input, path: &str, typing: &str) {
    let id = format!("in-{path}");
    let Some(element) = root::by_id(&id) else { return };
    let faulty = desk.faults_at(path).next().is_some();
    set(&element, "aria-invalid", if faulty { "true" } else { "false" });
    let text = desk.in_field(input, path);
    if let Some(select) = element.dyn_ref::<HtmlSelectElement>() {
        if select.value() != text {
            select.set_value(&text);
        }
    } else if let Some(field) = element.dyn_ref::<HtmlInputElement>() {
        set(&element, "placeholder", &field::placeholder(desk, input, path));
        if typing != id && field.value() != text {
            field.set_value(&text);
        }
    }
    for (id, markup) in beside(desk, input, path) {
        regions.show(&id, markup);
    }
}

/// What stands with a field, by the place it stands in: the entry on paper, and what is said of it.
fn beside(desk: &Desk, input: &Input, path: &str) -> [(String, Markup); 2] {
    [
        (format!("printed-{path}"), field::printed(desk, input, path)),
        (format!("message-{path}"), field::message(desk, path)),
    ]
}

/// Tells what stands with the fields of a group that was just drawn.
pub(crate) fn drawn(desk: &Desk, regions: &mut Regions, group: &Group) {
    for (input, path) in inputs::fields(desk, group) {
        for (id, markup) in beside(desk, input, &path) {
            regions.drawn(id, markup);
        }
    }
}

fn slides(desk: &Desk, regions: &mut Regions, held: &str) {
    for slide in play_bar::slides(desk).into_iter().flatten() {
        let id = format!("slide-{}", slide.path);
        let Some(element) = root::by_id_as::<HtmlInputElement>(&id) else { continue };
        set(&element, "max", &slide.number(slide.most));
        set(&element, "aria-valuetext", &slide.spoken());
        let at = slide.number(slide.at);
        if held != id && element.value() != at {
            element.set_value(&at);
        }
        regions.show(&format!("reading-{}", slide.path), slide.words());
    }
    regions.show("play-buttons", play_bar::buttons(desk));
    regions.show("under-section", play_bar::mesh(desk));
}

fn set(element: &Element, name: &str, value: &str) {
    if element.get_attribute(name).as_deref() != Some(value) {
        let _set = element.set_attribute(name, value);
    }
}
