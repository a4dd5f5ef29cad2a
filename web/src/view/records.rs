//! The jaw records: list, fields, borings, and whether the jaws can be used again.

use holdround_core::quantity::Kind;
use holdround_core::record::{BORING_FIELDS, CHANGED, FIELDS, Field, Fields, Record, Reuse, reuse, text_of};
use holdround_core::recut::Outlook;
use maud::{Markup, html};

use super::records_label;
use crate::page::desk::Desk;
use crate::page::record_of_desk::boring_of_desk;
use crate::page::shelf::{Shelf, State};
use crate::units::Units;

/// Whether they are kept.
pub(crate) fn state(shelf: &Shelf) -> Markup {
    let state = match shelf.state {
        State::Opening => "Looking for records…",
        State::Kept => "Kept in this browser.",
        State::Keeping => "Being kept…",
        State::Refused => "This browser keeps no records here: save them as a file.",
    };
    html! { p.hint id="records-state" data-state=(key(shelf.state)) role="status" { (state) } }
}

/// All records, and what can be done with them.
pub(crate) fn show(shelf: &Shelf, desk: &Desk) -> Markup {
    html! {
        @for (id, record) in shelf.records.that_are(false) { (one(shelf, desk, id, record)) }
        @if shelf.records.that_are(true).next().is_some() {
            details.deleted id="records-deleted" open[shelf.deletes] {
                summary { "Deleted" }
                p.hint { "They stay in the file, so that an older file does not bring them back unasked." }
                @for (id, record) in shelf.records.that_are(true) { (deleted(id, record)) }
            }
        }
        div.changes {
            (button("keep", "", "Keep these jaws"))
            a.button id="records-save" href="#" download="jaw-records.json" data-act="record-save" { "Save all as a file" }
            label for="records-file" { "Add from a file" }
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
    about(act, id, words, "")
}

/// A button whose words alone do not say what it is about.
fn about(act: &str, id: &str, words: &str, what: &str) -> Markup {
    html! {
        button type="button" id={ "record-" (act) "-" (id) } data-act={ "record-" (act) } data-id=(id) {
            (words) @if !what.is_empty() { span.heard { " " (what) } }
        }
    }
}

/// Something deleted, to be brought back.
fn deleted(id: &str, record: &Record) -> Markup {
    let title = record.title();
    html! { p { (title) " is deleted. " (about("undelete", id, "Bring it back", &title)) } }
}

/// The fields of a record or of a boring in it.
fn fields(class: &str, fields: &[Field], id: &str, record: &Record) -> Markup {
    html! {
        @for field in fields {
            div class=(class) {
                label for={ "record-" (field.key) "-" (id) } { (field.name) }
                input type="text" id={ "record-" (field.key) "-" (id) } data-record=(id) name=(field.key) value=(record.get(field.key)) title=(field.hint) autocomplete="off";
            }
        }
    }
}

/// The borings, each to be changed.
fn borings(id: &str, record: &Record) -> Markup {
    html! {
        @for (number, (boring, bored)) in (1..).zip(record.bored()) {
            @let at = format!("{id}/{boring}");
            fieldset {
                legend { "Boring " (number) }
                (fields("field", BORING_FIELDS, &at, bored))
                (about("delete", &at, "Delete this boring", &bored.title()))
            }
        }
        @for (boring, gone) in record.borings.that_are(true) { (deleted(&format!("{id}/{boring}"), gone)) }
    }
}

/// The photos, and two ways to a new one: some devices offer only one of them by themselves.
fn photos(shelf: &Shelf, id: &str, record: &Record) -> Markup {
    html! {
        h3 { "Photos" }
        @for (number, (photo, taken)) in (1..).zip(record.photos.that_are(false)) {
            @let at = format!("{id}/{photo}");
            @let day = taken.get(CHANGED).get(..10).unwrap_or_default();
            p {
                img.photo data-photo=(at) alt={ "Photo " (number) " of " (record.title()) ", kept on " (day) };
                (about("delete", &at, "Delete this photo", &number.to_string()))
            }
        }
        @if shelf.deleted_photo.as_ref().is_some_and(|(of, ..)| of == id) {
            p { "A photo is deleted. " (button("undelete-photo", id, "Bring it back")) }
        }
        div.changes {
            label for={ "photo-take-" (id) } { "Take a photo" }
            input type="file" id={ "photo-take-" (id) } data-photo-of=(id) accept="image/*" capture="environment";
            label for={ "photo-choose-" (id) } { "Choose a photo" }
            input type="file" id={ "photo-choose-" (id) } data-photo-of=(id) accept="image/*";
        }
        p.hint { "Made small before it is kept; where and when it was taken is not kept with it." }
    }
}

fn one(shelf: &Shelf, desk: &Desk, id: &str, record: &Record) -> Markup {
    let last = record.last_boring().map_or("", |boring| boring.get("diameter"));
    let reuse = reuse(record, &desk.entries);
    let asks = reuse.as_ref().is_some_and(|reuse| reuse.as_they_are);
    html! {
        details.record id={ "record-" (id) } {
            summary { b { (record.get("name")) } " " (record.get("chuck")) " " (last) }
            p.caution id={ "record-reuse-" (id) } { (again(reuse.as_ref(), record, desk.units)) }
            @if asks {
                div.changes {
                    (button("same", id, "Yes: use them as they are"))
                    (button("use", id, "No, or not known: recut them"))
                }
            }
            (fields("field long", FIELDS, id, record))
            (photos(shelf, id, record))
            h3 { "Bored" }
            (borings(id, record))
            h4 { "Another boring" }
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
                @if !asks { (button("use", id, "Use for the job on the sheet")) }
                (button("renew", id, "Keep the set-up on the sheet"))
                (button("label", id, "Label"))
                (button("delete", id, "Delete"))
            }
            @if shelf.label == id {
                (records_label::show(record))
                (button("print", id, "Print the label"))
            }
            @if !record.earlier.is_empty() {
                p { "Earlier versions, from files:" }
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
    if reuse.other_side {
        return format!(
            "{sizes} They were bored to grip on the other side of the part: their faces point the wrong way. Take other jaws."
        );
    }
    let mount = match (reuse.other_chuck, reuse.other_tooth) {
        (true, _) => "The chuck on the sheet is not the one they were bored on: they must be recut.",
        (_, true) => "The tooth on the sheet is not theirs: take theirs, or recut.",
        _ => "",
    };
    if reuse.as_they_are {
        let pressure = if reuse.other_pressure {
            "They were bored under another pressure than the one on the sheet: their taper may not suit, so check that they bear along the whole jaw. "
        } else {
            ""
        };
        return format!(
            "{sizes} No recut needed on the same chuck, the same teeth and in the same order ({order}). {pressure}Check run-out before use. Are they mounted so?"
        );
    }
    let stock = length(reuse.stock);
    let outlook = match reuse.outlook {
        _ if reuse.on_size => "On size: only a recut makes them run true.".into(),
        Outlook::TooLarge => "On the same ring nothing can be cut: take another ring or other jaws.".into(),
        Outlook::TooLittle => format!("{stock} per side would not clean up: take another ring."),
        Outlook::Enough => format!("Recut: {stock} per side on the same ring cleans up."),
        Outlook::Wasteful => {
            format!("Recut: {stock} per side on the same ring cleans up, and is more than one recut should take.")
        }
    };
    format!("{sizes} {mount} {outlook} Touch off on the ring before cutting.")
}
