//! The tooth, and where in the stroke the jaws are bored and grip, as findings.

use alloc::vec::Vec;

use super::placing::{Line, refuse, tell_length};
use super::tooth;
use crate::boring_ring::Bearing;
use crate::findings::{Finding, Placing, Scene, Sense, Tooth};
use crate::grip::Side;
use crate::jaw::Shape;
use crate::quantity::Kind;
use crate::setup::{Plan, Setup, Toward};
use crate::stroke::{Check, Choice, Placed, Stand, Task, choose, place};
use crate::text::Text;

const SKETCH: &str = "geometry of the jaw on its tooth";
const MIDDLE: &str = "the middle of the stroke: common practice, no source";
/// How far the step of a tooth may be from the one entered with the jaws before that is told, m.
const SAME_STEP: f64 = 0.05e-3;

/// Chooses the tooth; the jaws as they stand on it, unless no tooth can be told at all.
pub(super) fn tell(setup: &Setup, plan: &Plan, found: &mut Vec<Finding>, scene: &mut Scene) -> Option<Placed> {
    let task = task(setup, plan);
    let choice = match choose(&plan.master, &plan.blank, &task) {
        Ok(choice) => choice,
        Err(error) => {
            let why = Text::of("No tooth can be told: {}.").with(&error);
            refuse(found, "stroke.tooth", "Tooth", Kind::Plain, why, "stroke.plan");
            return None;
        }
    };
    let placed = match plan.tooth {
        Some(tooth) => place(&plan.master, &plan.blank, &task, tooth),
        None => choice.best.clone(),
    };
    found.push(tooth::which(plan, &task, &choice, &placed));
    positions(plan, &placed, found);
    metal(setup, plan, &task, &placed, found);
    nuts(plan, &placed, found);
    room(setup, plan, &task, &placed, found);
    scene.placing = Some(drawn(plan, &task, &choice, &placed));
    Some(placed)
}

fn task(setup: &Setup, plan: &Plan) -> Task {
    let nominal = setup.gripped_radius();
    let (lower, upper) = (setup.grip.lower_deviation.value / 2.0, setup.grip.upper_deviation.value / 2.0);
    let bored = setup.bored_radius();
    Task {
        jaw: crate::jaw::Jaw { grip_radius: bored, ..setup.jaw() },
        part: [nominal + lower, nominal, nominal + upper],
        passing: passing(setup, plan),
        least_wall: plan.least_wall,
        least_clearance: plan.least_clearance,
        swing: setup.chuck.max_swing.map(|swing| swing.value / 2.0),
        stand: stand(setup, plan),
    }
}

/// The ring in use decides where the jaws stand, or else the position typed, or else the middle of the stroke.
fn stand(setup: &Setup, plan: &Plan) -> Stand {
    let ring = plan.ring_used.and_then(|at| plan.rings.get(at)).filter(|_| plan.bearing.stops(setup.grip.side));
    match (ring, plan.bearing) {
        (Some(own), Bearing::Counterbores) => Stand::Counterbores(own.ring.bearing_diameter(setup.grip.side) / 2.0),
        (Some(own), Bearing::Plug | Bearing::Around) => Stand::Ends(own.ring.bearing_diameter(setup.grip.side) / 2.0),
        _ => Stand::At(plan.bored_at.unwrap_or(plan.master.stroke / 2.0)),
    }
}

/// What must pass the jaws, m on radius: the part from its chuck side to the end of the grip, at the end of its
/// tolerance.
fn passing(setup: &Setup, plan: &Plan) -> f64 {
    let (start, end) = (setup.grip.start.value, (setup.grip.start + setup.grip.length).value);
    let outside = setup.grip.side == Side::Outside;
    let farther = |a: f64, b: f64| if outside { a.max(b) } else { a.min(b) };
    let tolerance = if outside { setup.grip.upper_deviation } else { setup.grip.lower_deviation };
    let gripped = setup.part.diameters_at(start, Toward::Far)[usize::from(!outside)] + tolerance.value;
    let mut passing = plan.passing.map_or(gripped, |typed| farther(gripped, typed));
    let mut from = 0.0;
    for step in setup.part.profile.steps() {
        if from < end {
            let [near, far] = if outside { step.outer } else { step.inner };
            passing = farther(passing, farther(near, far));
        }
        from += step.length;
    }
    passing / 2.0
}

fn positions(plan: &Plan, placed: &Placed, found: &mut Vec<Finding>) {
    let stroke = plan.master.stroke;
    let entry = match (plan.ring_used, plan.bored_at) {
        (Some(_), _) => "ring.used",
        (None, Some(_)) => "stroke.bored_at",
        (None, None) => "stroke.travel",
    };
    tell_length(
        found,
        &Line {
            id: "stroke.bored",
            name: "Master jaw while bored, from fully closed",
            entry,
            says: "Where the ring in use holds the jaws, or as typed, or else in the middle of the stroke",
            formula: "s_b",
            given: &["S"],
            symbol: "s_b",
            source: MIDDLE,
        },
        placed.bored_at,
        None,
        "",
        &[stroke],
    );
    let [least, nominal, most] = placed.gripping_at;
    tell_length(
        found,
        &Line {
            id: "stroke.gripping",
            name: "Master jaw while gripping, from fully closed",
            entry,
            says: "A larger part holds the jaws farther out, by its radius over the bored one; the range is that of the part's tolerance",
            formula: "s = s_b + R_part − R_bored",
            given: &["s_b"],
            symbol: "s",
            source: SKETCH,
        },
        nominal,
        None,
        "",
        &[placed.bored_at],
    );
    if let Some(gripping) = found.last_mut() {
        gripping.band = Some((least, most));
    }
    let off = |at: f64| libm::fabs(at - stroke / 2.0);
    let worst = placed.gripping_at.into_iter().chain([placed.bored_at]).map(off).fold(0.0, f64::max);
    // What is less than a nanometre is rounding.
    let worst = if worst < 1e-9 { 0.0 } else { worst };
    tell_length(
        found,
        &Line {
            id: "stroke.from_middle",
            name: "Farthest from the middle of the stroke",
            entry,
            says: "Bored or gripping, over the part's tolerance; the middle third ends a sixth of the stroke from its middle",
            formula: "|s − S/2| ≤ S/6",
            given: &["S"],
            symbol: "|s − S/2|",
            source: MIDDLE,
        },
        worst,
        Some((Sense::AtMost, stroke / 6.0, "the middle third of the stroke: common practice, no source")),
        if placed.fails.contains(&Check::Stroke) {
            "Beyond an end of the stroke: the jaws cannot stand there, and would not grip."
        } else {
            ""
        },
        &[stroke],
    );
}

fn metal(setup: &Setup, plan: &Plan, task: &Task, placed: &Placed, found: &mut Vec<Finding>) {
    let outside = task.jaw.side == Side::Outside;
    let differs = libm::fabs(placed.step - setup.jaws.step.value) > SAME_STEP;
    tell_length(
        found,
        &Line {
            id: "stroke.step",
            name: "Step left under the part by this tooth",
            entry: "jaws.step",
            says: "From the bored face to the gripping end of the blank",
            formula: if outside { "R_bored − r_end" } else { "r_end − R_bored" },
            given: &["R_bored", "r_end"],
            symbol: "step",
            source: SKETCH,
        },
        placed.step,
        Some((Sense::AtLeast, rise(task), "a bore across the whole width of the jaw")),
        if differs {
            "Enter this step with the jaws: mass, spring and shape are worked out with the one typed there."
        } else {
            ""
        },
        &[task.jaw.grip_radius, placed.end],
    );
    let blank = &plan.blank;
    tell_length(
        found,
        &Line {
            id: "stroke.wall",
            name: "Metal from the bored face to a screw counterbore",
            entry: "stroke.tooth",
            says: "The nearest of the two counterbores, on the middle of the jaw",
            formula: "w = |step − x| − c/2",
            given: &["step", "x₁", "x₂", "c"],
            symbol: "w",
            source: SKETCH,
        },
        placed.wall,
        Some((Sense::AtLeast, plan.least_wall, "the least metal wanted")),
        if placed.fails.contains(&Check::ScrewHead) {
            "A screw lies under the part and its counterbore is too shallow for the head: bore less deep or counterbore deeper."
        } else {
            ""
        },
        &[placed.step, blank.near_screw, blank.far_screw, blank.counterbore],
    );
}

/// How far the bored arc of a flat-ended jaw rises over its width, m: the least step that cleans up.
fn rise(task: &Task) -> f64 {
    match (task.jaw.shape, task.jaw.side) {
        (Shape::Ordinary { width }, Side::Outside) => {
            let (radius, half) = (task.jaw.grip_radius, 0.5 * width);
            radius - crate::sqrt((radius * radius - half * half).max(0.0))
        }
        _ => 0.0,
    }
}

fn nuts(plan: &Plan, placed: &Placed, found: &mut Vec<Finding>) {
    let master = &plan.master;
    let given = [0.5 * (placed.screws[0] + placed.screws[1]) - placed.bored_at, plan.blank.nut];
    tell_length(
        found,
        &Line {
            id: "stroke.nut_inner",
            name: "T-nut's inner end from the axis, closed",
            entry: "stroke.tooth",
            says: "From midway between the screws half the nut's length inward",
            formula: "r_screws − l_nut / 2",
            given: &["r_screws", "l_nut"],
            symbol: "r",
            source: SKETCH,
        },
        placed.nut[0],
        Some((Sense::AtLeast, master.first_groove, "the inner end of the master jaw's face")),
        "",
        &given,
    );
    let face = master.first_groove + master.face;
    let body = master.body - master.stroke;
    tell_length(
        found,
        &Line {
            id: "stroke.nut_outer",
            name: "T-nut's outer end from the axis, closed",
            entry: "stroke.tooth",
            says: "From midway between the screws half the nut's length outward; open, it stands farther out by the stroke",
            formula: "r_screws + l_nut / 2",
            given: &["r_screws", "l_nut"],
            symbol: "r",
            source: SKETCH,
        },
        placed.nut[1],
        Some(if face < body {
            (Sense::AtMost, face, "the outer end of the master jaw's face")
        } else {
            (Sense::AtMost, body, "the chuck body, less the stroke")
        }),
        "",
        &given,
    );
}

fn room(setup: &Setup, plan: &Plan, task: &Task, placed: &Placed, found: &mut Vec<Finding>) {
    let outside = task.jaw.side == Side::Outside;
    tell_length(
        found,
        &Line {
            id: "stroke.travel",
            name: if outside { "A jaw opens for loading by" } else { "A jaw closes for loading by" },
            entry: "stroke.travel",
            says: if outside {
                "What is left of the stroke, along the jaw's own axis"
            } else {
                "What the jaws have opened since fully closed, or until neighbours meet"
            },
            formula: if outside { "S − s_b" } else { "s_b" },
            given: &["S", "s_b"],
            symbol: "δ",
            source: SKETCH,
        },
        placed.travel,
        None,
        "",
        &[plan.master.stroke, placed.bored_at],
    );
    tell_length(
        found,
        &Line {
            id: "stroke.clearance",
            name: "Clearance for loading, per side",
            entry: "stroke.least_clearance",
            says: "At the edges of the faces, which come nearer the part than their middles once the jaws have moved",
            formula: if outside {
                "√(R² + δ² + 2 R δ cos β) − R_pass"
            } else {
                "R_pass − √(R² + δ² − 2 R δ cos β)"
            },
            given: &["R", "δ", "R_pass"],
            symbol: "clearance",
            source: "law of cosines",
        },
        placed.clearance,
        Some((Sense::AtLeast, plan.least_clearance, "the clearance wanted")),
        "",
        &[task.jaw.grip_radius, placed.travel, task.passing],
    );
    let swing = setup.chuck.max_swing;
    tell_length(
        found,
        &Line {
            id: "stroke.swing",
            name: "Swing of the open jaws, on diameter",
            entry: "chuck.max_swing",
            says: "Circle of the farthest corner of a jaw, fully open",
            formula: "D = 2 r_corner",
            given: &["r_corner"],
            symbol: "D",
            source: SKETCH,
        },
        2.0 * placed.swing,
        swing.map(|limit| (Sense::AtMost, limit.value, "the chuck's manual or guard")),
        "",
        &[placed.swing],
    );
}

fn drawn(plan: &Plan, task: &Task, choice: &Choice, placed: &Placed) -> Placing {
    let master = &plan.master;
    let inner = master.first_groove + placed.bored_at;
    let far = placed.end + crate::stroke::outward(task.jaw.side) * plan.blank.length;
    Placing {
        tooth: placed.tooth,
        pitch: master.serration.pitch,
        tooth_height: master.serration.height(),
        stroke: master.stroke,
        bored_at: placed.bored_at,
        gripping_at: placed.gripping_at,
        master: [inner, inner + master.face],
        jaw: [placed.end, far],
        bored_radius: task.jaw.grip_radius,
        screws: placed.screws,
        counterbore: [plan.blank.counterbore, plan.blank.counterbore_depth],
        nut: placed.nut.map(|radius| radius + placed.bored_at),
        travel: placed.travel,
        teeth: choice.best_first(task.jaw.step).into_iter().filter(|placed| in_face(placed)).map(tried).collect(),
        ..Placing::default()
    }
}

/// Teeth at which the nuts leave the master jaw are not worth a line.
fn in_face(placed: &Placed) -> bool {
    !placed.fails.iter().any(|check| matches!(check, Check::NutInside | Check::NutOutside))
}

fn tried(placed: &Placed) -> Tooth {
    Tooth {
        tooth: placed.tooth,
        bored_at: placed.bored_at,
        step: placed.step,
        wall: placed.wall,
        clearance: placed.clearance,
        faults: placed.fails.iter().map(|check| tooth::fault(*check)).collect(),
    }
}
