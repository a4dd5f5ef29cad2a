//! The sheet: the regions that the other views fill.

use maud::{Markup, html};

use super::files::TOLD;
use super::story::panel as story;
use super::{inputs, words};
use crate::language::say;

/// Where the verdict is spoken; it is there before the first result.
pub(crate) const SPOKEN: &str = "spoken";

/// The part of the sheet that the window of pressure and speed stands in.
pub(crate) const WINDOW: &str = "window-place";

/// What stands where pressure and speed are chosen.
const WHERE_IT_IS_CHOSEN: &str =
    "Chuck plate and manual rule. Check grip with a gauge. Guard closed; stand clear of the plane of the jaws.";

/// The empty sheet; where there is room the trace stands open beside the views. Whatever has fields is a form of its own,
/// though nothing is ever sent: browsers look through the whole form of a field that was changed, find the place of each
/// of its fields, and take all fields without a form for one.
pub(crate) fn show(room_for_trace: bool) -> Markup {
    html! {
        p.heard id=(SPOKEN) role="status" aria-live="polite" {}
        div.sheet {
            header.head {
                a.skip href="#title-block" data-act="skip" { (say("Skip to the verdict")) }
                h1 { "Holdround" }
                div id="framed" {}
                p.lead { (say("Will the jaws hold it, and will it stay round?")) }
                form.tools id="tools" {}
                div id="notices" aria-live="polite" {}
            }
            section.lesson id="lesson" aria-label=(say("Lesson")) tabindex="-1" {}
            section.inputs aria-label=(say("Set-up")) {
                form id="own" {}
                div id="inputs" aria-busy="true" { (inputs::places()) }
            }
            div.bench {
                section.drawing aria-label=(say("Drawing and play bar")) {
                    div.views id="views" {
                        figure.projection { div.paper id="face" {} }
                        figure.projection { div.paper id="section" {} }
                    }
                    div.buttons.under-section id="under-section" {}
                    details.trace id="trace-box" open[room_for_trace] {
                        summary { h2 { (say("Roundness trace")) } }
                        div.polar-sheet id="trace" {}
                    }
                    form.play id="play" {}
                    form.story id=(story::REGION) {}
                    p.standing { (say(WHERE_IT_IS_CHOSEN)) }
                }
                section.title-block id="title-block" aria-label=(say("Verdict")) tabindex="-1" {
                    div id="verdict" {}
                }
            }
            div.after {
                section.window-box id=(WINDOW) aria-label=(say("Window")) {
                    details id="window-box" open {
                        summary { h2 { (say("Window")) } }
                        div id="window" {}
                    }
                }
                section.notes id="notes" aria-label=(say("Notes")) {}
                section.work id="work" aria-label=(say("Order of work")) {}
                section.comparison aria-label=(say("Other jaws")) {
                    details id="comparison-box" {
                        summary { h2 { (say("Other jaws")) } }
                        div id="comparison" {}
                    }
                }
                section.records aria-label=(say("Jaw records")) {
                    details id="records-box" {
                        summary { h2 { (say("Jaw records")) } }
                        p.hint { (say("What you keep of a set of jaws, to use them again next year.")) }
                        // By itself, so that a button below is not drawn anew under a finger when something was kept.
                        div id="records-told" {}
                        form id="records" {}
                    }
                }
                section.files aria-label=(say("Files and frames")) {
                    details id="files-box" {
                        summary { h2 { (say("Files and frames")) } }
                        form id="files" {}
                        p.hint id=(TOLD) {}
                    }
                }
                section.findings aria-label=(say("All findings")) {
                    div id="findings" {}
                    div id="findings-of-making" {}
                }
                section.lessons id="lessons" aria-label=(say("Lessons")) tabindex="-1" {}
                section.examples id="examples" aria-label=(say("Worked examples")) {}
                section.glossary aria-label=(say("Words of the trade")) { (words::all()) }
                footer.foot {
                    p { (say("Follow local rules; have a qualified person approve.")) }
                    p { "Holdround " (env!("CARGO_PKG_VERSION")) }
                }
            }
        }
    }
}
