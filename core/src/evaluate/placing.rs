//! Where the jaws stand on the chuck: tooth, boring ring and recut, one after another.

use alloc::vec::Vec;

use super::{boring_ring, recut, stroke};
use crate::findings::{Finding, Scene};
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
