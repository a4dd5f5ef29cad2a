//! The whole road on touch alone: a new part, its jaws planned, kept and on paper; and one year later.

use std::env;
use std::fs;
use std::path::Path;

use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Paper, Viewport};
use serde_json::json;

use crate::paper::{pages, words};
use crate::records::{KEPT, file, keep_by_touch, read};
use crate::sheet::{WORKED_OUT, assert_shows, come_to_rest, entries, field, found, on_both_pages, open};

/// Fills the fields at these entries, in order; each unit is that of the field.
fn fill(browser: &Browser, typed: &[(&str, &str)]) {
    for (path, text) in typed {
        browser.tap_and_write(&field(path), text);
    }
}

/// Chooses from a list. The list itself is drawn by the device, out of the page's and of a test's reach.
fn choose(browser: &Browser, path: &str, key: &str) {
    browser.execute(
        "const list = document.querySelector(arguments[0]);
        list.value = arguments[1];
        list.dispatchEvent(new Event('change', { bubbles: true }))",
        vec![json!(field(path)), json!(key)],
    );
}

/// Prints the sheet; there must be one page, with these words on it.
fn assert_prints(browser: &Browser, name: &str, wanted: &[&str]) {
    browser.wait_until(WORKED_OUT);
    for paper in [Paper::A4, Paper::LETTER] {
        let pdf = browser.print(paper);
        if let Some(folder) = env::var_os("HOLDROUND_PRINTS") {
            let _kept = fs::write(Path::new(&folder).join(format!("{name}-{}.pdf", paper.width)), &pdf);
        }
        assert_eq!(pages(&pdf), 1, "one page of {paper:?}: {name}");
        let words = words(&pdf);
        for word in wanted {
            let bare = word.replace(' ', "");
            assert!(words.contains(&bare), "{word} is on the sheet, {name}: {words}");
        }
    }
}

#[test]
fn from_a_new_part_to_paper_and_a_year_later_to_a_recut_by_touch_alone() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        browser.tap("#fresh");
        assert_shows(browser, &Entries::default(), UnitSystem::Metric, "a fresh start");
        fill(
            browser,
            &[
                ("job.name", "Touch ring"),
                ("part.outside_diameter", "160"),
                ("part.bore_diameter", "130"),
                ("part.length", "40"),
                ("cuts.0.diameter", "160"),
                ("jaws.taper", "20"),
            ],
        );
        browser.tap("#making > summary");
        browser.tap("#group-stroke > summary");
        choose(browser, "stroke.plan", "yes");
        let mut job = entries(&[
            ("job.name", "Touch ring"),
            ("part.outside_diameter", "160 mm"),
            ("part.bore_diameter", "130 mm"),
            ("part.length", "40 mm"),
            ("cuts.0.diameter", "160 mm"),
            ("jaws.taper", "20 µm"),
            ("stroke.plan", "yes"),
        ]);
        assert_shows(browser, &job, UnitSystem::Metric, "the part and its jaws");

        let id = keep_by_touch(browser);
        browser.tap_and_write(&format!("#record-numbers-{id}"), "1 on 1, 2 on 2, 3 on 3");
        let borings = format!("document.querySelectorAll('[id^=\"record-diameter-{id}/\"]').length");
        browser.tap(&format!("#record-add-{id}"));
        browser.eventually(&borings, &json!(1), "a boring");
        browser.eventually(KEPT, &json!("kept"), "it is kept");
        let tooth = found(&job).scene.placing.expect("a place on the chuck").tooth;
        let on_tooth = format!("on tooth {tooth}");
        let wanted =
            ["Touch ring", &on_tooth, "Ring or plug in", "to 160 mm, taper 20 µm per side", "= 40 µm on diameter"];
        assert_prints(browser, "new", &wanted);

        // One year and another job later.
        browser.goto("about:blank");
        open(browser, &format!("{url}#example=fast-sleeve"));
        come_to_rest(browser);
        browser.tap("#records-box > summary");
        browser.eventually(KEPT, &json!("kept"), "the store answers");
        browser.tap(&format!("#record-{id} > summary"));
        browser.tap(&format!("#record-open-{id}"));
        assert_shows(browser, &job, UnitSystem::Metric, "the set-up of the record");
        let answer = format!("document.getElementById('record-reuse-{id}').textContent");
        let told = |words: &str, claim: &str| {
            browser.eventually(&format!("{answer}.includes({0}) || {answer}", json!(words)), &json!(true), claim);
        };
        told("No recut needed on the same chuck, the same teeth and in the same order (1 on 1, 2 on 2", "the same job");
        fill(browser, &[("part.outside_diameter", "161"), ("cuts.0.diameter", "161")]);
        told("Recut: 0.5 mm per side", "a larger part: (161 - 160) / 2 per side");
        browser.tap(&format!("#record-use-{id}"));
        browser.wait_until("document.querySelector(\"[id='all-recut.stock'] .value\")");
        choose(browser, "recut.as_before", "yes");
        fill(browser, &[("recut.runout", "30")]);
        for (path, text) in [
            ("part.outside_diameter", "161 mm"),
            ("cuts.0.diameter", "161 mm"),
            ("recut.jaws", "bored"),
            ("recut.as_before", "yes"),
            ("recut.runout", "30 µm"),
        ] {
            job.set(path, text);
        }
        let standing = browser.value(&field("recut.standing"));
        assert_eq!(standing, "160", "as last bored");
        job.set("recut.standing", "160 mm");
        job.set("recut.taper", "20 µm");
        assert_shows(browser, &job, UnitSystem::Metric, "the recut");
        browser.tap(&format!("#record-add-{id}"));
        browser.eventually(&borings, &json!(2), "another boring");
        browser.eventually(KEPT, &json!("kept"), "it is kept");
        assert_eq!(read(&file(browser)).get(&id).unwrap().bored().len(), 2, "bored a second time");
        assert_prints(browser, "recut", &["Touch ring", "Touch off each jaw", "to 161 mm", "Stock"]);
    });
}
