//! Handles of the chosen step: its diameters, its length, and where it would be parted in two.

use holdround_core::part::{Step, THINNEST_WALL};
use holdround_core::setup::Side;
use maud::{Markup, html};

use super::Section;
use crate::language::{fill_plain, say};
use crate::view::drawing::{Axis, FINGER, Handle, LEFT, Point, RIGHT, closed, open};

/// From the part's end back to the farthest handle, where dimensions stand beside the part.
const OFF_DIMENSIONS: f64 = 13.0;
/// Longest size that is dragged, m: what the inputs take.
const LONGEST: f64 = 2.0;
/// Shortest, m.
const SHORTEST: f64 = 1e-4;

impl Section<'_> {
    /// The steps as areas that a finger chooses, and the handles of the chosen one.
    pub(super) fn handles(&self) -> Markup {
        let part = &self.stage.setup.part;
        let mut from = 0.0;
        let mut chosen = None;
        let mut areas = Vec::new();
        for (at, step) in part.profile.steps().iter().enumerate() {
            if at == self.stage.step {
                chosen = Some((from, step));
            }
            areas.push(self.area(from, step));
            from += step.length;
        }
        html! {
            @if part.stepped {
                g aria-hidden="true" {
                    @for (at, area) in areas.iter().enumerate() { path class="step" data-step=(at) d=(area) {} }
                }
            }
            @if let Some((from, step)) = chosen {
                g role="group" aria-label=(fill_plain("Sizes to drag, step {}", &[&(self.stage.step + 1)])) {
                    @if self.stage.parting.is_some() { (self.parting(from, step)) }
                    @for handle in self.handles_of(from, step) { (handle.draw(self.stage)) }
                }
            }
        }
    }

    fn corner(&self, z: f64, diameter: f64) -> Point {
        (self.along.place(z), -self.both.sheet.radius(diameter))
    }

    /// Both halves of a step.
    fn area(&self, from: f64, step: &Step) -> String {
        let to = from + step.length;
        let corners = [(from, step.outer[0]), (to, step.outer[1]), (to, step.inner[1]), (from, step.inner[0])];
        let upper = corners.map(|(z, diameter)| self.corner(z, diameter));
        closed(&upper) + &closed(&upper.map(|(x, y)| (x, -y)))
    }

    /// Where the chosen step would be parted, m from its near end.
    fn parting_length(&self, step: &Step) -> f64 {
        self.stage.parting.unwrap_or(step.length / 2.0).max(0.0).min(step.length)
    }

    fn parting(&self, from: f64, step: &Step) -> Markup {
        let radius = self.both.sheet.radius(step.outer[0].max(step.outer[1])) + super::CLEAR;
        let x = self.along.place(from + self.parting_length(step));
        html! { path class="parting" d=(open(&[(x, -radius), (x, radius)])) {} }
    }

    fn handles_of(&self, from: f64, step: &Step) -> Vec<Handle> {
        let stepped = self.stage.setup.part.stepped;
        let to = from + step.length;
        let (columns, last) = if stepped { (3.0, RIGHT) } else { (2.0, self.along.end - OFF_DIMENSIONS) };
        // In columns about the step's middle, and in them one under another, so that a finger tells them apart.
        let half = (columns - 1.0) / 2.0 * FINGER;
        let edge = FINGER / 2.0 + 1.0;
        let last = if stepped { last - edge } else { last };
        let middle = self.along.place(f64::midpoint(from, to)).min(last - half).max(LEFT + edge + half);
        let column = |at: f64| middle - half + at * FINGER;
        let rows = |end: usize| {
            let outer = -self.both.sheet.radius(step.outer[end]);
            [outer, (-self.both.sheet.radius(step.inner[end])).max(outer + FINGER)]
        };
        let metre = 1.0 / self.both.sheet.scale;
        let at = self.stage.step;
        let named =
            |what: &str| if stepped { fill_plain("{} of step {}", &[&what, &(at + 1)]) } else { what.to_owned() };
        let mut found = Vec::new();
        let mut diameter = |names: [&str; 2], entries: [String; 2], end: usize, x: f64, z: f64| {
            let [name, bore_name] = names;
            let [entry, bore_entry] = entries;
            let [outer, inner] = [step.outer[end], step.inner[end]];
            let [high, low] = rows(end);
            let size = |entry: String, name: &str, value: [f64; 3], y: f64| Handle {
                entry: Some(entry),
                name: named(name),
                value,
                per_unit: 2.0 * metre,
                axis: Axis::Radial,
                at: (x, y),
                to: self.corner(z, value[0]),
            };
            let least = (inner * (1.0 + 2.0 * THINNEST_WALL)).max(SHORTEST);
            found.push(size(entry, name, [outer, least, LONGEST], high));
            let least = if self.stage.setup.grip.side == Side::Inside { SHORTEST } else { 0.0 };
            found.push(size(bore_entry, bore_name, [inner, least, outer * (1.0 - 2.0 * THINNEST_WALL)], low));
        };
        let entry = |field: &str| format!("steps.{at}.{field}");
        if stepped {
            // A cylinder is dragged anywhere, a cone at its near end; the far corner makes the one the other.
            let cone = (step.outer[0] - step.outer[1]).abs() + (step.inner[0] - step.inner[1]).abs() > 0.0;
            let near = if cone { from } else { from + 0.25 * step.length };
            let names = [say("Outside diameter"), say("Bore diameter")];
            diameter(names, ["outside", "bore"].map(entry), 0, column(0.0), near);
            let names = [say("Far outside diameter"), say("Far bore diameter")];
            diameter(names, ["outside_end", "bore_end"].map(entry), 1, column(1.0), to);
        } else {
            let entries = ["part.outside_diameter", "part.bore_diameter"].map(str::to_owned);
            let names = [say("Outside diameter"), say("Bore diameter")];
            diameter(names, entries, 0, column(0.0), f64::midpoint(from, to));
        }
        let [high, low] = rows(1);
        let wall = |z: f64| {
            let share = ((z - from) / step.length).clamp(0.0, 1.0);
            let middle = |end: usize| f64::midpoint(step.outer[end], step.inner[end]);
            self.corner(z, middle(0) + (middle(1) - middle(0)) * share)
        };
        found.push(Handle {
            entry: Some(if stepped { entry("length") } else { "part.length".into() }),
            name: named(say("Length")),
            value: [step.length, SHORTEST, LONGEST],
            per_unit: metre,
            axis: Axis::Axial,
            at: (column(columns - 1.0), high),
            to: wall(to),
        });
        let parting = self.parting_length(step);
        found.push(Handle {
            entry: None,
            name: if stepped {
                fill_plain("Split step {}: Enter", &[&(at + 1)])
            } else {
                say("Split the part: Enter").into()
            },
            value: [parting, 0.0, step.length],
            per_unit: metre,
            axis: Axis::Axial,
            at: (column(columns - 1.0), low),
            to: wall(from + parting),
        });
        found
    }
}
