//! What one input is: the single declaration that drives form, validation, link, JSON Schema and fuzzing.

use crate::quantity::{Kind, Measure};

/// One thing a person can type or choose.
#[derive(Clone, Copy, Debug)]
pub struct Input {
    /// Where it stands in the set-up: `part.length`, or `cuts.*.depth` inside a list.
    pub path: &'static str,
    /// Its name as shown, without unit.
    pub name: &'static str,
    /// What may be entered.
    pub form: Form,
    /// What is taken when nothing was entered, as it would be typed. Empty: nothing is taken.
    pub default: &'static str,
    /// What it is, where to find it on the shop floor, and what it does.
    pub help: &'static str,
    /// Where the default and the range come from.
    pub source: &'static str,
    /// When it matters.
    pub when: When,
}

/// What may be entered.
#[derive(Clone, Copy, Debug)]
pub enum Form {
    /// A quantity between two SI values, both allowed.
    Quantity {
        /// The kind of quantity, which decides its units.
        kind: Kind,
        /// Smallest allowed value, SI.
        least: f64,
        /// Largest allowed value, SI.
        most: f64,
        /// Whether it may be left empty.
        optional: bool,
    },
    /// One of a list.
    Choice(&'static [Choice]),
    /// A material of the table that may be used for this.
    Material(MaterialUse),
    /// Free text of at most so many characters.
    Text(usize),
}

/// What a material is wanted for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MaterialUse {
    /// The part.
    Part,
    /// The jaws.
    Jaw,
}

/// One entry of a list to choose from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// As stored.
    pub key: &'static str,
    /// As shown.
    pub name: &'static str,
}

/// When an input matters.
#[derive(Clone, Copy, Debug)]
pub enum When {
    /// Always.
    Always,
    /// When what is chosen there is one of these keys; that may be in the same list item.
    Chosen(&'static Input, &'static [&'static str]),
}

impl Input {
    /// The path of this input in item `index` of its list; itself outside lists.
    #[must_use]
    pub fn at(&self, index: usize) -> alloc::string::String {
        self.path.replace('*', &alloc::format!("{index}"))
    }

    /// The list it stands in, and what it is called there; none outside lists.
    #[must_use]
    pub fn in_list(&self) -> Option<(&'static str, &'static str)> {
        let (list, field) = self.path.split_once('*')?;
        Some((list.strip_suffix('.')?, field.strip_prefix('.')?))
    }

    /// Whether it may be left empty.
    #[must_use]
    pub fn is_optional(&self) -> bool {
        matches!(self.form, Form::Quantity { optional: true, .. } | Form::Text(_))
    }

    /// The entries of a choice; empty for other forms.
    #[must_use]
    pub fn choices(&self) -> &'static [Choice] {
        match self.form {
            Form::Choice(choices) => choices,
            _ => &[],
        }
    }

    /// What is assumed when nothing is typed, in SI; none where that is no quantity.
    #[must_use]
    pub fn assumed(&self) -> Option<f64> {
        Measure::parse(self.kind()?, self.default).ok().map(|measure| measure.si)
    }

    /// The kind of quantity, if it is one.
    #[must_use]
    pub fn kind(&self) -> Option<Kind> {
        match self.form {
            Form::Quantity { kind, .. } => Some(kind),
            _ => None,
        }
    }
}

/// A quantity that must be given, between two values in SI.
pub(super) const fn quantity(kind: Kind, least: f64, most: f64) -> Form {
    Form::Quantity { kind, least, most, optional: false }
}

/// A quantity that may be left empty.
pub(super) const fn optional(kind: Kind, least: f64, most: f64) -> Form {
    Form::Quantity { kind, least, most, optional: true }
}

/// A list entry.
pub(super) const fn choice(key: &'static str, name: &'static str) -> Choice {
    Choice { key, name }
}
