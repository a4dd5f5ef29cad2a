//! The title block: the verdict, always in view.

use holdround_core::findings::{Finding, Findings, Mark};
use holdround_core::quantity::fixed;
use maud::{Markup, html};

use super::{inputs, lessons, making, mark, steps, verdict, window};
use crate::language::{fill, said, say};
use crate::page::desk::Desk;

/// The verdict and its five lines; each opens how it was reached.
pub(crate) fn show(desk: &Desk) -> Markup {
    let faulty = !desk.faults.is_empty();
    html! {
        @if faulty { (at_fault(desk)) }
        @if let Some((_, share)) = &desk.waiting { (working(*share, desk.good.is_some())) }
        @if let Some((_, findings)) = &desk.good {
            @if faulty { p.stale { (say("Below: the last valid set-up, not what is typed now.")) } }
            div.lines.old[faulty] {
                @if !faulty { (words(desk, findings)) }
                @for finding in verdict::headlines(findings) { (line(finding, "line", desk)) }
                (lessons::line(desk))
            }
        } @else if desk.waiting.is_none() {
            p.stale { (say("There is no valid set-up yet, and so no figure.")) }
        }
    }
}

/// Told only once it has lasted: most shapes are solved before an eye has moved. Beside earlier figures it takes no
/// room of its own.
fn working(share: f64, beside: bool) -> Markup {
    html! {
        p.working.beside[beside] {
            label for="working" { (say("Working")) span.heard { " " (say("out the shape of the part")) } }
            progress id="working" max="1" value=(fixed(share, 2)) {}
        }
    }
}

fn words(desk: &Desk, findings: &Findings) -> Markup {
    let (sign, words) = verdict::of(desk, findings);
    html! {
        div.verdict-cell {
            h2.verdict { (mark::drawn(sign)) " " (words) }
            @if let Some(reason) = verdict::reason(findings) { p.stop { (reason) } }
            @if sign == Mark::Refused && let Some((finding, _)) = making::held_up(findings) { (making::go_to(finding)) }
            // It keeps its place while nothing is known: a pinned verdict that grew would cover a field.
            p id="at-worst" {
                @if let Some((_, says)) = window::at_worst(desk) { (says) }
                @else if desk.window().is_some() || desk.is_tracing() { (say("At worst: being worked out.")) }
            }
        }
    }
}

fn at_fault(desk: &Desk) -> Markup {
    let count = desk.faults.len();
    html! {
        h2.verdict {
            (mark::drawn(Mark::Refused)) " "
            @if count == 1 { (say("No verdict: 1 entry to correct")) }
            @else { (fill("No verdict: {} entries to correct", &[&count])) }
        }
        p.faulty {
            @for fault in desk.faults.iter().take(3) {
                @let name = inputs::named(&fault.name, &fault.path);
                button type="button" id={ "fix-" (fault.path) } data-act="goto" data-path=(fault.path) {
                    (fill("Go to {}", &[&name]))
                }
            }
        }
    }
}

/// One finding in a line that opens how it was reached, which is drawn once it is open.
pub(crate) fn line(finding: &Finding, place: &str, desk: &Desk) -> Markup {
    let units = desk.units;
    let id = format!("{place}-{}", finding.id);
    html! {
        details class={ "line " (mark::key(finding.mark())) } id=(id) {
            summary id={ (place) "-of-" (finding.id) } {
                (mark::drawn(finding.mark()))
                span.name { (said(&finding.name)) }
                " "
                span.sum {
                    span.value { (steps::value(finding, units)) }
                    @if let Some(limit) = &finding.limit { " " span.limit { (steps::limit(finding, limit, units)) } }
                }
                " "
                span.word { (mark::word(finding)) }
            }
            @if desk.opened.contains(&id) { (steps::explained(finding, units)) }
        }
    }
}
