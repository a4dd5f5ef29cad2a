//! Run-out in the jaws, roundness and size after release, as findings.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::grip::Spinning;
use crate::findings::{Finding, Scene, Step, Wave, term};
use crate::grip::Side;
use crate::jaw::BoredJaw;
use crate::quantity::Kind;
use crate::ring::{Annulus, Edge, JawLoad, RingError, Shape, Spin};
use crate::roundness::Profile;
use crate::setup::Setup;

/// Points around the part at which a shape is sampled.
const STATIONS: usize = 360;
/// Harmonics that are enough to draw a shape.
const DRAWN: usize = 24;
/// Longest part, in grip lengths, for which a plane ring still says something.
const LONGEST: f64 = 4.0;
/// Share of the wall that the part may be squeezed by before linear theory is left.
const LARGEST_SQUEEZE: f64 = 0.5;
/// Share of the pressure at which a ring buckles that is still taken for stable.
const BUCKLING_SHARE: f64 = 0.3;
const MODEL: &str =
    "plane ring under even jaw pressure, Michell's solution: Timoshenko and Goodier, Theory of Elasticity";

/// The part as a plane ring.
pub(super) fn ring(setup: &Setup) -> Annulus {
    Annulus {
        inner: setup.part.bore_diameter.value / 2.0,
        outer: setup.part.outside_diameter.value / 2.0,
        modulus: setup.part.modulus.value,
        poisson: setup.part.material.poissons_ratio.value,
    }
}

/// Even pressure of every jaw, for a total grip in N.
pub(super) fn jaw_load(setup: &Setup, jaw: &BoredJaw, grip: f64, length: f64) -> JawLoad {
    JawLoad {
        edge: if setup.grip.side == Side::Outside { Edge::Outside } else { Edge::Bore },
        jaws: setup.chuck.jaws,
        half_angle: jaw.contact_half_angle(),
        force_per_jaw: grip / f64::from(setup.chuck.jaws),
        length,
    }
}

/// One surface: clamped at rest, and clamped at speed.
struct Surface {
    key: &'static str,
    name: &'static str,
    at_rest: Shape,
    at_speed: Shape,
    growth: f64,
}

/// Run-out, roundness and size change of both surfaces.
pub(super) fn squeeze(setup: &Setup, jaw: &BoredJaw, spinning: &Spinning, found: &mut Vec<Finding>, scene: &mut Scene) {
    let surfaces = match refusal(setup, jaw, spinning) {
        Some(why) => Err(why),
        None => surfaces(setup, jaw, spinning).map_err(|error| format!("No shape can be given: {error}.")),
    };
    match surfaces {
        Ok(surfaces) => {
            for surface in &surfaces {
                let wave = wave(&surface.at_rest);
                if surface.key == "outside" {
                    scene.clamped_outside = wave;
                } else {
                    scene.clamped_bore = wave;
                }
            }
            tell(setup, &surfaces, spinning, found);
        }
        Err(why) => {
            found.push(Finding::refused("shape.runout", "Run-out in the jaws (TIR)", Kind::Departure, &*why));
            found.push(Finding::refused("shape.roundness", "Roundness after release", Kind::Departure, why));
        }
    }
}

/// Why a plane, linear ring cannot speak for this part.
fn refusal(setup: &Setup, jaw: &BoredJaw, spinning: &Spinning) -> Option<String> {
    let ring = ring(setup);
    let grip_length = setup.grip.length.value;
    if setup.part.length.value > LONGEST * grip_length {
        return Some(
            "The part is more than four grip lengths long: a plane ring says nothing about its free end. Grip longer."
                .to_string(),
        );
    }
    let load = jaw_load(setup, jaw, spinning.most_at_rest.max(spinning.at_speed.highest), grip_length);
    let squeezed = ring.squeeze(&load).ok()?;
    let wall = ring.outer - ring.inner;
    if squeezed.outside.peak_to_valley() > LARGEST_SQUEEZE * wall {
        return Some("The jaws would squeeze the part by more than half its wall: it is crushed, or far beyond what this model covers. Lower the pressure.".to_string());
    }
    if setup.grip.side == Side::Outside && ring.inner > 0.0 {
        let mean = load.pressure(ring.outer).ok()? * load.half_angle * f64::from(load.jaws) / core::f64::consts::PI;
        if mean > BUCKLING_SHARE * buckling_pressure(&ring) {
            return Some(
                "The wall is so thin that this grip comes near to buckling it. Lower the pressure.".to_string(),
            );
        }
    }
    None
}

/// Even outside pressure at which a long thin ring buckles, Pa: `E t³ / (4 (1 − ν²) R³)`
/// (Bresse 1866; Timoshenko and Gere, Theory of Elastic Stability, from memory).
fn buckling_pressure(ring: &Annulus) -> f64 {
    let mean = f64::midpoint(ring.inner, ring.outer);
    let slender = (ring.outer - ring.inner) / mean;
    ring.modulus * slender * slender * slender / (4.0 * (1.0 - ring.poisson * ring.poisson))
}

fn surfaces(setup: &Setup, jaw: &BoredJaw, spinning: &Spinning) -> Result<Vec<Surface>, RingError> {
    let ring = ring(setup);
    let length = setup.grip.length.value;
    let at_rest = ring.squeeze(&jaw_load(setup, jaw, spinning.most_at_rest, length))?;
    let at_speed = ring.squeeze(&jaw_load(setup, jaw, spinning.at_speed.highest, length))?;
    let Spin { outside_growth, bore_growth, .. } = ring.spin(setup.speed.value, setup.part.material.density.value)?;
    let outside = Surface {
        key: "outside",
        name: "outside",
        at_rest: at_rest.outside,
        at_speed: at_speed.outside,
        growth: outside_growth,
    };
    let bore = at_rest.bore.zip(at_speed.bore).map(|(at_rest, at_speed)| Surface {
        key: "bore",
        name: "bore",
        at_rest,
        at_speed,
        growth: bore_growth.unwrap_or(0.0),
    });
    Ok(core::iter::once(outside).chain(bore).collect())
}

/// The leading harmonics of a shape: enough to draw it.
fn wave(shape: &Shape) -> Wave {
    let harmonics = shape.harmonics.iter().take(DRAWN).map(|term| (term.order, term.amplitude)).collect();
    Wave { mean: shape.mean, harmonics }
}

fn tell(setup: &Setup, surfaces: &[Surface], spinning: &Spinning, found: &mut Vec<Finding>) {
    let jaws = f64::from(setup.chuck.jaws);
    // Load spread over the whole length instead of the grip alone: the other end of what can be.
    let spread = setup.grip.length.value / setup.part.length.value;
    let mut worst_runout: Option<Finding> = None;
    let mut worst_roundness: Option<Finding> = None;
    for surface in surfaces {
        let runout = surface.at_rest.peak_to_valley();
        let finding = Finding::new(
            format!("shape.runout.{}", surface.key),
            format!("Run-out of the {} in the jaws (TIR)", surface.name),
            Kind::Departure,
            runout,
        )
        .at_most(setup.part.runout_limit.value, "the run-out you allow")
        .band(runout * spread, runout)
        .entry("run.pressure")
        .step(Step {
            says: "Highest less lowest point of the clamped surface, as an indicator meets it with the spindle turned by hand",
            formula: "TIR = max u(θ) − min u(θ)",
            given: [
                term("F₁", spinning.most_at_rest / jaws, Kind::Force),
                term("E", setup.part.modulus.value, Kind::Stress),
                term("L", setup.grip.length.value, Kind::Length),
            ]
            .into(),
            result: term("TIR", runout, Kind::Departure),
            source: MODEL,
        });
        worst_runout = Some(worse(worst_runout, &finding, "shape.runout", "Run-out in the jaws (TIR)"));
        found.push(finding);
        if let Some(finding) = tell_roundness(setup, surface, spinning, spread, found) {
            worst_roundness = Some(worse(worst_roundness, &finding, "shape.roundness", "Roundness after release"));
        }
        found.push(tell_size(setup, surface));
    }
    found.extend(worst_runout);
    found.extend(worst_roundness);
}

/// The worse of two findings, under the headline's name.
fn worse(so_far: Option<Finding>, next: &Finding, id: &str, name: &str) -> Finding {
    match so_far {
        Some(finding) if finding.value.as_ref().unwrap_or(&0.0) >= next.value.as_ref().unwrap_or(&0.0) => finding,
        _ => Finding { id: id.into(), name: name.into(), caution: Some(format!("{}.", next.name)), ..next.clone() },
    }
}

/// Roundness by all four circles of ISO 12181; returns the minimum zone's.
fn tell_roundness(
    setup: &Setup,
    surface: &Surface,
    spinning: &Spinning,
    spread: f64,
    found: &mut Vec<Finding>,
) -> Option<Finding> {
    let released: Vec<f64> = surface.at_speed.sampled(STATIONS).iter().map(|departure| -departure).collect();
    let assessed = Profile::equally_spaced(&released).ok()?.assess();
    let circles = [
        ("minimum_zone", "minimum zone", assessed.minimum_zone),
        ("least_squares", "least squares", assessed.least_squares),
        ("minimum_circumscribed", "minimum circumscribed circle", assessed.minimum_circumscribed),
        ("maximum_inscribed", "maximum inscribed circle", assessed.maximum_inscribed),
    ];
    let mut headline = None;
    for (key, circle_name, circle) in circles {
        let value = circle.roundness();
        let finding = Finding::new(
            format!("shape.roundness.{}.{key}", surface.key),
            format!("Roundness of the {} after release, {circle_name}", surface.name),
            Kind::Departure,
            value,
        )
        .band(value * spread, value)
        .entry("run.pressure")
        .step(Step {
            says: "Turned true while clamped, the surface springs to minus its clamped shape when released",
            formula: "RONt = peak to valley of −u(θ) from the reference circle",
            given: [
                term("F₁", spinning.at_speed.highest / f64::from(setup.chuck.jaws), Kind::Force),
                term("E", setup.part.modulus.value, Kind::Stress),
                term("L", setup.grip.length.value, Kind::Length),
            ]
            .into(),
            result: term("RONt", value, Kind::Departure),
            source: "reference circles: ISO 12181-1:2011, from memory; shape: plane ring under even jaw pressure, Michell's solution",
        });
        if key == "minimum_zone" {
            let finding = finding.at_most(setup.part.roundness_limit.value, "the roundness you allow");
            headline = Some(finding.clone());
            found.push(finding);
        } else {
            found.push(finding);
        }
    }
    headline
}

/// Change of diameter from the cut to the bench.
fn tell_size(setup: &Setup, surface: &Surface) -> Finding {
    let change = -2.0 * (surface.at_speed.mean + surface.growth);
    let way = if change < 0.0 { "smaller" } else { "larger" };
    let finding = Finding::new(
        format!("shape.size.{}", surface.key),
        format!("Released {} {way} than as cut, on diameter", surface.name),
        Kind::Departure,
        libm::fabs(change),
    )
    .entry("run.pressure")
    .step(Step {
        says: "Twice what the jaws and the spin had moved the surface on average",
        formula: "ΔD = −2 (u_mean + u_spin)",
        given: [
            term("u_mean", surface.at_speed.mean, Kind::Departure),
            term("u_spin", surface.growth, Kind::Departure),
        ]
        .into(),
        result: term("ΔD", change, Kind::Departure),
        source: "Lamé's ring and rotating disk: Timoshenko and Goodier, Theory of Elasticity",
    });
    match setup.part.size_limit {
        Some(limit) => finding.at_most(limit.value, "the size change you allow"),
        None => finding,
    }
}
