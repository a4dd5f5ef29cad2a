//! The clamping pressure for finishing, where it is another than that for roughing.

use alloc::vec::Vec;

use super::grip_at_rest;
use super::grip_at_speed::{self, Spinning};
use crate::findings::{Finding, Scene, Step, term};
use crate::jaw::BoredJaw;
use crate::quantity::Kind;
use crate::setup::Setup;

/// The grip while finishing, of the set-up as it is then; tells its pressure and its grip.
pub(super) fn spin(last: &Setup, jaw: &BoredJaw, found: &mut Vec<Finding>, scene: &mut Scene) -> Option<Spinning> {
    let mut told = Vec::new();
    let rest = grip_at_rest::tell(last, &mut told);
    let spinning = rest.and_then(|rest| grip_at_speed::tell(last, jaw, rest, &mut told, scene));
    let pressure = last.pressure.value;
    found.push(
        Finding::new("pressure.finish", "Clamping pressure for finishing", Kind::Pressure, pressure)
            .at_most(last.chuck.max_pressure.value, "the cylinder's plate")
            .entry("run.finish_pressure")
            .caution("The released shape follows this pressure, the last one. Unclamp before it is lowered.")
            .step(Step {
                says: "As typed",
                formula: "p_finish",
                given: Vec::new(),
                result: term("p_finish", pressure, Kind::Pressure),
                source: "the gauge on the machine",
            }),
    );
    for (id, name) in
        [("grip.rest", "Total grip at rest while finishing"), ("grip.speed", "Total grip at speed while finishing")]
    {
        let known = told.iter().find(|finding| finding.id == id).cloned();
        let new_id = if id == "grip.rest" { "finish.grip_rest" } else { "finish.grip_speed" };
        found.extend(known.map(|finding| Finding {
            id: new_id.into(),
            name: name.into(),
            entry: Some("run.finish_pressure"),
            ..finding
        }));
    }
    spinning
}
