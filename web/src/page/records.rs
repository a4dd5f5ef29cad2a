//! The jaw records on the page: what is kept, what is done to them, and their file.

use std::mem;

use holdround_core::quantity::Kind;
use holdround_core::record::{BORING_FIELDS, Fate, Fields, IMAGE, LARGEST_FILE, Record, Records, put, reuse, to_text};
use holdround_core::setup::{Entries, jaw_inputs};
use js_sys::{Date, Math};
use web_sys::{Blob, FileReader, HtmlInputElement, IdbDatabase};

use super::desk::Desk;
use super::hand_out::file_address;
use super::notice::{Notice, tell};
use super::records_store::{self, Changes};
use super::{Page, opening, with_page};
use crate::view::records as records_view;
use crate::{document, root};

/// What is to be done where the browser keeps no records.
const NOT_KEPT: &str = "This browser did not keep the jaw records: it is full, or keeps nothing for this page, as in a private window or a frame. Save them as a file before you close the page; their text, without photos, is here as well.";

/// What is to be done where a newer page has the jaw records.
const TAKEN: &str = "A newer version of this page has the jaw records, in another window or since your last visit. Load this page again to use it. Until then nothing of what is there is changed, and what you change here is not kept.";

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
    database: Option<IdbDatabase>,
    /// Texts known to be in the store, by id.
    stored: Vec<(String, String)>,
    changed: Vec<String>,
}

impl Shelf {
    /// Something of the record `id` is to be kept.
    fn change(&mut self, id: &str) {
        if !self.changed.iter().any(|changed| changed == id) {
            self.changed.push(id.to_owned());
        }
    }

    /// What is kept at `at`: a record, or one of its borings or photos.
    fn at(&mut self, at: &str) -> Option<&mut Record> {
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

    /// Takes over what a file holds.
    pub(super) fn import(&mut self, text: &str) {
        let too_long = text.len() > LARGEST_FILE;
        let document = if too_long { None } else { document::read(text) };
        let says = match document.as_ref().ok_or("It is not JSON, or too large.").and_then(Records::from_document) {
            Err(why) => format!("The file was not taken over. {why}"),
            Ok((records, refused)) => {
                for (id, _) in &records.0 {
                    self.shelf.change(id);
                }
                let report = self.shelf.records.merge(records);
                self.tell_fates(&report.fates);
                let mut says = format!(
                    "From the file: {} new, {} with something new, {} the same.",
                    report.added, report.changed, report.same
                );
                for one in refused {
                    says = format!("{says} Not taken over: {}. {}", one.which, one.why);
                }
                says
            }
        };
        self.desk.notices.push(Notice::new(says));
        self.shelve();
        self.show_shelf();
    }

    /// Tells what became of what is deleted in one place and not in the other.
    pub(super) fn tell_fates(&mut self, fates: &[(Fate, String)]) {
        for (fate, words) in [
            (Fate::Gone, "Deleted, because it was deleted elsewhere:"),
            (Fate::Back, "Deleted here, but changed elsewhere since, so it is back:"),
            (Fate::StaysDeleted, "Not taken back, because it was deleted here:"),
            (Fate::StaysHere, "Deleted elsewhere, but changed here since, so it stays:"),
        ] {
            let mut says = String::new();
            for (_, name) in fates.iter().filter(|(known, _)| *known == fate) {
                says.push_str(if says.is_empty() { words } else { ";" });
                says.push(' ');
                says.push_str(name);
            }
            if !says.is_empty() {
                tell(&mut self.desk.notices, Notice::new(says));
            }
        }
    }

    /// Puts all records behind the link that is about to be followed.
    fn offer_file(&mut self) {
        let text = to_text(&self.shelf.records.to_document());
        if text.len() > LARGEST_FILE {
            let says = "The file is larger than this page takes over again. Delete photos, and save it once more.";
            tell(&mut self.desk.notices, Notice::new(says));
            self.show();
        }
        if let (Ok(address), Some(link)) = (file_address(&text), root::by_id("records-save")) {
            let _set = link.set_attribute("href", &address);
        }
    }
}

/// Tells the styles what goes on paper: the sheet, or what is named.
pub(super) fn show_for_print(what: &str) {
    if let Some(whole) = root::document().and_then(|document| document.document_element()) {
        let _set = whole.set_attribute("data-print", what);
    }
}

/// Reads the file that was chosen.
pub(super) fn read_file(field: &HtmlInputElement) {
    let Some(file) = field.files().and_then(|files| files.get(0)) else { return };
    // The same file may be chosen again.
    field.set_value("");
    read_text(&file, |text| with_page(|page| page.import(&text)));
}

/// Reads `file` as text and hands that on.
pub(super) fn read_text(file: &Blob, take: impl FnOnce(String) + 'static) {
    let Ok(reader) = FileReader::new() else { return };
    let read = reader.clone();
    let hand_on = move || take(read.result().ok().and_then(|text| text.as_string()).unwrap_or_default());
    let _begun = records_store::when(&reader, "loadend", Box::new(hand_on)).and_then(|()| reader.read_as_text(file));
}

/// The time, as records have it.
pub(super) fn now() -> String {
    Date::new_0().to_iso_string().into()
}

/// An id that nothing else has.
pub(super) fn new_id() -> String {
    let chance = || (Math::random() * 4_294_967_296.0) as u32;
    format!("{:08x}{:08x}{:08x}", chance(), chance(), chance())
}

/// A record of the jaws on the desk, and its id.
fn of_desk(desk: &Desk) -> (String, Record) {
    let (now, entries) = (now(), &desk.entries);
    let mut record = Record::default();
    let value = |finding: &str| {
        let (_, findings) = desk.good.as_ref()?;
        let finding = findings.get(finding)?;
        finding.value.as_ref().ok().map(|value| desk.units.show(finding.kind, *value))
    };
    let name = entries.get("job.name").unwrap_or("Jaws");
    let material = entries.text_or_default(jaw_inputs::JAW_MATERIAL.path, &jaw_inputs::JAW_MATERIAL);
    record.set("name", name, &now);
    let material = holdround_core::materials::find(material).map_or(material, |material| material.name);
    record.set("material", material, &now);
    record.set("tooth", &value("stroke.tooth").unwrap_or_default(), &now);
    record.set("recuts", &value("recut.left").unwrap_or_default(), &now);
    record.set("link", &entries.to_link(), &now);
    (new_id(), record)
}

/// What would be written of a boring today, as the set-up on the desk has it.
pub(crate) fn boring_of_desk(desk: &Desk) -> Fields {
    let mut boring = Fields::new();
    let entries = &desk.entries;
    let date: String = now().chars().take(10).collect();
    put(&mut boring, "date", &date);
    let gripped = || {
        let (setup, _) = desk.good.as_ref()?;
        Some(desk.units.show(Kind::Length, 2.0 * setup.gripped_radius()))
    };
    let diameter = entries.get("jaws.bored_diameter").map(str::to_owned).or_else(gripped);
    put(&mut boring, "diameter", &diameter.unwrap_or_default());
    let pressure = entries.text_or_default(jaw_inputs::PRESSURE.path, &jaw_inputs::PRESSURE);
    put(&mut boring, "pressure", entries.get("jaws.boring_pressure").unwrap_or(pressure));
    put(&mut boring, "taper", entries.text_or_default(jaw_inputs::TAPER.path, &jaw_inputs::TAPER));
    boring
}

/// The boring as it stands in the fields of the record `id`.
fn typed_boring(id: &str) -> Record {
    let mut boring = Record::default();
    for field in BORING_FIELDS {
        let typed = root::by_id_as::<HtmlInputElement>(&format!("boring-{}-{id}", field.key));
        boring.set(field.key, typed.map(|typed| typed.value()).unwrap_or_default().trim(), &now());
    }
    boring
}
