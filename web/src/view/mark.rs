//! How a value stands to its limit, as one mark and one word; neither rests on colour.

use holdround_core::QUESTION;
use holdround_core::findings::{Finding, Mark, Sense};
use maud::{Markup, html};

use crate::language::say;

/// The key of a mark, for styles.
pub(crate) fn key(mark: Mark) -> &'static str {
    match mark {
        Mark::Within => "within",
        Mark::Close => "close",
        Mark::Beyond => "beyond",
        Mark::Told => "told",
        Mark::Refused => "refused",
    }
}

/// The word for how a finding stands to its limit.
pub(crate) fn word(finding: &Finding) -> &'static str {
    match (finding.mark(), finding.limit.as_ref().map(|limit| limit.sense)) {
        (Mark::Within, _) => say("good"),
        (Mark::Close, _) => say("close"),
        (Mark::Beyond, Some(Sense::AtLeast)) => say("short"),
        (Mark::Beyond, _) => say("over"),
        (Mark::Told, _) => say("told"),
        (Mark::Refused, _) if finding.id == QUESTION => say("open"),
        (Mark::Refused, _) => say("refused"),
    }
}

/// The mark: a tick in a circle, a bar in a triangle, a cross in a square, a dot, or a barred circle.
pub(crate) fn drawn(mark: Mark) -> Markup {
    html! {
        svg class={ "mark " (key(mark)) } viewBox="0 0 24 24" width="24" height="24" aria-hidden="true" {
            @match mark {
                Mark::Within => { circle cx="12" cy="12" r="10" {} path d="M7 12.5 L10.5 16 L17 8.5" {} }
                Mark::Close => { path d="M12 2.5 L22 21 H2 Z" {} path d="M12 9 V15 M12 17 V18.5" {} }
                Mark::Beyond => { rect x="2.5" y="2.5" width="19" height="19" {} path d="M7.5 7.5 L16.5 16.5 M16.5 7.5 L7.5 16.5" {} }
                Mark::Told => { path d="M5 12 H19" {} }
                Mark::Refused => { circle cx="12" cy="12" r="10" {} path d="M5 19 L19 5" {} }
            }
        }
    }
}
