//! The label that goes with a set of jaws.

use holdround_core::record::Record;
use maud::{Markup, html};

use super::paper_code;
use crate::language::say;

/// Name, chuck, tooth, numbers, what was last bored, and the code that opens the set-up.
pub(crate) fn show(record: &Record) -> Markup {
    let last = |name: &str| record.last_boring().map_or("", |boring| boring.get(name));
    let lines = [
        ("Chuck", record.get("chuck")),
        ("Tooth", record.get("tooth")),
        ("Jaw on master jaw", record.get("numbers")),
        ("Scribe", record.get("scribe")),
        ("Bored", last("diameter")),
        ("On", last("date")),
    ];
    html! {
        div.label id="label" {
            @if let Some(setup) = record.setup() { (paper_code::of(&setup, record.get("name"))) }
            div {
                p.name { (record.get("name")) }
                @for (name, text) in lines { @if !text.is_empty() { p { (say(name)) ": " b { (text) } } } }
            }
        }
    }
}
