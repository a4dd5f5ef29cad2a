//! The file of jaw records: saved, and taken over.

use holdround_core::record::{Fate, LARGEST_FILE, Records, to_text};
use holdround_core::text::Text;
use web_sys::{Blob, FileReader, HtmlInputElement};

use super::hand_out::file_address;
use super::notice::{Notice, tell};
use super::{Page, records_store, with_page};
use crate::{document, root};

impl Page {
    /// Takes over what a file holds.
    pub(super) fn import(&mut self, text: &str) {
        let too_long = text.len() > LARGEST_FILE;
        let document = if too_long { None } else { document::read(text) };
        let says = match document.as_ref().ok_or("It is not JSON, or too large.").and_then(Records::from_document) {
            Err(why) => Text::of("Nothing was added from the file. {}").with(why),
            Ok((records, refused)) => {
                for (id, _) in &records.0 {
                    self.shelf.change(id);
                }
                let report = self.shelf.records.merge(records);
                self.tell_fates(&report.fates);
                let mut says = Text::of("From the file: {} new, {} with something new, {} the same.")
                    .with(report.added)
                    .with(report.changed)
                    .with(report.same);
                for one in refused {
                    let refused = Text::of("Not added: {}. {}").with(one.which).with(one.why);
                    says = says.then(" ").then(refused);
                }
                says
            }
        };
        self.desk.notices.push(Notice::new(says));
        self.shelve();
        self.show_shelf();
    }

    /// Tells what became of what is deleted in one place and not in the other.
    pub(super) fn tell_fates(&mut self, fates: &[(Fate, Text)]) {
        for (fate, words) in [
            (Fate::Gone, "Deleted, because it was deleted elsewhere:"),
            (Fate::Back, "Deleted here, but changed elsewhere since, so it is back:"),
            (Fate::StaysDeleted, "Not added, because it was deleted here:"),
            (Fate::StaysHere, "Deleted elsewhere, but changed here since, so it stays:"),
        ] {
            let of_it = fates.iter().filter(|(known, _)| *known == fate);
            let names: Vec<Text> = of_it.map(|(_, name)| name.clone()).collect();
            if !names.is_empty() {
                let says = Text::of(words).then(" ").then(Text::row(names, "; "));
                tell(&mut self.desk.notices, Notice::new(says));
            }
        }
    }

    /// Puts all records behind the link that is about to be followed.
    pub(super) fn offer_file(&mut self) {
        let text = to_text(&self.shelf.records.to_document());
        if text.len() > LARGEST_FILE {
            let says = "The file is larger than this page can read back. Delete photos, and save it once more.";
            tell(&mut self.desk.notices, Notice::new(says));
            self.show();
        }
        if let (Ok(address), Some(link)) = (file_address(&text), root::by_id("records-save")) {
            let _set = link.set_attribute("href", &address);
        }
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
