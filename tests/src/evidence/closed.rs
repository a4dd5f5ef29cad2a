//! Closed forms, handbooks and standards: topic by topic, ours beside theirs.

use std::collections::BTreeMap;

use maud::{Markup, html};

use super::figure::{self, number, percent, spread};
use super::table::table;
use crate::reference::{Check, Expected, Met, Topic};

const HEADINGS: [&str; 6] = ["Claim and source", "Figure", "Theirs", "Ours", "Difference", "Allowed, and why"];

/// Every topic with what came out.
pub(super) struct Closed<'a>(Vec<Worked<'a>>);

struct Worked<'a> {
    anchor: &'a str,
    topic: &'a Topic,
    /// The figures of each check.
    figures: Vec<Vec<Met>>,
}

impl<'a> Closed<'a> {
    /// Works all topics out, in the order of their names.
    ///
    /// # Errors
    /// An engine's refusal.
    pub(super) fn solve(topics: &'a BTreeMap<String, Topic>) -> Result<Self, String> {
        let worked = topics.iter().map(|(file, topic)| {
            let figures =
                topic.checks.iter().map(|check| check.figures().map_err(|error| format!("{}: {error}", check.claim)));
            Ok(Worked {
                anchor: file.trim_end_matches(".json"),
                topic,
                figures: figures.collect::<Result<_, String>>()?,
            })
        });
        let mut worked = worked.collect::<Result<Vec<_>, String>>()?;
        worked.sort_by_key(|one| &one.topic.topic);
        Ok(Self(worked))
    }

    pub(super) fn checks(&self) -> usize {
        self.0.iter().map(|one| one.topic.checks.len()).sum()
    }

    pub(super) fn figures(&self) -> usize {
        self.0.iter().map(Worked::count).sum()
    }

    /// A line of the first table for each topic.
    pub(super) fn lines(&self) -> Markup {
        html! {
            @for one in &self.0 {
                @let [middle, worst] = spread(one.differences());
                tr {
                    th scope="row" { a href=(format!("#{}", one.anchor)) { (one.topic.topic) } }
                    td { (worst) }
                    td { (middle) }
                    td { (one.count()) }
                    td { (one.topic.checks.len()) }
                    td { (one.unread()) }
                }
            }
        }
    }

    pub(super) fn section(&self) -> Markup {
        html! {
            section #code {
                h2 { "Does the code solve its equations?" }
                p {
                    "Closed forms, published figures and definitions. A tolerance is what the source's own digits, or the "
                    "model's known difference from it, call for."
                }
                @for one in &self.0 { (one.rows()) }
            }
        }
    }
}

impl Worked<'_> {
    fn count(&self) -> usize {
        self.figures.iter().map(Vec::len).sum()
    }

    /// How far each figure is off, as a share; of what is expected to be nothing, or no more or less than a bound,
    /// there is no such share.
    fn differences(&self) -> impl Iterator<Item = f64> {
        self.figures.iter().flatten().filter_map(|figure| match figure.expected {
            Expected::Value(0.0) | Expected::AtLeast { .. } | Expected::AtMost { .. } => None,
            Expected::Value(value) => Some(figure.value / value - 1.0),
        })
    }

    /// How many of the checks rest on no source that was read.
    fn unread(&self) -> usize {
        let says = |check: &&Check| ["from memory", "common practice"].iter().any(|word| check.source.contains(word));
        self.topic.checks.iter().filter(says).count()
    }

    fn rows(&self) -> Markup {
        let Topic { topic, units, checks } = self.topic;
        html! {
            details {
                summary { (topic) ": " (checks.len()) @if checks.len() == 1 { " check" } @else { " checks" } }
                // Within the details, so that a link to it opens them.
                div #(self.anchor) {
                    p { "Units: " (units) "." }
                    (table(topic, &HEADINGS, &html! {
                        @for (check, figures) in checks.iter().zip(&self.figures) { (rows(check, figures)) }
                    }))
                }
            }
        }
    }
}

fn rows(check: &Check, figures: &[Met]) -> Markup {
    html! {
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
    }
}

fn theirs(expected: Expected) -> String {
    match expected {
        Expected::Value(value) => number(value),
        Expected::AtLeast { at_least } => format!("at least {}", number(at_least)),
        Expected::AtMost { at_most } => format!("at most {}", number(at_most)),
    }
}

fn difference(met: &Met) -> String {
    match met.expected {
        Expected::Value(value) if met.value == value => "none".into(),
        Expected::Value(0.0) => number(met.value),
        Expected::Value(value) => figure::difference(met.value / value - 1.0),
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
