//! The page under a finger.

use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::json;

use crate::sheet::{assert_shows, field, first_example, on_both_pages, open, type_at};

const PRESSURE: &str = "[id='slide-run.pressure']";
const THUMB: f64 = 44.0;

#[test]
fn a_finger_releases_the_part_and_drags_the_pressure() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let clamped = "document.querySelector('#views').dataset.clamped";
        browser.tap("#clamp");
        browser.eventually(clamped, &json!("false"), "a tap releases");
        browser.tap("#clamp");
        browser.eventually(clamped, &json!("true"), "and another clamps again");
        let runs = "document.querySelector('#views').dataset.spinning";
        browser.tap("#spin");
        browser.eventually(runs, &json!("true"), "a tap spins");
        browser.tap("#clamp");
        browser.eventually(runs, &json!("false"), "a spindle stops before the jaws open");

        drag_pressure(browser, 0.5);
        let dragged = pressed(browser);
        assert_ne!(dragged, first_example(), "a finger moves the pressure");
        assert_shows(browser, &dragged, UnitSystem::Metric, "under the dragged pressure");
        drag_pressure(browser, 0.1);
        assert_ne!(pressed(browser), dragged, "and back");
        assert_shows(browser, &pressed(browser), UnitSystem::Metric, "under less pressure");
    });
}

/// Drags the thumb of the pressure slider to a share of its way.
fn drag_pressure(browser: &Browser, share: f64) {
    let slider = browser.execute(
        "const slider = document.querySelector(arguments[0]);
        slider.scrollIntoView({ block: 'center', behavior: 'instant' });
        const box = slider.getBoundingClientRect();
        const [value, least, most] = [slider.value, slider.min, slider.max].map(Number);
        return [box.x, box.y + box.height / 2, box.width, (value - least) / (most - least)]",
        vec![json!(PRESSURE)],
    );
    let number = |at: usize| slider[at].as_f64().unwrap();
    let at = |share: f64| (number(0) + THUMB / 2.0 + (number(2) - THUMB) * share, number(1));
    browser.drag(at(number(3)), at(share));
}

/// The first example under the pressure that stands in its field.
fn pressed(browser: &Browser) -> Entries {
    let mut entries = first_example();
    entries.set("run.pressure", &format!("{} MPa", browser.value(&field("run.pressure"))));
    entries
}

/// WCAG 2.2, 2.5.5 (enhanced): targets of 44 by 44 CSS pixels at least.
const SMALL: &str = "
    return [...document.querySelectorAll('button, select, input, textarea, summary')]
        .map((element) => [element, (element.matches('.heard') ? element.labels[0] : element).getBoundingClientRect()])
        .filter(([, box]) => box.width > 0 && (box.width < 43.99 || box.height < 43.99))
        .map(([element, box]) => `${element.id || element.outerHTML.slice(0, 80)}: ${box.width} x ${box.height}`)";

#[test]
fn every_target_is_large_enough_for_a_finger() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &format!("{}#junk", site.url()));
    for state in ["right", "wrong", "open"] {
        if state == "wrong" {
            type_at(&browser, "part.length", "-3");
            browser.wait_until("document.querySelector('#title-block .old')");
        }
        if state == "open" {
            browser.execute("document.querySelectorAll('details').forEach((line) => { line.open = true })", Vec::new());
        }
        for viewport in [Viewport::TABLET, Viewport::TABLET_UPRIGHT, Viewport::PHONE] {
            browser.resize(viewport);
            assert_eq!(
                browser.execute(SMALL, Vec::new()),
                json!([]),
                "too small for a finger, {state}, on {viewport:?}"
            );
        }
    }
}
