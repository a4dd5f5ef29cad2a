//! The job told step by step: scrubbed, played, gone through by keys, and in still pictures.

use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::{Value, json};
use thirtyfour::Key;

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{assert_no_nonsense, come_to_rest, on_both_pages, open};

const SCREENS: [Viewport; 3] = [Viewport::TABLET, Viewport::TABLET_UPRIGHT, Viewport::PHONE];

/// The step that is shown, counted from 0, everywhere it is told.
const STEP: &str = "document.getElementById('story-step').selectedIndex";
/// What is said of it.
const SAYS: &str = "document.getElementById('story-says').textContent";
/// Titles and descriptions of both views, and what a screen reader is told.
const EQUIVALENT: &str = "
    const text = (id) => document.getElementById(id).textContent;
    return ['story-face-step', 'story-section-step', 'story-title', 'story-face-says', 'story-section-says', 'story-says'].map(text)";
/// All that was typed, and the address.
const ENTRIES: &str = "
    return [...document.querySelectorAll('#inputs [data-path]')].map((field) => [field.dataset.path, field.value])
        .concat([['address', location.href], ['undo', document.getElementById('undo').getAttribute('aria-disabled')]])";
/// The drawing as it is without the story.
const DRAWN: &str = "
    return ['face', 'section'].map((view) => {
        const drawn = document.querySelector(`#${view} svg`).cloneNode(true);
        // When it was drawn does not matter.
        drawn.removeAttribute('style');
        return drawn.outerHTML;
    })";

fn told(browser: &Browser, script: &str) -> Value {
    browser.execute(script, Vec::new())
}

fn tell(browser: &Browser) {
    come_to_rest(browser);
    browser.tap("#story-open");
    browser.eventually("document.activeElement.id", &json!("story-step"), "the keyboard goes into the story");
}

fn steps(browser: &Browser) -> u64 {
    told(browser, "return document.getElementById('story-step').options.length").as_u64().expect("a count")
}

/// The face is the same a little later.
fn assert_stands_still(browser: &Browser, claim: &str) {
    let now = told(browser, "return document.getElementById('story-face').outerHTML");
    let later = told(
        browser,
        "return new Promise((done) => setTimeout(() => done(document.getElementById('story-face').outerHTML), 300))",
    );
    assert_eq!(later, now, "{claim}");
}

#[test]
fn fingers_go_through_the_job_and_the_set_up_stays_as_it_is() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        come_to_rest(browser);
        browser.wait_until("location.hash");
        let (entries, drawn) = (told(browser, ENTRIES), told(browser, DRAWN));
        tell(browser);
        let last = steps(browser) - 1;
        let mut heard = Vec::new();
        for step in 0..=last {
            browser.eventually(STEP, &json!(step), "one step after the other");
            let words = told(browser, EQUIVALENT);
            assert_eq!(words[0], words[1], "both views tell the same step");
            assert_eq!(words[0], words[2], "and so does what is spoken");
            assert_eq!(words[3], words[4], "both views are described by its sentence");
            assert_eq!(words[3], words[5], "which stands under them");
            heard.push(words[5].clone());
            assert_no_nonsense(browser, "a step of the story");
            browser.tap("#story-next");
        }
        heard.dedup();
        assert_eq!(heard.len() as u64, last + 1, "every step says something of its own: {heard:?}");
        browser.eventually(STEP, &json!(last), "there is nothing after the last");
        browser.tap("#story-back");
        browser.eventually(STEP, &json!(last - 1), "and back");
        assert_eq!(told(browser, ENTRIES), entries, "nothing in the set-up moved");
        browser.tap("#story-close");
        browser.eventually("document.activeElement.id", &json!("story-open"), "the keyboard is where it was");
        assert_eq!(told(browser, DRAWN), drawn, "the live drawing is back");
        assert_eq!(told(browser, ENTRIES), entries, "and the set-up as it was");
    });
}

#[test]
fn a_finger_scrubs_along_the_job() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    tell(&browser);
    let (x, y) = browser.middle("#story-at");
    let width = told(&browser, "return document.getElementById('story-at').getBoundingClientRect().width");
    let half = width.as_f64().expect("a width") / 2.0;
    let last = steps(&browser) - 1;
    browser.drag((x - half + 24.0, y), (x + half - 1.0, y));
    browser.eventually(STEP, &json!(last), "to the end of the job");
    browser.drag((x + half - 24.0, y), (x - half + 1.0, y));
    browser.eventually(STEP, &json!(0), "and back to its beginning");
}

#[test]
fn keys_go_along_the_job() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    come_to_rest(&browser);
    browser.click("#story-open");
    browser.eventually("document.activeElement.id", &json!("story-step"), "the keyboard goes into the story");
    browser.press(Key::Down);
    browser.eventually(STEP, &json!(1), "the list of steps by its own keys");
    browser.execute("document.getElementById('story-at').focus()", Vec::new());
    let last = steps(&browser) - 1;
    browser.press(Key::End);
    browser.eventually(STEP, &json!(last), "the line by its own keys");
    browser.press(Key::Home);
    browser.eventually(STEP, &json!(0), "to the beginning");
    let master = "document.getElementById('story-cut-0').getAttribute('transform')";
    let before = told(&browser, &format!("return {master}"));
    for _ in 0..10 {
        browser.press(Key::Right);
    }
    browser.wait_until(&format!("{master} !== {before}"));
    let spoken = "document.getElementById('story-at').getAttribute('aria-valuetext')";
    browser.wait_until(&format!("{spoken}.startsWith('Step 1 of ')"));
}

#[test]
fn the_job_plays_until_it_is_paused() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    tell(&browser);
    browser.tap("#story-play");
    browser.eventually(&format!("{STEP} > 1"), &json!(true), "it goes on by itself");
    browser.tap("#story-play");
    browser.eventually("document.getElementById('story-play').textContent", &json!("Play"), "it pauses");
    assert_stands_still(&browser, "and stands still");
}

#[test]
fn those_who_want_no_motion_step_through_still_pictures() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    browser.prefer("prefers-reduced-motion", "reduce");
    open(&browser, &site.url());
    tell(&browser);
    assert_eq!(browser.count("#story-play"), 0, "nothing plays");
    let last = steps(&browser) - 1;
    browser.execute("document.getElementById('story-at').focus()", Vec::new());
    browser.press(Key::Home);
    for step in 1..=last {
        browser.press(Key::Right);
        browser.eventually(STEP, &json!(step), "a key is a step");
    }
    assert_stands_still(&browser, "a still picture");
}

#[test]
fn the_story_keeps_the_rules_and_finds_room_on_every_screen() {
    let site = serve_site();
    for screen in SCREENS {
        let browser = Browser::open(screen);
        open(&browser, &format!("{}#example=pump-wear-ring", site.url()));
        assert_keeps_the_rules(&browser, &format!("before the story, {screen:?}"));
        tell(&browser);
        for _ in 0..3 {
            browser.tap("#story-next");
        }
        assert_keeps_the_rules(&browser, &format!("jaws being bored, {screen:?}"));
        for _ in 0..6 {
            browser.tap("#story-next");
        }
        assert_keeps_the_rules(&browser, &format!("the part being cut, {screen:?}"));
        let small = told(
            &browser,
            "return [...document.querySelectorAll('#story :is(button, select, input)')].filter((control) => {
                const box = control.getBoundingClientRect();
                return box.height < 44 || box.width < 44;
            }).map((control) => control.id)",
        );
        assert_eq!(small, json!([]), "too small for a finger in a glove: {screen:?}");
        let hidden = told(
            &browser,
            "const verdict = document.querySelector('#verdict h2').getBoundingClientRect();
            return [verdict.top >= 0, verdict.bottom <= innerHeight]",
        );
        assert_eq!(hidden, json!([true, true]), "the verdict stays in sight: {screen:?}");
    }
}

#[test]
fn a_size_on_the_story_opens_its_field_and_the_story_follows_it() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &format!("{}#example=pump-wear-ring", site.url()));
    tell(&browser);
    for _ in 0..3 {
        browser.tap("#story-next");
    }
    browser.tap("#story-section .of-making [data-entry='grip.length'] .hit");
    browser.eventually("document.activeElement.id", &json!("in-grip.length"), "the size of the bore opens its field");
    browser.type_into("[id='in-grip.length']", "14");
    browser.eventually(&format!("{SAYS}.includes('14 mm deep')"), &json!(true), "and the story tells the new job");
    assert_eq!(told(&browser, &format!("return {STEP}")), json!(3), "at the same step");
}

#[test]
fn paper_has_the_job_as_it_is_and_not_a_step_of_it() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    tell(&browser);
    browser.execute(
        "window.print = () => { window.printed = document.querySelectorAll('#face svg.story').length }",
        Vec::new(),
    );
    browser.tap("#print");
    browser.eventually("window.printed", &json!(0), "the live drawing is printed");
}
