//! Properties of planned paths, over random jaws of either grip.

use super::*;
use crate::grip::Side;
use alloc::vec;
use alloc::vec::Vec;
use proptest::prelude::*;

fn any_case() -> impl Strategy<Value = (JawCut, Tool, Cutting)> {
    let shape = (any::<bool>(), 0.03..0.4_f64, 0.006..0.06_f64, 0.5e-3..12e-3_f64, -1.0..1.0_f64);
    let corner = (0.0..1.0_f64, any::<bool>(), 0.1e-3..0.8e-3_f64, 0.0..1e-3_f64);
    let tool = (0.2e-3..1.2e-3_f64, 0.25..0.9_f64);
    let cutting = (0.3e-3..2e-3_f64, 0.05e-3..0.3e-3_f64);
    (shape, corner, tool, cutting).prop_map(|(shape, corner, (nose, behind), (depth_of_cut, allowance))| {
        let (outside, diameter, depth, stock, taper) = shape;
        let (chamfer, grooved, relief, skim) = corner;
        let tool = Tool { nose, behind, bar: 0.01, reach: 0.1, holder: 0.02 };
        let sign = if outside { 1.0 } else { -1.0 };
        let width = least_relief_width(relief, &tool) * 1.05 + 0.1e-3;
        let cut = JawCut {
            side: if outside { Side::Outside } else { Side::Inside },
            diameter,
            taper: taper * 0.1e-3,
            depth,
            chamfer: chamfer * 1e-3,
            relief: if grooved { [width, relief] } else { [0.0; 2] },
            standing: diameter - sign * 2.0 * stock,
            inner: diameter - sign * 2.0 * (stock + 2e-3),
            skim,
            skim_width: 5e-3,
        };
        let cutting =
            Cutting { depth: depth_of_cut, allowance, rough_feed: 0.15e-3, finish_feed: 0.08e-3, start: 0.05 };
        (cut, tool, cutting)
    })
}

/// Distance of a point from a line of points.
fn apart(point: [f64; 2], line: &[[f64; 2]]) -> f64 {
    line.windows(2)
        .map(|ends| {
            let [a, b] = [ends[0], ends[1]];
            let (du, dz) = (b[0] - a[0], b[1] - a[1]);
            let squared = du * du + dz * dz;
            let along = if squared > 0.0 { ((point[0] - a[0]) * du + (point[1] - a[1]) * dz) / squared } else { 0.0 };
            let share = along.clamp(0.0, 1.0);
            libm::hypot(point[0] - a[0] - share * du, point[1] - a[1] - share * dz)
        })
        .fold(f64::INFINITY, f64::min)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn the_nose_leaves_the_shape_wanted_and_never_cuts_past_it((cut, tool, cutting) in any_case()) {
        let Ok(plan) = Plan::new(&cut, &tool, &cutting) else { return Ok(()) };
        let shape = swept(&plan.moves, tool.nose, cut.sign());
        let wanted: Vec<[f64; 2]> =
            cut.corners(&tool).unwrap().into_iter().map(|([u, z], _)| [cut.sign() * u, z]).collect();
        let farthest = 3.0 * (tool.nose + 2.0 * STAND_OFF);
        for corner in &wanted {
            // In an inner corner the nose leaves its own diagonal, a little more where the taper makes it acute.
            let most = 1.05 * tool.nose * (core::f64::consts::SQRT_2 - 1.0) + 1e-9;
            prop_assert!(apart(*corner, &shape) <= most, "{corner:?} is missed by {}", apart(*corner, &shape));
        }
        for share in [0.3, 0.5, 0.6] {
            // Points of the face between chamfer and groove are met exactly.
            let (from, to) = (-cut.chamfer, cut.relief[0] - cut.depth);
            let z = from + share * (to - from);
            if to < from && z > tool.nose - cut.depth {
                let off = apart([cut.sign() * cut.face(z), z], &shape);
                prop_assert!(off < 1e-9, "the face at {z} is missed by {off}");
            }
        }
        for [r, z] in shape {
            let u = cut.sign() * r;
            // The groove runs parallel to the axis.
            let face = if z < cut.relief[0] - cut.depth { cut.face(-cut.depth).max(cut.face(z)) + cut.relief[1] } else { cut.face(z) };
            let open = if z > -cut.chamfer { cut.chamfer + z.max(0.0) + farthest } else { 0.0 };
            prop_assert!(u <= face + open + 1e-9, "cuts past the face at {r}, {z}");
            prop_assert!(z >= -cut.depth - 1e-9, "cuts past the seat at {r}, {z}");
        }
    }

    #[test]
    fn rapid_moves_stay_in_the_air((cut, tool, cutting) in any_case()) {
        let Ok(plan) = Plan::new(&cut, &tool, &cutting) else { return Ok(()) };
        // The tip on its way never is where metal still stands: kept as the depth cut at each of many stations.
        let top = cut.stands() + 30e-3;
        let cells = 3000_usize;
        let pitch = (top - cut.stands()) / cells as f64;
        let mut height = vec![cut.skim; cells];
        let mut from = [cut.stands() - STAND_OFF, cutting.start];
        for step in &plan.moves {
            let to = [cut.sign() * step.x / 2.0, step.z];
            for at in 0..=400 {
                let share = f64::from(at) / 400.0;
                let u = from[0] + share * (to[0] - from[0]);
                let z = from[1] + share * (to[1] - from[1]);
                // The nose is as wide as its circle at that height.
                let last = (u - cut.stands()) / pitch;
                let first = (last - 2.0 * tool.nose / pitch).max(0.0) as usize;
                let under_tip = height.iter_mut().enumerate().take(last.max(0.0) as usize).skip(first);
                for (cell, standing) in under_tip {
                    let middle = cut.stands() + (cell as f64 + 0.5) * pitch;
                    let off = middle - (u - tool.nose);
                    let under = z + tool.nose - libm::sqrt((tool.nose * tool.nose - off * off).max(0.0));
                    if step.feed > 0.0 {
                        *standing = standing.min(under);
                    } else {
                        prop_assert!(under > *standing - 2e-6, "{:?} to {to:?} hits {middle}", step.purpose);
                    }
                }
            }
            from = to;
        }
    }

    #[test]
    fn roughing_never_takes_more_than_its_depth((cut, tool, cutting) in any_case()) {
        let Ok(plan) = Plan::new(&cut, &tool, &cutting) else { return Ok(()) };
        let mut at = cut.stands();
        for step in plan.moves.iter().filter(|step| step.purpose == Purpose::Rough) {
            let u = cut.sign() * step.x / 2.0;
            prop_assert!(u - at <= cutting.depth * (1.0 + 1e-6), "{u} after {at}");
            at = u;
        }
        prop_assert!(cut.face(0.0) - at >= cutting.allowance - 1e-9 || plan.passes == 0, "the allowance is left");
    }

    #[test]
    fn both_grips_are_cut_alike((cut, tool, cutting) in any_case()) {
        // Mirrored about a circle: what is bored on one side is turned on the other.
        let Ok(plan) = Plan::new(&cut, &tool, &cutting) else { return Ok(()) };
        let about = 1.0;
        let other = JawCut {
            side: if cut.side == Side::Outside { Side::Inside } else { Side::Outside },
            diameter: about - cut.diameter,
            standing: about - cut.standing,
            inner: about - cut.inner,
            ..cut
        };
        let twin = Plan::new(&other, &tool, &cutting).unwrap();
        prop_assert_eq!(plan.moves.len(), twin.moves.len(), "the same moves");
        for (a, b) in plan.moves.iter().zip(&twin.moves) {
            prop_assert!((a.x + b.x - about).abs() < 1e-9 && (a.z - b.z).abs() < 1e-9, "{a:?} and {b:?}");
        }
    }
}

const CUT: JawCut = JawCut {
    side: Side::Outside,
    diameter: 0.1,
    taper: 0.02e-3,
    depth: 0.02,
    chamfer: 0.5e-3,
    relief: [2e-3, 0.5e-3],
    standing: 0.092,
    inner: 0.08,
    skim: 0.25e-3,
    skim_width: 5e-3,
};
const TOOL: Tool = Tool { nose: 0.4e-3, behind: 0.5, bar: 0.02, reach: 0.06, holder: 0.04 };
const CUTTING: Cutting =
    Cutting { depth: 1e-3, allowance: 0.2e-3, rough_feed: 0.15e-3, finish_feed: 0.08e-3, start: 0.05 };

#[test]
fn what_cannot_be_planned_is_refused_by_name() {
    let refused = |cut: JawCut, tool: Tool, cutting: Cutting| Plan::new(&cut, &tool, &cutting).unwrap_err();
    assert_eq!(refused(JawCut { standing: 0.1001, ..CUT }, TOOL, CUTTING), PlanError::NothingToCut, "too large");
    assert_eq!(refused(JawCut { diameter: f64::NAN, ..CUT }, TOOL, CUTTING), PlanError::Size, "no number");
    assert_eq!(refused(JawCut { chamfer: 0.019, ..CUT }, TOOL, CUTTING), PlanError::NoFace, "all chamfer");
    assert_eq!(refused(CUT, Tool { behind: 0.05, ..TOOL }, CUTTING), PlanError::Behind, "rubs in the groove");
    let narrow = refused(JawCut { relief: [1e-3, 0.5e-3], ..CUT }, TOOL, CUTTING);
    assert!(matches!(narrow, PlanError::ReliefNarrow { least } if least > 1e-3), "{narrow:?}");
    assert_eq!(refused(CUT, TOOL, Cutting { depth: 1e-6, ..CUTTING }), PlanError::Passes, "thousands of passes");
    assert_eq!(refused(JawCut { standing: 1e-3, ..CUT }, TOOL, CUTTING), PlanError::NoRoom, "no opening");
}

#[test]
fn a_bar_too_large_for_the_opening_and_a_holder_too_near_are_seen() {
    let hits = |tool: Tool| collisions(&Plan::new(&CUT, &tool, &CUTTING).unwrap(), &[]);
    assert!(hits(TOOL).is_empty(), "20 mm bar in a 92 mm opening: {:?}", hits(TOOL));
    let thick = hits(Tool { bar: 0.095, ..TOOL });
    assert_eq!((thick[0].part, thick[0].obstacle), (ToolPart::Bar, "jaws across the axis"), "{thick:?}");
    let short = hits(Tool { reach: 0.015, holder: 0.15, ..TOOL });
    assert!(short.iter().any(|hit| hit.part == ToolPart::Holder), "20 mm deep with 15 mm of bar: {short:?}");
}

#[test]
fn the_move_that_hits_the_ring_is_named() {
    let plan = Plan::new(&CUT, &TOOL, &CUTTING).unwrap();
    let hits = |radial, z| collisions(&plan, &[Obstacle { name: "ring", radial, z }]);
    assert!(hits([0.055, 0.07], [-0.01, -0.0005]).is_empty(), "sunk beside the bore");
    let front = hits([0.0552, 0.07], [-0.01, 0.0001]);
    let skim = &plan.moves[front[0].step];
    assert_eq!(skim.purpose, Purpose::Skim, "a ring that stands out is in the way of the skim: {front:?}");
    let plug = hits([0.0, 0.046], [-0.05, -0.0205]);
    assert!(plug.is_empty(), "a plug below the seat is clear: {plug:?}");
    let tall = hits([0.0, 0.044], [-0.05, -0.015]);
    assert_eq!(plan.moves[tall[0].step].purpose, Purpose::Rough, "a tall plug meets the bar first: {tall:?}");
    let around = hits([0.03, 0.04], [0.0, 0.01]);
    assert!(around.iter().any(|hit| hit.part == ToolPart::Bar), "the bar goes down through a ring too small for it");
    let thick = Tool { bar: 0.07, ..TOOL };
    let across = collisions(
        &Plan::new(&CUT, &thick, &CUTTING).unwrap(),
        &[Obstacle { name: "ring", radial: [0.0, 0.02], z: [-0.03, -0.021] }],
    );
    assert!(across.is_empty(), "nothing goes below the seat: {across:?}");
}
