//! Cutting force, by the engine alone. SI but for the approach angle, in degrees.

use std::f64::consts::FRAC_PI_2;

use holdround_core::cutting::{AxialFeed, Cut, ForceRatios, Operation, SpecificForce, ToolPosition, Turning};
use serde::Deserialize;

use super::engine::{Told, refused, told};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Chip {
    kc11: f64,
    mc: f64,
    depth: f64,
    feed: f64,
    approach_degrees: f64,
}

pub(super) fn kienzle(given: Chip) -> Told {
    let material = SpecificForce { kc11: given.kc11, mc: given.mc };
    let cut = Cut {
        operation: Operation::Turning(Turning {
            depth: given.depth,
            feed: given.feed,
            approach: given.approach_degrees / 90.0 * FRAC_PI_2,
            direction: AxialFeed::TowardChuck,
        }),
        material,
        correction: 1.0,
        ratios: ForceRatios { feed: 0.0, passive: 0.0 },
        tool: ToolPosition { radius: 0.04, z: 0.0 },
    };
    let forces = cut.forces().map_err(refused)?;
    let chip = forces.chip.ok_or("turning has a chip")?;
    told([
        ("width", chip.width),
        ("thickness", chip.thickness),
        ("specific_force", material.at(chip.thickness).map_err(refused)?),
        ("force", forces.cutting),
    ])
}
