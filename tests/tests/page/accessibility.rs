//! The rules of accessibility that a program can check, in every look and state.

use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::json;

use crate::sheet::{open, type_at};

const LOOKS: [&str; 3] = ["paper", "blueprint", "shop"];

#[test]
fn no_rule_of_accessibility_is_broken_on_a_tablet() {
    every_state_keeps_the_rules(Viewport::TABLET);
}

#[test]
fn no_rule_of_accessibility_is_broken_on_a_phone() {
    every_state_keeps_the_rules(Viewport::PHONE);
}

fn every_state_keeps_the_rules(viewport: Viewport) {
    let site = serve_site();
    let browser = Browser::open(viewport);
    open(&browser, &format!("{}#junk", site.url()));
    for look in LOOKS {
        wear(&browser, look);
        assert_keeps_the_rules(&browser, &format!("{look} on {viewport:?}"));
    }
    browser.execute("document.querySelectorAll('details').forEach((line) => { line.open = true })", Vec::new());
    assert_keeps_the_rules(&browser, &format!("everything open on {viewport:?}"));
    browser.execute(
        "document.querySelectorAll('details:not(.group)').forEach((line) => { line.open = false })",
        Vec::new(),
    );
    type_at(&browser, "part.length", "-3");
    type_at(&browser, "run.pressure", "many");
    browser.wait_until("document.querySelector('#title-block .old')");
    for look in LOOKS {
        wear(&browser, look);
        assert_keeps_the_rules(&browser, &format!("{look} with faults on {viewport:?}"));
    }
    wear(&browser, "device");
    browser.prefer("prefers-color-scheme", "dark");
    assert_keeps_the_rules(&browser, &format!("a dark device with faults on {viewport:?}"));
}

fn wear(browser: &Browser, look: &str) {
    browser.click(&format!("#prefer-theme option[value='{look}']"));
    browser.eventually("document.documentElement.dataset.theme", &json!(look), "the look that was chosen");
}

/// The page breaks no rule of accessibility, and is no wider than its screen.
pub(crate) fn assert_keeps_the_rules(browser: &Browser, case: &str) {
    let broken: Vec<_> = browser.accessibility_violations().iter().map(ToString::to_string).collect();
    assert_eq!(broken, Vec::<String>::new(), "rules of accessibility are broken: {case}");
    let wide = browser.execute("return document.documentElement.scrollWidth - innerWidth", Vec::new());
    assert!(wide.as_f64().is_some_and(|wide| wide <= 0.0), "{wide} pixels wider than the screen: {case}");
}
