//! Set-ups by their address.

use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Viewport};
use serde_json::json;

use crate::sheet::{
    WORKED_OUT, assert_address_holds, assert_no_nonsense, assert_shows, entries, example, field, first_example,
    on_both_pages, open, type_at,
};

fn shop_job() -> Entries {
    entries(&[
        ("job.name", "Läufer — №7 <b>"),
        ("grip.side", "inside"),
        ("part.outside_diameter", "7,25 in"),
        ("part.bore_diameter", "6 1/2 in"),
        ("part.length", "40 mm"),
        ("cuts.0.diameter", "184 mm"),
        ("run.pressure", "60 psi"),
        ("run.speed", "500 rev/min"),
    ])
}

#[test]
fn a_link_opens_its_job_and_the_address_opens_it_again_elsewhere() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        assert_shows(browser, &first_example(), UnitSystem::Metric, "an empty address opens the first example");
        browser.click("#examples a[href$='fast-sleeve']");
        assert_shows(browser, &example("fast-sleeve"), UnitSystem::Metric, "an example's link");

        open(browser, &format!("{url}#{}", shop_job().to_link()));
        assert_shows(browser, &shop_job(), UnitSystem::Metric, "a link made outside the browser");
        assert_eq!(browser.value(&field("job.name")), "Läufer — №7 <b>", "the job's name is text, whatever is in it");

        type_at(browser, "run.speed", "650");
        let mut changed = shop_job();
        changed.set("run.speed", "650 rev/min");
        assert_address_holds(browser, &changed, "the address follows what is typed");
        let elsewhere = Browser::open(Viewport::PHONE);
        open(&elsewhere, &browser.url());
        assert_shows(&elsewhere, &changed, UnitSystem::Metric, "the address in another browser");
        assert_eq!(elsewhere.value(&field("run.speed")), "650", "and the entry is there as typed");
    });
}

#[test]
fn what_cannot_be_opened_is_told_and_kept_for_copying_and_the_page_works() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        let whole = shop_job().to_link();
        let damaged = &whole[..whole.len() - 7];
        let junk = "%C3%9F".repeat(180_000);
        for link in [damaged, &junk] {
            browser.goto("about:blank");
            open(browser, &format!("{url}#{link}"));
            assert_shows(browser, &first_example(), UnitSystem::Metric, "the first example opens instead");
            assert!(browser.is_shown("#notices .notice"), "a link that cannot be opened must be told");
            assert_eq!(browser.value("#notices textarea"), link, "the link must be kept for copying");
        }
        assert_no_nonsense(browser, "after a link of a megabyte");

        type_at(browser, "run.speed", "600");
        let mut changed = first_example();
        changed.set("run.speed", "600 rev/min");
        assert_shows(browser, &changed, UnitSystem::Metric, "the page works beside the notice");
        assert_address_holds(browser, &changed, "the address is good again");

        browser.execute(
            "for (const key of Object.keys(localStorage)) localStorage.setItem(key, arguments[0]); history.replaceState(null, '', '#')",
            vec![json!(CORRUPT)],
        );
        browser.reload();
        browser.wait_until(WORKED_OUT);
        assert_shows(browser, &first_example(), UnitSystem::Metric, "with a corrupt store the first example opens");
        assert_eq!(browser.value("#notices textarea"), CORRUPT, "what was stored must be kept for copying");
        browser.click("#notices button");
        browser.eventually("document.querySelectorAll('#notices .notice').length", &json!(0), "a notice is put away");
    });
}

const CORRUPT: &str = "{\"setup\": \"{\\\"part\\\": [";
