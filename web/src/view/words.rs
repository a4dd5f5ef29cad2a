//! Words of the trade, defined where they are read and all together.

use holdround_core::glossary::{WORDS, Word, words_in};
use maud::{Markup, html};

/// What the words of the trade in `text` mean.
pub(crate) fn in_text(text: &str) -> Markup {
    let words: Vec<&Word> = words_in(text).collect();
    html! { @if !words.is_empty() { (list(&words)) } }
}

/// All of them.
pub(crate) fn all() -> Markup {
    html! {
        details id="words" {
            summary { h2 { "Words of the trade" } }
            (list(&WORDS.iter().collect::<Vec<_>>()))
        }
    }
}

fn list(words: &[&Word]) -> Markup {
    html! { dl.words { @for word in words { dt { dfn { (shown(word.word)) } } dd { (word.says) } } } }
}

/// The word as it heads its line.
fn shown(word: &str) -> String {
    if word == "tir" { word.to_ascii_uppercase() } else { word[..1].to_ascii_uppercase() + &word[1..] }
}
