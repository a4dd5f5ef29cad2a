//! The set-up sheet on paper: what a shop needs beside the drawing.

use std::env;
use std::fs;
use std::path::Path;

use holdround_core::setup::Entries;
use holdround_tests::browser::{Browser, Paper, Viewport, single_file_url};
use serde_json::json;

use crate::paper::pages;
use crate::records::decode;
use crate::sheet::{WORKED_OUT, entries, open, type_at};

#[test]
fn the_sheet_has_steps_to_tick_figures_and_a_code_that_leads_back() {
    let browser = Browser::open(Viewport::DESK);
    let mut wanted = entries(&[
        ("part.outside_diameter", "160 mm"),
        ("part.bore_diameter", "60 mm"),
        ("part.length", "40 mm"),
        ("cuts.0.diameter", "160 mm"),
    ]);
    open(&browser, &format!("{}#{}", single_file_url(), wanted.to_link()));
    assert!(!browser.is_shown("#work"), "the order of work is for paper");
    browser.execute(
        "const field = document.querySelector(\"[id='in-stroke.plan']\");
        field.value = 'yes';
        field.dispatchEvent(new Event('change', { bubbles: true }))",
        Vec::new(),
    );
    type_at(&browser, "jaws.taper", "20");
    browser.wait_until(WORKED_OUT);
    let taken = "/taper 20 µm per side = 40 µm on diameter/.test(document.querySelector('#work').textContent)";
    browser.eventually(taken, &json!(true), "taper told both ways");
    let text = browser.execute("return document.querySelector('#work').textContent", Vec::new());
    for word in ["tooth", "Ring or plug", "clamp at", "for production", "per side =", "on diameter", "gauge", "seat"] {
        assert!(text.as_str().is_some_and(|text| text.contains(word)), "{word} is on the sheet: {text}");
    }
    wanted.set("stroke.plan", "yes");
    wanted.set("jaws.taper", "20 µm");
    let address = decode(&browser, "#work .code");
    let link = address.split_once('#').expect("an address with a set-up").1;
    let read = Entries::from_link(link).expect("a set-up");
    assert_eq!(read, wanted, "the code leads back to this set-up");
    for paper in [Paper::A4, Paper::LETTER] {
        let pdf = browser.print(paper);
        if let Some(folder) = env::var_os("HOLDROUND_PRINTS") {
            let _kept = fs::write(Path::new(&folder).join(format!("{}.pdf", paper.width)), &pdf);
        }
        assert_eq!(pages(&pdf), 1, "one page of {paper:?} with tooth and ring planned");
    }
}
