//! Lettering keeps apart.

use roxmltree::{Document, Node};

use super::boxes::{lettering_box, meet, view_box, within};
use super::for_all;

/// A handle lies over the drawing, and its word with it; a number of a tool lies over both.
fn on_handle(node: Node<'_, '_>) -> bool {
    node.ancestors().any(|above| above.has_attribute("data-drag"))
}

#[test]
fn lettering_stays_on_the_sheet_and_apart() {
    for_all(&|_, views, which| {
        for (name, markup) in views {
            let document = Document::parse(markup).unwrap();
            let texts: Vec<_> = document
                .descendants()
                .filter(|node| node.has_tag_name(("http://www.w3.org/2000/svg", "text")))
                .map(|node| (node.text().unwrap_or_default(), lettering_box(node), on_handle(node)))
                .collect();
            assert!(texts.len() >= 3, "{name}, {which}: there is lettering");
            for (at, (words, room, over)) in texts.iter().enumerate() {
                assert!(within(*room, view_box(&document)), "{name}, {which}: {words:?} leaves the sheet: {room:?}");
                let other = texts[..at].iter().find(|(_, other, lies_over)| meet(*other, *room) && over == lies_over);
                assert!(other.is_none(), "{name}, {which}: {words:?} lies on {other:?}");
            }
        }
    });
}
