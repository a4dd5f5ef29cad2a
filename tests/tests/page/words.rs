//! Words of the trade, defined in place.

use holdround_core::glossary::WORDS;
use holdround_tests::browser::Viewport;
use serde_json::json;

use crate::accessibility::assert_keeps_the_rules;
use crate::sheet::{line, on_both_pages, open};

#[test]
fn a_word_of_the_trade_is_defined_where_it_is_read() {
    on_both_pages(Viewport::TABLET, |browser, url| {
        open(browser, url);
        browser.click("[id='about-part.runout_limit'] > summary");
        let defined = browser.text("[id='about-part.runout_limit'] dl");
        let tir = WORDS.iter().find(|word| word.word == "tir").expect("a word of the list");
        assert!(defined.contains(tir.says), "TIR is defined at the field that names it: {defined}");
        browser.click(&format!("{} summary", line("hold.factor")));
        let hold = WORDS.iter().find(|word| word.word == "hold factor").expect("a word of the list");
        let words = format!("{} dl", line("hold.factor"));
        browser.wait_until(&format!("document.querySelector(\"{words}\")"));
        let at_verdict = browser.text(&words);
        assert!(at_verdict.contains(hold.says), "the hold factor is defined at the verdict");
        browser.execute("document.getElementById('words').open = true", Vec::new());
        let count = "document.querySelectorAll('#words dt').length";
        browser.eventually(count, &json!(WORDS.len()), "all of them stand together too");
        assert_keeps_the_rules(browser, "the words of the trade");
    });
}
