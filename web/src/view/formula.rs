//! Formulae and symbols as they are written on paper: `F_c` with its index low, `h^2` with its exponent high.

use maud::{Markup, html};

/// A piece of a formula.
#[derive(Debug, PartialEq, Eq)]
enum Piece<'a> {
    On(&'a str),
    Low(&'a str),
    High(&'a str),
}

/// `text` with what follows `_` set low and what follows `^` set high.
pub(crate) fn written(text: &str) -> Markup {
    html! {
        @for piece in pieces(text) {
            @match piece {
                Piece::On(text) => (text),
                Piece::Low(text) => sub { (text) },
                Piece::High(text) => sup { (text) },
            }
        }
    }
}

fn pieces(text: &str) -> Vec<Piece<'_>> {
    let mut pieces = Vec::new();
    let mut rest = text;
    while let Some(at) = rest.find(['_', '^']) {
        let (before, marked) = rest.split_at(at);
        let low = marked.starts_with('_');
        let (inside, after) = moved(marked.get(1..).unwrap_or_default());
        if !before.is_empty() {
            pieces.push(Piece::On(before));
        }
        if !inside.is_empty() {
            pieces.push(if low { Piece::Low(inside) } else { Piece::High(inside) });
        }
        rest = after;
    }
    if !rest.is_empty() {
        pieces.push(Piece::On(rest));
    }
    pieces
}

/// What is set low or high: a bracketed term without its brackets, or letters, digits and signs up to the next mark.
fn moved(text: &str) -> (&str, &str) {
    if let Some((inside, after)) = text.strip_prefix('(').and_then(|text| text.split_once(')')) {
        return (inside, after);
    }
    let end = text.find(|c: char| !c.is_alphanumeric() && !matches!(c, '−' | '.')).unwrap_or(text.len());
    text.split_at(end)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn indices_go_low_and_exponents_high() {
        let cases = [
            ("F_c = kc1.1 b h", "F<sub>c</sub> = kc1.1 b h"),
            ("(h / 1 mm)^(−mc) w", "(h / 1 mm)<sup>−mc</sup> w"),
            ("r^2 + x_0^2", "r<sup>2</sup> + x<sub>0</sub><sup>2</sup>"),
            ("p < 3 _", "p &lt; 3 "),
            ("a^(b", "a<sup></sup>(b"),
        ];
        for (text, markup) in cases {
            assert_eq!(written(text).into_string(), markup.replace("<sup></sup>", ""), "{text}");
        }
    }
}
