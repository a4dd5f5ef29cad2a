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
pub(crate) fn against_tooth(findings: &Findings) -> Option<&str> {
    let tooth = findings.get("stroke.tooth")?;
    tooth.value.as_ref().err().or(tooth.caution.as_ref()).map(String::as_str)
}

/// Metal before a counterbore, m; where the face runs into it, how much is missing.
pub(crate) fn metal(si: f64, units: Units) -> String {
    if si < 0.0 { format!("none: {} short", units.show(Kind::Length, -si)) } else { units.show(Kind::Length, si) }
}

/// A taper both ways, which are mixed up.
pub(crate) fn both(per_side: f64, units: Units) -> String {
    let small = |si: f64| units.show(Kind::Departure, si);
    format!("{} per side = {} on diameter", small(per_side), small(2.0 * per_side))
}

/// Its findings; what is wrong is said without opening them.
pub(crate) fn findings(findings: &Findings, desk: &Desk) -> Markup {
    html! {
        h2 { "Findings on making the jaws" }
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
        Some((
            finding,
            if finding.id == QUESTION { why.clone() } else { format!("{} is refused. {why}", finding.name) },
        ))
    })
}

/// What is wrong and where to put it right.
fn remedy(finding: &Finding) -> Markup {
    let why = finding.value.as_ref().err().or(finding.caution.as_ref());
    html! {
        div.remedy {
            @if let Some(why) = why { p { (why) } }
            (go_to(finding))
        }
    }
}

/// Leads to the entry that puts a finding right.
pub(crate) fn go_to(finding: &Finding) -> Markup {
    html! {
        @if let Some((path, input)) = finding.entry.and_then(|path| Some((path, declared(path)?))) {
            button type="button" data-act="goto" data-path=(path) { "Go to " (input.name) }
        }
    }
}

/// In one line, what is settled in a group, or in all of them (`making`).
pub(crate) fn settled(desk: &Desk, group: &str) -> Markup {
    let Some((setup, found)) = &desk.good else { return html! {} };
    let units = desk.units;
    let told = |id: &str| found.get(id).map_or_else(String::new, |finding| steps::value(finding, units));
    let per_side = |id: &str, diameter: &str| format!("{} per side = {} on diameter", told(id), told(diameter));
    let wastes = found.get("recut.wasted").is_some();
    let words = match group {
        "stroke" => match &found.scene.placing {
            Some(placing) if found.get("stroke.tooth").is_some_and(|tooth| tooth.value.is_ok()) => format!(
                "Tooth {}; bored at {} of {}",
                placing.tooth,
                told("stroke.bored"),
                units.show(Kind::Length, placing.stroke)
            ),
            Some(_) => "No tooth will do".into(),
            None => "Not planned".into(),
        },
        "ring" => match (found.get("ring.diameter"), found.get("ring.groove.outside")) {
            (Some(ring), _) if ring.value.is_ok() => format!("On diameter {}", told("ring.diameter")),
            (_, Some(groove)) if groove.value.is_ok() => format!("In a groove {} outside", told("ring.groove.outside")),
            (None, None) => "Not planned".into(),
            _ => "No such ring or plug will do".into(),
        },
        "boring" if found.scene.jaw_path.is_some() => {
            format!("{} roughing passes at {}", told("program.passes"), told("boring.speed"))
        }
        "boring" => "No path can be planned".into(),
        "readings" if found.get("taper.next.diameter").is_some() => {
            format!("Next taper: {}", per_side("taper.next", "taper.next.diameter"))
        }
        "readings" if found.get("taper.next").is_some() => "The readings tell no next taper".into(),
        "readings" if found.scene.cut_taper == Some(0.0) => "Cut straight, no taper".into(),
        "readings" => format!("Taper: {}", per_side("taper.right", "taper.right.diameter")),
        "recut" if setup.placing.recut.is_none() => "New jaws".into(),
        "recut" if found.get("recut.stock").is_none_or(|stock| stock.value.is_err()) => "Touch the jaws off".into(),
        "recut" if found.get(QUESTION).is_some() => "Answer first whether they are mounted as before".into(),
        "recut" if setup.reuses_jaws() == Some(true) => "Used as they are".into(),
        "recut" => {
            let stock = found.get("recut.stock");
            let so = match stock.and_then(|stock| stock.value.as_ref().ok()) {
                Some(stock) if *stock < 0.0 => ": the jaws stand beyond the size already",
                _ if stock.is_some_and(|stock| stock.mark() == Mark::Beyond) => ": not enough to clean up",
                _ if wastes => ": caution, it wastes jaw",
                _ => "",
            };
            format!("Stock {} per side{so}", told("recut.stock"))
        }
        _ => match in_the_way(found).next() {
            Some(first) if first.id == QUESTION => "Answer first whether the jaws are mounted as before".into(),
            Some(first) if first.value.is_err() => format!("{} is refused", first.name),
            Some(first) => format!("{} is beyond its limit", first.name),
            None if wastes => "Caution: the recut wastes jaw".into(),
            None => "Tooth, ring, boring, taper, program, recut".into(),
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
            summary { "Teeth tried: " (placing.teeth.len()) ", " (serve) " of them serve" }
            ul {
                @for tooth in placing.teeth.iter().take(shown) {
                    li {
                        "Tooth " (tooth.tooth) ": "
                        @if tooth.faults.is_empty() { "fits" } @else { (tooth.faults.join("; ")) }
                        ". Metal " (metal(tooth.wall, units)) ", clearance "
                        @if tooth.clearance < 0.0 { "none: " (units.show(Kind::Length, -tooth.clearance)) " too tight" }
                        @else { (units.show(Kind::Length, tooth.clearance)) }
                        " per side."
                    }
                }
            }
            @if others > 0 {
                p {
                    (others) " more do not serve: "
                    @for (at, (fault, count)) in reasons.iter().enumerate() { @if at > 0 { "; " } (fault) " (" (count) ")" }
                    "."
                }
            }
        }
    }
}

/// The ways in which a ring could bear, and the user's own rings.
fn rings(placing: &Placing, units: Units) -> Markup {
    let length = |si: f64| units.show(Kind::Length, si);
    let cut = |clears: bool| if clears { "clears the cut by " } else { "meets the cut: clearance " };
    html! {
        ul.rings {
            @for way in &placing.bearings {
                li {
                    @match way.bearing {
                        "counterbores" => "A ring in the counterbores",
                        "plug" => "A plug between the jaw ends",
                        _ => "A ring around the jaw ends",
                    }
                    ", to gauge " (length(way.diameter)) ", " (cut(way.clears)) (length(way.clearance)) "."
                }
            }
            @for (at, ring) in placing.own_rings.iter().enumerate() {
                li {
                    "Your ring " (at + 1) ", " (ring.name) ": jaws at " (length(ring.position)) " of the stroke, "
                    "clearance to the cut " (length(ring.clearance)) ". "
                    @if ring.against.is_empty() { "It serves." } @else { "Not this one: " (ring.against.join("; ")) "." }
                }
            }
        }
    }
}

/// Something to be done step by step.
fn in_order(procedure: &Procedure) -> Markup {
    html! {
        h3 { (procedure.title) }
        ol.order { @for step in &procedure.steps { li { (step) } } }
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
