//! Metres to view units: what is drawn fills the width of its view, or its height where that is less.

use crate::view::drawing::{Point, coordinate};

/// Width of these views.
pub(super) const WIDTH: f64 = 500.0;
/// Greatest height of what is drawn to scale.
const HEIGHT: f64 = 330.0;
/// What is left free at the edges.
const MARGIN: f64 = 12.0;

/// Where lengths stand on a view; the first to the right, the second up.
#[derive(Clone, Copy, Debug)]
pub(super) struct Frame {
    /// View units per metre.
    pub(super) scale: f64,
    corner: Point,
    /// Upper left corner of what is drawn, view units.
    from: Point,
    /// Height of the view down to the foot of what is drawn.
    pub(super) height: f64,
}

impl Frame {
    /// All between these lengths, with `above` view units left free over it.
    pub(super) fn of(right: [f64; 2], up: [f64; 2], above: f64) -> Self {
        let [wide, high] = [right, up].map(|[from, to]| (to - from).max(1e-6));
        let scale = ((WIDTH - 2.0 * MARGIN) / wide).min(HEIGHT / high);
        let free = (WIDTH - scale * wide) / 2.0;
        Self { scale, corner: (right[0], up[1]), from: (free, above), height: above + scale * high + MARGIN }
    }

    /// A place given in metres.
    pub(super) fn at(&self, right: f64, up: f64) -> Point {
        (self.from.0 + (right - self.corner.0) * self.scale, self.from.1 + (self.corner.1 - up) * self.scale)
    }

    /// The corners of a rectangle.
    pub(super) fn rectangle(&self, right: [f64; 2], up: [f64; 2]) -> [Point; 4] {
        [(right[0], up[0]), (right[1], up[0]), (right[1], up[1]), (right[0], up[1])].map(|(x, y)| self.at(x, y))
    }

    /// The `viewBox`, with `below` more view units.
    pub(super) fn view_box(&self, below: f64) -> String {
        ["0", "0", &coordinate(WIDTH), &coordinate(self.height + below)].join(" ")
    }
}
