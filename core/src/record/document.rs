//! Records as documents: `{"jaw_records": 2, "records": [{"id": …, "name": …, "borings": [{"id": …, "date": …}],
//! "photos": [{"id": …, "image": "data:image/jpeg;base64,…"}], "earlier": [{…}]}]}`. Borings and photos are records of
//! the same shape. In version 1 borings had no id; theirs is made from what is in them, wherever that is read.

use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::{Fields, IMAGE, LONGEST_TEXT, Record, Records, is_picture, text_of, to_text};
use crate::setup::{Document, digest};
use crate::text::Text;

/// Version of the file's shape. It rises when an older page could misread a newer file.
pub const FILE_VERSION: &str = "2";
/// Versions that are read.
const READABLE: [&str; 2] = ["1", FILE_VERSION];
/// Largest file that is read, in bytes: some hundred records with a photo each.
pub const LARGEST_FILE: usize = 134_217_728;

const OPENING: &str = "jaw_records";
const ID: &str = "id";

/// A record that was not taken over, and why. It is still in the file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    /// Its name or its place in the file.
    pub which: Text,
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
            Some(Document::Number(version)) if READABLE.contains(&version.as_str()) => {}
            Some(_) => return Err("A newer page wrote it: open it there."),
            None => return Err("It is no file of jaw records."),
        }
        let Some(Document::List(listed)) = file.get("records") else { return Err("It has no list of records.") };
        let (mut records, mut refused) = (Self::default(), Vec::new());
        for (at, one) in listed.iter().enumerate() {
            let read = Record::from_document(one).and_then(|(id, record)| {
                if id.is_empty() { Err((record.get("name").into(), "It has no id.")) } else { Ok((id, record)) }
            });
            match read {
                Ok((id, record)) => {
                    let mut single = Self::default();
                    single.put(id, record);
                    // The same id twice in one file is two versions.
                    records.merge(single);
                }
                Err((name, why)) => {
                    let which = if name.is_empty() { Text::of("Number {}").with(at + 1) } else { Text::Typed(name) };
                    refused.push(Refused { which, why });
                }
            }
        }
        Ok((records, refused))
    }

    /// The records in the shape that [`Records::from_document`] reads.
    #[must_use]
    pub fn to_document(&self) -> Document {
        let records = self.to_list();
        let mut file = BTreeMap::new();
        file.insert(OPENING.to_string(), Document::Number(FILE_VERSION.to_string()));
        file.insert("records".to_string(), Document::List(records));
        Document::Group(file)
    }

    fn to_list(&self) -> Vec<Document> {
        self.0.iter().map(|(id, record)| record.to_document(id)).collect()
    }
}

impl Record {
    /// Reads one record and its id; empty if it has none.
    ///
    /// # Errors
    /// Its name, as far as it has one, and why it cannot be taken over whole.
    pub fn from_document(document: &Document) -> Result<(String, Self), (String, &'static str)> {
        let Document::Group(all) = document else { return Err((String::new(), "It is no record.")) };
        let refuse = |why| (text_of(all, "name").chars().take(60).collect(), why);
        let (mut id, mut record) = ("", Self::default());
        for (name, value) in all {
            if !sound(value) {
                return Err(refuse("Something in it is too long, too deep, or of a kind no record has."));
            }
            match (name.as_str(), value) {
                // A stroke parts the id of a record from that of what is in it.
                (ID, Document::Text(text)) if !text.contains('/') => id = text,
                ("borings", Document::List(list)) => record.borings = children(list).map_err(refuse)?,
                ("photos", Document::List(list)) => record.photos = children(list).map_err(refuse)?,
                ("earlier", Document::List(list)) => {
                    for version in list {
                        let Document::Group(fields) = version else {
                            return Err(refuse("One of its earlier versions is no record."));
                        };
                        record.earlier.push(fields.clone());
                    }
                }
                (ID | "borings" | "photos" | "earlier", _) => {
                    return Err(refuse("Its id, borings, photos or earlier versions are malformed."));
                }
                (IMAGE, picture) if !matches!(picture, Document::Text(text) if text.is_empty() || is_picture(text)) => {
                    return Err(refuse("One of its photos is no JPEG picture, or too large."));
                }
                _ => drop(record.fields.insert(name.clone(), value.clone())),
            }
        }
        // Merged with itself it is in order, however it was written.
        let mut ordered = Self { fields: record.fields.clone(), ..Self::default() };
        ordered.merge(record);
        Ok((id.to_string(), ordered))
    }

    /// The record with its id.
    #[must_use]
    pub fn to_document(&self, id: &str) -> Document {
        let mut fields = self.fields.clone();
        fields.insert(ID.to_string(), Document::Text(id.to_string()));
        let mut list = |name: &str, items: Vec<Document>| {
            if !items.is_empty() {
                fields.insert(name.to_string(), Document::List(items));
            }
        };
        list("borings", self.borings.to_list());
        list("photos", self.photos.to_list());
        list("earlier", self.earlier.iter().cloned().map(Document::Group).collect());
        Document::Group(fields)
    }
}

/// The borings or photos of a record.
fn children(list: &[Document]) -> Result<Records, &'static str> {
    let mut children = Records::default();
    for one in list {
        let (id, child) = Record::from_document(one).map_err(|(_, why)| why)?;
        let id = if id.is_empty() { id_of(&child.fields) } else { id };
        let mut single = Records::default();
        single.put(id, child);
        children.merge(single);
    }
    Ok(children)
}

/// The id of what was written without one.
fn id_of(fields: &Fields) -> String {
    format!("{:08x}", digest(to_text(&Document::Group(fields.clone())).as_bytes()))
}

/// Whether it can be kept as it came. Whoever makes a document bounds its depth, so this recursion is bounded too.
fn sound(value: &Document) -> bool {
    match value {
        Document::Nothing => true,
        Document::Text(text) | Document::Number(text) => text.len() <= LONGEST_TEXT || is_picture(text),
        Document::Strange(_) => false,
        Document::List(items) => items.iter().all(sound),
        Document::Group(fields) => fields.values().all(sound),
    }
}
