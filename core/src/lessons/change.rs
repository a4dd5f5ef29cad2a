//! What was changed in a lesson's set-up.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::quantity::Measure;
use crate::setup::{Entries, Form, declared};

/// An entry that does not say what it said at the start.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// Its path.
    pub path: String,
    /// What holds there at the start.
    pub was: String,
    /// What holds there now.
    pub is: String,
}

/// Every entry of `entries` that means something else than at the `start`. The name of the job means nothing.
///
/// ```
/// use holdround_core::{lessons::changes, setup::Entries};
/// let mut start = Entries::default();
/// start.set("run.pressure", "2 MPa");
/// let mut entries = start.clone();
/// entries.set("run.pressure", "20 bar");
/// assert!(changes(&start, &entries).is_empty(), "the same in another unit");
/// entries.set("run.pressure", "15 bar");
/// assert_eq!(changes(&start, &entries)[0].is, "15 bar");
/// ```
#[must_use]
pub fn changes(start: &Entries, entries: &Entries) -> Vec<Change> {
    let new = entries.iter().filter(|(path, _)| start.get(path).is_none());
    let paths = start.iter().chain(new).map(|(path, _)| path).filter(|path| *path != "job.name");
    paths
        .filter_map(|path| {
            let input = declared(path)?;
            let [was, is] = [start, entries].map(|set| set.text_or_default(path, input));
            let same = match input.form {
                Form::Quantity { kind, .. } => {
                    let [was, is] = [was, is].map(|text| Measure::parse(kind, text).ok().map(|measure| measure.si));
                    // What was typed in another unit is the same to nine figures.
                    was.zip(is).is_some_and(|(was, is)| libm::fabs(was - is) <= 1e-9 * libm::fabs(was))
                }
                _ => false,
            };
            (was != is && !same).then(|| Change { path: path.to_string(), was: was.to_string(), is: is.to_string() })
        })
        .collect()
}
