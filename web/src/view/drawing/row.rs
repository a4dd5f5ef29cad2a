//! Dimensions of many steps side by side in one row; what finds no room is left out.

use maud::{Markup, html};

use super::arrow::line_arrow;
use super::dimension::Callout;
use super::lettering::{Anchor, LETTER_HEIGHT, figures_width, letters};
use super::path::{Point, open};
use super::sheet::{LEFT, RIGHT};

/// Least room of a label: what a finger hits.
const FINGER: f64 = 44.0;
/// What is left free between two labels, and at the sheet's edges.
const GAP: f64 = 3.0;
/// Half the size of the stroke that ends a dimension line (ISO 129-1, oblique stroke).
const STROKE: f64 = 4.0;

/// What a label of a row tells.
#[derive(Clone, Copy, Debug)]
pub(in crate::view) enum Tells {
    /// A distance along the axis.
    Span(f64, f64),
    /// A place on the outline.
    At(Point),
}

/// One label of a row.
#[derive(Clone, Debug)]
pub(in crate::view) struct Label {
    /// The value that can be tapped.
    callout: Callout,
    tells: Tells,
    /// How much it matters; the least goes first where there is too little room.
    matters: f64,
}

impl Label {
    /// A distance along the axis from `from` to `to`.
    pub(in crate::view) fn span(callout: Callout, from: f64, to: f64) -> Self {
        Self { callout, tells: Tells::Span(from, to), matters: to - from }
    }

    /// A size at `point` of the outline, of a step `long` on the sheet.
    pub(in crate::view) fn at(callout: Callout, point: Point, long: f64) -> Self {
        Self { callout, tells: Tells::At(point), matters: long }
    }

    /// The same, reading `words`.
    pub(in crate::view) fn reading(self, words: &str) -> Self {
        Self { callout: self.callout.reading(words), ..self }
    }

    fn wanted(&self) -> f64 {
        match self.tells {
            Tells::Span(from, to) => f64::midpoint(from, to),
            Tells::At(point) => point.0,
        }
    }

    fn room(&self) -> f64 {
        (figures_width(self.callout.words()) + 2.0 * GAP).max(FINGER)
    }
}

/// Labels side by side about one line.
#[derive(Clone, Debug)]
pub(in crate::view) struct Row {
    /// Middle of what a finger hits.
    pub(in crate::view) middle: f64,
    /// Where extension lines leave the outline.
    pub(in crate::view) edge: f64,
}

impl Row {
    /// Draws what fits of `labels`, which are in their order from left to right.
    pub(in crate::view) fn draw(&self, labels: Vec<Label>) -> Markup {
        let (labels, centres) = fitted(labels);
        html! { @for (label, centre) in labels.iter().zip(centres) { (self.one(label, centre)) } }
    }

    fn one(&self, label: &Label, centre: f64) -> Markup {
        let base = self.middle + 0.35 * LETTER_HEIGHT;
        let half = figures_width(label.callout.words()) / 2.0;
        let drawn = html! {
            @match label.tells {
                Tells::Span(from, to) => {
                    @let line = base + 6.0;
                    @for x in [from, to] {
                        path class="thin" d=(open(&[(x, self.edge), (x, line + STROKE)])) {}
                        path class="thin" d=(open(&[(x - STROKE, line + STROKE), (x + STROKE, line - STROKE)])) {}
                    }
                    path class="thin" d=(open(&[(from.min(centre - half), line), (to.max(centre + half), line)])) {}
                }
                Tells::At(point) => {
                    (line_arrow((centre, self.middle - 0.45 * LETTER_HEIGHT), point, 9.0, "ink"))
                }
            }
            (letters((centre, base), Anchor::Middle, "value", label.callout.words()))
        };
        label.callout.button(centre - half, centre + half, self.middle, &drawn)
    }
}

/// The labels that find room, and the middle of each: as near as can be to where it belongs.
fn fitted(mut labels: Vec<Label>) -> (Vec<Label>, Vec<f64>) {
    let (left, right) = (LEFT + GAP, RIGHT - GAP);
    while labels.iter().map(Label::room).sum::<f64>() > right - left {
        let least = labels.iter().enumerate().min_by(|a, b| a.1.matters.total_cmp(&b.1.matters)).map(|(at, _)| at);
        match least {
            Some(at) => labels.remove(at),
            None => break,
        };
    }
    let rooms: Vec<f64> = labels.iter().map(Label::room).collect();
    let mut centres: Vec<f64> = Vec::new();
    let mut free = left;
    for (label, room) in labels.iter().zip(&rooms) {
        let centre = label.wanted().max(free + room / 2.0);
        free = centre + room / 2.0;
        centres.push(centre);
    }
    let mut free = right;
    for (centre, room) in centres.iter_mut().zip(&rooms).rev() {
        *centre = centre.min(free - room / 2.0);
        free = *centre - room / 2.0;
    }
    (labels, centres)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Units;
    use crate::view::Stage;
    use holdround_core::findings::Findings;
    use holdround_core::quantity::UnitSystem;
    use holdround_core::setup::{Entries, Setup};

    #[test]
    fn labels_keep_apart_on_the_sheet_and_the_shortest_go_first() {
        let setup = Setup::read(&Entries::default()).unwrap();
        let findings = Findings {
            job: String::new(),
            findings: vec![],
            cautions: vec![],
            assumed: vec![],
            scene: Default::default(),
        };
        let units = Units::of(UnitSystem::Metric);
        let stage = Stage::of(&setup, &findings, units);
        let label = |at: usize| {
            let callout = Callout::length(&stage, &format!("steps.{at}.length"), "Length", "", 0.0123);
            Label::span(callout, at as f64, at as f64 + 1.0 + (at % 7) as f64)
        };
        let (kept, centres) = fitted((0..40).map(label).collect());
        assert!(kept.len() >= 7, "a row holds a few labels: {}", kept.len());
        assert!(kept.iter().all(|label| label.matters >= 6.0), "the longest are kept");
        for (pair, labels) in centres.windows(2).zip(kept.windows(2)) {
            let apart = (labels[0].room() + labels[1].room()) / 2.0;
            assert!(pair[1] - pair[0] >= apart - 1e-9, "{pair:?} lie on each other");
        }
        assert!(centres.iter().all(|x| (LEFT..=RIGHT).contains(x)), "{centres:?}");
    }
}
