//! Taking back, and what is spoken.

use holdround_core::quantity::UnitSystem;
use holdround_tests::browser::Viewport;
use serde_json::json;
use thirtyfour::Key;

use crate::sheet::{assert_shows, come_to_rest, field, first_example, found, on_both_pages, type_at, written};

#[test]
fn changes_are_taken_back_and_done_again() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let first = first_example();
        let mut slower = first.clone();
        slower.set("run.speed", "300 rev/min");
        type_at(browser, "run.speed", "300");
        assert_shows(browser, &slower, UnitSystem::Metric, "typed");
        browser.click("#undo");
        assert_shows(browser, &first, UnitSystem::Metric, "taken back");
        browser.eventually("document.querySelector(\"[id='in-run.speed']\").value", &json!("650"), "the field follows");
        browser.click("#redo");
        assert_shows(browser, &slower, UnitSystem::Metric, "done again");

        browser.click("#add-cuts");
        type_at(browser, "cuts.1.depth", "0,8");
        type_at(browser, "cuts.1.feed", "0.3");
        browser.eventually("!!document.querySelector(\"[id='in-cuts.1.depth']\")", &json!(true), "a second cut");
        browser.click("#remove-cuts-1");
        browser.eventually("document.querySelectorAll(\"[id^='in-cuts.1.']\").length", &json!(0), "it is removed");
        assert_shows(browser, &slower, UnitSystem::Metric, "without the second cut");
        // Outside a text field the keys take back what the button takes back.
        browser.press(Key::Control + "z");
        browser.eventually("!!document.querySelector(\"[id='in-cuts.1.depth']\")", &json!(true), "the cut is back");
        assert_eq!(browser.value(&field("cuts.1.depth")), "0,8", "with what was typed");
        assert_eq!(browser.value(&field("cuts.1.feed")), "0.3", "with what was typed");
        browser.press(Key::Control + "y");
        browser.eventually("document.querySelectorAll(\"[id^='in-cuts.1.']\").length", &json!(0), "and gone again");
    });
}

#[test]
fn a_visit_of_a_slider_is_one_change() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let slider = "[id='slide-run.speed']";
        let at = "document.querySelector(\"[id='slide-run.speed']\").value";
        let pressed = |times: usize| {
            browser.execute("document.querySelector(arguments[0]).focus()", vec![json!(slider)]);
            for _ in 0..times {
                browser.press(Key::Right);
            }
            // What is worked out, and the slider, follow after a pause.
            come_to_rest(browser);
            browser.value(slider)
        };
        let stood = browser.value(slider);
        let first = pressed(3);
        assert_ne!(first, stood, "the arrows move it");
        browser.execute("document.activeElement.blur()", Vec::new());
        let second = pressed(2);
        assert_ne!(second, first, "and move it again");
        browser.click("#undo");
        browser.eventually(at, &json!(first), "the second visit is taken back at once");
        browser.click("#undo");
        browser.eventually(at, &json!(stood), "and the first");
    });
}

#[test]
fn the_verdict_is_spoken_once_a_change_has_settled() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let mut slower = first_example();
        slower.set("run.speed", "400 rev/min");
        type_at(browser, "run.speed", "400");
        let hold = written(found(&slower).get("hold.factor").unwrap(), UnitSystem::Metric);
        let says = |words: &str| format!("document.querySelector('#spoken').textContent.includes({})", json!(words));
        browser.eventually(&says(&hold), &json!(true), "the hold factor is spoken");
        let heard = browser.execute("return document.querySelector('#verdict h2').textContent.trim()", Vec::new());
        browser.eventually(&says(heard.as_str().unwrap()), &json!(true), "the verdict is spoken in its own words");
        assert_eq!(browser.attribute("#spoken", "aria-live").as_deref(), Some("polite"), "it interrupts nobody");

        type_at(browser, "part.length", "?");
        browser.eventually(&says(&hold), &json!(false), "no old figure is spoken of a wrong entry");
    });
}
