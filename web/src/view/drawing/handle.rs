//! Handles by which a size of the part is dragged in the section; each size can be typed as well.

use holdround_core::quantity::{Kind, decimal, fixed};
use maud::{Markup, html};

use super::lettering::{Anchor, letters};
use super::path::{FARTHEST, Point, coordinate, open};
use crate::language::{number, say};
use crate::view::Stage;

/// Side of the square drawn.
const SIDE: f64 = 18.0;
/// Apart in one direction or the other: a finger's breadth on the smallest screen with handles. The style sheet gives
/// each the area that a finger hits.
pub(in crate::view) const FINGER: f64 = 84.0;
/// A handle so near its place needs no leader.
const NEAR: f64 = 4.0;

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
    /// The entry it changes; none if it parts the step.
    pub(in crate::view) entry: Option<String>,
    /// What it changes, in words.
    pub(in crate::view) name: String,
    /// Its present value, and the least and the most to which it can be dragged, m.
    pub(in crate::view) value: [f64; 3],
    /// How much the value changes for a view unit, m.
    pub(in crate::view) per_unit: f64,
    /// Which way it is dragged.
    pub(in crate::view) axis: Axis,
    /// Where it stands.
    pub(in crate::view) at: Point,
    /// The place on the part that it moves.
    pub(in crate::view) to: Point,
}

impl Handle {
    /// Draws the handle as a slider in the unit shown; none if it stands nowhere.
    pub(in crate::view) fn draw(&self, stage: &Stage<'_>) -> Markup {
        let unit = stage.units.unit(Kind::Length);
        let shown = |si: f64| decimal(unit.from_si(si), unit.decimals + 1);
        let [value, least, most] = self.value;
        let [value, least, most] = [value, least.min(value), most.max(value)].map(shown);
        let (x, y) = self.at;
        let sound = self.value.iter().chain([&self.per_unit]).all(|number| number.is_finite());
        let far = |point: Point| !(point.0.abs() < FARTHEST && point.1.abs() < FARTHEST);
        if !sound || far(self.at) || far(self.to) {
            return html! {};
        }
        let (axis, way) = match self.axis {
            Axis::Radial => ("r", "radial"),
            Axis::Axial => ("z", "axial"),
        };
        let entry = self.entry.as_deref().unwrap_or_default();
        html! {
            g class={ "handle " (way) } id={ "drag-" (entry) } role="slider" tabindex="0" data-drag=(entry)
                data-axis=(axis) data-scale=(fixed(unit.from_si(self.per_unit), 9)) aria-label=(self.name)
                aria-valuenow=(value) aria-valuemin=(least) aria-valuemax=(most)
                aria-valuetext={ (number(value.as_str())) " " (say(unit.symbol)) }
                aria-orientation=(if self.axis == Axis::Radial { "vertical" } else { "horizontal" }) {
                @if libm::hypot(self.to.0 - x, self.to.1 - y) > NEAR {
                    path class="leader" d=(open(&[self.to, self.at])) {}
                }
                path class="grasp" d={ (open(&[self.at])) "h.01" } {}
                rect class="knob" x=(coordinate(x - SIDE / 2.0)) y=(coordinate(y - SIDE / 2.0)) width=(coordinate(SIDE))
                    height=(coordinate(SIDE)) {}
                @if self.entry.is_none() { (letters((x, y + 32.0), Anchor::Middle, "note", say("Split"))) }
            }
        }
    }
}
