//! What is done to the jaw records on the page, and how they get into the store.

use std::mem;

use holdround_core::record::{IMAGE, Records, reuse, to_text};
use holdround_core::setup::Entries;
use web_sys::IdbDatabase;

use super::notice::{Notice, tell};
use super::record_of_desk::{of_desk, typed_boring};
use super::records_store::{self, Changes};
use super::shelf::State;
use super::stamp::{new_id, now};
use super::{Page, opening};
use crate::root;
use crate::view::records as records_view;

/// What is to be done where the browser keeps no records.
const NOT_KEPT: &str = "This browser did not keep the jaw records: it is full, or keeps nothing for this page, as in a private window or a frame. Save them as a file before you close the page; their text, without photos, is here as well.";

/// What is to be done where a newer page has the jaw records.
const TAKEN: &str = "A newer version of this page has the jaw records, in another window or since your last visit. Load this page again to use it. Until then nothing of what is there is changed, and what you change here is not kept.";

impl Page {
    /// What the store had.
    pub(super) fn shelf_opened(&mut self, database: IdbDatabase, texts: Vec<String>) {
        let shelf = &mut self.shelf;
        (shelf.database, shelf.state) = (Some(database), State::Kept);
        for text in texts {
            match records_store::read(&text) {
                Some((id, record)) => {
                    let mut one = Records::default();
                    one.put(id.clone(), record);
                    shelf.records.merge(one);
                    shelf.stored.push((id, text));
                }
                None => tell(
                    &mut self.desk.notices,
                    Notice::about("A kept jaw record cannot be read. It stays kept.", text),
                ),
            }
        }
        self.shelve();
        self.show_shelf();
    }

    /// All that was handed to the store is in it.
    pub(super) fn shelf_kept(&mut self) {
        if self.shelf.changed.is_empty() && self.shelf.state == State::Keeping {
            self.shelf.state = State::Kept;
        }
        self.show_shelf_state();
    }

    fn show_shelf_state(&mut self) {
        self.regions.show("records-told", records_view::state(&self.shelf));
    }

    /// The store takes nothing: that is told once there is something to keep.
    pub(super) fn shelf_refused(&mut self) {
        self.shelf.state = State::Refused;
        if !self.shelf.records.0.is_empty() {
            let mut records = self.shelf.records.clone();
            records.0.iter_mut().for_each(|(_, record)| record.photos = Records::default());
            let text = to_text(&records.to_document());
            self.desk.notices.retain(|notice| notice.says != NOT_KEPT);
            self.desk.notices.push(Notice::about(NOT_KEPT, text));
        }
        self.show_shelf();
    }

    /// A newer page has the store, or has written something in it that this one cannot read.
    pub(super) fn shelf_taken(&mut self) {
        self.shelf.database = None;
        tell(&mut self.desk.notices, Notice::new(TAKEN));
        self.shelf_refused();
    }

    pub(super) fn show_shelf(&mut self) {
        self.show();
        self.show_records();
    }

    /// Hands what has changed to the store.
    pub(super) fn shelve(&mut self) {
        let shelf = &mut self.shelf;
        if shelf.changed.is_empty() || shelf.state == State::Opening {
            return;
        }
        let changes: Changes = mem::take(&mut shelf.changed)
            .into_iter()
            .filter_map(|id| {
                let record = shelf.records.get(&id)?.clone();
                Some((id, record))
            })
            .collect();
        let handed_over =
            shelf.database.as_ref().is_some_and(|database| records_store::keep(database, changes).is_ok());
        if handed_over {
            shelf.state = State::Keeping;
        } else {
            self.shelf_refused();
        }
    }

    /// Something of the record `id`, or of what is in it, has changed: it is the newest.
    pub(super) fn record_changed(&mut self, id: &str) {
        if let Some(record) = self.shelf.records.get_mut(id) {
            record.touch(&now());
        }
        self.show_changed(id);
    }

    fn show_changed(&mut self, id: &str) {
        self.shelf.change(id);
        self.shelve();
        self.show_shelf();
    }

    /// A key in a field of a record or of one of its borings.
    pub(super) fn write_record(&mut self, at: &str, field: &str, text: &str) {
        let Some(record) = self.shelf.at(at).filter(|record| record.get(field) != text) else { return };
        record.set(field, text, &now());
        let (id, child) = at.split_once('/').unwrap_or((at, ""));
        if let (false, Some(record)) = (child.is_empty(), self.shelf.records.get_mut(id)) {
            record.touch(&now());
        }
        self.shelf.change(id);
        self.shelving.restart();
    }

    /// Does what a button about records asks for; `at` is the record it is about, or a boring or photo in it.
    pub(super) fn act_on_record(&mut self, what: &str, at: &str) {
        let id = at.split('/').next().unwrap_or_default();
        match what {
            "keep" => {
                let (id, record) = of_desk(&self.desk);
                self.shelf.records.put(id.clone(), record);
                self.record_changed(&id);
                return root::focus(&format!("record-name-{id}"));
            }
            "save" => return self.offer_file(),
            "label" => {
                self.shelf.label = if self.shelf.label == id { String::new() } else { id.to_owned() };
                return self.show_records();
            }
            "print" => {
                show_for_print("label");
                let _printed = web_sys::window().map(|window| window.print());
                return;
            }
            "undelete-photo" => {
                let Some((id, photo, picture)) = self.shelf.deleted_photo.take() else { return };
                return self.keep_photo(&id, photo, &picture);
            }
            _ => {}
        }
        let Some(record) = self.shelf.at(at) else { return };
        match what {
            "open" => {
                if let Some(entries) = record.setup() {
                    return self.take_entries(entries);
                }
            }
            "same" => {
                let entries = record.taken_over(&self.desk.entries, Some(true));
                return self.take_jaws_back(entries, "title-block");
            }
            "use" => {
                // Where it decides, the other button is for jaws that are mounted as before.
                let on_size = reuse(record, &self.desk.entries).is_some_and(|answer| answer.on_size);
                let entries = record.taken_over(&self.desk.entries, on_size.then_some(false));
                return self.take_jaws_back(entries, "in-recut.standing");
            }
            "renew" => record.set("link", &self.desk.entries.to_link(), &now()),
            "add" => {
                let boring = typed_boring(id);
                record.borings.put(new_id(), boring);
            }
            "delete" => {
                let picture = record.get(IMAGE).to_owned();
                record.delete();
                if let (false, Some((id, photo))) = (picture.is_empty(), at.split_once('/')) {
                    self.shelf.deleted_photo = Some((id.to_owned(), photo.to_owned(), picture));
                }
                if at == id {
                    self.shelf.deletes = true;
                    // A deletion is no newer than what it deletes.
                    return self.show_changed(id);
                }
            }
            "undelete" => record.restore(&now()),
            _ => return,
        }
        self.record_changed(id);
    }

    /// Keeps a photo of the jaws of the record `id`.
    pub(super) fn keep_photo(&mut self, id: &str, photo: String, picture: &str) {
        let Some(record) = self.shelf.records.get_mut(id) else { return };
        let mut kept = record.photos.get(&photo).cloned().unwrap_or_default();
        kept.set(IMAGE, picture, &now());
        if kept.is_deleted() {
            kept.restore(&now());
        }
        record.photos.put(photo, kept);
        self.record_changed(id);
    }

    /// Puts jaws that come back on the sheet, and gives the keyboard to what is to be looked at next.
    fn take_jaws_back(&mut self, entries: Entries, next: &str) {
        self.desk.open(entries);
        self.refresh();
        self.show_records();
        root::focus(next);
    }

    fn take_entries(&mut self, entries: Entries) {
        opening::replace(&mut self.desk, entries);
        self.refresh();
        self.show_records();
        root::focus("title-block");
    }
}

/// Tells the styles what goes on paper: the sheet, or what is named.
pub(super) fn show_for_print(what: &str) {
    if let Some(whole) = root::document().and_then(|document| document.document_element()) {
        let _set = whole.set_attribute("data-print", what);
    }
}
