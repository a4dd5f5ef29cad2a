//! A job as its user enters it: a worked example or the defaults, with some entries changed.

use std::collections::BTreeMap;

use holdround_core::evaluate;
use holdround_core::examples::EXAMPLES;
use holdround_core::findings::Findings;
use holdround_core::setup::{Entries, Fault, Setup};
use serde::Deserialize;

/// Enters texts, each at its path.
///
/// # Panics
/// When an input is not declared.
pub fn enter(entries: &mut Entries, texts: &[(&str, &str)]) {
    for (path, text) in texts {
        assert!(entries.set(path, text), "{path} is declared");
    }
}

/// Entries to evaluate.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Job {
    /// The worked example it starts from; else from the defaults.
    pub example: Option<String>,
    /// What is entered over it, by path.
    #[serde(default)]
    pub entries: BTreeMap<String, String>,
}

impl Job {
    /// The entries, as the page would hold them.
    ///
    /// # Errors
    /// When no such example or no such input exists.
    pub fn entries(&self) -> Result<Entries, String> {
        let mut entries = match &self.example {
            None => Entries::default(),
            Some(id) => {
                let example = EXAMPLES.iter().find(|known| known.id == id).ok_or(format!("no example {id}"))?;
                Entries::from_json(example.json).map_err(|faults| listed(&faults))?
            }
        };
        for (path, text) in &self.entries {
            if !entries.set(path, text) {
                return Err(format!("no input {path}"));
            }
        }
        Ok(entries)
    }

    /// The findings, by the way every user's entries go.
    ///
    /// # Errors
    /// When the entries do not make a valid set-up.
    pub fn findings(&self) -> Result<Findings, String> {
        Setup::read(&self.entries()?).map(|setup| evaluate(&setup)).map_err(|faults| listed(&faults))
    }
}

/// Faults, one a line.
#[must_use]
pub fn listed(faults: &[Fault]) -> String {
    faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}
