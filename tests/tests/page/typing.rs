//! Typing a set-up and reading the verdict.

use holdround_core::quantity::UnitSystem;
use holdround_tests::browser::{Browser, Viewport};
use serde_json::json;

use crate::sheet::{assert_no_nonsense, assert_shows, choose, entries, field, on_both_pages, type_at};

/// What is typed at the field of an entry, and what it means in millimetres and MPa.
const TYPED: [(&str, &str, &str); 9] = [
    ("part.outside_diameter", "120", "120 mm"),
    ("part.bore_diameter", "96,5", "96,5 mm"),
    ("part.length", "1 1/2 in", "1 1/2 in"),
    ("grip.length", "22", "22 mm"),
    ("run.pressure", "1.50", "1.50 MPa"),
    ("run.speed", "1200", "1200 rev/min"),
    ("cuts.0.diameter", "120", "120 mm"),
    ("cuts.0.distance", "4", "4 mm"),
    ("cuts.0.depth", "0.75", "0.75 mm"),
];

#[test]
fn a_set_up_typed_over_the_assumed_values_gets_what_the_engines_find() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        browser.click("#fresh");
        assert_shows(browser, &entries(&[]), UnitSystem::Metric, "the assumed values");
        choose(browser, "part.material", "aluminium-6061");
        for (path, typed, _) in TYPED {
            type_at(browser, path, typed);
        }
        let mut whole: Vec<_> = TYPED.iter().map(|(path, _, meant)| (*path, *meant)).collect();
        whole.push(("part.material", "aluminium-6061"));
        assert_shows(browser, &entries(&whole), UnitSystem::Metric, "the typed set-up");
        assert_no_nonsense(browser, "the typed set-up");

        type_at(browser, "run.pressure", "0.9");
        whole.push(("run.pressure", "0.9 MPa"));
        assert_shows(browser, &entries(&whole), UnitSystem::Metric, "less pressure on the same part");
    });
}

#[test]
fn a_change_of_units_and_back_leaves_what_was_typed() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        browser.click("#fresh");
        units(browser, "in");
        let typed = [
            ("part.outside_diameter", "6 1/4"),
            ("part.bore_diameter", "5.50"),
            ("part.length", "1,125"),
            ("cuts.0.diameter", "6.250"),
            ("cuts.0.distance", "1/4"),
        ];
        for (path, text) in typed {
            type_at(browser, path, text);
        }
        let inches = typed.map(|(path, text)| (path, format!("{text} in")));
        let meant = entries(&inches.each_ref().map(|(path, text)| (*path, text.as_str())));
        assert_shows(browser, &meant, UnitSystem::Inch, "typed in inches");

        units(browser, "mm");
        assert_shows(browser, &meant, UnitSystem::Metric, "the same in millimetres");
        // 1 in is 25.4 mm by definition (international yard and pound, 1959).
        let millimetres = ["158.75", "139.7", "28.575", "158.75", "6.35"];
        for ((path, _), text) in typed.iter().zip(millimetres) {
            assert_eq!(browser.value(&field(path)), text, "{path} in millimetres");
        }
        units(browser, "in");
        for (path, text) in typed {
            assert_eq!(browser.value(&field(path)), text, "{path} must come back as it was typed");
        }
        assert_shows(browser, &meant, UnitSystem::Inch, "and its findings too");
    });
}

/// Chooses the unit of length.
pub(crate) fn units(browser: &Browser, length: &str) {
    browser.click(&format!("#prefer-length option[value='{length}']"));
    browser.eventually("document.querySelector('#prefer-length').value", &json!(length), "the unit that was chosen");
}
