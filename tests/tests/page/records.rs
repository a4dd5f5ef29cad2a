//! Jaw records: kept, changed, taken along in a file, and used again a year later.

use std::fs;

use holdround_core::record::Records;
use holdround_core::setup::{Document, Entries};
use holdround_tests::browser::{Browser, Paper, Viewport, serve_site, single_file_url};
use serde_json::json;

use crate::paper::pages;
use crate::sheet::{
    assert_address_holds, choose, choose_file, come_to_rest, entries, first_example, on_both_pages, open, type_at,
};

pub(crate) const KEPT: &str = "document.querySelector('#records-state').dataset.state";

/// Opens the list of records.
pub(crate) fn open_records(browser: &Browser) {
    browser.wait_until("document.querySelector('#records-state')");
    browser.execute("document.querySelector('#records-box').open = true", Vec::new());
    browser.eventually(KEPT, &json!("kept"), "the store answers");
}

/// Keeps the jaws on the sheet; the id of their record.
pub(crate) fn keep(browser: &Browser) -> String {
    open_records(browser);
    let before = browser.count(".record");
    browser.click("#record-keep-");
    browser.eventually("document.querySelectorAll('.record').length", &json!(before + 1), "a record more");
    browser.eventually(KEPT, &json!("kept"), "it is kept");
    let id = browser.execute("return document.activeElement.id.replace('record-name-', '')", Vec::new());
    id.as_str().expect("the keyboard is in the new record").to_owned()
}

/// Keeps the jaws on the sheet, the first to be kept, on touch alone; the id of their record.
pub(crate) fn keep_by_touch(browser: &Browser) -> String {
    come_to_rest(browser);
    browser.tap("#records-box > summary");
    browser.eventually(KEPT, &json!("kept"), "the store answers");
    browser.tap("#record-keep-");
    browser.eventually("document.querySelectorAll('.record').length", &json!(1), "a record");
    let id = browser.execute("return document.querySelector('.record').id.replace('record-', '')", Vec::new());
    id.as_str().expect("an id").to_owned()
}

fn write(browser: &Browser, field: &str, id: &str, text: &str) {
    browser.execute("document.getElementById(arguments[0]).open = true", vec![json!(format!("record-{id}"))]);
    browser.type_into(&format!("#record-{field}-{id}"), text);
}

/// Leaves the field and waits until all is in the store.
pub(crate) fn settle(browser: &Browser) {
    // What was typed waits for a pause before it is on its way.
    browser.execute("window.dispatchEvent(new PageTransitionEvent('pagehide'))", Vec::new());
    browser.eventually(KEPT, &json!("kept"), "all is kept");
}

pub(crate) fn act(browser: &Browser, what: &str, id: &str) {
    let button = format!("#record-{what}-{id}");
    browser.execute("document.getElementById(arguments[0]).open = true", vec![json!(format!("record-{id}"))]);
    browser.click(&button);
}

/// The file that would be saved.
pub(crate) fn file(browser: &Browser) -> String {
    let text = browser.execute(
        "const link = document.querySelector('#records-save');
        link.addEventListener('click', (event) => event.preventDefault(), { once: true });
        let file;
        const make = URL.createObjectURL;
        URL.createObjectURL = (blob) => make.call(URL, file = blob);
        link.click();
        URL.createObjectURL = make;
        return link.href.startsWith('blob:') && file.text()",
        Vec::new(),
    );
    text.as_str().expect("a file").to_owned()
}

pub(crate) fn read(text: &str) -> Records {
    let document = Document::from_json(text).expect("the file is JSON");
    let (records, refused) = Records::from_document(&document).expect("a file of records");
    assert_eq!(refused, [], "every record is whole");
    records
}

/// Chooses a file with this text.
pub(crate) fn take_over(browser: &Browser, text: &str) {
    choose_file(browser, "#records-file", text);
}

#[test]
fn a_record_is_kept_edited_and_there_again_after_a_reload() {
    let site = serve_site();
    for url in [site.url(), single_file_url()] {
        let browser = Browser::open(Viewport::TABLET);
        open(&browser, &url);
        let id = keep(&browser);
        write(&browser, "name", &id, "Sleeve \"A\" <jaws>");
        write(&browser, "numbers", &id, "1 on 1, 2 on 2, 3 on 3");
        act(&browser, "add", &id);
        settle(&browser);
        browser.reload();
        open_records(&browser);
        assert_eq!(browser.value(&format!("#record-name-{id}")), "Sleeve \"A\" <jaws>", "the name at {url}");
        let records = read(&file(&browser));
        let record = records.get(&id).unwrap();
        assert_eq!(record.get("numbers"), "1 on 1, 2 on 2, 3 on 3", "the order of the jaws");
        assert_eq!(record.setup(), Some(first_example()), "the set-up");
        let (boring, _) = record.bored()[0];
        let at = format!("{id}/{boring}");
        browser.tap(&format!("#record-{id} > summary"));
        browser.type_into(&format!("[id='record-diameter-{at}']"), "80.25 mm");
        settle(&browser);
        let records = read(&file(&browser));
        let bored = records.get(&id).unwrap().last_boring().unwrap().clone();
        assert_eq!(bored.get("diameter"), "80.25 mm", "a boring is changed where it stands");
        let borings = format!("document.querySelectorAll('[id^=\"record-diameter-{id}/\"]').length");
        browser.click(&format!("[id='record-delete-{at}']"));
        browser.eventually(&borings, &json!(0), "it is deleted");
        browser.click(&format!("[id='record-undelete-{at}']"));
        browser.eventually(&borings, &json!(1), "and brought back");
        act(&browser, "delete", &id);
        browser.eventually("document.querySelectorAll('.record').length", &json!(0), "deleted");
        browser.eventually(KEPT, &json!("kept"), "for good");
        let deleted = file(&browser);
        assert!(read(&deleted).get(&id).unwrap().is_deleted(), "a mark of it stays in the file");
        browser.click(&format!("#record-undelete-{id}"));
        browser.eventually("document.querySelectorAll('.record').length", &json!(1), "and brought back");
        browser.eventually(KEPT, &json!("kept"), "for good");
        let back = read(&file(&browser));
        let back = back.get(&id).unwrap();
        assert_eq!(back.get("name"), records.get(&id).unwrap().get("name"), "as it was");
        assert_eq!(back.last_boring().unwrap().get("diameter"), "80.25 mm", "with its boring");
        take_over(&browser, &deleted);
        browser.wait_until("/changed here since, so it stays/.test(document.querySelector('#notices').textContent)");
    }
}

#[test]
fn a_file_is_taken_over_into_an_empty_browser_and_merged_without_loss() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    let id = keep(&browser);
    write(&browser, "name", &id, "First name");
    settle(&browser);
    let first = file(&browser);

    let other = Browser::open(Viewport::DESK);
    open(&other, &site.url());
    open_records(&other);
    take_over(&other, &first);
    other.eventually("document.querySelectorAll('.record').length", &json!(1), "it is there");
    assert!(other.text("#notices").contains("1 new, 0 with something new, 0 the same"), "{}", other.text("#notices"));
    assert_eq!(read(&file(&other)), read(&first), "the same");
    write(&other, "name", &id, "Second name");
    act(&other, "add", &id);
    settle(&other);
    let second = file(&other);

    take_over(&browser, &second);
    let name = format!("document.getElementById('record-name-{id}').value");
    browser.eventually(&name, &json!("Second name"), "the newest change holds");
    browser.eventually(KEPT, &json!("kept"), "it is kept");
    let merged = read(&file(&browser));
    assert_eq!(merged.get(&id).unwrap().bored().len(), 1, "the boring came along");
    assert!(
        merged.get(&id).unwrap().earlier.iter().any(|version| format!("{version:?}").contains("First name")),
        "{merged:?}"
    );
    take_over(&browser, "{\"jaw_records\": 1, \"records\": [{\"name\": \"Lost\"}]}");
    browser.wait_until("/Not added: Lost/.test(document.querySelector('#notices').textContent)");
    take_over(&browser, "junk");
    browser.wait_until("/Nothing was added/.test(document.querySelector('#notices').textContent)");
    assert_eq!(read(&file(&browser)), merged, "and nothing was changed by either");
}

#[test]
fn an_older_file_brings_nothing_back_that_was_deleted_since() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    let id = keep(&browser);
    act(&browser, "add", &id);
    settle(&browser);
    let old = file(&browser);
    let records = read(&old);
    let (boring, _) = records.get(&id).unwrap().bored()[0];
    browser.click(&format!("[id='record-delete-{id}/{boring}']"));
    browser.eventually(KEPT, &json!("kept"), "it is deleted for good");
    browser.reload();
    open_records(&browser);
    take_over(&browser, &old);
    browser.wait_until("/because it was deleted here/.test(document.querySelector('#notices').textContent)");
    assert!(read(&file(&browser)).get(&id).unwrap().bored().is_empty(), "the boring stays deleted");
    act(&browser, "delete", &id);
    browser.eventually("document.querySelectorAll('.record').length", &json!(0), "the record is deleted");
    take_over(&browser, &old);
    browser.eventually("document.querySelectorAll('.record').length", &json!(0), "and stays so");
    assert!(read(&file(&browser)).get(&id).unwrap().is_deleted(), "in the file as well");
}

#[test]
fn a_tab_that_is_closed_while_it_keeps_a_record_loses_none() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    let id = keep(&browser);
    for round in 0..4 {
        browser.execute("window.other = window.open(location.href.split('#')[0])", Vec::new());
        browser.wait_until(&format!("window.other.document.getElementById('record-name-{id}')"));
        let targets = browser.devtools("Target.getTargets", json!({}));
        let infos = targets["targetInfos"].as_array().expect("targets").clone();
        browser.execute(
            "const field = window.other.document.getElementById(arguments[0]);
            field.value = arguments[1];
            field.dispatchEvent(new window.other.InputEvent('input', { bubbles: true }));
            if (arguments[2]) window.other.dispatchEvent(new window.other.PageTransitionEvent('pagehide'))",
            vec![json!(format!("record-name-{id}")), json!(format!("Round {round}")), json!(round % 2 == 1)],
        );
        let pages: Vec<_> = infos.iter().filter(|info| info["type"] == "page").collect();
        assert_eq!(pages.len(), 2, "the tab and the one that is to go: {infos:?}");
        let newest = pages.iter().find(|info| info["openerId"].is_string()).expect("the one opened by the other");
        browser.devtools("Target.closeTarget", json!({ "targetId": newest["targetId"] }));
        browser.wait_until("window.other.closed");
        browser.reload();
        open_records(&browser);
        let name = browser.value(&format!("#record-name-{id}"));
        let wanted = [format!("Round {round}"), format!("Round {}", round - 1), "Jaws".to_owned(), first_name()];
        assert!(wanted.contains(&name), "round {round}: the record is whole, old or new, not {name:?}");
        assert_eq!(read(&file(&browser)).get(&id).unwrap().setup(), Some(first_example()), "and its set-up with it");
    }
}

fn first_name() -> String {
    first_example().get("job.name").unwrap_or("Jaws").to_owned()
}

#[test]
fn where_nothing_is_kept_it_is_said_and_the_text_is_offered() {
    let browser = Browser::open(Viewport::TABLET);
    // Stands for a browser that refuses: the store fails as in a private window.
    let refuse =
        "Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('no', 'SecurityError') } })";
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": refuse }));
    open(&browser, &single_file_url());
    browser.execute("document.querySelector('#records-box').open = true", Vec::new());
    browser.eventually(KEPT, &json!("refused"), "it is said");
    browser.click("#record-keep-");
    browser.wait_until("document.querySelector('#notices textarea')");
    assert_eq!(read(&browser.value("#notices textarea")).0.len(), 1, "the record is in the text that is offered");
    assert_eq!(read(&file(&browser)).0.len(), 1, "and in the file");
}

#[test]
fn a_full_store_is_told_and_the_record_is_offered_as_text_and_file() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    open_records(&browser);
    let origin = site.url().trim_end_matches('/').to_owned();
    browser.devtools("Storage.overrideQuotaForOrigin", json!({ "origin": origin, "quotaSize": 1 }));
    browser.click("#record-keep-");
    browser.eventually(KEPT, &json!("refused"), "the browser's own store has no room");
    browser.wait_until("document.querySelector('#notices textarea')");
    assert_eq!(read(&browser.value("#notices textarea")).0.len(), 1, "the record is in the text that is offered");
    assert_eq!(read(&file(&browser)).0.len(), 1, "and in the file");
    assert_eq!(browser.count(".record"), 1, "and still on the page");
}

#[test]
fn the_code_on_the_label_opens_the_set_up() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    let id = keep(&browser);
    act(&browser, "label", &id);
    browser.wait_until("document.querySelector('#label .code')");
    let address = decode(&browser, "#label .code");
    let (page, link) = address.split_once('#').expect("an address with a set-up");
    assert_eq!(page, site.url(), "of this page");
    assert_eq!(Entries::from_link(link), Ok(first_example()), "the set-up of the jaws");
    let label = "document.documentElement.dataset.print = 'label'";
    browser.execute(label, Vec::new());
    browser.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" }));
    assert!(browser.is_shown("#label .code"), "the label is on the paper");
    for other in [".bench", "#inputs", "#notes", "#work", "#records-state", ".record .field"] {
        let shown = format!("return document.querySelector('{other}').getClientRects().length");
        assert_eq!(browser.execute(&shown, Vec::new()), json!(0), "{other} is not");
    }
    browser.devtools("Emulation.setEmulatedMedia", json!({ "media": "" }));
    for paper in [Paper::A4, Paper::LETTER] {
        // After a print the page is back to printing the sheet.
        browser.execute(label, Vec::new());
        let pdf = browser.print(paper);
        let _kept = std::env::var_os("HOLDROUND_LABEL").map(|path| fs::write(path, &pdf));
        assert_eq!(pages(&pdf), 1, "one label on {paper:?}");
    }
}

/// What the code at `selector` says, read by a decoder from its modules as drawn.
pub(crate) fn decode(browser: &Browser, selector: &str) -> String {
    let drawn = browser.execute(
        "const code = document.querySelector(arguments[0]);
        return [code.viewBox.baseVal.width, code.querySelector('path').getAttribute('d')]",
        vec![json!(selector)],
    );
    let size = drawn[0].as_f64().expect("a size") as usize;
    let mut dark = vec![vec![false; size]; size];
    for run in drawn[1].as_str().expect("a path").split('M').skip(1) {
        let numbers: Vec<usize> =
            run.split(|c: char| !c.is_ascii_digit()).filter_map(|number| number.parse().ok()).collect();
        for x in 0..numbers[2] {
            dark[numbers[1]][numbers[0] + x] = true;
        }
    }
    const PIXELS: usize = 4;
    let grey = |x: usize, y: usize| if dark[y / PIXELS][x / PIXELS] { 0 } else { 255 };
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(size * PIXELS, size * PIXELS, grey);
    let grids = image.detect_grids();
    assert_eq!(grids.len(), 1, "one code");
    grids[0].decode().expect("a code that can be read").1
}

#[test]
fn jaws_on_size_go_back_with_one_tap_and_a_job_that_does_not_know_asks_first() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        let mut job = entries(&[
            ("part.outside_diameter", "96 mm"),
            ("part.bore_diameter", "30 mm"),
            ("cuts.0.diameter", "96 mm"),
            ("jaws.taper", "20 µm"),
        ]);
        open(browser, &format!("{url}#{}", job.to_link()));
        let id = keep_by_touch(browser);
        browser.tap(&format!("#record-add-{id}"));
        browser.wait_until(&format!("document.getElementById('record-same-{id}')"));
        browser.eventually(KEPT, &json!("kept"), "it is kept");
        come_to_rest(browser);
        const VERDICT: &str = "document.querySelector('#verdict h2').textContent.trim()";
        let before = browser.execute(&format!("return {VERDICT}"), Vec::new());
        browser.tap(&format!("#record-same-{id}"));
        for (path, text) in [
            ("recut.jaws", "bored"),
            ("recut.as_before", "yes"),
            ("recut.standing", "96 mm"),
            ("recut.taper", "20 µm"),
            ("recut.depth", "20 mm"),
            ("jaws.boring_pressure", "1.5 MPa"),
        ] {
            job.set(path, text);
        }
        assert_address_holds(browser, &job, "used as they are");
        browser.eventually(VERDICT, &before, "the verdict is that of the part, and of no cut");
        browser.eventually(&settled_recut("Used as they are"), &json!(true), "nothing is asked any more");

        job.unset("recut.as_before");
        open(browser, &format!("{url}#{}", job.to_link()));
        browser.eventually(VERDICT, &json!("Answer first"), "not known: it is asked");
        browser.tap("#verdict [data-path='recut.as_before']");
        let at = "document.activeElement.dataset.path";
        browser.eventually(at, &json!("recut.as_before"), "one tap leads to the question");
        choose(browser, "recut.as_before", "no");
        browser.eventually(VERDICT, &json!("Do not run"), "to be recut, and on this ring there is no stock");
    });
}

/// Whether what is told of jaws that come back begins so.
fn settled_recut(begins: &str) -> String {
    format!("document.querySelector('#settled-recut').textContent.startsWith('{begins}')")
}

#[test]
fn a_year_later_jaws_are_used_again_or_recut_by_touch_alone() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        let id = keep_by_touch(browser);
        browser.tap(&format!("#record-add-{id}"));
        let says = format!("document.getElementById('record-reuse-{id}').textContent.includes(arguments[0])");
        let told = |words: &str, claim: &str| {
            browser.eventually(&says.replace("arguments[0]", &json!(words).to_string()), &json!(true), claim);
        };
        told("No recut needed on the same chuck", "on size: nothing to cut");
        browser.eventually(KEPT, &json!("kept"), "it is kept");

        browser.reload();
        open_records(browser);
        type_at(browser, "jaws.bored_diameter", "151");
        told("Recut:", "another part: recut");
        browser.execute("document.getElementById(arguments[0]).open = true", vec![json!(format!("record-{id}"))]);
        browser.tap(&format!("#record-use-{id}"));
        browser.wait_until("document.querySelector(\"[id='all-recut.stock'] .value\")");
        let standing = browser.value("[id='in-recut.standing']");
        assert!(!standing.is_empty(), "the set-up has the diameter they were bored to");
    });
}
