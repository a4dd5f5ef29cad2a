//! Lessons, done on the page with its own fields.

use holdround_core::lessons::{LESSONS, Lesson};
use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::json;

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{
    assert_address_holds, assert_no_nonsense, assert_shows, choose, field, first_example, on_both_pages, open, type_at,
};

/// What the lesson says of its task.
const STATE: &str = "document.querySelector('#lesson .state')?.textContent";
/// What stands at the lesson open now in the list: whether it is done.
const DONE: &str = "[...document.querySelectorAll('#lessons li')].map((it) => it.querySelector('.done') !== null)";

fn lesson(key: &str) -> &'static Lesson {
    LESSONS.iter().find(|lesson| lesson.key == key).expect("a lesson of this name")
}

fn start(lesson: &Lesson) -> Entries {
    Entries::from_json(lesson.json).expect("a lesson begins with a set-up")
}

fn done(keys: &[&str]) -> serde_json::Value {
    LESSONS.iter().map(|lesson| json!(keys.contains(&lesson.key))).collect()
}

fn says(browser: &Browser, words: &str, claim: &str) {
    browser.eventually(&format!("{STATE}?.includes({})", json!(words)), &json!(true), claim);
}

#[test]
fn a_lesson_is_followed_done_and_left_and_the_job_comes_back() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        type_at(browser, "part.length", "18.5");
        let mut job = first_example();
        job.set("part.length", "18.5 mm");
        assert_address_holds(browser, &job, "a job lies on the desk");

        browser.click("#lessons a[href='#lesson=thin-ring']");
        assert_shows(browser, &start(lesson("thin-ring")), UnitSystem::Metric, "the lesson's own set-up");
        says(browser, "1 of 2 met", "the start does not do");
        browser.eventually("document.activeElement.id", &json!("lesson"), "the keyboard is where the lesson is");
        browser.eventually(DONE, &done(&[]), "no lesson is done");

        browser.click("#lesson button[data-path='run.pressure']");
        browser.eventually("document.activeElement.id", &json!("in-run.pressure"), "the field to change");
        type_at(browser, "part.roundness_limit", "90");
        says(browser, "not by what the lesson is about", "changing what is allowed is noticed");
        browser.eventually("document.querySelectorAll('#lesson .stray').length", &json!(1), "and it is told what");
        browser.eventually(DONE, &done(&[]), "it does not count");
        browser.click("#lesson-back");
        says(browser, "1 of 2 met", "it was put back");
        assert_eq!(browser.value(&field("part.roundness_limit")), "30", "in the field too");

        type_at(browser, "run.pressure", "0.4");
        says(browser, "The task is done", "a pressure that does");
        browser.eventually(DONE, &done(&["thin-ring"]), "it is marked done");
        browser.eventually("document.querySelectorAll('#lesson .told p').length", &json!(3), "what happened is told");
        browser.eventually(
            "document.getElementById('spoken').textContent.includes('Lesson: The task is done.')",
            &json!(true),
            "and read aloud",
        );
        assert_no_nonsense(browser, "a lesson");

        browser.reload();
        says(browser, "The task is done", "a reload keeps what was done in the lesson");
        assert_eq!(browser.value(&field("run.pressure")), "0.4", "as it was typed");
        browser.eventually(
            "document.querySelectorAll('#lesson .told p').length",
            &json!(3),
            "the start is worked out again",
        );
        browser.eventually(DONE, &done(&["thin-ring"]), "and that it was done");

        browser.click("#lesson-leave");
        browser.eventually("document.getElementById('lesson').childElementCount", &json!(0), "the lesson is closed");
        assert_shows(browser, &job, UnitSystem::Metric, "the job is back");
        assert_address_holds(browser, &job, "and in the address");
        browser.click("#undo");
        browser.eventually("document.getElementById('in-run.pressure').value", &json!("0.4"), "nothing typed is lost");
    });
}

#[test]
fn every_lesson_opens_by_its_link_and_shows_its_solution() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    for lesson in LESSONS {
        browser.goto("about:blank");
        open(&browser, &format!("{}#lesson={}", site.url(), lesson.key));
        browser.eventually("document.querySelector('#lesson h2')?.textContent", &json!(lesson.title), "its title");
        says(&browser, " met.", "its task stands open");
        browser.click("#lesson-show");
        says(&browser, "This is one way", "its solution does");
        let told = json!(lesson.told.len() + 1);
        browser.eventually("document.querySelectorAll('#lesson .told p').length", &told, "all its figures are there");
        assert_no_nonsense(&browser, lesson.key);
        browser.eventually(DONE, &done(&[]), "what was shown does not count as done");
    }
}

#[test]
fn a_lesson_is_done_by_choices_too_and_the_next_one_opens_behind_it() {
    let site = serve_site();
    let browser = Browser::open(Viewport::PHONE);
    open(&browser, &format!("{}#lesson=wide-pie-six", site.url()));
    says(&browser, "1 of 2 met", "the start does not do");
    choose(&browser, "jaws.kind", "pie");
    says(&browser, "Hold factor", "steel pie jaws are too heavy");
    choose(&browser, "jaws.material", "aluminium-6061");
    says(&browser, "The task is done", "light ones do");
    browser.eventually(DONE, &done(&["wide-pie-six"]), "it is marked done");
    browser.tap("#lesson-next");
    assert_shows(&browser, &start(lesson("bored-size")), UnitSystem::Metric, "the next lesson");
    browser.tap("#lesson-leave");
    assert_shows(&browser, &first_example(), UnitSystem::Metric, "who came by a link finds the first example");
}

#[test]
fn a_store_that_is_blocked_or_damaged_stops_no_lesson() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    browser.execute(
        "localStorage.setItem('holdround.lessons.1', arguments[0])",
        vec![json!("\u{0}{]taper nothing\n speed")],
    );
    browser.goto("about:blank");
    open(&browser, &format!("{}#lesson=taper", site.url()));
    browser.eventually(DONE, &done(&["speed"]), "what can be read of a damaged store is read");
    let refuse =
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError') } })";
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": refuse }));
    browser.goto("about:blank");
    open(&browser, &format!("{}#lesson=taper", site.url()));
    type_at(&browser, "jaws.taper", "24");
    says(&browser, "The task is done", "a lesson needs no store");
    browser.eventually(DONE, &done(&["taper"]), "it is done while the page is open");
}

#[test]
fn no_rule_of_accessibility_is_broken_in_a_lesson() {
    let site = serve_site();
    for viewport in [Viewport::TABLET, Viewport::PHONE] {
        let browser = Browser::open(viewport);
        open(&browser, &format!("{}#lesson=thin-ring", site.url()));
        type_at(&browser, "part.roundness_limit", "90");
        browser.eventually("document.querySelectorAll('#lesson .stray').length", &json!(1), "a change it is not about");
        // What the pinned verdict half covers hangs on how far the page was scrolled, and is not the lesson's doing.
        browser.execute("scrollTo(0, 0)", Vec::new());
        assert_keeps_the_rules(&browser, &format!("a lesson on {viewport:?}"));
        let small = browser.execute(
            "return [...document.querySelectorAll('#lesson button, #lesson-go, #lessons a')]
                .filter((it) => it.getBoundingClientRect().height < 44).map((it) => it.id || it.textContent)",
            Vec::new(),
        );
        assert_eq!(small, json!([]), "less than a finger needs on {viewport:?}");
        browser.tap("#lesson-show");
        says(&browser, "This is one way", "shown");
        browser.eventually("document.querySelectorAll('#lesson .told p').length", &json!(3), "told");
        browser.execute("scrollTo(0, 0)", Vec::new());
        assert_keeps_the_rules(&browser, &format!("a lesson that is told on {viewport:?}"));
    }
}
