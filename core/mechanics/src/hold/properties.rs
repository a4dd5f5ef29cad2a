use super::*;
use crate::cutting::{CutLoad, ToolPosition};
use core::f64::consts::TAU;
use proptest::prelude::*;

fn any_wrench() -> impl Strategy<Value = Wrench> {
    let force = proptest::array::uniform3(-2000.0..2000.0_f64);
    let moment = proptest::array::uniform3(-100.0..100.0_f64);
    (force, moment).prop_map(|(force, moment)| Wrench { force, moment })
}

fn any_grip() -> impl Strategy<Value = JawGrip> {
    (2..=6_usize, 0.05..0.95_f64, 0.01..0.2_f64, 0.005..0.1_f64, 1e3..1e5_f64).prop_map(
        |(jaws, share, radius, length, force)| JawGrip {
            jaws,
            half_angle: share * core::f64::consts::PI / jaws as f64,
            radius,
            length,
            force,
            side: crate::grip::Side::Outside,
            wrap: Wrap::Ignored,
        },
    )
}

fn any_part() -> impl Strategy<Value = (JawGrip, Clamped)> {
    (any_grip(), 0.05..0.5_f64, any::<bool>(), 0.1..1.0_f64).prop_map(|(grip, friction, is_seated, ring)| {
        let contacts = grip.contacts(4, 2).unwrap();
        let ring = Seat { radius: ring * grip.radius, z: -grip.length };
        (grip, Clamped::new(&contacts, friction, is_seated.then_some(ring)).unwrap())
    })
}

/// A seated part with a centre in its tail end, and without it.
fn any_centred() -> impl Strategy<Value = (Clamped, Clamped, Centre)> {
    (any_part(), 0.01..0.3_f64, 10.0..2e4_f64).prop_map(|((grip, part), z, thrust)| {
        let seat = Seat { radius: 0.8 * grip.radius, z: -grip.length };
        let part = Clamped::new(&part.contacts, part.friction, Some(seat)).unwrap().supported(LateralSupport::Jaws);
        let centre = Centre { z, thrust };
        (part.clone().centred(centre).unwrap(), part, centre)
    })
}

fn factor(part: &Clamped, load: &Wrench) -> Option<f64> {
    part.hold(load).unwrap().limit().map(|limit| limit.factor)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn the_bracket_closes((_, part) in any_part(), load in any_wrench()) {
        if let Hold::Limit(limit) = part.hold(&load).unwrap() {
            prop_assert!(limit.factor <= limit.upper, "{} > {}", limit.factor, limit.upper);
            prop_assert!(limit.gap() < 1e-6, "gap {}", limit.gap());
        }
    }

    #[test]
    fn no_answer_is_ever_not_a_number(
        (_, part) in any_part(), load in any_wrench(), power in -200..200_i32,
        zeroed in proptest::array::uniform6(any::<bool>()),
    ) {
        let size = libm::pow(10.0, f64::from(power));
        let entry = |k: usize, x: f64| if zeroed[k] { 0.0 } else { size * x };
        let load = Wrench {
            force: core::array::from_fn(|k| entry(k, load.force[k])),
            moment: core::array::from_fn(|k| entry(k + 3, load.moment[k])),
        };
        for part in [part.clone(), part.supported(LateralSupport::Jaws)] {
            if let Ok(Hold::Limit(limit)) = part.hold(&load) {
                let motion = limit.motion;
                let numbers = motion.velocity.iter().chain(&motion.rotation);
                prop_assert!(limit.upper.is_finite() && limit.factor >= 0.0, "{:?}", limit);
                prop_assert!(numbers.copied().all(f64::is_finite), "{:?}", motion);
            }
        }
    }

    #[test]
    fn no_trial_motion_costs_less(
        (_, part) in any_part(), load in any_wrench(),
        velocity in proptest::array::uniform3(-1.0..1.0_f64),
        rotation in proptest::array::uniform3(-20.0..20.0_f64),
    ) {
        let motion = Motion { velocity, rotation };
        if let (Some(ratio), Some(factor)) = (part.trial(&load, &motion), factor(&part, &load)) {
            prop_assert!(factor <= ratio * (1.0 + 1e-12), "{} > {}", factor, ratio);
        }
    }

    #[test]
    fn the_reported_motion_shows_the_upper_bound((_, part) in any_part(), load in any_wrench()) {
        if let Hold::Limit(limit) = part.hold(&load).unwrap() {
            let ratio = part.trial(&load, &limit.motion);
            let shown = ratio.is_some_and(|ratio| (ratio / limit.upper - 1.0).abs() < 1e-9);
            prop_assert!(shown, "{:?} is not {}", ratio, limit.upper);
        }
    }

    #[test]
    fn the_factor_is_linear_in_friction_grip_and_inverse_load(
        (grip, part) in any_part(), load in any_wrench(), times in 0.2..5.0_f64,
    ) {
        if let Some(one) = factor(&part, &load) {
            let more_grip = JawGrip { force: times * grip.force, ..grip }.contacts(4, 2).unwrap();
            let gripped = Clamped::new(&more_grip, part.friction, part.seat).unwrap();
            let rubbed = Clamped::new(&part.contacts, times * part.friction, part.seat).unwrap();
            let less = Wrench {
                force: load.force.map(|x| x / times),
                moment: load.moment.map(|x| x / times),
            };
            for other in [factor(&gripped, &load), factor(&rubbed, &load), factor(&part, &less)] {
                let ratio = other.map(|other| other / (times * one));
                let linear = ratio.is_some_and(|ratio| (ratio - 1.0).abs() < 1e-6);
                prop_assert!(linear, "ratio {:?}", ratio);
            }
        }
    }

    #[test]
    fn more_normal_force_at_a_point_never_holds_less(
        (_, part) in any_part(), load in any_wrench(), which in any::<prop::sample::Index>(),
        times in 1.0..4.0_f64,
    ) {
        let mut contacts = part.contacts.clone();
        which.get_mut(&mut contacts[..]).normal_force *= times;
        let more = Clamped::new(&contacts, part.friction, part.seat).unwrap();
        if let (Some(before), Some(after)) = (factor(&part, &load), factor(&more, &load)) {
            prop_assert!(after >= before * (1.0 - 1e-6), "{} < {}", after, before);
        }
    }

    #[test]
    fn turning_the_load_by_a_jaw_pitch_changes_nothing(
        grip in any_grip(), friction in 0.05..0.5_f64, load in any_wrench(), is_seated in any::<bool>(),
    ) {
        // A seat of 24 points shares the pitch of 2, 3, 4 and 6 jaws.
        let seat = (is_seated && grip.jaws != 5)
            .then_some(Seat { radius: 0.8 * grip.radius, z: -grip.length });
        let part = Clamped::new(&grip.contacts(4, 2).unwrap(), friction, seat).unwrap();
        let pitch = TAU / grip.jaws as f64;
        let (sin, cos) = (libm::sin(pitch), libm::cos(pitch));
        let turn = |[x, y, z]: [f64; 3]| [cos * x - sin * y, sin * x + cos * y, z];
        let turned = Wrench { force: turn(load.force), moment: turn(load.moment) };
        if let (Some(a), Some(b)) = (factor(&part, &load), factor(&part, &turned)) {
            prop_assert!((a / b - 1.0).abs() < 1e-6, "{} is not {}", a, b);
        }
    }

    #[test]
    fn jaws_that_centre_never_hold_less((_, part) in any_part(), load in any_wrench()) {
        let centred = part.clone().supported(LateralSupport::Jaws);
        if let Hold::Limit(limit) = centred.hold(&load).unwrap() {
            prop_assert!(limit.gap() < 1e-6, "gap {}", limit.gap());
            if let Some(free) = factor(&part, &load) {
                prop_assert!(limit.factor >= free * (1.0 - 1e-6), "{:?} < {}", limit, free);
            }
        }
    }

    #[test]
    fn a_centre_never_holds_less_and_its_bracket_closes(
        (with, without, centre) in any_centred(), load in any_wrench(), more in 1.0..4.0_f64,
    ) {
        if let Hold::Limit(limit) = with.hold(&load).unwrap() {
            prop_assert!(limit.gap() < 1e-6, "gap {}", limit.gap());
            let shown = with.trial(&load, &limit.motion);
            prop_assert!(shown.is_some_and(|ratio| (ratio / limit.upper - 1.0).abs() < 1e-9), "{:?}", shown);
            if let Some(without) = factor(&without, &load) {
                prop_assert!(limit.factor >= without * (1.0 - 1e-6), "{:?} < {}", limit, without);
            }
            let harder = without.centred(Centre { thrust: more * centre.thrust, ..centre }).unwrap();
            if let Some(harder) = factor(&harder, &load) {
                prop_assert!(harder >= limit.factor * (1.0 - 1e-6), "{} < {:?}", harder, limit);
            }
        }
    }

    #[test]
    fn a_seat_never_holds_less((_, part) in any_part(), load in any_wrench()) {
        let free = Clamped::new(&part.contacts, part.friction, None).unwrap();
        if let (Some(with), Some(without)) = (factor(&part, &load), factor(&free, &load)) {
            prop_assert!(with >= without * (1.0 - 1e-6), "{} < {}", with, without);
        }
    }

    #[test]
    fn the_worst_angle_is_no_better_than_any(
        (grip, part) in any_part(), phi in 0.0..TAU, radius in 0.0..0.2_f64, z in 0.0..0.3_f64,
        radial in -1000.0..1000.0_f64, tangential in -2000.0..-100.0_f64, axial in -500.0..500.0_f64,
    ) {
        let tool = ToolPosition { radius, z };
        let load = CutLoad { tool, radial, tangential, axial, couple: 0.0 }.rotating();
        // The seat's points share the pitch of the jaws, or the whole turn.
        let jaws = if part.seat.is_some() && grip.jaws == 5 { 1 } else { grip.jaws };
        let worst = part.worst(&load, jaws).unwrap();
        prop_assert!((0.0..=TAU / jaws as f64).contains(&worst.angle), "within a pitch: {}", worst.angle);
        if let (Some(limit), Some(again)) = (worst.hold.limit(), factor(&part, &load.at(worst.angle))) {
            prop_assert!(limit.gap() < 1e-6, "the bracket is closed: {:?}", limit);
            prop_assert!((again / limit.factor - 1.0).abs() < 1e-5, "{} there, not {:?}", again, limit);
        }
        if let (Some(worst), Some(other)) = (worst.hold.limit(), factor(&part, &load.at(phi))) {
            // Two minima within the scan's step can hide 1 % at a whole turn.
            prop_assert!(worst.factor <= other * 1.01, "{} > {}", worst.factor, other);
        }
    }
}
