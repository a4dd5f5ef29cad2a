//! Reference checks: published or independently derived numbers, kept as data and read by one judge.
//!
//! A file of `reference/` holds the checks of one topic. Each check states its claim, its source, and
//! the numbers it expects with the tolerance and the tolerance's reason. What it checks is either a job,
//! entered and evaluated as a user's (`setup`, compared with another by `over`), or an engine by itself
//! (`engine` with its `inputs`).

mod bending;
mod cutting;
mod engine;
mod figures;
mod gripping;
mod holding;
mod placing;
mod pressing;
mod reading;
mod spreading;

use std::collections::BTreeMap;
use std::path::Path;

use holdround_core::findings::Findings;
use serde::Deserialize;
use serde_json::Value;

use crate::job::Job;

pub(crate) use engine::run;

/// The checks of one topic.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Topic {
    /// What they are about.
    pub topic: String,
    /// The units of what its engines are given and tell.
    #[serde(default = "si")]
    pub units: String,
    /// The checks.
    pub checks: Vec<Check>,
}

fn si() -> String {
    "SI units".into()
}

/// One claim about numbers.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Check {
    /// What is claimed.
    pub claim: String,
    /// Where the numbers come from.
    pub source: String,
    /// How near they must be met.
    pub tolerance: Tolerance,
    /// The engine, where an engine is checked by itself.
    pub engine: Option<String>,
    /// What the engine is given.
    #[serde(default)]
    pub inputs: Value,
    /// The job, where findings are checked.
    pub setup: Option<Job>,
    /// The job whose findings those of `setup` are divided by.
    pub over: Option<Job>,
    /// What must come out, by name: SI values of findings (`a / b` for the ratio of two), or what the engine names.
    pub expect: BTreeMap<String, Expected>,
}

/// How near a number must be met.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tolerance {
    /// As a share of the expected value.
    #[serde(default)]
    pub relative: f64,
    /// In the value's own unit.
    #[serde(default)]
    pub absolute: f64,
    /// Why no nearer.
    pub because: String,
}

/// What must come out.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(untagged)]
pub enum Expected {
    /// This value, within the tolerance.
    Value(f64),
    /// No less.
    AtLeast {
        /// The least.
        at_least: f64,
    },
    /// No more.
    AtMost {
        /// The most.
        at_most: f64,
    },
}

impl Tolerance {
    /// The distance allowed from `expected`.
    #[must_use]
    pub fn about(&self, expected: f64) -> f64 {
        (self.relative * expected.abs()).max(self.absolute)
    }
}

impl Expected {
    fn is_met_by(self, value: f64, tolerance: &Tolerance) -> bool {
        // A NaN meets nothing.
        match self {
            Self::Value(expected) => (value - expected).abs() <= tolerance.about(expected),
            Self::AtLeast { at_least } => value >= at_least,
            Self::AtMost { at_most } => value <= at_most,
        }
    }
}

/// Every topic, by the name of its file.
///
/// # Errors
/// When a file cannot be read or is not a topic.
pub fn topics() -> Result<BTreeMap<String, Topic>, String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference");
    let files = std::fs::read_dir(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut topics = BTreeMap::new();
    for file in files {
        let path = file.map_err(|error| error.to_string())?.path();
        // A folder holds references with a form of their own, such as those of solids.
        if path.extension().is_none_or(|extension| extension != "json") {
            continue;
        }
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let text = std::fs::read_to_string(&path).map_err(|error| format!("{name}: {error}"))?;
        let topic = serde_json::from_str(&text).map_err(|error| format!("{name}: {error}"))?;
        topics.insert(name, topic);
    }
    Ok(topics)
}

/// One expected number beside what came out.
#[derive(Clone, Debug)]
pub struct Met {
    /// What it is of.
    pub name: String,
    /// What was expected.
    pub expected: Expected,
    /// What came out.
    pub value: f64,
}

impl Check {
    /// Every expected number beside what came out, in the order of their names.
    ///
    /// # Errors
    /// The engine's refusal, or that it tells no such number.
    pub fn figures(&self) -> Result<Vec<Met>, String> {
        let found = self.found()?;
        let met = |(name, expected): (&String, &Expected)| {
            Ok(Met { name: name.clone(), expected: *expected, value: found.value(name)? })
        };
        self.expect.iter().map(met).collect()
    }

    /// Every number that is expected and not met; empty when the claim holds.
    #[must_use]
    pub fn misses(&self) -> Vec<String> {
        let figures = match self.figures() {
            Ok(figures) => figures,
            Err(error) => return vec![error],
        };
        let missed = figures.iter().filter(|figure| !figure.expected.is_met_by(figure.value, &self.tolerance));
        missed.map(|Met { name, expected, value }| format!("{name} is {value:?}, expected {expected:?}")).collect()
    }

    fn found(&self) -> Result<Found, String> {
        match (&self.engine, &self.setup) {
            (Some(engine), None) => run(engine, &self.inputs).map(Found::Told),
            (None, Some(setup)) => {
                let over = self.over.as_ref().map(Job::findings).transpose()?;
                Ok(Found::Job { findings: Box::new(setup.findings()?), over: over.map(Box::new) })
            }
            _ => Err("a check is of one engine or of one set-up".into()),
        }
    }
}

/// What came out.
enum Found {
    Told(BTreeMap<String, f64>),
    Job { findings: Box<Findings>, over: Option<Box<Findings>> },
}

impl Found {
    fn value(&self, name: &str) -> Result<f64, String> {
        match self {
            Self::Told(values) => values.get(name).copied().ok_or_else(|| {
                let names: Vec<_> = values.keys().collect();
                format!("the engine tells no {name}, only {names:?}")
            }),
            Self::Job { findings, over: None } => finding_or_ratio(findings, name),
            Self::Job { findings, over: Some(over) } => {
                Ok(finding_or_ratio(findings, name)? / finding_or_ratio(over, name)?)
            }
        }
    }
}

fn finding_or_ratio(findings: &Findings, name: &str) -> Result<f64, String> {
    let value = |id: &str| {
        let finding = findings.get(id).ok_or_else(|| format!("no finding {id}"))?;
        finding.value.clone().map_err(|why| format!("{id} is refused: {why}"))
    };
    match name.split_once(" / ") {
        Some((above, below)) => Ok(value(above)? / value(below)?),
        None => value(name),
    }
}
