//! The views as markup, and in words.

use std::collections::BTreeSet;

use roxmltree::{Document, Node};

use super::for_all;

#[test]
fn both_views_are_xml_with_numbers_only_and_no_inline_style() {
    for_all(&|_, views, which| {
        let mut ids = BTreeSet::new();
        for (name, markup) in views {
            let document = Document::parse(markup).unwrap_or_else(|error| panic!("{name}, {which}: {error}"));
            for node in document.descendants().filter(Node::is_element) {
                assert!(node.attribute("style").is_none(), "{name}, {which}: the page's policy refuses inline style");
                if let Some(id) = node.attribute("id") {
                    assert!(ids.insert(id.to_string()), "{name}, {which}: two elements are called {id}");
                }
                for attribute in node.attributes() {
                    let value = attribute.value();
                    let bad = value.contains("NaN") || value.contains("inf") && attribute.name() != "class";
                    assert!(!bad, "{name}, {which}: {}={value}", attribute.name());
                }
                let words = node.text().unwrap_or_default();
                assert!(!words.contains("NaN"), "{name}, {which}: {words}");
            }
        }
    });
}

#[test]
fn both_views_say_in_words_what_they_show() {
    for_all(&|stage, views, which| {
        for (name, markup) in views {
            let document = Document::parse(markup).unwrap();
            let image = document.descendants().find(|node| node.attribute("role") == Some("img")).unwrap();
            for id in image.attribute("aria-labelledby").unwrap().split(' ') {
                let words = document.descendants().find(|node| node.attribute("id") == Some(id)).unwrap();
                assert!(words.text().unwrap().len() > 20, "{name}, {which}: {id} says too little");
            }
            let inside = image.descendants().any(|node| node.attribute("role") == Some("button"));
            assert!(!inside, "{name}, {which}: what is in an image cannot be reached");
            let classes: Vec<_> = document.root_element().attribute("class").unwrap().split(' ').collect();
            assert_eq!(classes.contains(&"clamped"), stage.clamped, "{name}, {which}: the jaws move by this class");
            assert_eq!(classes.contains(&"released"), !stage.clamped, "{name}, {which}: the jaws move by this class");
        }
    });
}
