//! A job of one's own from a few answers.

use holdround_core::quantity::UnitSystem;
use holdround_core::setup::start;
use holdround_tests::browser::Viewport;
use serde_json::json;

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{assert_address_holds, assert_shows, come_to_rest, field, first_example, on_both_pages, open};

fn answer(browser: &holdround_tests::browser::Browser, at: usize, text: &str) {
    browser.type_into(&format!("#answer-{at}"), text);
}

#[test]
fn a_few_answers_make_a_whole_set_up_and_undo_brings_the_old_one_back() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        open(browser, url);
        come_to_rest(browser);
        browser.click("#own-open");
        browser.eventually("document.activeElement.id", &json!("answer-0"), "the questions open with the first one");
        assert_keeps_the_rules(browser, "the questions");
        browser.click("#start");
        browser.eventually("document.activeElement.id", &json!("answer-1"), "what is missing has the keyboard");
        assert!(browser.text("#told-1").contains("Allowed"), "it is told what is wanted");
        assert_eq!(
            browser.attribute("#answer-1", "aria-invalid").as_deref(),
            Some("true"),
            "and told to those who cannot see it"
        );
        assert_keeps_the_rules(browser, "the questions with faults");

        browser.click("#answer-0 option[value='inside']");
        answer(browser, 1, "5 1/2 in");
        answer(browser, 2, "9.5");
        answer(browser, 3, "25");
        open(browser, url);
        browser.reload();
        come_to_rest(browser);
        assert_eq!(browser.value("#answer-2"), "9.5", "answers outlast a reload");
        browser.click("#own-open");
        browser.click("#start");
        let answers = ["inside", "5 1/2 in", "9.5 mm", "25 mm", "", "", ""].map(String::from);
        let started = start(&answers).expect("answers that serve");
        assert_shows(browser, &started, UnitSystem::Metric, "the job of one's own");
        assert_eq!(browser.value(&field("cylinder.side")), "(full)", "an assumed choice is in brackets");
        assert!(browser.value(&field("jaws.width")).starts_with('('), "and so is an assumed size");
        assert_address_holds(browser, &started, "it is kept in the address");
        assert!(browser.text("#notices").contains("Undo"), "it is said how to get the old one back");
        browser.click("#undo");
        assert_shows(browser, &first_example(), UnitSystem::Metric, "the job that was there before");
    });
}
