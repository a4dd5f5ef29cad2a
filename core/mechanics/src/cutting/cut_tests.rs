use super::*;
use crate::cutting::{Boring, Drilling, Facing, Grooving, SpindlePower, Turning, cross, twist_drill_thrust_ratio};
use core::f64::consts::{FRAC_PI_2, PI};
use proptest::prelude::*;

const C45: SpecificForce = SpecificForce { kc11: 2220e6, mc: 0.14 };

fn cut(operation: Operation) -> Cut {
    Cut {
        operation,
        material: C45,
        correction: 1.0,
        ratios: ForceRatios { feed: 0.4, passive: 0.3 },
        tool: ToolPosition { radius: 0.04, z: 0.02 },
    }
}

fn turning(direction: AxialFeed) -> Operation {
    Operation::Turning(Turning { depth: 2e-3, feed: 0.25e-3, approach: FRAC_PI_2, direction })
}

fn close(got: f64, want: f64, claim: &str) {
    // Rounding, or the ten digits of a reference value.
    assert!((got - want).abs() <= 1e-9 * want.abs().max(1.0), "{claim}: {got} is not {want}");
}

#[test]
fn turning_pushes_the_part_inward_and_along_the_feed() {
    let toward = cut(turning(AxialFeed::TowardChuck)).load().unwrap();
    assert!(toward.radial < 0.0, "passive force points to the axis");
    assert!(toward.tangential < 0.0, "the tool drags against the spindle");
    assert!(toward.axial < 0.0, "feed toward the chuck pushes in");
    let away = cut(turning(AxialFeed::AwayFromChuck)).load().unwrap();
    close(away.axial, -toward.axial, "feed away pulls as hard as feed toward pushes");
}

#[test]
fn boring_pushes_the_part_outward() {
    let direction = AxialFeed::TowardChuck;
    let boring = Boring { depth: 2e-3, feed: 0.25e-3, approach: FRAC_PI_2, direction };
    let load = cut(Operation::Boring(boring)).load().unwrap();
    let turned = cut(turning(direction)).load().unwrap();
    close(load.radial, -turned.radial, "passive force of boring");
    close(load.axial, turned.axial, "feed force of boring");
}

#[test]
fn facing_feeds_radially_and_presses_toward_the_chuck() {
    // Whichever way the tool runs, its edge lies before the face.
    for (direction, outward) in [(RadialFeed::Inward, -1.0), (RadialFeed::Outward, 1.0)] {
        let facing = cut(Operation::Facing(Facing { depth: 2e-3, feed: 0.25e-3, approach: FRAC_PI_2, direction }));
        let (load, forces) = (facing.load().unwrap(), facing.forces().unwrap());
        close(load.radial, outward * forces.feed, "feed force points the way of the feed");
        assert!(forces.passive > 0.0, "there is a passive force");
        close(load.axial, -forces.passive, "passive force points to the chuck");
    }
}

#[test]
fn grooving_cuts_its_full_width_and_pushes_radially_only() {
    let grooving = |surface| cut(Operation::Grooving(Grooving { width: 3e-3, feed: 0.1e-3, surface }));
    let outside = grooving(Surface::Outside);
    let forces = outside.forces().unwrap();
    // kc1.1 b h^(1 - mc) in N and mm: 2220 x 3 x 0.1^0.86.
    close(forces.cutting, 2220.0 * 3.0 * libm::pow(0.1, 0.86), "main force of a groove");
    let load = outside.load().unwrap();
    close(load.radial, -forces.feed, "outside groove pushes inward");
    close(load.axial, 0.0, "no axial force");
    close(grooving(Surface::Inside).load().unwrap().radial, forces.feed, "inside, outward");
}

fn drilling(diameter: f64, pilot: f64, feed: f64) -> Cut {
    let point_angle = 118.0_f64.to_radians();
    let ratios = ForceRatios { feed: twist_drill_thrust_ratio(point_angle), passive: 0.0 };
    let operation = Operation::Drilling(Drilling { diameter, pilot, feed, point_angle });
    Cut { ratios, ..cut(operation) }
}

// Tschätsch, Praxis der Zerspantechnik, drilling (from memory).
#[test]
fn drilling_from_the_solid_has_torque_kc_f_d_squared_over_eight() {
    let forces = drilling(20e-3, 0.0, 0.3e-3).forces().unwrap();
    let thickness = 0.15e-3 * libm::sin(59.0_f64.to_radians());
    let kc = C45.at(thickness).unwrap();
    close(forces.torque, kc * 0.3e-3 * 0.02 * 0.02 / 8.0, "torque");
    let lips = kc * 0.3e-3 * 0.02 / 2.0;
    close(forces.feed, lips * libm::sin(59.0_f64.to_radians()), "thrust");
}

#[test]
fn opening_a_pilot_hole_has_torque_of_the_difference_of_squares() {
    let forces = drilling(20e-3, 8e-3, 0.3e-3).forces().unwrap();
    let kc = C45.at(0.15e-3 * libm::sin(59.0_f64.to_radians())).unwrap();
    close(forces.torque, kc * 0.3e-3 * (0.02 * 0.02 - 0.008 * 0.008) / 8.0, "torque");
}

#[test]
fn a_drill_loads_the_part_by_thrust_and_torque_at_any_angle() {
    let drill = drilling(20e-3, 0.0, 0.3e-3);
    let (load, forces) = (drill.load().unwrap(), drill.forces().unwrap());
    for phi in [0.0, 1.0, 4.0] {
        let wrench = load.wrench(phi);
        assert_eq!(wrench.force, [0.0, 0.0, -forces.feed], "thrust at {phi}");
        assert_eq!(wrench.moment, [0.0, 0.0, -forces.torque], "torque at {phi}");
    }
}

// P = Fc vc: 1347.756322 N at 200 m/min is 4492.52 W, derived independently.
#[test]
fn power_is_force_times_cutting_speed_and_leads_back_to_the_force() {
    let turned = cut(turning(AxialFeed::TowardChuck));
    let angular_speed = 200.0 / 60.0 / 0.04;
    let demand = turned.demand(angular_speed, 0.8).unwrap();
    // The reference has six digits.
    assert!((demand.power * 0.8 / 4492.52 - 1.0).abs() < 1e-5, "power is {}", demand.power);
    let known = Operation::SpindlePower(SpindlePower {
        power: demand.power,
        efficiency: 0.8,
        angular_speed,
        directions: Directions::Turning(AxialFeed::TowardChuck),
    });
    let again = Cut { correction: 1.4, ..cut(known) };
    close(again.forces().unwrap().cutting, turned.forces().unwrap().cutting, "force from power");
    for angular_speed in [0.0, f64::INFINITY, f64::NAN] {
        let Operation::SpindlePower(known) = known else { continue };
        let without = cut(Operation::SpindlePower(SpindlePower { angular_speed, ..known }));
        assert_eq!(without.forces(), Err(CuttingError::Speed), "no force at {angular_speed} rad/s");
    }
}

#[test]
fn wear_scales_every_force() {
    let sharp = cut(turning(AxialFeed::TowardChuck));
    let worn = Cut { correction: 1.4, ..sharp };
    let (sharp, worn) = (sharp.forces().unwrap(), worn.forces().unwrap());
    close(worn.cutting, 1.4 * sharp.cutting, "main force");
    close(worn.feed, 1.4 * sharp.feed, "feed force");
    close(worn.passive, 1.4 * sharp.passive, "passive force");
    close(worn.torque, 1.4 * sharp.torque, "torque");
}

#[test]
fn inputs_outside_their_range_are_named() {
    let base = cut(turning(AxialFeed::TowardChuck));
    let with = |depth: f64, feed: f64, approach: f64| {
        let direction = AxialFeed::TowardChuck;
        cut(Operation::Turning(Turning { depth, feed, approach, direction })).forces().unwrap_err()
    };
    assert_eq!(with(0.0, 1e-4, 1.0), CuttingError::Depth, "no depth");
    assert_eq!(with(1e-3, f64::NAN, 1.0), CuttingError::Feed, "feed not a number");
    assert_eq!(with(1e-3, 1e-4, PI), CuttingError::Approach, "edge along the feed");
    assert_eq!(with(1e300, 1e300, 1.0), CuttingError::Overflow, "absurd chip");
    let ratios = ForceRatios { feed: -0.1, passive: 0.3 };
    assert_eq!(Cut { ratios, ..base }.load(), Err(CuttingError::Ratios), "negative ratio");
    let tool = ToolPosition { radius: -0.01, z: 0.0 };
    assert_eq!(Cut { tool, ..base }.load(), Err(CuttingError::Tool), "negative radius");
    assert_eq!(Cut { correction: 0.0, ..base }.load(), Err(CuttingError::Correction), "nil");
    assert_eq!(base.demand(-1.0, 0.8), Err(CuttingError::Speed), "negative speed");
    assert_eq!(base.demand(1.0, 1.2), Err(CuttingError::Efficiency), "efficiency over one");
    assert_eq!(drilling(8e-3, 8e-3, 1e-4).forces(), Err(CuttingError::Diameter), "no stock");
}

proptest! {
    #[test]
    fn the_wrench_is_the_force_at_the_tool(
        radius in 0.0..0.3_f64, z in -0.1..0.5_f64, phi in -7.0..7.0_f64,
        radial in -1e4..1e4_f64, tangential in -1e4..1e4_f64, axial in -1e4..1e4_f64,
    ) {
        let tool = ToolPosition { radius, z };
        let load = CutLoad { tool, radial, tangential, axial, couple: 0.0 };
        let (sin, cos) = (libm::sin(phi), libm::cos(phi));
        let force = [radial * cos - tangential * sin, radial * sin + tangential * cos, axial];
        let moment = cross([radius * cos, radius * sin, z], force);
        let wrench = load.wrench(phi);
        for k in 0..3 {
            // Rounding of products of the order of 1e4.
            prop_assert!((wrench.force[k] - force[k]).abs() < 1e-10, "force {}", k);
            prop_assert!((wrench.moment[k] - moment[k]).abs() < 1e-10, "moment {}", k);
        }
    }
}
