//! Wrong entries: told at their field, lost never.

use holdround_core::quantity::UnitSystem;
use holdround_core::setup::{Entries, Setup};
use holdround_tests::browser::Viewport;
use serde_json::json;

use crate::sheet::{assert_no_nonsense, assert_shows, field, first_example, found, message, on_both_pages, type_at};

/// What is typed at the field of an entry of the first example, whose entries are in millimetres.
const WRONG: [(&str, &str); 13] = [
    ("part.length", "-"),
    ("part.length", "abc"),
    ("part.length", "0"),
    ("part.length", "-1"),
    ("part.length", "NaN"),
    ("part.length", "1e308"),
    ("part.length", "1e999"),
    ("part.length", "<i>9</i>"),
    ("part.bore_diameter", "200"),
    ("run.speed", "-5"),
    ("run.pressure", "1,000.5"),
    ("cuts.0.distance", "500"),
    ("jaws.width", "400"),
];

#[test]
fn a_wrong_entry_is_told_at_its_field_and_the_last_good_findings_are_marked() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let right = first_example();
        assert_shows(browser, &right, UnitSystem::Metric, "before");
        for (path, typed) in WRONG {
            let case = format!("{typed:?} at {path}");
            let before = browser.value(&field(path));
            let told = told_outside(&right, path, typed);
            assert!(!told.is_empty(), "{case} must be a fault of that entry");
            type_at(browser, path, typed);
            browser.wait_until("document.querySelector('#title-block .old')");
            browser.eventually(
                &format!("document.querySelector(\"{}\").getAttribute('aria-invalid')", field(path)),
                &json!("true"),
                &case,
            );
            let words = browser.text(&message(path));
            for part in told {
                assert!(words.contains(&part), "{case}: the message must say {part:?}: {words:?}");
            }
            assert_eq!(browser.value(&field(path)), typed, "{case}: what was typed must stay");
            // Asked in one go: the verdict may be drawn anew at any time.
            browser.eventually(
                "document.querySelector('#title-block .stale').checkVisibility()",
                &json!(true),
                &format!("{case}: old findings must be marked as such"),
            );
            browser.eventually(
                "document.querySelector('#verdict h2 svg').classList.contains('refused')",
                &json!(true),
                &format!("{case}: there is no verdict on a wrong entry"),
            );
            assert_no_nonsense(browser, &case);
            type_at(browser, path, &before);
            browser.wait_until("!document.querySelector('#title-block .old')");
        }
        assert_shows(browser, &right, UnitSystem::Metric, "all put right");
    });
}

/// What the engines say must be done about `typed` at `path`, asked outside the browser.
fn told_outside(right: &Entries, path: &str, typed: &str) -> Vec<String> {
    let mut wrong = right.clone();
    let unit = if typed.is_empty() { "" } else { unit_at(path) };
    wrong.set(path, &format!("{typed}{unit}"));
    let faults = Setup::read(&wrong).err().unwrap_or_default();
    faults.into_iter().filter(|fault| fault.path == path).map(|fault| fault.remedy.to_string()).collect()
}

fn unit_at(path: &str) -> &'static str {
    match path {
        "run.speed" => " rev/min",
        "run.pressure" => " MPa",
        _ => " mm",
    }
}

#[test]
fn a_speed_over_the_plate_is_told_at_its_field_and_in_the_verdict() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let mut fast = first_example();
        fast.set("run.speed", "4300 rev/min");
        let limit = found(&fast).get("speed.set").and_then(|finding| finding.limit.clone()).expect("a limit of speed");
        assert!(limit.value < 4300.0 / 60.0 * std::f64::consts::TAU, "the speed is over its limit: {limit:?}");
        type_at(browser, "run.speed", "4300");
        assert_shows(browser, &fast, UnitSystem::Metric, "an excessive speed still has findings");
        browser.wait_until("document.querySelector('#verdict h2 svg.beyond')");
        assert!(
            browser.text(&message("run.speed")).contains(&limit.origin.to_string()),
            "the field must say where its limit comes from: {}",
            browser.text(&message("run.speed"))
        );
        assert_eq!(
            browser.attribute(&field("run.speed"), "aria-invalid").as_deref(),
            Some("false"),
            "the entry is valid; the job is not safe"
        );
    });
}
