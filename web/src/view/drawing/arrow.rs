//! Arrows: thin ones for dimensions and pressure, broad ones for forces.

use maud::{Markup, html};

use super::path::{Point, closed, open};

/// A thin line from `tail` to `tip` with a filled head no longer than `head`.
pub(in crate::view) fn line_arrow(tail: Point, tip: Point, head: f64, class: &str) -> Markup {
    let Some((along, length)) = direction(tail, tip) else { return html! {} };
    let head = head.min(length);
    let foot = (tip.0 - along.0 * head, tip.1 - along.1 * head);
    let half = head * 0.3;
    let points =
        [tip, (foot.0 - along.1 * half, foot.1 + along.0 * half), (foot.0 + along.1 * half, foot.1 - along.0 * half)];
    html! {
        g class={ "arrow " (class) } {
            path class="shaft" d=(open(&[tail, foot])) {}
            path class="head" d=(closed(&points)) {}
        }
    }
}

/// A broad arrow from `tail` to `tip`, drawn as one outline.
pub(in crate::view) fn block_arrow(tail: Point, tip: Point, class: &str) -> Markup {
    let Some(points) = block(tail, tip) else { return html! {} };
    html! { path class={ "force " (class) } d=(closed(&points)) {} }
}

/// The outline of a broad arrow; none if its ends are too close to tell a direction.
pub(in crate::view) fn block(tail: Point, tip: Point) -> Option<[Point; 7]> {
    const HEAD: f64 = 12.0;
    const HALF_HEAD: f64 = 6.0;
    const HALF_SHAFT: f64 = 2.5;
    let (along, length) = direction(tail, tip)?;
    let head = HEAD.min(length);
    let at = |forward: f64, aside: f64| {
        (tail.0 + along.0 * forward - along.1 * aside, tail.1 + along.1 * forward + along.0 * aside)
    };
    let foot = length - head;
    Some([
        at(0.0, HALF_SHAFT),
        at(foot, HALF_SHAFT),
        at(foot, HALF_HEAD),
        tip,
        at(foot, -HALF_HEAD),
        at(foot, -HALF_SHAFT),
        at(0.0, -HALF_SHAFT),
    ])
}

/// Unit vector and distance from one point to another; none if they are too close to tell a direction.
fn direction(from: Point, to: Point) -> Option<(Point, f64)> {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let length = (dx * dx + dy * dy).sqrt();
    (length.is_finite() && length > 0.1).then(|| ((dx / length, dy / length), length))
}
