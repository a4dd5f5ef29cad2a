//! What holds of every job, tried on jobs drawn from the declarations of the inputs.

#![allow(clippy::unwrap_used, reason = "what a drawn job is known to have and has not must fail")]

use holdround_core::findings::Findings;
use holdround_core::setup::{Entries, Setup};
use holdround_core::{Effort, Engine, evaluate};
use holdround_tests::job::enter;
use holdround_tests::jobs::{DRAWS, Spread, in_other_units, job};
use proptest::prelude::*;
use serde_json::Value;

/// The order of the shortest digits that double precision keeps through a few thousand operations.
const ROUNDING: f64 = 1e-9;
/// The hold is bracketed to 1e-7, and its worst angle refined until it gains less than 1e-6.
const SOLVER: f64 = 1e-5;

fn draws() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(0.0..=1.0_f64, DRAWS)
}

fn near() -> impl Strategy<Value = Entries> {
    draws().prop_map(|draws| job(&draws, Spread::Near)).prop_filter("a valid job", |job| Setup::read(job).is_ok())
}

fn findings(entries: &Entries) -> Findings {
    evaluate(&Setup::read(entries).unwrap())
}

/// A job evaluated with some entries changed, time and again; shape work is done once.
struct Bench {
    entries: Entries,
    engine: Engine,
}

impl Bench {
    fn of(entries: &Entries) -> Self {
        Self { entries: entries.clone(), engine: Engine::default() }
    }

    /// The findings with some entries changed; none if they are then no job.
    fn with(&mut self, changes: &[(&str, &str)]) -> Option<Findings> {
        let mut entries = self.entries.clone();
        enter(&mut entries, changes);
        Setup::read(&entries).ok().map(|setup| self.engine.evaluate(&setup, Effort::Full))
    }
}

fn value(findings: &Findings, id: &str) -> Option<f64> {
    findings.get(id).and_then(|finding| finding.value.clone().ok())
}

/// Every number of a document is one: serde writes what is not finite as null.
fn holds_only_numbers(findings: &Findings) -> Result<(), TestCaseError> {
    let document = serde_json::to_value(findings).unwrap();
    for finding in document["findings"].as_array().unwrap() {
        let id = &finding["id"];
        prop_assert!(finding["value"].is_number() != finding["refused"].is_string(), "{id}: a value or a refusal");
        for step in finding["steps"].as_array().unwrap() {
            prop_assert!(step["result"]["value"].is_number(), "{id}: {}", step);
            let given = step["given"].as_array().unwrap();
            prop_assert!(given.iter().all(|term| term["value"].is_number()), "{id}: {}", step);
        }
        for pair in finding["band"].as_array().into_iter().flatten() {
            prop_assert!(pair.is_number(), "{id}: band {}", finding["band"]);
        }
        if let Some(limit) = finding["limit"].as_object() {
            prop_assert!(limit["value"].is_number(), "{id}: limit {limit:?}");
        }
    }
    prop_assert!(!has_null(&document["scene"]), "scene {}", document["scene"]);
    Ok(())
}

fn has_null(value: &Value) -> bool {
    match value {
        Value::Null => true,
        Value::Array(items) => items.iter().any(has_null),
        // A shape that is refused has no trace.
        Value::Object(fields) => fields.iter().any(|(name, field)| name != "trace" && has_null(field)),
        _ => false,
    }
}

#[test]
fn a_good_share_of_the_jobs_drawn_is_valid() {
    use proptest::strategy::ValueTree;
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    for (spread, least) in [(Spread::Near, 0.35), (Spread::Far, 0.015)] {
        let valid = (0..1000)
            .filter(|_| Setup::read(&job(&draws().new_tree(&mut runner).unwrap().current(), spread)).is_ok())
            .count();
        assert!(valid as f64 >= 1000.0 * least, "{valid} of 1000 jobs drawn {spread:?} are valid");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, max_local_rejects: 100_000, ..ProptestConfig::default() })]

    #[test]
    fn every_number_found_is_a_number(draws in draws(), far in any::<bool>()) {
        let entries = job(&draws, if far { Spread::Far } else { Spread::Near });
        if let Ok(setup) = Setup::read(&entries) {
            holds_only_numbers(&evaluate(&setup))?;
        }
    }

}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, max_local_rejects: 100_000, ..ProptestConfig::default() })]

    #[test]
    fn entries_come_back_from_json_and_from_a_link(draws in draws(), far in any::<bool>(), name in ".{0,80}") {
        let mut entries = job(&draws, if far { Spread::Far } else { Spread::Near });
        entries.set("job.name", &name);
        prop_assert_eq!(&Entries::from_json(&entries.to_json()).unwrap(), &entries);
        prop_assert_eq!(&Entries::from_link(&entries.to_link()).unwrap(), &entries);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 16, max_local_rejects: 100_000, ..ProptestConfig::default() })]

    #[test]
    fn the_same_job_gives_the_same_bits(entries in near()) {
        let write = |findings| serde_json::to_string(&findings).unwrap();
        prop_assert_eq!(write(findings(&entries)), write(findings(&entries)));
    }

    #[test]
    fn the_unit_a_job_is_typed_in_makes_no_difference(entries in near()) {
        let other = in_other_units(&entries);
        // Rounding may put an entry that stood on a bound beyond it.
        prop_assume!(Setup::read(&other).is_ok());
        let (one, other) = (findings(&entries), findings(&other));
        prop_assert_eq!(one.findings.len(), other.findings.len());
        for (one, other) in one.findings.iter().zip(&other.findings) {
            prop_assert_eq!(&one.id, &other.id);
            let solved = ["hold.", "grip.needed", "pressure.least", "taper."].iter().any(|id| one.id.starts_with(id));
            match (&one.value, &other.value) {
                (Ok(a), Ok(b)) => {
                    let tolerance = if solved { SOLVER } else { ROUNDING };
                    // The last refinement's change is the difference of two nearly equal shapes.
                    // What is left between two places on the chuck is the difference of lengths of a tenth of a metre.
                    let place = ["stroke.", "ring.", "recut."].iter().any(|topic| one.id.starts_with(topic));
                    // Straightness is what is left between displacements of many times its size.
                    let shape = one.id.starts_with("shape.straightness");
                    let least = if one.id == "shape.settled" {
                        1.0
                    } else if place {
                        0.1
                    } else if shape {
                        1e-7
                    } else {
                        1e-12
                    };
                    prop_assert!((a - b).abs() <= tolerance * a.abs().max(least), "{}: {} against {}", one.id, a, b);
                }
                (a, b) => prop_assert_eq!(a, b, "{}", one.id),
            }
        }
    }

    #[test]
    fn more_pressure_never_grips_less(entries in near(), low in 0.5..2.0_f64, more in 1.0..2.0_f64) {
        let mut bench = Bench::of(&entries);
        // With two pressures the one for finishing may not be the greater.
        let one = ("run.pressures", "one");
        let mut at = |pressure: f64| bench.with(&[one, ("run.pressure", &format!("{pressure} MPa"))]).unwrap();
        let (one, two) = (at(low), at(low * more));
        if let (Some(one), Some(two)) = (value(&one, "grip.rest"), value(&two, "grip.rest")) {
            prop_assert!(two >= one * (1.0 - ROUNDING), "{two} under {one}");
        }
    }

    #[test]
    fn speed_takes_from_an_outside_grip_and_never_from_an_inside_one(
        entries in near(), slow in 0.0..3000.0_f64, more in 0.0..2000.0_f64,
    ) {
        let mut bench = Bench::of(&entries);
        let mut at = |speed: f64| bench.with(&[("run.speed", &format!("{speed} rev/min"))]).unwrap();
        let (one, two) = (at(slow), at(slow + more));
        let outside = entries.get("grip.side") == Some("outside");
        if let (Some(one), Some(two)) = (value(&one, "grip.speed"), value(&two, "grip.speed")) {
            prop_assert!(if outside { two <= one } else { two >= one }, "{one} then {two}, outside: {outside}");
        }
        if let (Some(one), Some(two)) = (value(&one, "spin.force"), value(&two, "spin.force")) {
            let square = (slow + more) * (slow + more) / (slow * slow).max(1e-9);
            prop_assert!(slow < 1.0 || (two / one / square - 1.0).abs() < ROUNDING, "{two} over {one} is not {square}");
        }
    }

    #[test]
    fn the_hold_factor_is_proportional_to_friction_where_friction_holds(
        entries in near(), friction in 0.03..0.25_f64, more in 1.0..2.0_f64,
    ) {
        let mut bench = Bench::of(&entries);
        let mut at = |friction: f64| bench.with(&[("grip.friction", &format!("{friction}"))]).unwrap();
        let (one, two) = (at(friction), at(friction * more));
        let told = |findings: &Findings| {
            let finding = findings.get("hold.factor").unwrap();
            finding.value.clone().ok().map(|value| (value, finding.caution.as_ref().map(ToString::to_string).unwrap_or_default()))
        };
        if let (Some((one, how)), Some((two, then))) = (told(&one), told(&two)) {
            prop_assert!(two >= one * (1.0 - SOLVER), "more friction holds no less: {one}, {two}");
            prop_assert!(two <= one * more * (1.0 + SOLVER), "nor more than in proportion: {one}, {two}, {more}");
            // A centre bears some of the load itself, whatever the friction.
            let alone = entries.get("grip.tail") != Some("centre");
            let slips = |how: &str| alone && !how.contains("lifts off") && !how.contains("off its seat");
            if slips(&how) && slips(&then) {
                prop_assert!((two / one / more - 1.0).abs() < SOLVER || one == 0.0, "{one}, {two}, {more}: {how} {then}");
            }
        }
    }

    #[test]
    fn of_two_cuts_the_one_that_strains_the_grip_more_decides(entries in near(), other in draws()) {
        let other = job(&other, Spread::Near);
        let cut = |path: &str| path.strip_prefix("cuts.0.").map(str::to_string);
        let (mut second, mut both, mut swapped) = (entries.clone(), entries.clone(), entries.clone());
        for (field, text) in entries.iter().filter_map(|(path, text)| Some((cut(path)?, text))) {
            // Where the tool stands hangs on the part's own sizes.
            let kept = field == "diameter" || field == "distance";
            let changed = if kept { text } else { other.get(&format!("cuts.0.{field}")).unwrap() };
            second.set(&format!("cuts.0.{field}"), changed);
            both.set(&format!("cuts.1.{field}"), changed);
            swapped.set(&format!("cuts.0.{field}"), changed);
            swapped.set(&format!("cuts.1.{field}"), text);
        }
        prop_assume!(Setup::read(&both).is_ok() && Setup::read(&swapped).is_ok() && Setup::read(&second).is_ok());
        // The cuts change nothing of the shapes.
        let mut engine = Engine::default();
        let mut factor = |entries: &Entries| {
            value(&engine.evaluate(&Setup::read(entries).unwrap(), Effort::Sliding), "hold.factor")
        };
        if let (Some(one), Some(two)) = (factor(&entries), factor(&second)) {
            let least = one.min(two);
            for found in [factor(&both), factor(&swapped)] {
                let found = found.unwrap();
                prop_assert!((found - least).abs() <= SOLVER * least, "{found}, of {one} and {two}");
            }
        }
    }

    #[test]
    fn shapes_are_proportional_to_pressure_at_standstill_in_jaws_bored_to_size_at_that_pressure(
        entries in near(), more in 1.0..2.0_f64,
    ) {
        let mut bench = Bench::of(&entries);
        let mut at = |pressure: f64| {
            bench.with(&[
                ("chuck.grip_from", "plate"), ("run.speed", "0"), ("cuts.0.kind", "turning"),
                ("jaws.bored_diameter", ""), ("jaws.boring_pressure", ""), ("jaws.taper", "0"),
                ("grip.upper_deviation", "0"), ("grip.lower_deviation", "0"),
                ("run.pressure", &format!("{pressure} MPa")),
            ])
        };
        let (Some(one), Some(two)) = (at(0.1), at(0.1 * more)) else { return Ok(()) };
        let shape = |id: &str| id.starts_with("shape.") && id != "shape.settled";
        for finding in one.findings.iter().filter(|finding| shape(&finding.id)) {
            if let (Ok(one), Some(two)) = (&finding.value, value(&two, &finding.id)) {
                // Where hardly any lobe is left, what is left is rounding.
                let rounding = ROUNDING * one.abs() + 1e-15;
                prop_assert!((two - one * more).abs() <= rounding, "{}: {one}, {two}, {more}", finding.id);
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, max_local_rejects: 100_000, ..ProptestConfig::default() })]

    #[test]
    fn a_tilt_stiffness_put_in_is_told_by_its_lobes_or_none_is(mut entries in near(), power in -0.9..0.9_f64) {
        for (path, text) in [
            ("chuck.tilt_stiffness", "1000000"),
            ("indicator.use", "once"),
            ("indicator.surface", "outside"),
            ("indicator.start", "0 °"),
            ("indicator.unit", "0.001 mm"),
            ("indicator.resolution", "0.01 µm"),
        ] {
            entries.set(path, text);
        }
        let put_in = 1e6 * libm::pow(4.0, power);
        let mut bench = Bench::of(&entries);
        let there = bench.with(&[("chuck.tilt_stiffness", &put_in.to_string())]);
        let shape = there.and_then(|found| found.scene.indicator?.predicted);
        if let Some(shape) = shape {
            for at in 0..12 {
                let y = 1e6 * shape.at(std::f64::consts::TAU * f64::from(at) / 12.0);
                // No reading is beyond 5 mm.
                prop_assume!(y.abs() < 4e3);
                entries.set(&format!("dial.{at}.reading"), &holdround_core::quantity::fixed(y, 5));
            }
            let found = findings(&entries);
            if let Some(told) = value(&found, "indicator.tilt") {
                // Waves above the twelve stations' reach fold back alike on both sides; what is left is the root's.
                prop_assert!((told / put_in - 1.0).abs() < 0.03, "{told} N m/rad for {put_in}");
                let (least, most) = found.get("indicator.tilt").and_then(|finding| finding.band).unwrap();
                prop_assert!(least <= told && told <= most, "{told} in {least} to {most}");
            }
        }
    }
}
