//! Links and files made to do harm: what is in them is text, on screen and on paper.

use holdround_core::setup::{Entries, Form, INPUTS};
use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::json;

use crate::records::{KEPT, open_records, take_over};
use crate::sheet::{assert_no_nonsense, assert_quiet, choose_file, on_both_pages, open};

const SCRIPTS: [&str; 4] = [
    "<img src=x onerror=\"window.harmed=1\">",
    "\"><script>window.harmed=1</script><svg onload=window.harmed=1>",
    "'-window.harmed=1-'",
    "</textarea></title></style><iframe srcdoc='<script>parent.harmed=1</script>'>",
];

/// Nothing of what came may have become an element or have run.
fn assert_unharmed(browser: &Browser, claim: &str) {
    let harm = browser.execute(
        "return [window.harmed ?? null, ({}).harmed ?? null,
            [...document.querySelectorAll('main *')].filter((one) =>
                ['SCRIPT', 'IFRAME', 'OBJECT', 'EMBED'].includes(one.tagName) ||
                [...one.attributes].some((is) => /^on|^srcdoc$/i.test(is.name) || /^\\s*javascript:/i.test(is.value))
            ).map((one) => one.outerHTML)]",
        Vec::new(),
    );
    assert_eq!(harm, json!([null, null, []]), "{claim}");
}

#[test]
fn script_in_any_field_of_a_link_stays_text() {
    on_both_pages(Viewport::DESK, |browser, url| {
        for script in SCRIPTS {
            let mut texts = Entries::default();
            let mut everywhere = Entries::default();
            for input in INPUTS.iter().flat_map(|group| group.inputs.iter()) {
                if matches!(input.form, Form::Text(_)) {
                    texts.set(&input.at(0), script);
                }
                everywhere.set(&input.at(0), script);
            }
            for entries in [texts, everywhere] {
                browser.goto("about:blank");
                browser.goto(&format!("{url}#{}", entries.to_link()));
                browser.wait_until("document.querySelector(\"[id='in-job.name']\")");
                browser
                    .execute("document.querySelectorAll('details').forEach((one) => { one.open = true })", Vec::new());
                let name = browser.value("[id='in-job.name']");
                assert_eq!(Some(name.as_str()), entries.get("job.name"), "it stands in its field as it came");
                assert_unharmed(browser, script);
                assert_no_nonsense(browser, script);
            }
        }
    });
}

#[test]
fn a_link_of_huge_numbers_or_to_the_prototype_does_no_harm() {
    on_both_pages(Viewport::DESK, |browser, url| {
        for number in ["1e308", "-1e308", "9".repeat(5_000).as_str(), "1e-308", "0x7fffffff", "1e999999999"] {
            let mut entries = Entries::default();
            for input in INPUTS.iter().flat_map(|group| group.inputs.iter()) {
                if matches!(input.form, Form::Quantity { .. }) && entries.to_link().len() < 20_000 {
                    entries.set(&input.at(0), number);
                }
            }
            browser.goto("about:blank");
            browser.goto(&format!("{url}#{}", entries.to_link()));
            browser.wait_until("document.querySelector('#notices') && document.querySelector(\"[id='in-job.name']\")");
            assert_no_nonsense(browser, "huge numbers");
        }
        for link in
            ["__proto__", "example=__proto__", "example=constructor", "2-00000000$__proto__", "constructor.prototype"]
        {
            browser.goto("about:blank");
            open(browser, &format!("{url}#{link}"));
            assert!(browser.is_shown("#notices .notice"), "{link} is told");
            assert_unharmed(browser, link);
        }
    });
}

#[test]
fn a_set_up_file_made_to_do_harm_is_text_or_refused() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    let mut texts = Entries::default();
    for input in INPUTS.iter().flat_map(|group| group.inputs.iter()).filter(|input| matches!(input.form, Form::Text(_)))
    {
        texts.set(&input.at(0), SCRIPTS[0]);
    }
    choose_file(&browser, "#setup-file", &texts.to_json());
    browser.eventually("document.getElementById('in-job.name').value", &json!(SCRIPTS[0]), "a text is taken as text");
    browser.execute("document.querySelectorAll('details').forEach((one) => { one.open = true })", Vec::new());
    assert_unharmed(&browser, "script in every text of a file");
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    for file in [
        r#"{"schema": 1, "__proto__": {"harmed": 1}, "constructor": {"prototype": {"harmed": 1}}}"#.to_owned(),
        r#"{"schema": 1e300, "part": {"length": "3 mm"}}"#.to_owned(),
        format!(r#"{{"schema": 1, "part": {{"{}": "3 mm"}}}}"#, SCRIPTS[0].replace('"', "\\\"")),
        format!(r#"{{"schema": 1, "part": {deep}}}"#),
        deep,
    ] {
        let before = browser.count("#notices .notice");
        choose_file(&browser, "#setup-file", &file);
        browser.wait_until(&format!("document.querySelectorAll('#notices .notice').length > {before}"));
        assert_unharmed(&browser, &file[..file.len().min(80)]);
        assert_eq!(browser.value("[id='in-job.name']"), SCRIPTS[0], "what is refused changes nothing");
    }
    assert_quiet(&browser, &site.url());
}

#[test]
fn a_file_of_records_made_to_do_harm_is_text_or_refused() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &site.url());
    open_records(&browser);
    let script = SCRIPTS[0];
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    let files = [
        r#"{"jaw_records": 2, "records": [{"id": "__proto__", "name": "proto", "__proto__": {"harmed": 1}}], "__proto__": {"harmed": 1}}"#.to_owned(),
        json!({ "jaw_records": 2, "records": [{ "id": script, "name": script, "material": script, "numbers": script, "tooth": script,
            "link": script, "borings": [{ "id": script, "date": script, "diameter": script }],
            "photos": [{ "id": "p", "caption": script, "image": "" }] }] })
        .to_string(),
        json!({ "jaw_records": 2, "records": [{ "id": "q", "name": "q", "photos": [{ "id": "p", "image": "data:text/html,<script>parent.harmed=1</script>" }] }] }).to_string(),
        json!({ "jaw_records": 1e300, "records": [] }).to_string(),
        r#"{"jaw_records": 2, "records": [{"id": "n", "name": 1e400, "recuts": -1e308}]}"#.to_owned(),
        format!(r#"{{"jaw_records": 2, "records": {deep}}}"#),
        format!(r#"{{"jaw_records": 2, "records": [{{"id": "d", "name": "deep", "more": {deep}}}]}}"#),
        deep,
    ];
    for (at, file) in files.iter().enumerate() {
        let before = browser.count("#notices .notice");
        take_over(&browser, file);
        browser.wait_until(&format!("document.querySelectorAll('#notices .notice').length > {before}"));
        browser.execute("document.querySelectorAll('details').forEach((one) => { one.open = true })", Vec::new());
        assert_unharmed(&browser, &format!("file {at}"));
        browser.eventually(KEPT, &json!("kept"), "what was taken over is kept");
    }
    browser.reload();
    open_records(&browser);
    browser.execute("document.querySelectorAll('details').forEach((one) => { one.open = true })", Vec::new());
    assert_unharmed(&browser, "read back from the store");
    assert_quiet(&browser, &site.url());
}

#[test]
fn no_script_can_turn_text_into_elements_past_the_pages_own_policy() {
    on_both_pages(Viewport::DESK, |browser, _| {
        let tried = browser.execute(
            "const outcome = (act) => { try { act(); return 'done' } catch (refused) { return refused.name } };
            return [
                outcome(() => { document.createElement('p').innerHTML = '<b>x</b>' }),
                outcome(() => document.createElement('script').setAttribute('src', 'x.js')),
                outcome(() => trustedTypes.createPolicy('another', { createHTML: (text) => text })),
                outcome(() => trustedTypes.createPolicy('holdround-markup', { createHTML: (text) => text })),
            ]",
            Vec::new(),
        );
        assert_eq!(tried, json!(vec!["TypeError"; 4]), "every way in is shut");
        // The browser logs each refusal; they were asked for.
        let logged = browser.console_errors();
        assert!(!logged.is_empty(), "the browser reports what was tried");
    });
}
