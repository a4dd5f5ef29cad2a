//! The tooth as a finding: what is wrong with it, and what else would do.

use alloc::string::ToString;

use crate::findings::{Finding, Step, term};
use crate::grip::Side;
use crate::quantity::Kind;
use crate::setup::Plan;
use crate::stroke::{Check, Choice, Placed, Remedy, Task, remedies};
use crate::text::Text;

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
    let finding = |says: Option<Text>| {
        let finding = Finding::new("stroke.tooth", NAME, Kind::Plain, f64::from(placed.tooth));
        says.into_iter().fold(finding, Finding::caution)
    };
    let finding = if placed.fails.is_empty() {
        finding(None)
    } else if choice.fits() {
        finding(Some(Text::of("{} Tooth {} would do.").with(faults(&placed.fails)).with(tooth_words(&choice.best))))
    } else {
        let why = Text::of("No tooth will do. Nearest comes tooth {}: {} {}")
            .with(tooth_words(&choice.best))
            .with(faults(&choice.best.fails))
            .with(help(plan, task));
        Finding::refused("stroke.tooth", NAME, Kind::Plain, why)
    };
    finding.entry("stroke.tooth").step(step)
}

fn faults(fails: &[Check]) -> Text {
    Text::row(fails.iter().map(|check| fault(*check).into()), "; ").then(".")
}

fn tooth_words(placed: &Placed) -> Text {
    Text::number(placed.tooth.to_string())
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
fn help(plan: &Plan, task: &Task) -> Text {
    let pitch = plan.master.serration.pitch;
    let pitches = |by: f64| Text::number((libm::round(by / pitch) as i32).to_string());
    let way = if plan.turned { "back" } else { "round" };
    let tried = remedies(&plan.master, &plan.blank, task).unwrap_or_default();
    let said = tried.iter().map(|remedy| match remedy {
        Remedy::TurnRound(placed) => Text::of("jaws turned {}, on tooth {}").with(way).with(tooth_words(placed)),
        Remedy::Extend(by, placed) => Text::of("jaws longer at the gripping end by {} pitches, on tooth {}")
            .with(pitches(*by))
            .with(tooth_words(placed)),
        Remedy::TurnRoundAndExtend(by, placed) => {
            Text::of("jaws turned {} and longer at the gripping end by {} pitches, on tooth {}")
                .with(way)
                .with(pitches(*by))
                .with(tooth_words(placed))
        }
    });
    if tried.is_empty() {
        "Neither jaws turned round nor longer ones would help: another blank or another chuck is needed.".into()
    } else {
        Text::of("What would do: {}.").with(Text::row(said, "; or "))
    }
}
