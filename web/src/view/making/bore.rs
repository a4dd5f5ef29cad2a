//! The bored diameter with which parts come out roundest, worked out when it is asked for.

use holdround_core::findings::Findings;
use holdround_core::setup::{Setup, Side};
use maud::{Markup, html};

use super::lines;
use crate::language::{said, say};
use crate::page::desk::Desk;
use crate::view::title_block;

/// The button that asks for it.
pub(crate) const STUDY: &str = "study-bore";

/// The button, and what came of it.
pub(super) fn show(desk: &Desk, setup: &Setup, found: &Findings) -> Markup {
    let best = desk.bore.as_ref().and_then(|choice| choice.findings.first());
    html! {
        h3 { (say("Diameter to bore")) }
        (lines(found, &["bore.off_nominal"], desk))
        div.buttons {
            button type="button" id=(STUDY) data-act=(STUDY) { (say("Find the best diameter over the tolerance")) }
            @if desk.bore.as_ref().is_some_and(|choice| !choice.at_end) && best.is_some_and(|best| best.value.is_ok()) && setup.grip.side == Side::Outside {
                button type="button" id="adopt-bore" data-act="adopt-bore" { (say("Adopt this diameter")) }
            }
        }
        @if let Some(choice) = &desk.bore {
            div.lines role="status" { @for finding in &choice.findings { (title_block::line(finding, "study", desk)) } }
            @if let Some(says) = best.and_then(|best| best.value.as_ref().err().or(best.caution.as_ref())) { p { (said(says)) } }
        }
    }
}
