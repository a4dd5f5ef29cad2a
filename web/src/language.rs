//! The language the page speaks: English, as the source does, or another one out of the catalogue in `language/`.

mod key;

use std::cell::Cell;
use std::fmt::Display;

use holdround_core::text::{self, ENGLISH, Language, Text};
use maud::{Markup, PreEscaped, Render};

use key::key;

include!(concat!(env!("OUT_DIR"), "/keys.rs"));

/// A language of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Tongue {
    /// As the source has it.
    #[default]
    English,
    /// From the catalogue.
    German,
}

thread_local! {
    static SPOKEN: Cell<Tongue> = const { Cell::new(Tongue::English) };
    /// The German texts in the order of their keys.
    static GERMAN: Vec<&'static str> = include_str!(concat!(env!("OUT_DIR"), "/german.txt")).lines().collect();
}

impl Tongue {
    /// Every language with its code and its own name.
    pub(crate) const ALL: [(Self, &'static str, &'static str); 2] =
        [(Self::English, "en", "English"), (Self::German, "de", "Deutsch")];

    /// The language of this code, such as `de` or `de-AT`.
    pub(crate) fn of_code(code: &str) -> Option<Self> {
        let language = code.split('-').next()?;
        Self::ALL.iter().find(|(_, known, _)| known.eq_ignore_ascii_case(language)).map(|(tongue, ..)| *tongue)
    }

    /// Its code.
    pub(crate) fn code(self) -> &'static str {
        Self::ALL.iter().find(|(tongue, ..)| *tongue == self).map_or("en", |(_, code, _)| *code)
    }

    /// It as the engines need it.
    pub(crate) fn language(self) -> Language {
        match self {
            Self::English => ENGLISH,
            Self::German => Language { words: german, decimal: ',' },
        }
    }
}

/// The language that is spoken now.
pub(crate) fn spoken() -> Tongue {
    SPOKEN.get()
}

/// From now on this language is spoken.
pub(crate) fn speak(tongue: Tongue) {
    SPOKEN.set(tongue);
}

fn german(english: &str) -> &str {
    KEYS.binary_search(&key(english)).ok().and_then(|at| GERMAN.with(|texts| texts.get(at).copied())).unwrap_or(english)
}

/// These words of the source, in the language that is spoken.
pub(crate) fn say(words: &str) -> &str {
    (spoken().language().words)(words)
}

/// What the engines tell, in the language that is spoken.
pub(crate) fn said(text: &Text) -> String {
    text.said_in(spoken().language())
}

/// A number written with a decimal point, as the language that is spoken writes it.
pub(crate) fn number(written: impl Into<String>) -> String {
    said(&Text::number(written))
}

/// These words of the source with their gaps filled with markup, see [`text::fill`].
pub(crate) fn fill(words: &str, gaps: &[&dyn Render]) -> Markup {
    let mut out = String::new();
    let words = say(words).render().into_string();
    text::fill(&words, &mut out, |at, out| {
        if let Some(gap) = gaps.get(at) {
            gap.render_to(out);
        }
    });
    PreEscaped(out)
}

/// The same as plain text, for what is spoken, named or copied.
pub(crate) fn fill_plain(words: &str, gaps: &[&dyn Display]) -> String {
    let mut out = String::new();
    text::fill(say(words), &mut out, |at, out| {
        if let Some(gap) = gaps.get(at) {
            out.push_str(&gap.to_string());
        }
    });
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_gaps_and_numbers_follow_the_language() {
        assert_eq!((say("Notes"), number("1.5")), ("Notes", "1.5".to_owned()), "the language of the source");
        speak(Tongue::German);
        assert_eq!((say("Notes"), number("1.5")), ("Hinweise", "1,5".to_owned()), "from the catalogue");
        assert_eq!(say("words that are in no catalogue"), "words that are in no catalogue", "better than nothing");
        let bold = maud::html! { b { "<2>" } };
        assert_eq!(fill("a < {1}, {0}", &[&"x&y", &bold]).into_string(), "a &lt; <b>&lt;2&gt;</b>, x&amp;y", "markup");
        assert_eq!(fill_plain("{} & {}", &[&1, &"x"]), "1 & x", "plain");
    }

    #[test]
    fn every_key_has_its_text() {
        assert_eq!(GERMAN.with(Vec::len), KEYS.len(), "a line each");
        assert!(KEYS.is_sorted_by(|a, b| a < b), "sorted as it is searched");
    }

    #[test]
    fn a_language_is_known_by_its_code() {
        assert_eq!(Tongue::of_code("de-AT"), Some(Tongue::German), "whatever the country");
        assert_eq!(Tongue::of_code("fr"), None, "not spoken");
        for (tongue, code, _) in Tongue::ALL {
            assert_eq!((Tongue::of_code(code), tongue.code()), (Some(tongue), code), "there and back");
        }
    }
}
