//! Jaw records: what a shop keeps of a set of jaws, so that they come back next year and need almost nothing.
//!
//! A record holds fields of text by name, the borings of the jaws, and earlier versions of its fields. Fields this page
//! does not know are kept as they came, so that an older page loses nothing of a newer one's. Records of two places
//! are merged without loss: the newest fields hold, others become earlier versions, borings are united.

mod document;
mod field;
mod merge;
mod reuse;
mod text;

pub use document::{FILE_VERSION, LARGEST_FILE, Refused};
pub use field::{BORING_FIELDS, FIELDS, Field, LONGEST_TEXT};
pub use merge::Report;
pub use reuse::{Reuse, reuse};
pub use text::to_text;

use alloc::collections::BTreeMap;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::setup::Document;

/// Values by name.
pub type Fields = BTreeMap<String, Document>;

/// Name of the field that says when the record was last changed.
pub const CHANGED: &str = "changed";

/// Records, each with its id, in order of id.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Records(pub Vec<(String, Record)>);

impl Records {
    /// The record with this id.
    #[must_use]
    pub fn get(&self, id: &str) -> Option<&Record> {
        self.0.iter().find(|(known, _)| known == id).map(|(_, record)| record)
    }

    /// The record with this id, to be changed.
    pub fn get_mut(&mut self, id: &str) -> Option<&mut Record> {
        self.0.iter_mut().find(|(known, _)| known == id).map(|(_, record)| record)
    }

    /// Puts a record under an id, in place of any that is there.
    pub fn put(&mut self, id: String, record: Record) {
        match self.get_mut(&id) {
            Some(there) => *there = record,
            None => {
                let place = self.0.iter().position(|(known, _)| *known > id).unwrap_or(self.0.len());
                self.0.insert(place, (id, record));
            }
        }
    }

    /// Takes the record with this id out.
    pub fn take(&mut self, id: &str) -> Option<Record> {
        let place = self.0.iter().position(|(known, _)| known == id)?;
        Some(self.0.remove(place).1)
    }
}

/// What is kept of one set of jaws.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Record {
    /// What holds now.
    pub fields: Fields,
    /// Each time they were bored, in order of date, as fields by name.
    pub borings: Vec<Fields>,
    /// What the fields were before, where a merge found them to differ.
    pub earlier: Vec<Fields>,
}

impl Record {
    /// The text of a field; empty if there is none.
    #[must_use]
    pub fn get(&self, name: &str) -> &str {
        text_of(&self.fields, name)
    }

    /// Writes a field, and when it was written: UTC as `2027-03-01T12:00:00.000Z`, so that later sorts after earlier.
    ///
    /// ```
    /// use holdround_core::record::Record;
    /// let mut record = Record::default();
    /// record.set("name", "Sleeve jaws", "2027-03-01T12:00:00.000Z");
    /// assert_eq!(record.get("name"), "Sleeve jaws");
    /// assert_eq!(record.get("tooth"), "");
    /// ```
    pub fn set(&mut self, name: &str, text: &str, now: &str) {
        put(&mut self.fields, name, text);
        put(&mut self.fields, CHANGED, now);
    }

    /// Adds a boring, in order of date; one that is there already is not added again.
    pub fn add_boring(&mut self, boring: Fields) {
        merge::unite(&mut self.borings, boring);
    }

    /// The last boring.
    #[must_use]
    pub fn last_boring(&self) -> Option<&Fields> {
        self.borings.last()
    }
}

/// The text at `name`; empty if there is none.
#[must_use]
pub fn text_of<'a>(fields: &'a Fields, name: &str) -> &'a str {
    match fields.get(name) {
        Some(Document::Text(text) | Document::Number(text)) => text,
        _ => "",
    }
}

/// Writes `text` at `name`.
pub fn put(fields: &mut Fields, name: &str, text: &str) {
    fields.insert(name.to_string(), Document::Text(text.to_string()));
}

#[cfg(all(test, feature = "json"))]
mod tests;
