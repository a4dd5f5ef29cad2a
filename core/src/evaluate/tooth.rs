//! The tooth as a finding: what is wrong with it, and what else would do.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::findings::{Finding, Step, term};
use crate::grip::Side;
use crate::quantity::Kind;
use crate::setup::Plan;
use crate::stroke::{Check, Choice, Placed, Remedy, Task, remedies};

const GEOMETRY: &str =
    "geometry of meshed serrations: on tooth k a groove of the blank sits midway between two of the master jaw";

/// Which tooth, and what is wrong with it.
pub(super) fn which(plan: &Plan, task: &Task, choice: &Choice, placed: &Placed) -> Finding {
    const NAME: &str = "Tooth of the master jaw for the blank's first groove";
    let master = &plan.master;
    let inward = task.jaw.side == Side::Outside;
    let step = Step {
        says: "The blank's first groove from its gripping end sits on this tooth. Tooth 1 is the innermost, between the first two grooves of the master jaw; on 0 and below the first groove hangs over its inner end",
        formula: if inward { "r_end = g + s + (k − ½) p − a" } else { "r_end = g + s + (k − ½) p + a" },
        given: [
            term("g", master.first_groove, Kind::Length),
            term("s", placed.bored_at, Kind::Length),
            term("k", f64::from(placed.tooth), Kind::Plain),
            term("p", master.serration.pitch, Kind::Length),
            term("a", plan.blank.first_groove, Kind::Length),
        ]
        .into(),
        result: term("r_end", placed.end, Kind::Length),
        source: GEOMETRY,
    };
    let finding = |says: Option<String>| {
        let finding = Finding::new("stroke.tooth", NAME, Kind::Plain, f64::from(placed.tooth));
        says.into_iter().fold(finding, Finding::caution)
    };
    let finding = if placed.fails.is_empty() {
        finding(None)
    } else if choice.fits() {
        finding(Some(format!("{} Tooth {} would do.", faults(&placed.fails), choice.best.tooth)))
    } else {
        let why = format!(
            "No tooth will do. Nearest comes tooth {}: {} {}",
            choice.best.tooth,
            faults(&choice.best.fails),
            help(plan, task)
        );
        Finding::refused("stroke.tooth", NAME, Kind::Plain, why)
    };
    finding.entry("stroke.tooth").step(step)
}

fn faults(fails: &[Check]) -> String {
    let words: Vec<_> = fails.iter().map(|check| fault(*check)).collect();
    let mut text = words.join("; ");
    text.push('.');
    text
}

/// What is wrong, in words.
pub(super) fn fault(check: Check) -> &'static str {
    match check {
        Check::Step => "too little metal under the part for the bore to clean up",
        Check::Behind => "nothing of the jaw is left behind the face",
        Check::Neighbours => "neighbouring jaws would meet, or reach past the axis",
        Check::Wall => "too little metal to a screw counterbore",
        Check::ScrewHead => "a screw head would stand above the seat",
        Check::NutInside => "the T-nuts leave the inner end of the master jaw",
        Check::NutOutside => "the T-nuts leave the outer end of the master jaw or the chuck body",
        Check::Swing => "the open jaws swing too wide",
        Check::Stroke => "the master jaw would stand beyond its stroke",
        Check::MiddleThird => "outside the middle third of the stroke",
        Check::Clearance => "the part does not pass with the clearance wanted",
    }
}

/// What else would do, as tried.
fn help(plan: &Plan, task: &Task) -> String {
    let pitch = plan.master.serration.pitch;
    let teeth = |by: f64| libm::round(by / pitch) as i32;
    let way = if plan.turned { "back" } else { "round" };
    let tried = remedies(&plan.master, &plan.blank, task).unwrap_or_default();
    let said: Vec<_> = tried
        .iter()
        .map(|remedy| match remedy {
            Remedy::TurnRound(placed) => format!("jaws turned {way}, on tooth {}", placed.tooth),
            Remedy::Extend(by, placed) => {
                format!("jaws longer at the gripping end by {} pitches, on tooth {}", teeth(*by), placed.tooth)
            }
            Remedy::TurnRoundAndExtend(by, placed) => format!(
                "jaws turned {way} and longer at the gripping end by {} pitches, on tooth {}",
                teeth(*by),
                placed.tooth
            ),
        })
        .collect();
    if said.is_empty() {
        "Neither jaws turned round nor longer ones would help: another blank or another chuck is needed.".to_string()
    } else {
        format!("What would do: {}.", said.join("; or "))
    }
}
