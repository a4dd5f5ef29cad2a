//! Words of the trade, defined where they are read and all together.

use holdround_core::glossary::{WORDS, Word, words_in};
use holdround_core::sorting::sort;
use maud::{Markup, html};

use crate::language::say;

/// What the words of the trade in `text` mean.
pub(crate) fn in_text(text: &str) -> Markup {
    let words: Vec<&Word> = words_in(text).collect();
    html! { @if !words.is_empty() { (list(&words)) } }
}

/// All of them.
pub(crate) fn all() -> Markup {
    let mut words: Vec<&Word> = WORDS.iter().collect();
    sort(&mut words, |a, b| in_order(say(a.word)).cmp(&in_order(say(b.word))));
    html! {
        details id="words" {
            summary { h2 { (say("Words of the trade")) } }
            (list(&words))
        }
    }
}

/// A word as it is sorted: ä as a, and so on (DIN 5007-1).
fn in_order(word: &str) -> String {
    let plain = |letter: char| match letter {
        'Ä' | 'ä' => 'a',
        'Ö' | 'ö' => 'o',
        'Ü' | 'ü' => 'u',
        other => other.to_ascii_lowercase(),
    };
    word.chars().map(plain).collect()
}

fn list(words: &[&Word]) -> Markup {
    html! { dl.words { @for word in words { dt { dfn { (shown(word.word)) } } dd { (say(word.says)) } } } }
}

/// The word as it heads its line. (Every letter there is to raise in its tables weighs seven kilobytes: those of the
/// two languages do.)
fn shown(word: &str) -> String {
    let whole = word == "tir";
    let raised = |(at, letter): (usize, char)| match letter {
        _ if at > 0 && !whole => letter,
        'ä' => 'Ä',
        'ö' => 'Ö',
        'ü' => 'Ü',
        other => other.to_ascii_uppercase(),
    };
    say(word).chars().enumerate().map(raised).collect()
}
