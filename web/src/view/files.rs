//! Files, pictures and frames: what is taken along from the page, and what is opened on it.

use holdround_core::lessons::LESSONS;
use maud::{Markup, html};

use super::csv::TABLES;
use crate::language::{fill, say};
use crate::page::address::LESSON;
use crate::page::frame::PARTS;
use crate::page::recent::Recent;

/// Where it is told what became of something asked for here.
pub(crate) const TOLD: &str = "files-told";
/// The markup of a frame.
pub(crate) const FRAME: &str = "frame-markup";
/// Whether what is in the frame can be changed.
pub(crate) const LOCK: &str = "frame-lock";
/// Pictures that can be saved: the region each stands in, and its name.
pub(crate) const PICTURES: [(&str, &str); 4] =
    [("face", "chuck face"), ("section", "section"), ("trace", "roundness trace"), ("window", "window")];

/// Everything but the set-ups that were on the sheet before.
pub(crate) fn show(shares: bool, stays_awake: bool, awake: bool) -> Markup {
    html! {
        p.hint { (say("Drop a set-up file, or a file of jaw records, anywhere on the page to open it.")) }
        div.changes {
            (button("save", "Save the set-up as a file"))
            label for="setup-file" { (say("Open a set-up file")) }
            input type="file" id="setup-file" data-setup="" accept=".json,application/json";
            @if shares { (button("share", "Share the set-up")) }
        }
        div id="recent" {}
        h3 { (say("Results")) }
        div.changes {
            (choice("table", "Table", &TABLES))
            (button("csv", "Save it as CSV"))
            (button("copy-all", "Copy all findings as text"))
        }
        h3 { (say("Pictures")) }
        div.changes {
            (choice("picture", "Picture", &PICTURES))
            (button("svg", "Save it as SVG"))
            (button("png", "Save it as PNG"))
        }
        p.hint { (say("As it stands on the sheet, in black on white.")) }
        h3 { (say("On another page")) }
        div.changes {
            (choosing("frame-part", "Show", html! {
                (options(&PARTS))
                optgroup label=(say("A lesson")) { @for lesson in LESSONS { option value={ (LESSON) (lesson.key) } { (say(lesson.title)) } } }
            }))
            (choice(LOCK, "The set-up is", &[("&locked", "locked: read, not changed"), ("", "free to be tried")]))
            (button("frame", "Copy for a wiki"))
        }
        label for=(FRAME) { (say("To put into the other page")) }
        textarea id=(FRAME) readonly rows="4" {}
        h3 { (say("Screen")) }
        @if stays_awake {
            div.changes { button type="button" id="awake" data-act="file-awake" aria-pressed=(awake) { (say("Keep the screen on")) } }
        } @else {
            p.hint id="awake" { (say("This browser cannot keep the screen on: set a longer screen time on the device.")) }
        }
    }
}

/// The set-ups that were on the sheet before.
pub(crate) fn recent(recent: &[Recent]) -> Markup {
    html! {
        @if !recent.is_empty() {
            h3 { (say("Recent set-ups")) }
            ul.recent {
                @for (at, one) in recent.iter().enumerate() {
                    li { button type="button" id={ "recent-" (at) } data-act="file-recent" data-id=(at) {
                        @let name = if one.name().is_empty() { say("Without a name") } else { one.name() };
                        (fill("{}, left on {}", &[&name, &one.day]))
                    } }
                }
            }
        }
    }
}

/// What a page inside another one says of itself.
pub(crate) fn framed(locked: bool, link: &str) -> Markup {
    html! {
        p {
            @if locked { (say("Locked: shown as it was set.")) " " }
            a href={ "#" (link) } target="_blank" rel="noopener" { (say("Open this set-up on a page of its own")) }
        }
    }
}

fn button(act: &str, words: &str) -> Markup {
    html! { button type="button" id={ "file-" (act) } data-act={ "file-" (act) } { (say(words)) } }
}

fn choice(id: &str, name: &str, choices: &[(&str, &str)]) -> Markup {
    choosing(id, name, options(choices))
}

fn choosing(id: &str, name: &str, options: Markup) -> Markup {
    html! { label.choice for=(id) { span { (say(name)) } select id=(id) data-files="" { (options) } } }
}

fn options(choices: &[(&str, &str)]) -> Markup {
    html! { @for (key, shown) in choices { option value=(key) { (say(shown)) } } }
}
