//! What the buttons do.

use holdround_core::setup::Entries;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

use super::{Page, keep, making, opening, window};
use crate::root;

/// Something a button asks for.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Action {
    /// Take the last change back.
    Undo,
    /// Do again what was taken back.
    Redo,
    /// Print the sheet.
    Print,
    /// Close the jaws or open them.
    Clamp,
    /// Turn the spindle or stop it.
    Spin,
    /// Show the mesh in the section, or leave it out again.
    Mesh,
    /// Something about the job told step by step: what.
    Story(String),
    /// Let the tool run along the path that bores the jaws, or stop it.
    Run,
    /// Look for the bored diameter with which parts come out roundest.
    StudyBore,
    /// Enter the diameter that was found.
    AdoptBore,
    /// Enter the taper that is to be cut.
    AdoptTaper,
    /// Copy the boring program.
    CopyProgram,
    /// Save the boring program as a file.
    SaveProgram,
    /// Set the pressure that the window recommends.
    Adopt,
    /// Open what is said of a limit of the window.
    Limit(usize),
    /// Let the assumed value hold.
    Assume(String),
    /// Add an item to a list.
    Add(String),
    /// Add an item to a list after another.
    AddAfter(String, usize),
    /// Part a step of the part in two.
    Split(usize),
    /// Exchange an item of a list with the one after it; the keyboard stays with the one that was moved.
    Exchange(String, usize, Moved),
    /// Remove an item of a list.
    Remove(String, usize),
    /// Go to the field of an entry.
    GoTo(String),
    /// Go to the verdict.
    Skip,
    /// Put a notice away.
    PutAway(usize),
    /// Go back to a set-up that was kept.
    GoBack(usize),
    /// Forget a set-up that was kept.
    DropEarlier(usize),
    /// Start from the assumed values.
    Fresh,
    /// Open the questions for a job of one's own.
    Own,
    /// Set a job up from the answers to them.
    Start,
    /// Take the user's own rings over from the set-up before.
    TakeRings,
    /// Leave them.
    LeaveRings,
    /// Compare the jaws with others.
    Compare,
    /// Take jaws of the comparison.
    TakeJaws(usize),
    /// Something about jaw records: what, and the record it is about, or what in it.
    Record(String, String),
    /// Something about readings of the indicator: what, a path, and a station.
    Dial(String, String, usize),
    /// Something about the lesson that is open.
    Lesson(String),
    /// Something about files: what, and what it is about.
    Files(String, String),
}

/// Which way an item is moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Moved {
    /// Toward the start of the list.
    Up,
    /// Toward its end.
    Down,
}

impl Action {
    /// What `button` asks for.
    pub(crate) fn of(button: &Element) -> Option<Self> {
        let told = |name: &str| button.get_attribute(name);
        let index = || told("data-index").and_then(|index| index.parse().ok());
        if let Some(path) = told("data-entry") {
            return Some(Self::GoTo(path));
        }
        Some(match told("data-act")?.as_str() {
            "undo" => Self::Undo,
            "redo" => Self::Redo,
            "print" => Self::Print,
            "clamp" => Self::Clamp,
            "spin" => Self::Spin,
            "mesh" => Self::Mesh,
            "run" => Self::Run,
            "study-bore" => Self::StudyBore,
            "adopt-bore" => Self::AdoptBore,
            "adopt-taper" => Self::AdoptTaper,
            "copy-program" => Self::CopyProgram,
            "save-program" => Self::SaveProgram,
            "adopt" => Self::Adopt,
            "window-limit" => Self::Limit(index()?),
            "assume" => Self::Assume(told("data-path")?),
            "add" => Self::Add(told("data-list")?),
            "add-after" => Self::AddAfter(told("data-list")?, index()?),
            "split" => Self::Split(index()?),
            "up" => Self::Exchange(told("data-list")?, index()?.checked_sub(1)?, Moved::Up),
            "down" => Self::Exchange(told("data-list")?, index()?, Moved::Down),
            "remove" => Self::Remove(told("data-list")?, index()?),
            "goto" => Self::GoTo(told("data-path")?),
            "skip" => Self::Skip,
            "put-away" => Self::PutAway(index()?),
            "go-back" => Self::GoBack(index()?),
            "drop-earlier" => Self::DropEarlier(index()?),
            "fresh" => Self::Fresh,
            "own" => Self::Own,
            "start" => Self::Start,
            "take-rings" => Self::TakeRings,
            "leave-rings" => Self::LeaveRings,
            "compare" => Self::Compare,
            "take-jaws" => Self::TakeJaws(index()?),
            dial if dial.starts_with("dial-") => {
                Self::Dial(dial.to_owned(), told("data-path").unwrap_or_default(), index().unwrap_or(0))
            }
            other => {
                let (about, what) = other.split_once('-')?;
                let id = || told("data-id").unwrap_or_default();
                match about {
                    "story" => Self::Story(what.to_owned()),
                    "file" => Self::Files(what.to_owned(), id()),
                    "lesson" => Self::Lesson(what.to_owned()),
                    "record" => Self::Record(what.to_owned(), id()),
                    _ => return None,
                }
            }
        })
    }
}

impl Page {
    /// Does what a button asks for.
    pub(crate) fn act(&mut self, action: Action) {
        match action {
            Action::Print => {
                self.close_story();
                let _printed = web_sys::window().map(|window| window.print());
                return;
            }
            Action::Adopt => return self.adopt(),
            Action::Story(what) => return self.act_on_story(&what),
            Action::Limit(number) => return window::open_limit(number),
            Action::Run => return self.run_or_stop(),
            Action::CopyProgram => return making::copy_program(),
            Action::SaveProgram => return making::save_program(),
            Action::GoTo(path) => return root::focus(&format!("in-{path}")),
            Action::Skip => return root::focus("title-block"),
            Action::Clamp => {
                self.desk.clamped = !self.desk.clamped;
                self.desk.spinning &= self.desk.clamped;
            }
            Action::Spin => self.desk.spinning = self.desk.clamped && !self.desk.spinning,
            Action::Mesh => {
                self.desk.toggle_mesh();
                return self.show();
            }
            Action::StudyBore => {
                self.desk.study_bore();
                return self.show_making();
            }
            Action::AdoptBore => self.desk.adopt_bore(),
            Action::AdoptTaper => self.desk.adopt_taper(),
            Action::Undo => self.desk.undo(),
            Action::Redo => self.desk.redo(),
            Action::Assume(path) => self.desk.assume(&path),
            Action::Add(list) => {
                let index = self.desk.shown_items(&list);
                self.desk.add_item(&list);
                self.refresh();
                return focus_first(&list, index);
            }
            Action::AddAfter(list, index) => {
                self.desk.add_after(&list, index);
                self.refresh();
                return focus_first(&list, index + 1);
            }
            Action::Split(index) => {
                self.desk.split_step(index);
                self.refresh();
                return focus_first("steps", index);
            }
            Action::Exchange(list, index, moved) => {
                self.desk.exchange(&list, index);
                self.refresh();
                let (way, at) = if moved == Moved::Up { ("up", index) } else { ("down", index + 1) };
                return root::focus(&format!("{way}-{list}-{at}"));
            }
            Action::Remove(list, index) => {
                self.desk.remove_item(&list, index);
                self.refresh();
                return root::focus(&format!("add-{list}"));
            }
            Action::PutAway(index) => {
                if index < self.desk.notices.len() {
                    let notice = self.desk.notices.remove(index);
                    notice.kept.iter().for_each(|text| keep::let_go(text));
                }
            }
            Action::GoBack(at) => {
                if let Some(earlier) = self.desk.earlier.take(at) {
                    opening::replace(&mut self.desk, earlier);
                }
            }
            Action::DropEarlier(at) => drop(self.desk.earlier.take(at)),
            Action::Own => return root::focus("answer-0"),
            Action::Start => return self.start(),
            Action::Fresh => opening::replace(&mut self.desk, Entries::default()),
            Action::TakeRings => {
                if let Some(rings) = self.desk.rings.take() {
                    self.desk.take_rings(&rings);
                }
            }
            Action::LeaveRings => self.desk.rings = None,
            Action::Compare => return self.compare(),
            Action::TakeJaws(at) => self.beside.take(&mut self.desk, at),
            Action::Dial(what, path, at) => return self.act_on_dial(&what, &path, at),
            Action::Lesson(what) => return self.act_on_lesson(&what),
            Action::Record(what, at) => return self.act_on_record(&what, &at),
            Action::Files(what, id) => return self.act_on_files(&what, &id),
        }
        self.refresh();
    }
}

/// Gives the keyboard to the first field of an item.
fn focus_first(list: &str, index: usize) {
    let first = root::document()
        .and_then(|document| document.query_selector(&format!("[data-path^='{list}.{index}.']")).ok().flatten());
    let _focused = first.and_then(|field| field.dyn_into::<HtmlElement>().ok()).map(|field| field.focus());
}
