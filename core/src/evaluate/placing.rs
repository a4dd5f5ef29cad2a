//! Where the jaws stand on the chuck: tooth, boring ring and recut, one after another.

use alloc::vec::Vec;

use super::{boring_ring, recut, stroke};
use crate::findings::{Finding, Scene, Sense, Step, term};
use crate::quantity::Kind;
use crate::setup::Setup;
use crate::text::Text;

/// Tells all that was asked for. `bar` is the diameter of the boring bar, m, where it is known.
pub(super) fn tell(setup: &Setup, bar: Option<f64>, found: &mut Vec<Finding>, scene: &mut Scene) {
    let stood = setup.placing.plan.as_ref().and_then(|plan| stroke::tell(setup, plan, found, scene));
    if let (Some(plan), Some(stood)) = (&setup.placing.plan, &stood) {
        boring_ring::tell(setup, plan, stood, bar, found, scene);
    }
    if let Some(back) = &setup.placing.recut {
        recut::tell(setup, back, stood.as_ref(), bar, found, scene);
    }
}

/// What is always said of a length, as far as may be the same on every job and so plain data in the page.
pub(super) struct Line<'a> {
    pub(super) id: &'a str,
    pub(super) name: &'static str,
    /// The entry at which a message stands; empty for none.
    pub(super) entry: &'static str,
    pub(super) says: &'static str,
    pub(super) formula: &'static str,
    /// Symbols of what is put in.
    pub(super) given: &'a [&'static str],
    /// Symbol of the value.
    pub(super) symbol: &'static str,
    pub(super) source: &'static str,
}

/// Makes a length a finding. One function does it for all: built up one by one, each would weigh more in the page than
/// its words. A least value of nothing is no limit, and an empty caution none.
pub(super) fn tell_length(
    found: &mut Vec<Finding>,
    line: &Line<'_>,
    value: f64,
    limit: Option<(Sense, f64, &'static str)>,
    caution: &'static str,
    given: &[f64],
) {
    found.push(length_of(line, value, limit, caution, given));
}

/// A length as a finding, see [`tell_length`].
#[inline(never)]
pub(super) fn length_of(
    line: &Line<'_>,
    value: f64,
    limit: Option<(Sense, f64, &'static str)>,
    caution: &'static str,
    given: &[f64],
) -> Finding {
    let given = line.given.iter().zip(given).map(|(&symbol, &value)| term(symbol, value, Kind::Length)).collect();
    let mut finding = Finding::new(line.id, line.name, Kind::Length, value).step(Step {
        says: line.says,
        formula: line.formula,
        given,
        result: term(line.symbol, value, Kind::Length),
        source: line.source,
    });
    finding.entry = (!line.entry.is_empty()).then_some(line.entry);
    finding.caution = (!caution.is_empty()).then(|| caution.into());
    match limit {
        Some((Sense::AtMost, most, origin)) => finding.at_most(most, origin),
        Some((Sense::AtLeast, least, origin)) if least > 0.0 => finding.at_least(least, origin),
        _ => finding,
    }
}

/// A refusal that stands at an entry.
#[inline(never)]
pub(super) fn refuse(
    found: &mut Vec<Finding>,
    id: &str,
    name: &'static str,
    kind: Kind,
    why: impl Into<Text>,
    entry: &'static str,
) {
    found.push(Finding::refused(id, name, kind, why).entry(entry));
}
