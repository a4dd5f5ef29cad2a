//! Findings: everything computed from a set-up, as plain data for page, sheet and script.

mod boring;
mod finding;
mod indicator;
#[cfg(feature = "serde")]
mod json;
mod placing;
mod scene;

use alloc::string::String;
use alloc::vec::Vec;

pub use boring::{BluingPicture, JawPath};
pub use finding::{Finding, Limit, Mark, Moved, Sense, Step, Term, term};
pub use indicator::Dial;
pub use placing::{BearingChoice, OwnRingFit, Placing, Procedure, RingSection, Tooth};
pub use scene::{PressureMap, Scene, Shift, Trace, TraceCircle, Wave};

/// Everything computed from a set-up.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Findings {
    /// The user's own name for the job.
    pub job: String,
    /// Every result, in the order of the flow: grip, spin, cuts, hold, contact, shape.
    pub findings: Vec<Finding>,
    /// What must be heeded, most serious first.
    pub cautions: Vec<Caution>,
    /// What was taken for want of an entry.
    pub assumed: Vec<Assumption>,
    /// What the diagram draws.
    pub scene: Scene,
}

/// Something to be heeded.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Caution {
    /// How serious it is.
    pub weight: Weight,
    /// In words.
    pub says: String,
    /// The entry it is about, if it is about one.
    pub entry: Option<&'static str>,
}

/// How serious a caution is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
pub enum Weight {
    /// Do not run the set-up like this.
    Stop,
    /// It matters for this job, or the model leaves it out.
    Model,
    /// Stands on every job.
    Standing,
}

/// An input whose default was taken.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Assumption {
    /// Its path.
    pub entry: String,
    /// Its name.
    pub name: &'static str,
    /// What was taken.
    pub taken: String,
    /// Where it comes from.
    pub source: &'static str,
    /// How far a tenth more or less of it moves what is left to a limit of the verdict, as a share of the limit; none
    /// while that is not worked out, or where it is not tried.
    #[cfg_attr(feature = "serde", serde(skip))]
    pub matters: Option<f64>,
}

impl Findings {
    /// The result called `id`.
    ///
    /// ```
    /// use holdround_core::{evaluate, setup::{Entries, Setup}};
    /// let findings = evaluate(&Setup::read(&Entries::default()).unwrap());
    /// assert_eq!(findings.get("hold.factor").unwrap().id, "hold.factor");
    /// assert!(findings.get("no such thing").is_none());
    /// ```
    #[must_use]
    pub fn get(&self, id: &str) -> Option<&Finding> {
        self.findings.iter().find(|finding| finding.id == id)
    }

    /// The value of the result called `id`; none if there is no such result or it is refused.
    ///
    /// ```
    /// use holdround_core::{evaluate, setup::{Entries, Setup}};
    /// let findings = evaluate(&Setup::read(&Entries::default()).unwrap());
    /// assert!(findings.value("hold.factor").unwrap() > 0.0);
    /// assert_eq!(findings.value("no such thing"), None);
    /// ```
    #[must_use]
    pub fn value(&self, id: &str) -> Option<f64> {
        self.get(id)?.value.as_ref().ok().copied()
    }
}
