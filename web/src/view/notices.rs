//! What is told about links and storage, above the sheet.

use maud::{Markup, html};

use crate::page::desk::Desk;

/// The notices, each to be put away.
pub(crate) fn show(desk: &Desk) -> Markup {
    html! {
        @for (at, notice) in desk.notices.iter().enumerate() {
            div.notice {
                p { (notice.says) }
                @if let Some(kept) = &notice.kept {
                    label for={ "kept-" (at) } { "Kept for copying" }
                    textarea id={ "kept-" (at) } readonly rows="2" { (kept) }
                }
                button type="button" id={ "put-away-" (at) } data-act="put-away" data-index=(at) { "Put this note away" }
            }
        }
        @if let Some(rings) = &desk.rings {
            div.notice {
                p { "The set-up before has " (rings.count("rings")) " boring rings of your own; this one has none." }
                button type="button" id="take-rings" data-act="take-rings" { "Take them over" }
                " "
                button type="button" id="leave-rings" data-act="leave-rings" { "Leave them" }
            }
        }
        @if desk.earlier.is_some() {
            div.notice {
                p { "Your earlier set-up is kept." }
                button type="button" id="go-back" data-act="go-back" { "Go back to it" }
                " "
                button type="button" id="drop-earlier" data-act="drop-earlier" { "Let it go" }
            }
        }
    }
}
