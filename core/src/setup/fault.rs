//! What is wrong with an entry, said so that it can be put right.

use alloc::format;
use alloc::string::{String, ToString};
use core::fmt;

use super::Input;
use crate::quantity::{Kind, MeasureError, NumberError, Unit, shown};

/// One fault of a set-up: which entry, what was there, what is allowed and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Where: the path of the entry, or of what should not be there.
    pub path: String,
    /// The entry's name as shown.
    pub name: String,
    /// What was entered, shortened if very long.
    pub value: String,
    /// What is allowed.
    pub allowed: String,
    /// What to do.
    pub remedy: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let value = if self.value.is_empty() { "nothing" } else { &self.value };
        write!(f, "{} ({}) is {value}. Allowed: {}. {}", self.name, self.path, self.allowed, self.remedy)
    }
}

/// Longest piece of a wrong entry that is repeated back.
const REPEATED: usize = 40;

impl Fault {
    /// A fault of the input at `path`.
    pub(crate) fn new(path: &str, input: &Input, value: &str, allowed: String, remedy: String) -> Self {
        Self { path: path.to_string(), name: input.name.to_string(), value: shortened(value), allowed, remedy }
    }

    /// An entry at a path where no input is.
    pub(super) fn unknown(path: &str, value: &str) -> Self {
        Self {
            path: shortened(path),
            name: "Unknown entry".to_string(),
            value: shortened(value),
            allowed: "only the declared inputs".to_string(),
            remedy: "Correct its name or take it out.".to_string(),
        }
    }

    /// A fault of the document as a whole.
    pub(super) fn document(value: &str, allowed: &str, remedy: &str) -> Self {
        Self {
            path: "set-up".to_string(),
            name: "Set-up".to_string(),
            value: shortened(value),
            allowed: allowed.to_string(),
            remedy: remedy.to_string(),
        }
    }

    /// A quantity that could not be read.
    pub(super) fn unreadable(path: &str, input: &Input, text: &str, allowed: String, error: &MeasureError) -> Self {
        let remedy = match error {
            MeasureError::Number(NumberError::Empty) => "Type a number.".to_string(),
            MeasureError::Number(NumberError::NotANumber) => "Type a number such as 12.5, 12,5 or 2 1/4.".to_string(),
            MeasureError::Number(NumberError::Ambiguous) => {
                "Type one decimal point or comma, and nothing between thousands.".to_string()
            }
            MeasureError::Number(NumberError::OverZero) => {
                "A fraction needs something other than 0 below the line.".to_string()
            }
            MeasureError::Number(NumberError::TooLarge) => "Type a smaller number.".to_string(),
            MeasureError::Unit(unit) => {
                let known = input.kind().map(unit_symbols).unwrap_or_default();
                format!("“{}” is not a unit for this; use {known}.", shortened(unit))
            }
        };
        Self::new(path, input, text, allowed, remedy)
    }
}

/// The symbols of the units of `kind`, listed.
fn unit_symbols(kind: Kind) -> String {
    let mut listed = String::new();
    for unit in kind.units().filter(|unit| !unit.symbol.is_empty()) {
        if !listed.is_empty() {
            listed.push_str(", ");
        }
        listed.push_str(unit.symbol);
    }
    if listed.is_empty() { "none".to_string() } else { listed }
}

/// A range in words, in the unit the user typed.
pub(crate) fn range_words(least: f64, most: f64, unit: &Unit) -> String {
    format!("{} to {}", shown(least, unit), shown(most, unit))
}

/// `text` cut to what can be shown in one line.
fn shortened(text: &str) -> String {
    let mut line: String = text.chars().take(REPEATED).map(|c| if c.is_control() { ' ' } else { c }).collect();
    if text.chars().nth(REPEATED).is_some() {
        line.push('…');
    }
    line
}
