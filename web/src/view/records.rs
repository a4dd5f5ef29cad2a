//! The jaw records: list, fields, borings, and whether the jaws can be used again.

use holdround_core::quantity::Kind;
use holdround_core::record::{BORING_FIELDS, CHANGED, FIELDS, Field, Fields, Record, Reuse, reuse, text_of};
use holdround_core::recut::Outlook;
use maud::{Markup, html};

use super::records_label;
use crate::language::{fill, fill_plain, said, say};
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
    html! { p.hint id="records-state" data-state=(key(shelf.state)) role="status" { (say(state)) } }
}

/// All records, and what can be done with them.
pub(crate) fn show(shelf: &Shelf, desk: &Desk) -> Markup {
    html! {
        @for (id, record) in shelf.records.that_are(false) { (one(shelf, desk, id, record)) }
        @if shelf.records.that_are(true).next().is_some() {
            details.deleted id="records-deleted" open[shelf.deletes] {
                summary { (say("Deleted")) }
                p.hint { (say("They stay in the file, so that an older file does not bring them back unasked.")) }
                @for (id, record) in shelf.records.that_are(true) { (deleted(id, record)) }
            }
        }
        div.changes {
            (button("keep", "", "Keep these jaws"))
            a.button id="records-save" href="#" download="jaw-records.json" data-act="record-save" { (say("Save all as a file")) }
            label for="records-file" { (say("Add from a file")) }
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
            (say(words)) @if !what.is_empty() { span.heard { ": " (what) } }
        }
    }
}

/// Something deleted, to be brought back.
fn deleted(id: &str, record: &Record) -> Markup {
    let title = said(&record.title());
    html! { p { (fill("{} is deleted.", &[&title])) " " (about("undelete", id, "Bring it back", &title)) } }
}

/// The fields of a record or of a boring in it.
fn fields(class: &str, fields: &[Field], id: &str, record: &Record) -> Markup {
    html! {
        @for field in fields {
            div class=(class) {
                label for={ "record-" (field.key) "-" (id) } { (say(field.name)) }
                input type="text" id={ "record-" (field.key) "-" (id) } data-record=(id) name=(field.key) value=(record.get(field.key)) title=(say(field.hint)) autocomplete="off";
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
                legend { (fill("Boring {}", &[&number])) }
                (fields("field", BORING_FIELDS, &at, bored))
                (about("delete", &at, "Delete this boring", &said(&bored.title())))
            }
        }
        @for (boring, gone) in record.borings.that_are(true) { (deleted(&format!("{id}/{boring}"), gone)) }
    }
}

/// The photos, and two ways to a new one: some devices offer only one of them by themselves.
fn photos(shelf: &Shelf, id: &str, record: &Record) -> Markup {
    html! {
        h3 { (say("Photos")) }
        @for (number, (photo, taken)) in (1..).zip(record.photos.that_are(false)) {
            @let at = format!("{id}/{photo}");
            @let day = taken.get(CHANGED).get(..10).unwrap_or_default();
            p {
                img.photo data-photo=(at) alt=(fill_plain("Photo {} of {}, kept on {}", &[&number, &said(&record.title()), &day]));
                (about("delete", &at, "Delete this photo", &number.to_string()))
            }
        }
        @if shelf.deleted_photo.as_ref().is_some_and(|(of, ..)| of == id) {
            p { (say("A photo is deleted.")) " " (button("undelete-photo", id, "Bring it back")) }
        }
        div.changes {
            label for={ "photo-take-" (id) } { (say("Take a photo")) }
            input type="file" id={ "photo-take-" (id) } data-photo-of=(id) accept="image/*" capture="environment";
            label for={ "photo-choose-" (id) } { (say("Choose a photo")) }
            input type="file" id={ "photo-choose-" (id) } data-photo-of=(id) accept="image/*";
        }
        p.hint { (say("Made small before it is kept; where and when it was taken is not kept with it.")) }
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
            h3 { (say("Bored")) }
            (borings(id, record))
            h4 { (say("Another boring")) }
            @let new = boring_of_desk(desk);
            @for field in BORING_FIELDS {
                div.field {
                    label for={ "boring-" (field.key) "-" (id) } { (say(field.name)) }
                    input type="text" id={ "boring-" (field.key) "-" (id) } value=(text_of(&new, field.key)) title=(say(field.hint)) autocomplete="off";
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
                p { (say("Earlier versions, from files:")) }
                ul { @for version in &record.earlier { li { (told(version)) } } }
            }
        }
    }
}

/// The name of a field; one that a newer page wrote has none but its key.
fn named(key: &str) -> &str {
    let known = FIELDS.iter().chain(BORING_FIELDS).find(|field| field.key == key);
    known.map_or(key, |field| say(field.name))
}

/// The texts of a boring or a version in a line, but for the link.
fn told(fields: &Fields) -> String {
    let mut line = String::new();
    for name in fields.keys().filter(|name| *name != "link") {
        let text = text_of(fields, name);
        if !text.is_empty() {
            line = format!("{line}{}{} {text}", if line.is_empty() { "" } else { ", " }, named(name));
        }
    }
    line
}

/// Reuse or recut, in words.
fn again(reuse: Option<&Reuse>, record: &Record, units: Units) -> String {
    let Some(reuse) = reuse else {
        return say(
            "Whether they need a recut cannot be told yet: it wants a boring with its diameter, and a valid set-up on the sheet.",
        )
        .to_owned();
    };
    let order = Some(record.get("numbers")).filter(|numbers| !numbers.is_empty());
    let order = order.unwrap_or_else(|| say("each on its own master jaw"));
    let length = |si| units.show(Kind::Length, si);
    let sizes = fill_plain("Bored to {}, wanted {}.", &[&length(reuse.bored), &length(reuse.wanted)]);
    if reuse.other_side {
        let side = say(
            "They were bored to grip on the other side of the part: their faces point the wrong way. Take other jaws.",
        );
        return format!("{sizes} {side}");
    }
    let mount = match (reuse.other_chuck, reuse.other_tooth) {
        (true, _) => say("The chuck on the sheet is not the one they were bored on: they must be recut."),
        (_, true) => say("The tooth on the sheet is not theirs: take theirs, or recut."),
        _ => "",
    };
    if reuse.as_they_are {
        let needed =
            fill_plain("No recut needed on the same chuck, the same teeth and in the same order ({}).", &[&order]);
        let check = say("Check run-out before use. Are they mounted so?");
        if reuse.other_pressure {
            let pressure = say(
                "They were bored under another pressure than the one on the sheet: their taper may not suit, so check that they bear along the whole jaw.",
            );
            return format!("{sizes} {needed} {pressure} {check}");
        }
        return format!("{sizes} {needed} {check}");
    }
    let stock = length(reuse.stock);
    let outlook = match reuse.outlook {
        _ if reuse.on_size => say("On size: only a recut makes them run true.").to_owned(),
        Outlook::TooLarge => say("On the same ring nothing can be cut: take another ring or other jaws.").to_owned(),
        Outlook::TooLittle => fill_plain("{} per side would not clean up: take another ring.", &[&stock]),
        Outlook::Enough => fill_plain("Recut: {} per side on the same ring cleans up.", &[&stock]),
        Outlook::Wasteful => fill_plain(
            "Recut: {} per side on the same ring cleans up, and is more than one recut should take.",
            &[&stock],
        ),
    };
    format!("{sizes} {mount} {outlook} {}", say("Touch off on the ring before cutting."))
}
