//! What is taken along from the page, and what is opened on it.

use holdround_core::quantity::UnitSystem;
use holdround_core::record::{Record, Records, to_text};
use holdround_core::setup::{Entries, Input, declared};
use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::{Value, json};

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{
    assert_shows, choose_file, come_to_rest, example, field, first_example, found, on_both_pages, open, type_at,
};

const TOLD: &str = "document.querySelector('#files-told').textContent";

fn open_files(browser: &Browser) {
    come_to_rest(browser);
    browser.execute("document.querySelector('#files-box').open = true", Vec::new());
}

/// Presses a button and gives the name of the file that is handed out, and its text or, of a picture, its address.
fn saved(browser: &Browser, button: &str) -> (String, String) {
    let file = browser.execute(
        "const make = URL.createObjectURL, click = HTMLAnchorElement.prototype.click;
        let blob;
        URL.createObjectURL = (it) => make.call(URL, (blob = it));
        return new Promise((done) => {
            HTMLAnchorElement.prototype.click = function () {
                URL.createObjectURL = make;
                HTMLAnchorElement.prototype.click = click;
                const { download, href } = this;
                Promise.resolve(blob ? blob.text() : href).then((text) => done([download, text]));
            };
            document.querySelector(arguments[0]).click();
        })",
        vec![json!(button)],
    );
    let text = |at: usize| file[at].as_str().expect("a file with a name and a text").to_owned();
    (text(0), text(1))
}

/// Drops a file with this text on the page.
fn drop_file(browser: &Browser, text: &str) {
    browser.execute(
        "const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([arguments[0]], 'dropped.json'));
        for (const name of ['dragover', 'drop']) {
            const event = new DragEvent(name, { dataTransfer, bubbles: true, cancelable: true });
            document.querySelector('.sheet').dispatchEvent(event);
            if (!event.defaultPrevented) throw new Error(`${name} is left to the browser`);
        }",
        vec![json!(text)],
    );
}

#[test]
fn a_set_up_is_saved_as_a_file_opened_again_and_one_undo_away() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        open_files(browser);
        let (name, text) = saved(browser, "#file-save");
        assert_eq!(name, "spacer-ring-second-operation.json", "it is named after the job");
        assert_eq!(Entries::from_json(&text), Ok(first_example()), "the file is a set-up as the command reads it");

        let sleeve = example("fast-sleeve");
        choose_file(browser, "#setup-file", &sleeve.to_json());
        assert_shows(browser, &sleeve, UnitSystem::Metric, "the file that was chosen");
        browser.click("#undo");
        assert_shows(browser, &first_example(), UnitSystem::Metric, "the job before is one undo away");
        drop_file(browser, &sleeve.to_json());
        assert_shows(browser, &sleeve, UnitSystem::Metric, "the file that was dropped");

        drop_file(browser, r#"{"schema": 1, "part": {"legth": "3 mm"}, "chuck": {"colour": "red"}}"#);
        browser.eventually("document.querySelectorAll('#notices .notice').length", &json!(1), "faults are told");
        let told = browser.text("#notices .notice p");
        assert_eq!(told.lines().count(), 3, "a line for each: {told}");
        assert!(told.contains("part.legth") && told.contains("chuck.colour"), "by their paths: {told}");
        assert_shows(browser, &sleeve, UnitSystem::Metric, "and nothing was changed");
        choose_file(browser, "#setup-file", "junk");
        browser.wait_until("/not JSON/.test(document.querySelector('#notices').textContent)");
    });
}

#[test]
fn a_dropped_file_of_jaw_records_goes_to_the_records() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    let mut records = Records::default();
    let mut record = Record::default();
    record.set("name", "Sleeve jaws", "2027-03-01T12:00:00.000Z");
    records.put("a1".into(), record);
    drop_file(&browser, &to_text(&records.to_document()));
    browser.eventually("document.querySelectorAll('.record').length", &json!(1), "the record is there");
    assert_shows(&browser, &first_example(), UnitSystem::Metric, "and the set-up is as it was");
}

#[test]
fn jobs_that_were_on_the_sheet_are_reopened_by_one_tap() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET_UPRIGHT);
    open(&browser, &site.url());
    open_files(&browser);
    type_at(&browser, "job.name", "Bush A");
    let mut bush = first_example();
    bush.set("job.name", "Bush A");
    choose_file(&browser, "#setup-file", &example("fast-sleeve").to_json());
    browser.wait_until("document.querySelector('#recent-0')");
    assert!(
        browser.text("#recent-0").starts_with("Bush A, left on 2"),
        "by name and day: {}",
        browser.text("#recent-0")
    );
    type_at(&browser, "job.name", "Sleeve B");
    browser.tap("#recent-0");
    assert_shows(&browser, &bush, UnitSystem::Metric, "reopened");
    browser.eventually(
        "[...document.querySelectorAll('.recent button')].map((one) => one.textContent.split(',')[0])",
        &json!(["Sleeve B", "Bush A"]),
        "the job that was left is there too",
    );
    browser.reload();
    open_files(&browser);
    browser.eventually("document.querySelectorAll('.recent button').length", &json!(2), "both are kept");
}

#[test]
fn results_are_copied_as_text_with_units_and_offered_where_the_browser_copies_nothing() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        open_files(browser);
        browser.execute(
            "document.addEventListener('copy', () => { window.copied = document.activeElement.value })",
            Vec::new(),
        );
        let findings = found(&first_example());
        browser.click("#file-copy-all");
        browser.eventually(TOLD, &json!("Copied."), "it is told");
        let text = browser.execute("return window.copied", Vec::new());
        let text = text.as_str().expect("a text was copied");
        for finding in &findings.findings {
            assert!(text.contains(&format!("{}: ", finding.name)), "{} is in {text}", finding.name);
        }
        assert!(text.contains("650 rev/min, at most ") && text.contains("plate and manual rule"), "{text}");
        let focused = browser.execute("return document.activeElement.id", Vec::new());
        assert_eq!(focused, json!("file-copy-all"), "the keyboard stays where it was");

        browser.click("[id='line-hold.factor'] > summary");
        browser.click("[id='line-hold.factor'] [data-act='file-copy']");
        browser.eventually(
            "window.copied.startsWith('Hold factor: ') && window.copied.includes('Source: ')",
            &json!(true),
            "one finding with its steps",
        );

        browser.execute("document.execCommand = () => false", Vec::new());
        browser.click("#file-copy-all");
        browser.eventually("document.querySelectorAll('#notices textarea').length", &json!(1), "it is offered instead");
        assert_eq!(browser.value("#notices textarea").trim(), text.trim(), "the same text");
    });
}

/// The lines of a file of comma-separated values, read by the rules of RFC 4180.
fn lines(text: &str) -> Vec<Vec<String>> {
    let (mut lines, mut line, mut cell, mut quoted) = (Vec::new(), Vec::new(), String::new(), false);
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        match letter {
            '"' if quoted && letters.peek() == Some(&'"') => {
                letters.next();
                cell.push('"');
            }
            '"' => quoted = !quoted,
            ',' if !quoted => line.push(std::mem::take(&mut cell)),
            '\r' if !quoted => {}
            '\n' if !quoted => {
                line.push(std::mem::take(&mut cell));
                lines.push(std::mem::take(&mut line));
            }
            other => cell.push(other),
        }
    }
    lines
}

#[test]
fn tables_are_saved_with_their_units() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    open_files(&browser);
    let (name, text) = saved(&browser, "#file-csv");
    assert_eq!(name, "spacer-ring-second-operation-findings.csv", "named after job and table");
    let findings = found(&first_example()).findings;
    let table = lines(&text);
    assert_eq!(table.len(), findings.len() + 1, "a line for each finding");
    assert!(table.iter().all(|line| line.len() == table[0].len()), "as many cells in each: {table:?}");
    for (line, finding) in table[1..].iter().zip(&findings) {
        assert_eq!(line[0], finding.name.to_string(), "in their order");
        assert_eq!(line[1].is_empty(), finding.value.is_err(), "a refused finding has no value: {line:?}");
    }

    browser.click("#table option[value='window']");
    let (_, text) = saved(&browser, "#file-csv");
    let table = lines(&text);
    assert_eq!(table[0][2..], ["Speed, rev/min", "Pressure, MPa"], "units stand in the header");
    assert!(table[1..].iter().all(|line| line[2].parse::<f64>().is_ok()), "numbers alone below: {table:?}");

    browser.click("#table option[value='jaws']");
    browser.click("#file-csv");
    browser.wait_until("/Nothing has been compared/.test(document.querySelector('#files-told').textContent)");
}

/// What is on a picture: its width and height, the colour of its corner, and the share of it that is not white.
fn seen(browser: &Browser, address: &str) -> Value {
    browser.execute(
        "const image = new Image();
        image.src = arguments[0];
        return image.decode().then(() => {
            const canvas = document.createElement('canvas');
            [canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight];
            const context = canvas.getContext('2d');
            context.drawImage(image, 0, 0);
            const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
            let ink = 0;
            for (let at = 0; at < data.length; at += 4) ink += data[at] < 200 || data[at + 2] < 200;
            return [canvas.width, canvas.height, [...data.slice(0, 4)], ink / (data.length / 4)];
        })",
        vec![json!(address)],
    )
}

#[test]
fn every_view_is_saved_as_a_picture_that_needs_nothing_else() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    open_files(&browser);
    browser.click("#prefer-theme option[value='blueprint']");
    for view in ["face", "section", "trace", "window"] {
        browser.click(&format!("#picture option[value='{view}']"));
        let (name, svg) = saved(&browser, "#file-svg");
        assert_eq!(name, format!("spacer-ring-second-operation-{view}.svg"), "named after job and view");
        for foreign in ["class=", "style=", "var(", "data-act", "tabindex", "href"] {
            assert!(!svg.contains(foreign), "{view} hangs on nothing of the page: {foreign} in {svg}");
        }
        assert!(svg.contains("Check the grip with a gauge"), "{view} carries the caution");
        let parsed = browser.execute(
            "const image = new Image();
            image.src = 'data:image/svg+xml,' + encodeURIComponent(arguments[0]);
            return image.decode().then(() => true, () => false)",
            vec![json!(svg)],
        );
        assert_eq!(parsed, json!(true), "{view} opens as a picture by itself");
        for used in svg.split("url(").skip(1) {
            let id = used.trim_start_matches(['&', '"']).trim_start_matches("quot;").trim_start_matches('#');
            let id: String = id.chars().take_while(|c| c.is_alphanumeric() || *c == '-').collect();
            assert!(svg.contains(&format!("id=\"{id}\"")), "{view} holds {id}, which it refers to");
        }

        let (name, address) = saved(&browser, "#file-png");
        assert!(name.ends_with(".png") && address.starts_with("data:image/png"), "{name}");
        let picture = seen(&browser, &address);
        assert_eq!(picture[0], json!(2000), "{view} has the width that is told");
        let told = format!("Saved as {name}, 2000 × {} pixels.", picture[1]);
        browser.eventually(TOLD, &json!(told), "the size is told");
        assert_eq!(picture[2], json!([255, 255, 255, 255]), "{view} lies on white in every look");
        let ink = picture[3].as_f64().expect("a share");
        assert!((0.015..0.5).contains(&ink), "{view} is drawn in ink on white: {ink}");
    }
    let look = browser.execute("return document.documentElement.dataset.theme", Vec::new());
    assert_eq!(look, json!("blueprint"), "the look that was chosen is worn again");
}

#[test]
fn the_screen_stays_on_when_asked_to_and_again_after_the_page_was_out_of_sight() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &site.url());
    open_files(&browser);
    browser.execute(
        "const lock = navigator.wakeLock, request = lock.request.bind(lock);
        window.asked = [];
        lock.request = (kind) => request(kind).then((held) => (window.asked.push(held), held))",
        Vec::new(),
    );
    browser.tap("#awake");
    let pressed = "document.querySelector('#awake').getAttribute('aria-pressed')";
    browser.eventually(pressed, &json!("true"), "it is kept on");
    browser.execute("document.dispatchEvent(new Event('visibilitychange'))", Vec::new());
    browser.eventually("window.asked.length", &json!(2), "asked for again when the page comes back into sight");
    browser.wait_until("window.asked.at(-1).released === false");
    browser.tap("#awake");
    browser.eventually(pressed, &json!("false"), "and no longer");
    browser.eventually("window.asked.at(-1).released", &json!(true), "the browser has let go of it");
    browser.execute("document.dispatchEvent(new Event('visibilitychange'))", Vec::new());
    assert_eq!(browser.execute("return window.asked.length", Vec::new()), json!(2), "nothing is asked for unasked");
}

#[test]
fn what_the_device_lacks_is_not_offered_and_its_sheet_is_given_the_address() {
    let site = serve_site();
    let browser = Browser::open(Viewport::PHONE);
    let stand_in = "window.shared = [];
        navigator.share = (what) => { window.shared.push(what); return Promise.resolve() };
        Object.defineProperty(navigator, 'wakeLock', { value: undefined })";
    let script = browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": stand_in }));
    open(&browser, &site.url());
    open_files(&browser);
    browser.wait_until("location.hash.length > 1");
    browser.tap("#file-share");
    browser.eventually("window.shared.map((what) => what.url)", &json!([browser.url()]), "the address of the set-up");
    assert!(browser.text("#awake").contains("cannot keep the screen on"), "and no button that would do nothing");

    browser.devtools("Page.removeScriptToEvaluateOnNewDocument", json!({ "identifier": script["identifier"] }));
    let without = "Object.defineProperty(navigator, 'share', { value: undefined })";
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": without }));
    browser.reload();
    open_files(&browser);
    assert_eq!(browser.count("#file-share"), 0, "nothing to share with is offered");
}

#[test]
fn files_keep_the_rules_of_accessibility_in_every_look_and_their_targets_are_large() {
    let site = serve_site();
    for viewport in [Viewport::TABLET, Viewport::PHONE] {
        let browser = Browser::open(viewport);
        open(&browser, &site.url());
        open_files(&browser);
        type_at(&browser, "job.name", "Bush A");
        choose_file(&browser, "#setup-file", &example("fast-sleeve").to_json());
        browser.wait_until("document.querySelector('#recent-0')");
        for look in ["paper", "blueprint", "shop"] {
            browser.click(&format!("#prefer-theme option[value='{look}']"));
            browser.eventually("document.documentElement.dataset.theme", &json!(look), "the look that was chosen");
            assert_keeps_the_rules(&browser, &format!("files in {look} on {viewport:?}"));
        }
        let small = browser.execute(
            "return [...document.querySelectorAll('.files :is(button, select, input, summary)')]
                .filter((target) => target.getBoundingClientRect().height < 43.9).map((target) => target.outerHTML)",
            Vec::new(),
        );
        assert_eq!(small, json!([]), "what a finger takes is 44 pixels high on {viewport:?}");
    }
}

#[test]
fn numbers_bring_the_decimal_keypad_and_still_take_fractions() {
    let site = serve_site();
    let browser = Browser::open(Viewport::PHONE);
    open(&browser, &site.url());
    let keypads = browser.execute(
        "return [...document.querySelectorAll('#inputs input[data-path]')]
            .filter((field) => field.inputMode !== 'decimal').map((field) => field.dataset.path)",
        Vec::new(),
    );
    let without: Vec<&str> = keypads.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    let quantity = |path: &&str| declared(path).and_then(Input::kind).is_some();
    assert_eq!(without.iter().find(|path| quantity(path)), None, "quantities without the keypad");
    assert!(without.contains(&"job.name"), "a name has letters: {without:?}");
    type_at(&browser, "part.length", "1 1/4 in");
    let mut changed = first_example();
    changed.set("part.length", "1 1/4 in");
    assert_shows(&browser, &changed, UnitSystem::Metric, "a fraction of an inch");
    assert_eq!(browser.value(&field("part.length")), "1 1/4 in", "as it was typed");
}
