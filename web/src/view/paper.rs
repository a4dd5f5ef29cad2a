//! What the printed sheet has besides the drawing: the order of work to tick off, the figures it needs, and the code
//! that leads back.

use holdround_core::findings::{Findings, Mark};
use holdround_core::grip::Side;
use holdround_core::quantity::Kind;
use holdround_core::setup::Setup;
use maud::{Markup, html};

use super::making::{against_tooth, both, sketches};
use super::{paper_code, steps, verdict};
use crate::language::{fill, fill_plain, said, say};
use crate::page::desk::Desk;
use crate::page::shelf::Shelf;
use crate::units::Units;

/// Findings that are wanted at the machine; those of what is not planned are not there.
const FIGURES: &[&str] = &[
    "stroke.tooth",
    "stroke.bored",
    "stroke.clearance",
    "stroke.wall",
    "ring.diameter",
    "ring.groove.outside",
    "ring.groove.depth",
    "taper.right",
    "taper.next",
    "recut.stock",
    "pressure.least",
    "pressure.finish",
    "speed.third_left",
    "speed.grip_lost",
];

/// Those that stand on the sketches.
const ON_SKETCHES: &[&str] = &["stroke.tooth", "stroke.wall", "ring.diameter", "ring.groove.outside"];

/// Order of work, sketches, figures and code; only on paper.
pub(crate) fn show(desk: &Desk, shelf: &Shelf) -> Markup {
    html! {
        @if let (Some((setup, findings)), true) = (&desk.good, desk.faults.is_empty()) {
            (paper_code::of(&desk.entries, shelf.that_holds(&desk.entries)))
            ol.ticks { @for step in order(desk, setup, findings) { li { (step) } } }
            @let against = against_tooth(findings);
            @if let Some(placing) = findings.scene.placing.as_ref().filter(|_| against.is_none()) {
                div.sketches { (sketches::show(setup, placing, desk.units)) }
            }
            ul.figures {
                @let sketched = findings.scene.placing.is_some();
                // Where the tooth does not serve, nothing that hangs on it is told.
                @let hangs = |id: &str| against.is_some() && ["stroke.", "ring."].iter().any(|topic| id.starts_with(topic));
                @let wanted = FIGURES.iter().filter(|id| !(hangs(id) || sketched && ON_SKETCHES.contains(id)));
                @for finding in wanted.filter_map(|id| findings.get(id)).filter(|finding| finding.value.is_ok()) {
                    li {
                        @let (name, told) = (said(&finding.name), html! { b { (steps::value(finding, desk.units)) } });
                        @match finding.value {
                            // A taper per side is half of that on diameter, and the two are mixed up.
                            Ok(value) if finding.id.starts_with("taper.") => {
                                @let twice = html! { b { (desk.units.show(finding.kind, 2.0 * value)) } };
                                (fill("{}: {} per side, {} on diameter", &[&name, &told, &twice]))
                            }
                            _ => { (name) ": " (told) }
                        }
                    }
                }
            }
        }
    }
}

/// The order of work.
fn order(desk: &Desk, setup: &Setup, findings: &Findings) -> Vec<String> {
    let units = desk.units;
    let value =
        |id: &str| findings.get(id).filter(|finding| finding.value.is_ok()).map(|finding| steps::value(finding, units));
    let production = units.show(Kind::Pressure, setup.pressure.value);
    let mut order = Vec::new();
    let against = against_tooth(findings);
    // What is not settled is not begun: jaws bored for it would be bored for another job than the one that runs.
    if against.is_some() || matches!(verdict::of(desk, findings).0, Mark::Beyond | Mark::Refused) {
        let nothing = say(
            "Mount, bore and run nothing yet. Put right on the page what the verdict above tells, and print again: the steps then stand here.",
        );
        order.push(nothing.to_owned());
        order.extend(against.map(|why| fill_plain("No tooth is settled. {}", &[&why])));
        return order;
    }
    let tooth = value("stroke.tooth")
        .map_or_else(|| say("on the same tooth each").to_owned(), |tooth| fill_plain("on tooth {}", &[&tooth]));
    order.push(fill_plain(
        "Clean jaws, serrations and master jaws. Mount each jaw on its own master jaw, {}; screws to torque.",
        &[&tooth],
    ));
    let reuse = setup.reuses_jaws() == Some(true);
    if reuse {
        order.push(fill_plain(
            "Use the jaws as they are. Check their run-out: at most {}; else recut them.",
            &[&units.show(Kind::Departure, setup.part.runout_limit.value)],
        ));
    } else {
        boring(setup, findings, units, &mut order);
    }
    let set = match setup.finish_pressure {
        None => fill_plain("Set {} for production. Check grip with a gauge.", &[&production]),
        Some(finish) => fill_plain(
            "Rough at {}; unclamp, set {}, clamp anew and finish. Check grip with a gauge at both.",
            &[&production, &units.show(Kind::Pressure, finish.value)],
        ),
    };
    order.push(if reuse { set } else { format!("{} {set}", say("Ring out, clean.")) });
    let speed = units.show(Kind::RotationalSpeed, setup.speed.value);
    order.push(match setup.grip.thrust {
        None => fill_plain("Part against its seat, clamp, guard closed. Up to {} in steps.", &[&speed]),
        Some(thrust) => fill_plain(
            "Part against its seat, clamp, Live centre in the tail end, at least {} of thrust, tool and holder clear of it; guard closed. Up to {} in steps.",
            &[&units.show(Kind::Force, thrust.value), &speed],
        ),
    });
    let first = say("First part: measure clamped and released.");
    order.push(if reuse {
        first.to_owned()
    } else {
        format!("{first} {}", say("Write the boring into the jaw record."))
    });
    order
}

/// The steps of boring the jaws.
fn boring(setup: &Setup, findings: &Findings, units: Units, order: &mut Vec<String>) {
    let (jaws, boring) = (&setup.jaws, &setup.boring);
    let length = |si| units.show(Kind::Length, si);
    let pressure = units.show(Kind::Pressure, jaws.boring_pressure.unwrap_or(setup.pressure).value);
    let own = setup.placing.plan.as_ref().and_then(|plan| plan.rings.get(plan.ring_used?));
    order.push(match own {
        None => fill_plain("Ring or plug in, clamp at {}. Every jaw bears.", &[&pressure]),
        Some(own) => fill_plain(
            "Ring “{}” ({}) in, clamp at {}. Every jaw bears.",
            &[&own.name, &length(own.ring.bearing_diameter(setup.grip.side)), &pressure],
        ),
    });
    if setup.placing.recut.is_some() {
        order.push(say("Touch off each jaw, spindle turned by hand. Enter diameter and run-out.").to_owned());
    }
    let taper = jaws.taper.value;
    let metal = both(libm::fabs(taper), units);
    let taper = if taper == 0.0 {
        say("straight, no taper").to_owned()
    } else if taper < 0.0 {
        fill_plain("taper {}, more metal at the base", &[&metal])
    } else {
        fill_plain("taper {}, more metal at the tip", &[&metal])
    };
    let (to, deep) = (length(2.0 * setup.bored_radius()), length(setup.grip.length.value));
    let speed = findings.get("boring.speed").filter(|speed| speed.value.is_ok());
    let speed = speed.map(|speed| steps::value(speed, units));
    order.push(match (setup.grip.side, speed) {
        (Side::Outside, Some(speed)) => fill_plain(
            "Guard closed, program proved in the air. Bore the jaws at {} to {}, {}; {} deep.",
            &[&speed, &to, &taper, &deep],
        ),
        (Side::Outside, None) => fill_plain(
            "Guard closed, program proved in the air. Bore the jaws to {}, {}; {} deep.",
            &[&to, &taper, &deep],
        ),
        (Side::Inside, Some(speed)) => fill_plain(
            "Guard closed, program proved in the air. Turn the jaws at {} to {}, {}; {} deep.",
            &[&speed, &to, &taper, &deep],
        ),
        (Side::Inside, None) => fill_plain(
            "Guard closed, program proved in the air. Turn the jaws to {}, {}; {} deep.",
            &[&to, &taper, &deep],
        ),
    });
    order.push(fill_plain(
        "Corner groove {} wide, {} deep; chamfer {}; break edges.",
        &[&length(boring.relief_width.value), &length(boring.relief_depth.value), &length(boring.chamfer.value)],
    ));
}

#[cfg(test)]
mod tests {
    use super::*;
    use holdround_core::setup::Entries;

    fn desk(typed: &[(&str, &str)]) -> Desk {
        let mut desk = Desk::new(Entries::default());
        for (path, text) in typed {
            desk.type_in(path, text);
        }
        desk
    }

    fn steps(typed: &[(&str, &str)]) -> Vec<String> {
        let desk = desk(typed);
        let setup = Setup::read(&desk.entries).expect("a valid set-up");
        let findings = holdround_core::evaluate(&setup);
        order(&desk, &setup, &findings)
    }

    const HELD: [(&str, &str); 3] =
        [("part.outside_diameter", "96 mm"), ("part.bore_diameter", "30 mm"), ("cuts.0.diameter", "96 mm")];
    const BACK: [(&str, &str); 4] =
        [("recut.jaws", "bored"), ("recut.standing", "96 mm"), ("recut.as_before", "yes"), ("recut.runout", "0 µm")];

    #[test]
    fn jaws_that_need_no_cut_are_neither_bored_nor_held_back() {
        let new = steps(&HELD);
        assert!(new.iter().any(|step| step.contains("Bore the jaws")), "{new:?}");
        let back = steps(&[&HELD[..], &BACK].concat());
        assert!(back.iter().any(|step| step.starts_with("Use the jaws as they are")), "{back:?}");
        assert!(!back.iter().any(|step| step.contains("Bore the jaws") || step.contains("Ring")), "{back:?}");
        assert!(!back.iter().any(|step| step.starts_with("Mount, bore")), "the verdict is good: {back:?}");
    }

    #[test]
    fn what_the_verdict_forbids_is_not_among_the_steps() {
        let ring = [("stroke.plan", "yes"), ("ring.bearing", "around")];
        for typed in [&ring[..], &[("run.pressure", "0.1 MPa")]] {
            let steps = steps(&[&HELD[..], typed].concat());
            assert!(steps[0].starts_with("Mount, bore and run nothing yet"), "{steps:?}");
            assert!(steps[1..].iter().all(|step| step.starts_with("No tooth is settled")), "nothing to do: {steps:?}");
        }
    }

    #[test]
    fn a_centre_stands_on_the_sheet_with_its_thrust() {
        let solid = [("part.bore_diameter", "0 mm"), ("grip.tail", "centre"), ("grip.thrust", "3 kN")];
        let steps = steps(&solid);
        assert!(steps.iter().any(|step| step.contains("Live centre in the tail end, at least 3 kN")), "{steps:?}");
    }

    #[test]
    fn a_tooth_that_does_not_serve_is_not_named_but_what_is_wrong_with_it_and_what_would_do() {
        for typed in [("stroke.tooth", "40"), ("stroke.least_wall", "40 mm")] {
            let sheet = steps(&[&HELD[..], &[("stroke.plan", "yes"), typed]].concat());
            let said = sheet.iter().find(|step| step.starts_with("No tooth is settled.")).expect("it is told");
            assert!(said.contains("would"), "with what would do: {said}");
            assert!(
                sheet[0].starts_with("Mount, bore and run nothing yet"),
                "and nothing is to be done on it: {sheet:?}"
            );
        }
    }

    #[test]
    fn the_ring_in_use_is_named_with_its_size() {
        let own = [
            ("stroke.plan", "yes"),
            ("rings.0.name", "Top shelf"),
            ("rings.0.outside", "150 mm"),
            ("rings.0.inside", "120 mm"),
            ("rings.0.height", "10 mm"),
            ("ring.used", "1"),
        ];
        let desk = desk(&[&HELD[..], &own].concat());
        let setup = Setup::read(&desk.entries).expect("a valid set-up");
        let mut steps = Vec::new();
        boring(&setup, &holdround_core::evaluate(&setup), desk.units, &mut steps);
        assert!(steps.iter().any(|step| step.starts_with("Ring “Top shelf” (150 mm) in, clamp at")), "{steps:?}");
    }
}
