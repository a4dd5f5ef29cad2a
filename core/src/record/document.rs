//! Records as documents: `{"jaw_records": 1, "records": [{"id": …, "name": …, "borings": [{…}], "earlier": [{…}]}]}`.

use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::{LONGEST_TEXT, Record, Records, merge, text_of};
use crate::setup::Document;

/// Version of the file's shape. It rises when an older page could misread a newer file.
pub const FILE_VERSION: &str = "1";
/// Largest file that is read, in bytes: some thousand records.
pub const LARGEST_FILE: usize = 16_777_216;

const OPENING: &str = "jaw_records";
const ID: &str = "id";

/// A record that was not taken over, and why. It is still in the file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    /// Its name or its place in the file.
    pub which: String,
    /// Why, in words.
    pub why: &'static str,
}

impl Records {
    /// Reads records and tells which could not be taken over. Unknown fields are kept as they are.
    ///
    /// # Errors
    /// In words, when it is no file of records, or a newer one.
    ///
    /// ```
    /// use holdround_core::record::{Record, Records};
    /// let mut records = Records::default();
    /// let mut record = Record::default();
    /// record.set("name", "Sleeve jaws", "2027-03-01T12:00:00.000Z");
    /// records.put("a1".into(), record);
    /// assert_eq!(Records::from_document(&records.to_document()), Ok((records, Vec::new())));
    /// ```
    pub fn from_document(document: &Document) -> Result<(Self, Vec<Refused>), &'static str> {
        let Document::Group(file) = document else { return Err("It is no file of jaw records.") };
        match file.get(OPENING) {
            Some(Document::Number(version)) if version == FILE_VERSION => {}
            Some(_) => return Err("A newer page wrote it: open it there."),
            None => return Err("It is no file of jaw records."),
        }
        let Some(Document::List(listed)) = file.get("records") else { return Err("It has no list of records.") };
        let (mut records, mut refused) = (Self::default(), Vec::new());
        for (at, one) in listed.iter().enumerate() {
            match Record::from_document(one) {
                Ok((id, record)) => {
                    let mut single = Self::default();
                    single.put(id, record);
                    // The same id twice in one file is two versions.
                    records.merge(single);
                }
                Err((name, why)) => {
                    let which = if name.is_empty() { format!("Number {}", at + 1) } else { name };
                    refused.push(Refused { which, why });
                }
            }
        }
        Ok((records, refused))
    }

    /// The records in the shape that [`Records::from_document`] reads.
    #[must_use]
    pub fn to_document(&self) -> Document {
        let records = self.0.iter().map(|(id, record)| record.to_document(id)).collect();
        let mut file = BTreeMap::new();
        file.insert(OPENING.to_string(), Document::Number(FILE_VERSION.to_string()));
        file.insert("records".to_string(), Document::List(records));
        Document::Group(file)
    }
}

impl Record {
    /// Reads one record and its id.
    ///
    /// # Errors
    /// Its name, as far as it has one, and why it cannot be taken over whole.
    pub fn from_document(document: &Document) -> Result<(String, Self), (String, &'static str)> {
        let Document::Group(all) = document else { return Err((String::new(), "It is no record.")) };
        let refuse = |why| Err((text_of(all, "name").chars().take(60).collect(), why));
        let (mut id, mut record, mut earlier) = ("", Self::default(), Vec::new());
        for (name, value) in all {
            if !sound(value) {
                return refuse("Something in it is too long, too deep, or of a kind no record has.");
            }
            let list = match (name.as_str(), value) {
                (ID, Document::Text(text)) => {
                    id = text;
                    continue;
                }
                ("borings", Document::List(list)) => (list, &mut record.borings),
                ("earlier", Document::List(list)) => (list, &mut earlier),
                (ID | "borings" | "earlier", _) => return refuse("Its id, borings or earlier versions are not such."),
                _ => {
                    record.fields.insert(name.clone(), value.clone());
                    continue;
                }
            };
            for item in list.0 {
                let Document::Group(fields) = item else {
                    return refuse("One of its borings or versions is not such.");
                };
                merge::unite(list.1, fields.clone());
            }
        }
        if id.is_empty() {
            return refuse("It has no id.");
        }
        record.merge(Self { fields: record.fields.clone(), earlier, ..Self::default() });
        Ok((id.to_string(), record))
    }

    /// The record with its id.
    #[must_use]
    pub fn to_document(&self, id: &str) -> Document {
        let mut fields = self.fields.clone();
        fields.insert(ID.to_string(), Document::Text(id.to_string()));
        for (name, list) in [("borings", &self.borings), ("earlier", &self.earlier)] {
            if !list.is_empty() {
                fields.insert(name.to_string(), Document::List(list.iter().cloned().map(Document::Group).collect()));
            }
        }
        Document::Group(fields)
    }
}

/// Whether it can be kept as it came. Whoever makes a document bounds its depth, so this recursion is bounded too.
fn sound(value: &Document) -> bool {
    match value {
        Document::Nothing => true,
        Document::Text(text) | Document::Number(text) => text.len() <= LONGEST_TEXT,
        Document::Strange(_) => false,
        Document::List(items) => items.iter().all(sound),
        Document::Group(fields) => fields.values().all(sound),
    }
}
