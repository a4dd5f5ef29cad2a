//! The whole road on touch alone: a new part, its jaws planned, kept and on paper; and one year later.

use std::env;
use std::fs;
use std::path::Path;

use holdround_core::quantity::UnitSystem;
use holdround_core::setup::Entries;
use holdround_core::setup::part_inputs::GRIP_LENGTH;
use holdround_tests::browser::{Browser, Paper, Viewport};
use serde_json::json;

use crate::paper::{pages, words};
use crate::records::{KEPT, file, keep_by_touch, read};
use crate::sheet::{WORKED_OUT, assert_shows, come_to_rest, entries, field, found, on_both_pages, open};
use crate::typing::units;

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

/// The road in one system of units: the unit of a length and of a taper, and what is typed: the
/// outside diameter now and a year later, bore, length, taper, run-out.
struct Road {
    system: UnitSystem,
    unit: &'static str,
    small: &'static str,
    outside: [&'static str; 2],
    bore: &'static str,
    length: &'static str,
    taper: [&'static str; 2],
    runout: &'static str,
    /// Half the difference of the diameters.
    stock: &'static str,
}

const MILLIMETRES: Road = Road {
    system: UnitSystem::Metric,
    unit: "mm",
    small: "µm",
    outside: ["160", "161"],
    bore: "60",
    length: "40",
    taper: ["20", "40"],
    runout: "30",
    stock: "0.5",
};
const INCHES: Road = Road {
    system: UnitSystem::Inch,
    unit: "in",
    small: "in",
    outside: ["6.3", "6.34"],
    bore: "2.4",
    length: "1.6",
    taper: ["0.0008", "0.0016"],
    runout: "0.001",
    stock: "0.02",
};

fn travel(browser: &Browser, url: &str, road: &Road) {
    let Road { system, unit, small, outside, bore, length, taper, runout, stock } = *road;
    let sized = |text: &str| format!("{text} {unit}");
    let fine = |text: &str| format!("{text} {small}");
    browser.tap("#fresh");
    units(browser, unit);
    assert_shows(browser, &Entries::default(), system, "a fresh start");
    fill(
        browser,
        &[
            ("job.name", "Touch ring"),
            ("part.outside_diameter", outside[0]),
            ("part.bore_diameter", bore),
            ("part.length", length),
            ("cuts.0.diameter", outside[0]),
            ("jaws.taper", taper[0]),
        ],
    );
    browser.tap("#making > summary");
    browser.tap("#group-stroke > summary");
    choose(browser, "stroke.plan", "yes");
    let mut job = entries(&[
        ("job.name", "Touch ring"),
        ("part.outside_diameter", &sized(outside[0])),
        ("part.bore_diameter", &sized(bore)),
        ("part.length", &sized(length)),
        ("cuts.0.diameter", &sized(outside[0])),
        ("jaws.taper", &fine(taper[0])),
        ("stroke.plan", "yes"),
    ]);
    assert_shows(browser, &job, system, "the part and its jaws");

    let id = keep_by_touch(browser);
    browser.tap_and_write(&format!("#record-numbers-{id}"), "1 on 1, 2 on 2, 3 on 3");
    let borings = format!("document.querySelectorAll('[id^=\"record-diameter-{id}/\"]').length");
    browser.tap(&format!("#record-add-{id}"));
    browser.eventually(&borings, &json!(1), "a boring");
    browser.eventually(KEPT, &json!("kept"), "it is kept");
    let tooth = found(&job).scene.placing.expect("a place on the chuck").tooth;
    let wanted = [
        "Touch ring",
        &format!("on tooth {tooth}"),
        "Ring or plug in",
        &format!("to {}, taper {} per side", sized(outside[0]), fine(taper[0])),
        &format!("= {} on diameter", fine(taper[1])),
    ];
    assert_prints(browser, &format!("new-{unit}"), &wanted);

    // One year and another job later.
    browser.goto("about:blank");
    open(browser, &format!("{url}#example=fast-sleeve"));
    come_to_rest(browser);
    browser.tap("#records-box > summary");
    browser.eventually(KEPT, &json!("kept"), "the store answers");
    browser.tap(&format!("#record-{id} > summary"));
    browser.tap(&format!("#record-open-{id}"));
    assert_shows(browser, &job, system, "the set-up of the record");
    let answer = format!("document.getElementById('record-reuse-{id}').textContent");
    let told = |words: &str, claim: &str| {
        browser.eventually(&format!("{answer}.includes({0}) || {answer}", json!(words)), &json!(true), claim);
    };
    told("No recut needed on the same chuck, the same teeth and in the same order (1 on 1, 2 on 2", "the same job");
    fill(browser, &[("part.outside_diameter", outside[1]), ("cuts.0.diameter", outside[1])]);
    told(&format!("Recut: {} per side", sized(stock)), "a larger part: half of what it is larger");
    browser.tap(&format!("#record-use-{id}"));
    browser.wait_until("document.querySelector(\"[id='all-recut.stock'] .value\")");
    choose(browser, "recut.as_before", "yes");
    fill(browser, &[("recut.runout", runout)]);
    let deep = job.text_or_default(GRIP_LENGTH.path, &GRIP_LENGTH).to_owned();
    for (path, text) in [
        ("part.outside_diameter", sized(outside[1])),
        ("cuts.0.diameter", sized(outside[1])),
        ("recut.jaws", "bored".into()),
        ("recut.as_before", "yes".into()),
        ("recut.runout", fine(runout)),
        ("recut.standing", sized(outside[0])),
        ("recut.taper", fine(taper[0])),
        ("recut.depth", deep),
    ] {
        job.set(path, &text);
    }
    assert_eq!(browser.value(&field("recut.standing")), outside[0], "as last bored");
    assert_shows(browser, &job, system, "the recut");
    browser.tap(&format!("#record-add-{id}"));
    browser.eventually(&borings, &json!(2), "another boring");
    browser.eventually(KEPT, &json!("kept"), "it is kept");
    assert_eq!(read(&file(browser)).get(&id).unwrap().bored().len(), 2, "bored a second time");
    let wanted = ["Touch ring", "Touch off each jaw", &format!("to {}", sized(outside[1])), "Stock"];
    assert_prints(browser, &format!("recut-{unit}"), &wanted);
}

#[test]
fn from_a_new_part_to_paper_and_a_year_later_to_a_recut_by_touch_alone_in_millimetres() {
    on_both_pages(Viewport::TABLET, |browser, url| travel(browser, url, &MILLIMETRES));
}

#[test]
fn from_a_new_part_to_paper_and_a_year_later_to_a_recut_by_touch_alone_in_inches() {
    on_both_pages(Viewport::TABLET, |browser, url| travel(browser, url, &INCHES));
}
