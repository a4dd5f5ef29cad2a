//! Writing formulae as MathML.

use maud::{Markup, html};

use super::parse::Piece;

/// How a quotient is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Quotient {
    /// One above the other.
    Stacked,
    /// In the line, as where it stands among words.
    InLine,
}

/// `row` as one element.
pub(super) fn row(pieces: &[Piece<'_>], quotient: Quotient) -> Markup {
    match pieces {
        [only] => one(only, quotient),
        several => html! { mrow { @for piece in several { (one(piece, quotient)) } } },
    }
}

fn one(piece: &Piece<'_>, quotient: Quotient) -> Markup {
    html! {
        @match piece {
            Piece::Number(digits) => mn { (plain(digits)) },
            Piece::Letter(letter) => mi { (letter) },
            Piece::Barred(letter) => mover accent="true" { mi { (letter) } mo { "¯" } },
            Piece::Words(words) => mtext { (words) },
            Piece::Sign(sign) => mo { (sign) },
            Piece::Prefix(sign) => mo form="prefix" { (sign) },
            Piece::Times => mo { "\u{2062}" },
            Piece::Of => mo { "\u{2061}" },
            Piece::Room => mspace width="0.3em" {},
            Piece::Low(base, index) => msub { (one(base, quotient)) (low(index)) },
            Piece::High(base, exponent) => msup { (one(base, quotient)) (row(exponent, quotient)) },
            Piece::Group('\0', inside, _) => (row(inside, quotient)),
            Piece::Group(open, inside, close) => mrow { mo { (open) } (row(inside, quotient)) mo { (close) } },
            Piece::Root(inside) => msqrt { (row(inside, quotient)) },
            Piece::Over(above, below) => {
                @if quotient == Quotient::Stacked {
                    mfrac { (row(within(above), quotient)) (row(within(below), quotient)) }
                } @else {
                    mrow { (row(above, quotient)) mo { "/" } (row(below, quotient)) }
                }
            }
        }
    }
}

/// What a bar of a fraction sets apart needs no brackets.
fn within<'a, 'b>(pieces: &'b [Piece<'a>]) -> &'b [Piece<'a>] {
    match pieces {
        [Piece::Group('(', inside, _)] => inside,
        _ => pieces,
    }
}

/// An index: a number, a letter that counts, or what it stands for in upright letters.
fn low(index: &str) -> Markup {
    let digits = plain(index);
    html! {
        @if digits.starts_with(|c: char| c.is_ascii_digit()) { mn { (digits) } }
        @else if matches!(&*digits, "i" | "n") { mi { (digits) } }
        @else { mtext { (digits) } }
    }
}

/// Raised and lowered figures as plain ones.
fn plain(text: &str) -> String {
    text.chars()
        .map(|c| match c {
            '²' => '2',
            '³' => '3',
            'ᵢ' => 'i',
            '₀'..='₉' => char::from_digit(u32::from(c) - u32::from('₀'), 10).unwrap_or(c),
            _ => c,
        })
        .collect()
}
