//! Closed forms, handbooks and standards: topic by topic, ours beside theirs.

use std::collections::BTreeMap;

use maud::{Markup, html};

use super::figure::{number, percent};
use super::table::table;
use crate::reference::{Check, Expected, Met, Topic};

const HEADINGS: [&str; 6] = ["Claim and source", "Figure", "Theirs", "Ours", "Difference", "Allowed, and why"];

/// All topics.
///
/// # Errors
/// An engine's refusal.
pub(super) fn section(topics: &BTreeMap<String, Topic>) -> Result<Markup, String> {
    let topics = topics.iter().map(|(file, topic)| of_topic(file, topic)).collect::<Result<Vec<_>, _>>()?;
    Ok(html! {
        section #code {
            h2 { "Does the code solve its equations?" }
            p {
                "Closed forms, published figures and definitions. SI units. A tolerance is what the source's own "
                "digits, or the model's known difference from it, call for."
            }
            @for topic in &topics { (topic) }
        }
    })
}

fn of_topic(file: &str, topic: &Topic) -> Result<Markup, String> {
    let rows = topic.checks.iter().map(rows).collect::<Result<Vec<_>, _>>()?;
    Ok(html! {
        details #(file.trim_end_matches(".json")) {
            summary { (topic.topic) ": " (topic.checks.len()) @if topic.checks.len() == 1 { " check" } @else { " checks" } }
            (table(&topic.topic, &HEADINGS, &html! { @for row in &rows { (row) } }))
        }
    })
}

fn rows(check: &Check) -> Result<Markup, String> {
    let figures = check.figures().map_err(|error| format!("{}: {error}", check.claim))?;
    Ok(html! {
        @for (at, figure) in figures.iter().enumerate() {
            tr {
                @if at == 0 {
                    th scope="rowgroup" rowspan=(figures.len()) { (check.claim) p.source { (check.source) } }
                }
                td { (figure.name) }
                td { (theirs(figure.expected)) }
                td { (number(figure.value)) }
                td { (difference(figure)) }
                @if at == 0 { td rowspan=(figures.len()) { (allowed(check)) } }
            }
        }
    })
}

fn theirs(expected: Expected) -> String {
    match expected {
        Expected::Value(value) => number(value),
        Expected::AtLeast { at_least } => format!("at least {}", number(at_least)),
        Expected::AtMost { at_most } => format!("at most {}", number(at_most)),
    }
}

fn difference(figure: &Met) -> String {
    match figure.expected {
        Expected::Value(value) if figure.value == value => "none".into(),
        Expected::Value(0.0) => number(figure.value),
        Expected::Value(value) => percent(figure.value / value - 1.0),
        Expected::AtLeast { .. } | Expected::AtMost { .. } => "holds".into(),
    }
}

fn allowed(check: &Check) -> Markup {
    let tolerance = &check.tolerance;
    html! {
        @if tolerance.relative > 0.0 { (percent(tolerance.relative)) }
        @if tolerance.relative > 0.0 && tolerance.absolute > 0.0 { " or " }
        @if tolerance.absolute > 0.0 { (number(tolerance.absolute)) }
        @if tolerance.relative > 0.0 || tolerance.absolute > 0.0 { ": " }
        (tolerance.because)
    }
}
