use super::*;
use crate::grip::Side;
use crate::jaw::{Jaw, Shape};
use proptest::prelude::*;

const MM: f64 = 1e-3;
/// A few roundings of lengths of a tenth of a metre.
const ROUNDING: f64 = 1e-15;

fn master() -> MasterJaw {
    MasterJaw { stroke: 4.0 * MM, first_groove: 35.0 * MM, face: 60.0 * MM, body: 0.1, serration: SERRATIONS[3].1 }
}

fn blank() -> Blank {
    Blank {
        length: 70.0 * MM,
        first_groove: 1.5 * MM,
        near_screw: 30.0 * MM,
        far_screw: 50.0 * MM,
        counterbore: 20.0 * MM,
        counterbore_depth: 35.0 * MM,
        nut: 30.0 * MM,
    }
}

fn task(side: Side, bored: f64, step: f64) -> Task {
    let jaw = Jaw {
        shape: Shape::Ordinary { width: 40.0 * MM },
        side,
        count: 3,
        length: 70.0 * MM,
        height: 45.0 * MM,
        step,
        bored_depth: 15.0 * MM,
        grip_radius: bored,
    };
    Task {
        jaw,
        part: [bored - 0.02 * MM, bored, bored + 0.01 * MM],
        passing: bored,
        least_wall: 3.0 * MM,
        least_clearance: 0.5 * MM,
        swing: None,
        stand: Stand::At(2.0 * MM),
    }
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= ROUNDING
}

#[test]
fn a_jaw_on_its_second_tooth_stands_where_the_sketch_has_it() {
    let placed = place(&master(), &blank(), &task(Side::Outside, 0.05, 0.01), 2);
    // 35 + 2 + 1.5 × 3 − 1.5 = 40 mm.
    assert!(near(placed.end, 0.040), "gripping end {}", placed.end);
    assert!(near(placed.step, 0.010), "step {}", placed.step);
    assert!(near(placed.wall, 0.010), "30 − 10 − 10 mm to the near counterbore: {}", placed.wall);
    assert!(near(placed.screws[0], 0.070) && near(placed.screws[1], 0.090), "screws {:?}", placed.screws);
    assert!(near(placed.nut[0], 0.063) && near(placed.nut[1], 0.093), "nut, closed: 78 ± 15 mm: {:?}", placed.nut);
    assert!(near(placed.swing, libm::hypot(0.112, 0.020)), "swing, open {}", placed.swing);
    // Edges at sin 23.6° = 20/50, moved out by 2 mm: √(50² + 2² + 2·50·2·cos) = 51.8392 mm.
    assert!((placed.clearance - 1.83920e-3).abs() < 1e-8, "clearance {}", placed.clearance);
    assert!(placed.fails.is_empty(), "{:?}", placed.fails);
}

#[test]
fn clearance_and_position_make_up_the_stroke() {
    for tooth in -2..6 {
        let outside = place(&master(), &blank(), &task(Side::Outside, 0.05, 0.01), tooth);
        assert!(
            near(outside.travel + outside.bored_at, 4.0 * MM),
            "an outside grip opens by what is left of the stroke"
        );
    }
    let inside = place(&master(), &blank(), &task(Side::Inside, 0.12, 0.01), 18);
    assert!(near(inside.travel, inside.bored_at), "an inside grip closes by what it has opened: {inside:?}");
}

#[test]
fn the_clearance_is_that_of_the_point_of_the_moved_face_nearest_to_the_part() {
    for side in [Side::Outside, Side::Inside] {
        let task = task(side, 0.09, 0.01);
        let placed = place(&master(), &blank(), &task, 8);
        let half_angle = libm::asin(0.020 / 0.09);
        let moved = outward(side) * placed.travel;
        let nearest = (0..=1000)
            .map(|at| {
                let angle = half_angle * (f64::from(at) / 500.0 - 1.0);
                let radius = libm::hypot(0.09 * libm::cos(angle) + moved, 0.09 * libm::sin(angle));
                outward(side) * (radius - task.passing)
            })
            .fold(f64::INFINITY, f64::min);
        assert!((placed.clearance - nearest).abs() < 1e-15, "{side:?}: {} against {nearest}", placed.clearance);
    }
}

#[test]
fn every_fault_has_a_case_that_shows_it() {
    type Change<'a> = &'a dyn Fn(&mut MasterJaw, &mut Blank, &mut Task);
    let with = |change: Change<'_>| {
        let (mut master, mut blank, mut task) = (master(), blank(), task(Side::Outside, 0.05, 0.01));
        change(&mut master, &mut blank, &mut task);
        place(&master, &blank, &task, 2).fails
    };
    assert!(with(&|_, _, _| {}).is_empty(), "nothing is wrong to begin with");
    let cases: [(Check, Change<'_>); 11] = [
        (Check::Step, &|_, _, task| task.jaw.grip_radius = 0.039),
        (Check::Behind, &|_, blank, _| blank.length = 0.010),
        (Check::Neighbours, &|_, _, task| task.jaw.shape = Shape::Ordinary { width: 0.2 }),
        (Check::Wall, &|_, blank, _| blank.near_screw = 22.9 * MM),
        (Check::ScrewHead, &|_, blank, task| {
            (blank.near_screw, blank.counterbore, task.least_wall) = (5.0 * MM, 9.0 * MM, 0.0);
            blank.counterbore_depth = 20.0 * MM;
        }),
        (Check::NutInside, &|_, blank, _| (blank.near_screw, blank.nut) = (10.0 * MM, 70.0 * MM)),
        (Check::NutOutside, &|master, _, _| master.face = 57.9 * MM),
        (Check::Swing, &|_, _, task| task.swing = Some(0.113)),
        (Check::Stroke, &|_, _, task| task.stand = Stand::At(4.1 * MM)),
        (Check::MiddleThird, &|_, _, task| task.stand = Stand::At(1.3 * MM)),
        (Check::Clearance, &|_, _, task| task.passing += 1.4 * MM),
    ];
    for (check, change) in cases {
        let fails = with(change);
        assert!(fails.contains(&check), "{check:?} is seen: {fails:?}");
    }
    let body = with(&|master, _, _| master.body = 96.9 * MM);
    assert_eq!(body, [Check::NutOutside], "nuts at 93 mm closed stand at 97 mm open");
}

#[test]
fn the_best_tooth_is_the_faultless_one_nearest_to_the_step() {
    let choice = choose(&master(), &blank(), &task(Side::Outside, 0.05, 0.0113)).unwrap();
    assert_eq!(choice.best.tooth, 2, "10 mm is nearer to 11.3 mm than 13 mm: {:?}", choice.best);
    assert!(choice.fits(), "and nothing is wrong with it");
    let steps: alloc::vec::Vec<_> = choice.teeth.iter().map(|placed| placed.step).collect();
    assert!(steps.windows(2).all(|pair| near(pair[0] - pair[1], 3.0 * MM)), "teeth are a pitch apart: {steps:?}");
}

#[test]
fn jaws_that_must_be_turned_round_are_told_to_be() {
    // The screws sit near the end that grips; turned round, the long end does.
    let short = Blank { near_screw: 12.0 * MM, far_screw: 32.0 * MM, ..blank() };
    let mut task = task(Side::Outside, 0.05, 0.01);
    task.jaw.bored_depth = 30.0 * MM;
    let choice = choose(&master(), &short, &task).unwrap();
    assert!(!choice.fits(), "as mounted nothing fits: {:?}", choice.best);
    let found = remedies(&master(), &short, &task).unwrap();
    let Some(Remedy::TurnRound(placed)) = found.first() else { panic!("turning round is tried first: {found:?}") };
    assert!(placed.fails.is_empty() && placed.wall >= 3.0 * MM, "and it does: {placed:?}");
}

#[test]
fn jaws_too_short_are_told_by_how_much() {
    // Neither way round does a 50 mm jaw reach a part of 40 mm from screws that must stay on the master jaw.
    let short = Blank { length: 45.0 * MM, near_screw: 12.5 * MM, far_screw: 32.5 * MM, ..blank() };
    let mut task = task(Side::Outside, 0.032, 0.008);
    task.jaw.shape = Shape::Ordinary { width: 20.0 * MM };
    task.jaw.bored_depth = 30.0 * MM;
    assert!(!choose(&master(), &short, &task).unwrap().fits(), "as mounted nothing fits");
    let found = remedies(&master(), &short, &task).unwrap();
    let Some(Remedy::Extend(by, placed)) = found.first() else { panic!("longer jaws help: {found:?}") };
    assert!(placed.fails.is_empty(), "{placed:?}");
    let less = short.extended(by - 3.0 * MM);
    assert!(!choose(&master(), &less, &task).unwrap().fits(), "a tooth less would not do");
}

#[test]
fn turned_round_twice_a_jaw_is_as_before() {
    let twice = blank().turned(3.0 * MM).turned(3.0 * MM);
    for (one, other) in [
        (twice.near_screw, blank().near_screw),
        (twice.far_screw, blank().far_screw),
        (twice.first_groove, blank().first_groove),
    ] {
        assert!(near(one, other), "{one} was {other}");
    }
}

#[test]
fn metal_behind_the_face_ends_at_the_next_counterbore() {
    for (face, metal) in [(0.0, 20.0), (15.0, 5.0), (25.0, 15.0), (45.0, 25.0), (65.0, 5.0), (80.0, 0.0)] {
        let found = blank().metal_behind(face * MM);
        assert!(near(found, metal * MM), "{face} mm from the end: {found}");
    }
}

#[test]
fn blanks_that_cannot_be_are_refused() {
    let cases = [
        (Blank { far_screw: 30.0 * MM, ..blank() }, StrokeError::ScrewsCrossed),
        (Blank { near_screw: 9.0 * MM, ..blank() }, StrokeError::ScrewOffJaw),
        (Blank { length: 59.0 * MM, ..blank() }, StrokeError::ScrewOffJaw),
        (Blank { first_groove: 71.0 * MM, ..blank() }, StrokeError::GrooveOffJaw),
        (Blank { nut: 19.0 * MM, ..blank() }, StrokeError::NutTooShort),
        (Blank { counterbore: f64::NAN, ..blank() }, StrokeError::NotALength),
        (Blank { length: 0.0, ..blank() }, StrokeError::NotALength),
    ];
    for (wrong, error) in cases {
        let task = task(Side::Outside, 0.05, 0.01);
        assert_eq!(choose(&master(), &wrong, &task).err(), Some(error), "{wrong:?}");
        assert_eq!(remedies(&master(), &wrong, &task).err(), Some(error), "{wrong:?}");
    }
    let tiny = MasterJaw { face: 0.4 * MM, first_groove: 36.0 * MM, ..master() };
    let found = choose(&tiny, &blank(), &task(Side::Outside, 0.05, 0.01)).err();
    assert_eq!(found, Some(StrokeError::NoTooth), "a face shorter than a tooth");
}

proptest! {
    #[test]
    fn one_tooth_shifts_everything_by_one_pitch(
        tooth in -5..20, position in 0.0..4e-3_f64, inside in any::<bool>(), serration in 0..4_usize,
    ) {
        let side = if inside { Side::Inside } else { Side::Outside };
        let mut task = task(side, 0.08, 0.01);
        task.stand = Stand::At(position);
        let master = MasterJaw { serration: SERRATIONS[serration].1, ..master() };
        let pitch = master.serration.pitch;
        let (one, next) = (place(&master, &blank(), &task, tooth), place(&master, &blank(), &task, tooth + 1));
        prop_assert!(near(next.end - one.end, pitch), "gripping end");
        prop_assert!(near(next.screws[0] - one.screws[0], pitch), "screws");
        prop_assert!(near(next.nut[1] - one.nut[1], pitch), "nut");
        prop_assert!(near(one.step - next.step, outward(side) * pitch), "step");
        prop_assert_eq!(next.gripping_at, one.gripping_at, "the stroke does not know of the tooth");
    }

    #[test]
    fn on_the_same_ring_a_tooth_moves_the_master_jaw_and_nothing_else(
        tooth in -5..20, ring in 0.05..0.1_f64, inside in any::<bool>(), ends in any::<bool>(),
    ) {
        let side = if inside { Side::Inside } else { Side::Outside };
        let mut task = task(side, 0.08, 0.01);
        task.stand = if ends { Stand::Ends(ring) } else { Stand::Counterbores(ring) };
        let (one, next) = (place(&master(), &blank(), &task, tooth), place(&master(), &blank(), &task, tooth + 1));
        prop_assert!(near(one.end, next.end) && near(one.step, next.step), "the ring holds the jaw where it is");
        prop_assert!(near(one.bored_at - next.bored_at, 3e-3), "the master jaw stands a pitch farther in");
    }

    #[test]
    fn the_other_grip_is_the_mirror_image_about_the_bored_face(tooth in 0..10, position in 0.5e-3..3.5e-3_f64) {
        let bored = 0.09;
        let mut outside = task(Side::Outside, bored, 0.01);
        outside.stand = Stand::At(position);
        let one = place(&master(), &blank(), &outside, tooth);
        // A master jaw whose tooth puts the outer end where the mirror has the inner one.
        let groove = 2.0 * bored - one.end - blank().first_groove - position - (f64::from(tooth) - 0.5) * 3e-3;
        let mirrored = MasterJaw { first_groove: groove, ..master() };
        let inside = Task { stand: outside.stand, ..task(Side::Inside, bored, 0.01) };
        let other = place(&mirrored, &blank(), &inside, tooth);
        prop_assert!(near(one.step, other.step) && near(one.wall, other.wall), "step and wall are the same");
        for screw in 0..2 {
            prop_assert!(near(one.screws[screw] - bored, bored - other.screws[screw]), "screw {screw} is mirrored");
        }
    }
}
