//! The job told step by step on the page: scrubbed by a finger, played, or gone through step by step.
//!
//! It is a way of looking: nothing in the set-up moves with it, and closed it leaves the views as they were.

use std::collections::BTreeMap;

use web_sys::{Element, HtmlInputElement, HtmlSelectElement};

use super::each_frame::EachFrame;
use super::{Page, stage, with_page};
use crate::language::say;
use crate::root;
use crate::view::story::{Change, Film, panel};

/// Longest step of the clock that is played, in milliseconds: a tab that slept does not leap.
const LONGEST: f64 = 100.0;

/// What the styles know it by.
const TELLING: &str = "data-telling";

/// The job as it is told.
pub(super) struct Telling {
    film: Option<Film>,
    /// Steps from the beginning.
    at: f64,
    /// When the last frame was played; none while it stands still.
    played: Option<f64>,
    /// What the drawing has, so that only what changes is set.
    set: BTreeMap<(String, &'static str), (Element, String)>,
    frames: EachFrame,
}

impl Default for Telling {
    fn default() -> Self {
        let frames = EachFrame::new(|time| with_page(|page| page.play_on(time)));
        Self { film: None, at: 0.0, played: None, set: BTreeMap::new(), frames }
    }
}

impl Telling {
    pub(super) fn is_open(&self) -> bool {
        self.film.is_some()
    }

    /// Which step is shown.
    fn step(&self) -> usize {
        self.film.as_ref().map_or(0, |film| film.place(self.at).0)
    }

    fn put(&mut self, changes: Vec<Change>) {
        for Change { id, name, value } in changes {
            let key = (id, name);
            if self.set.get(&key).is_some_and(|(_, set)| *set == value) {
                continue;
            }
            let known = self.set.get(&key).map(|(element, _)| element.clone());
            let Some(element) = known.or_else(|| root::by_id(&key.0)) else { continue };
            if name.is_empty() {
                element.set_text_content(Some(&value));
            } else {
                let _set = element.set_attribute(name, &value);
            }
            self.set.insert(key, (element, value));
        }
    }
}

/// Whether nothing may move by itself.
fn is_still() -> bool {
    let asked =
        web_sys::window().and_then(|window| window.match_media("(prefers-reduced-motion: reduce)").ok().flatten());
    asked.is_some_and(|asked| asked.matches())
}

impl Page {
    /// What a button of it asks for.
    pub(super) fn act_on_story(&mut self, what: &str) {
        let step = self.telling.step();
        match what {
            "open" => self.open_story(),
            "close" => {
                self.close_story();
                root::focus(panel::OPENER);
            }
            "back" => self.tell_step(step as i32 - 1),
            "next" => self.tell_step(step as i32 + 1),
            _ => self.play_or_pause(),
        }
    }

    fn open_story(&mut self) {
        let Some(stage) = stage(&self.desk) else { return };
        let film = Film::of(&stage);
        self.telling.at = film.still(0);
        self.telling.film = Some(film);
        root::tell_styles(TELLING, Some(""));
        self.show_story();
        root::focus(panel::STEP);
    }

    /// Puts the views back to what they show otherwise.
    pub(super) fn close_story(&mut self) {
        if self.telling.film.take().is_none() {
            return;
        }
        self.telling.played = None;
        self.telling.set.clear();
        root::tell_styles(TELLING, None);
        if let Some(views) = root::by_id("views") {
            self.regions.forget(&views);
        }
        self.regions.show(panel::REGION, maud::Markup::default());
        self.show_views();
        self.place_tool();
    }

    /// Draws both views anew and shows the moment the story is at; the same step where the job has changed.
    pub(super) fn show_story(&mut self) {
        let Some(stage) = stage(&self.desk) else { return };
        let (step, share) = self.telling.film.as_ref().map_or((0, 0.0), |film| film.place(self.telling.at));
        let before = self.telling.film.as_ref().and_then(|film| film.told.get(step)).map(|told| told.chapter);
        let film = Film::of(&stage);
        let same = film.told.iter().position(|told| Some(told.chapter) == before).unwrap_or(step);
        self.telling.at = (same as f64 + share).min(film.told.len() as f64);
        for (view, markup) in ["face", "section"].into_iter().zip(film.views(&stage)) {
            self.regions.show(view, markup);
        }
        self.regions.show(panel::REGION, panel::show(&film, is_still()));
        self.telling.film = Some(film);
        self.telling.set.clear();
        self.show_moment();
    }

    /// Puts the drawing and the controls at the moment the story is at.
    fn show_moment(&mut self) {
        let Some(stage) = stage(&self.desk) else { return };
        let Some(film) = &self.telling.film else { return };
        let at = self.telling.at;
        let step = film.place(at).0;
        let mut changes = film.frame(&stage, at);
        let title = film.title(step);
        let says = film.told.get(step).map_or_else(String::new, |told| told.says.clone());
        let playing = self.telling.played.is_some();
        let set = |id: &str, name: &'static str, value: &str| Change { id: id.into(), name, value: value.into() };
        changes.push(set(panel::TITLE, "", &title));
        changes.push(set(panel::SAYS, "", &says));
        changes.push(set(panel::SLIDER, "aria-valuetext", &title));
        changes.push(set(panel::PLAY, "", say(if playing { "Pause" } else { "Play" })));
        changes.push(set("story-back", "aria-disabled", if step == 0 { "true" } else { "false" }));
        changes.push(set("story-next", "aria-disabled", if step + 1 == film.told.len() { "true" } else { "false" }));
        let value = if is_still() { step as f64 } else { at } * panel::PARTS;
        self.telling.put(changes);
        if let Some(slider) = root::by_id_as::<HtmlInputElement>(panel::SLIDER)
            && (slider.value_as_number() - value).abs() > 2.0
        {
            slider.set_value_as_number(value);
        }
        if let Some(select) = root::by_id_as::<HtmlSelectElement>(panel::STEP)
            && select.selected_index() != step as i32
        {
            select.set_selected_index(step as i32);
        }
    }

    /// Shows the still picture of a step.
    pub(super) fn tell_step(&mut self, step: i32) {
        let Some(film) = &self.telling.film else { return };
        let Ok(step) = usize::try_from(step) else { return };
        if step < film.told.len() {
            self.telling.at = film.still(step);
            self.telling.played = None;
            self.show_moment();
        }
    }

    /// Follows the finger on the line; from step to step for those who want no motion.
    pub(super) fn scrub(&mut self, value: f64) {
        let at = value / panel::PARTS;
        if is_still() {
            return self.tell_step(at.round() as i32);
        }
        self.telling.at = at;
        self.telling.played = None;
        self.show_moment();
    }

    fn play_or_pause(&mut self) {
        let steps = self.telling.film.as_ref().map_or(0, |film| film.told.len());
        self.telling.played = match self.telling.played {
            None if !is_still() => Some(super::now()),
            _ => None,
        };
        if self.telling.played.is_some() {
            if self.telling.at >= steps as f64 {
                self.telling.at = 0.0;
            }
            self.telling.frames.next();
        }
        self.show_moment();
    }

    /// One frame of playing.
    fn play_on(&mut self, time: f64) {
        let (Some(before), Some(film)) = (self.telling.played, &self.telling.film) else { return };
        let steps = film.told.len() as f64;
        let lasts = film.told.get(self.telling.step()).map_or(1.0, |told| told.chapter.lasts());
        self.telling.at = (self.telling.at + (time - before).clamp(0.0, LONGEST) / lasts).min(steps);
        self.telling.played = (self.telling.at < steps).then_some(time);
        if self.telling.played.is_some() {
            self.telling.frames.next();
        }
        self.show_moment();
    }
}
