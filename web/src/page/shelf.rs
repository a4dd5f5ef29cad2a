//! The jaw records as the page has them, and how it stands with the store.

use holdround_core::record::{IMAGE, Record, Records};
use holdround_core::setup::Entries;
use web_sys::IdbDatabase;

/// How it stands with the store.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum State {
    /// It has not answered yet.
    #[default]
    Opening,
    /// All there is, is in it.
    Kept,
    /// Something is on its way into it.
    Keeping,
    /// It takes nothing.
    Refused,
}

/// The jaw records.
#[derive(Debug, Default)]
pub(crate) struct Shelf {
    /// Every record.
    pub(crate) records: Records,
    /// How it stands with the store.
    pub(crate) state: State,
    /// Whether something was deleted since the page was opened.
    pub(crate) deletes: bool,
    /// A photo that was deleted: the record it is of, its id and its picture.
    pub(crate) deleted_photo: Option<(String, String, String)>,
    /// Whose label is shown.
    pub(crate) label: String,
    /// The store, once it has answered.
    pub(super) database: Option<IdbDatabase>,
    /// Texts known to be in the store, by id.
    pub(super) stored: Vec<(String, String)>,
    /// Ids of records that are still to be kept.
    pub(super) changed: Vec<String>,
}

impl Shelf {
    /// Something of the record `id` is to be kept.
    pub(super) fn change(&mut self, id: &str) {
        if !self.changed.iter().any(|changed| changed == id) {
            self.changed.push(id.to_owned());
        }
    }

    /// What is kept at `at`: a record, or one of its borings or photos.
    pub(super) fn at(&mut self, at: &str) -> Option<&mut Record> {
        match at.split_once('/') {
            None => self.records.get_mut(at),
            Some((id, child)) => {
                let record = self.records.get_mut(id)?;
                if record.borings.get(child).is_some() {
                    record.borings.get_mut(child)
                } else {
                    record.photos.get_mut(child)
                }
            }
        }
    }

    /// The name of a record that holds this set-up; empty if none does.
    pub(crate) fn that_holds(&self, entries: &Entries) -> &str {
        let mut records = self.records.that_are(false);
        records
            .find(|(_, record)| record.setup().as_ref() == Some(entries))
            .map_or("", |(_, record)| record.get("name"))
    }

    /// The picture of the photo at `at`.
    pub(super) fn picture(&self, at: &str) -> Option<&str> {
        let (id, photo) = at.split_once('/')?;
        Some(self.records.get(id)?.photos.get(photo)?.get(IMAGE))
    }

    /// The text of the record `id` that is known to be in the store.
    pub(super) fn stored(&self, id: &str) -> String {
        self.stored.iter().find(|(kept, _)| kept == id).map_or_else(String::new, |(_, text)| text.clone())
    }

    /// The record that was `handed` over is on its way into the store, merged with what was there, under this text.
    pub(super) fn known(&mut self, id: String, handed: &Record, record: Record, text: String) {
        // What was changed since is newer, and is merged when it is kept in its turn.
        if self.records.get(&id) == Some(handed) {
            self.records.put(id.clone(), record);
        }
        self.stored.retain(|(known, _)| *known != id);
        self.stored.push((id, text));
    }
}
