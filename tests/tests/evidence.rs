//! The page of evidence leaves nothing out and is worked out, not written.

#![allow(clippy::unwrap_used, reason = "a page that cannot be made must fail")]

use holdround_tests::evidence;
use holdround_tests::reference::topics;
use maud::html;

#[test]
fn every_check_stands_on_the_page_with_its_source_and_the_figure_that_came_out() {
    let page = evidence::page().unwrap();
    let escaped = |text: &str| html! { (text) }.into_string();
    for check in topics().unwrap().values().flat_map(|topic| &topic.checks) {
        assert!(page.contains(&escaped(&check.claim)), "no row claims: {}", check.claim);
        assert!(page.contains(&escaped(&check.source)), "no row names: {}", check.source);
        assert!(page.contains(&escaped(&check.tolerance.because)), "no row says why: {}", check.tolerance.because);
    }
    for (file, topic) in topics().unwrap() {
        let anchor = file.trim_end_matches(".json");
        let (led_to, is_there) = (format!("href=\"#{anchor}\""), format!("id=\"{anchor}\""));
        assert!(page.contains(&led_to) && page.contains(&is_there), "{} is not among the first lines", topic.topic);
        assert!(page.contains(&escaped(&format!("Units: {}.", topic.units))), "no units of {}", topic.topic);
    }
    let rows = page.matches("<tr>").count();
    let figures: usize =
        topics().unwrap().values().flat_map(|topic| &topic.checks).map(|check| check.expect.len()).sum();
    assert!(rows > figures, "{rows} rows for {figures} figures");
    assert!(!page.contains("NaN") && !page.contains("inf<"), "what is not a number has no place on it");
}
