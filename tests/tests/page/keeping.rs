//! Nothing typed is lost.

use holdround_core::quantity::UnitSystem;
use holdround_tests::browser::{Browser, Viewport, serve_site, single_file_url};

use crate::sheet::{
    WORKED_OUT, assert_address_holds, assert_quiet, assert_shows, field, first_example, message, on_both_pages, open,
    type_at,
};

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

#[test]
fn work_typed_in_the_last_moment_before_a_reload_can_be_gone_back_to() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let first = first_example();
        assert_address_holds(browser, &first, "before typing");
        type_at(browser, "part.length", "about 18");
        browser.reload();
        browser.wait_until("document.querySelector('#verdict p, #verdict h2')");
        if browser.value(&field("part.length")) != "about 18" {
            browser.click("#go-back");
        }
        assert_eq!(browser.value(&field("part.length")), "about 18", "work typed at the last moment is lost");
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
