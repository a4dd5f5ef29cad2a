//! Set-ups as JSON text.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use serde_json::Value;

use super::document::{Document, LARGEST_DOCUMENT};
use super::{Entries, Fault};
use crate::text::Text;

impl From<Value> for Document {
    /// The library bounds the depth of what it reads, so this recursion is bounded too.
    fn from(value: Value) -> Self {
        match value {
            Value::Null => Self::Nothing,
            Value::Bool(_) => Self::Strange(value.to_string()),
            Value::Number(number) => Self::Number(number.to_string()),
            Value::String(text) => Self::Text(text),
            Value::Array(items) => Self::List(items.into_iter().map(Self::from).collect()),
            Value::Object(fields) => {
                Self::Group(fields.into_iter().map(|(name, value)| (name, Self::from(value))).collect())
            }
        }
    }
}

impl Document {
    /// Reads JSON text; none if it is none.
    #[must_use]
    pub fn from_json(text: &str) -> Option<Self> {
        serde_json::from_str::<Value>(text).ok().map(Self::from)
    }
}

impl From<Document> for Value {
    fn from(document: Document) -> Self {
        match document {
            Document::Nothing => Self::Null,
            Document::Text(text) | Document::Strange(text) => Self::String(text),
            Document::Number(text) => text.parse().map_or(Self::Null, Self::Number),
            Document::List(items) => items.into_iter().map(Self::from).collect(),
            Document::Group(fields) => fields.into_iter().map(|(name, value)| (name, Self::from(value))).collect(),
        }
    }
}

impl Entries {
    /// Reads a set-up from JSON text. See [`Entries::from_document`].
    ///
    /// # Errors
    /// Every fault of form: no JSON, another schema version, unknown entries, wrong kinds of value.
    ///
    /// ```
    /// use holdround_core::setup::Entries;
    /// let entries = Entries::from_json(r#"{"schema": 1, "part": {"length": 30, "bore_diameter": "5 1/2 in"}}"#).unwrap();
    /// assert_eq!(entries.get("part.length"), Some("30"));
    /// let faults = Entries::from_json(r#"{"schema": 1, "part": {"colour": "red"}}"#).unwrap_err();
    /// assert_eq!(faults[0].path, "part.colour");
    /// ```
    pub fn from_json(text: &str) -> Result<Self, Vec<Fault>> {
        if text.len() > LARGEST_DOCUMENT {
            let reason = Text::of("{} bytes, more than {}").with(text.len()).with(LARGEST_DOCUMENT);
            return Err([Document::unreadable(reason)].into());
        }
        let value: Value = serde_json::from_str(text)
            .map_err(|error| [Document::unreadable(Text::of("not JSON ({})").with(Text::typed(error.to_string())))])?;
        Self::from_document(&value.into())
    }

    /// The set-up as JSON text, in the same shape that [`Entries::from_json`] reads.
    ///
    /// ```
    /// use holdround_core::setup::Entries;
    /// let mut entries = Entries::default();
    /// entries.set("cuts.0.feed", "0.2 mm/rev");
    /// let json = entries.to_json();
    /// assert_eq!(json, r#"{"cuts":[{"feed":"0.2 mm/rev"}],"schema":1}"#);
    /// assert_eq!(Entries::from_json(&json).unwrap(), entries);
    /// ```
    #[must_use]
    pub fn to_json(&self) -> String {
        Value::from(self.to_document()).to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::format;
    use alloc::vec;

    #[test]
    fn a_number_is_the_nearest_there_is_as_a_browser_reads_it() {
        for written in ["2.888888888888889e+75", "2.8888888888888887e+75", "0.1"] {
            let document = Document::from_json(written);
            assert_eq!(document, Some(Document::Number(written.to_string())), "{written} is read as it is written");
        }
    }

    #[test]
    fn junk_is_refused_in_words() {
        let deep = "[".repeat(10_000);
        let cases = vec![
            String::new(),
            "nonsense".to_string(),
            "[]".to_string(),
            "{}".to_string(),
            r#"{"schema": 2}"#.to_string(),
            r#"{"schema": "1"}"#.to_string(),
            r#"{"schema": 1, "part": 3}"#.to_string(),
            r#"{"schema": 1, "part": {"length": true}}"#.to_string(),
            r#"{"schema": 1, "part": {"length": {"value": 3}}}"#.to_string(),
            r#"{"schema": 1, "cuts": {"feed": 3}}"#.to_string(),
            format!(r#"{{"schema": 1, "part": {deep}"#),
            "x".repeat(LARGEST_DOCUMENT + 1),
        ];
        for text in cases {
            let faults = Entries::from_json(&text).unwrap_err();
            assert!(!faults.is_empty(), "{} is refused", text.chars().take(30).collect::<String>());
            for fault in faults {
                assert!(fault.to_string().len() < 400, "a fault stays one readable line: {fault}");
            }
        }
    }
}
