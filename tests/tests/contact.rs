//! What must hold of jaws that decide for themselves where they bear, through set-ups.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a job that is no job must fail")]

use holdround_core::examples::EXAMPLES;
use holdround_core::findings::Findings;
use holdround_core::setup::{Entries, Setup};
use holdround_core::{Effort, Engine};
use holdround_tests::job::enter;
use holdround_tests::job::listed;
use holdround_tests::solids::{Fineness, cases};

/// A job worked on with one engine.
struct Bench {
    entries: Entries,
    engine: Engine,
}

impl Bench {
    fn of(entries: &[(&str, &str)]) -> Self {
        let mut bench = Self { entries: Entries::default(), engine: Engine::default() };
        bench.set(entries);
        bench
    }

    fn set(&mut self, entries: &[(&str, &str)]) {
        enter(&mut self.entries, entries);
    }

    fn with(&mut self, entries: &[(&str, &str)]) -> Findings {
        self.set(entries);
        let setup = Setup::read(&self.entries).unwrap_or_else(|faults| panic!("{}", listed(&faults)));
        self.engine.evaluate(&setup, Effort::Full)
    }
}

fn value(findings: &Findings, id: &str) -> f64 {
    findings.get(id).unwrap_or_else(|| panic!("no {id}")).value.clone().unwrap()
}

/// A tube in wide jaws at rest, gripped from outside or inside.
fn tube(side: &str) -> Bench {
    Bench::of(&[
        ("grip.side", side),
        ("part.outside_diameter", "160 mm"),
        ("part.bore_diameter", "110 mm"),
        ("part.length", "30 mm"),
        ("grip.length", "20 mm"),
        ("jaws.kind", "wide"),
        ("jaws.angle", "80°"),
        ("jaws.length", "60 mm"),
        ("jaws.step", "5 mm"),
        ("run.pressure", "0.5 MPa"),
        ("run.speed", "0"),
    ])
}

#[test]
fn jaws_bored_larger_bear_in_the_middle_outside_and_at_the_edges_inside() {
    let bearing =
        |bench: &mut Bench, bored: &str| value(&bench.with(&[("jaws.bored_diameter", bored)]), "contact.bearing");
    let mut outside = tube("outside");
    let [smaller, equal, larger] = ["159.9 mm", "160 mm", "160.1 mm"].map(|bored| bearing(&mut outside, bored));
    assert!(larger < equal && equal < smaller, "outside: larger {larger}, equal {equal}, smaller {smaller}");
    assert!(larger < 0.4 && smaller > 0.6, "outside: larger {larger}, smaller {smaller}");
    let mut inside = tube("inside");
    let [smaller, equal, larger] = ["109.9 mm", "110 mm", "110.1 mm"].map(|bored| bearing(&mut inside, bored));
    assert!(larger > equal && equal > smaller, "inside: larger {larger}, equal {equal}, smaller {smaller}");
    assert!(larger > 0.6 && smaller < 0.4, "inside: larger {larger}, smaller {smaller}");
}

#[test]
fn taper_closes_the_gap_at_the_tip() {
    let mut bench = tube("outside");
    bench.set(&[
        ("jaws.height", "100 mm"),
        ("part.length", "60 mm"),
        ("grip.length", "60 mm"),
        ("cuts.0.distance", "0"),
    ]);
    let gaps = ["0", "5 µm", "10 µm", "20 µm", "40 µm"]
        .map(|taper| value(&bench.with(&[("jaws.taper", taper)]), "contact.gap.tip"));
    assert!(gaps[0] > 1e-6, "tall jaws open at the tip: {gaps:?}");
    assert!(gaps.windows(2).all(|pair| pair[1] <= pair[0]), "more taper, less gap: {gaps:?}");
    assert_eq!(gaps[4], 0.0, "enough taper closes it: {gaps:?}");
}

#[test]
fn a_range_of_sizes_is_as_bad_as_the_worse_of_its_ends() {
    let mut bench = tube("outside");
    bench.set(&[("jaws.bored_diameter", "160.02 mm")]);
    let mut at = |upper: &str, lower: &str| {
        let found = bench.with(&[("grip.upper_deviation", upper), ("grip.lower_deviation", lower)]);
        ["shape.runout", "shape.roundness", "contact.pressure"].map(|id| value(&found, id))
    };
    let (range, largest, smallest) = (at("60 µm", "-40 µm"), at("60 µm", "60 µm"), at("-40 µm", "-40 µm"));
    for k in 0..3 {
        assert_eq!(range[k], largest[k].max(smallest[k]), "{k}: {range:?}, {largest:?}, {smallest:?}");
    }
}

#[test]
fn stiffer_master_jaws_come_nearer_to_rigid_ones() {
    // Jaws of the stiffest material there is keep their own give; the change from one factor to the next shrinks.
    let mut bench = tube("outside");
    let runs = [("1e6", "200"), ("1e7", "2000"), ("1e8", "20000"), ("9e8", "90000")].map(|(tilt, radial)| {
        let found = bench.with(&[
            ("chuck.tilt_stiffness", &format!("{tilt} N·m/rad")),
            ("chuck.radial_stiffness", &format!("{radial} N/µm")),
        ]);
        value(&found, "shape.runout")
    });
    let steps: Vec<f64> = runs.windows(2).map(|pair| (pair[1] - pair[0]).abs()).collect();
    assert!(steps.windows(2).all(|pair| pair[1] < pair[0]), "{runs:?}: each step smaller than the one before");
    assert!(steps[2] < 5e-3 * runs[3], "{runs:?}: at the end hardly anything is left to gain");
}

#[test]
fn the_same_force_twice_bends_twice_where_the_jaws_fit() {
    for case in cases().unwrap() {
        let solved = case.solve(Fineness { density: 0.6, cells: 8, along: 8 }).unwrap();
        let (one, two) = (solved.pressed(1e3).unwrap(), solved.pressed(2e3).unwrap());
        for (one, two) in one.iter().zip(&two) {
            assert!((two - 2.0 * one).abs() <= 1e-9 * two.abs(), "{}: {one:e} and {two:e}", case.name);
        }
    }
}

#[test]
fn a_job_seen_in_a_mirror_is_the_same_job() {
    for case in cases().unwrap() {
        let fineness = Fineness { density: 1.0, cells: 8, along: 8 };
        let here = case.solve(fineness).unwrap().pressed(1e3).unwrap();
        let there = case.mirrored().solve(fineness).unwrap().pressed(1e3).unwrap();
        for (here, there) in here.iter().zip(&there) {
            assert!((here - there).abs() <= 1e-6 * here.abs(), "{}: {here:e} and {there:e}", case.name);
        }
    }
}

#[test]
fn a_best_bore_at_the_end_of_the_search_is_not_told_as_one() {
    let (mut at_end, mut within) = (0, 0);
    for example in EXAMPLES {
        let entries = Entries::from_json(example.json).unwrap();
        let choice = Engine::default().bore_choice(&Setup::read(&entries).unwrap());
        let best = &choice.findings[0];
        let [at, from, to] = [best.value.clone().unwrap(), best.steps[0].given[0].value, best.steps[0].given[1].value];
        assert_eq!(choice.at_end, at <= from || at >= to, "{}: {at} in {from} to {to}", example.id);
        let told = best.name.to_string().starts_with("End of the search") && !best.name.contains("best");
        assert_eq!(told, choice.at_end, "{}: {}", example.id, best.name);
        let least = choice.curve.iter().map(|[_, roundness]| *roundness).fold(f64::INFINITY, f64::min);
        let ends = [choice.curve[0], choice.curve[choice.curve.len() - 1]];
        assert_eq!(ends.iter().any(|[_, end]| *end <= least), choice.at_end, "{}: as the curve has it", example.id);
        if choice.at_end { at_end += 1 } else { within += 1 }
    }
    assert!(at_end > 0 && within > 0, "both kinds occur: {at_end} at the end, {within} within");
}
