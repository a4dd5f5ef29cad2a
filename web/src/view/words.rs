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
    let plain = |letter| match letter {
        'ä' => 'a',
        'ö' => 'o',
        'ü' => 'u',
        other => other,
    };
    word.chars().flat_map(char::to_lowercase).map(plain).collect()
}

fn list(words: &[&Word]) -> Markup {
    html! { dl.words { @for word in words { dt { dfn { (shown(word.word)) } } dd { (say(word.says)) } } } }
}

/// The word as it heads its line.
fn shown(word: &str) -> String {
    let said = say(word);
    let first = if word == "tir" { said.len() } else { said.chars().next().map_or(0, char::len_utf8) };
    let (raised, rest) = said.split_at(first);
    raised.chars().flat_map(char::to_uppercase).collect::<String>() + rest
}
