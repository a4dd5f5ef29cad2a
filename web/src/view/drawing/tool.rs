//! Where the tools of the cuts stand in the section: a numbered triangle each, and a list of distances.

use holdround_core::setup::{Cut, CutKind, Part};
use maud::{Markup, html};

use super::along::Along;
use super::bore::{is_hollow, narrowest};
use super::dimension::Callout;
use super::lettering::{Anchor, LETTER_HEIGHT, letters, width};
use super::path::{Point, closed};
use super::sheet::{LEFT, ROW, Sheet, TOOLS_A_ROW};
use crate::language::fill_plain;
use crate::view::Stage;

/// Side of the triangle.
const SIZE: f64 = 12.0;
/// Room of one tool in the list.
const COLUMN: f64 = 164.0;

/// One cut's tool in the section.
#[derive(Clone, Debug)]
pub(in crate::view) struct Tool {
    index: usize,
    /// Where its tip touches the part.
    tip: Point,
    /// Which way it points, as a unit step.
    points: Point,
    /// Middle of its number's base line.
    label: Point,
    /// Its distance from the front of the jaws, m.
    distance: f64,
}

impl Tool {
    /// The tools of every cut, their numbers clear of each other.
    pub(in crate::view) fn all(stage: &Stage<'_>, sheet: Sheet, along: &Along) -> Vec<Self> {
        let mut tools: Vec<Self> = Vec::new();
        for (index, cut) in stage.setup.cuts.iter().enumerate() {
            let mut tool = Self::of(index, cut, &stage.setup.part, sheet, along);
            while tools.iter().any(|other| other.label_meets(&tool)) {
                // Numbers of tools at one place stand side by side, those at the front face above each other.
                if tool.points.0 == 0.0 {
                    tool.label.0 -= width("0") + 4.0;
                } else {
                    tool.label.1 -= LETTER_HEIGHT;
                }
            }
            tools.push(tool);
        }
        tools
    }

    fn of(index: usize, cut: &Cut, part: &Part, sheet: Sheet, along: &Along) -> Self {
        let x = along.tool(cut.distance.value);
        let (diameter, points) = direction(cut, part);
        let tip = (x, -sheet.radius(diameter));
        // From the middle of the triangle's base to the middle of the number, then down to its base line.
        let away = SIZE + LETTER_HEIGHT * 0.6;
        let label = (tip.0 - points.0 * away, tip.1 - points.1 * away + LETTER_HEIGHT * 0.35);
        Self { index, tip, points, label, distance: cut.distance.value }
    }

    fn number(&self) -> String {
        (self.index + 1).to_string()
    }

    fn label_meets(&self, other: &Self) -> bool {
        let near = (self.label.0 - other.label.0, self.label.1 - other.label.1);
        near.0.abs() < width("0") + 2.0 && near.1.abs() < LETTER_HEIGHT
    }

    /// The triangle with its number, at the part.
    pub(in crate::view) fn mark(&self) -> Markup {
        html! {
            (triangle(self.tip, self.points))
            (letters(self.label, Anchor::Middle, "value", &self.number()))
        }
    }

    /// Its line in the list: a button that opens the distance.
    pub(in crate::view) fn listed(&self, stage: &Stage<'_>, sheet: Sheet) -> Markup {
        let (row, column) = (self.index / TOOLS_A_ROW, self.index % TOOLS_A_ROW);
        let left = LEFT + 6.0 + COLUMN * column as f64;
        let middle = sheet.rows.tools + ROW * row as f64;
        let name = fill_plain("Tool {} in front of the jaws by", &[&self.number()]);
        let callout = Callout::length(stage, &format!("cuts.{}.distance", self.index), &name, "", self.distance);
        let words = format!("{}: {}", self.number(), callout.words());
        let callout = callout.reading(words.clone());
        let drawn = html! {
            (triangle((left + SIZE / 2.0, middle + SIZE / 2.0), (0.0, 1.0)))
            (letters((left + SIZE + 5.0, middle + LETTER_HEIGHT * 0.35), Anchor::Start, "value", &words))
        };
        callout.button(left, left + SIZE + 5.0 + width(&words), middle, &drawn)
    }
}

fn triangle(tip: Point, points: Point) -> Markup {
    html! { path class="tool" d=(closed(&corners(tip, points, [SIZE / 2.0, SIZE]))) {} }
}

/// The corners of a tool: its tip, which way that points, half as wide as it is at its back, and how long.
pub(in crate::view) fn corners(tip: Point, points: Point, [half, long]: [f64; 2]) -> [Point; 3] {
    let back = (tip.0 - points.0 * long, tip.1 - points.1 * long);
    [tip, (back.0 - points.1 * half, back.1 + points.0 * half), (back.0 + points.1 * half, back.1 - points.0 * half)]
}

/// The diameter a cut's tool touches, and which way its tip points.
pub(in crate::view) fn direction(cut: &Cut, part: &Part) -> (f64, Point) {
    const INWARD: Point = (0.0, 1.0);
    const OUTWARD: Point = (0.0, -1.0);
    const TOWARD_CHUCK: Point = (-1.0, 0.0);
    let hollow = is_hollow(part);
    match &cut.kind {
        CutKind::Turning(turned, _) => (turned.diameter.value, INWARD),
        CutKind::Boring(turned, _) => (turned.diameter.value, OUTWARD),
        CutKind::Facing(turned) => (turned.diameter.value, TOWARD_CHUCK),
        CutKind::Drilling { .. } => (0.0, TOWARD_CHUCK),
        CutKind::Grooving { diameter, .. } | CutKind::Power { diameter, .. } => {
            let middle = (part.largest_outside() + narrowest(part)) / 2.0;
            (diameter.value, if hollow && diameter.value < middle { OUTWARD } else { INWARD })
        }
    }
}
