//! From a valid set-up to findings: the engines, called in the order of the flow.
//!
//! Grip at rest and at speed, the cuts, the hold against each, the speed all this allows, and the
//! shape of the part. Each file turns one engine's answer into findings with their limits and steps.

mod cautions;
mod contact;
mod cuts;
mod grip;
mod shape;
mod speed;

use alloc::vec::Vec;

use crate::findings::{Assumption, Findings, Scene};
use crate::setup::{Setup, declared};

/// Computes everything there is to know about a set-up.
///
/// ```
/// use holdround_core::{evaluate, setup::{Entries, Setup}};
/// let setup = Setup::read(&Entries::default()).unwrap();
/// let findings = evaluate(&setup);
/// assert!(findings.get("hold.factor").unwrap().value.is_ok());
/// ```
#[must_use]
pub fn evaluate(setup: &Setup) -> Findings {
    let mut found = Vec::new();
    let mut scene = Scene::default();
    let jaw = grip::jaw(setup, &mut found, &mut scene);
    let rest = grip::at_rest(setup, &mut found);
    let spinning = jaw.zip(rest).and_then(|(jaw, rest)| grip::at_speed(setup, &jaw, rest, &mut found, &mut scene));
    let hold = cuts::hold(setup, jaw.as_ref(), spinning.as_ref(), &mut found);
    speed::limits(setup, spinning.as_ref(), hold, &mut found);
    if let Some((jaw, spinning)) = jaw.zip(spinning) {
        contact::press(setup, &jaw, &spinning, &mut found, &mut scene);
        shape::squeeze(setup, &jaw, &spinning, &mut found, &mut scene);
    }
    let cautions = cautions::of(setup, jaw.as_ref(), &found);
    let assumed = setup.assumed.iter().filter_map(|path| assumption(path)).collect();
    Findings { job: setup.name.clone(), findings: found, cautions, assumed, scene }
}

fn assumption(path: &str) -> Option<Assumption> {
    let input = declared(path)?;
    Some(Assumption { entry: path.into(), name: input.name, taken: input.default, source: input.source })
}
