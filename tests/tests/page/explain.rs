//! How a figure was reached: mathematics, and what moves it most.

use holdround_core::InfluenceWork;
use holdround_tests::browser::Viewport;
use serde_json::json;

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{come_to_rest, first_example, found, line, on_both_pages, open};

#[test]
fn formulae_are_mathematics_that_fits_a_phone() {
    on_both_pages(Viewport::PHONE, |browser, url| {
        open(browser, url);
        come_to_rest(browser);
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
        let in_the_verdict = format!("{} math", line("hold.factor"));
        browser.wait_until(&format!("document.querySelector(\"{in_the_verdict}\")"));
        assert!(browser.is_shown(&in_the_verdict), "the verdict's own lines have them too");
    });
}

#[test]
fn what_would_change_a_figure_most_is_told_and_opens_its_field() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        open(browser, url);
        come_to_rest(browser);
        browser.click(&format!("{} summary", line("hold.factor")));
        browser.wait_until("document.querySelector('[id=\"line-hold.factor\"] ul.moves')");
        let mut work = InfluenceWork::new(&first_example());
        let mut findings = found(&first_example());
        while work.step() {}
        work.tell(&mut findings);
        let movers = findings.get("hold.factor").and_then(|hold| hold.moved_by.clone()).expect("what moves the hold");
        let told =
            "[...document.querySelectorAll('[id=\"line-hold.factor\"] ul.moves button')].map((it) => it.dataset.path)";
        let wanted: Vec<&str> = movers.iter().map(|moved| moved.entry.as_str()).collect();
        browser.eventually(told, &json!(wanted), "as the engines find it, most first");
        assert_keeps_the_rules(browser, "what moves a figure");
        browser.click(&format!("{} ul.moves button", line("hold.factor")));
        let field = format!("in-{}", movers[0].entry);
        browser.eventually("document.activeElement.id", &json!(field), "its field is a tap away");
    });
}

#[test]
fn assumptions_come_sorted_by_how_much_they_matter() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        open(browser, url);
        come_to_rest(browser);
        browser.click("#assumed > summary");
        let mut work = InfluenceWork::new(&first_example());
        let mut findings = found(&first_example());
        while work.step() {}
        work.tell(&mut findings);
        let wanted: Vec<&str> = findings.assumed.iter().map(|assumed| assumed.entry.as_str()).collect();
        browser.wait_until("document.querySelector('#assumed .hint').textContent.includes('comes first')");
        let told = "[...document.querySelectorAll('#assumed button')].map((it) => it.dataset.path)";
        browser.eventually(told, &json!(wanted), "as the engines sort them");
        assert_keeps_the_rules(browser, "the assumptions");
        browser.click("#assumed button");
        browser.eventually(
            "document.activeElement.id",
            &json!(format!("in-{}", wanted[0])),
            "the field of an assumption is a tap away",
        );
    });
}
