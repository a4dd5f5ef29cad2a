//! A slider under a finger: what it says is taken once a frame, and only what moves with it is drawn in that frame.
//! The rest follows once it rests.

use super::{Page, fields};
use crate::root;
use crate::view::{sheet, title_block, tools};

/// How long nothing has moved when the window is traced on, in milliseconds: longer than a frame of a slow tablet.
const BEFORE_TRACING: i32 = 60;

impl Page {
    /// A slider says where the entry at `path` is to stand.
    pub(super) fn slide(&mut self, path: String, value: String) {
        self.slid = Some((path, value));
        self.following.next();
    }

    /// Takes what a slider said last, if that is still to be done.
    pub(super) fn follow(&mut self) {
        let Some((path, value)) = self.slid.take() else { return };
        let stood = self.desk.entries.get(&path).map(str::to_owned);
        self.desk.type_in(&path, &value);
        if self.desk.entries.get(&path) != stood.as_deref() {
            self.move_on(&[&path]);
        }
    }

    /// Shows what moves with the entries at `paths`: it is drawn whole after a pause.
    pub(super) fn move_on(&mut self, paths: &[&str]) {
        if self.unfinished || self.desk.waiting.is_some() || !self.desk.faults.is_empty() {
            return self.refresh();
        }
        // Asked once: the browser must find every place for an answer.
        let window_seen = *self.window_seen.get_or_insert_with(|| root::is_in_view(sheet::WINDOW));
        self.unkept = true;
        self.drawing = None;
        self.regions.drop_held();
        self.desk.begin_window();
        self.desk.look_at_task();
        fields::follow(&self.desk, &mut self.regions, paths);
        self.regions.show("tools", tools::show(&self.desk));
        self.regions.show("verdict", title_block::show(&self.desk));
        self.show_views();
        self.show_lesson();
        self.keep_tool();
        if window_seen {
            self.show_window();
        }
        self.keeping.restart();
        self.tracing.after(BEFORE_TRACING);
        self.completing.restart();
        self.speaking.restart();
    }
}
