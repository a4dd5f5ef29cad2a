//! Readings of an indicator and of a grip gauge: typed, tapped, pasted, read twice, and a condition adopted.

use holdround_core::quantity::{UnitSystem, decimal};
use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::json;

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{assert_quiet, assert_shows, choose, entries, field, found, on_both_pages, open, type_at, written};

/// A job read at eight stations.
fn read(texts: &[&str; 8]) -> Entries {
    let mut job = entries(&[("indicator.use", "once"), ("indicator.stations", "8"), ("indicator.unit", "0.001 mm")]);
    for (at, text) in texts.iter().enumerate() {
        job.set(&format!("dial.{at}.reading"), text);
    }
    job
}

/// The line beside the readings must come to show what the engine finds.
fn assert_tells(browser: &Browser, job: &Entries, id: &str) {
    let wanted = written(found(job).get(id).expect(id), UnitSystem::Metric);
    let shown = format!("document.querySelector(\"[id='here-{id}'] .value\")?.textContent");
    browser.eventually(&shown, &json!(wanted), id);
}

#[test]
fn readings_are_typed_tapped_and_taken_back() {
    on_both_pages(Viewport::PHONE, |browser, _| {
        browser.tap("#fresh");
        assert_eq!(browser.count("#dial"), 0, "nothing is asked until it is wanted");
        choose(browser, "indicator.use", "once");
        browser.wait_until("document.querySelector('#dial svg')");
        browser.tap("#dial-all > summary");
        for (at, text) in ["4", "-1,5", "0", "2"].iter().enumerate() {
            type_at(browser, &format!("dial.{at}.reading"), text);
        }
        let said = "document.querySelector('#dial-says').textContent.startsWith('4 stations read')";
        browser.eventually(said, &json!(true), "the drawing says what is read");
        browser.tap("#station-4");
        browser.eventually(
            "document.querySelector('#station-4').getAttribute('aria-pressed')",
            &json!("true"),
            "in hand",
        );
        for _ in 0..3 {
            browser.tap("[id='dial-more-dial.4.reading']");
        }
        browser.eventually("document.querySelector(\"[id='in-dial.4.reading']\").value", &json!("1"), "0, 0.5, 1");
        browser.tap("[id='dial-less-dial.4.reading']");
        browser.eventually(
            "document.querySelector(\"[id='at-dial.4.reading']\").textContent",
            &json!("0.5"),
            "a step back",
        );
        let refused = "document.querySelector('#made-indicator').textContent.includes('5 stations are read')";
        browser.eventually(refused, &json!(true), "too few are refused with how many are needed");
        let small = browser.execute(
            "return [...document.querySelectorAll('#dial button, #dial .station circle')].map((target) => target.getBoundingClientRect())
                .filter((box) => box.width < 43.99 || box.height < 43.99).length",
            Vec::new(),
        );
        assert_eq!(small, json!(0), "every station is large enough for a finger");
    });
}

#[test]
fn a_column_is_pasted_and_its_bad_lines_are_named() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        browser.click("#fresh");
        choose(browser, "indicator.use", "once");
        choose(browser, "indicator.unit", "0.001 mm");
        browser.click("#dial-column > summary");
        let paste = |text: &str| {
            browser.execute(
                "const column = document.querySelector('#dial-text');
                column.value = arguments[0];
                column.dispatchEvent(new Event('input', { bubbles: true }))",
                vec![json!(text)],
            );
            browser.click("#dial-paste");
        };
        paste("3,5\n2.5\nabout 3\n-2");
        let told = "document.querySelector('#dial-told').textContent";
        browser.eventually(told, &json!("Line 3: “about 3” is no number."), "the bad line by its number");
        assert_eq!(browser.value("#dial-text"), "3,5\n2.5\nabout 3\n-2", "and nothing typed is lost");
        let texts = ["30,5", "2.5", "-10", "-20", "10", "30", "-20", "-45"];
        paste(&texts.join("\t"));
        let job = read(&texts);
        assert_shows(browser, &job, UnitSystem::Metric, "eight stations, as pasted");
        for id in ["indicator.offset", "indicator.oval", "indicator.lobing", "indicator.lobing.predicted"] {
            assert_tells(browser, &job, id);
        }
        browser.click("#undo");
        browser.eventually(
            "document.querySelector(\"[id='in-dial.0.reading']\").value",
            &json!(""),
            "taken back at once",
        );
    });
}

#[test]
fn a_second_set_parts_what_the_grip_does() {
    on_both_pages(Viewport::DESK, |browser, url| {
        let mut job = read(&["30", "2", "-10", "-20", "10", "30", "-20", "-45"]);
        open(browser, &format!("{url}#{}", job.to_link()));
        choose(browser, "indicator.use", "twice");
        job.set("indicator.use", "twice");
        browser.wait_until("document.querySelector(\"[id='in-dial.0.second']\")");
        browser.click("#dial-all > summary");
        for (at, text) in ["15", "1", "-5", "-10", "5", "15", "-10", "-20"].iter().enumerate() {
            type_at(browser, &format!("dial.{at}.second"), text);
            job.set(&format!("dial.{at}.second"), text);
        }
        for wave in ["offset", "oval", "lobing"] {
            assert_tells(browser, &job, &format!("indicator.{wave}.squeezed"));
            assert_tells(browser, &job, &format!("indicator.{wave}.there"));
        }
    });
}

#[test]
fn a_condition_is_adopted_marked_and_taken_back() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        // Seven tenths of the engine's own lobes.
        let mut job = entries(&[("indicator.use", "once"), ("indicator.unit", "0.001 mm")]);
        let shape = found(&job).scene.indicator.and_then(|dial| dial.predicted).expect("a shape");
        for at in 0..12 {
            let y = 0.7e6 * shape.at(std::f64::consts::TAU * f64::from(at) / 12.0);
            job.set(&format!("dial.{at}.reading"), &decimal(y, 1));
        }
        open(browser, &format!("{url}#{}", job.to_link()));
        let told = found(&job).get("indicator.condition").expect("a condition").value.clone().expect("a figure");
        let text = decimal(told, 3);
        browser.wait_until("document.querySelector(\"[id='adopt-chuck.condition']\")");
        browser.tap("[id='adopt-chuck.condition']");
        browser.eventually("document.querySelector(\"[id='in-chuck.condition']\").value", &json!(text), "in its field");
        assert!(browser.text("[id='message-chuck.condition']").contains("measured readings"), "and marked there");
        job.set("chuck.condition", &text);
        job.set("indicator.adopted", &text);
        assert_shows(browser, &job, UnitSystem::Metric, "with the adopted condition");
        browser.click("#undo");
        browser.eventually(
            "document.querySelector(\"[id='in-chuck.condition']\").value",
            &json!(""),
            "taken back at once",
        );
        browser.eventually(
            "document.querySelector(\"[id='message-chuck.condition']\").textContent",
            &json!(""),
            "with its mark",
        );
    });
}

#[test]
fn a_tilt_stiffness_is_adopted_listed_and_taken_back() {
    on_both_pages(Viewport::TABLET_UPRIGHT, |browser, url| {
        // Nine tenths of the engine's own lobes, far out on a thin part in tall jaws.
        let mut job = entries(&[
            ("indicator.use", "once"),
            ("indicator.unit", "0.001 mm"),
            ("indicator.resolution", "0.1 µm"),
            ("part.bore_diameter", "140 mm"),
            ("part.length", "80 mm"),
            ("grip.length", "30 mm"),
            ("jaws.height", "60 mm"),
            ("jaws.boring_pressure", "0 MPa"),
        ]);
        let shape = found(&job).scene.indicator.and_then(|dial| dial.predicted).expect("a shape");
        for at in 0..12 {
            let y = 0.9e6 * shape.at(std::f64::consts::TAU * f64::from(at) / 12.0);
            job.set(&format!("dial.{at}.reading"), &decimal(y, 2));
        }
        open(browser, &format!("{url}#{}", job.to_link()));
        let told = found(&job).get("indicator.tilt").expect("a stiffness").value.clone().expect("a figure");
        let text = decimal((told / 1e3).round() * 1e3, 0);
        browser.wait_until("document.querySelector(\"[id='adopt-chuck.tilt_stiffness']\")");
        browser.tap("[id='adopt-chuck.tilt_stiffness']");
        let field = "document.querySelector(\"[id='in-chuck.tilt_stiffness']\").value";
        browser.eventually(field, &json!(text), "in its field");
        assert!(browser.text("[id='message-chuck.tilt_stiffness']").contains("measured readings"), "and marked there");
        let listed = "[...document.querySelectorAll('#assumed li')].filter((one) => one.textContent.includes('from the indicator')).length";
        browser.eventually(listed, &json!(1), "listed among what is assumed");
        job.set("chuck.tilt_stiffness", &text);
        job.set("indicator.adopted_tilt", &text);
        assert_shows(browser, &job, UnitSystem::Metric, "with the adopted stiffness");
        browser.click("#undo");
        browser.eventually(field, &json!(""), "taken back at once");
        browser.eventually(listed, &json!(0), "with its place in the list");
    });
}

#[test]
fn gauge_readings_replace_the_plate() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        browser.click("#fresh");
        choose(browser, "chuck.grip_from", "gauge");
        let mut job = entries(&[("chuck.grip_from", "gauge"), ("run.pressure", "1.5 MPa")]);
        type_at(browser, "run.pressure", "1.5");
        browser.click("#add-gauge");
        for (at, (pressure, grip)) in [("1", "18.2"), ("1.5", "27.9"), ("2", "38.4")].iter().enumerate() {
            for (input, text, unit) in [("pressure", pressure, "MPa"), ("grip", grip, "kN")] {
                type_at(browser, &format!("gauge.{at}.{input}"), text);
                job.set(&format!("gauge.{at}.{input}"), &format!("{text} {unit}"));
            }
        }
        assert_shows(browser, &job, UnitSystem::Metric, "by the gauge");
        for (at, (speed, grip)) in [("0", "28"), ("800", "27.6"), ("1200", "27.1")].iter().enumerate() {
            browser.click("#add-spun");
            browser.wait_until(&format!("document.querySelector(\"{}\")", field(&format!("spun.{at}.speed"))));
            for (input, text, unit) in [("speed", speed, "rev/min"), ("grip", grip, "kN")] {
                type_at(browser, &format!("spun.{at}.{input}"), text);
                job.set(&format!("spun.{at}.{input}"), &format!("{text} {unit}"));
            }
        }
        assert!(found(&job).get("gauge.spin_share").is_some(), "readings at speed tell a share");
        assert_shows(browser, &job, UnitSystem::Metric, "and by the gauge at speed");
    });
}

#[test]
fn the_dial_keeps_the_rules_and_fits_every_screen() {
    let site = serve_site();
    let job = read(&["30", "2", "-10", "", "10", "30", "-20", "-45"]);
    let browser = Browser::open(Viewport::TABLET);
    for viewport in [Viewport::TABLET, Viewport::TABLET_UPRIGHT, Viewport::PHONE] {
        browser.resize(viewport);
        open(&browser, &format!("{}#{}", site.url(), job.to_link()));
        browser.wait_until("document.querySelector('#made-indicator details')");
        browser.execute(
            "document.querySelectorAll('#group-indicator details').forEach((line) => { line.open = true })",
            Vec::new(),
        );
        assert_keeps_the_rules(&browser, &format!("the dial on {viewport:?}"));
        let nonsense = "return /NaN|Infinity|undefined/.test(document.querySelector('#group-indicator').innerHTML)";
        assert_eq!(browser.execute(nonsense, Vec::new()), json!(false), "no number that is none");
    }
    assert_quiet(&browser, &site.url());
}
