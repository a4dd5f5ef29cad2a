//! What can be tapped and dragged.

use std::collections::BTreeSet;

use holdround_core::setup::declared;
use roxmltree::Document;

use super::boxes::{hit_box, meet, number, view_box, within};
use super::for_all;
use crate::view::drawing::handle::FINGER;

#[test]
fn dimensions_are_buttons_for_entries_that_exist() {
    for_all(&|stage, views, which| {
        let document = Document::parse(&views[1].1).unwrap();
        let buttons: Vec<_> = document.descendants().filter(|n| n.attribute("role") == Some("button")).collect();
        let mut entries = BTreeSet::new();
        for button in &buttons {
            let entry = button.attribute("data-entry").unwrap();
            assert!(declared(entry).is_some(), "{which}: {entry} is no input");
            assert!(entries.insert(entry), "{which}: {entry} stands twice");
            assert_eq!(button.attribute("tabindex"), Some("0"), "{which}: {entry} is reached by keyboard");
            let spoken = button.attribute("aria-label").unwrap();
            let shown: String =
                button.descendants().filter(|node| node.is_text()).filter_map(|node| node.text()).collect();
            assert!(spoken.ends_with(", change"), "{which}: {entry} says what it does");
            assert!(spoken.contains(shown.trim()), "{which}: {spoken:?} begins with what is read, {shown:?}");
        }
        let ring = ["part.outside_diameter", "part.bore_diameter", "part.length", "grip.length", "jaws.height"];
        let steps = ["grip.length", "jaws.height", "steps.0.length"];
        let stepped = stage.setup.part.stepped;
        let few = stage.setup.part.profile.steps().len() <= 3;
        let wanted = if stepped { &steps[..if few { 3 } else { 2 }] } else { &ring[..] };
        assert!(wanted.iter().all(|entry| entries.contains(entry)), "{which}: {entries:?}");
        let tools = entries.iter().filter(|entry| entry.starts_with("cuts.")).count();
        assert_eq!(tools, stage.setup.cuts.len(), "{which}: one for each tool as well");
        assert!(stepped || buttons.len() == ring.len() + tools, "{which}: nothing else: {entries:?}");
    });
}

#[test]
fn handles_are_sliders_of_sizes_that_exist_and_keep_apart() {
    for_all(&|stage, views, which| {
        let document = Document::parse(&views[1].1).unwrap();
        let handles: Vec<_> = document.descendants().filter(|node| node.has_attribute("data-drag")).collect();
        assert_eq!(handles.len(), if stage.setup.part.stepped { 6 } else { 4 }, "{which}: those of one step");
        let hits: Vec<_> =
            document.descendants().filter(|node| node.attribute("class") == Some("hit")).map(hit_box).collect();
        let mut boxes: Vec<[f64; 4]> = Vec::new();
        for handle in &handles {
            let entry = handle.attribute("data-drag").unwrap();
            let step = format!("steps.{}.", stage.step);
            let used = if stage.setup.part.stepped { entry.starts_with(&step) } else { entry.starts_with("part.") };
            assert!(entry.is_empty() || declared(entry).is_some() && used, "{which}: {entry} is not in use");
            assert!(number(*handle, "data-scale") > 0.0, "{which}: {entry} follows the pointer");
            let [least, now, most] = ["aria-valuemin", "aria-valuenow", "aria-valuemax"].map(|it| number(*handle, it));
            assert!(least <= now && now <= most, "{which}: {entry} is {now}, from {least} to {most}");
            assert_eq!(handle.attribute("role"), Some("slider"), "{which}: {entry} is a slider");
            assert_eq!(handle.attribute("tabindex"), Some("0"), "{which}: {entry} is reached by keyboard");
            let knob = handle.descendants().find(|node| node.attribute("class") == Some("knob")).unwrap();
            let (x, y) =
                (number(knob, "x") + number(knob, "width") / 2.0, number(knob, "y") + number(knob, "height") / 2.0);
            let room = [x - FINGER / 2.0, y - FINGER / 2.0, x + FINGER / 2.0, y + FINGER / 2.0];
            assert!(within(room, view_box(&document)), "{which}: {entry} leaves the sheet: {room:?}");
            let near = boxes.iter().chain(&hits).find(|other| meet(shrunk(**other), room));
            assert!(near.is_none(), "{which}: {entry} at {room:?} lies on {near:?}");
            boxes.push(room);
        }
    });
}

/// Coordinates are written to two decimals: boxes side by side may overlap by that.
fn shrunk([left, top, right, bottom]: [f64; 4]) -> [f64; 4] {
    const ROUNDING: f64 = 0.02;
    [left + ROUNDING, top + ROUNDING, right - ROUNDING, bottom - ROUNDING]
}

#[test]
fn jaws_and_part_in_the_face_open_their_inputs() {
    for_all(&|stage, views, which| {
        let document = Document::parse(&views[0].1).unwrap();
        let buttons: Vec<_> = document.descendants().filter(|node| node.has_attribute("data-entry")).collect();
        let entries: Vec<_> = buttons.iter().filter_map(|node| node.attribute("data-entry")).collect();
        assert_eq!(entries.len(), 2, "{which}: {entries:?}");
        assert_eq!(entries[0], "jaws.kind", "{which}: the jaws");
        assert_eq!(entries[1].starts_with("steps."), stage.setup.part.stepped, "{which}: the part, {}", entries[1]);
        assert!(entries.iter().all(|entry| declared(entry).is_some()), "{which}: {entries:?}");
        let named =
            buttons.iter().all(|button| button.attribute("aria-label").is_some_and(|l| l.ends_with(", change")));
        assert!(named, "{which}: each says what it does");
    });
}

#[test]
fn fingers_hit_one_dimension_at_a_time() {
    // 44 view units: 28 CSS pixels where a view is drawn smallest, above the 24 of WCAG 2.2, success criterion 2.5.8.
    const FINGER: f64 = 44.0;
    for_all(&|_, views, which| {
        let document = Document::parse(&views[1].1).unwrap();
        let hits: Vec<_> =
            document.descendants().filter(|node| node.attribute("class") == Some("hit")).map(hit_box).collect();
        for (at, hit) in hits.iter().enumerate() {
            let (wide, high) = (hit[2] - hit[0], hit[3] - hit[1]);
            assert!(wide > FINGER - 0.1 && high > FINGER - 0.1, "{which}: {wide} by {high} is too small to hit");
            assert!(within(*hit, view_box(&document)), "{which}: {hit:?} leaves the sheet");
            let other = hits[..at].iter().find(|other| meet(**other, *hit));
            assert!(other.is_none(), "{which}: {hit:?} lies on {other:?}");
        }
    });
}
