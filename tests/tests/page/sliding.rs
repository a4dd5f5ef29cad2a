//! Pressure and speed under a finger: what moves with them is drawn in place, and comes out as if drawn afresh.

use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::json;

use crate::sheet::{assert_shows, come_to_rest, example, field, first_example, open};

/// What stands in a region once it no longer changes, but for the moment at which a turning spindle was drawn.
const DRAWN: &str = "
    const look = () => document.getElementById(arguments[0]).innerHTML.replace(/ style=\"[^\"]*\"/g, '');
    return new Promise((done) => {
        let [seen, times] = ['', 0];
        const again = () => {
            const now = look();
            times = now === seen ? times + 1 : 0;
            seen = now;
            if (times === 15) done(now); else setTimeout(again, 100);
        };
        again();
    })";

fn drawn(browser: &Browser, region: &str) -> String {
    browser.execute(DRAWN, vec![json!(region)]).as_str().unwrap_or_default().to_owned()
}

/// Where two texts part, with what stands around it.
fn parting(one: &str, other: &str) -> [String; 2] {
    let at = one.bytes().zip(other.bytes()).take_while(|(one, other)| one == other).count();
    [one, other].map(|text| {
        String::from_utf8_lossy(text.as_bytes().get(at.saturating_sub(80)..).unwrap_or_default())
            .chars()
            .take(200)
            .collect()
    })
}

/// Moves both sliders from end to end, a step a frame, and leaves them where neither was.
const PLAY: &str = "
    const [share] = arguments;
    return new Promise((done) => {
        let at = 0;
        const move = () => {
            for (const path of ['run.pressure', 'run.speed']) {
                const slider = document.querySelector(`[id='slide-${path}']`);
                const part = at < 30 ? at / 29 : share;
                slider.value = +slider.min + (slider.max - slider.min) * part;
                slider.dispatchEvent(new InputEvent('input', { bubbles: true }));
                slider.dispatchEvent(new Event('change', { bubbles: true }));
            }
            at += 1;
            if (at > 30) done(); else requestAnimationFrame(move);
        };
        move();
    })";

/// The set-up that is on the sheet, in the units it was opened with.
fn with_what_is_set(browser: &Browser, mut entries: Entries) -> Entries {
    for (path, unit) in [("run.pressure", "MPa"), ("run.speed", "rev/min")] {
        entries.set(path, &format!("{} {unit}", browser.value(&field(path))));
    }
    entries
}

#[test]
fn what_was_drawn_in_place_is_what_is_drawn_afresh() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    for (name, entries, share) in [
        ("the first example", first_example(), 0.6),
        ("the first example beyond its limits", first_example(), 1.0),
        ("a flanged tube", example("flanged-tube"), 0.3),
    ] {
        browser.goto("about:blank");
        open(&browser, &format!("{}#{}", site.url(), entries.to_link()));
        come_to_rest(&browser);
        browser.click("#spin");
        browser.execute(PLAY, vec![json!(share)]);
        let moved = with_what_is_set(&browser, entries);
        assert_shows(&browser, &moved, UnitSystem::Metric, name);
        come_to_rest(&browser);
        let regions = ["face", "section", "verdict", "window", "notes", "findings"];
        let in_place = regions.map(|region| drawn(&browser, region));
        browser.goto("about:blank");
        open(&browser, &format!("{}#{}", site.url(), moved.to_link()));
        browser.click("#spin");
        come_to_rest(&browser);
        for (region, in_place) in regions.into_iter().zip(in_place) {
            let afresh = drawn(&browser, region);
            assert!(in_place == afresh, "{name}: {region} is not as drawn afresh: {:?}", parting(&in_place, &afresh));
        }
    }
}

#[test]
fn what_stays_in_a_drawing_is_not_made_anew() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    come_to_rest(&browser);
    let kept = ["#face svg", "#section svg", "[id='line-hold.factor']", "#spin"];
    let mark = "for (const kept of arguments) document.querySelector(kept).marked = true";
    browser.execute(mark, kept.map(|kept| json!(kept)).to_vec());
    let said = drawn(&browser, "verdict");
    browser.execute("document.querySelector('#face .dimension').focus()", Vec::new());
    browser.execute(PLAY, vec![json!(0.45)]);
    browser.eventually(
        &format!("document.querySelector('#verdict').innerHTML !== {}", json!(said)),
        &json!(true),
        "the verdict follows the sliders",
    );
    for kept in kept {
        let stays = browser.execute("return document.querySelector(arguments[0]).marked", vec![json!(kept)]);
        assert_eq!(stays, json!(true), "{kept} is the one that was there");
    }
    let focused = browser.execute("return document.activeElement.matches('#face .dimension')", Vec::new());
    assert_eq!(focused, json!(true), "the keyboard stays on the drawing");
}

#[test]
fn a_verdict_on_the_move_says_that_the_worst_case_is_not_known_yet() {
    const WATCH: &str = "
        const slider = document.querySelector(\"[id='slide-run.speed']\");
        const [seen, frames] = [new Set(), 40];
        return new Promise((done) => {
            let at = 0;
            const move = () => {
                if (at > 1) seen.add(document.querySelector('#at-worst').textContent.trim().slice(0, 8));
                slider.value = +slider.min + (slider.max - slider.min) * (0.2 + 0.6 * at / frames);
                slider.dispatchEvent(new InputEvent('input', { bubbles: true }));
                at += 1;
                if (at > frames) done([...seen]); else requestAnimationFrame(move);
            };
            move();
        })";
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    come_to_rest(&browser);
    assert_eq!(browser.execute(WATCH, Vec::new()), json!(["At worst"]), "in every frame");
}
