//! Words of the trade, defined where they are read and all together.

use holdround_core::glossary::{WORDS, Word, words_in};
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
    words.sort_by_key(|word| in_order(say(word.word)));
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
    word.to_lowercase().chars().map(plain).collect()
}

fn list(words: &[&Word]) -> Markup {
    html! { dl.words { @for word in words { dt { dfn { (shown(word.word)) } } dd { (say(word.says)) } } } }
}

/// The word as it heads its line.
fn shown(word: &str) -> String {
    if word == "tir" {
        return say(word).to_uppercase();
    }
    let mut letters = say(word).chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
