//! How a figure was reached: mathematics, and what moves it most.

use holdround_tests::browser::Viewport;
use serde_json::json;

use crate::sheet::{line, on_both_pages, open};

#[test]
fn formulae_are_mathematics_that_fits_a_phone() {
    on_both_pages(Viewport::PHONE, |browser, url| {
        open(browser, url);
        let of_force = "document.getElementById('all-cuts.0.force')";
        browser.execute(&format!("{of_force}.open = true"), Vec::new());
        browser.eventually(
            &format!("{of_force}.querySelector('math').namespaceURI"),
            &json!("http://www.w3.org/1998/Math/MathML"),
            "a formula is mathematics to the browser",
        );
        let quotient = format!(
            "(([above, below]) => above.bottom <= below.top + 1)([...{of_force}.querySelector('mfrac').children].map((it) => it.getBoundingClientRect()))"
        );
        browser.eventually(&quotient, &json!(true), "what is divided stands above what it is divided by");
        browser
            .execute("document.querySelectorAll('details.line').forEach((line) => { line.open = true })", Vec::new());
        browser.eventually(
            "[...document.querySelectorAll('.formula')]
                .filter((it) => it.scrollWidth > it.clientWidth && it.tabIndex < 0).map((it) => it.textContent)",
            &json!([]),
            "a formula that has to be moved sideways can be moved by the keyboard",
        );
        let wide = browser.execute("return document.documentElement.scrollWidth - innerWidth", Vec::new());
        assert_eq!(wide, json!(0), "no formula widens the page");
        assert!(browser.is_shown(&format!("{} math", line("hold.factor"))), "the verdict's own lines have them too");
    });
}
