//! What the printed sheet has besides the drawing: the order of work to tick off, the figures it needs, and the code
//! that leads back.

use holdround_core::findings::{Findings, Mark};
use holdround_core::grip::Side;
use holdround_core::quantity::Kind;
use holdround_core::setup::Setup;
use maud::{Markup, html};

use super::{paper_code, steps};
use crate::page::desk::Desk;
use crate::page::records::Shelf;
use crate::units::Units;

/// Findings that are wanted at the machine; those of what is not planned are not there.
const FIGURES: &[&str] = &[
    "stroke.tooth",
    "stroke.bored",
    "stroke.clearance",
    "ring.diameter",
    "taper.right",
    "taper.next",
    "recut.stock",
    "pressure.least",
    "pressure.finish",
    "speed.third_left",
    "speed.grip_lost",
];

/// Order of work, figures and code; only on paper.
pub(crate) fn show(desk: &Desk, shelf: &Shelf) -> Markup {
    html! {
        @if let (Some((setup, findings)), true) = (&desk.good, desk.faults.is_empty()) {
            (paper_code::of(&desk.entries, shelf.that_holds(&desk.entries)))
            ol.ticks { @for step in order(setup, findings, desk.units) { li { (step) } } }
            ul.figures {
                @for finding in FIGURES.iter().filter_map(|id| findings.get(id)).filter(|finding| finding.value.is_ok()) {
                    li {
                        (finding.name) ": " b { (steps::value(finding, desk.units)) }
                        // A taper per side is half of that on diameter, and the two are mixed up.
                        @if finding.id.starts_with("taper.") {
                            @if let Ok(value) = finding.value { " per side, " b { (desk.units.show(finding.kind, 2.0 * value)) } " on diameter" }
                        }
                    }
                }
            }
        }
    }
}

/// The order of work.
fn order(setup: &Setup, findings: &Findings, units: Units) -> Vec<String> {
    let jaws = &setup.jaws;
    let value =
        |id: &str| findings.get(id).filter(|finding| finding.value.is_ok()).map(|finding| steps::value(finding, units));
    let diameter = 2.0 * setup.bored_radius();
    let production = units.show(Kind::Pressure, setup.pressure.value);
    let boring =
        jaws.boring_pressure.map_or_else(|| production.clone(), |pressure| units.show(Kind::Pressure, pressure.value));
    let departure = |si| units.show(Kind::Departure, si);
    let cut = if setup.grip.side == Side::Outside { "Bore" } else { "Turn" };
    let mut order = Vec::new();
    // What readings of the indicator cannot tell stands in nobody's way.
    let mut asked = findings.findings.iter().filter(|finding| !finding.id.starts_with("indicator."));
    if asked.any(|finding| matches!(finding.mark(), Mark::Beyond | Mark::Refused)) {
        order.push("Not before the verdict above is put right: something is beyond its limit or not known.".to_owned());
    }
    let tooth =
        value("stroke.tooth").map_or_else(|| "the same tooth each".to_owned(), |tooth| format!("tooth {tooth}"));
    order.push(format!(
        "Clean jaws, serrations and master jaws. Mount each jaw on its own master jaw, on {tooth}; screws to torque."
    ));
    order.push(format!("Ring or plug in, clamp at {boring}. Every jaw bears."));
    if setup.placing.recut.is_some() {
        order.push("Touch off each jaw. Enter diameter and run-out.".to_owned());
    }
    let taper = jaws.taper.value;
    let end = if taper < 0.0 { "base" } else { "tip" };
    order.push(format!(
        "{cut} the jaws to {}, taper {} per side = {} on diameter, more metal at the {end}. Relieve the corner, break edges.",
        units.show(Kind::Length, diameter), departure(libm::fabs(taper)), departure(libm::fabs(2.0 * taper))
    ));
    order.push(match setup.finish_pressure {
        None => format!("Ring out, clean. Set {production} for production. Check grip with a gauge."),
        Some(finish) => format!(
            "Ring out, clean. Rough at {production}; unclamp, set {}, clamp anew and finish. Check grip with a gauge at both.",
            units.show(Kind::Pressure, finish.value)
        ),
    });
    order.push(format!(
        "Part against its seat, clamp, guard closed. Up to {} in steps.",
        units.show(Kind::RotationalSpeed, setup.speed.value)
    ));
    order.push("First part: measure clamped and released. Write the boring into the jaw record.".to_owned());
    order
}
