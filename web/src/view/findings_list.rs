//! All findings in the order of the flow, each with its steps.

use maud::{Markup, html};

use super::making;
use super::title_block::line;
use crate::page::desk::Desk;

/// The list.
pub(crate) fn show(desk: &Desk) -> Markup {
    html! {
        h2 { "All findings" }
        @if let Some((_, findings)) = &desk.good {
            @if !desk.faults.is_empty() { p.stale { "Of the last valid set-up, not of what is typed now." } }
            p.hint { "Open a line to see how it was reached." }
            div.lines {
                @for finding in findings.findings.iter().filter(|finding| !making::is_of_making(finding)) { (line(finding, "all", desk)) }
            }
            (making::findings(findings, desk))
        } @else {
            p { "None yet: there is no valid set-up." }
        }
    }
}
