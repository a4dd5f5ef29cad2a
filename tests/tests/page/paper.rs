//! The sheet on paper.

use holdround_core::examples::EXAMPLES;
use holdround_tests::browser::{Browser, Paper, Viewport, single_file_url};

use crate::sheet::open;

/// Pages of a PDF file: its page objects (ISO 32000-1, 7.7.3.3), which Chromium leaves uncompressed.
pub(crate) fn pages(pdf: &[u8]) -> usize {
    const PAGE: &[u8] = b"/Type /Page";
    pdf.windows(PAGE.len() + 1).filter(|words| words.starts_with(PAGE) && !words.ends_with(b"s")).count()
}

/// The words on a page of paper, without the space between them, which a PDF file does not keep.
pub(crate) fn words(pdf: &[u8]) -> String {
    let file = lopdf::Document::load_mem(pdf).expect("a PDF file");
    let text = file.extract_text(&[1]).expect("a page with text");
    let ligatures = [("ﬀ", "ff"), ("ﬁ", "fi"), ("ﬂ", "fl"), ("ﬃ", "ffi")];
    let text = ligatures.iter().fold(text, |text, (joined, letters)| text.replace(joined, letters));
    text.chars().filter(|letter| !letter.is_whitespace()).collect()
}

#[test]
fn every_worked_example_prints_on_one_page() {
    for viewport in [Viewport::TABLET, Viewport::PHONE, Viewport::DESK] {
        let browser = Browser::open(viewport);
        for example in EXAMPLES {
            open(&browser, &format!("{}#example={}", single_file_url(), example.id));
            browser.wait_until(&format!("location.hash !== '#example={}'", example.id));
            for paper in [Paper::A4, Paper::LETTER] {
                let pdf = browser.print(paper);
                assert!(pdf.starts_with(b"%PDF-"), "printing must give a PDF file");
                assert_eq!(pages(&pdf), 1, "pages of {} on {paper:?}, from {viewport:?}", example.id);
            }
        }
    }
}
