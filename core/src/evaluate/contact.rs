//! How the jaws bear on the part, and how hard, as findings.

use alloc::vec::Vec;

use super::elastic::Elasticity;
use super::grip_at_speed::Spinning;
use super::pressed::{OnSize, Pressed};
use super::shape::section;
use crate::contact::Contact;
use crate::findings::{Finding, PressureMap, Scene, Step, term};
use crate::grip::Side;
use crate::jaw::BoredJaw;
use crate::quantity::Kind;
use crate::ring::{Edge, JawLoad};
use crate::setup::Setup;
use crate::text::Text;

/// Length over which a peak of contact pressure is averaged, m: a point's own peak depends on the mesh.
pub(super) const AVERAGED: f64 = 2e-3;
/// Edge bearing of evenly spread pressure is a half; how far from it the words change.
const EVEN_WITHIN: f64 = 0.12;

/// How the jaws bear: mean and local pressure, share, words, gap along the face.
pub(super) fn press(
    setup: &Setup,
    jaw: &BoredJaw,
    elastic: &Elasticity,
    pressed: &Pressed,
    spinning: &Spinning,
    found: &mut Vec<Finding>,
    scene: &mut Scene,
) {
    let face = &elastic.usual;
    let Some(size) = pressed.sizes.first() else { return };
    let mean = mean_pressure(setup, jaw, spinning.most_at_rest);
    scene.contact_pressure = mean;
    scene.pressure = map(elastic, &size.at_rest);
    let yields = [
        setup.part.yield_stress.map(|stress| stress.value),
        setup.jaws.material.yield_strength.map(|figure| figure.value),
    ];
    let weaker = yields.into_iter().flatten().fold(f64::INFINITY, f64::min);
    let peak = pressed
        .sizes
        .iter()
        .flat_map(|size| [&size.at_rest, &size.at_speed])
        .map(|contact| face.greatest_mean_pressure(contact, AVERAGED));
    let peak = peak.fold(0.0, f64::max);
    let told = Finding::new("contact.pressure", "Greatest pressure under a jaw", Kind::Stress, peak)
        .entry("run.pressure")
        .caution("A mean over 2 mm along the circle: at a sharp jaw edge the pressure itself has no bound.")
        .step(Step {
            says: "Pressure of the elastic jaw on the elastic part, where it is greatest, averaged over a short length; beside it the mean over the whole face",
            formula: "p̄ = F₁ / (2 R L sin β)",
            given: [
                term("F₁", spinning.most_at_rest / f64::from(setup.chuck.jaws), Kind::Force),
                term("R", setup.gripped_radius(), Kind::Length),
                term("L", setup.bearing_length(), Kind::Length),
                term("β", jaw.contact_half_angle(), Kind::Angle),
            ]
            .into(),
            result: term("p̄", mean, Kind::Stress),
            source: "one-sided contact of elastic bodies; mean by equilibrium of one jaw",
        });
    found.push(if weaker.is_finite() {
        told.at_most(weaker, "yield stress of the softer of part and jaw")
    } else {
        told
    });
    tell_bearing(face.edge_bearing(&size.at_rest), face.contact_share(&size.at_rest), found);
    tell_gap(setup, elastic, size, found);
    tell_stress(setup, jaw, spinning, found);
}

fn mean_pressure(setup: &Setup, jaw: &BoredJaw, grip: f64) -> f64 {
    let (radius, length) = (setup.gripped_radius(), setup.bearing_length());
    let area = 2.0 * radius * length * libm::sin(jaw.contact_half_angle());
    if area > 0.0 { grip / f64::from(setup.chuck.jaws) / area } else { 0.0 }
}

/// The pressure over half a face, for drawing.
fn map(elastic: &Elasticity, contact: &Contact) -> PressureMap {
    PressureMap {
        angles: elastic.usual.arc().angles().to_vec(),
        heights: elastic.usual.part().points.clone(),
        pressure: contact.pressure.clone(),
    }
}

fn tell_bearing(edge: f64, share: f64, found: &mut Vec<Finding>) {
    let words = if edge > 0.5 + EVEN_WITHIN {
        "The jaws bear mostly at their edges."
    } else if edge < 0.5 - EVEN_WITHIN {
        "The jaws bear mostly in their middle."
    } else {
        "The jaws bear about evenly across their width."
    };
    const CONTACT: &str = "one-sided contact of elastic jaws and part, clamped at rest";
    found.push(
        Finding::new("contact.share", "Share of the jaw face that bears", Kind::Plain, share)
            .entry("jaws.bored_diameter")
            .step(Step {
                says: "Area on which there is pressure, over the area of the face",
                formula: "A_pressed / A",
                given: Vec::new(),
                result: term("A_pressed / A", share, Kind::Plain),
                source: CONTACT,
            }),
    );
    found.push(
        Finding::new("contact.bearing", "Bearing: 0 in the middle, 0.5 even, 1 at the edges", Kind::Plain, edge)
            .caution(words)
            .entry("jaws.bored_diameter")
            .step(Step {
                says: "Mean distance of the pressing force from the middle of the face, as a share of its half width",
                formula: "Σ N |θ| / (β Σ N)",
                given: Vec::new(),
                result: term("bearing", edge, Kind::Plain),
                source: CONTACT,
            }),
    );
}

/// The gap that a feeler gauge meets in the middle of a jaw, at its tip and at its base.
fn tell_gap(setup: &Setup, elastic: &Elasticity, size: &OnSize, found: &mut Vec<Finding>) {
    let middle = elastic.usual.gap_along(&size.at_rest);
    for (key, name, gap) in [
        ("contact.gap.tip", "Gap between jaw and part at the tip", middle.last()),
        ("contact.gap.base", "Gap between jaw and part at the base", middle.first()),
    ] {
        found.push(
            Finding::new(key, name, Kind::Departure, gap.copied().unwrap_or(0.0))
                .caution("In the middle of the jaw, with the part clamped at rest: what a feeler gauge meets.")
                .entry("jaws.taper")
                .step(Step {
                    says: "What is left open between the faces once jaws and part have given way: bored diameter, taper and boring under load against the squeeze",
                    formula: "g = g₀ + u_part + u_jaw − travel",
                    given: [term("taper, per side", setup.jaws.taper.value, Kind::Departure)].into(),
                    result: term("g", gap.copied().unwrap_or(0.0), Kind::Departure),
                    source: "one-sided contact of elastic jaws and part",
                }),
        );
    }
    let taper = setup.jaws.taper.value;
    let name = "Taper bored into the jaws, on diameter";
    found.push(Finding::new("jaw.taper.diameter", name, Kind::Departure, 2.0 * taper).step(Step {
        says: "Twice the taper per side",
        formula: "t_D = 2 t",
        given: [term("t", taper, Kind::Departure)].into(),
        result: term("t_D", 2.0 * taper, Kind::Departure),
        source: "definition",
    }));
}

/// Greatest hoop stress of the gripped section, from the jaws and from spin.
fn tell_stress(setup: &Setup, jaw: &BoredJaw, spinning: &Spinning, found: &mut Vec<Finding>) {
    let name = "Greatest hoop stress in the gripped section";
    let ring = section(setup);
    let grip = spinning.most_at_rest.max(spinning.at_speed.highest);
    let load = JawLoad {
        edge: if setup.grip.side == Side::Outside { Edge::Outside } else { Edge::Bore },
        jaws: setup.chuck.jaws,
        half_angle: jaw.contact_half_angle(),
        force_per_jaw: grip / f64::from(setup.chuck.jaws),
        length: setup.grip.length.value,
    };
    let density = setup.part.material.density.value;
    let finding = match (ring.peak_hoop(&load), ring.spin(setup.speed.value, density)) {
        (Ok(jaws), Ok(spin)) => {
            let squeezed = jaws.outside.max(jaws.bore.unwrap_or(0.0));
            let total = squeezed + spin.peak_hoop;
            Finding::new("part.stress", name, Kind::Stress, total)
                .caution("For the gripped length alone as a plane ring under even pressure: on the safe side where more metal adjoins.")
                .entry("run.pressure")
                .step(Step {
                    says: "Bending and pressure from the jaws, and the spin of the part itself, added as if at one place",
                    formula: "σ = σ_jaws + σ_spin",
                    given: [term("σ_jaws", squeezed, Kind::Stress), term("σ_spin", spin.peak_hoop, Kind::Stress)].into(),
                    result: term("σ", total, Kind::Stress),
                    source: "plane ring by Michell's solution; rotating disk: Timoshenko and Goodier, Theory of Elasticity",
                })
        }
        (Err(error), _) | (_, Err(error)) => {
            Finding::refused("part.stress", name, Kind::Stress, Text::of("No stress can be given: {}.").with(&error))
        }
    };
    found.push(match setup.part.yield_stress {
        Some(limit) => finding.at_most(limit.value, "yield stress of the part"),
        None => finding,
    });
}
