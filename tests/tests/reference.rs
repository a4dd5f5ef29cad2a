//! Every reference check holds, and none could hold by accident.

#![allow(clippy::unwrap_used, reason = "a reference file that cannot be read must fail")]

use holdround_tests::reference::{Check, Expected, Tolerance, topics};

fn checks() -> Vec<(String, Check)> {
    let topics = topics().unwrap();
    topics.into_iter().flat_map(|(file, topic)| topic.checks.into_iter().map(move |c| (file.clone(), c))).collect()
}

#[test]
fn every_reference_check_holds() {
    let mut misses = Vec::new();
    let checks = checks();
    for (file, check) in &checks {
        misses.extend(check.misses().iter().map(|miss| format!("{file}: {}: {miss}", check.claim)));
    }
    assert!(misses.is_empty(), "{} of {} checks missed:\n{}", misses.len(), checks.len(), misses.join("\n"));
    assert!(checks.len() >= 60, "only {} checks were read", checks.len());
}

#[test]
fn every_check_names_its_source_and_the_reason_of_its_tolerance() {
    for (file, Check { claim, source, tolerance, expect, .. }) in checks() {
        assert!(claim.len() > 15, "{file}: a claim is a sentence: {claim:?}");
        assert!(source.len() > 10, "{file}: {claim}: no source");
        assert!(tolerance.because.len() > 5, "{file}: {claim}: no reason for the tolerance");
        assert!(!expect.is_empty(), "{file}: {claim}: nothing is expected");
        assert!((0.0..0.1).contains(&tolerance.relative), "{file}: {claim}: anything would pass");
    }
}

/// The same check with one expectation put just out of reach.
fn perturbed(check: &Check, name: &str) -> Check {
    let mut wrong = check.clone();
    let expected = wrong.expect.get_mut(name).unwrap();
    *expected = match *expected {
        Expected::Value(value) => {
            let reach = check.tolerance.about(value);
            Expected::Value(if reach > 0.0 { value + 3.0 * reach } else { value.next_up().next_up() })
        }
        // What is at least 10 cannot be at most just less than 10.
        Expected::AtLeast { at_least } => Expected::AtMost { at_most: at_least.next_down() },
        Expected::AtMost { at_most } => Expected::AtLeast { at_least: at_most.next_up() },
    };
    wrong
}

#[test]
fn a_wrong_expectation_is_seen_in_every_check() {
    for (file, check) in checks() {
        for name in check.expect.keys() {
            let misses = perturbed(&check, name).misses();
            let [miss] = misses.as_slice() else {
                panic!("{file}: {}: {name} put wrong gives {misses:?}", check.claim)
            };
            assert!(miss.starts_with(name.as_str()), "{file}: the miss names {name}: {miss}");
        }
    }
}

#[test]
fn a_check_that_asks_for_what_is_not_there_fails() {
    let check = |text: &str| serde_json::from_str::<Check>(text).unwrap();
    let unknown_engine =
        check(r#"{"claim": "", "source": "", "tolerance": {"because": ""}, "engine": "none", "expect": {"x": 1}}"#);
    assert_eq!(unknown_engine.misses(), ["no engine none"], "an engine that is not there");
    let unknown_finding =
        check(r#"{"claim": "", "source": "", "tolerance": {"because": ""}, "setup": {}, "expect": {"none": 1}}"#);
    assert_eq!(unknown_finding.misses(), ["no finding none"], "a finding that is not there");
    let faulty = check(
        r#"{"claim": "", "source": "", "tolerance": {"because": ""},
            "setup": {"entries": {"part.length": "-1"}}, "expect": {"grip.rest": 1}}"#,
    );
    assert!(faulty.misses()[0].contains("part.length"), "a set-up that is not valid: {:?}", faulty.misses());
    let nothing = Tolerance { relative: 1e9, absolute: 0.0, because: String::new() };
    let mut nan = unknown_finding;
    nan.tolerance = nothing;
    nan.expect = [("grip.rest".to_string(), Expected::Value(f64::NAN))].into();
    assert_eq!(nan.misses().len(), 1, "what is not a number is met by nothing");
}
