//! Formulae and symbols as mathematics (MathML), which browsers draw and screen readers read.

mod parse;
mod write;

use maud::{Markup, html};

use parse::Piece;
use write::Quotient;

use crate::language::say;

/// Characters beyond which a formula may need to be moved sideways on a phone.
const LONG: usize = 24;

/// A formula in a line of its own. A long one takes the keyboard, so that it can be moved sideways by it too.
pub(crate) fn displayed(text: &str) -> Markup {
    let text = say(text);
    let long = text.chars().count() > LONG;
    html! {
        div.formula tabindex=[long.then_some("0")] role=[long.then_some("group")] aria-label=[long.then(|| say("Formula"))] {
            @match parse::parse(text) {
                Some(pieces) => (in_parts(&pieces)),
                None => (text),
            }
        }
    }
}

/// Mathematics, and the prose between it as prose, so that a line can be broken there.
fn in_parts(pieces: &[Piece<'_>]) -> Markup {
    let is_prose = |piece: &Piece<'_>| matches!(piece, Piece::Words(words) if words.as_bytes().contains(&b' '));
    html! {
        @for part in pieces.chunk_by(|a, b| is_prose(a) == is_prose(b)) {
            @let part = part.strip_prefix(&[Piece::Room]).unwrap_or(part);
            @match part {
                [] => {}
                [Piece::Words(words)] if words.as_bytes().contains(&b' ') => { " " (words) " " }
                part => math displaystyle="true" { (write::row(part, Quotient::Stacked)) },
            }
        }
    }
}

/// A symbol among words.
pub(crate) fn symbol(text: &str) -> Markup {
    let text = say(text);
    html! {
        math {
            @match parse::parse(text) {
                Some(pieces) => (write::row(&pieces, Quotient::InLine)),
                None => mtext { (text) },
            }
        }
    }
}

#[cfg(test)]
mod tests;
