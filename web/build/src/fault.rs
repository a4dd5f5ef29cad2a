//! What stopped a step, in words for the person at the terminal.

use std::fmt;

/// A reason in plain words; every error of the tool is turned into one.
#[derive(Debug)]
pub struct Fault(String);

/// What a step gives back.
pub type Outcome<T> = Result<T, Fault>;

impl Fault {
    /// A fault with these words.
    pub fn new(words: impl Into<String>) -> Self {
        Self(words.into())
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl<E: std::error::Error> From<E> for Fault {
    fn from(error: E) -> Self {
        Self(error.to_string())
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
        self.map_err(|error| Fault(format!("{doing}: {error}")))
    }
}
