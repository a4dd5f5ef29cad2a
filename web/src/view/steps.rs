//! How a finding was reached: what each step does, its formula, the numbers put in, the result and the source.

use holdround_core::findings::{Finding, Limit, Sense, Step, Term};
use maud::{Markup, html};

use super::{formula, making, moves, words};
use crate::language::{fill, fill_plain, said, say};
use crate::units::Units;

/// The value of a finding, or a dash where there is none.
pub(crate) fn value(finding: &Finding, units: Units) -> String {
    match finding.value {
        Ok(value) if finding.id == "stroke.wall" => making::metal(value, units),
        Ok(value) => units.show(finding.kind, value),
        Err(_) => "—".to_owned(),
    }
}

/// A limit in words: at most 20 µm.
pub(crate) fn limit(finding: &Finding, limit: &Limit, units: Units) -> String {
    let value = units.show(finding.kind, limit.value);
    match limit.sense {
        Sense::AtMost => fill_plain("at most {}", &[&value]),
        Sense::AtLeast => fill_plain("at least {}", &[&value]),
    }
}

/// Which side of a limit is allowed.
pub(crate) fn sense(sense: Sense) -> &'static str {
    match sense {
        Sense::AtMost => say("at most"),
        Sense::AtLeast => say("at least"),
    }
}

/// All there is to say about a finding below its line.
pub(crate) fn explained(finding: &Finding, units: Units) -> Markup {
    html! {
        div.explained {
            @if let Err(why) = &finding.value { p.refusal { (fill("No figure is given. {}", &[&said(why)])) } }
            @if let Some(held) = &finding.limit {
                p { (fill("Allowed: {}, from {}.", &[&limit(finding, held, units), &said(&held.origin)])) }
            }
            @if let Some((least, most)) = finding.band {
                @let careful = finding.value.as_ref().is_ok_and(|value| *value == least || *value == most);
                @let ends = [least, most].map(|end| units.show(finding.kind, end));
                p {
                    @if careful { (fill("Between {} and {}; the careful end is shown.", &[&ends[0], &ends[1]])) }
                    @else { (fill("Between {} and {}.", &[&ends[0], &ends[1]])) }
                }
            }
            @if let Some(caution) = &finding.caution { p.caution { (said(caution)) } }
            @if !finding.steps.is_empty() {
                ol.steps { @for step in &finding.steps { li { (one(step, units)) } } }
            }
            p {
                button type="button" data-act="file-copy" data-id=(finding.id) {
                    (say("Copy")) span.heard { ": " (said(&finding.name)) }
                }
            }
            (moves::show(finding, units))
            (words::in_text(&finding.name.to_string()))
            p.sure { a href="evidence.html" target="_blank" { (say("How sure: what this was checked against")) } }
        }
    }
}

fn one(step: &Step, units: Units) -> Markup {
    html! {
        p { (say(step.says)) }
        (formula::displayed(step.formula))
        @if !step.given.is_empty() {
            @let given = html! {
                @for (at, given) in step.given.iter().enumerate() { @if at > 0 { ", " } (term(given, units)) }
            };
            p.given { (fill("with {}", &[&given])) }
        }
        p.result { (term(&step.result, units)) }
        p.source { (fill("Source: {}", &[&say(step.source)])) }
    }
}

fn term(term: &Term, units: Units) -> Markup {
    html! { span.term { (formula::symbol(term.symbol)) " = " (units.show(term.kind, term.value)) } }
}
