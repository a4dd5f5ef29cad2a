//! What lies on the desk, shown in the regions of the sheet.

use holdround_core::setup::INPUTS;

use super::desk::Desk;
use super::{Page, SLICE, fields, frame, motion, now};
use crate::root;
use crate::view::{
    Stage, face, findings_list, inputs, notes, notices, own as own_view, paper, play_bar, records as records_view,
    section, title_block, tools, trace,
};

impl Page {
    /// One step of drawing, short enough for a slow tablet. What could push other things away is held back until the
    /// last one: what came a moment later would move what a finger is about to touch.
    pub(super) fn draw(&mut self, step: usize) {
        match step {
            0 => self.show_fields(),
            1 => self.show_face(),
            2 => self.show_section(),
            3..=6 => {
                self.regions.hold(true);
                match step {
                    3 => self.show_findings(),
                    4 => self.show_notes(),
                    5 => {
                        self.show_making();
                        self.show_comparison();
                        self.show_indicator();
                    }
                    _ => self.show_records(),
                }
                self.regions.hold(false);
            }
            7 => {
                self.rest_lesson();
                self.regions.show("verdict", title_block::show(&self.desk));
            }
            // What was held back, one region after another.
            8 if self.regions.release() => return,
            _ => {
                self.drawing = None;
                self.place_tool();
                self.show_photos();
                self.show_files();
                self.lock_fields();
                dress(&self.desk);
                frame::tell_height();
                return self.speaking.restart();
            }
        }
        self.drawing = Some(step + 1);
    }

    /// All findings.
    pub(super) fn show_findings(&mut self) {
        self.regions.show("findings", findings_list::show(&self.desk));
        self.regions.show("findings-of-making", findings_list::of_making(&self.desk));
    }

    /// What stands beside the findings, and the same on paper.
    pub(super) fn show_notes(&mut self) {
        self.regions.show("notes", notes::show(&self.desk));
        self.regions.show("work", paper::show(&self.desk, &self.shelf));
    }

    /// Every place where findings stand in lines.
    pub(super) fn show_lines(&mut self) {
        self.regions.show("verdict", title_block::show(&self.desk));
        self.show_findings();
        self.show_making();
        self.show_indicator();
    }

    pub(super) fn show_records(&mut self) {
        self.regions.show("records-told", records_view::state(&self.shelf));
        self.regions.show("records", records_view::show(&self.shelf, &self.desk));
        self.show_photos();
    }

    /// Shows what follows a finger; the rest is drawn after a pause.
    pub(super) fn show(&mut self) {
        if self.drawing.is_some() {
            self.draw_anew();
        }
        self.show_fields();
        if self.unfinished {
            return self.working.now();
        }
        self.desk.look_at_task();
        self.regions.show("verdict", title_block::show(&self.desk));
        self.show_views();
        self.show_lesson();
        self.keep_tool();
        dress(&self.desk);
    }

    /// Shows the fields, groups anew where they need others. After that the rest is left unfinished: it is shown in
    /// turns of its own, so that none holds the page for long.
    pub(super) fn show_fields(&mut self) {
        let begun = now();
        let desk = &self.desk;
        let mut anew = false;
        for group in INPUTS {
            let structure = fields::structure(desk, group);
            if self.structures.get(group.key) == Some(&structure) {
                continue;
            }
            if anew && now() - begun > SLICE {
                break;
            }
            self.regions.rebuild(&format!("fields-{}", group.key), inputs::show(desk, group));
            fields::drawn(desk, &mut self.regions, group);
            if let Some(place) = root::by_id(&format!("group-{}", group.key)) {
                let _hidden = place.toggle_attribute_with_force("hidden", !inputs::matters(desk, group));
            }
            self.structures.insert(group.key.to_owned(), structure);
            anew = true;
        }
        let sliding = fields::sliding(desk);
        if self.structures.get("play") != Some(&sliding) {
            self.regions.rebuild("play", play_bar::show(desk));
            self.structures.insert("play".to_owned(), sliding);
        }
        if anew != self.unfinished {
            self.unfinished = anew;
            if let Some(list) = root::by_id("inputs") {
                let _set = list.set_attribute("aria-busy", if anew { "true" } else { "false" });
            }
        }
        if anew {
            self.show_own();
            self.show_making();
            self.show_indicator();
        } else {
            fields::update(desk, &mut self.regions);
            self.regions.show("tools", tools::show(desk));
            self.regions.show("notices", notices::show(desk));
        }
        self.lock_fields();
    }

    /// The questions for a job of one's own, with what was answered.
    pub(super) fn show_own(&mut self) {
        self.regions.show("own", own_view::show(&self.own, self.desk.units));
    }

    /// Both views, with what is told of the job if it is.
    pub(super) fn show_views(&mut self) {
        self.show_face();
        if let Some(stage) = stage(&self.desk).filter(|_| !self.telling.is_open()) {
            motion::show(&mut self.regions, "section", section::draw(&stage));
        }
    }

    /// The face as it is now; both views as a step of the job has them while that is told.
    pub(super) fn show_face(&mut self) {
        if self.telling.is_open() {
            self.show_story();
        } else if let Some(stage) = stage(&self.desk) {
            motion::show(&mut self.regions, "face", face::draw(&stage));
        }
    }

    /// The section, unless the job is told on it, and the trace.
    pub(super) fn show_section(&mut self) {
        let Some(stage) = stage(&self.desk) else { return };
        if !self.telling.is_open() {
            motion::show(&mut self.regions, "section", section::draw(&stage));
        }
        self.regions.show("trace", trace::show(&stage));
    }
}

/// What the drawings show, once there are findings.
pub(super) fn stage(desk: &Desk) -> Option<Stage<'_>> {
    let (setup, findings) = desk.good.as_ref()?;
    let Desk { units, clamped, spinning, step, parting, .. } = *desk;
    let step = step.min(setup.part.profile.steps().len().saturating_sub(1));
    let plain = Stage::of(setup, findings, units);
    Some(Stage { clamped, spinning, mesh: desk.mesh.as_deref(), step, parting, ..plain })
}

/// Names the page after the job, and tells the styles of the theme and of what moves or is out of date.
pub(super) fn dress(desk: &Desk) {
    let Some(document) = root::document() else { return };
    match desk.entries.get("job.name").map(str::trim).filter(|name| !name.is_empty()) {
        Some(name) => document.set_title(&format!("{name} · Holdround")),
        None => document.set_title("Holdround"),
    }
    root::tell_styles("data-theme", Some(desk.theme.key()));
    let stale = if desk.faults.is_empty() { "false" } else { "true" };
    if let Some(making) = root::by_id("making") {
        let _set = making.set_attribute("data-stale", stale);
    }
    if let Some(views) = root::by_id("views") {
        let _set = views.set_attribute("data-clamped", if desk.clamped { "true" } else { "false" });
        let _set = views.set_attribute("data-spinning", if desk.spinning { "true" } else { "false" });
        let _set = views.set_attribute("data-stale", stale);
    }
}
