//! Worked examples, each by its link, and a fresh start.

use holdround_core::examples::EXAMPLES;
use maud::{Markup, html};

use crate::language::say;
use crate::page::address;

/// The list.
pub(crate) fn show() -> Markup {
    html! {
        h2 { (say("Worked examples")) }
        ul {
            @for example in EXAMPLES {
                li { a href=(address::of_example(example.id)) { (say(example.title)) } " " (say(example.says)) }
            }
        }
        p {
            button type="button" id="own-open" data-act="own" { (say("Start my own")) }
            " " (say("A few questions; everything else is assumed, and yours to correct."))
        }
        p { button type="button" id="fresh" data-act="fresh" { (say("Start from the assumed values")) } }
    }
}
