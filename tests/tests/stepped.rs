//! Stepped parts as users type them: solved, or refused at the step that is at fault.

#![allow(clippy::unwrap_used, clippy::panic, reason = "what must be accepted or refused and is not must fail")]

use std::time::{Duration, Instant};

use holdround_core::evaluate;
use holdround_core::findings::Findings;
use holdround_core::setup::{Entries, Fault, Setup};
use holdround_tests::job::enter;
use holdround_tests::job::listed;
use proptest::prelude::*;

/// A step as typed, mm: length, outside, bore.
type Typed = (f64, f64, f64);

/// What is wrong, the steps, other entries, and the entry at fault.
type Faulty = (&'static str, &'static [Typed], &'static [(&'static str, &'static str)], &'static str);

/// A part of steps in the default jaws, with other entries set.
fn part(steps: &[Typed], others: &[(&str, &str)]) -> Entries {
    let mut entries = Entries::default();
    entries.set("part.shape", "steps");
    entries.set("cuts.0.kind", "power");
    for (at, (length, outside, bore)) in steps.iter().enumerate() {
        for (field, value) in [("length", length), ("outside", outside), ("bore", bore)] {
            enter(&mut entries, &[(&format!("steps.{at}.{field}"), &format!("{value} mm"))]);
        }
    }
    entries.set("cuts.0.diameter", &format!("{} mm", steps[0].1));
    enter(&mut entries, others);
    entries
}

/// The findings, all of whose numbers are numbers.
fn findings(entries: &Entries) -> Result<Findings, Vec<Fault>> {
    let findings = evaluate(&Setup::read(entries)?);
    for finding in &findings.findings {
        assert!(finding.value.as_ref().map_or(true, |value| value.is_finite()), "{} is no number", finding.id);
        for step in &finding.steps {
            assert!(step.result.value.is_finite(), "{}: {step:?}", finding.id);
        }
        if let Some((least, most)) = finding.band {
            assert!(least.is_finite() && most.is_finite() && least <= most, "{}: {least} to {most}", finding.id);
        }
    }
    // A shape that is refused has no trace.
    let scene = serde_json::to_string(&findings.scene).unwrap().replace(r#""trace":null"#, "");
    assert!(!scene.contains("null"), "the scene holds a number that is none: {scene}");
    Ok(findings)
}

#[test]
fn faulty_profiles_are_refused_at_the_step_that_is_at_fault() {
    const TUBE: Typed = (20.0, 100.0, 80.0);
    let cases: [Faulty; 14] = [
        ("the inside crosses the outside", &[TUBE, (20.0, 70.0, 75.0)], &[], "steps.1.bore"),
        ("no wall", &[TUBE, (20.0, 100.0, 100.0)], &[], "steps.1.bore"),
        ("a wall of 1/200 of the radius", &[TUBE, (20.0, 100.0, 99.5)], &[], "steps.1.bore"),
        ("a wall that vanishes at the far end", &[TUBE], &[("steps.0.bore_end", "100 mm")], "steps.0.bore"),
        ("a gap between steps", &[TUBE, (20.0, 80.0, 60.0)], &[], "steps.1.bore"),
        ("a step without length", &[TUBE, (0.0, 100.0, 80.0)], &[], "steps.1.length"),
        ("a step of 0.1 mm on 2 m", &[(20.0, 2000.0, 1800.0), (0.1, 2000.0, 1800.0)], &[], "steps.1.length"),
        ("a negative bore", &[TUBE, (20.0, 100.0, -1.0)], &[], "steps.1.bore"),
        ("the grip beyond the part", &[TUBE], &[("grip.start", "5 mm")], "grip.length"),
        ("the grip off the part", &[TUBE], &[("grip.start", "25 mm")], "grip.start"),
        ("a diameter change in the grip", &[(10.0, 100.0, 80.0), (20.0, 110.0, 80.0)], &[], "grip.length"),
        ("a cone in the grip", &[TUBE], &[("steps.0.outside_end", "101 mm")], "grip.length"),
        (
            "a flange behind the grip in the jaws' way",
            &[(5.0, 120.0, 80.0), (30.0, 100.0, 80.0)],
            &[("grip.start", "5 mm"), ("grip.length", "20 mm")],
            "jaws.step",
        ),
        (
            "jaws that would overlap",
            &[(30.0, 60.0, 40.0)],
            &[("jaws.width", "58 mm"), ("jaws.step", "15 mm"), ("cuts.0.distance", "0")],
            "jaws.width",
        ),
    ];
    for (what, steps, others, path) in cases {
        let faults = findings(&part(steps, others)).err().unwrap_or_default();
        assert!(faults.iter().any(|fault| fault.path == path), "{what}: {:?} is not at {path}", listed(&faults));
    }
}

#[test]
fn a_step_more_than_two_hundred_has_no_field() {
    let mut entries = part(&[(1.0, 100.0, 80.0); 200], &[]);
    assert!(!entries.set("steps.200.length", "1 mm"), "the 201st step cannot be typed");
    let step = r#"{"length": "1 mm", "outside": "100 mm", "bore": "80 mm"}"#;
    let document = |count: usize| format!(r#"{{"schema": 1, "steps": [{}]}}"#, vec![step; count].join(","));
    assert!(Entries::from_json(&document(200)).is_ok(), "200 steps are read");
    let faults = Entries::from_json(&document(201)).unwrap_err();
    assert!(faults.iter().any(|fault| fault.path.starts_with("steps")), "{}", listed(&faults));
}

#[test]
fn two_hundred_steps_are_solved_or_refused_within_seconds() {
    // A plain tube in 200 pieces, a comb of 100 fins, and a stair: most of the elements there can be.
    let tube = vec![(1.0, 100.0, 80.0); 200];
    let comb: Vec<Typed> = (0..200).map(|at| (1.0, if at % 2 == 0 { 100.0 } else { 90.0 }, 80.0)).collect();
    let stair: Vec<Typed> = (0..200).map(|at| (1.0, 100.0 + 0.5 * f64::from(at), 80.0)).collect();
    for (name, steps, grip) in [("tube", tube, "20 mm"), ("comb", comb, "1 mm"), ("stair", stair, "1 mm")] {
        let entries = part(&steps, &[("grip.length", grip)]);
        let start = Instant::now();
        let found = findings(&entries).unwrap_or_else(|faults| panic!("{name}: {}", listed(&faults)));
        let (took, shape) = (start.elapsed(), found.get("shape.roundness").unwrap());
        // Natively a second or so; the bound leaves room for a build without optimisation.
        assert!(took < Duration::from_secs(20), "{name} took {took:?}");
        if let Err(why) = &shape.value {
            assert!(why.to_string().len() > 20, "{name}: a reason in words: {why}");
        }
    }
}

fn steps() -> impl Strategy<Value = Vec<Typed>> {
    // Diameters that often hang together, and lengths over four powers of ten.
    prop::collection::vec((-1.0..2.0_f64, 0.0..1.0_f64, 0.0..1.0_f64), 1..6).prop_map(|drawn| {
        let step = |(length, outside, bore): (f64, f64, f64)| {
            let outside = 60.0 + 100.0 * outside;
            (libm::pow(10.0, length), outside, if bore < 0.2 { 0.0 } else { outside * bore })
        };
        drawn.into_iter().map(step).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn any_stepped_part_is_solved_or_refused_in_words(
        mut steps in steps(), gripped in 0.1..1.0_f64, inside in any::<bool>(), seat in any::<bool>(),
    ) {
        // Half of them with a first step that can be gripped.
        if seat {
            steps[0] = (20.0, 100.0, 80.0);
        }
        let length = format!("{} mm", steps[0].0 * gripped);
        let side = if inside { "inside" } else { "outside" };
        let start = Instant::now();
        match findings(&part(&steps, &[("grip.length", &length), ("grip.side", side), ("jaws.width", "20 mm")])) {
            Ok(found) => {
                let shape = found.get("shape.roundness").unwrap();
                prop_assert!(shape.value.as_ref().map_or_else(|why| why.to_string().len() > 20, |value| *value >= 0.0), "{shape:?}");
            }
            Err(faults) => {
                for fault in faults {
                    prop_assert!(!fault.allowed.is_empty() && !fault.remedy.is_empty(), "{fault}");
                }
            }
        }
        prop_assert!(start.elapsed() < Duration::from_secs(20), "{:?}", start.elapsed());
    }
}
