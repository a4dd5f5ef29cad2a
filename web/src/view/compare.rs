//! The jaws set beside others, for the same part and cut.

use core::f64::consts::TAU;

use holdround_core::findings::Findings;
use holdround_core::setup::Setup;
use holdround_core::{Better, Compared, Comparison, ROWS, Row};
use maud::{Markup, html};

use super::Stage;
use super::drawing::{Both, around, closed, coordinate};
use crate::language::{fill, fill_plain, said, say};
use crate::page::compare::Beside;
use crate::units::Units;

/// What was compared, or what asks for it.
pub(crate) fn show(beside: &Beside, units: Units, current: bool) -> Markup {
    html! {
        p.hint { (say("The same part and cut on other jaws, each with one thing changed; lines alike for all are left out. Another number of jaws means another chuck: enter its plate.")) }
        p {
            button type="button" id="compare" data-act="compare" {
                (if beside.comparison.is_some() { say("Compare again") } else { say("Compare jaws") })
            }
        }
        @if let Some(comparison) = &beside.comparison {
            @if !current { p.stale { (say("Of an earlier set-up: compare again.")) } }
            p.hint id="compare-state" role="status" {
                @if !comparison.is_done() { (fill("Working: {} done…", &[&comparison.done().len()])) }
                @else { (say("All compared.")) }
            }
            ul.compared aria-label=(say("Comparison of jaws")) {
                @for at in 0..comparison.done().len() { (card(comparison, at, units)) }
            }
        }
    }
}

/// One choice of jaws: what it looks like and what it comes to.
fn card(comparison: &Comparison, at: usize, units: Units) -> Markup {
    let Some(one) = comparison.done().get(at) else { return html! {} };
    html! {
        li {
            h3 { (name(one)) }
            @match &one.fitted {
                Ok(fitted) => {
                    (picture(&fitted.setup, &fitted.found, units))
                    dl { @for row in ROWS.iter().filter(|row| comparison.differs(row)) { (line(comparison, at, row, units)) } }
                    @if at > 0 {
                        button type="button" id={ "take-jaws-" (at) } data-act="take-jaws" data-index=(at)
                            aria-label=(fill_plain("Take these: {}", &[&name(one)])) { (say("Take these")) }
                    }
                },
                Err(why) => p.refusal { (fill("These do not serve. {}", &[&said(why)])) },
            }
        }
    }
}

fn name(one: &Compared) -> String {
    if one.choice.differs.is_empty() { say("As set").to_owned() } else { said(&one.choice.differs) }
}

fn line(comparison: &Comparison, at: usize, row: &Row, units: Units) -> Markup {
    let value = comparison.done().get(at).and_then(|one| one.value(row));
    html! {
        dt { (say(row.name)) }
        dd {
            @if let Some(value) = value { (units.show(row.kind, value)) } @else { "—" }
            @if comparison.best(row) == Some(at) { " " b { (if row.better == Better::More { say("most") } else { say("least") }) } }
        }
    }
}

/// Jaws and part from the front, no more than tells one choice from another.
fn picture(setup: &Setup, findings: &Findings, units: Units) -> Markup {
    let both = Both::of(&Stage::of(setup, findings, units));
    let pitch = TAU.to_degrees() / f64::from(setup.chuck.jaws);
    let bore = both.sheet.radius(setup.part.smallest_bore());
    let part = closed(&around(both.outside)) + &closed(&around(bore));
    html! {
        svg viewBox="-200 -200 400 400" aria-hidden="true" {
            @for at in 0..setup.chuck.jaws {
                path class="outline jaw" d=(closed(&both.jaw.whole)) transform={ "rotate(" (coordinate(f64::from(at) * pitch)) ")" } {}
            }
            path class="outline part" fill-rule="evenodd" d=(part) {}
        }
    }
}
