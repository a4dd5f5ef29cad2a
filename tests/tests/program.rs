//! The boring program, read back by a reader that shares nothing with the writer: what the nose sweeps along the
//! parsed moves is the shape that was planned, within a micrometre.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a program that cannot be read must fail")]

use std::collections::BTreeSet;

use holdround_core::jaw_program;
use holdround_core::program::{Cutting, Heading, JawCut, Plan, PlanError, STAND_OFF, Tool, least_relief_width, text};
use holdround_core::quantity::UnitSystem;
use holdround_core::setup::{Entries, Setup, Side};
use holdround_core::text::{ENGLISH, Language, Text};
use holdround_tests::program_reader::{Block, Motion, read, run};
use proptest::prelude::*;

#[derive(Clone, Copy, Debug)]
struct Case {
    cut: JawCut,
    tool: Tool,
    cutting: Cutting,
    inch: bool,
}

fn cases() -> impl Strategy<Value = Case> {
    let shape = (any::<bool>(), 0.03..0.4_f64, 0.006..0.06_f64, 0.5e-3..12e-3_f64, -1.0..1.0_f64);
    let corner = (prop_oneof![Just(0.0), 0.1e-3..2e-3_f64], any::<bool>(), 0.1e-3..0.8e-3_f64, 0.0..1e-3_f64);
    let tool = (0.2e-3..1.2e-3_f64, 0.25..0.9_f64);
    let cutting = (0.3e-3..2e-3_f64, 0.05e-3..0.3e-3_f64, any::<bool>());
    (shape, corner, tool, cutting).prop_map(|(shape, corner, (nose, behind), (depth_of_cut, allowance, inch))| {
        let (outside, diameter, depth, stock, taper) = shape;
        let (chamfer, grooved, relief, skim) = corner;
        let tool = Tool { nose, behind, bar: 0.01, reach: 0.1, holder: 0.02 };
        let width = least_relief_width(relief, &tool) * 1.05 + 0.1e-3;
        let away = if outside { -2.0 } else { 2.0 };
        let cut = JawCut {
            side: if outside { Side::Outside } else { Side::Inside },
            diameter,
            taper: taper * 0.1e-3,
            depth,
            chamfer,
            relief: if grooved { [width, relief] } else { [0.0; 2] },
            standing: diameter + away * stock,
            inner: diameter + away * (stock + 2e-3),
            skim,
            skim_width: 5e-3,
        };
        let cutting =
            Cutting { depth: depth_of_cut, allowance, rough_feed: 0.15e-3, finish_feed: 0.08e-3, start: 0.05 };
        Case { cut, tool, cutting, inch }
    })
}

/// How far into the metal each height was cut by the feed moves: a comb of heights, each with the greatest reach of
/// the nose's circle over all of them. Independent of the planner: nothing but circles and the parsed tips.
fn reach(motions: &[Motion], nose: f64, sign: f64, z: f64) -> f64 {
    let mut most = f64::NEG_INFINITY;
    for motion in motions.iter().filter(|motion| motion.feed > 0.0) {
        let centre = |tip: [f64; 2]| [sign * tip[0] - nose, tip[1] + nose];
        let (a, b) = (centre(motion.from), centre(motion.to));
        // Along the move the reach u(s) + sqrt(r^2 - (z - z(s))^2) is concave: a ternary search finds its greatest.
        let at = |s: f64| {
            let off = z - (a[1] + s * (b[1] - a[1]));
            if off.abs() > nose {
                f64::NEG_INFINITY
            } else {
                a[0] + s * (b[0] - a[0]) + (nose * nose - off * off).sqrt()
            }
        };
        let run = b[1] - a[1];
        let (mut low, mut high) = (0.0_f64, 1.0_f64);
        if run == 0.0 {
            if (z - a[1]).abs() > nose {
                continue;
            }
        } else {
            // Only where the circle touches this height.
            let ends = [(z - nose - a[1]) / run, (z + nose - a[1]) / run];
            (low, high) = (ends[0].min(ends[1]).max(0.0), ends[0].max(ends[1]).min(1.0));
            if low > high {
                continue;
            }
        }
        for _ in 0..80 {
            let (one, two) = (low + (high - low) / 3.0, high - (high - low) / 3.0);
            if at(one) < at(two) { low = one } else { high = two }
        }
        most = most.max(at(low)).max(at(high)).max(at(f64::midpoint(low, high)));
    }
    most
}

/// Least z to which the nose went at `u`.
fn floor(motions: &[Motion], nose: f64, sign: f64, u: f64) -> f64 {
    let mut least = f64::INFINITY;
    for motion in motions.iter().filter(|motion| motion.feed > 0.0) {
        for step in 0..=2000 {
            let s = f64::from(step) / 2000.0;
            let tip = [0, 1].map(|k| motion.from[k] + s * (motion.to[k] - motion.from[k]));
            let off = u - (sign * tip[0] - nose);
            if off.abs() <= nose {
                least = least.min(tip[1] + nose - (nose * nose - off * off).sqrt());
            }
        }
    }
    least
}

const MICROMETRE: f64 = 1e-6;

/// The shape as its sizes say, worked out here anew: `u` of the metal's edge at z, away from inner corners.
fn wanted(cut: &JawCut, sign: f64, z: f64) -> f64 {
    let tip = sign * cut.diameter / 2.0;
    let face = |z: f64| tip + cut.taper * (-z) / cut.depth;
    if z > -cut.chamfer { face(-cut.chamfer) + cut.chamfer + z } else { face(z) }
}

fn heading(case: &Case) -> Heading<'static> {
    Heading { inch: case.inch, backward: false, speed: 500, number: "7", name: "case", notes: &[], language: ENGLISH }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_shape_swept_by_the_text_is_the_shape_wanted(case in cases()) {
        let Case { cut, tool, cutting, inch } = case;
        let plan = match Plan::new(&cut, &tool, &cutting) {
            Ok(plan) => plan,
            Err(PlanError::NoFace | PlanError::Cramped | PlanError::Behind) => return Ok(()),
            Err(error) => return Err(TestCaseError::fail(format!("{error}: {case:?}"))),
        };
        let program = text(&plan, &heading(&case));
        let motions = run(&read(&program).unwrap(), if inch { 0.0254 } else { 1e-3 }).unwrap();
        let sign = if cut.side == Side::Outside { 1.0 } else { -1.0 };
        // Diameter, taper and chamfer: the face at many heights, square to its slope.
        let last = if cut.relief[0] > 0.0 { cut.relief[0] } else { tool.nose };
        for step in 0..24 {
            let z = -(cut.depth - last - MICROMETRE) * (f64::from(step) + 0.5) / 24.0;
            let slope = if z > -cut.chamfer { std::f64::consts::FRAC_1_SQRT_2 } else { 1.0 };
            let off = (reach(&motions, tool.nose, sign, z) - wanted(&cut, sign, z)) * slope;
            prop_assert!(off.abs() < MICROMETRE, "at {z} the face is {off} off: {case:?}\n{program}");
        }
        // Depth: the seat halfway between the opening and the face.
        let opening = sign * cut.inner / 2.0;
        let seat = f64::midpoint(opening, wanted(&cut, sign, -cut.depth) + cut.relief[1] - tool.nose);
        let off = floor(&motions, tool.nose, sign, seat) + cut.depth;
        prop_assert!(off.abs() < MICROMETRE, "the seat is {off} off: {case:?}\n{program}");
        // Relief: its depth where the nose's round begins.
        if cut.relief[0] > 0.0 {
            let z = tool.nose - cut.depth + 0.5 * MICROMETRE;
            let off = reach(&motions, tool.nose, sign, z) - wanted(&cut, sign, -cut.depth) - cut.relief[1];
            prop_assert!(off.abs() < MICROMETRE, "the groove is {off} off: {case:?}\n{program}");
            let z = cut.relief[0] - cut.depth;
            let off = reach(&motions, tool.nose, sign, z) - wanted(&cut, sign, z);
            // The groove starts where it should: at its steepest, 45 degrees, a micrometre along is one across.
            prop_assert!(off.abs() < 1.5 * MICROMETRE, "the groove starts {off} off: {case:?}\n{program}");
        }
        // The skim leaves the front at 0.
        if cut.skim > 1e-9 {
            let beside = wanted(&cut, sign, 0.0) + 1e-3;
            let off = floor(&motions, tool.nose, sign, beside);
            prop_assert!(off.abs() < MICROMETRE, "the front is {off} off: {case:?}\n{program}");
        }
    }

    #[test]
    fn a_rapid_move_never_goes_below_the_front_into_new_metal(case in cases()) {
        let Ok(plan) = Plan::new(&case.cut, &case.tool, &case.cutting) else { return Ok(()) };
        let program = text(&plan, &heading(&case));
        let unit = if case.inch { 0.0254 } else { 1e-3 };
        let sign = if case.cut.side == Side::Outside { 1.0 } else { -1.0 };
        for motion in run(&read(&program).unwrap(), unit).unwrap().iter().filter(|motion| motion.feed == 0.0) {
            let across = (motion.to[0] - motion.from[0]).abs() > MICROMETRE;
            let lowest = motion.from[1].min(motion.to[1]);
            if across {
                prop_assert!(lowest > STAND_OFF - MICROMETRE, "rapid across at {lowest}: {case:?}\n{program}");
            } else if motion.to[1] < 0.0 {
                let u = sign * motion.to[0];
                prop_assert!(u < sign * case.cut.standing / 2.0, "rapid down at {u}: {case:?}\n{program}");
            }
        }
    }

    #[test]
    fn nothing_typed_breaks_out_of_a_comment(name in "\\PC{0,60}", note in ".{0,80}", number in "\\PC{0,8}") {
        let case = Case {
            cut: JawCut {
                side: Side::Outside, diameter: 0.1, taper: 0.0, depth: 0.02, chamfer: 0.5e-3,
                relief: [0.0; 2], standing: 0.09, inner: 0.08, skim: 0.0, skim_width: 5e-3,
            },
            tool: Tool { nose: 0.4e-3, behind: 0.5, bar: 0.01, reach: 0.1, holder: 0.02 },
            cutting: Cutting { depth: 1e-3, allowance: 0.2e-3, rough_feed: 0.15e-3, finish_feed: 0.08e-3, start: 0.05 },
            inch: false,
        };
        let plan = Plan::new(&case.cut, &case.tool, &case.cutting).unwrap();
        let notes = [Text::typed(note)];
        let program = text(&plan, &Heading { name: &name, number: &number, notes: &notes, ..heading(&case) });
        prop_assert!(program.is_ascii(), "plain text only: {program}");
        let plain = text(&plan, &Heading { name: "", number: "", ..heading(&case) });
        let without = |program: &str| -> Vec<Block> {
            read(program).unwrap().into_iter().filter(|block| block[0].0 != 'O').collect()
        };
        prop_assert_eq!(without(&program), without(&plain), "the blocks are the same whatever is typed");
    }
}

#[test]
fn the_reader_refuses_what_is_no_such_program() {
    for wrong in ["G0 X1.\n", "%\nG0 (X1.\n%\n", "%\nG0 ((X1.))\n%\n", "%\ng0 x1.\n%\n", "%\nG0 X1.2.3\n%\n"] {
        assert!(read(wrong).is_err(), "{wrong:?} is read");
    }
    for wrong in ["%\nM3 S1\nG1 X1. Z1. F1.\nM30\n%\n", "%\nG0 Z1.\nM30\n%\n", "%\nM3\nG2 X1.\nM30\n%\n", "%\nM3\n%\n"]
    {
        assert!(run(&read(wrong).unwrap(), 1e-3).is_err(), "{wrong:?} is run");
    }
}

#[test]
fn letters_that_no_control_shows_are_written_out() {
    fn german(words: &str) -> &str {
        if words == "Straight, no taper" { "Gerade, für größere Hülsen" } else { words }
    }
    let mut entries = Entries::default();
    entries.set("boring.name", "Öse");
    let german = Language { words: german, decimal: ',' };
    let program = jaw_program(&Setup::read(&entries).unwrap(), UnitSystem::Metric, german).unwrap();
    assert!(program.contains("(OESE)") && program.contains("(GERADE, FUER GROESSERE HUELSEN)"), "{program}");
    let comments = program.lines().filter(|line| line.starts_with('('));
    assert!(comments.clone().any(|line| line.contains("0,4 MM")), "the decimal sign of the language: {program}");
    let blocks = program.lines().filter(|line| !line.starts_with('('));
    assert!(
        blocks.clone().count() > 5 && blocks.clone().all(|line| !line.contains(',')),
        "and of the control: {program}"
    );
}

#[test]
fn the_program_of_a_job_uses_plain_words_alone_and_says_what_to_set() {
    for (units, side, spindle) in
        [("mm", "outside", "forward"), ("inch", "inside", "backward"), ("inch", "outside", "forward")]
    {
        let mut entries = Entries::default();
        for (path, text) in [("boring.units", units), ("grip.side", side), ("boring.spindle", spindle)] {
            assert!(entries.set(path, text), "{path} is an input");
        }
        let program = jaw_program(&Setup::read(&entries).unwrap(), UnitSystem::Metric, ENGLISH).unwrap();
        let blocks = read(&program).unwrap();
        let words: BTreeSet<String> = blocks
            .iter()
            .flatten()
            .filter(|(letter, _)| matches!(letter, 'G' | 'M'))
            .map(|(letter, number)| format!("{letter}{number}"))
            .collect();
        let turn = if spindle == "backward" { "M4" } else { "M3" };
        let wanted: BTreeSet<String> = ["G0", "G1", "G97", "M30", "M5", turn].map(String::from).into();
        assert_eq!(words, wanted, "{program}");
        assert!(program.contains("(STRAIGHT, NO TAPER)"), "{program}");
        entries.set("jaws.taper", "-20 µm");
        let leaning = jaw_program(&Setup::read(&entries).unwrap(), UnitSystem::Metric, ENGLISH).unwrap();
        assert!(leaning.replace(")\n(", " ").contains("ON DIAMETER, LESS METAL AT THE FRONT"), "{leaning}");
        assert!(program.contains("(UNPROVEN: RUN IN AIR FIRST"), "{program}");
        let unit = if units == "inch" { "INCHES, ABSOLUTE" } else { "MILLIMETRES, ABSOLUTE" };
        assert!(program.contains(unit), "the heading says which units to set: {program}");
        assert!(program.lines().all(|line| line.len() <= 64), "lines fit a control: {program}");
    }
}
