//! Hold factors of loads with a closed form, by the engine alone. SI.

use holdround_core::cutting::Wrench;
use holdround_core::grip::Side;
use holdround_core::hold::{Clamped, ContactPoint, JawGrip, Wrap};
use serde::Deserialize;

use super::engine::{Told, refused, told};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ThreeJaws {
    grip: f64,
    friction: f64,
    radius: f64,
    length: f64,
    force: [f64; 3],
    moment: [f64; 3],
}

pub(super) fn three_jaws(given: ThreeJaws) -> Told {
    let jaws = JawGrip {
        jaws: 3,
        half_angle: 0.3,
        radius: given.radius,
        length: given.length,
        force: given.grip,
        side: Side::Outside,
        wrap: Wrap::Ignored,
    };
    let contacts = jaws.contacts(5, 3).map_err(refused)?;
    factor(&contacts, given.friction, &Wrench { force: given.force, moment: given.moment })
}

/// Two jaws touching at a point each in the plane of their faces and at the depth `length`, on the x axis.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct TwoRings {
    force_at_each_point: f64,
    friction: f64,
    radius: f64,
    length: f64,
    force: [f64; 3],
    at: [f64; 3],
    moment: [f64; 3],
}

pub(super) fn two_rings(given: TwoRings) -> Told {
    let point = |side: f64, z: f64| ContactPoint {
        position: [side * given.radius, 0.0, z],
        normal: [-side, 0.0, 0.0],
        normal_force: given.force_at_each_point,
    };
    let contacts = [point(1.0, 0.0), point(1.0, -given.length), point(-1.0, 0.0), point(-1.0, -given.length)];
    let mut load = Wrench::of_force_at(given.force, given.at);
    for (sum, more) in load.moment.iter_mut().zip(given.moment) {
        *sum += more;
    }
    factor(&contacts, given.friction, &load)
}

fn factor(contacts: &[ContactPoint], friction: f64, load: &Wrench) -> Told {
    let held = Clamped::new(contacts, friction, None).map_err(refused)?.hold(load).map_err(refused)?;
    let limit = held.limit().ok_or(format!("no limit: {held:?}"))?;
    told([("factor", limit.factor), ("upper", limit.upper)])
}
