//! A table that may be wider than the screen.

use maud::{Markup, html};

/// Rows below their headings; `label` says what they are about.
pub(super) fn table(label: &str, headings: &[&str], rows: &Markup) -> Markup {
    html! {
        div.wide tabindex="0" role="region" aria-label=(label) {
            table {
                thead { tr { @for heading in headings { th scope="col" { (heading) } } } }
                tbody { (rows) }
            }
        }
    }
}
