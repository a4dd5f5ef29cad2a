//! Readings of an indicator, by the engine alone.

use std::collections::BTreeMap;

use holdround_core::indicator::Readings;
use serde::Deserialize;

use super::engine::{Told, refused};

/// One set of readings; null where a station was not read.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Set {
    departures: Vec<Option<f64>>,
    start: f64,
    jaws: usize,
    resolution: f64,
}

pub(super) fn fourier_fit(given: Set) -> Told {
    let Set { departures, start, jaws, resolution } = given;
    let fit = Readings { departures: &departures, start, jaws, resolution }.fit().map_err(refused)?;
    let mut told = BTreeMap::from([("mean".to_string(), fit.mean)]);
    for wave in &fit.waves {
        let terms = [("cos", wave.cos), ("sin", wave.sin), ("uncertainty", wave.uncertainty)];
        told.extend(terms.map(|(name, value)| (format!("{name} {}", wave.order), value)));
    }
    told.extend(fit.scatter.map(|scatter| ("scatter".to_string(), scatter)));
    Ok(told)
}
