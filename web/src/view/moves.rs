//! What moves a figure most, each input a tap away.

use holdround_core::findings::{Finding, Moved};
use holdround_core::setup::declared;
use maud::{Markup, html};

use super::inputs;
use crate::language::{fill, number, say};
use crate::page::entry_text;
use crate::units::Units;

/// The movers of a finding, or that they are being worked out.
pub(crate) fn show(finding: &Finding, units: Units) -> Markup {
    html! {
        @match &finding.moved_by {
            _ if finding.value.is_err() => {}
            None => p.moves { (say("What would change it most is being worked out.")) },
            Some(movers) if movers.is_empty() => {
                p.moves { (say("No single figure of part, chuck, jaws or cuts changes it.")) }
            },
            Some(movers) => {
                p.moves { (say("What would change it most, each figure changed by about a tenth, alone:")) }
                ul.moves { @for moved in movers { li { (one(finding, moved, units)) } } }
            }
        }
    }
}

fn one(finding: &Finding, moved: &Moved, units: Units) -> Markup {
    let by = units.show(finding.kind, moved.by);
    // What is too small to be told has no sign.
    let sign = if moved.by > 0.0 && by.starts_with(|sign: char| sign.is_ascii_digit()) { "+" } else { "" };
    let entry = html! {
        button type="button" data-act="goto" data-path=(moved.entry) { (inputs::named(&moved.name.into(), &moved.entry)) }
    };
    let by = html! { strong { (sign) (by) } };
    fill("{} at {}: {}", &[&entry, &typed(&moved.entry, &moved.to, units), &by])
}

/// What is stored at `path`, as it would stand beside its unit.
pub(crate) fn typed(path: &str, text: &str, units: Units) -> String {
    number(as_typed(path, text, units))
}

/// The same, with a decimal point in every language.
pub(crate) fn as_typed(path: &str, text: &str, units: Units) -> String {
    let Some(kind) = declared(path).and_then(|input| input.kind()) else { return text.to_owned() };
    let unit = units.unit(kind);
    format!("{} {}", entry_text::in_field(kind, unit, text), unit.symbol).trim_end().to_owned()
}
