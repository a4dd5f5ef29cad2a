//! The page in its other language: chosen or asked for, complete, and with room for its longer words.

use holdround_core::examples::EXAMPLES;
use holdround_tests::browser::{Browser, Paper, Viewport, serve_site};
use serde_json::{Value, json};

use crate::accessibility::assert_keeps_the_rules;
use crate::paper::pages;
use crate::sheet::{WORKED_OUT, assert_quiet, come_to_rest, field, on_both_pages, open, type_at};
use crate::zoom::{BEYOND, OPEN_ALL};

const SPOKEN: &str = "document.documentElement.lang";

fn choose(browser: &Browser, code: &str) {
    browser.click(&format!("#prefer-language option[value='{code}']"));
    browser.eventually(SPOKEN, &json!(code), "the language that was chosen");
    browser.wait_until(WORKED_OUT);
}

#[test]
fn a_language_is_chosen_at_any_time_and_nothing_typed_is_lost() {
    on_both_pages(Viewport::TABLET, |browser, _| {
        come_to_rest(browser);
        type_at(browser, "part.length", "20.5");
        choose(browser, "de");
        browser.eventually("document.activeElement.id", &json!("prefer-language"), "the keyboard stays where it was");
        assert_eq!(browser.value(&field("part.length")), "20.5", "what was typed stays as it was typed");
        browser.wait_until("document.querySelector('#verdict .value').textContent.includes(',')");
        browser.eventually("document.querySelector('#undo').textContent", &json!("Rückgängig"), "the tools");
        browser.tap("#undo");
        browser.eventually(
            "document.querySelector(\"[id='in-part.length']\").value !== '20.5'",
            &json!(true),
            "what was done before can be taken back",
        );
        come_to_rest(browser);
        browser.reload();
        browser.wait_until(WORKED_OUT);
        browser.eventually(SPOKEN, &json!("de"), "it is kept");
        choose(browser, "en");
        browser.eventually("document.querySelector('#undo').textContent", &json!("Undo"), "and back");
    });
}

#[test]
fn a_frame_speaks_the_language_it_is_asked_for_and_changes_with_its_address() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    open(&browser, &format!("{}#example={}&language=de", site.url(), EXAMPLES[0].id));
    browser.eventually(SPOKEN, &json!("de"), "as asked");
    browser.eventually("document.querySelector('#notes h2')?.textContent", &json!("Hinweise"), "in words");
    browser.execute("location.hash = arguments[0]", vec![json!(format!("#example={}&language=en", EXAMPLES[0].id))]);
    browser.eventually(SPOKEN, &json!("en"), "asked for another");
    browser.eventually("document.querySelector('#notes h2')?.textContent", &json!("Notes"), "in words");
    assert_quiet(&browser, &site.url());
}

/// Every text on the page that has a word of four small letters, opened and as it is called.
const TEXTS: &str = "const texts = new Set();
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) if (!walk.currentNode.parentElement.closest('script, math')) texts.add(walk.currentNode.data);
    const names = ['aria-label', 'title', 'placeholder', 'alt', 'aria-valuetext'];
    for (const one of document.querySelectorAll('*')) names.forEach((name) => texts.add(one.getAttribute(name) ?? ''));
    return [...texts].map((text) => text.trim().replace(/\\s+/g, ' ')).filter((text) => /[a-zäöü]{4}/.test(text))";

/// What was typed in words.
const TYPED: &str = "return [...document.querySelectorAll('input[data-path]')].map((field) => field.value)
    .filter((text) => /[a-z]{3}/.test(text))";

/// All texts of the page in a language, everything opened and other jaws compared.
fn texts(browser: &Browser, code: &str) -> Vec<Value> {
    choose(browser, code);
    come_to_rest(browser);
    browser.wait_until("document.querySelector('#compare')");
    browser.execute(OPEN_ALL, Vec::new());
    browser.execute("document.querySelector('#compare').click()", Vec::new());
    browser.wait_until("/All compared|Alles verglichen/.test(document.querySelector('#compare-state').textContent)");
    browser.execute(OPEN_ALL, Vec::new());
    // What is made in a group is drawn once it is open.
    browser.wait_until("document.querySelector('#made-program')?.childElementCount !== 0");
    let texts = browser.execute(TEXTS, Vec::new());
    texts.as_array().cloned().unwrap_or_default()
}

#[test]
fn no_english_is_left_on_the_german_page() {
    let site = serve_site();
    let browser = Browser::open(Viewport::TABLET);
    // A plain job, one whose jaws are made, and readings of the indicator: together they show every group of inputs.
    for place in ["#example=thin-ring", "#example=pump-wear-ring", "#lesson=indicator"] {
        open(&browser, &format!("{}{place}", site.url()));
        let english = texts(&browser, "en");
        let german = texts(&browser, "de");
        assert!(english.len() > 300 && german.len() > 300, "{place}: {} and {}", english.len(), german.len());
        let typed = browser.execute(TYPED, Vec::new());
        let typed: Vec<&str> = typed.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        // Names of the page, of its languages and what was typed are the same in both.
        let same = |text: &Value| {
            let text = text.as_str().unwrap_or_default();
            text.starts_with("Holdround")
                || ["English", "Deutsch"].contains(&text)
                || typed.iter().any(|typed| text.contains(typed))
        };
        let left: Vec<&Value> = german.iter().filter(|text| english.contains(text) && !same(text)).collect();
        assert!(left.is_empty(), "{place}: the same in both languages: {left:?}");
        choose(&browser, "en");
    }
    assert_quiet(&browser, &site.url());
}

#[test]
fn german_fits_every_screen() {
    on_both_pages(Viewport::PHONE, |browser, _| {
        choose(browser, "de");
        for viewport in [Viewport::PHONE, Viewport::TABLET_UPRIGHT, Viewport::TABLET] {
            browser.resize(viewport);
            come_to_rest(browser);
            browser.execute(OPEN_ALL, Vec::new());
            browser.eventually(BEYOND, &json!([]), &format!("what reaches beyond the window on {viewport:?}"));
            assert_keeps_the_rules(browser, &format!("German on {viewport:?}"));
        }
    });
}

#[test]
fn the_german_sheet_is_one_page_of_a4_with_its_cautions_and_its_program_says_them() {
    let site = serve_site();
    let browser = Browser::open(Viewport::DESK);
    open(&browser, &format!("{}#example=pump-wear-ring", site.url()));
    choose(&browser, "de");
    come_to_rest(&browser);
    browser.execute(OPEN_ALL, Vec::new());
    browser.wait_until("document.querySelector('#program-text')");
    let program = browser.value("#program-text");
    assert!(program.contains("(SCHUTZTUER GESCHLOSSEN") && program.is_ascii(), "its cautions in German: {program}");
    // The paper of shops that speak German.
    assert_eq!(pages(&browser.print(Paper::A4)), 1, "one page in German");
    assert_quiet(&browser, &site.url());
}

/// Makes every word on the page outside drawings longer by two fifths.
const LENGTHEN: &str = "const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const texts = [];
    while (walk.nextNode()) if (!walk.currentNode.parentElement.closest('script, svg, math, pre')) texts.push(walk.currentNode);
    for (const text of texts)
        text.data = text.data.replace(/\\p{L}{3,}/gu, (word) => word + word.slice(0, Math.ceil(word.length * 0.4)));";

#[test]
fn words_longer_by_two_fifths_still_fit() {
    let site = serve_site();
    let browser = Browser::open(Viewport::PHONE);
    open(&browser, &site.url());
    come_to_rest(&browser);
    browser.execute(OPEN_ALL, Vec::new());
    browser.execute(LENGTHEN, Vec::new());
    for viewport in [Viewport::PHONE, Viewport::TABLET_UPRIGHT, Viewport::TABLET] {
        browser.resize(viewport);
        browser.eventually(BEYOND, &json!([]), &format!("what reaches beyond the window on {viewport:?}"));
    }
}
