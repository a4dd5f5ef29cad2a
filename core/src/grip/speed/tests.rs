use super::*;
use core::f64::consts::PI;
use proptest::prelude::*;

const DEMAND: Demand = Demand { cutting_grip: 12e3, cutting_factor: 1.5, rest_factor: 1.5 };

fn rad(rpm: f64) -> f64 {
    rpm * PI / 30.0
}

fn spinning(side: Side, share: Share) -> SpinningGrip {
    let jaw = RotatingMass { mass: 1.2, radius: 0.075 };
    SpinningGrip::new(60e3, side, centrifugal_moment(&[jaw; 3]).unwrap(), share).unwrap()
}

fn assert_near(value: f64, expected: f64, what: &str) {
    // Expected values are printed to ten digits.
    assert!((value / expected - 1.0).abs() < 1e-9, "{what}: {value} against {expected}");
}

/// Formulae of VDI 3106 as quoted in secondary literature; figures derived independently by
/// evaluating them for three jaws of 1.2 kg at 75 mm and 60 kN.
#[test]
fn grip_follows_the_square_of_speed() {
    let table = [
        (1000.0, 2960.88132, 57039.11868, 62960.88132),
        (2000.0, 11843.52528, 48156.47472, 71843.52528),
        (3000.0, 26647.93188, 33352.06812, 86647.93188),
        (4000.0, 47374.10113, 12625.89887, 107374.1011),
    ];
    let (outside, inside) = (spinning(Side::Outside, Share::ALL), spinning(Side::Inside, Share::ALL));
    for (rpm, force, closing, opening) in table {
        assert_near(outside.centrifugal_force(rad(rpm)).unwrap(), force, "centrifugal force");
        assert_near(outside.at(rad(rpm)).unwrap().lowest, closing, "outside grip");
        assert_near(inside.at(rad(rpm)).unwrap().highest, opening, "inside grip");
    }
}

/// Derived independently: `m r w^2` for 0.5 kg at 60 mm and 3000 rev/min, 2 kg at 100 mm and
/// 2000 rev/min, three jaws each.
#[test]
fn centrifugal_force_of_three_jaws() {
    for (mass, radius, rpm, total) in [(0.5, 0.060, 3000.0, 8882.643961), (2.0, 0.100, 2000.0, 26318.94507)] {
        let moment = centrifugal_moment(&[RotatingMass { mass, radius }; 3]).unwrap();
        let grip = SpinningGrip::new(1e5, Side::Outside, moment, Share::ALL).unwrap();
        assert_near(grip.centrifugal_force(rad(rpm)).unwrap(), total, "three jaws");
    }
}

/// Half the force reaching the part; derived independently.
#[test]
fn half_the_share_costs_half_the_grip() {
    let half = spinning(Side::Outside, Share::new(0.5, 0.5).unwrap());
    assert_near(half.at(rad(2000.0)).unwrap().lowest, 54078.23736, "at 2000 rev/min");
    assert_near(half.at(rad(4000.0)).unwrap().lowest, 36312.94944, "at 4000 rev/min");
}

/// VDI 3106 permissible speed as quoted in secondary literature, and the speeds at which the
/// grip is gone or down to a third; derived independently.
#[test]
fn marked_speeds_match_the_closed_forms() {
    let outside = spinning(Side::Outside, Share::ALL);
    let permissible = outside.permissible_speed(&DEMAND, rad(6000.0)).unwrap();
    assert_near(permissible, rad(2725.843013), "permissible speed");
    assert_near(outside.speed_of_lost_grip().unwrap(), rad(4501.581581), "grip lost");
    let third = outside.speed_leaving(1.0 / 3.0).unwrap().unwrap();
    // Printed to two decimals.
    assert!((third / rad(3675.53) - 1.0).abs() < 2e-6, "a third left: {third}");
    assert_eq!(outside.permissible_speed(&DEMAND, rad(2000.0)), Ok(rad(2000.0)), "the plate rules");
}

#[test]
fn inside_grip_is_limited_by_the_plate_and_counts_no_gain_it_does_not_know() {
    let inside = spinning(Side::Inside, Share::UNKNOWN);
    assert_eq!(inside.speed_of_lost_grip(), None, "never lost to speed");
    assert_eq!(inside.permissible_speed(&DEMAND, rad(5000.0)), Ok(rad(5000.0)), "plate speed");
    assert_eq!(inside.at(rad(4000.0)).unwrap().lowest, 60e3, "no gain counted against slip");
    let needed = inside.needed_rest_grip(&DEMAND, rad(4000.0)).unwrap();
    assert_near(needed, 27e3, "1.5 x 1.5 x 12 kN");
}

#[test]
fn a_grip_too_small_at_standstill_is_refused() {
    let grip = SpinningGrip::new(20e3, Side::Outside, 0.27, Share::ALL).unwrap();
    assert_eq!(
        grip.permissible_speed(&DEMAND, rad(3000.0)),
        Err(GripError::RestGripTooSmall { needed: 27e3, rest_grip: 20e3 }),
        "20 kN does not hold what needs 27 kN"
    );
}

#[test]
fn locked_wedge_share_goes_with_the_part() {
    assert_eq!(Share::of_locked_wedge(2e8, 2e8), Ok(0.5), "equal springs share equally");
    assert!(Share::of_locked_wedge(1e6, 1e9).unwrap() < 0.001, "a soft part feels little");
    assert!(Share::new(0.6, 0.4).is_err(), "ends out of order");
    assert!(Share::new(f64::NAN, 1.0).is_err(), "not a number");
}

#[test]
fn nothing_turning_means_no_loss() {
    let still = SpinningGrip::new(5e3, Side::Outside, 0.0, Share::ALL).unwrap();
    assert_eq!(still.speed_of_lost_grip(), None, "no mass, no loss");
    assert!(still.at(f64::NAN).is_err(), "speed must be a number");
}

proptest! {
    #[test]
    fn faster_never_grips_an_outside_better(
        f0 in 1e3..2e5_f64, moment in 0.01..2.0_f64, low in 0.0..1.0_f64, up in 0.0..1.0_f64,
        slow in 0.0..500.0_f64, more in 0.0..300.0_f64
    ) {
        let share = Share::new(low, low + up * (1.0 - low)).unwrap();
        let outside = SpinningGrip::new(f0, Side::Outside, moment, share).unwrap();
        let inside = SpinningGrip::new(f0, Side::Inside, moment, share).unwrap();
        let (a, b) = (outside.at(slow).unwrap(), outside.at(slow + more).unwrap());
        prop_assert!(b.lowest <= a.lowest && b.highest <= a.highest, "outside falls");
        prop_assert!(a.lowest <= a.highest && a.highest <= f0, "range in order, below rest");
        let (c, d) = (inside.at(slow).unwrap(), inside.at(slow + more).unwrap());
        prop_assert!(d.lowest >= c.lowest && d.highest >= c.highest && c.lowest >= f0, "inside rises");
        if a.lowest > 0.0 {
            prop_assert!((a.lowest + c.highest - 2.0 * f0).abs() < 1e-9 * f0, "mirror about rest");
        }
    }

    #[test]
    fn needed_grip_and_permissible_speed_are_inverse(
        f0 in 3e4..2e5_f64, moment in 0.05..2.0_f64, high in 0.1..1.0_f64
    ) {
        let grip = SpinningGrip::new(f0, Side::Outside, moment, Share::new(0.0, high).unwrap()).unwrap();
        let speed = grip.permissible_speed(&DEMAND, GREATEST_SPEED).unwrap();
        let needed = grip.needed_rest_grip(&DEMAND, speed).unwrap();
        prop_assert!((needed / f0 - 1.0).abs() < 1e-12, "{} against {}", needed, f0);
    }
}
