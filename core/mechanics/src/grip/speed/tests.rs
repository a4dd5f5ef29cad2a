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
fn the_plate_rules_where_the_grip_would_allow_more() {
    let outside = spinning(Side::Outside, Share::ALL);
    assert_eq!(outside.permissible_speed(&DEMAND, rad(2000.0)), Ok(rad(2000.0)), "the plate's speed");
}

#[test]
fn at_the_speed_that_leaves_a_third_a_third_is_left() {
    let outside = spinning(Side::Outside, Share::UNKNOWN);
    let third = outside.speed_leaving(1.0 / 3.0).unwrap().unwrap();
    assert_near(outside.at(third).unwrap().lowest, 20e3, "a third of 60 kN");
    let lost = outside.speed_of_lost_grip().unwrap();
    assert_near(third / lost, libm::sqrt(2.0 / 3.0), "spin force grows as the square of the speed");
    assert_eq!(outside.speed_leaving(1.0), Ok(Some(0.0)), "all of it is left at standstill");
    assert!(outside.speed_leaving(0.0).is_err() && outside.speed_leaving(1.1).is_err(), "no share of a grip");
    assert_eq!(spinning(Side::Inside, Share::UNKNOWN).speed_leaving(0.5), Ok(None), "spin presses an inside grip");
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
