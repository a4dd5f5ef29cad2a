//! What the tool would hit on its way.
//!
//! Every part of the tool is taken as the box around it, in the plane through the axis and the tip, and swept
//! along each move exactly. What turns with the chuck stands on both sides of the axis.

use alloc::vec::Vec;

use super::plan::{Plan, STAND_OFF};
use crate::grip::Side;

/// How far bar or shank stays behind the tip, m: our own value.
const BEHIND_TIP: f64 = 0.25e-3;
/// Overlap that is rounding, m.
const ROUNDING: f64 = 1e-9;
/// Farther than anything on a lathe, m.
const FAR: f64 = 1e3;

/// A part of the tool.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
pub enum ToolPart {
    /// The nose of the edge.
    Nose,
    /// The boring bar, or the shank of a tool for outside cuts.
    Bar,
    /// What holds it.
    Holder,
}

impl ToolPart {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Nose => "nose",
            Self::Bar => "bar or shank",
            Self::Holder => "holder",
        }
    }
}

/// Something in the way: a ring around the axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Obstacle {
    /// What it is.
    pub name: &'static str,
    /// From and to, radially, m.
    pub radial: [f64; 2],
    /// From and to along the axis, m, 0 at the front of the jaws after the skim.
    pub z: [f64; 2],
}

/// A move on which something would be hit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Collision {
    /// Number of the move in the plan, from 0.
    pub step: usize,
    /// Which part of the tool.
    pub part: ToolPart,
    /// What it hits.
    pub obstacle: &'static str,
}

/// A box in the plane of the tip: from and to across, from and to along the axis.
#[derive(Clone, Copy)]
struct Area {
    x: [f64; 2],
    z: [f64; 2],
}

/// The first move on which each part of the tool hits each obstacle, and the jaws themselves.
///
/// ```
/// use holdround_core::{grip::Side, program::{Cutting, JawCut, Obstacle, Plan, Tool, collisions}};
/// # let cut = JawCut {
/// #     side: Side::Outside, diameter: 0.1, taper: 0.0, depth: 0.02, chamfer: 0.0,
/// #     relief: [0.0; 2], standing: 0.092, inner: 0.08, skim: 0.0, skim_width: 5e-3,
/// # };
/// # let tool = Tool { nose: 0.4e-3, behind: 0.5, bar: 0.02, reach: 0.06, holder: 0.04 };
/// # let cutting = Cutting { depth: 1e-3, allowance: 0.2e-3, rough_feed: 0.15e-3, finish_feed: 0.08e-3, start: 0.05 };
/// let plan = Plan::new(&cut, &tool, &cutting)?;
/// assert!(collisions(&plan, &[]).is_empty());
/// let ring = Obstacle { name: "boring ring", radial: [0.048, 0.060], z: [-0.005, 0.005] };
/// assert_eq!(collisions(&plan, &[ring])[0].obstacle, "boring ring");
/// # Ok::<(), holdround_core::program::PlanError>(())
/// ```
#[must_use]
pub fn collisions(plan: &Plan, obstacles: &[Obstacle]) -> Vec<Collision> {
    let mut found: Vec<Collision> = Vec::new();
    let mut note = |step, part, obstacle| {
        if !found.iter().any(|known| known.part == part && known.obstacle == obstacle) {
            found.push(Collision { step, part, obstacle });
        }
    };
    let mut from = None;
    for (step, next) in plan.moves.iter().enumerate() {
        let to = [next.x / 2.0, next.z];
        let start = from.unwrap_or(to);
        for (part, area) in parts(plan, start) {
            let by = [to[0] - start[0], to[1] - start[1]];
            for obstacle in obstacles {
                let [near, far] = obstacle.radial;
                let both = [[near, far], [-far, -near]];
                if both.iter().any(|x| sweeps(area, by, Area { x: *x, z: obstacle.z })) {
                    note(step, part, obstacle.name);
                }
            }
            for (whom, name, jaws) in own(plan) {
                if whom.contains(&part) && sweeps(area, by, jaws) {
                    note(step, part, name);
                }
            }
        }
        from = Some(to);
    }
    found
}

/// The tool with its tip at a radius and z.
fn parts(plan: &Plan, [r, z]: [f64; 2]) -> [(ToolPart, Area); 3] {
    let tool = &plan.tool;
    let across = 2.0 * tool.nose;
    let nose_z = [z, z + across];
    match plan.cut.side {
        Side::Outside => {
            let edge = r - BEHIND_TIP;
            let axis = edge - tool.bar / 2.0;
            [
                (ToolPart::Nose, Area { x: [r - across, r], z: nose_z }),
                (ToolPart::Bar, Area { x: [edge - tool.bar, edge], z: [z + BEHIND_TIP, z + tool.reach] }),
                (
                    ToolPart::Holder,
                    Area { x: [axis - tool.holder / 2.0, axis + tool.holder / 2.0], z: [z + tool.reach, FAR] },
                ),
            ]
        }
        Side::Inside => {
            let edge = r + BEHIND_TIP;
            [
                (ToolPart::Nose, Area { x: [r, r + across], z: nose_z }),
                (ToolPart::Bar, Area { x: [edge, edge + tool.reach], z: [z + BEHIND_TIP, z + BEHIND_TIP + tool.bar] }),
                (
                    ToolPart::Holder,
                    Area { x: [r + tool.reach, FAR], z: [z + BEHIND_TIP, z + BEHIND_TIP + tool.holder] },
                ),
            ]
        }
    }
}

/// The jaws themselves: what each part of the tool must keep out of.
fn own(plan: &Plan) -> [(&'static [ToolPart], &'static str, Area); 4] {
    use ToolPart::{Bar, Holder, Nose};
    let cut = &plan.cut;
    let stands = cut.standing / 2.0;
    let front = cut.skim;
    let (metal, face, across) = match cut.side {
        Side::Outside => ([stands.min(cut.inner / 2.0), FAR], [stands, FAR], [-FAR, -stands]),
        Side::Inside => ([0.0, stands.max(cut.inner / 2.0)], [0.0, stands], [-FAR, -FAR]),
    };
    [
        (&[Nose, Bar], "jaws below the seat", Area { x: metal, z: [-FAR, -cut.depth] }),
        (&[Bar, Holder], "jaws across the axis", Area { x: across, z: [-FAR, front] }),
        (&[Holder], "front of the jaws", Area { x: face, z: [-FAR, front.min(STAND_OFF)] }),
        // A tool for outside cuts reaches over the seat, which stands out beyond what is cut.
        (&[Holder], "jaws below the seat", Area { x: metal, z: [-FAR, -cut.depth] }),
    ]
}

/// Whether a box moved along `by` enters another.
fn sweeps(area: Area, by: [f64; 2], into: Area) -> bool {
    let mut during = [0.0_f64, 1.0_f64];
    for (mine, other, step) in [(area.x, into.x, by[0]), (area.z, into.z, by[1])] {
        // Apart by this much before the move; they overlap while it lies between the two.
        let (enters, leaves) = (other[0] - mine[1] + ROUNDING, other[1] - mine[0] - ROUNDING);
        if step == 0.0 {
            if enters >= 0.0 || leaves <= 0.0 {
                return false;
            }
        } else {
            let (first, last) = (enters / step, leaves / step);
            during = [during[0].max(first.min(last)), during[1].min(first.max(last))];
        }
    }
    during[0] < during[1]
}
