//! One input as a row of the parts list.

use std::cmp::Ordering;

use holdround_core::findings::{Finding, Mark};
use holdround_core::materials::{self, Family, Material};
use holdround_core::quantity::{Measure, Unit, shown};
use holdround_core::setup::{Form, Input, MaterialUse, bracketed, declared};
use maud::{Markup, html};

use super::{steps, words};
use crate::language::{fill, number, said, say};
use crate::page::desk::Desk;
use crate::page::entry_text;
use crate::units::Units;

/// The row: label with unit, field, message, and what it is about.
pub(crate) fn show(desk: &Desk, input: &Input, path: &str) -> Markup {
    let unit = input.kind().map(|kind| desk.units.unit(kind));
    html! {
        div.field.long[is_long(input)] {
            label for={ "in-" (path) } {
                (say(input.name))
                @if let Some(unit) = unit.filter(|unit| !unit.symbol.is_empty()) { " " span.unit { (say(unit.symbol)) } }
            }
            (control(desk, input, path))
            details.about id={ "about-" (path) } {
                summary { (say("About")) span.heard { ": " (say(input.name)) } }
                div id={ "told-" (path) } {}
            }
            span.printed id={ "printed-" (path) } aria-hidden="true" { (printed(desk, input, path)) }
            div.message id={ "message-" (path) } { (message(desk, path)) }
        }
    }
}

/// One cell of an item that stands in a row of a table: label above the field, what is wrong below the row.
pub(crate) fn cell(desk: &Desk, input: &Input, path: &str) -> Markup {
    let field = path.rsplit('.').next().unwrap_or(path);
    html! {
        div class={ "cell " (field) } {
            label for={ "in-" (path) } { (short_name(input)) }
            (control(desk, input, path))
            span.printed id={ "printed-" (path) } aria-hidden="true" { (printed(desk, input, path)) }
        }
        div class={ "message " (field) } id={ "message-" (path) } { (message(desk, path)) }
    }
}

/// The name of an input in a table, where “diameter” goes without saying and the far end stands below the near one.
fn short_name(input: &Input) -> Markup {
    let far = input.name.strip_suffix(" at the far end");
    let name = far.unwrap_or(input.name);
    let short = name.strip_suffix(" diameter").unwrap_or(name);
    html! {
        @if far.is_some() { span.heard { (fill("{} at its", &[&say(short)])) " " } (say("Far end")) } @else { (say(short)) }
    }
}

/// What the columns of a table are, together above it.
pub(crate) fn about_all(desk: &Desk, list: &str, inputs: &[&'static Input]) -> Markup {
    html! {
        details.about.columns id={ "about-" (list) } {
            summary { (say(if list == "steps" { "About these steps" } else { "About these surfaces" })) }
            dl {
                @for input in inputs {
                    dt { (say(input.name)) @if let Some(unit) = input.kind().map(|kind| desk.units.unit(kind)) { " " span.unit { (say(unit.symbol)) } } }
                    dd { (explained(desk, input)) }
                }
            }
        }
    }
}

pub(super) fn control(desk: &Desk, input: &Input, path: &str) -> Markup {
    html! {
        @match input.form {
            Form::Choice(_) | Form::Material(_) => (select(desk, input, path)),
            Form::Quantity { .. } | Form::Text(_) => {
                input type="text" id={ "in-" (path) } data-path=(path) inputmode=(if input.kind().is_some() { "decimal" } else { "text" })
                    autocomplete="off" spellcheck="false" value=(desk.in_field(input, path))
                    placeholder=(placeholder(desk, input, path)) aria-describedby={ "message-" (path) }
                    aria-invalid=(desk.faults_at(path).next().is_some());
            }
        }
    }
}

/// Whether a field needs the whole width for what it holds.
fn is_long(input: &Input) -> bool {
    match input.form {
        Form::Material(_) | Form::Text(_) => true,
        Form::Choice(choices) => choices.iter().any(|choice| say(choice.name).chars().count() > SHORT),
        Form::Quantity { .. } => false,
    }
}

/// Longest name of a choice that fits beside its label.
const SHORT: usize = 12;

/// What stands in an empty field: the assumed value in brackets, as a reference dimension is.
pub(crate) fn placeholder(desk: &Desk, input: &Input, path: &str) -> String {
    if desk.entries.get(path).is_some() { String::new() } else { assumed(desk.units, input) }
}

/// The assumed value in brackets; nothing where there is none.
pub(super) fn assumed(units: Units, input: &Input) -> String {
    if input.default.is_empty() {
        return String::new();
    }
    let quantity = input.kind().map(|kind| number(entry_text::in_field(kind, units.unit(kind), input.default)));
    let shown = quantity.or_else(|| choice_name(input, input.default));
    format!("({})", shown.as_deref().unwrap_or(input.default))
}

/// What stands for the field on paper: the entry, or the assumed value in brackets.
pub(crate) fn printed(desk: &Desk, input: &Input, path: &str) -> Markup {
    let entered = desk.entries.get(path);
    let typed = || {
        let typed = desk.in_field(input, path);
        if input.kind().is_some() { number(typed) } else { typed }
    };
    let entered = entered.map(|text| choice_name(input, text).unwrap_or_else(typed));
    html! { (entered.unwrap_or_else(|| placeholder(desk, input, path))) }
}

fn select(desk: &Desk, input: &Input, path: &str) -> Markup {
    html! {
        select id={ "in-" (path) } data-path=(path) aria-describedby={ "message-" (path) }
            aria-invalid=(desk.faults_at(path).next().is_some())
        {
            (options(input, desk.entries.get(path)))
        }
    }
}

/// What can be chosen at `input`: first what is assumed, in brackets.
pub(super) fn options(input: &Input, chosen: Option<&str>) -> Markup {
    let assumed = choice_name(input, input.default).unwrap_or_default();
    let named = chosen.map(|key| (key, choice_name(input, key)));
    html! {
        option value="" selected[chosen.is_none()] { "(" (assumed) ")" }
        @if let Some((key, Some(name))) = named.as_ref().filter(|(key, _)| bracketed(key).is_some()) {
            option value=(key) selected { (name) }
        }
        @if let Form::Material(wanted) = input.form {
            @for (family, name) in FAMILIES {
                @let members: Vec<&Material> = offered(wanted).filter(|material| material.family == family).collect();
                @if !members.is_empty() {
                    optgroup label=(say(name)) {
                        @for material in members {
                            option value=(material.id) selected[chosen == Some(material.id)] { (say(material.name)) ", " (say(material.designation)) }
                        }
                    }
                }
            }
        }
        @for choice in input.choices() {
            option value=(choice.key) selected[chosen == Some(choice.key)] { (say(choice.name)) }
        }
        @if let Some((unknown, None)) = named {
            option value=(unknown) selected { (fill("Unknown: {}", &[&unknown])) }
        }
    }
}

/// The name of a choice or material, if `input` offers one with this key; in brackets if the key is.
pub(crate) fn choice_name(input: &Input, key: &str) -> Option<String> {
    if let Some(key) = bracketed(key) {
        return choice_name(input, key).map(|name| format!("({name})"));
    }
    if let Form::Material(wanted) = input.form {
        return offered(wanted).find(|material| material.id == key).map(|material| say(material.name).to_owned());
    }
    input.choices().iter().find(|choice| choice.key == key).map(|choice| say(choice.name).to_owned())
}

fn offered(wanted: MaterialUse) -> impl Iterator<Item = &'static Material> {
    materials::all().filter(move |material| match wanted {
        MaterialUse::Part => material.part,
        MaterialUse::Jaw => material.jaw,
    })
}

const FAMILIES: [(Family, &str); 13] = [
    (Family::Steel, "Steel"),
    (Family::StainlessSteel, "Stainless steel"),
    (Family::ToolSteel, "Tool steel, annealed"),
    (Family::GreyIron, "Grey iron"),
    (Family::DuctileIron, "Ductile iron"),
    (Family::Aluminium, "Aluminium"),
    (Family::Brass, "Brass"),
    (Family::Bronze, "Bronze"),
    (Family::Copper, "Copper"),
    (Family::Titanium, "Titanium"),
    (Family::Nickel, "Nickel alloy"),
    (Family::Magnesium, "Magnesium"),
    (Family::Plastic, "Plastic"),
];

/// What the input is, its range and where that comes from.
fn explained(desk: &Desk, input: &Input) -> Markup {
    html! {
        p { (say(input.help)) }
        @if let Form::Quantity { kind, least, most, .. } = input.form {
            @let unit: &Unit = desk.units.unit(kind);
            p { (fill("From {} to {}.", &[&number(shown(least, unit)), &number(shown(most, unit))])) }
        }
        p.source { (fill("Source: {}.", &[&say(input.source)])) }
        (words::in_text(&format!("{} {}", input.name, input.help)))
    }
}

/// What stands behind “About”: the page shows it when it is opened.
pub(crate) fn about(desk: &Desk, input: &Input, path: &str) -> Markup {
    html! {
        (explained(desk, input))
        @if !input.default.is_empty() && input.kind().is_some() {
            button type="button" id={ "assume-" (path) } data-act="assume" data-path=(path) { (fill("Take the assumed {}", &[&number(input.default)])) }
        }
    }
}

/// What is wrong with the entry, or what the findings say about it.
pub(crate) fn message(desk: &Desk, path: &str) -> Markup {
    html! {
        @for fault in desk.faults_at(path) {
            p.fault {
                @if declared(path).and_then(Input::in_list).is_some() { strong { (said(&fault.name)) ". " } }
                @if fault.value.is_empty() { (say("Nothing is entered.")) " " }
                @else { (fill("“{}” cannot be taken.", &[&as_typed(desk, path, &said(&fault.value))])) " " }
                (fill("Allowed: {}.", &[&said(&fault.allowed)])) " " (said(&fault.remedy))
            }
        }
        @if desk.good.as_ref().is_some_and(|(setup, _)| setup.is_from_indicator(path)) {
            p { (say("From measured readings of the indicator.")) }
        }
        @if let Some((_, findings)) = desk.good.as_ref().filter(|_| desk.faults.is_empty()) {
            @let beyond: Vec<&Finding> = findings.findings.iter().filter(|finding| stands_at(finding, path)).collect();
            @if let Some(worst) = beyond.iter().min_by(|a, b| a.margin().partial_cmp(&b.margin()).unwrap_or(Ordering::Equal)) {
                p.beyond {
                    (fill("{} is {}", &[&said(&worst.name), &steps::value(worst, desk.units)]))
                    @if let Some(limit) = &worst.limit {
                        (fill("; allowed is {}, from {}", &[&steps::limit(worst, limit, desk.units), &said(&limit.origin)]))
                    }
                    "."
                    @if beyond.len() > 1 { " " (say("More is beyond its limit: see the findings.")) }
                }
            }
        }
    }
}

/// A wrong value as it was typed: without the unit of the label, unless it is a number and means something with it.
fn as_typed(desk: &Desk, path: &str, value: &str) -> String {
    let kind = declared(path).and_then(Input::kind).filter(|kind| Measure::parse(*kind, value).is_err());
    kind.map_or_else(|| value.to_owned(), |kind| entry_text::in_field(kind, desk.units.unit(kind), value))
}

fn stands_at(finding: &Finding, path: &str) -> bool {
    finding.mark() == Mark::Beyond && finding.entry == Some(path)
}
