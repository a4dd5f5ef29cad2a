//! The loop on simulated jaws whose stiffness it does not know.

use super::*;
use crate::contact::{Arc, Face, JawGive};
use crate::jaw_spring::{JawColumn, MasterJaw, Section, TILT_DEPTH};
use crate::part::{Band, Elastic, PartModel, PartSpring, Profile, Side, Step};
use alloc::vec::Vec;
use proptest::prelude::*;

const STEEL: Elastic = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
const BASE: f64 = 0.025;
const LENGTH: f64 = 0.04;
const FORCE: f64 = 20e3;
const THOUSANDTH: f64 = 25.4e-6;

fn sleeve() -> PartSpring {
    part(&[Step::cylinder(LENGTH, 0.1, 0.06)])
}

fn part(steps: &[Step]) -> PartSpring {
    let profile = Profile::new(steps).unwrap();
    let band = Band { side: Side::Outside, z: [0.0, LENGTH], cells: Band::CELLS };
    PartModel::new(&profile, STEEL, band, 3, &[], 0.6).unwrap().spring().unwrap()
}

/// A jaw on a chuck of a given tilt stiffness.
struct Jaw<'a> {
    face: Face<'a>,
    column: JawColumn,
    heights: Vec<f64>,
    tilt: f64,
    pressings: Pressings,
}

impl<'a> Jaw<'a> {
    fn new(part: &'a PartSpring, tilt: f64, arc: f64) -> Self {
        let section = |length, depth| Section { length, width: 0.04, depth };
        let master = MasterJaw { tilt, ..MasterJaw::default() };
        let column = JawColumn::new(&[section(BASE, 0.045), section(LENGTH, 0.035)], 205e9, 0.29, master).unwrap();
        let heights: Vec<f64> = part.points.iter().map(|z| BASE + z).collect();
        let give = JawGive { spot: 0.0, column: column.matrix(&heights), body: Some(STEEL) };
        Self {
            face: Face::new(part, Arc::graded(arc, 8), &give).unwrap(),
            column,
            heights,
            tilt,
            pressings: Pressings::default(),
        }
    }

    fn grip(&self, force: f64, ring_height: f64) -> Grip<'_> {
        Grip {
            face: &self.face,
            column: &self.column,
            heights: &self.heights,
            base: BASE,
            length: LENGTH,
            bears: [BASE, BASE + LENGTH],
            larger: 0.0,
            force,
            ring_force: force,
            ring_height,
            tilt: self.tilt,
            tilt_depth: TILT_DEPTH,
            pressings: &self.pressings,
        }
    }
}

#[test]
fn a_thousandth_either_way_shows_at_one_end_only() {
    let part = sleeve();
    let jaw = Jaw::new(&part, 1e6, 0.8);
    let grip = jaw.grip(5e3, 0.01);
    let right = grip.aim().unwrap().taper;
    let bluing = |taper: f64| Bluing::of(&grip, &grip.press(taper).unwrap());
    assert_eq!(bluing(right).marked, Marked::Even, "the right taper: {:?}", bluing(right));
    let (little, much) = (bluing(right - THOUSANDTH), bluing(right + THOUSANDTH));
    assert_eq!(little.marked, Marked::Base, "a thousandth too little: {little:?}");
    assert_eq!(much.marked, Marked::Tip, "a thousandth too much: {much:?}");
    for (third, shares) in [("base", [little.base, much.base]), ("tip", [much.tip, little.tip])] {
        assert!(shares[0] > 0.5 && shares[1] < 0.1, "the {third} bears or does not: {shares:?}");
    }
    let open = grip.tip_gap(&grip.press(right - THOUSANDTH).unwrap());
    assert!(open > 0.2 * THOUSANDTH && open < THOUSANDTH, "and a feeler goes in at the tip: {open}");
}

#[test]
fn the_lean_presses_evenly_where_the_part_gives_alike() {
    // The lean is Timoshenko's cantilever on a tilting foot under an even pressure (checked in `jaw_spring`); a
    // sleeve gripped over its whole length gives alike along it.
    let part = sleeve();
    let jaw = Jaw::new(&part, 1e6, 0.8);
    let grip = jaw.grip(FORCE, 0.01);
    let (lean, even) = (grip.lean(), grip.even_taper().unwrap());
    assert!(lean > 10e-6, "a tall grip over a low ring opens: {lean}");
    assert!((even - lean).abs() < 0.1 * lean, "{even} by contact, {lean} by lean alone");
}

#[test]
fn boring_where_and_as_hard_as_one_grips_needs_hardly_any_taper() {
    let part = sleeve();
    let jaw = Jaw::new(&part, 1e6, 0.8);
    let low = jaw.grip(FORCE, 0.01).aim().unwrap().taper;
    let level = jaw.grip(FORCE, BASE + LENGTH / 2.0).aim().unwrap().taper;
    assert!(level.abs() < 0.25 * low, "{level} with the ring level with the part, {low} with it at the root");
}

#[test]
fn where_one_end_gives_more_the_taper_stays_a_quarter_within_those_that_bear_at_both() {
    // The floor of a cup hardly gives beside its open wall: a taper that only evens the lean leaves one end almost bare.
    let [wall, floor] = [Step::cylinder(0.03, 0.1, 0.088), Step::cylinder(0.01, 0.1, 0.0)];
    for (steps, wanted) in [([wall, floor], 0.75), ([floor, wall], 0.25)] {
        let part = part(&steps);
        let jaw = Jaw::new(&part, 1e6, 0.8);
        let grip = jaw.grip(5e3, 0.01);
        let Aim { taper, lean, unseen: [little, much] } = grip.aim().unwrap();
        let [share, leaning] = [taper, lean].map(|taper| (taper - little) / (much - little));
        assert!((share - wanted).abs() < 1e-9, "{share} of the way from {little} to {much}, lean {lean}");
        assert!((leaning - 0.5).abs() > 0.25, "the lean alone is nearer an end: {leaning}");
        assert_eq!(by_bluing(&grip, taper), Shows::Even, "it bears at both ends");
    }
}

/// Cuts, reads and learns; the readings it took, how the jaws bear then, and how far off the taper is. None where
/// bluing told that no taper helps, and none does.
fn converge(
    read: fn(&Grip<'_>, f64) -> Shows,
    true_tilt: f64,
    arc: f64,
    ring: f64,
    force: f64,
) -> Option<(usize, Shows, f64)> {
    let part = sleeve();
    let (thought, truth) = (Jaw::new(&part, 1e6, arc), Jaw::new(&part, true_tilt, arc));
    let (grip, real) = (thought.grip(force, ring), truth.grip(force, ring));
    let wanted = real.aim().unwrap().taper;
    let mut readings = Vec::new();
    let mut taper = grip.aim().unwrap().taper;
    while readings.len() < 3 {
        let shows = read(&real, taper);
        if shows == Shows::Even {
            break;
        }
        readings.push(Reading { taper, force: grip.force, shows });
        match learn(&grip, grip.aim().unwrap(), &readings) {
            Ok(learned) => taper = learned.taper,
            Err(error) => {
                assert_eq!(error, TaperError::Straight(readings.len() - 1), "{readings:?}");
                assert!(real.aim().unwrap().unseen[1] < grip.aim().unwrap().taper.min(0.0), "no taper is good");
                return None;
            }
        }
    }
    Some((readings.len(), by_bluing(&real, taper), (taper - wanted).abs()))
}

fn by_bluing(real: &Grip<'_>, taper: f64) -> Shows {
    match Bluing::of(real, &real.press(taper).unwrap()).marked {
        Marked::Base => Shows::Only(End::Base, None),
        Marked::Even => Shows::Even,
        Marked::Tip => Shows::Only(End::Tip, None),
    }
}

/// Bluing, with the length of the band that is rubbed blank, to the next millimetre.
fn by_band(real: &Grip<'_>, taper: f64) -> Shows {
    match by_bluing(real, taper) {
        Shows::Only(end, _) => {
            let band = real.band(&real.press(taper).unwrap(), end);
            Shows::Only(end, Some((libm::round(band * 1e3) * 1e-3).min(LENGTH - 1e-3)))
        }
        shows => shows,
    }
}

/// Feelers to the next 10 um; where none goes in, bluing.
fn by_feeler(real: &Grip<'_>, taper: f64) -> Shows {
    let gap = libm::floor(real.tip_gap(&real.press(taper).unwrap()) / 1e-5) * 1e-5;
    if gap > 0.0 { Shows::TipGap(gap) } else { by_bluing(real, taper) }
}

#[test]
fn three_readings_find_the_taper_of_a_chuck_of_unknown_stiffness() {
    let ways = [("feeler", by_feeler as fn(&Grip<'_>, f64) -> Shows), ("bluing", by_bluing), ("band", by_band)];
    let (mut most, mut straight) = (0, 0);
    for (arc, ring) in [(0.8, 0.01), (1.9, 0.01), (0.8, 0.0), (0.8, 0.065)] {
        for factor in [0.25, 0.4, 0.7, 1.0, 1.5, 2.5, 4.0] {
            for force in [5e3, 20e3] {
                for (how, read) in ways {
                    let Some((readings, bears, off)) = converge(read, factor * 1e6, arc, ring, force) else {
                        straight += 1;
                        continue;
                    };
                    let says = alloc::format!(
                        "{how}, {factor} as stiff, arc {arc}, ring {ring}, {force} N: {readings} readings, {bears:?}, off {off}"
                    );
                    assert!(readings <= 3 && bears == Shows::Even, "{says}");
                    // Off by no more than jaws and part swallow, bearing at both ends all the while.
                    assert!(off < 60e-6, "{says}");
                    most = most.max(readings);
                }
            }
        }
    }
    assert!(most >= 1, "some chucks are so far from what was thought that it shows");
    // A ring as high as the tip leans jaws on a soft chuck more than the part will.
    assert_eq!(straight, 6, "and where only less metal at the tip would do, that is told");
}

#[test]
fn ends_of_bluing_nearer_to_each_other_than_predicted_are_halved_and_in_the_wrong_order_contradict() {
    let part = sleeve();
    let jaw = Jaw::new(&part, 1e6, 0.8);
    let grip = jaw.grip(FORCE, 0.0);
    let aim = grip.aim().unwrap();
    let window = aim.unseen[1] - aim.unseen[0];
    let readings = |little: f64, much: f64| {
        [(little, End::Base), (much, End::Tip)].map(|(taper, end)| Reading {
            taper,
            force: FORCE,
            shows: Shows::Only(end, None),
        })
    };
    let (little, much) = (aim.taper, aim.taper + window / 2.0);
    let learned = learn(&grip, aim, &readings(little, much)).unwrap();
    assert!((learned.taper - f64::midpoint(little, much)).abs() < 1e-9, "{learned:?} in {little} to {much}");
    let error = learn(&grip, aim, &readings(much + window, little)).unwrap_err();
    assert_eq!(error, TaperError::Contradiction(1), "too little where more was too much");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// By bluing alone: no step is wider than the tapers predicted to bear at both ends, none is below straight, what
    /// is known on both sides is halved, and the end is a taper that bears at both ends, or that none does.
    #[test]
    fn bluing_alone_walks_to_the_taper_in_careful_steps(
        factor in 0.08..12.0_f64,
        wide: bool,
        ring in 0.0..0.065_f64,
        force in 2e3..30e3_f64,
        own in -60e-6..60e-6_f64,
    ) {
        let part = sleeve();
        let arc = if wide { 1.9 } else { 0.8 };
        let (thought, truth) = (Jaw::new(&part, 1e6, arc), Jaw::new(&part, factor * 1e6, arc));
        let (grip, real) = (thought.grip(force, ring), truth.grip(force, ring));
        let aim = grip.aim().unwrap();
        let window = aim.unseen[1] - aim.unseen[0];
        let good = real.aim().unwrap().unseen.map(|end| end - own);
        let straight = aim.taper.min(0.0);
        let [mut little, mut much] = [f64::NEG_INFINITY, f64::INFINITY];
        let (mut readings, mut taper) = (Vec::new(), aim.taper);
        // Of windows between the first cut and the good ones, and one halving for each time the steps shrink.
        let most = 6.0 + ((good[0] - taper).max(taper - good[1]).max(0.0) / window).ceil();
        let mut ended = false;
        while !ended {
            let shows = by_bluing(&real, taper + own);
            match shows {
                Shows::Only(End::Base, _) => little = little.max(taper),
                Shows::Only(End::Tip, _) => much = much.min(taper),
                _ => break,
            }
            readings.push(Reading { taper, force, shows });
            prop_assert!((readings.len() as f64) <= most, "{most} readings are enough: {readings:?}, good {good:?}");
            match learn(&grip, aim, &readings) {
                Ok(learned) => {
                    let step = (learned.taper - little).abs().min((learned.taper - much).abs());
                    prop_assert!(step <= window * (1.0 + 1e-9), "{step} in a window of {window}: {readings:?}");
                    prop_assert!(learned.taper >= straight, "below straight: {}", learned.taper);
                    prop_assert!(little < learned.taper && learned.taper < much, "between what is known: {readings:?}");
                    if much - little <= window {
                        let halved = (learned.taper - f64::midpoint(little, much)).abs() < 1e-9;
                        // A chuck is taken to be thirty times stiffer than thought, not more.
                        let stiffest = learned.tilt.is_ok_and(|tilt| tilt.stiffness > 29.9e6);
                        let kept = learned.taper == straight || learned.taper == aim.taper;
                        prop_assert!(halved || stiffest || kept, "{readings:?}");
                    }
                    taper = learned.taper;
                }
                Err(error) => {
                    prop_assert_eq!(error, TaperError::Straight(readings.len() - 1), "after {:?}", &readings);
                    prop_assert!(good[1] < straight, "no taper is good: {good:?}");
                    ended = true;
                }
            }
        }
        prop_assert!(ended || by_bluing(&real, taper + own) == Shows::Even, "it bears at both ends");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Bluing alone does it in three readings, with the length of the rubbed band or without, on a chuck from four times
    /// softer to four times stiffer than thought, bored as hard as gripped or at down to a third of it.
    #[test]
    fn three_looks_at_the_blue_find_the_taper(
        measured: bool,
        bored in 0.33..1.0_f64,
        factor in 0.25..4.0_f64,
        wide: bool,
        ring in 0.0..0.065_f64,
        force in 2e3..30e3_f64,
    ) {
        let part = sleeve();
        let arc = if wide { 1.9 } else { 0.8 };
        let (thought, truth) = (Jaw::new(&part, 1e6, arc), Jaw::new(&part, factor * 1e6, arc));
        let [grip, real] =
            [&thought, &truth].map(|jaw| Grip { ring_force: bored * force, ..jaw.grip(force, ring) });
        let aim = grip.aim().unwrap();
        let (mut readings, mut taper, mut ended) = (Vec::new(), aim.taper, false);
        for _ in 0..3 {
            let shows = if measured { by_band(&real, taper) } else { by_bluing(&real, taper) };
            if shows == Shows::Even {
                break;
            }
            readings.push(Reading { taper, force, shows });
            match learn(&grip, aim, &readings) {
                Ok(learned) => taper = learned.taper,
                Err(error) => {
                    prop_assert_eq!(error, TaperError::Straight(readings.len() - 1), "after {:?}", &readings);
                    let good = real.aim().unwrap().unseen[1];
                    prop_assert!(good < aim.taper.min(0.0), "no taper is good: {good}");
                    ended = true;
                    break;
                }
            }
        }
        prop_assert!(ended || by_bluing(&real, taper) == Shows::Even, "{readings:?}, then {taper}");
    }
}

#[test]
fn a_rubbed_band_is_shorter_the_farther_the_taper_is_off_and_its_length_tells_by_how_much() {
    let part = sleeve();
    let jaw = Jaw::new(&part, 1e6, 0.8);
    let grip = jaw.grip(FORCE, 0.01);
    let [from, to] = grip.aim().unwrap().unseen;
    for (end, just, way) in [(End::Base, from, -1.0), (End::Tip, to, 1.0)] {
        let mut before = LENGTH;
        for off in [10e-6, 30e-6, 90e-6, 270e-6] {
            let taper = just + way * off;
            let band = grip.band(&grip.press(taper).unwrap(), end);
            assert!(0.0 < band && band < before, "{end:?}, {off} off: {band} after {before}");
            before = band;
            let told = grip.taper_for_band(end, band, just).unwrap().unwrap();
            assert!((told - taper).abs() < 0.05 * off, "{end:?}, {off} off: {told} for {taper}");
        }
    }
}

#[test]
fn one_feeler_tells_the_stiffness() {
    let part = sleeve();
    let thought = Jaw::new(&part, 1e6, 0.8);
    for factor in [0.2, 0.5, 2.0] {
        let truth = Jaw::new(&part, factor * 1e6, 0.8);
        let (grip, real) = (thought.grip(FORCE, 0.0), truth.grip(FORCE, 0.0));
        let taper = real.even_taper().unwrap() - 80e-6;
        let gap = real.tip_gap(&real.press(taper).unwrap()) - FEELER;
        let learned =
            learn(&grip, grip.aim().unwrap(), &[Reading { taper, force: FORCE, shows: Shows::TipGap(gap) }]).unwrap();
        // The lean follows a cosine across the face and the taper does not: 8 % at its sides.
        let tilt = learned.tilt.expect("a ring at the root tells");
        assert!((tilt.stiffness / (factor * 1e6) - 1.0).abs() < 0.08, "{factor}: {}", tilt.stiffness);
        assert!(tilt.open[0] <= tilt.stiffness && tilt.stiffness <= tilt.open[1], "within what is left open");
    }
}

#[test]
fn readings_that_no_chuck_explains_are_named() {
    let part = sleeve();
    let jaw = Jaw::new(&part, 1e6, 0.8);
    let grip = jaw.grip(FORCE, 0.01);
    let right = grip.aim().unwrap().taper;
    let reading = |taper: f64, shows| Reading { taper, force: FORCE, shows };
    let learned = |readings: &[Reading]| learn(&grip, grip.aim().unwrap(), readings).unwrap_err();
    let first = reading(right, Shows::TipGap(60e-6));
    assert_eq!(
        learned(&[first, reading(right, Shows::Only(End::Tip, None))]),
        TaperError::Contradiction(1),
        "open, and yet closed"
    );
    let whole = reading(right, Shows::Only(End::Base, Some(LENGTH)));
    assert_eq!(learned(&[whole]), TaperError::Whole(0), "at one end only, and yet all over");
    let no_chuck = |reading: Reading| learn(&grip, grip.aim().unwrap(), &[reading]).unwrap();
    let closed = no_chuck(reading(right - 200e-6, Shows::Even));
    assert_eq!(closed.tilt, Err(TaperError::Rigid(0)), "even with hardly any metal");
    assert!((closed.taper - (right - 200e-6)).abs() < 1e-9, "it is right as it is");
    assert_eq!(learned(&[reading(right, Shows::TipGap(1.9e-3))]), TaperError::Loose(0), "two millimetres open");
}

#[test]
fn what_bears_at_both_ends_is_kept_whatever_was_read_before() {
    let part = sleeve();
    let jaw = Jaw::new(&part, 1e6, 0.8);
    let grip = jaw.grip(FORCE, 0.01);
    let aim = grip.aim().unwrap();
    let reading = |taper: f64, force, shows| Reading { taper, force, shows };
    let first = reading(0.0, FORCE, Shows::TipGap(30e-6));
    let taper = aim.taper + 12e-6;
    let learned = learn(&grip, aim, &[first, reading(taper, FORCE, Shows::Even)]).unwrap();
    assert!(learned.kept && learned.taper == taper, "nothing more to cut: {learned:?}");
    let gently = learn(&grip, aim, &[reading(taper, FORCE / 2.0, Shows::Even)]).unwrap();
    assert!(!gently.kept, "under another grip it tells, and is not the end: {gently:?}");
}

#[test]
fn where_ring_and_part_lean_the_jaws_alike_the_next_cut_is_told_all_the_same() {
    // Level with the grip and pressed as hard, the ring leans the jaw as the part does, whatever the chuck: what opens
    // the tip is then something else, such as the taper that the lathe itself turns.
    let part = sleeve();
    let jaw = Jaw::new(&part, 1e6, 0.8);
    let grip = jaw.grip(5e3, BASE + LENGTH / 2.0);
    let right = grip.aim().unwrap().taper;
    let read = |readings: &mut Vec<Reading>, taper: f64, off: f64| {
        readings.push(Reading { taper, force: grip.force, shows: by_feeler(&grip, taper + off) });
        learn(&grip, grip.aim().unwrap(), readings)
    };
    for off in [-120e-6, -40e-6] {
        let (mut readings, mut taper) = (Vec::new(), right);
        for _ in 0..3 {
            let learned = read(&mut readings, taper, off).unwrap();
            assert_eq!(learned.tilt, Err(TaperError::Blind), "no stiffness is told");
            taper = learned.taper;
        }
        assert_eq!(by_bluing(&grip, taper + off), Shows::Even, "{off} off: {taper} for {}", right - off);
    }
    // A lathe that leaves metal at the tip wants a taper the other way: straight is tried, and then it is told.
    let mut readings = Vec::new();
    assert_eq!(read(&mut readings, right, 30e-6).unwrap().taper, 0.0, "no less than straight");
    assert_eq!(read(&mut readings, 0.0, 30e-6), Err(TaperError::Straight(1)), "and straight does not do");
}

#[test]
fn with_no_reading_the_taper_is_that_of_the_chuck_as_thought() {
    let part = sleeve();
    let jaw = Jaw::new(&part, 1e6, 0.8);
    let grip = jaw.grip(FORCE, 0.01);
    let learned = learn(&grip, grip.aim().unwrap(), &[]).unwrap();
    assert!((learned.tilt.unwrap().stiffness / 1e6 - 1.0).abs() < 1e-12, "{learned:?}");
    assert_eq!(learned.taper, grip.aim().unwrap().taper, "the right taper");
}
