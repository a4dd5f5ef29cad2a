//! What is under the finger while the job is told: a line to scrub along, the steps by name, and what each one is.

use maud::{Markup, html};

use super::film::Film;
use crate::language::say;

/// The region, and what in it is brought up to date.
pub(crate) const REGION: &str = "story";
pub(crate) const OPENER: &str = "story-open";
pub(crate) const SLIDER: &str = "story-at";
pub(crate) const STEP: &str = "story-step";
pub(crate) const PLAY: &str = "story-play";
pub(crate) const TITLE: &str = "story-title";
pub(crate) const SAYS: &str = "story-says";
/// Parts of a step on the slider.
pub(crate) const PARTS: f64 = 100.0;

/// The button that opens it.
pub(crate) fn opener() -> Markup {
    html! { button type="button" id=(OPENER) data-act="story-open" { (say("The job, step by step")) } }
}

/// The controls; `still` where nothing may move by itself.
pub(crate) fn show(film: &Film, still: bool) -> Markup {
    let steps = film.told.len();
    html! {
        div.story-row {
            label.heard for=(STEP) { (say("Step of the job")) }
            select id=(STEP) {
                @for (at, told) in film.told.iter().enumerate() { option value=(at) { (at + 1) ": " (told.name) } }
            }
            button type="button" id="story-back" data-act="story-back" { (say("Back")) }
            button type="button" id="story-next" data-act="story-next" { (say("Next")) }
            @if !still { button type="button" id=(PLAY) data-act="story-play" { (say("Play")) } }
            button type="button" id="story-close" data-act="story-close" { (say("Close")) }
        }
        div.story-line {
            svg.ticks viewBox={ "0 0 " (steps) " 1" } preserveAspectRatio="none" aria-hidden="true" {
                @for at in 0..=steps { path d={ "M" (at) " 0V1" } {} }
            }
            input type="range" id=(SLIDER) aria-label=(say("Along the job")) min="0" max=(steps * PARTS as usize)
                step=(if still { PARTS as usize } else { 2 }) value="0";
        }
        p.story-says role="status" aria-live="polite" {
            span.heard id=(TITLE) {}
            span id=(SAYS) {}
        }
    }
}
