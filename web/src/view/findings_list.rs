//! All findings in the order of the flow, each with its steps: those of holding the part, then those of making the jaws.

use maud::{Markup, html};

use super::making;
use super::title_block::line;
use crate::language::say;
use crate::page::desk::Desk;

/// Those of holding the part.
pub(crate) fn show(desk: &Desk) -> Markup {
    html! {
        h2 { (say("All findings")) }
        @if let Some((_, findings)) = &desk.good {
            @if !desk.faults.is_empty() { p.stale { (say("Of the last valid set-up, not of what is typed now.")) } }
            p.hint { (say("Open a line to see how it was reached.")) }
            div.lines {
                @for finding in findings.findings.iter().filter(|finding| !making::is_of_making(finding)) { (line(finding, "all", desk)) }
            }
        } @else {
            p { (say("None yet: there is no valid set-up.")) }
        }
    }
}

/// Those of making the jaws.
pub(crate) fn of_making(desk: &Desk) -> Markup {
    html! { @if let Some((_, findings)) = &desk.good { (making::findings(findings, desk)) } }
}
