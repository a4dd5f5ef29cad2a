//! Lessons: short tasks on set-ups of our own, each with a goal that the findings decide.
//!
//! A lesson is data: words, a set-up to begin with, the entries that are meant to be changed, and what the findings
//! must show in the end. Its words hold no figures of their own: those are taken from the findings, see [`figures`].
//!
//! ```
//! use holdround_core::lessons::{Change, Check, Goal, LESSONS, Lesson, Seen, Want, changes};
//! use holdround_core::{evaluate, setup::{Entries, Setup}};
//!
//! let lesson: &Lesson = &LESSONS[0];
//! let start = Entries::from_json(lesson.json).unwrap();
//! let mut entries = start.clone();
//! let (path, text) = lesson.solution[0];
//! entries.set(path, text);
//! let moved: Vec<Change> = changes(&start, &entries);
//! assert_eq!(moved[0].path, path);
//!
//! // Each goal is seen in the findings by itself; the lesson is done when all are met by what was meant to be changed.
//! let found = evaluate(&Setup::read(&entries).unwrap());
//! let check = Check::of(lesson, &start, &entries, &found);
//! assert_eq!(check.all_met(), check.met() == lesson.goals.len());
//! assert!(check.is_done() <= check.all_met() && check.strayed.is_empty());
//! let goal = Goal { finding: "hold.factor", name: "Hold", want: Want::AtLeast(1.0) };
//! let Seen { least, met, .. } = goal.seen(&found);
//! assert_eq!((least, met), (Some(1.0), found.value("hold.factor").unwrap() >= 1.0));
//! ```

mod bore_under_load;
mod bored_size;
mod change;
mod check;
pub mod figures;
mod goal;
mod indicator;
mod mid_stroke;
mod speed;
mod taper;
#[cfg(test)]
mod tests;
mod thin_ring;
mod wide_pie_six;

pub use change::{Change, changes};
pub use check::Check;
pub use goal::{Goal, Seen, Want};

/// A lesson.
#[derive(Clone, Copy, Debug)]
pub struct Lesson {
    /// Its name in links.
    pub key: &'static str,
    /// Its title.
    pub title: &'static str,
    /// What it is about, a paragraph each.
    pub says: &'static [&'static str],
    /// What to do.
    pub task: &'static str,
    /// The set-up to begin with, as JSON.
    pub json: &'static str,
    /// The paths of the entries that are meant to be changed.
    pub change: &'static [&'static str],
    /// What the findings must show in the end.
    pub goals: &'static [Goal],
    /// More findings to keep an eye on, with a short name.
    pub watch: &'static [(&'static str, &'static str)],
    /// One way to do it, as entries by path.
    pub solution: &'static [(&'static str, &'static str)],
    /// What happened and why, a paragraph each, with [`figures`].
    pub told: &'static [&'static str],
    /// What to beware of in the shop.
    pub caution: &'static str,
}

/// The lessons, in the order in which they teach.
///
/// ```
/// use holdround_core::{evaluate, lessons::{Check, LESSONS}, setup::{Entries, Setup}};
/// for lesson in LESSONS {
///     let start = Entries::from_json(lesson.json).unwrap();
///     let mut done = start.clone();
///     for (path, text) in lesson.solution {
///         done.set(path, text);
///     }
///     let check = |entries: &Entries| {
///         Check::of(lesson, &start, entries, &evaluate(&Setup::read(entries).unwrap())).is_done()
///     };
///     assert!(!check(&start) && check(&done), "{}", lesson.key);
/// }
/// ```
pub const LESSONS: &[Lesson] = &[
    thin_ring::LESSON,
    wide_pie_six::LESSON,
    bored_size::LESSON,
    speed::LESSON,
    bore_under_load::LESSON,
    taper::LESSON,
    mid_stroke::LESSON,
    indicator::LESSON,
];
