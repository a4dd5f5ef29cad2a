//! The jaw records: list, fields, borings, and whether the jaws can be used again.

use holdround_core::quantity::Kind;
use holdround_core::record::{BORING_FIELDS, FIELDS, Fields, Record, Reuse, reuse, text_of};
use holdround_core::recut::Outlook;
use maud::{Markup, html};

use super::records_label;
use crate::page::desk::Desk;
use crate::page::records::{Shelf, State, boring_of_desk};
use crate::units::Units;

/// All records, and what can be done with them.
pub(crate) fn show(shelf: &Shelf, desk: &Desk) -> Markup {
    let state = match shelf.state {
        State::Opening => "Looking for records…",
        State::Kept => "Kept in this browser.",
        State::Keeping => "Being kept…",
        State::Refused => "This browser keeps no records here: save them as a file.",
    };
    html! {
        p.hint { "What you keep of a set of jaws, to use them again next year." }
        p.hint id="records-state" data-state=(key(shelf.state)) role="status" { (state) }
        @for (id, record) in &shelf.records.0 { (one(shelf, desk, id, record)) }
        @if let Some((_, record)) = &shelf.deleted {
            p { (record.get("name")) " is deleted. " (button("undelete", "", "Bring it back")) }
        }
        div.changes {
            (button("keep", "", "Keep these jaws"))
            a.button id="records-save" href="#" download="jaw-records.json" data-act="record-save" { "Save all as a file" }
            label for="records-file" { "Take over a file" }
            input type="file" id="records-file" accept=".json,application/json";
        }
    }
}

fn key(state: State) -> &'static str {
    match state {
        State::Opening => "opening",
        State::Kept => "kept",
        State::Keeping => "keeping",
        State::Refused => "refused",
    }
}

fn button(act: &str, id: &str, words: &str) -> Markup {
    html! { button type="button" id={ "record-" (act) "-" (id) } data-act={ "record-" (act) } data-id=(id) { (words) } }
}

fn one(shelf: &Shelf, desk: &Desk, id: &str, record: &Record) -> Markup {
    let last = record.last_boring().map_or("", |boring| text_of(boring, "diameter"));
    html! {
        details.record id={ "record-" (id) } {
            summary { b { (record.get("name")) } " " (record.get("chuck")) " " (last) }
            p.caution id={ "record-reuse-" (id) } { (again(reuse(record, &desk.entries).as_ref(), record, desk.units)) }
            @for field in FIELDS {
                div.field.long {
                    label for={ "record-" (field.key) "-" (id) } { (field.name) }
                    input type="text" id={ "record-" (field.key) "-" (id) } data-record=(id) name=(field.key) value=(record.get(field.key)) title=(field.hint) autocomplete="off";
                }
            }
            h3 { "Bored" }
            @if !record.borings.is_empty() {
                ul {
                    @for (at, boring) in record.borings.iter().enumerate() {
                        li {
                            (told(boring)) " "
                            button type="button" id={ "record-drop-" (id) "-" (at) } data-act="record-drop" data-id=(id) data-index=(at) {
                                "Remove" span.heard { " " (told(boring)) }
                            }
                        }
                    }
                }
            }
            @let new = boring_of_desk(desk);
            @for field in BORING_FIELDS {
                div.field {
                    label for={ "boring-" (field.key) "-" (id) } { (field.name) }
                    input type="text" id={ "boring-" (field.key) "-" (id) } value=(text_of(&new, field.key)) title=(field.hint) autocomplete="off";
                }
            }
            div.changes {
                (button("add", id, "Add this boring"))
                (button("open", id, "Open the set-up"))
                (button("use", id, "Use for the job on the sheet"))
                (button("renew", id, "Keep the set-up on the sheet"))
                (button("label", id, "Label"))
                (button("delete", id, "Delete"))
            }
            @if shelf.label == id {
                (records_label::show(record))
                (button("print", id, "Print the label"))
            }
            @if !record.earlier.is_empty() {
                p { "Earlier versions, from files taken over:" }
                ul { @for version in &record.earlier { li { (told(version)) } } }
            }
        }
    }
}

/// The texts of a boring or a version in a line, but for the link.
fn told(fields: &Fields) -> String {
    let mut line = String::new();
    for name in fields.keys().filter(|name| *name != "link") {
        let text = text_of(fields, name);
        if !text.is_empty() {
            line = format!("{line}{}{name} {text}", if line.is_empty() { "" } else { ", " });
        }
    }
    line
}

/// Reuse or recut, in words.
fn again(reuse: Option<&Reuse>, record: &Record, units: Units) -> String {
    let Some(reuse) = reuse else {
        return "Whether they need a recut cannot be told yet: it wants a boring with its diameter, and a valid set-up on the sheet.".into();
    };
    let order =
        Some(record.get("numbers")).filter(|numbers| !numbers.is_empty()).unwrap_or("each on its own master jaw");
    let length = |si| units.show(Kind::Length, si);
    let sizes = format!("Bored to {}, wanted {}.", length(reuse.bored), length(reuse.wanted));
    let mount = match (reuse.other_chuck, reuse.other_tooth) {
        (true, _) => "The chuck on the sheet is not the one they were bored on: they must be recut.",
        (_, true) => "The tooth on the sheet is not theirs: take theirs, or recut.",
        _ => "",
    };
    if reuse.as_they_are() {
        return format!(
            "{sizes} No recut needed on the same chuck, the same teeth and in the same order ({order}). Check run-out before use."
        );
    }
    let stock = length(reuse.stock);
    let outlook = match reuse.outlook {
        _ if reuse.on_size => String::new(),
        Outlook::TooLarge => "On the same ring nothing can be cut: take another ring or other jaws.".into(),
        Outlook::TooLittle => format!("{stock} per side would not clean up: take another ring."),
        Outlook::Enough => format!("Recut: {stock} per side on the same ring cleans up."),
        Outlook::Wasteful => {
            format!("Recut: {stock} per side on the same ring cleans up, and is more than one recut should take.")
        }
    };
    format!("{sizes} {mount} {outlook} Touch off on the ring before cutting.")
}
