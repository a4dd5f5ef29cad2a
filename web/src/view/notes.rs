//! The notes of the sheet: numbered cautions, then what was assumed.

use holdround_core::findings::{Caution, Weight};
use holdround_core::setup::declared;
use maud::{Markup, html};

use crate::page::desk::Desk;

/// Cautions and assumptions of the last valid set-up.
pub(crate) fn show(desk: &Desk) -> Markup {
    html! {
        h2 { "Notes" }
        @if let Some((_, findings)) = &desk.good {
            ol.cautions { @for caution in &findings.cautions { (one(caution)) } }
            @if !findings.assumed.is_empty() {
                details.assumed id="assumed" {
                    summary { "Assumed, in brackets on the sheet: " (findings.assumed.len()) " entries" }
                    ul {
                        @for assumed in &findings.assumed {
                            li { (assumed.name) " (" (taken(&assumed.entry, assumed.taken)) "). " span.source { "Source: " (assumed.source) } }
                        }
                    }
                }
            }
        }
    }
}

fn one(caution: &Caution) -> Markup {
    html! {
        li.stop[caution.weight == Weight::Stop] {
            @if caution.weight == Weight::Stop { strong { "Stop. " } }
            (caution.says)
            @if let Some((path, input)) = caution.entry.and_then(|path| Some((path, declared(path)?))) {
                " " button type="button" data-act="goto" data-path=(path) { "Go to " (input.name) }
            }
        }
    }
}

/// What was taken, in the words of the form: the name of a choice, not its key.
fn taken(path: &str, text: &str) -> String {
    let name = declared(path).and_then(|input| super::field::choice_name(input, text));
    name.unwrap_or_else(|| text.to_owned())
}
