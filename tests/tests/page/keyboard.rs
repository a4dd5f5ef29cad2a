//! The page without a mouse or a finger.

use holdround_core::quantity::UnitSystem;
use holdround_tests::browser::{Browser, Viewport, serve_site};
use holdround_tests::job::enter;
use serde_json::json;
use thirtyfour::Key;

use crate::sheet::{WORKED_OUT, assert_address_holds, assert_shows, field, first_example, line, on_both_pages, open};

/// More stops of the Tab key than the page has.
const STOPS: usize = 400;

/// What has the focus, how it shows, and whether something lies over it.
const FOCUSED: &str = "
    const it = document.activeElement;
    const style = getComputedStyle(it);
    const box = it.getBoundingClientRect();
    const at = document.elementFromPoint(box.x + box.width / 2, box.y + Math.min(box.height / 2, 20));
    return {
        id: it.id || it.tagName,
        marked: (style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2) || it instanceof SVGElement,
        free: !!at && (it.contains(at) || at.contains(it) || it instanceof SVGElement),
    }";

#[test]
fn the_keyboard_alone_reaches_a_field_and_opens_the_steps_of_the_verdict() {
    on_both_pages(Viewport::DESK, |browser, _| {
        press(browser, Key::Tab);
        assert!(browser.text(":focus").contains("verdict"), "the first stop skips to the verdict");
        assert!(browser.is_shown(":focus"), "the skip link must be seen while it has the focus");
        press(browser, Key::Enter);
        assert_eq!(focused_id(browser), "title-block", "the skip link leads to the verdict");
        tab_to(browser, "line-of-hold.factor");
        press(browser, Key::Enter);
        browser.eventually(
            &format!("document.querySelector(\"{}\").open", line("hold.factor")),
            &json!(true),
            "Enter opens a line of the verdict",
        );
        let steps = format!("{} li", line("hold.factor"));
        browser.wait_until(&format!("document.querySelector(\"{steps}\")"));
        assert!(browser.is_shown(&steps), "and shows its worked steps");

        browser.execute("document.activeElement.blur(); getSelection().removeAllRanges()", Vec::new());
        browser.reload();
        browser.wait_until(WORKED_OUT);
        tab_to(browser, "in-run.speed");
        browser.press(Key::Control + "a");
        browser.press("555");
        let mut typed = first_example();
        typed.set("run.speed", "555 rev/min");
        assert_shows(browser, &typed, UnitSystem::Metric, "typed without a mouse");
        assert_eq!(browser.value(&field("run.speed")), "555", "the focus stays in the field");
        assert_eq!(focused_id(browser), "in-run.speed", "the focus stays in the field");
    });
}

#[test]
fn enter_in_a_field_sends_nothing() {
    on_both_pages(Viewport::DESK, |browser, _| {
        browser.execute(
            "window.same = true; document.querySelectorAll('details').forEach((it) => { it.open = true })",
            Vec::new(),
        );
        browser.wait_until("document.querySelector('#made-boring textarea')");
        let loose = "return [...document.querySelectorAll('input, select, textarea')].filter((field) => !field.form).map((field) => field.id)";
        assert_eq!(
            browser.execute(loose, Vec::new()),
            json!([]),
            "no field is without a form, which a browser takes for one"
        );
        let sent = "return [...document.forms].filter((form) => form.dispatchEvent(new SubmitEvent('submit', { bubbles: true, cancelable: true }))).map((form) => form.id)";
        assert_eq!(browser.execute(sent, Vec::new()), json!([]), "no form can be sent");
        for path in ["run.pressure", "part.length", "job.name"] {
            browser.type_into(&field(path), if path == "job.name" { "Sleeve" } else { "1.5" });
            press(browser, Key::Enter);
        }
        let mut job = first_example();
        enter(&mut job, &[("run.pressure", "1.5 MPa"), ("part.length", "1.5 mm"), ("job.name", "Sleeve")]);
        assert_address_holds(browser, &job, "what was typed stays");
        assert_eq!(browser.execute("return window.same", Vec::new()), json!(true), "and so does the page");
    });
}

#[test]
fn every_stop_of_the_keyboard_is_marked_and_in_sight() {
    let site = serve_site();
    for viewport in [Viewport::TABLET_UPRIGHT, Viewport::PHONE] {
        let browser = Browser::open(viewport);
        open(&browser, &site.url());
        let mut stops = 0;
        loop {
            press(&browser, Key::Tab);
            let stop = browser.execute(FOCUSED, Vec::new());
            if stop["id"] == "BODY" || (stops > 1 && stop["id"] == "A" && browser.text(":focus").starts_with("Skip")) {
                break;
            }
            assert_eq!(stop["marked"], true, "the focus must be seen at {} on {viewport:?}", stop["id"]);
            assert_eq!(stop["free"], true, "nothing may lie over {} on {viewport:?}", stop["id"]);
            stops += 1;
            assert!(stops < STOPS, "the keyboard does not get out of the page");
        }
        assert!(stops > 50, "only {stops} stops: every field must be one");
    }
}

fn press(browser: &Browser, key: Key) {
    browser.press(key);
}

fn focused_id(browser: &Browser) -> String {
    browser.execute("return document.activeElement.id", Vec::new()).as_str().unwrap_or_default().to_owned()
}

fn tab_to(browser: &Browser, id: &str) {
    for _ in 0..STOPS {
        press(browser, Key::Tab);
        if focused_id(browser) == id {
            return;
        }
    }
    assert_eq!(focused_id(browser), id, "the keyboard does not get there");
}
