//! Lettering on the views, and the room it takes.

use maud::{Markup, html};

use super::path::{Point, coordinate};

/// Letter size in view units: a view is 500 units wide and drawn at least 318 pixels wide on a tablet on its side,
/// which makes 14 pixels. The style sheet repeats it.
pub(in crate::view) const LETTER_HEIGHT: f64 = 22.0;
/// Mean advance of sans-serif letters over their size, measured in a browser on our own captions and
/// rounded up.
const ADVANCE: f64 = 0.55;

/// Which end of the lettering stands at the point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::view) enum Anchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// Width of `words` in view units.
pub(in crate::view) fn width(words: &str) -> f64 {
    words.chars().count() as f64 * ADVANCE * LETTER_HEIGHT
}

/// Width of a figure in view units: figures are wider than letters are on average, 0.64 of their size in the widest
/// font in use.
pub(in crate::view) fn figures_width(figure: &str) -> f64 {
    const ADVANCE: f64 = 0.66;
    figure.chars().count() as f64 * ADVANCE * LETTER_HEIGHT
}

/// `words` on a base line through `at`.
pub(in crate::view) fn letters(at: Point, anchor: Anchor, class: &str, words: &str) -> Markup {
    let anchor = match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    };
    html! { text class={ "letters " (class) } x=(coordinate(at.0)) y=(coordinate(at.1)) text-anchor=(anchor) { (words) } }
}
