//! Worked examples, each by its link, and a fresh start.

use maud::{Markup, html};

use crate::page::address;

/// The list.
pub(crate) fn show() -> Markup {
    html! {
        h2 { "Worked examples" }
        ul {
            @for example in holdround_core::examples::all() {
                li { a href=(address::of_example(example.id)) { (example.title) } }
            }
        }
        p { button type="button" id="fresh" data-act="fresh" { "Start from the assumed values" } }
    }
}
