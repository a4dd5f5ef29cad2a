//! Pressure between jaw and part, against what they bear, as findings.

use alloc::vec::Vec;

use super::grip::Spinning;
use super::shape::{jaw_load, ring};
use crate::findings::{Finding, Scene, Step, term};
use crate::jaw::BoredJaw;
use crate::quantity::Kind;
use crate::setup::Setup;

/// Mean contact pressure and stress in the part, at the greatest grip the job sees.
pub(super) fn press(setup: &Setup, jaw: &BoredJaw, spinning: &Spinning, found: &mut Vec<Finding>, scene: &mut Scene) {
    let radius = setup.gripped_radius();
    let length = setup.grip.length.value;
    let greatest = spinning.most_at_rest.max(spinning.at_speed.highest);
    let load = jaw_load(setup, jaw, greatest, length);
    let at_rest = jaw_load(setup, jaw, spinning.most_at_rest, length);
    scene.contact_pressure = at_rest.pressure(radius).unwrap_or(0.0);
    let name = "Mean pressure under a jaw";
    match load.pressure(radius) {
        Ok(pressure) => {
            let finding = Finding::new("contact.pressure", name, Kind::Stress, pressure)
                .entry("run.pressure")
                .caution("A mean. Jaws not bored to size press harder where they touch.")
                .step(Step {
                    says: "Force of one jaw over the area it covers, seen along its axis",
                    formula: "p = F₁ / (2 R L sin β)",
                    given: [
                        term("F₁", load.force_per_jaw, Kind::Force),
                        term("R", radius, Kind::Length),
                        term("L", length, Kind::Length),
                        term("β", load.half_angle, Kind::Angle),
                    ]
                    .into(),
                    result: term("p", pressure, Kind::Stress),
                    source: "equilibrium of one jaw",
                });
            let yields = [
                setup.part.yield_stress.map(|stress| stress.value),
                setup.jaws.material.yield_strength.map(|figure| figure.value),
            ];
            let weaker = yields.into_iter().flatten().fold(f64::INFINITY, f64::min);
            found.push(if weaker.is_finite() {
                finding.at_most(weaker, "yield stress of the softer of part and jaw")
            } else {
                finding
            });
        }
        Err(error) => {
            let why = alloc::format!("No pressure can be given: {error}.");
            found.push(Finding::refused("contact.pressure", name, Kind::Stress, why));
        }
    }
    stress(setup, &load, found);
}

/// Greatest hoop stress in the part, from the jaws and from spin.
fn stress(setup: &Setup, load: &crate::ring::JawLoad, found: &mut Vec<Finding>) {
    let name = "Greatest hoop stress in the part";
    let ring = ring(setup);
    let density = setup.part.material.density.value;
    let finding = match (ring.peak_hoop(load), ring.spin(setup.speed.value, density)) {
        (Ok(jaws), Ok(spin)) => {
            let squeezed = jaws.outside.max(jaws.bore.unwrap_or(0.0));
            let total = squeezed + spin.peak_hoop;
            Finding::new("part.stress", name, Kind::Stress, total).entry("run.pressure").step(Step {
                says: "Bending and pressure from the jaws, and the spin of the part itself, added as if at one place",
                formula: "σ = σ_jaws + σ_spin",
                given: [term("σ_jaws", squeezed, Kind::Stress), term("σ_spin", spin.peak_hoop, Kind::Stress)].into(),
                result: term("σ", total, Kind::Stress),
                source: "plane ring by Michell's solution; rotating disk: Timoshenko and Goodier, Theory of Elasticity",
            })
        }
        (Err(error), _) | (_, Err(error)) => {
            Finding::refused("part.stress", name, Kind::Stress, alloc::format!("No stress can be given: {error}."))
        }
    };
    found.push(match setup.part.yield_stress {
        Some(limit) => finding.at_most(limit.value, "yield stress of the part"),
        None => finding.caution("This material breaks without yielding: no limit is given."),
    });
}
