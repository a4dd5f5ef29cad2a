//! Jaw records: what a shop keeps of a set of jaws, so that they come back next year and need almost nothing.
//!
//! A record holds fields of text by name, the borings of the jaws and photos of them, which are records of their own,
//! and earlier versions of its fields. Fields this page does not know are kept as they came, so that an older page
//! loses nothing of a newer one's. Records of two places are merged without loss: the newest fields hold, others become
//! earlier versions. What is deleted stays as a mark, so that an older file does not bring it back.
//!
//! ```
//! use holdround_core::recut::Outlook;
//! use holdround_core::record::{BORING_FIELDS, Fate, Field, FIELDS, Record, Records, Refused, Report, Reuse, reuse};
//! use holdround_core::setup::{Document, Entries};
//!
//! // A set of jaws, bored once.
//! let [march, april] = ["2027-03-01T12:00:00.000Z", "2027-04-01T12:00:00.000Z"];
//! let mut boring = Record::default();
//! let fields: Vec<&Field> = BORING_FIELDS.iter().chain(FIELDS).collect();
//! assert!(fields.iter().any(|field| field.key == "diameter"));
//! boring.set("diameter", "100 mm", march);
//! let mut jaws = Record::default();
//! jaws.set("name", "Sleeve jaws", march);
//! jaws.borings.put("b1".into(), boring);
//! assert!(jaws.title().contains("Sleeve jaws") && jaws.setup().is_none(), "no set-up is kept with them");
//! assert_eq!((jaws.bored().len(), jaws.last_boring().unwrap().get("diameter")), (1, "100 mm"));
//!
//! // What the record has is taken over into the job on hand, and judged against it.
//! let entries = jaws.taken_over(&Entries::default(), Some(true));
//! let Reuse { bored, stock, outlook, .. } = reuse(&jaws, &entries).unwrap();
//! assert!((bored - 0.1).abs() < 1e-12);
//! assert_eq!(outlook == Outlook::TooLarge, stock < 0.0);
//!
//! // Deleted here, changed elsewhere since: it is back.
//! let mut here = Records::default();
//! here.put("a1".into(), jaws.clone());
//! let mut elsewhere = here.clone();
//! here.get_mut("a1").unwrap().delete();
//! assert_eq!((here.that_are(true).count(), here.that_are(false).count()), (1, 0));
//! elsewhere.get_mut("a1").unwrap().touch(april);
//! let Report { fates, .. } = here.merge(elsewhere);
//! assert_eq!(fates[0].0, Fate::Back);
//! jaws.delete();
//! jaws.restore(april);
//! assert!(!jaws.is_deleted());
//!
//! // A record that cannot be read is named, and the others are taken over.
//! let document = Document::from_json(r#"{"jaw_records": 2, "records": [{"id": "a1", "name": 7}]}"#).unwrap();
//! let (read, refused): (Records, Vec<Refused>) = Records::from_document(&document)?;
//! assert_eq!(read.0.len() + refused.len(), 1);
//! # Ok::<(), &'static str>(())
//! ```

mod document;
mod field;
mod merge;
mod reuse;
mod text;

pub use document::{FILE_VERSION, LARGEST_FILE, Refused};
pub use field::{BORING_FIELDS, FIELDS, Field, LONGEST_IMAGE, LONGEST_TEXT, is_picture};
pub use merge::{Fate, Report};
pub use reuse::{Reuse, reuse};
pub use text::to_text;

use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::setup::Document;
use crate::text::Text;

/// Values by name.
pub type Fields = BTreeMap<String, Document>;

/// Name of the field that says when the record was last changed.
pub const CHANGED: &str = "changed";
/// Name of the field that says whether it is deleted.
pub const DELETED: &str = "deleted";
/// Name of a photo's picture. Only what holds now has one: in earlier versions and deleted photos it is empty.
pub const IMAGE: &str = "image";

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

    /// Those that are deleted, or those that are not.
    pub fn that_are(&self, deleted: bool) -> impl Iterator<Item = &(String, Record)> {
        self.0.iter().filter(move |(_, record)| record.is_deleted() == deleted)
    }
}

/// What is kept of one set of jaws; or of one boring of theirs, or one photo.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Record {
    /// What holds now.
    pub fields: Fields,
    /// Each time they were bored.
    pub borings: Records,
    /// Photos of them.
    pub photos: Records,
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
        self.touch(now);
    }

    /// Something of it was changed just now. A clock that was put back does not make it older than it was.
    pub fn touch(&mut self, now: &str) {
        let stamp = if self.get(CHANGED) < now { now.to_string() } else { after(self.get(CHANGED)) };
        put(&mut self.fields, CHANGED, &stamp);
    }

    /// Deletes it: a mark stays. It is no newer than what was deleted, so that a change made elsewhere, which whoever
    /// deleted it had not seen, is not lost but brings it back. A photo's picture goes.
    ///
    /// ```
    /// use holdround_core::record::{Record, Records};
    /// let mut record = Record::default();
    /// record.set("name", "Sleeve jaws", "2027-03-01T12:00:00.000Z");
    /// let mut old = Records::default();
    /// old.put("a1".into(), record.clone());
    /// record.delete();
    /// let mut here = Records::default();
    /// here.put("a1".into(), record);
    /// here.merge(old);
    /// assert!(here.get("a1").unwrap().is_deleted(), "an older file does not bring it back");
    /// ```
    pub fn delete(&mut self) {
        put(&mut self.fields, DELETED, "yes");
        without_image(&mut self.fields);
    }

    /// Brings it back.
    pub fn restore(&mut self, now: &str) {
        self.set(DELETED, "", now);
    }

    /// Whether it is deleted.
    #[must_use]
    pub fn is_deleted(&self) -> bool {
        is_deleted(&self.fields)
    }

    /// What to call it.
    #[must_use]
    pub fn title(&self) -> Text {
        let name = self.get("name");
        let title =
            if name.is_empty() { format!("{} {}", self.get("date"), self.get("diameter")) } else { name.into() };
        if title.trim().is_empty() { "one without a name".into() } else { Text::Typed(title) }
    }

    /// The borings that are not deleted, in order of date.
    #[must_use]
    pub fn bored(&self) -> Vec<(&str, &Self)> {
        let mut bored: Vec<(&str, &Self)> = Vec::new();
        for (id, boring) in self.borings.that_are(false) {
            let later = |(_, there): &(&str, &Self)| there.get("date") > boring.get("date");
            let place = bored.iter().position(later).unwrap_or(bored.len());
            bored.insert(place, (id, boring));
        }
        bored
    }

    /// The last boring.
    #[must_use]
    pub fn last_boring(&self) -> Option<&Self> {
        self.bored().last().map(|(_, boring)| *boring)
    }
}

fn is_deleted(fields: &Fields) -> bool {
    !text_of(fields, DELETED).is_empty()
}

fn without_image(fields: &mut Fields) {
    if fields.contains_key(IMAGE) {
        put(fields, IMAGE, "");
    }
}

/// A stamp that sorts after `stamp`, whatever that is: its digits count one up.
fn after(stamp: &str) -> String {
    let mut counted = stamp.as_bytes().to_vec();
    let Some(last) = counted.iter().rposition(|byte| (b'0'..=b'8').contains(byte)) else { return format!("{stamp}1") };
    for (at, byte) in counted.iter_mut().enumerate().skip(last).filter(|(_, byte)| byte.is_ascii_digit()) {
        *byte = if at == last { *byte + 1 } else { b'0' };
    }
    String::from_utf8(counted).unwrap_or_default()
}

/// The text at `name`; empty if there is none.
///
/// ```
/// use holdround_core::record::{Fields, put, text_of};
/// let mut fields = Fields::new();
/// put(&mut fields, "tooth", "4");
/// assert_eq!((text_of(&fields, "tooth"), text_of(&fields, "ring")), ("4", ""));
/// ```
#[must_use]
pub fn text_of<'a>(fields: &'a Fields, name: &str) -> &'a str {
    match fields.get(name) {
        Some(Document::Text(text) | Document::Number(text)) => text,
        _ => "",
    }
}

/// Writes `text` at `name`.
///
/// ```
/// use holdround_core::record::{Fields, put, text_of};
/// let mut fields = Fields::new();
/// put(&mut fields, "tooth", "4");
/// put(&mut fields, "tooth", "5");
/// assert_eq!((fields.len(), text_of(&fields, "tooth")), (1, "5"));
/// ```
pub fn put(fields: &mut Fields, name: &str, text: &str) {
    fields.insert(name.to_string(), Document::Text(text.to_string()));
}

#[cfg(all(test, feature = "json"))]
mod tests;
