//! What is told about links and storage, above the sheet.

use holdround_core::setup::Entries;
use maud::{Markup, html};

use crate::language::{fill, said, say};
use crate::page::desk::Desk;

/// The notices, each to be put away.
pub(crate) fn show(desk: &Desk) -> Markup {
    html! {
        @for (at, notice) in desk.notices.iter().enumerate() {
            div.notice {
                p { (said(&notice.says)) }
                @if let Some(kept) = &notice.kept {
                    label for={ "kept-" (at) } { (say("Kept for copying")) }
                    textarea id={ "kept-" (at) } readonly rows="2" { (kept) }
                }
                button type="button" id={ "put-away-" (at) } data-act="put-away" data-index=(at) {
                    (say("Put this note away"))
                }
            }
        }
        @if let Some(rings) = &desk.rings {
            div.notice {
                p {
                    (fill("The set-up before has {} boring rings of your own; this one has none.", &[&rings.count("rings")]))
                }
                button type="button" id="take-rings" data-act="take-rings" { (say("Take them over")) }
                " "
                button type="button" id="leave-rings" data-act="leave-rings" { (say("Leave them")) }
            }
        }
        @if let [first, more @ ..] = desk.earlier.0.as_slice() {
            div.notice {
                (earlier(0, first))
                @if !more.is_empty() {
                    details id="more-earlier" {
                        summary { (fill("{} more", &[&more.len()])) }
                        @for (at, kept) in more.iter().enumerate() { (earlier(at + 1, kept)) }
                    }
                }
            }
        }
    }
}

/// A set-up that can be gone back to.
fn earlier(at: usize, (entries, window): &(Entries, String)) -> Markup {
    let name = entries.get("job.name").unwrap_or_else(|| say("without a name"));
    html! {
        p {
            @if window.is_empty() { (fill("Your earlier set-up is kept: {}.", &[&name])) }
            @else { (fill("A set-up of another window is kept: {}.", &[&name])) }
        }
        p {
            button type="button" id={ "go-back-" (at) } data-act="go-back" data-index=(at) { (say("Go back to it")) }
            " "
            button type="button" id={ "drop-earlier-" (at) } data-act="drop-earlier" data-index=(at) { (say("Delete it")) }
        }
    }
}
