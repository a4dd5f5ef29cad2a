//! A blank jaw on one tooth: where everything on it stands, and what is wrong with that.

use alloc::vec::Vec;

use super::{Blank, MasterJaw};
use crate::grip::Side;
use crate::jaw::{BoredJaw, Jaw, Shape};

/// What the jaws are to do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Task {
    /// The jaw as it would be bored: its gripping radius is the bored radius, its step the wanted one.
    pub jaw: Jaw,
    /// Radii of the part where it is gripped, m: least, nominal, greatest.
    pub part: [f64; 3],
    /// What must pass when the jaws are open (outside grip), or closed (inside grip), m: a radius.
    pub passing: f64,
    /// Least metal between gripping face and counterbores, m.
    pub least_wall: f64,
    /// Least clearance per side for loading, m.
    pub least_clearance: f64,
    /// Greatest swing of the jaws, on radius, m.
    pub swing: Option<f64>,
    /// Where the jaws stand while they are bored.
    pub stand: Stand,
}

/// Where the jaws stand while they are bored.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Stand {
    /// At this position in the stroke, m.
    At(f64),
    /// On a ring that bears on the walls of the near counterbores at this radius, m.
    Counterbores(f64),
    /// On a plug between the gripping ends, or in a ring around them, of this radius, m.
    Ends(f64),
}

/// What can be wrong with a tooth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Check {
    /// Too little metal under the part: the bore would not clean up.
    Step,
    /// Nothing of the jaw is left behind the gripping face.
    Behind,
    /// Neighbouring jaws would meet, or a jaw would reach past the axis.
    Neighbours,
    /// Too little metal between gripping face and a counterbore.
    Wall,
    /// A screw head would stand above the seat.
    ScrewHead,
    /// The T-nuts leave the inner end of the master jaw.
    NutInside,
    /// The T-nuts leave the outer end of the master jaw, or the chuck body when open.
    NutOutside,
    /// The jaws swing too wide when open.
    Swing,
    /// The master jaw would have to stand beyond its stroke.
    Stroke,
    /// Bored or gripping outside the middle third of the stroke.
    MiddleThird,
    /// The part does not pass with the clearance wanted.
    Clearance,
}

/// A jaw on a tooth.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed {
    /// The tooth.
    pub tooth: i32,
    /// Position in the stroke when bored, m.
    pub bored_at: f64,
    /// Position in the stroke when gripping the least, the nominal and the greatest part, m.
    pub gripping_at: [f64; 3],
    /// Radius of the gripping end when bored, m.
    pub end: f64,
    /// Metal left under the part, m.
    pub step: f64,
    /// Metal between gripping face and the nearest counterbore, m.
    pub wall: f64,
    /// Radii of near and far screw when bored, m.
    pub screws: [f64; 2],
    /// Radii of the inner and outer end of the T-nut, fully closed, m.
    pub nut: [f64; 2],
    /// Radius swung by the farthest corner, fully open, m.
    pub swing: f64,
    /// What the jaws can move away from the part along their own axes, m.
    pub travel: f64,
    /// Clearance per side for what must pass, at the edges of the gripping faces, m.
    pub clearance: f64,
    /// Everything that is wrong.
    pub fails: Vec<Check>,
}

/// Height of a socket screw's head as a share of its counterbore: 12 mm in 20 mm for M12 (head: ISO 4762;
/// counterbore: DIN 974-1; both from memory), rounded up.
pub(crate) const HEAD_IN_COUNTERBORE: f64 = 0.62;

/// +1 where the body of the jaw lies outward of its gripping end, -1 where it lies inward.
pub(crate) const fn outward(side: Side) -> f64 {
    match side {
        Side::Outside => 1.0,
        Side::Inside => -1.0,
    }
}

/// Radius of the gripping end, m, on a tooth with the master jaw at a position.
pub(super) fn end_at(master: &MasterJaw, blank: &Blank, side: Side, tooth: i32, position: f64) -> f64 {
    let groove = master.first_groove + position + (f64::from(tooth) - 0.5) * master.serration.pitch;
    groove - outward(side) * blank.first_groove
}

/// The jaw on a tooth. `blank` must have passed its own check; see [`super::choose`].
///
/// ```
/// # use holdround_core::jaw::{Jaw, Shape};
/// # use holdround_core::{grip::Side, stroke::*};
/// # let master = MasterJaw { stroke: 4e-3, first_groove: 0.035, face: 0.06, body: 0.1, serration: SERRATIONS[3].1 };
/// # let blank = Blank { length: 0.07, first_groove: 0.0015, near_screw: 0.03, far_screw: 0.05, counterbore: 0.02,
/// #     counterbore_depth: 0.035, nut: 0.03 };
/// # let jaw = Jaw { shape: Shape::Ordinary { width: 0.04 }, side: Side::Outside, count: 3, length: 0.07, height: 0.045,
/// #     step: 0.01, bored_depth: 0.015, grip_radius: 0.05 };
/// # let task = Task { jaw, part: [0.05; 3], passing: 0.05, least_wall: 3e-3, least_clearance: 0.5e-3, swing: None,
/// #     stand: Stand::At(2e-3) };
/// // The gripping end stands at 35 + 2 mm and 1.5 pitches of 3 mm, less 1.5 mm to the first groove.
/// let placed = place(&master, &blank, &task, 2);
/// assert!((placed.end - 0.04).abs() < 1e-12 && (placed.step - 0.01).abs() < 1e-12);
/// ```
#[must_use]
pub fn place(master: &MasterJaw, blank: &Blank, task: &Task, tooth: i32) -> Placed {
    let side = task.jaw.side;
    let sign = outward(side);
    let bored = task.jaw.grip_radius;
    let closed = end_at(master, blank, side, tooth, 0.0);
    let bored_at = match task.stand {
        Stand::At(position) => position,
        Stand::Counterbores(radius) => radius - sign * blank.bearing_wall() - closed,
        Stand::Ends(radius) => radius - closed,
    };
    let end = closed + bored_at;
    let step = sign * (bored - end);
    let solid = BoredJaw::new(Jaw { step: step.max(0.0), length: blank.length, ..task.jaw });
    let half_angle = solid.as_ref().map_or(0.0, BoredJaw::contact_half_angle);
    let travel = match side {
        Side::Outside => master.stroke - bored_at,
        Side::Inside => solid.as_ref().map_or(bored_at, |jaw| bored_at.min(jaw.inward_clearance())),
    };
    // Moved off, the face is no longer round the axis: its edges stand nearer the part than its middle.
    let square = bored * bored + travel * travel + 2.0 * sign * bored * travel * libm::cos(half_angle);
    let clearance = sign * (crate::sqrt(square.max(0.0)) - task.passing);
    let nut_middle = closed + sign * blank.nut_middle();
    let farthest = master.stroke + if side == Side::Outside { closed + blank.length } else { closed };
    let mut placed = Placed {
        tooth,
        bored_at,
        gripping_at: task.part.map(|radius| bored_at + radius - bored),
        end,
        step,
        wall: blank.wall_at(step),
        screws: [blank.near_screw, blank.far_screw].map(|screw| end + sign * screw),
        nut: [nut_middle - 0.5 * blank.nut, nut_middle + 0.5 * blank.nut],
        swing: match task.jaw.shape {
            Shape::Ordinary { width } => libm::hypot(farthest, 0.5 * width),
            Shape::Wide { .. } | Shape::Pie { .. } => farthest,
        },
        travel,
        clearance,
        fails: Vec::new(),
    };
    placed.fails = fails(master, blank, task, &placed, solid.as_ref().ok());
    placed
}

fn fails(master: &MasterJaw, blank: &Blank, task: &Task, placed: &Placed, solid: Option<&BoredJaw>) -> Vec<Check> {
    // Rounding of unit conversions is no fault.
    let rounding = 1e-9 * task.jaw.grip_radius;
    let less = |value: f64, least: f64| value < least - rounding;
    let cleans = solid.is_none_or(BoredJaw::cleans_up);
    let behind = placed.step < blank.length - rounding;
    let third = master.stroke / 3.0;
    let positions = || placed.gripping_at.into_iter().chain([placed.bored_at]);
    let covered = |screw: f64| screw < placed.step;
    let head_below = blank.counterbore_depth - HEAD_IN_COUNTERBORE * blank.counterbore;
    [
        (Check::Step, less(placed.step, 0.0) || !cleans),
        (Check::Behind, !behind),
        (Check::Neighbours, solid.is_none() && behind),
        (Check::Wall, less(placed.wall, task.least_wall)),
        (Check::ScrewHead, covered(blank.near_screw) && less(head_below, task.jaw.bored_depth)),
        (Check::NutInside, less(placed.nut[0], master.first_groove)),
        (Check::NutOutside, less((master.first_groove + master.face).min(master.body - master.stroke), placed.nut[1])),
        (Check::Swing, task.swing.is_some_and(|most| less(most, placed.swing))),
        (Check::Stroke, positions().any(|at| less(at, 0.0) || less(master.stroke, at))),
        (Check::MiddleThird, positions().any(|at| less(at, third) || less(2.0 * third, at))),
        (Check::Clearance, less(placed.clearance, task.least_clearance)),
    ]
    .into_iter()
    .filter_map(|(check, fails)| fails.then_some(check))
    .collect()
}
