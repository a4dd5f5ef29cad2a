//! Set-up files, texts, tables and pictures handed out, and files opened.

use holdround_core::glossary::is_of_word;
use holdround_core::lessons::Lesson;
use holdround_core::record::to_text;
use holdround_core::setup::{Entries, Fault};
use holdround_core::text::Text;
use maud::html;
use wasm_bindgen::JsCast;
use web_sys::{DragEvent, Element, Event, File, FileList, HtmlElement, HtmlSelectElement, HtmlTextAreaElement};

use super::frame::WHOLE;
use super::hand_out::{copy_chosen, hand_out, save};
use super::lessons::named;
use super::notice::Notice;
use super::{Page, address, device, opening, picture, recent, records_file, stamp, with_page};
use crate::language::{fill_plain, say};
use crate::view::{csv, files, plain, sheet};
use crate::{document, root};

/// Height that a frame is given until it has told its own, in pixels.
const FIRST_HEIGHT: &str = "700";
/// What a frame may do: run, and open the set-up on a page of its own.
const SANDBOX: &str = "allow-scripts allow-popups allow-popups-to-escape-sandbox";
/// The page in one file, which alone works in such a frame.
const ONE_FILE: &str = "holdround.html";
/// Most lines of faults that are told.
const MOST_FAULTS: usize = 12;

impl Page {
    /// Does what a button of the files asks for.
    pub(super) fn act_on_files(&mut self, what: &str, id: &str) {
        match what {
            "save" => self.save_setup(),
            "share" => device::share(),
            "awake" => self.awake_or_not(),
            "csv" => self.save_table(),
            "svg" => self.save_picture(false),
            "png" => self.save_picture(true),
            "frame" => self.copy_frame(),
            "copy-all" => {
                let text = self.desk.good.as_ref().map(|(_, found)| plain::all(found, self.desk.units));
                self.copy(text, false);
            }
            "copy" => {
                let finding = self.desk.good.as_ref().and_then(|(_, found)| found.get(id));
                let text = finding.map(|finding| plain::finding(finding, self.desk.units));
                self.copy(text, true);
            }
            "recent" => {
                let Some(one) = id.parse().ok().and_then(|at: usize| recent::read().into_iter().nth(at)) else {
                    return;
                };
                self.take_setup(one.entries);
            }
            _ => {}
        }
    }

    /// Shows what was on the sheet before, and the markup of a frame with what is on it now.
    pub(super) fn show_files(&mut self) {
        if self.frame.is_own() {
            // What another window has on its desk was not left.
            let left = self.desk.earlier.0.iter().rev().filter(|(_, window)| self.keeps && window.is_empty());
            let recent = recent::note(left.map(|(entries, _)| entries), &today());
            self.regions.show("recent", files::recent(&recent));
        }
        if !self.frame.is_own() {
            let link = self.desk.entries.to_link();
            self.regions.show("framed", files::framed(self.frame.locked, &link));
        }
        if let Some(lock) = root::by_id_as::<HtmlSelectElement>(files::LOCK) {
            lock.set_disabled(chosen_lesson().is_some());
        }
        if let Some(text) = root::by_id_as::<HtmlTextAreaElement>(files::FRAME) {
            text.set_value(&self.frame_markup());
        }
    }

    /// Puts a whole set-up on the desk in place of what lies there, which is one undo away.
    fn take_setup(&mut self, entries: Entries) {
        opening::replace(&mut self.desk, entries);
        self.refresh();
        self.show_files();
        root::focus("title-block");
    }

    /// Hands the set-up out as a file.
    fn save_setup(&self) {
        let name = format!("{}.json", self.file_name("set-up"));
        told(&name, save(&name, &to_text(&self.desk.entries.to_document())).is_ok());
    }

    fn save_table(&self) {
        let key = chosen("table");
        match csv::table(&key, &self.desk, self.beside.comparison.as_ref()) {
            Some(text) => {
                let name = format!("{}-{key}.csv", self.file_name("set-up"));
                told(&name, save(&name, &text).is_ok());
            }
            None if key == "jaws" => tell(say("Nothing has been compared yet: ask for it under Other jaws.")),
            None => tell(say("There is nothing in this table yet.")),
        }
    }

    fn save_picture(&self, png: bool) {
        let key = chosen("picture");
        let name = format!("{}-{key}", self.file_name("set-up"));
        let job = self.desk.entries.get("job.name").unwrap_or_default();
        let Some(drawn) = picture::of(&key, job) else { return tell(say("This picture is not drawn yet.")) };
        if png {
            return drawn.as_png(name + ".png");
        }
        let name = name + ".svg";
        told(&name, save(&name, &drawn.svg).is_ok());
    }

    /// Files are named after the job.
    fn file_name(&self, without: &str) -> String {
        let job = self.desk.entries.get("job.name").unwrap_or_default().to_ascii_lowercase();
        let words: Vec<&str> = job.split(|sign| !is_of_word(sign)).filter(|word| !word.is_empty()).collect();
        let name: String = words.join("-").chars().take(60).collect();
        if name.is_empty() { without.to_owned() } else { name }
    }

    /// The element that shows this set-up, or a lesson, on another page.
    fn frame_markup(&self) -> String {
        let job = self.desk.entries.get("job.name").filter(|name| !name.is_empty()).unwrap_or("Holdround");
        let here = web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default();
        let page = here.split(['#', '?']).next().unwrap_or_default();
        // Beside the page in several files, which browsers refuse in a frame that may do so little, lies the one.
        let folder = page.rsplit_once('/').map_or("", |(folder, _)| folder);
        let page = if page.ends_with(".html") && !page.ends_with("/index.html") {
            page.to_owned()
        } else {
            format!("{folder}/{ONE_FILE}")
        };
        let (name, asked) = match chosen_lesson() {
            // What cannot be changed teaches nothing.
            Some(lesson) => (say(lesson.title), format!("{}&show={WHOLE}", address::of_lesson(lesson.key))),
            None => {
                (job, format!("#{}&show={}{}", self.desk.entries.to_link(), chosen("frame-part"), chosen(files::LOCK)))
            }
        };
        let address = page + &asked;
        html! { iframe src=(address) title=(name) width="100%" height=(FIRST_HEIGHT) loading="lazy" sandbox=(SANDBOX) {} }
            .into_string()
    }

    fn copy_frame(&self) {
        let Some(text) = root::by_id_as::<HtmlTextAreaElement>(files::FRAME) else { return };
        text.set_value(&self.frame_markup());
        text.select();
        tell(say(if copy_chosen() { "Copied." } else { "Not copied: the text is chosen, copy it by hand." }));
    }

    /// Copies a text; where the browser does not, it stands in a note to be copied by hand. Far from where that is told
    /// the button tells it as well.
    fn copy(&mut self, text: Option<String>, far: bool) {
        let Some(text) = text else { return tell(say("There is no valid set-up yet, and so no figure.")) };
        if copied(&text) {
            if let Some(pressed) = root::focused().filter(|_| far) {
                pressed.set_text_content(Some(say("Copied")));
                self.regions.forget(&pressed);
            }
            return tell(say("Copied."));
        }
        self.desk.notices.push(Notice::about("The browser did not copy it: copy it from here.", text));
        self.show();
    }

    /// Takes over what a file holds: a set-up, or jaw records.
    fn read_setup(&mut self, name: &str, text: &str) {
        match document::entries(text) {
            Ok(entries) => {
                self.take_setup(entries);
                tell(&fill_plain("{} is on the sheet. Undo brings back what was there.", &[&name]));
            }
            Err(_) if text.split('"').any(|piece| piece == "jaw_records") => self.import(text),
            Err(faults) => {
                self.desk.notices.push(Notice::new(refusal(name, &faults)));
                self.show();
            }
        }
    }

    /// Files that were dropped on the page.
    pub(super) fn dropped(&mut self, event: &Event) {
        let Some(transfer) = event.dyn_ref::<DragEvent>().and_then(DragEvent::data_transfer) else { return };
        event.prevent_default();
        if let Some(files) = transfer.files().filter(|_| event.type_() == "drop" && !self.frame.locked) {
            read_first(&files);
        }
    }
}

/// Why a file was not opened, a fault a line.
fn refusal(name: &str, faults: &[Fault]) -> Text {
    let mut lines = vec![Text::of("{} was not opened; what is on the sheet stays.").with(Text::typed(name))];
    lines.extend(faults.iter().take(MOST_FAULTS).map(Text::from));
    if let Some(more) = faults.len().checked_sub(MOST_FAULTS).filter(|more| *more > 0) {
        lines.push(Text::of("And {} more.").with(more));
    }
    Text::row(lines, "\n")
}

/// Reads the first of these files.
pub(super) fn read_first(files: &FileList) {
    let Some(file): Option<File> = files.get(0) else { return };
    let name = file.name();
    records_file::read_text(&file, move |text| with_page(|page| page.read_setup(&name, &text)));
}

/// The day, as in `2026-05-01`.
fn today() -> String {
    stamp::now().chars().take(10).collect()
}

/// The lesson to be shown on another page, where one is chosen.
fn chosen_lesson() -> Option<&'static Lesson> {
    chosen("frame-part").strip_prefix(address::LESSON).and_then(named)
}

fn chosen(id: &str) -> String {
    root::by_id_as::<HtmlSelectElement>(id).map(|select| select.value()).unwrap_or_default()
}

/// Copies a text that stands nowhere on the page; the keyboard stays where it was.
fn copied(text: &str) -> bool {
    let Some(document) = root::document() else { return false };
    let made = document.create_element("textarea").ok().and_then(|made| made.dyn_into::<HtmlTextAreaElement>().ok());
    let (Some(made), Some(body)) = (made, document.body()) else { return false };
    let before = root::focused();
    made.set_value(text);
    made.set_class_name("heard");
    let _placed = body.append_child(&made);
    made.select();
    let done = copy_chosen();
    made.remove();
    if let Some(before) = before.and_then(|before: Element| before.dyn_into::<HtmlElement>().ok()) {
        let _focused = before.focus();
    }
    done
}

fn told(name: &str, saved: bool) {
    tell(&if saved {
        fill_plain("Saved as {}.", &[&name])
    } else {
        say("The browser saves no files here.").to_owned()
    });
}

/// Says what became of what was asked for, to those who hear the page as well.
pub(super) fn tell(words: &str) {
    for id in [files::TOLD, sheet::SPOKEN] {
        if let Some(told) = root::by_id(id) {
            told.set_text_content(Some(words));
        }
    }
}

/// Hands a picture out that has become a file.
pub(super) fn picture_saved(name: &str, address: Option<&str>, size: &str) {
    match address.map(|address| hand_out(name, address)) {
        Some(Ok(())) => tell(&fill_plain("Saved as {}, {} pixels.", &[&name, &size])),
        _ => tell(say("The browser makes no picture of it: save it as SVG.")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_that_cannot_be_opened_is_told_line_by_line() {
        let faults = document::entries(r#"{"schema": 1, "part": {"legth": "3 mm", "colour": "red"}}"#).unwrap_err();
        let says = refusal("job.json", &faults).to_string();
        assert_eq!(says.lines().count(), 3, "what happened, and a line for each fault: {says}");
        assert!(says.contains("part.legth") && says.contains("part.colour"), "by their paths: {says}");
        let many: Vec<Fault> = core::iter::repeat_n(faults[0].clone(), MOST_FAULTS + 5).collect();
        assert!(refusal("job.json", &many).to_string().ends_with("And 5 more."), "no endless list");
    }
}
