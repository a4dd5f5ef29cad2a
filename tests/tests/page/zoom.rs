//! The page at 400 %: a window of 1280 by 1024 leaves 320 by 256 CSS pixels (WCAG 2.2, 1.4.10 Reflow).

use holdround_tests::browser::{Browser, Viewport, serve_site};
use serde_json::json;

use crate::sheet::{come_to_rest, field, on_both_pages, open};

const AT_400_PER_CENT: Viewport = Viewport { width: 320, height: 256, touch: false };

/// What reaches beyond the window sideways, unless it scrolls by itself in a box of its own.
pub(crate) const BEYOND: &str = "[...document.querySelectorAll('body *')].filter((one) => {
        if (!one.checkVisibility() || one.closest('.heard, .skip')) return false;
        for (let box = one.parentElement; box; box = box.parentElement)
            if (['auto', 'scroll', 'hidden', 'clip'].includes(getComputedStyle(box).overflowX) && box !== document.body && box !== document.documentElement)
                return false;
        const { left, right } = one.getBoundingClientRect();
        return right - left > 0 && (right > innerWidth + 1 || left < -1);
    }).map((one) => `${one.tagName} ${one.id} ${one.className.baseVal ?? one.className}`).slice(0, 12)";

pub(crate) const OPEN_ALL: &str = "document.querySelectorAll('details').forEach((one) => { one.open = true })";

#[test]
fn at_400_per_cent_nothing_needs_scrolling_sideways() {
    on_both_pages(AT_400_PER_CENT, |browser, _| {
        come_to_rest(browser);
        for opened in [false, true] {
            if opened {
                browser.execute(OPEN_ALL, Vec::new());
            }
            browser.eventually(BEYOND, &json!([]), "what reaches beyond the window");
            let wide = browser.execute("return document.documentElement.scrollWidth - innerWidth", Vec::new());
            assert!(wide.as_f64().is_some_and(|wide| wide <= 0.0), "the page is {wide} pixels wider than its window");
        }
    });
}

#[test]
fn at_400_per_cent_the_page_of_evidence_needs_no_scrolling_sideways() {
    let site = serve_site();
    let browser = Browser::open(AT_400_PER_CENT);
    browser.goto(&format!("{}evidence.html", site.url()));
    browser.execute(OPEN_ALL, Vec::new());
    browser.eventually(BEYOND, &json!([]), "what reaches beyond the window");
}

#[test]
fn at_400_per_cent_the_field_that_has_the_keyboard_is_in_sight() {
    let site = serve_site();
    let browser = Browser::open(AT_400_PER_CENT);
    open(&browser, &site.url());
    come_to_rest(&browser);
    for path in ["part.length", "run.speed", "jaws.width"] {
        let shown = format!(
            "(() => {{
                const field = document.querySelector(\"{}\");
                field.focus();
                const box = field.getBoundingClientRect();
                const there = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
                return there === field;
            }})()",
            field(path)
        );
        browser.eventually(&shown, &json!(true), &format!("the field of {path} is neither hidden nor covered"));
    }
}
