//! The jaw as bored, as findings.

use alloc::vec::Vec;

use crate::findings::{Finding, Scene, Step, term};
use crate::grip::RotatingMass;
use crate::jaw::BoredJaw;
use crate::quantity::Kind;
use crate::setup::Setup;
use crate::text::Text;

/// The bored jaw, its mass and its swing.
pub(super) fn tell(setup: &Setup, found: &mut Vec<Finding>, scene: &mut Scene) -> Option<BoredJaw> {
    let jaw = match BoredJaw::new(setup.jaw()) {
        Ok(jaw) => jaw,
        Err(error) => {
            let why = Text::of("These jaws cannot be: {}.").with(&error);
            found.push(Finding::refused("jaw.mass", "Mass of one top jaw", Kind::Mass, why));
            return None;
        }
    };
    scene.contact_half_angle = jaw.contact_half_angle();
    scene.jaw_inner_radius = jaw.inner_radius();
    scene.jaw_outer_radius = jaw.outer_radius();
    scene.swing_radius = jaw.swing_radius();
    let density = setup.jaws.material.density.value;
    let mass = top_jaw(setup, &jaw);
    found.push(match setup.jaws.weighed {
        Some(_) => Finding::new("jaw.mass", "Mass of one top jaw, weighed", Kind::Mass, mass.mass).step(Step {
            says: "As typed",
            formula: "m",
            given: Vec::new(),
            result: term("m", mass.mass, Kind::Mass),
            source: "the scales",
        }),
        None => Finding::new("jaw.mass", "Mass of one top jaw", Kind::Mass, mass.mass)
            .caution("Screw holes are not taken off. Weigh the jaw to be sure.")
            .step(Step {
                says: "Volume of the jaw as bored, times its density",
                formula: "m = ρ V",
                given: [term("ρ", density, Kind::Density), term("height", setup.jaws.height.value, Kind::Length)]
                    .into(),
                result: term("m", mass.mass, Kind::Mass),
                source: "geometry of the solid",
            }),
    });
    let arc = 2.0 * jaw.contact_half_angle();
    found.push(Finding::new("jaw.wrap", "Angle over which one jaw touches", Kind::Angle, arc).step(Step {
        says: "Where the bored circle leaves the sides of the jaw",
        formula: "2 β",
        given:
            [term("R", setup.gripped_radius(), Kind::Length), term("β", jaw.contact_half_angle(), Kind::Angle)].into(),
        result: term("2 β", arc, Kind::Angle),
        source: "geometry of the solid",
    }));
    let swing = 2.0 * jaw.swing_radius();
    let swing = Finding::new("jaw.swing", "Swing of the jaws, on diameter", Kind::Length, swing).step(Step {
        says: "Circle of the farthest corner of a jaw, where it grips",
        formula: "D = 2 r_corner",
        given: [term("r_corner", jaw.swing_radius(), Kind::Length)].into(),
        result: term("D", swing, Kind::Length),
        source: "geometry of the solid",
    });
    found.push(match setup.chuck.max_swing {
        Some(limit) => swing.at_most(limit.value, "the chuck's manual or guard").entry("chuck.max_swing"),
        None => swing,
    });
    Some(jaw)
}

/// One top jaw as a lump that turns.
pub(super) fn top_jaw(setup: &Setup, jaw: &BoredJaw) -> RotatingMass {
    let computed =
        RotatingMass { mass: jaw.volume() * setup.jaws.material.density.value, radius: jaw.centroid_radius() };
    match &setup.jaws.weighed {
        None => computed,
        Some(weighed) => RotatingMass {
            mass: weighed.mass.value,
            radius: weighed.radius.map_or(computed.radius, |radius| radius.value),
        },
    }
}
