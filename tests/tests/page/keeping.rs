//! Nothing typed is lost.

use holdround_core::quantity::UnitSystem;
use holdround_tests::browser::{Browser, Viewport, serve_site, single_file_url};
use serde_json::json;

use crate::sheet::{
    WORKED_OUT, assert_address_holds, assert_quiet, assert_shows, come_to_rest, field, first_example, message,
    on_both_pages, open, type_at,
};

#[test]
fn the_single_file_keeps_no_files_where_it_is_served() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &format!("{}holdround.html", site.url()));
    come_to_rest(&browser);
    let kept = "return navigator.serviceWorker.getRegistrations().then((all) => all.length)";
    assert_eq!(browser.execute(kept, Vec::new()), json!(0), "all of the page is in the file");
    assert_eq!(browser.console_errors(), Vec::<String>::new(), "and it asks for nothing that it forbids itself");
}

#[test]
fn typed_work_outlives_a_reload_without_the_host() {
    let mut site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    browser.wait_until("document.documentElement.dataset.offline === 'ready'");
    type_and_reload(&browser, || site.stop());
}

#[test]
fn typed_work_outlives_a_reload_of_the_single_file() {
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &single_file_url());
    type_and_reload(&browser, || ());
    assert_quiet(&browser, &single_file_url());
}

/// Types and reloads in one breath, before anything typed has settled.
const TYPE_AND_RELOAD: &str = "
    const field = document.querySelector(arguments[0]);
    field.value = arguments[1];
    field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    location.reload()";

#[test]
fn work_typed_in_the_last_moment_before_a_reload_lies_on_the_desk() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let first = first_example();
        assert_address_holds(browser, &first, "before typing");
        for text in ["about 18", "17.5"] {
            let since = browser.execute("return performance.timeOrigin", Vec::new());
            browser.execute(TYPE_AND_RELOAD, vec![json!(field("part.length")), json!(text)]);
            browser.wait_until(&format!("performance.timeOrigin > {since} && document.querySelector('#verdict h2')"));
            assert_eq!(browser.value(&field("part.length")), text, "work typed at the last moment is lost");
            assert_eq!(browser.count("#go-back-0"), 0, "what is open is the newest: nothing else is offered");
        }
        let mut newest = first;
        newest.set("part.length", "17.5 mm");
        assert_address_holds(browser, &newest, "the address comes to hold it");
        assert_shows(browser, &newest, UnitSystem::Metric, "and it is judged");
    });
}

fn type_and_reload(browser: &Browser, between: impl FnOnce()) {
    type_at(browser, "run.speed", "612.50");
    type_at(browser, "part.length", "about 18");
    let mut kept = first_example();
    kept.set("run.speed", "612.50 rev/min");
    kept.set("part.length", "about 18 mm");
    assert_address_holds(browser, &kept, "even an entry that is no number is in the address");
    between();
    browser.reload();
    browser.wait_until("document.querySelector('#verdict p')");
    assert_eq!(browser.value(&field("part.length")), "about 18", "even what is no number must come back");
    assert_eq!(browser.value(&field("run.speed")), "612.50", "an entry must come back as typed");
    assert!(browser.is_shown(&message("part.length")), "and its message with it");

    type_at(browser, "part.length", "19");
    browser.wait_until(WORKED_OUT);
    kept.set("part.length", "19 mm");
    assert_shows(browser, &kept, UnitSystem::Metric, "the kept work, put right");
}
