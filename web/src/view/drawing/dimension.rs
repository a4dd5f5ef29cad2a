//! Dimensions after ISO 129-1, each a button that opens the input it shows.

use holdround_core::quantity::{Kind, fixed};
use maud::{Markup, html};

use super::arrow::line_arrow;
use super::lettering::{Anchor, letters, width};
use super::path::{coordinate, open};
use crate::language::{fill_plain, number};
use crate::view::Stage;

/// Side of the smallest area a finger hits, view units.
const FINGER: f64 = 44.0;
/// Length of an arrow head.
const HEAD: f64 = 10.0;
/// Gap between line and lettering.
const GAP: f64 = 5.0;
/// How far an extension line runs past the dimension line.
const PAST: f64 = 5.0;

/// A value that can be tapped: the entry it opens and how it reads.
#[derive(Clone, Debug)]
pub(in crate::view) struct Callout {
    entry: String,
    words: String,
    spoken: String,
}

impl Callout {
    /// The length `si` of the input called `name` at `entry`, after `sign`; in brackets if it was assumed.
    pub(in crate::view) fn length(stage: &Stage<'_>, entry: &str, name: &str, sign: &str, si: f64) -> Self {
        let unit = stage.units.unit(Kind::Length);
        // More figures than the unit's own are of no use on a drawing.
        let figure = format!("{sign}{}", number(fixed(unit.from_si(si), unit.decimals)));
        let assumed = stage.setup.assumed.iter().any(|assumed| assumed.path == entry);
        let words = if assumed { format!("({figure})") } else { figure };
        let said = if assumed { "{}, assumed: {}, change" } else { "{}: {}, change" };
        let spoken = fill_plain(said, &[&words, &name]);
        Self { entry: entry.into(), words, spoken }
    }

    /// The same, reading `words`.
    pub(in crate::view) fn reading(self, words: impl Into<String>) -> Self {
        let words = words.into();
        let spoken = format!("{words}, {}", self.spoken);
        Self { words, spoken, ..self }
    }

    /// What it reads.
    pub(in crate::view) fn words(&self) -> &str {
        &self.words
    }

    /// Its words alone, to be read from the right, in the line of a diameter that is not there.
    pub(in crate::view) fn standing(&self, at: f64) -> Markup {
        let room = width(&self.words);
        let drawn = letters((0.0, at - GAP), Anchor::Middle, "value", &self.words);
        html! { g transform="rotate(-90)" { (self.button(-room / 2.0, room / 2.0, at - 2.0 * GAP, &drawn)) } }
    }

    /// A button of `drawn` that can be hit from `left` to `right` about the line `middle`.
    pub(in crate::view) fn button(&self, left: f64, right: f64, middle: f64, drawn: &Markup) -> Markup {
        let wider = ((FINGER - (right - left)) / 2.0).max(0.0);
        html! {
            g class="dimension" role="button" tabindex="0" data-entry=(self.entry) aria-label=(self.spoken) {
                rect class="hit" x=(coordinate(left - wider)) y=(coordinate(middle - FINGER / 2.0))
                    width=(coordinate(right - left + 2.0 * wider)) height=(coordinate(FINGER)) {}
                (drawn)
            }
        }
    }
}

/// Where a dimension stands: from left to right, or turned a quarter to be read from the right.
#[derive(Clone, Copy, Debug)]
pub(in crate::view) struct Dimension {
    /// Where it begins.
    pub(in crate::view) from: f64,
    /// Where it ends.
    pub(in crate::view) to: f64,
    /// Where its extension lines leave the outline.
    pub(in crate::view) edge: f64,
    /// Where its line stands.
    pub(in crate::view) at: f64,
}

impl Dimension {
    /// Along the axis.
    pub(in crate::view) fn horizontal(self, callout: &Callout) -> Markup {
        self.draw(callout)
    }

    /// Across the axis; `from` and `to` count upward from it.
    pub(in crate::view) fn vertical(self, callout: &Callout) -> Markup {
        html! { g transform="rotate(-90)" { (self.draw(callout)) } }
    }

    fn draw(self, callout: &Callout) -> Markup {
        let Self { from, to, edge, at } = self;
        let room = width(callout.words());
        let inside = to - from >= room + 2.0 * HEAD;
        let past = at + PAST * (at - edge).signum();
        let base = at - GAP;
        let (text, left, right) = if inside {
            let middle = (from + to) / 2.0;
            ((middle, Anchor::Middle), middle - room / 2.0, middle + room / 2.0)
        } else {
            let start = to + HEAD + 2.0 * GAP;
            ((start, Anchor::Start), from, start + room)
        };
        let drawn = html! {
            path class="thin" d=(open(&[(from, edge), (from, past)])) {}
            path class="thin" d=(open(&[(to, edge), (to, past)])) {}
            @if inside {
                (line_arrow((left + room / 2.0, at), (from, at), HEAD, "ink"))
                (line_arrow((left + room / 2.0, at), (to, at), HEAD, "ink"))
            } @else {
                path class="thin" d=(open(&[(from, at), (to, at)])) {}
                (line_arrow((from - 2.0 * HEAD, at), (from, at), HEAD, "ink"))
                (line_arrow((right, at), (to, at), HEAD, "ink"))
            }
            (letters((text.0, base), text.1, "value", callout.words()))
        };
        callout.button(left - GAP, right + GAP, base - GAP, &drawn)
    }
}
