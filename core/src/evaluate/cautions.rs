//! What must be heeded: limits broken, what the model leaves out, and what stands on every job.

use alloc::vec::Vec;

use super::bore::TOO_LITTLE;
use super::hold::seat;
use super::recut::WASTED;
use crate::findings::{Caution, Finding, Mark, Weight};
use crate::jaw::BoredJaw;
use crate::setup::{GripFrom, Setup};
use crate::text::Text;

/// Cautions that stand wherever a number is acted on.
const STANDING: [&str; 6] = [
    "The chuck's plate and manual rule over every number here. Never exceed its speed, draw force, pressure or jaw height.",
    "Check the grip with a grip gauge. These are calculated figures, not a certificate.",
    "Guard closed. Stand clear of the plane of the jaws.",
    "Every jaw on the same tooth, every screw engaged and torqued, no jaw at the end of its stroke.",
    "Prove a program in the air and at low speed first. With constant surface speed, set a limit on spindle speed.",
    "Follow local rules. Have a qualified person approve the set-up.",
];

pub(super) fn of(setup: &Setup, jaw: Option<&BoredJaw>, found: &[Finding]) -> Vec<Caution> {
    let beyond = found.iter().filter(|finding| finding.mark() == Mark::Beyond).filter_map(|finding| {
        let limit = finding.limit.as_ref()?;
        // A headline repeats one of the findings it is the worst of.
        let repeated = finding.id.starts_with("shape.") && finding.id.matches('.').count() > 1;
        (!repeated).then(|| Caution {
            weight: Weight::Stop,
            says: Text::of("{} is beyond its limit: {}.").with(finding.name.clone()).with(limit.origin.clone()),
            entry: finding.entry,
        })
    });
    let wasted = found.iter().find(|finding| finding.id == WASTED).map(|finding| {
        (
            "The recut cuts away more jaw than one recut should: take another ring, or keep these jaws for another size.",
            finding.entry,
        )
    });
    let model = wasted.into_iter().chain(left_out(setup, jaw)).map(|(says, entry)| Caution {
        weight: Weight::Model,
        says: says.into(),
        entry,
    });
    let standing = STANDING.iter().map(|says| Caution { weight: Weight::Standing, says: (*says).into(), entry: None });
    beyond.chain(model).chain(standing).collect()
}

/// What the model leaves out that matters for this job.
fn left_out(setup: &Setup, jaw: Option<&BoredJaw>) -> Vec<(&'static str, Option<&'static str>)> {
    let mut out = Vec::new();
    out.push((
        "Friction between jaw and part is left out of the shape: it can hold some of the lobes back, or lock some in.",
        None,
    ));
    if jaw.is_some_and(|jaw| !jaw.cleans_up()) {
        out.push((
            "The step is too small for the bore to reach across the jaw: part of the face stays as it was.",
            Some("jaws.step"),
        ));
    }
    if !setup.bears_between() {
        out.push((TOO_LITTLE, Some("boring.relief_width")));
    }
    if seat(setup).is_none() {
        out.push(("The part does not rest on anything along the axis: only friction keeps it from being pushed into the chuck.", Some("grip.seat")));
    }
    if setup.grip.thrust.is_some() {
        out.push((
            "The hold counts on the centre: set the quill's pressure for its thrust, and stop the cut if it is lost. Keep tool and holder clear of it.",
            Some("grip.thrust"),
        ));
        out.push((
            "The centre's thrust presses the part on the jaw step: what it does to the part's shape is left out.",
            Some("grip.thrust"),
        ));
    }
    if setup.finish_pressure.is_some() {
        out.push((
            "Between roughing and finishing unclamp, and clamp again at the lower pressure: lowering it alone does not let the grip down.",
            Some("run.finish_pressure"),
        ));
        if !setup.cuts.iter().any(|cut| cut.finishing) {
            out.push((
                "No cut is marked as taken while finishing: the hold at that pressure is not judged.",
                Some("cuts.0.stage"),
            ));
        }
    }
    if setup.jaws.height > setup.chuck.reference_height {
        out.push((
            "The jaws are taller than the plate is given for: speed must come down too. Ask the chuck's manual by how much.",
            Some("jaws.height"),
        ));
    }
    if matches!(setup.chuck.grip_from, GripFrom::Plate { .. } | GripFrom::Chart { .. }) {
        out.push(("The grip is worked out, not measured. A dry chuck may give half.", Some("chuck.grip_from")));
    }
    out
}
