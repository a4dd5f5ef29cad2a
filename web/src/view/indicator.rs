//! Reading the indicator: the drawn dial with its stations, a column to paste, and what the readings tell.

use holdround_core::findings::{Finding, Findings};
use holdround_core::quantity::{Measure, decimal};
use holdround_core::setup::{Input, chuck_inputs as chuck, indicator_inputs as inputs};
use maud::{Markup, html};

use super::{field, moves, title_block};
use crate::language::{fill, fill_plain, said, say};
use crate::page::desk::Desk;
use crate::page::indicator::PASTE;
use crate::view::indicator_dial as dial;

/// What measured lobes correct: the finding that tells it, the entry it goes into, and the one that keeps what was taken.
pub(crate) static CORRECTIONS: [(&str, &Input, &Input); 2] = [
    ("indicator.condition", &chuck::CONDITION, &inputs::ADOPTED),
    ("indicator.tilt", &chuck::TILT_STIFFNESS, &inputs::ADOPTED_TILT),
];

/// A correction as it is written into its entry, in its bare unit and to four figures or so.
pub(crate) fn correction(findings: &Findings, at: usize) -> Option<String> {
    let (id, ..) = CORRECTIONS.get(at)?;
    let told = findings.value(id)?;
    let step = if told > 1e3 { 1e3 } else { 1e-3 };
    Some(decimal((told / step).round() * step, 3))
}

/// The fields of the readings, the place of the dial, and the column to paste.
pub(super) fn list(desk: &Desk, rows: &[&'static Input]) -> Markup {
    let twice = desk.entries.matters(&inputs::DIAL_SECOND, 0);
    html! {
        div id="dial" {}
        details id="dial-all" {
            summary { (say("All readings, to be typed")) }
            div.stations {
                @for at in 0..desk.shown_items("dial") {
                    @for (of, input) in rows.iter().filter(|input| desk.entries.matters(input, at)).enumerate() {
                        @let path = input.at(at);
                        div.station {
                            label for={ "in-" (path) } { span.heard { (fill("{} at station", &[&say(input.name)])) " " } (at + 1) @if twice { (if of == 0 { " a" } else { " b" }) } }
                            (field::control(desk, input, &path))
                            span.printed id={ "printed-" (path) } aria-hidden="true" { (field::printed(desk, input, &path)) }
                            div.message id={ "message-" (path) } { (field::message(desk, &path)) }
                        }
                    }
                }
            }
        }
        details id="dial-column" {
            summary { (say("Paste a column")) }
            label for=(PASTE) { (say("One reading a line, from station 1 on; a blank line or a dash where none was read")) }
            textarea id=(PASTE) rows="6" spellcheck="false" { (desk.dial.pasted) }
            div.changes {
                button type="button" id="dial-paste" data-act="dial-paste" data-path="reading" { (say("Take as readings")) }
                @if twice { button type="button" id="dial-paste-second" data-act="dial-paste" data-path="second" { (say("Take as second set")) } }
            }
        }
        div id="dial-told" role="status" {}
        div.made id="made-indicator" {}
    }
}

/// What came of the last column.
pub(crate) fn told(desk: &Desk) -> Markup {
    html! { @for line in &desk.dial.told { p { (said(line)) } } }
}

/// The drawn dial, and the station in hand.
pub(crate) fn at_hand(desk: &Desk) -> Markup {
    let count = desk.shown_items("dial");
    let station = desk.dial.station.min(count.saturating_sub(1));
    html! {
        (dial::draw(desk, count, station))
        div.hand {
            (step(say("Before"), "dial-before", (station + count - 1) % count.max(1)))
            p { (fill("Station {} of {}", &[&(station + 1), &count])) }
            (step(say("After"), "dial-after", (station + 1) % count.max(1)))
        }
        @for input in [&inputs::DIAL_READING, &inputs::DIAL_SECOND].into_iter().filter(|input| desk.entries.matters(input, station)) {
            @let path = input.at(station);
            div.hand {
                (nudge("−", say("A step lower"), "dial-less", &path))
                p { span.heard { (say(input.name)) ": " } output id={ "at-" (path) } { (desk.entries.get(&path).filter(|text| !text.is_empty()).unwrap_or(say("not read"))) } }
                (nudge("+", say("A step higher"), "dial-more", &path))
                button type="button" id={ "type-" (path) } data-act="goto" data-path=(path) { (say("Type")) span.heard { ": " (say(input.name)) } }
            }
        }
    }
}

fn step(words: &str, id: &str, to: usize) -> Markup {
    html! { button type="button" id=(id) data-act="dial-station" data-index=(to) { (words) span.heard { (fill(": station {}", &[&(to + 1)])) } } }
}

fn nudge(sign: &str, way: &str, act: &str, path: &str) -> Markup {
    html! { button type="button" id={ (act) "-" (path) } data-act=(act) data-path=(path) aria-label=(way) { (sign) } }
}

/// What the readings tell.
pub(crate) fn found(desk: &Desk) -> Markup {
    let Some((setup, findings)) = &desk.good else { return html! {} };
    let (Some(dial), Some(_)) = (&findings.scene.indicator, &setup.indicator) else { return html! {} };
    let told: Vec<&Finding> = findings.findings.iter().filter(|finding| finding.id.starts_with("indicator.")).collect();
    html! {
        @if told.is_empty() { p { (say("Nothing is read yet: tap a station, type, or paste a column.")) } }
        div.lines {
            @for finding in &told {
                (title_block::line(finding, "here", desk))
                @if let Some(words) = beside(finding, desk) { p.aside { (words) } }
            }
        }
        @if desk.faults.is_empty() { @for at in 0..CORRECTIONS.len() { (adopt(desk, findings, at)) } }
        ul.cannot { @for line in &dial.cannot { li { (said(line)) } } }
    }
}

/// The uncertainty of a finding, and what to do about it, without opening it.
fn beside(finding: &Finding, desk: &Desk) -> Option<String> {
    if let Err(why) = &finding.value {
        return Some(said(why));
    }
    let (least, most) = finding.band?;
    let [least, most] = [least, most].map(|end| desk.units.show(finding.kind, end));
    let caution = finding.caution.as_ref().map(said).unwrap_or_default();
    Some(fill_plain("{} to {}. {}", &[&least, &most, &caution]))
}

/// The button that takes a correction over, while it is not taken.
fn adopt(desk: &Desk, findings: &Findings, at: usize) -> Markup {
    let Some(((_, input, _), told)) = CORRECTIONS.get(at).zip(correction(findings, at)) else { return html! {} };
    let number = |text: &str| Measure::parse(input.kind()?, text).ok().map(|measure| measure.si);
    let entered = desk.entries.text_or_default(input.path, input);
    // The lobes rise not quite in proportion to the grip: what was adopted may come back a digit off.
    let taken = number(entered).zip(number(&told)).is_some_and(|(entered, told)| (entered / told - 1.0).abs() < 3e-3);
    let [entered, told] = [entered, told.as_str()].map(|text| moves::typed(input.path, text, desk.units));
    let take = match at {
        0 => "Take chuck condition {} instead of {}",
        _ => "Take tilt stiffness of a master jaw {} instead of {}",
    };
    html! {
        @if taken {
            p { (fill("{} is {}, as the lobes tell.", &[&say(input.name), &entered])) }
        } @else {
            button type="button" id={ "adopt-" (input.path) } data-act="dial-adopt" data-index=(at) { (fill(take, &[&told, &entered])) }
        }
    }
}
