//! What is wrong with an entry, said so that it can be put right.

use alloc::string::{String, ToString};
use core::fmt;

use super::Input;
use crate::quantity::{Kind, MeasureError, NumberError, Unit};
use crate::text::Text;

/// One fault of a set-up: which entry, what was there, what is allowed and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Where: the path of the entry, or of what should not be there.
    pub path: String,
    /// The entry's name as shown.
    pub name: Text,
    /// What was entered, shortened if very long.
    pub value: Text,
    /// What is allowed.
    pub allowed: Text,
    /// What to do.
    pub remedy: Text,
}

impl From<&Fault> for Text {
    fn from(fault: &Fault) -> Self {
        let value = if fault.value.is_empty() { Self::of("nothing") } else { fault.value.clone() };
        Self::of("{} ({}) is {}. Allowed: {}. {}")
            .with(fault.name.clone())
            .with(Self::typed(&*fault.path))
            .with(value)
            .with(fault.allowed.clone())
            .with(fault.remedy.clone())
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

/// Longest piece of a wrong entry that is repeated back.
const REPEATED: usize = 40;

impl Fault {
    /// A fault of the input at `path`.
    pub(crate) fn new(path: &str, input: &Input, value: &str, allowed: Text, remedy: Text) -> Self {
        Self { path: path.to_string(), name: input.name.into(), value: Text::Typed(shortened(value)), allowed, remedy }
    }

    /// An entry at a path where no input is.
    pub(super) fn unknown(path: &str, value: Text) -> Self {
        Self {
            path: shortened(path),
            name: "Unknown entry".into(),
            value,
            allowed: "only the declared inputs".into(),
            remedy: "Correct its name or take it out.".into(),
        }
    }

    /// A fault of the document as a whole.
    pub(super) fn document(value: Text, allowed: impl Into<Text>, remedy: &'static str) -> Self {
        Self {
            path: "set-up".to_string(),
            name: "Set-up".into(),
            value,
            allowed: allowed.into(),
            remedy: remedy.into(),
        }
    }

    /// A quantity that could not be read.
    pub(super) fn unreadable(path: &str, input: &Input, text: &str, allowed: Text, error: &MeasureError) -> Self {
        let remedy = match error {
            MeasureError::Number(NumberError::Empty) => "Type a number.".into(),
            MeasureError::Number(NumberError::NotANumber) => "Type a number such as 12.5, 12,5 or 2 1/4.".into(),
            MeasureError::Number(NumberError::Ambiguous) => {
                "Type one decimal point or comma, and nothing between thousands.".into()
            }
            MeasureError::Number(NumberError::OverZero) => {
                "A fraction needs something other than 0 below the line.".into()
            }
            MeasureError::Number(NumberError::TooLarge) => "Type a smaller number.".into(),
            MeasureError::Unit(unit) => {
                let known = input.kind().map_or_else(|| "none".into(), unit_symbols);
                Text::of("“{}” is not a unit for this; use {}.").with(Text::typed(shortened(unit))).with(known)
            }
        };
        Self::new(path, input, text, allowed, remedy)
    }
}

/// The symbols of the units of `kind`, listed.
fn unit_symbols(kind: Kind) -> Text {
    let mut symbols = kind.units().map(|unit| unit.symbol).filter(|symbol| !symbol.is_empty()).map(Text::of).peekable();
    if symbols.peek().is_none() { "none".into() } else { Text::row(symbols, ", ") }
}

/// A range in words, in the unit the user typed.
pub(crate) fn range_words(least: f64, most: f64, unit: &Unit) -> Text {
    Text::of("{} to {}").with(Text::quantity(least, unit)).with(Text::quantity(most, unit))
}

/// `text` cut to what can be shown in one line.
pub(super) fn shortened(text: &str) -> String {
    let mut line: String = text.chars().take(REPEATED).map(|c| if c.is_control() { ' ' } else { c }).collect();
    if text.chars().nth(REPEATED).is_some() {
        line.push('…');
    }
    line
}
