//! Moving pictures, and none for those who want none.

use holdround_tests::browser::{Browser, Viewport, single_file_url};
use serde_json::{Value, json};

use crate::sheet::open;

const MOVING: &str = "
    return [...document.querySelectorAll('*')].filter((element) => {
        const style = getComputedStyle(element);
        return style.animationName !== 'none' || style.transitionDuration.split(', ').some((time) => time !== '0s');
    }).map((element) => element.getAttribute('class') || element.tagName)";

#[test]
fn nothing_moves_for_those_who_want_no_motion() {
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &single_file_url());
    browser.click("#spin");
    let moving = |preference: &str| -> Vec<Value> {
        browser.prefer("prefers-reduced-motion", preference);
        browser.execute(MOVING, Vec::new()).as_array().cloned().unwrap_or_default()
    };
    assert!(moving("no-preference").contains(&json!("spindle")), "a spinning part turns otherwise");
    assert_eq!(moving("reduce"), Vec::<Value>::new(), "clamped and spinning");
    browser.click("#clamp");
    assert_eq!(moving("reduce"), Vec::<Value>::new(), "released");
}
