//! Words for people, kept apart from what goes into them, so that whoever shows them can say them in another language.
//!
//! ```
//! use holdround_mechanics::quantity::{Kind, UnitSystem};
//! use holdround_mechanics::text::{ENGLISH, Language, Text, fill};
//!
//! let steps = Text::of("The part has {} steps; at most {} are covered.").with(201_usize).with(Text::number("200"));
//! assert_eq!(steps.to_string(), "The part has 201 steps; at most 200 are covered.");
//!
//! // Another language may need the pieces in another order; a number takes its decimal sign.
//! fn german(words: &str) -> &str {
//!     match words {
//!         "{} of the {}" => "{1}: {0}",
//!         "under" => "unter",
//!         "rev/min" => "U/min",
//!         _ => words,
//!     }
//! }
//! let language = Language { words: german, decimal: ',' };
//! let text = Text::of("{} of the {}").with(Text::number("1.5 mm")).with(Text::typed("rim 1.5"));
//! assert_eq!(text.said_in(language), "rim 1.5: 1,5 mm");
//! assert_eq!(text.said_in(ENGLISH), "1.5 mm of the rim 1.5");
//! assert_eq!(Text::number("under 0.1 rev/min").said_in(language), "unter 0,1 U/min");
//! let inches = Kind::Length.unit_in(UnitSystem::Inch);
//! assert_eq!(Text::quantity(0.0381, inches).said_in(language), "1,5 in");
//! assert_eq!(text, "1.5 mm of the rim 1.5");
//! assert!(text.contains("of the rim"));
//!
//! let says = Text::of("It slips.").then(" Raise the pressure.");
//! assert!(!says.is_empty() && says == "It slips. Raise the pressure.");
//! assert_eq!(Text::row(["a".into(), "b".into()], " or "), "a or b");
//!
//! let mut out = String::new();
//! fill("{} of {}", &mut out, |at, out| out.push_str(["7", "9"][at]));
//! assert_eq!(out, "7 of 9");
//! ```

use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt;

use crate::quantity::{Unit, shown};

/// Words, with what goes into them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Text {
    /// Words as they stand in the source, in English.
    Words(&'static str),
    /// Words with gaps, see [`fill`], and what goes into each.
    Filled(&'static str, Vec<Self>),
    /// A number as written with a decimal point, with its unit and a word before it, as in “under 0.1 mm”, if it has them.
    Number(String),
    /// What somebody typed, or a name: the same in every language.
    Typed(String),
    /// One after another.
    Row(Vec<Self>),
}

/// A language that words can be said in.
#[derive(Clone, Copy, Debug)]
pub struct Language {
    /// Its words for English ones; the same where it has none.
    pub words: for<'a> fn(&'a str) -> &'a str,
    /// Its decimal sign.
    pub decimal: char,
}

/// The language of the source.
pub const ENGLISH: Language = Language { words: |words| words, decimal: '.' };

impl Text {
    /// Words, to be given what goes into their gaps by [`Self::with`].
    #[must_use]
    pub const fn of(words: &'static str) -> Self {
        Self::Words(words)
    }

    /// A number as written with a decimal point, with or without its unit.
    pub fn number(written: impl Into<String>) -> Self {
        Self::Number(written.into())
    }

    /// `si` in `unit` with its symbol, see [`shown`].
    #[must_use]
    pub fn quantity(si: f64, unit: &Unit) -> Self {
        Self::Number(shown(si, unit))
    }

    /// What somebody typed, or a name that no language changes.
    pub fn typed(text: impl Into<String>) -> Self {
        Self::Typed(text.into())
    }

    /// Several, with `between` between them.
    pub fn row(texts: impl IntoIterator<Item = Self>, between: &'static str) -> Self {
        let mut row = Vec::new();
        for text in texts {
            if !row.is_empty() {
                row.push(Self::Words(between));
            }
            row.push(text);
        }
        Self::Row(row)
    }

    /// With `text` in the next gap.
    #[must_use]
    pub fn with(self, text: impl Into<Self>) -> Self {
        self.filled(text.into())
    }

    /// One function for whatever goes in: the page would hold a copy for each kind.
    #[inline(never)]
    fn filled(self, text: Self) -> Self {
        match self {
            Self::Words(words) => Self::Filled(words, Vec::from([text])),
            Self::Filled(words, mut filled) => {
                filled.push(text);
                Self::Filled(words, filled)
            }
            other => other.then(text),
        }
    }

    /// With `text` after it.
    #[must_use]
    pub fn then(self, text: impl Into<Self>) -> Self {
        self.followed(text.into())
    }

    #[inline(never)]
    fn followed(self, text: Self) -> Self {
        match self {
            Self::Row(mut row) => {
                row.push(text);
                Self::Row(row)
            }
            other => Self::Row(Vec::from([other, text])),
        }
    }

    /// Said in `language`.
    #[must_use]
    pub fn said_in(&self, language: Language) -> String {
        let mut out = String::new();
        self.say(language, &mut out);
        out
    }

    fn say(&self, language: Language, out: &mut String) {
        match self {
            Self::Words(words) => out.push_str((language.words)(words)),
            Self::Filled(words, filled) => fill((language.words)(words), out, |at, out| {
                if let Some(text) = filled.get(at) {
                    text.say(language, out);
                }
            }),
            Self::Number(written) => {
                for (at, piece) in written.split(' ').enumerate() {
                    if at > 0 {
                        out.push(' ');
                    }
                    if piece.contains(|sign: char| sign.is_ascii_digit()) {
                        out.extend(piece.chars().map(|sign| if sign == '.' { language.decimal } else { sign }));
                    } else {
                        out.push_str((language.words)(piece));
                    }
                }
            }
            Self::Typed(text) => out.push_str(text),
            Self::Row(row) => row.iter().for_each(|text| text.say(language, out)),
        }
    }

    /// Whether it says nothing.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.to_string().is_empty()
    }

    /// Whether `words` are among its English ones.
    #[must_use]
    pub fn contains(&self, words: &str) -> bool {
        self.to_string().contains(words)
    }
}

/// Writes `words` with their gaps filled: `{}` is the next gap, `{0}` the first, `{1}` the second, whichever order a
/// language needs. `put` writes what goes into the gap of that number.
pub fn fill(words: &str, out: &mut String, mut put: impl FnMut(usize, &mut String)) {
    let (mut rest, mut next) = (words, 0);
    while let Some((before, after)) = rest.split_once('{') {
        let Some((number, after)) = after.split_once('}') else { break };
        out.push_str(before);
        put(number.parse().unwrap_or(next), out);
        next += 1;
        rest = after;
    }
    out.push_str(rest);
}

impl fmt::Display for Text {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said_in(ENGLISH))
    }
}

impl From<&'static str> for Text {
    fn from(words: &'static str) -> Self {
        Self::Words(words)
    }
}

impl From<usize> for Text {
    fn from(count: usize) -> Self {
        Self::Number(count.to_string())
    }
}

impl From<u32> for Text {
    fn from(count: u32) -> Self {
        Self::Number(count.to_string())
    }
}

impl PartialEq<str> for Text {
    fn eq(&self, other: &str) -> bool {
        self.said_in(ENGLISH) == other
    }
}

impl PartialEq<&str> for Text {
    fn eq(&self, other: &&str) -> bool {
        self == *other
    }
}

#[cfg(feature = "serde")]
impl serde::Serialize for Text {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}
