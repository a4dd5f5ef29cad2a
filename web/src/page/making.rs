//! Making the jaws on the page: the tool on its path, and the program copied and saved.

use web_sys::{HtmlInputElement, HtmlTextAreaElement};

use super::Page;
use super::hand_out::{copy_chosen, save};
use crate::language::say;
use crate::root;
use crate::view::making::{self, on_views, path, program};

/// From one picture of the moving tool to the next, in milliseconds.
pub(super) const TICK: i32 = 33;
/// How long a tool is shown on one move, and the least for a whole path, in milliseconds.
const A_MOVE: f64 = 300.0;
const LEAST: f64 = 6000.0;
/// Name of a saved program.
const FILE: &str = "jaws.txt";

/// The tool on its path.
#[derive(Debug, Default)]
pub(super) struct Run {
    /// Share of the path behind it.
    share: f64,
    playing: bool,
}

impl Page {
    /// What stands beside the inputs of making the jaws, where it is open, and what is settled.
    pub(super) fn show_making(&mut self) {
        for group in making::GROUPS {
            let place = format!("made-{group}");
            if root::is_opened(&place) {
                self.regions.show(&place, making::beside(&self.desk, group));
            }
        }
        for group in making::GROUPS.into_iter().chain(["making"]) {
            self.regions.show(&format!("settled-{group}"), making::settled(&self.desk, group));
        }
        self.place_tool();
    }

    /// Lets the tool run, from the start if it is at the end, or stops it.
    pub(super) fn run_or_stop(&mut self) {
        self.run.playing = !self.run.playing;
        if self.run.share >= 1.0 {
            self.run.share = 0.0;
        }
        self.tick();
    }

    /// Moves the tool on while it runs.
    pub(super) fn tick(&mut self) {
        if self.run.playing {
            let moves = self.desk.good.as_ref().and_then(|(_, found)| found.scene.jaw_path.as_ref());
            let whole = moves.map_or(LEAST, |path| (path.moves.len() as f64 * A_MOVE).max(LEAST));
            self.run.share = (self.run.share + f64::from(TICK) / whole).min(1.0);
            self.run.playing = self.run.share < 1.0;
        }
        if self.run.playing {
            self.running.restart();
        }
        self.place_tool();
    }

    /// Puts the tool where the slider is.
    pub(super) fn run_to(&mut self, step: f64) {
        self.run = Run { share: (step / path::STEPS).clamp(0.0, 1.0), playing: false };
        self.place_tool();
    }

    /// Puts the tool back into views that were drawn anew; before its start there is none in them.
    pub(super) fn keep_tool(&self) {
        if self.run.share > 0.0 {
            self.place_tool();
        }
    }

    /// Shows the tool where it is on its way: on its own section, and on both views once it has left its start.
    pub(super) fn place_tool(&self) {
        let Some(stage) = super::stage(&self.desk) else { return };
        let Some(jaw_path) = &stage.findings.scene.jaw_path else { return };
        let share = self.run.share;
        let set = |id: &str, name: &str, value: &str| root::by_id(id).map(|element| element.set_attribute(name, value));
        let _set = set("views", "data-boring", if share > 0.0 { "true" } else { "false" });
        let _set = set(path::TOOL, "transform", &path::tool_at(stage.setup, &stage.findings.scene, jaw_path, share));
        for ([swept, tool], (cut, at)) in
            [on_views::SECTION, on_views::FACE].into_iter().zip(on_views::at(&stage, jaw_path, share))
        {
            let _set = set(swept, "d", &cut);
            let _set = set(tool, "transform", &at);
        }
        let told = path::told(jaw_path, share, self.desk.units);
        if let Some(slider) = root::by_id_as::<HtmlInputElement>(path::SLIDER) {
            let _set = slider.set_attribute("aria-valuetext", &told);
            slider.set_value_as_number(share * path::STEPS);
        }
        let write = |id: &str, words: &str| root::by_id(id).map(|element| element.set_text_content(Some(words)));
        write(path::PLACE, &told);
        write(path::BUTTON, say(if self.run.playing { "Stop" } else { "Play" }));
    }
}

/// Copies the program; where the browser does not, it is left chosen for the user to copy.
pub(super) fn copy_program() {
    let Some(text) = root::by_id_as::<HtmlTextAreaElement>(program::TEXT) else { return };
    text.select();
    tell(if copy_chosen() { "Copied. It is unproven." } else { "Not copied: the text is chosen, copy it by hand." });
}

/// Hands the program out as a file.
pub(super) fn save_program() {
    let Some(text) = root::by_id_as::<HtmlTextAreaElement>(program::TEXT) else { return };
    match save(FILE, &text.value()) {
        Ok(()) => tell("Saved as jaws.txt. It is unproven."),
        Err(_) => tell("The browser saves no files here: copy the text."),
    }
}

fn tell(words: &str) {
    if let Some(told) = root::by_id(program::TOLD) {
        told.set_text_content(Some(say(words)));
    }
}
