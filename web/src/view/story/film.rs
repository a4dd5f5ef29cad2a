//! The job as a film: drawn once, and then moved by a few attributes.

use holdround_core::findings::JawPath;
use holdround_core::program::Purpose;
use maud::Markup;

use super::chapter::Chapter;
use super::moment::Moment;
use super::words::Words;
use super::{face, section};
use crate::language::fill_plain;
use crate::view::Stage;
use crate::view::drawing::{Both, Point, polar};
use crate::view::making::{on_views, path};

/// Half a tool's triangle, and how long it is, view units.
pub(super) const TOOL: [f64; 2] = [6.0, 14.0];

/// An attribute of an element of the drawing that changes; its text where no attribute is named.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Change {
    pub(crate) id: String,
    pub(crate) name: &'static str,
    pub(crate) value: String,
}

impl Change {
    pub(super) fn of(id: impl Into<String>, name: &'static str, value: impl Into<String>) -> Self {
        Self { id: id.into(), name, value: value.into() }
    }
}

/// One step as it is told.
#[derive(Clone, Debug)]
pub(crate) struct Told {
    pub(crate) chapter: Chapter,
    pub(crate) name: String,
    pub(crate) says: String,
    /// What the cuts of this step push with, for the key.
    pub(super) force: String,
    /// The cuts taken in it.
    cuts: Vec<usize>,
    /// Grip of one jaw in it, at rest and at speed, N.
    grip: [f64; 2],
}

/// One moment with all that decides how it is drawn.
pub(super) struct Shown<'a> {
    pub(super) told: &'a Told,
    pub(super) moment: Moment,
    /// Lobes of outside and bore, over those clamped at rest.
    pub(super) lobes: [f64; 2],
    /// Pressure over that at rest.
    pub(super) pressure: f64,
    /// Grip of one jaw now, N, and what it is at rest.
    pub(super) grip: [f64; 2],
    /// The cut under way, and how far it has come.
    pub(super) cut: Option<(usize, f64)>,
    /// Boring path so far: swept metal and the tool's transform, on section and face.
    pub(super) bored: [(String, String); 2],
    pub(super) classes: String,
}

/// The job as a film.
#[derive(Clone, Debug)]
pub(crate) struct Film {
    pub(crate) told: Vec<Told>,
    /// From which share of the path on the corner of the jaws is cut.
    corner: f64,
    turns: bool,
    jaws: u32,
    turned: [bool; 2],
    face: face::Moving,
    section: section::Moving,
}

impl Film {
    /// The film of what `stage` shows.
    pub(crate) fn of(stage: &Stage<'_>) -> Self {
        let both = Both::of(stage);
        let (setup, findings) = (stage.setup, stage.findings);
        let turned = [both.shape.turns_outside, both.shape.turns_bore];
        let words = Words { setup, findings, units: stage.units, magnification: both.shape.magnification, turned };
        let two = setup.finish_pressure.is_some();
        let told = |chapter: Chapter| {
            let cuts = words.cuts(chapter);
            let roughing = two && matches!(chapter, Chapter::Clamp | Chapter::Spin | Chapter::Rough);
            let force = cuts.iter().filter_map(|at| {
                let force = stage.units.show(holdround_core::quantity::Kind::Force, words.cutting_force(*at)?);
                Some(format!("{} {}: {force}", at + 1, words.cut_name(*at)))
            });
            Told {
                chapter,
                name: words.name(chapter),
                says: words.says(chapter),
                force: force.collect::<Vec<_>>().join(", "),
                cuts,
                grip: words.grip_of(roughing).map(|grip| grip.unwrap_or(0.0)),
            }
        };
        let path = findings.scene.jaw_path.as_ref();
        Self {
            told: Chapter::all(setup, findings).into_iter().map(told).collect(),
            corner: path.and_then(corner).unwrap_or(1.0),
            turns: setup.speed.value > 0.0,
            jaws: setup.chuck.jaws,
            turned,
            face: face::Moving::of(stage, &both),
            section: section::Moving::of(stage, &both),
        }
    }

    /// Both views: face and section.
    pub(crate) fn views(&self, stage: &Stage<'_>) -> [Markup; 2] {
        let both = Both::of(stage);
        [face::draw(stage, &both), section::draw(stage, &both)]
    }

    /// Which step is shown at `at` steps from the beginning, and how far it has come.
    pub(crate) fn place(&self, at: f64) -> (usize, f64) {
        let step = (at.max(0.0) as usize).min(self.told.len().saturating_sub(1));
        (step, (at - step as f64).clamp(0.0, 1.0))
    }

    /// Where the still picture of a step is.
    pub(crate) fn still(&self, step: usize) -> f64 {
        step as f64 + self.told.get(step).map_or(0.0, |told| told.chapter.still(self.jaws))
    }

    /// How a step is announced: its number, its name.
    pub(crate) fn title(&self, step: usize) -> String {
        let name = self.told.get(step).map_or("", |told| &told.name);
        fill_plain("Step {} of {}: {}", &[&(step + 1), &self.told.len(), &name])
    }

    /// The moment at `at`.
    #[cfg(test)]
    pub(super) fn moment(&self, at: f64) -> Moment {
        let (step, t) = self.place(at);
        Moment::of(self.told[step].chapter, t, self.corner, self.turns)
    }

    /// What is to be set on the drawing for the moment at `at`.
    pub(crate) fn frame(&self, stage: &Stage<'_>, at: f64) -> Vec<Change> {
        let (step, t) = self.place(at);
        let Some(told) = self.told.get(step) else { return Vec::new() };
        let scene = &stage.findings.scene;
        let moment = Moment::of(told.chapter, t, self.corner, self.turns);
        let held = |at_rest: f64, at_speed: f64| if at_rest > 0.0 { (at_speed / at_rest).max(0.0) } else { 1.0 };
        let [rest, speed] = told.grip;
        let cut = (told.cuts.len() as f64 * t).min(told.cuts.len() as f64 - 1e-6).max(0.0);
        let shown = Shown {
            told,
            moment,
            lobes: self.turned.map(|turned| moment.lobes(scene.shape_share_at_speed, turned)),
            pressure: moment.force(1.0, held(scene.jaw_grip_at_rest, scene.jaw_grip_at_speed)),
            grip: [moment.force(rest, speed).max(0.0), moment.grip * rest],
            cut: told.cuts.get(cut as usize).map(|index| (*index, cut - (cut as usize) as f64)),
            bored: match &scene.jaw_path {
                Some(path) if told.chapter.cuts_jaws() => on_views::at(stage, path, moment.bored),
                _ => Default::default(),
            },
            classes: classes(told.chapter, &moment, scene.jaw_path.is_some()),
        };
        let mut changes = self.face.frame(&shown);
        changes.extend(self.section.frame(&shown));
        let title = self.title(step);
        for view in ["face", "section"] {
            changes.push(Change::of(format!("story-{view}"), "class", format!("view story {}", shown.classes)));
            changes.push(Change::of(format!("story-{view}-step"), "", title.clone()));
            changes.push(Change::of(format!("story-{view}-says"), "", told.says.clone()));
        }
        let number = fill_plain("Step {} of {}", &[&(step + 1), &self.told.len()]);
        changes.push(Change::of("story-number", "", number));
        changes.push(Change::of("story-name", "", told.name.clone()));
        changes.push(Change::of("story-force", "", told.force.clone()));
        changes
    }
}

/// The style sheet shows what belongs to a moment.
fn classes(chapter: Chapter, moment: &Moment, path: bool) -> String {
    let all = [
        (if moment.bored < 1.0 { "is-blank" } else { "is-bored" }, true),
        ("is-making", chapter.makes_jaws()),
        ("is-holding", !chapter.makes_jaws()),
        ("is-boring", path && chapter.cuts_jaws()),
        ("is-ringed", moment.ring > 0.0),
        ("is-seated", moment.part >= 1.0),
        ("is-cutting", chapter.cuts_part()),
        ("is-out", chapter == Chapter::Out),
    ];
    all.iter().filter(|(_, holds)| *holds).map(|(class, _)| *class).collect::<Vec<_>>().join(" ")
}

/// The share of the path after which the corner groove is cut.
fn corner(path: &JawPath) -> Option<f64> {
    path::share_before(path, Purpose::Relief)
}

/// Points turned clockwise about the axis.
pub(super) fn turned(points: &[Point], angle: f64) -> Vec<Point> {
    let (sine, minus_cosine) = polar(1.0, angle);
    let cosine = -minus_cosine;
    points.iter().map(|(x, y)| (x * cosine - y * sine, x * sine + y * cosine)).collect()
}
