//! Where things stand on a view that was read back.

use roxmltree::{Document, Node};

use crate::view::drawing::lettering::{LETTER_HEIGHT, width};

pub(super) fn number(node: Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).and_then(|text| text.parse().ok()).unwrap_or(0.0)
}

pub(super) fn view_box(document: &Document<'_>) -> [f64; 4] {
    let numbers: Vec<f64> =
        document.root_element().attribute("viewBox").unwrap().split(' ').map(|n| n.parse().unwrap()).collect();
    [numbers[0], numbers[1], numbers[0] + numbers[2], numbers[1] + numbers[3]]
}

fn turned_to_the_right(node: Node<'_, '_>) -> bool {
    node.ancestors().any(|above| above.attribute("transform") == Some("rotate(-90)"))
}

/// A box as left, top, right, bottom; where it stands on the sheet if it was turned a quarter.
fn placed(node: Node<'_, '_>, [left, top, right, bottom]: [f64; 4]) -> [f64; 4] {
    if turned_to_the_right(node) { [top, -right, bottom, -left] } else { [left, top, right, bottom] }
}

pub(super) fn lettering_box(node: Node<'_, '_>) -> [f64; 4] {
    let room = width(node.text().unwrap_or_default());
    let (x, y) = (number(node, "x"), number(node, "y"));
    let left = match node.attribute("text-anchor") {
        Some("end") => x - room,
        Some("middle") => x - room / 2.0,
        _ => x,
    };
    placed(node, [left, y - 0.75 * LETTER_HEIGHT, left + room, y + 0.22 * LETTER_HEIGHT])
}

pub(super) fn hit_box(node: Node<'_, '_>) -> [f64; 4] {
    let (x, y) = (number(node, "x"), number(node, "y"));
    placed(node, [x, y, x + number(node, "width"), y + number(node, "height")])
}

pub(super) fn meet(one: [f64; 4], other: [f64; 4]) -> bool {
    one[0] < other[2] && other[0] < one[2] && one[1] < other[3] && other[1] < one[3]
}

pub(super) fn within(inner: [f64; 4], outer: [f64; 4]) -> bool {
    inner[0] >= outer[0] && inner[1] >= outer[1] && inner[2] <= outer[2] && inner[3] <= outer[3]
}
