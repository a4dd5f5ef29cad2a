//! Findings: everything computed from a set-up, as plain data for page, sheet and script.
//!
//! ```
//! use holdround_core::findings::{
//!     Assumption, BearingChoice, BluingPicture, Caution, Finding, Findings, JawPath, Limit, Mark, Moved, OwnRingFit,
//!     Placing, PressureMap, Procedure, RingSection, Scene, Sense, Shift, Step, Term, Tooth, Trace, TraceCircle, Weight,
//!     term,
//! };
//! use holdround_core::quantity::Kind;
//! use holdround_core::{examples::EXAMPLES, evaluate, setup::{Entries, Setup}};
//!
//! // Every finding tells its value, its limit and where that comes from, what to beware of, and how it was reached.
//! let (hold, wanted) = (term("S", 1.8, Kind::Plain), 2.0);
//! let step = Step { says: "Grip over need", formula: "S = F / F0", given: vec![], result: hold, source: "invented" };
//! let finding = Finding::new("hold", "Hold", Kind::Plain, 1.8)
//!     .at_least(wanted, "entered")
//!     .band(1.6, 2.1)
//!     .caution("Less than wanted.")
//!     .entry("grip.required_hold")
//!     .step(step);
//! assert_eq!(finding.mark(), Mark::Beyond);
//! assert_eq!(finding.limit, Some(Limit { value: wanted, sense: Sense::AtLeast, origin: "entered".into() }));
//! let Term { symbol, .. } = &finding.steps[0].result;
//! assert_eq!(*symbol, "S");
//! let moved = Moved { entry: "grip.friction".into(), name: "Friction", to: "0.11".into(), by: 0.2 };
//! assert_eq!(Finding { moved_by: Some(vec![moved]), ..finding }.moved_by.map(|moved| moved.len()), Some(1));
//! assert_eq!(Finding::refused("hold", "Hold", Kind::Plain, "No grip.").mark(), Mark::Refused);
//!
//! // All that is found of a job.
//! let found: Vec<Findings> = EXAMPLES.iter().map(|example| {
//!     evaluate(&Setup::read(&Entries::from_json(example.json).unwrap()).unwrap())
//! }).collect();
//! let all = found.iter();
//! let standing: Vec<&Caution> = all.clone().flat_map(|one| &one.cautions).filter(|one| one.weight == Weight::Standing).collect();
//! assert!(standing.len() >= found.len(), "something always stands to be said");
//! let assumed: Vec<&Assumption> = all.clone().flat_map(|one| &one.assumed).collect();
//! assert!(assumed.iter().all(|one| !one.taken.is_empty()));
//!
//! // And what the drawings show of it.
//! let scenes: Vec<&Scene> = all.map(|one| &one.scene).collect();
//! let PressureMap { angles, heights, pressure } = &scenes[0].pressure;
//! assert_eq!(pressure.len(), angles.len() * heights.len());
//! let along: &[Shift] = &scenes[0].outside_along;
//! assert!(along.iter().all(|shift| shift.z.is_finite()));
//! let Trace { circles, released, .. } = scenes.iter().find_map(|scene| scene.trace.as_ref()).unwrap();
//! let [TraceCircle { radius, roundness, .. }, ..] = circles;
//! assert!(radius.is_finite() && *roundness >= 0.0 && released.at(0.0).is_finite());
//! let JawPath { moves, .. } = scenes.iter().find_map(|scene| scene.jaw_path.as_ref()).unwrap();
//! assert!(moves.len() > 4);
//! let pictures: Vec<&BluingPicture> = scenes.iter().flat_map(|scene| &scene.bluing).collect();
//! assert!(pictures.iter().flat_map(|picture| &picture.gap).all(|gap| *gap >= 0.0));
//! let places: Vec<&Placing> = scenes.iter().filter_map(|scene| scene.placing.as_ref()).collect();
//! let Tooth { step, .. } = &places[0].teeth[0];
//! assert!(step.is_finite());
//! let rings: Vec<&RingSection> = places.iter().filter_map(|place| place.ring.as_ref()).collect();
//! assert!(rings.iter().all(|ring| ring.radii[0] < ring.radii[1]));
//! let choices: Vec<&BearingChoice> = places.iter().flat_map(|place| &place.bearings).collect();
//! assert!(choices.iter().any(|choice| choice.clears));
//! let own: Vec<&OwnRingFit> = places.iter().flat_map(|place| &place.own_rings).collect();
//! assert!(own.iter().all(|fit| !fit.name.is_empty()));
//! let orders: Vec<&Procedure> = scenes.iter().flat_map(|scene| &scene.procedures).collect();
//! assert!(orders.iter().all(|order| !order.steps.is_empty()));
//! ```

mod boring;
mod finding;
mod indicator;
#[cfg(feature = "serde")]
mod json;
mod placing;
mod scene;

use crate::text::Text;
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
    pub says: Text,
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
