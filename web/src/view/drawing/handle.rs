//! Handles by which a size of the part is dragged in the section; each size can be typed as well.

use maud::{Markup, html};

use super::path::{FARTHEST, Point, coordinate};

/// Side of the square drawn, and of the area a finger hits.
const SIDE: f64 = 9.0;
const FINGER: f64 = 44.0;

/// Which way a handle is dragged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::view) enum Axis {
    /// Away from the axis, upward.
    Radial,
    /// Along it, to the right.
    Axial,
}

/// One handle.
#[derive(Clone, Debug)]
pub(in crate::view) struct Handle {
    /// The entry it changes.
    pub(in crate::view) entry: String,
    /// Its present value, m.
    pub(in crate::view) value: f64,
    /// How much the value changes for a view unit, m.
    pub(in crate::view) per_unit: f64,
    /// Which way it is dragged.
    pub(in crate::view) axis: Axis,
    /// Where it stands.
    pub(in crate::view) at: Point,
}

/// Draws those of `handles` that a finger tells from the ones before.
pub(in crate::view) fn handles(handles: &[Handle]) -> Markup {
    let mut drawn: Vec<&Handle> = Vec::new();
    for handle in handles.iter().filter(|handle| handle.is_sound()) {
        let clear =
            |other: &&Handle| (other.at.0 - handle.at.0).abs() >= FINGER || (other.at.1 - handle.at.1).abs() >= FINGER;
        if drawn.iter().all(clear) {
            drawn.push(handle);
        }
    }
    html! { @for handle in drawn { (handle.draw()) } }
}

impl Handle {
    fn is_sound(&self) -> bool {
        self.per_unit.is_finite() && self.value.is_finite() && self.at.0.abs() < FARTHEST && self.at.1.abs() < FARTHEST
    }

    fn draw(&self) -> Markup {
        let square = |side: f64| [self.at.0 - side / 2.0, self.at.1 - side / 2.0, side].map(coordinate);
        let ([x, y, side], [hit_x, hit_y, finger]) = (square(SIDE), square(FINGER));
        let (axis, way) = match self.axis {
            Axis::Radial => ("r", "radial"),
            Axis::Axial => ("z", "axial"),
        };
        html! {
            g class={ "handle " (way) } data-drag=(self.entry) data-axis=(axis) data-value=(self.value)
                data-scale=(self.per_unit) {
                rect class="grasp" x=(hit_x) y=(hit_y) width=(finger) height=(finger) {}
                rect class="knob" x=(x) y=(y) width=(side) height=(side) {}
            }
        }
    }
}
