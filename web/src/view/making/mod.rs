//! Making the jaws: what stands in the form beside its inputs, and its findings in a list of their own.

mod bluing;
mod bore;
mod frame;
pub(crate) mod on_views;
pub(crate) mod path;
pub(crate) mod program;
pub(crate) mod sketches;
mod stroke;

use holdround_core::QUESTION;
use holdround_core::findings::{Finding, Findings, Mark, Placing, Procedure};
use holdround_core::quantity::Kind;
use holdround_core::setup::{Setup, declared};
use maud::{Markup, html};

use super::{steps, title_block};
use crate::language::{fill, fill_plain, said, say};
use crate::page::desk::Desk;
use crate::units::Units;

/// The groups of inputs that belong to it, in the order in which they are settled.
pub(crate) const GROUPS: [&str; 5] = ["stroke", "ring", "boring", "readings", "recut"];

/// What the ids of its findings begin with.
const TOPICS: [&str; 8] = ["stroke", "ring", "rings", "recut", "bore", "taper", "program", "boring"];

/// Whether a finding is of making the jaws, and not of holding the part.
pub(crate) fn is_of_making(finding: &Finding) -> bool {
    finding.id.split('.').next().is_some_and(|topic| TOPICS.contains(&topic))
}

/// Without these there are no jaws to bore, or to use.
const NEEDED: [&str; 4] = ["stroke.tooth", "ring.diameter", "ring.groove.outside", QUESTION];

/// What of it is beyond a limit, or refused where nothing goes without it.
pub(crate) fn in_the_way(findings: &Findings) -> impl Iterator<Item = &Finding> {
    let stops = |finding: &&Finding| match finding.mark() {
        Mark::Beyond => is_of_making(finding),
        Mark::Refused => NEEDED.contains(&finding.id.as_ref()),
        _ => false,
    };
    findings.findings.iter().filter(stops)
}

/// Why the tooth does not serve, and what would; none while one does or is not asked for.
pub(crate) fn against_tooth(findings: &Findings) -> Option<String> {
    let tooth = findings.get("stroke.tooth")?;
    tooth.value.as_ref().err().or(tooth.caution.as_ref()).map(said)
}

/// Metal before a counterbore, m; where the face runs into it, how much is missing.
pub(crate) fn metal(si: f64, units: Units) -> String {
    let shown = units.show(Kind::Length, si.abs());
    if si < 0.0 { fill_plain("none: {} short", &[&shown]) } else { shown }
}

/// A taper both ways, which are mixed up.
pub(crate) fn both(per_side: f64, units: Units) -> String {
    let small = |si: f64| units.show(Kind::Departure, si);
    fill_plain("{} per side = {} on diameter", &[&small(per_side), &small(2.0 * per_side)])
}

/// Its findings; what is wrong is said without opening them.
pub(crate) fn findings(findings: &Findings, desk: &Desk) -> Markup {
    html! {
        h2 { (say("Findings on making the jaws")) }
        div.lines {
            @for finding in findings.findings.iter().filter(|finding| is_of_making(finding)) {
                (title_block::line(finding, "all", desk))
                @if matches!(finding.mark(), Mark::Beyond | Mark::Refused) { (remedy(finding)) }
            }
        }
    }
}

/// Why the jaws cannot be used yet, where that is refused and not beyond a limit.
pub(crate) fn held_up(findings: &Findings) -> Option<(&Finding, String)> {
    in_the_way(findings).find_map(|finding| {
        let why = finding.value.as_ref().err()?;
        let why = said(why);
        if finding.id == QUESTION {
            return Some((finding, why));
        }
        Some((finding, fill_plain("{} is refused. {}", &[&said(&finding.name), &why])))
    })
}

/// What is wrong and where to put it right.
fn remedy(finding: &Finding) -> Markup {
    let why = finding.value.as_ref().err().or(finding.caution.as_ref());
    html! {
        div.remedy {
            @if let Some(why) = why { p { (said(why)) } }
            (go_to(finding))
        }
    }
}

/// Leads to the entry that puts a finding right.
pub(crate) fn go_to(finding: &Finding) -> Markup {
    html! {
        @if let Some((path, input)) = finding.entry.and_then(|path| Some((path, declared(path)?))) {
            button type="button" data-act="goto" data-path=(path) { (fill("Go to {}", &[&say(input.name)])) }
        }
    }
}

/// In one line, what is settled in a group, or in all of them (`making`).
pub(crate) fn settled(desk: &Desk, group: &str) -> Markup {
    let Some((setup, found)) = &desk.good else { return html! {} };
    let units = desk.units;
    let told = |id: &str| found.get(id).map_or_else(String::new, |finding| steps::value(finding, units));
    let per_side = |id: &str, diameter: &str| fill_plain("{} per side = {} on diameter", &[&told(id), &told(diameter)]);
    let wastes = found.get("recut.wasted").is_some();
    let words = match group {
        "stroke" => match &found.scene.placing {
            Some(placing) if found.get("stroke.tooth").is_some_and(|tooth| tooth.value.is_ok()) => fill_plain(
                "Tooth {}; bored at {} of {}",
                &[&placing.tooth, &told("stroke.bored"), &units.show(Kind::Length, placing.stroke)],
            ),
            Some(_) => say("No tooth will do").into(),
            None => say("Not planned").into(),
        },
        "ring" => match (found.get("ring.diameter"), found.get("ring.groove.outside")) {
            (Some(ring), _) if ring.value.is_ok() => fill_plain("On diameter {}", &[&told("ring.diameter")]),
            (_, Some(groove)) if groove.value.is_ok() => {
                fill_plain("In a groove {} outside", &[&told("ring.groove.outside")])
            }
            (None, None) => say("Not planned").into(),
            _ => say("No such ring or plug will do").into(),
        },
        "boring" if found.scene.jaw_path.is_some() => {
            fill_plain("{} roughing passes at {}", &[&told("program.passes"), &told("boring.speed")])
        }
        "boring" => say("No path can be planned").into(),
        "readings" if found.get("taper.next.diameter").is_some() => {
            fill_plain("Next taper: {}", &[&per_side("taper.next", "taper.next.diameter")])
        }
        "readings" if found.get("taper.next").is_some() => say("The readings tell no next taper").into(),
        "readings" if found.scene.cut_taper == Some(0.0) => say("Cut straight, no taper").into(),
        "readings" => fill_plain("Taper: {}", &[&per_side("taper.right", "taper.right.diameter")]),
        "recut" if setup.placing.recut.is_none() => say("New jaws").into(),
        "recut" if found.get("recut.stock").is_none_or(|stock| stock.value.is_err()) => {
            say("Touch the jaws off").into()
        }
        "recut" if found.get(QUESTION).is_some() => say("Answer first whether they are mounted as before").into(),
        "recut" if setup.reuses_jaws() == Some(true) => say("Used as they are").into(),
        "recut" => {
            let stock = found.get("recut.stock");
            let so = match stock.and_then(|stock| stock.value.as_ref().ok()) {
                Some(stock) if *stock < 0.0 => say(": the jaws stand beyond the size already"),
                _ if stock.is_some_and(|stock| stock.mark() == Mark::Beyond) => say(": not enough to clean up"),
                _ if wastes => say(": caution, it wastes jaw"),
                _ => "",
            };
            fill_plain("Stock {} per side{}", &[&told("recut.stock"), &so])
        }
        _ => match in_the_way(found).next() {
            Some(first) if first.id == QUESTION => say("Answer first whether the jaws are mounted as before").into(),
            Some(first) if first.value.is_err() => fill_plain("{} is refused", &[&said(&first.name)]),
            Some(first) => fill_plain("{} is beyond its limit", &[&said(&first.name)]),
            None if wastes => say("Caution: the recut wastes jaw").into(),
            None => say("Tooth, ring, boring, taper, program, recut").into(),
        },
    };
    html! { (words) "." }
}

/// Whether what came of a group stands above its inputs: only where it keeps its height, or a field would move away
/// from under the finger.
pub(crate) fn above(group: &str) -> bool {
    matches!(group, "stroke" | "boring")
}

/// What came of a group.
pub(crate) fn beside(desk: &Desk, group: &str) -> Markup {
    let Some((setup, found)) = &desk.good else { return html! {} };
    let units = desk.units;
    let procedure = |id: &str| found.scene.procedures.iter().find(|procedure| procedure.id == id);
    html! {
        @match group {
            "stroke" => @if let Some(placing) = &found.scene.placing {
                (stroke::show(desk, setup, placing, found))
                (teeth(placing, units))
            },
            "ring" => {
                @if let Some(placing) = &found.scene.placing { (rings(placing, units)) }
                @if let Some(steps) = procedure("ring.groove") { (in_order(steps)) }
            },
            "boring" => {
                @if let Some(jaw_path) = &found.scene.jaw_path { (path::show(desk, setup, found, jaw_path)) }
                (bore::show(desk, setup, found))
                @if desk.faults.is_empty() { (program::show(setup, units)) } @else { (program::held_back()) }
            },
            "readings" => (bluing::show(desk, setup, found)),
            _ => @if let Some(steps) = procedure("recut.touch_off") { (in_order(steps)) },
        }
    }
}

/// How many teeth are told of at least, although they do not serve.
const MOST_FAULTY: usize = 3;

/// What was tried of the teeth, and what is wrong with each.
fn teeth(placing: &Placing, units: Units) -> Markup {
    let serve = placing.teeth.iter().take_while(|tooth| tooth.faults.is_empty()).count();
    // Where none serves, the least faulty show what would have to change.
    let shown = serve.max(MOST_FAULTY).min(placing.teeth.len());
    let others = placing.teeth.len() - shown;
    let mut reasons: Vec<(&str, usize)> = Vec::new();
    for fault in placing.teeth.iter().skip(shown).flat_map(|tooth| &tooth.faults) {
        match reasons.iter_mut().find(|(known, _)| known == fault) {
            Some((_, count)) => *count += 1,
            None => reasons.push((fault, 1)),
        }
    }
    html! {
        details id="teeth-tried" {
            summary { (fill("Teeth tried: {}, {} of them serve", &[&placing.teeth.len(), &serve])) }
            ul {
                @for tooth in placing.teeth.iter().take(shown) {
                    @let faults = if tooth.faults.is_empty() { say("fits").to_owned() } else { listed(&tooth.faults) };
                    @let metal = metal(tooth.wall, units);
                    @let room = units.show(Kind::Length, tooth.clearance.abs());
                    @let clearance = if tooth.clearance < 0.0 { fill_plain("none: {} too tight", &[&room]) } else { room };
                    li { (fill("Tooth {}: {}. Metal {}, clearance {} per side.", &[&tooth.tooth, &faults, &metal, &clearance])) }
                }
            }
            @if others > 0 {
                @let reasons: Vec<String> = reasons.iter().map(|(fault, count)| format!("{} ({count})", say(fault))).collect();
                p { (fill("{} more do not serve: {}.", &[&others, &reasons.join("; ")])) }
            }
        }
    }
}

/// What speaks against something, in a row.
fn listed(reasons: &[&str]) -> String {
    reasons.iter().map(|reason| say(reason)).collect::<Vec<_>>().join("; ")
}

/// The ways in which a ring could bear, and the user's own rings.
fn rings(placing: &Placing, units: Units) -> Markup {
    let length = |si: f64| units.show(Kind::Length, si);
    let cut = |clears: bool| {
        if clears { "{}, to gauge {}, clears the cut by {}." } else { "{}, to gauge {}, meets the cut: clearance {}." }
    };
    html! {
        ul.rings {
            @for way in &placing.bearings {
                @let bears = match way.bearing {
                    "counterbores" => say("A ring in the counterbores"),
                    "plug" => say("A plug between the jaw ends"),
                    _ => say("A ring around the jaw ends"),
                };
                li { (fill(cut(way.clears), &[&bears, &length(way.diameter), &length(way.clearance)])) }
            }
            @for (at, ring) in placing.own_rings.iter().enumerate() {
                li {
                    (fill(
                        "Your ring {}, {}: jaws at {} of the stroke, clearance to the cut {}.",
                        &[&(at + 1), &ring.name, &length(ring.position), &length(ring.clearance)],
                    ))
                    " "
                    @if ring.against.is_empty() { (say("It serves.")) } @else { (fill("Not this one: {}.", &[&listed(&ring.against)])) }
                }
            }
        }
    }
}

/// Something to be done step by step.
fn in_order(procedure: &Procedure) -> Markup {
    html! {
        h3 { (say(procedure.title)) }
        ol.order { @for step in &procedure.steps { li { (say(step)) } } }
    }
}

/// The values of these findings, each in a line that opens how it was reached.
fn lines(found: &Findings, ids: &[&str], desk: &Desk) -> Markup {
    html! { div.lines { @for finding in ids.iter().filter_map(|id| found.get(id)) { (title_block::line(finding, "here", desk)) } } }
}

/// Height of the seat above the serrations, m.
fn seat(setup: &Setup) -> f64 {
    setup.jaws.height.value - setup.grip.length.value
}
