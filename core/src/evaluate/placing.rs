//! Where the jaws stand on the chuck: tooth, boring ring and recut, one after another.

use alloc::vec::Vec;

use super::{boring_ring, recut, stroke};
use crate::findings::{Finding, Scene, Sense, Step, Term, term};
use crate::quantity::Kind;
use crate::setup::Setup;

/// Tells all that was asked for. `bar` is the diameter of the boring bar, m, where it is known.
pub(super) fn tell(setup: &Setup, bar: Option<f64>, found: &mut Vec<Finding>, scene: &mut Scene) {
    let stood = setup.placing.plan.as_ref().and_then(|plan| stroke::tell(setup, plan, found, scene));
    if let (Some(plan), Some(stood)) = (&setup.placing.plan, &stood) {
        boring_ring::tell(setup, plan, stood, bar, found, scene);
    }
    if let Some(back) = &setup.placing.recut {
        recut::tell(setup, back, stood.as_ref(), found, scene);
    }
}

/// A length with the step by which it was reached. One function makes all of them findings: built up one by one, each
/// would weigh more in the page than its words.
pub(super) struct Told<'a> {
    pub(super) id: &'a str,
    pub(super) name: &'a str,
    pub(super) value: f64,
    /// The entry at which a message stands; empty for none.
    pub(super) entry: &'static str,
    /// A least value of nothing is no limit.
    pub(super) limit: Option<(Sense, f64, &'static str)>,
    /// Empty for none.
    pub(super) caution: &'a str,
    pub(super) says: &'static str,
    pub(super) formula: &'static str,
    /// Lengths put in.
    pub(super) given: &'a [(&'static str, f64)],
    /// Symbol of the value.
    pub(super) symbol: &'static str,
    pub(super) source: &'static str,
}

impl Told<'_> {
    #[inline(never)]
    pub(super) fn push(&self, found: &mut Vec<Finding>) {
        let given: Vec<Term> = self.given.iter().map(|&(symbol, value)| term(symbol, value, Kind::Length)).collect();
        let mut finding = Finding::new(self.id, self.name, Kind::Length, self.value).step(Step {
            says: self.says,
            formula: self.formula,
            given,
            result: term(self.symbol, self.value, Kind::Length),
            source: self.source,
        });
        finding.entry = (!self.entry.is_empty()).then_some(self.entry);
        finding.caution = (!self.caution.is_empty()).then(|| self.caution.into());
        found.push(match self.limit {
            Some((Sense::AtMost, most, origin)) => finding.at_most(most, origin),
            Some((Sense::AtLeast, least, origin)) if least > 0.0 => finding.at_least(least, origin),
            _ => finding,
        });
    }
}

/// A refusal that stands at an entry.
#[inline(never)]
pub(super) fn refuse(found: &mut Vec<Finding>, id: &str, name: &str, kind: Kind, why: &str, entry: &'static str) {
    found.push(Finding::refused(id, name, kind, why).entry(entry));
}
