//! A part with steps.

use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_tests::browser::Viewport;
use serde_json::json;

use crate::sheet::{assert_no_nonsense, assert_shows, choose, entries, field, message, on_both_pages, open, type_at};

/// A flanged bushing: tube, flange, and a floor-free end.
pub(crate) fn flanged_bushing() -> Entries {
    entries(&[
        ("part.shape", "steps"),
        ("steps.0.length", "30 mm"),
        ("steps.0.outside", "90 mm"),
        ("steps.0.bore", "70 mm"),
        ("steps.1.length", "8 mm"),
        ("steps.1.outside", "130 mm"),
        ("steps.1.bore", "70 mm"),
        ("steps.2.length", "12 mm"),
        ("steps.2.outside", "84 mm"),
        ("steps.2.outside_end", "80 mm"),
        ("steps.2.bore", "66 mm"),
        ("cuts.0.diameter", "130 mm"),
        ("cuts.0.distance", "10 mm"),
        ("run.pressure", "1 MPa"),
    ])
}

#[test]
fn a_stepped_part_is_drawn_in_section_and_judged() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        let mut bushing = flanged_bushing();
        open(browser, &format!("{url}#{}", bushing.to_link()));
        assert_shows(browser, &bushing, UnitSystem::Metric, "the linked bushing");
        assert!(browser.is_shown("#section svg"), "its section is drawn");
        assert_no_nonsense(browser, "the linked bushing");
        let before = drawn(browser);

        type_at(browser, "steps.1.outside", "120");
        type_at(browser, "cuts.0.diameter", "120");
        bushing.set("steps.1.outside", "120 mm");
        bushing.set("cuts.0.diameter", "120 mm");
        assert_shows(browser, &bushing, UnitSystem::Metric, "with a smaller flange");
        assert_ne!(drawn(browser), before, "the section follows what is typed");

        type_at(browser, "steps.1.bore", "125");
        browser.wait_until("document.querySelector('#title-block .old')");
        browser.eventually(
            &format!("document.querySelector(\"{}\").getAttribute('aria-invalid')", field("steps.1.bore")),
            &json!("true"),
            "a step without a wall is told at its bore",
        );
        assert!(browser.text(&message("steps.1.bore")).contains("bore"), "in words");
        type_at(browser, "steps.1.bore", "70");
        assert_shows(browser, &bushing, UnitSystem::Metric, "put right");

        choose(browser, "part.shape", "ring");
        bushing.set("part.shape", "ring");
        type_at(browser, "cuts.0.diameter", "160");
        bushing.set("cuts.0.diameter", "160 mm");
        assert_shows(browser, &bushing, UnitSystem::Metric, "as a plain ring of the assumed sizes");
        choose(browser, "part.shape", "steps");
        assert_eq!(browser.value(&field("steps.1.outside")), "120", "the steps are still there");
    });
}

fn drawn(browser: &holdround_tests::browser::Browser) -> String {
    let section = browser.execute("return document.querySelector('#section svg').outerHTML", Vec::new());
    section.as_str().unwrap_or_default().to_owned()
}
