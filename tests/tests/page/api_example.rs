//! The plain page that shows how other pages use the functions.

use holdround_core::evaluate;
use holdround_core::examples::EXAMPLES;
use holdround_core::setup::{Entries, Setup};
use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::json;

use crate::accessibility::assert_keeps_the_rules;

const FACTORS: &str = "[...document.querySelectorAll('#rows td:nth-child(3)')].map((cell) => cell.textContent.trim())";

/// The hold factor at each speed of the table, computed outside the browser.
fn factors(json: &str) -> Vec<String> {
    let speeds = ["0 rev/min", "500 rev/min", "1000 rev/min", "1500 rev/min"];
    let factor = |speed: &str| {
        let mut entries = Entries::from_json(json).unwrap();
        entries.set("run.speed", speed);
        let found = evaluate(&Setup::read(&entries).unwrap());
        format!("{:.2}", found.value("hold.factor").expect("a factor"))
    };
    speeds.map(factor).into()
}

#[test]
fn a_plain_page_asks_the_functions_and_shows_what_the_engines_find() {
    let site = serve_site();
    let browser = Browser::open(Viewport::PHONE);
    browser.goto(&format!("{}api-example.html", site.url()));
    browser.eventually(FACTORS, &json!(factors(EXAMPLES[0].json)), "the first example at four speeds");
    browser.click("#example option:nth-child(2)");
    browser.eventually(FACTORS, &json!(factors(EXAMPLES[1].json)), "the one that was chosen");
    assert_eq!(browser.count("h1"), 1, "the page itself is not drawn into it");
    assert_eq!(browser.console_errors(), Vec::<String>::new(), "its console is clean");
    assert_keeps_the_rules(&browser, "the plain page");
}
