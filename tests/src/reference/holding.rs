//! Hold factors of loads with a closed form, by the engine alone. SI.

use holdround_core::cutting::Wrench;
use holdround_core::grip::Side;
use holdround_core::hold::{Centre, Clamped, ContactPoint, JawGrip, LateralSupport, Seat, Wrap};
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
    let contacts = at_four_points(given.force_at_each_point, given.radius, given.length);
    let mut load = Wrench::of_force_at(given.force, given.at);
    for (sum, more) in load.moment.iter_mut().zip(given.moment) {
        *sum += more;
    }
    factor(&contacts, given.friction, &load)
}

/// The same two jaws centring a part that rests on a ring of radius `seat` at the depth `length`, with a centre on the
/// axis at `z`.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct TwoRingsCentred {
    force_at_each_point: f64,
    friction: f64,
    radius: f64,
    length: f64,
    seat: f64,
    thrust: f64,
    z: f64,
    force: [f64; 3],
    moment: [f64; 3],
}

pub(super) fn two_rings_centred(given: TwoRingsCentred) -> Told {
    let contacts = at_four_points(given.force_at_each_point, given.radius, given.length);
    let seat = Seat { radius: given.seat, z: -given.length };
    let part = Clamped::new(&contacts, given.friction, Some(seat)).map_err(refused)?.supported(LateralSupport::Jaws);
    let part = part.centred(Centre { z: given.z, thrust: given.thrust }).map_err(refused)?;
    limit(&part, &Wrench { force: given.force, moment: given.moment })
}

fn at_four_points(force: f64, radius: f64, length: f64) -> [ContactPoint; 4] {
    let point = |side: f64, z: f64| ContactPoint {
        position: [side * radius, 0.0, z],
        normal: [-side, 0.0, 0.0],
        normal_force: force,
    };
    [point(1.0, 0.0), point(1.0, -length), point(-1.0, 0.0), point(-1.0, -length)]
}

fn factor(contacts: &[ContactPoint], friction: f64, load: &Wrench) -> Told {
    limit(&Clamped::new(contacts, friction, None).map_err(refused)?, load)
}

fn limit(part: &Clamped, load: &Wrench) -> Told {
    let held = part.hold(load).map_err(refused)?;
    let limit = held.limit().ok_or(format!("no limit: {held:?}"))?;
    told([("factor", limit.factor), ("upper", limit.upper)])
}
