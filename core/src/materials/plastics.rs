//! Engineering plastics. Stiffness and strength are short-term values at room temperature; they fall with
//! time under load, heat and moisture, so a plastic part or jaw must be gripped with care. Where the source gives
//! a range, stiffness is its middle (PTFE) and strength its lower end.

use super::Family::Plastic;
use super::Source::{Callister, Dowling, PlasticsHandbook, PlasticsTable};
use super::{Material, figure};

pub(super) static PLASTICS: &[Material] = &[
    Material {
        id: "acetal-pom",
        name: "Acetal, unfilled",
        designation: "POM, ISO 1043-1",
        family: Plastic,
        density: figure(1_410.0, PlasticsTable),
        youngs_modulus: figure(2.9e9, PlasticsTable),
        poissons_ratio: figure(0.35, PlasticsHandbook),
        yield_strength: Some(figure(65e6, PlasticsTable)),
        cutting: None,
        part: true,
        jaw: true,
    },
    Material {
        id: "polyamide-66",
        name: "Polyamide 66, dry",
        designation: "PA66, ISO 1043-1",
        family: Plastic,
        density: figure(1_140.0, PlasticsTable),
        youngs_modulus: figure(2.7e9, Dowling),
        poissons_ratio: figure(0.41, Dowling),
        yield_strength: Some(figure(55.1e6, Callister)),
        cutting: None,
        part: true,
        jaw: true,
    },
    Material {
        id: "peek",
        name: "Polyether ether ketone, unfilled",
        designation: "PEEK, ISO 1043-1",
        family: Plastic,
        density: figure(1_310.0, PlasticsHandbook),
        youngs_modulus: figure(3.7e9, PlasticsHandbook),
        poissons_ratio: figure(0.38, PlasticsHandbook),
        yield_strength: Some(figure(95e6, PlasticsHandbook)),
        cutting: None,
        part: true,
        jaw: false,
    },
    Material {
        id: "ptfe",
        name: "Polytetrafluoroethylene, unfilled",
        designation: "PTFE, ISO 1043-1",
        family: Plastic,
        density: figure(2_170.0, Callister),
        youngs_modulus: figure(0.475e9, Callister),
        poissons_ratio: figure(0.46, Callister),
        yield_strength: Some(figure(13.8e6, Callister)),
        cutting: None,
        part: true,
        jaw: false,
    },
    Material {
        id: "polycarbonate",
        name: "Polycarbonate, unfilled",
        designation: "PC, ISO 1043-1",
        family: Plastic,
        density: figure(1_190.0, PlasticsHandbook),
        youngs_modulus: figure(2.38e9, Callister),
        poissons_ratio: figure(0.38, Dowling),
        yield_strength: Some(figure(62.1e6, Callister)),
        cutting: None,
        part: true,
        jaw: false,
    },
];
