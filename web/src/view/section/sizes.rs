//! Sizes on the section: dimensions that can be tapped.

use maud::{Markup, html};

use super::{CLEAR, CLIP, Section};
use crate::language::{fill_plain, say};
use crate::view::drawing::{Along, Callout, Dimension, Label, Row};

/// Line of the jaw height.
pub(in crate::view) const JAW_LINE: f64 = -208.0;
/// From the middle of a row to its dimension line.
pub(in crate::view) const LINE_UNDER: f64 = 10.0;

impl Section<'_> {
    fn length(&self, entry: &str, name: &str, sign: &str, si: f64) -> Callout {
        Callout::length(self.stage, entry, name, sign, si)
    }

    /// Every size that is written on the view.
    pub(in crate::view) fn dimensions(&self) -> Markup {
        let setup = self.stage.setup;
        let Along { chuck, front, .. } = *self.along;
        html! {
            (Dimension { from: chuck, to: front, edge: -(self.both.jaw.outer.min(CLIP) + CLEAR), at: JAW_LINE }
                .horizontal(&self.length("jaws.height", say("Jaw height"), "", setup.jaws.height.value)))
            @if setup.part.stepped { (self.step_dimensions()) } @else { (self.ring_dimensions()) }
        }
    }

    /// The three sizes of a ring, and its grip.
    fn ring_dimensions(&self) -> Markup {
        let setup = self.stage.setup;
        let Along { seat, front, end, .. } = *self.along;
        let bore = self.length("part.bore_diameter", say("Bore diameter"), "Ø", setup.part.smallest_bore());
        let outside = self.length("part.outside_diameter", say("Outside diameter"), "Ø", setup.part.largest_outside());
        let (under, beside) = (self.both.outside + CLEAR, end + CLEAR);
        let (bore_line, outside_line) = self.along.diameter_lines();
        let line = |middle: f64| middle + LINE_UNDER;
        html! {
            (Dimension { from: seat, to: end, edge: under, at: line(self.both.sheet.rows.lengths) }
                .horizontal(&self.length("part.length", say("Length"), "", setup.part.length())))
            (Dimension { from: seat, to: front, edge: under, at: line(self.both.sheet.rows.grip) }
                .horizontal(&self.length("grip.length", say("Grip length"), "", setup.grip.length.value)))
            (Dimension { from: -self.both.outside, to: self.both.outside, edge: beside, at: outside_line }
                .vertical(&outside))
            @if self.bore > 0.0 {
                (Dimension { from: -self.bore, to: self.bore, edge: beside, at: bore_line }.vertical(&bore))
            } @else {
                (bore.reading(say("solid")).standing(bore_line))
            }
        }
    }

    /// Diameters, grip and lengths of a part of steps: what finds room; the list beside the drawing has all.
    fn step_dimensions(&self) -> Markup {
        let setup = self.stage.setup;
        let (start, grip) = (setup.grip.start.value, setup.grip.length.value);
        let place = |z: f64| self.along.place(z);
        let under = self.both.outside + CLEAR;
        let mut lengths = Vec::new();
        let mut diameters = Vec::new();
        let mut from = 0.0;
        let mut bore_before = None;
        for (at, step) in setup.part.profile.steps().iter().enumerate() {
            let to = from + step.length;
            let (left, right, long) = (place(from), place(to), place(to) - place(from));
            let named = |what: &str| fill_plain("{} of step {}", &[&what, &(at + 1)]);
            let entry = |field: &str| format!("steps.{at}.{field}");
            let size = |field: &str, what: &str, si: f64, share: f64| {
                let point = (left + long * share, self.both.sheet.radius(si));
                Label::at(self.length(&entry(field), &named(what), "Ø", si), point, long)
            };
            lengths.push(Label::span(
                self.length(&entry("length"), &named(say("Length")), "", step.length),
                left,
                right,
            ));
            let cone = (step.outer[0] - step.outer[1]).abs() > 0.0;
            // A cone's diameters stand at its ends, a cylinder's in its middle.
            diameters.push(size("outside", say("Outside diameter"), step.outer[0], if cone { 0.0 } else { 0.35 }));
            let tapered = (step.inner[0] - step.inner[1]).abs() > 0.0;
            if bore_before != Some(step.inner[0]) || tapered {
                let share = if tapered { 0.02 } else { 0.65 };
                let bore = size("bore", say("Bore diameter"), step.inner[0], share);
                diameters.push(if step.inner[0] > 0.0 { bore } else { bore.reading(say("solid")) });
            }
            if cone {
                diameters.push(size("outside_end", say("Far outside diameter"), step.outer[1], 1.0));
            }
            if tapered {
                diameters.push(size("bore_end", say("Far bore diameter"), step.inner[1], 1.0));
            }
            bore_before = Some(step.inner[1]);
            from = to;
        }
        let gripped =
            Label::span(self.length("grip.length", say("Grip length"), "", grip), place(start), place(start + grip));
        let begins = Label::span(self.length("grip.start", say("Grip starts at"), "", start), place(0.0), place(start));
        let grips = if start > 0.0 { vec![begins, gripped] } else { vec![gripped] };
        let rows = self.both.sheet.rows;
        html! {
            (Row { middle: rows.lengths, edge: under }.draw(lengths))
            (Row { middle: rows.grip, edge: under }.draw(grips))
            (Row { middle: rows.diameters, edge: under }.draw(diameters))
        }
    }
}
