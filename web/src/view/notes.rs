//! The notes of the sheet: numbered cautions, then what was assumed.

use holdround_core::findings::{Assumption, Caution, Weight};
use holdround_core::quantity::decimal;
use holdround_core::setup::declared;
use maud::{Markup, html};

use super::{field, inputs, moves};
use crate::language::{fill, number, said, say};
use crate::page::desk::Desk;
use crate::units::Units;

/// Share of a limit below which what an assumption moves is not worth a figure.
const HARDLY: f64 = 1e-3;

/// Cautions and assumptions of the last valid set-up.
pub(crate) fn show(desk: &Desk) -> Markup {
    html! {
        h2 { (say("Notes")) }
        @if let Some((_, findings)) = &desk.good {
            ol.cautions { @for caution in &findings.cautions { (one(caution)) } }
            @if !findings.assumed.is_empty() {
                details.assumed id="assumed" {
                    summary { (fill("Assumed, in brackets on the sheet: {} entries", &[&findings.assumed.len()])) }
                    @if findings.assumed.iter().any(|assumed| assumed.matters.is_some()) {
                        p.hint { (say("What matters most to the verdict comes first: each is changed alone by a tenth, and one that is 0 by 10 µm or 0.1.")) }
                    } @else {
                        p.hint { (say("In the order of the page; they are being sorted by how much each matters.")) }
                    }
                    ul { @for assumed in &findings.assumed { li { (one_assumed(assumed, desk.units)) } } }
                }
            }
        }
    }
}

fn one(caution: &Caution) -> Markup {
    html! {
        li.stop[caution.weight == Weight::Stop] {
            @if caution.weight == Weight::Stop { strong { (say("Stop.")) " " } }
            (said(&caution.says))
            @if let Some((path, input)) = caution.entry.and_then(|path| Some((path, declared(path)?))) {
                " " button type="button" data-act="goto" data-path=(path) { (fill("Go to {}", &[&say(input.name)])) }
            }
        }
    }
}

/// An assumption: its field a tap away, what was taken, and how much it matters.
fn one_assumed(assumed: &Assumption, units: Units) -> Markup {
    let name = declared(&assumed.entry).and_then(|input| field::choice_name(input, &assumed.taken));
    let taken = name.unwrap_or_else(|| moves::typed(&assumed.entry, &assumed.taken, units));
    html! {
        button type="button" data-act="goto" data-path=(assumed.entry) { (inputs::named(&assumed.name.into(), &assumed.entry)) }
        " (" (taken) "). "
        @match assumed.matters {
            Some(share) if share < HARDLY => { (say("Hardly matters.")) " " }
            Some(share) => {
                @let share = html! { strong { (number(decimal(share * 100.0, 1))) " %" } };
                (fill("Moves a figure by {} of its limit.", &[&share])) " "
            }
            None => "",
        }
        span.source { (fill("Source: {}", &[&say(assumed.source)])) }
    }
}
