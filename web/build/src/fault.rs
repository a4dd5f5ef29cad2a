//! What stopped a step, in words for the person at the terminal.

use std::fmt;

/// A reason in plain words; every error of the tool is turned into one.
#[derive(Debug)]
pub struct Fault {
    words: String,
    unchecked: bool,
}

/// What a step gives back.
pub type Outcome<T> = Result<T, Fault>;

impl Fault {
    /// A fault with these words.
    pub fn new(words: impl Into<String>) -> Self {
        Self { words: words.into(), unchecked: false }
    }

    /// Why something could not be checked, which is no fault of what was to be checked.
    pub fn unchecked(words: impl Into<String>) -> Self {
        Self { words: words.into(), unchecked: true }
    }

    /// Whether nothing is known for it could not be checked.
    pub const fn is_unchecked(&self) -> bool {
        self.unchecked
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words)
    }
}

impl<E: std::error::Error> From<E> for Fault {
    fn from(error: E) -> Self {
        Self::new(error.to_string())
    }
}

/// Says what was being done when an error came.
pub trait While<T> {
    /// Puts `doing` before the words of the error.
    ///
    /// # Errors
    /// The error it was called on, with the words in front.
    fn during(self, doing: impl fmt::Display) -> Outcome<T>;
}

impl<T, E: fmt::Display> While<T> for Result<T, E> {
    fn during(self, doing: impl fmt::Display) -> Outcome<T> {
        self.map_err(|error| Fault::new(format!("{doing}: {error}")))
    }
}
