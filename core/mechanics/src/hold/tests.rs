use super::*;
use crate::cutting::{CutLoad, RotatingWrench, ToolPosition};
use core::f64::consts::{FRAC_PI_2, TAU};

/// The bracket closes to 1e-7 of the factor.
const BRACKET: f64 = 2e-7;

pub(super) fn grip(force: f64) -> JawGrip {
    JawGrip {
        jaws: 3,
        half_angle: 0.3,
        radius: 0.05,
        length: 0.03,
        force,
        side: crate::grip::Side::Outside,
        wrap: Wrap::Ignored,
    }
}

fn clamped(force: f64, friction: f64) -> Clamped {
    Clamped::new(&grip(force).contacts(5, 3).unwrap(), friction, None).unwrap()
}

pub(super) fn seated(force: f64, friction: f64) -> Clamped {
    let seat = Some(Seat { radius: 0.04, z: -0.03 });
    Clamped::new(&grip(force).contacts(5, 3).unwrap(), friction, seat).unwrap()
}

/// Two jaws that touch at a point each in the plane of their faces and at the
/// depth `length`, on the x axis, 1000 N at each of the four points.
pub(super) fn two_rings(radius: f64, length: f64, friction: f64) -> Clamped {
    let point = |side: f64, z: f64| ContactPoint {
        position: [side * radius, 0.0, z],
        normal: [-side, 0.0, 0.0],
        normal_force: 1000.0,
    };
    let contacts = [point(1.0, 0.0), point(1.0, -length), point(-1.0, 0.0), point(-1.0, -length)];
    Clamped::new(&contacts, friction, None).unwrap()
}

pub(super) fn limit(part: &Clamped, force: [f64; 3], moment: [f64; 3]) -> Limit {
    *part.hold(&Wrench { force, moment }).unwrap().limit().unwrap()
}

pub(super) fn close(got: f64, want: f64, claim: &str) {
    assert!((got / want - 1.0).abs() < BRACKET, "{claim}: {got} is not {want}");
}

#[test]
fn torque_slips_at_mu_f_half_diameter() {
    let limit = limit(&clamped(20_000.0, 0.1), [0.0; 3], [0.0, 0.0, -40.0]);
    close(limit.factor, 0.1 * 20_000.0 * 0.05 / 40.0, "torque");
    assert_eq!(limit.mode, Mode::Spin, "the part spins");
}

#[test]
fn axial_pull_slips_at_mu_f() {
    let part = clamped(20_000.0, 0.1);
    let pulled = limit(&part, [0.0, 0.0, 500.0], [0.0; 3]);
    close(pulled.factor, 4.0, "pull");
    assert_eq!(pulled.mode, Mode::PullOut, "the part comes out");
    let pushed = limit(&part, [0.0, 0.0, -500.0], [0.0; 3]);
    close(pushed.factor, 4.0, "push");
    assert_eq!(pushed.mode, Mode::PushIn, "the part goes in");
}

// Statics of four points, derived by hand. About the jaws' axis the friction
// of each ring acts as one force across it, a couple of arm `length`; about the
// axis square to it each point's friction acts axially at the radius.
#[test]
fn a_pure_moment_tips_at_the_couples_of_two_rings() {
    let part = two_rings(0.04, 0.03, 0.2);
    let about_jaws = limit(&part, [0.0; 3], [10.0, 0.0, 0.0]);
    close(about_jaws.factor, 0.2 * 4000.0 * 0.03 / 2.0 / 10.0, "about the jaws' axis");
    let across = limit(&part, [0.0; 3], [0.0, 10.0, 0.0]);
    close(across.factor, 0.2 * 4000.0 * 0.04 / 10.0, "across the jaws' axis");
    assert_eq!(about_jaws.mode, Mode::Tip, "about the jaws' axis it tips");
    assert_eq!(across.mode, Mode::Tip, "across the jaws' axis it tips");
}

// A lever on two supports: the front ring carries P (a + L) / L and gives way at
// half of all friction, so P = mu F L / (2 (a + L)). Derived by hand.
#[test]
fn an_overhung_bar_tips_as_a_lever_on_two_rings() {
    let (length, overhang) = (0.03, 0.12);
    let part = two_rings(0.04, length, 0.2);
    let push = Wrench::of_force_at([0.0, 100.0, 0.0], [0.0, 0.0, overhang]);
    let factor = part.hold(&push).unwrap().limit().unwrap().factor;
    let lever = 0.2 * 4000.0 * length / (2.0 * (overhang + length));
    close(factor, lever / 100.0, "lever");
}

#[test]
fn five_by_three_points_tip_within_one_per_cent_of_a_fine_grid() {
    let fine = Clamped::new(&grip(20_000.0).contacts(16, 12).unwrap(), 0.1, None).unwrap();
    let load = Wrench::of_force_at([300.0, 800.0, -200.0], [0.03, 0.0, 0.1]);
    let factor = |part: &Clamped| part.hold(&load).unwrap().limit().unwrap().factor;
    let ratio = factor(&clamped(20_000.0, 0.1)) / factor(&fine);
    // The documented accuracy of five by three points.
    assert!((ratio - 1.0).abs() < 0.01, "coarse over fine is {ratio}");
}

#[test]
fn a_seat_bears_a_thrust_inside_its_ring() {
    let thrust = Wrench::of_force_at([0.0, 0.0, -500.0], [0.03, 0.0, 0.1]);
    let held = seated(20_000.0, 0.1).hold(&thrust).unwrap();
    assert_eq!(held, Hold::CarriedBySeat, "thrust at 30 mm on a ring of 40 mm");
}

#[test]
fn a_thrust_outside_the_seat_tips_the_part() {
    let thrust = Wrench::of_force_at([0.0, 0.0, -500.0], [0.2, 0.0, 0.1]);
    let limit = *seated(20_000.0, 0.1).hold(&thrust).unwrap().limit().unwrap();
    assert_eq!(limit.mode, Mode::Tip, "the part tips about the seat's edge");
    assert!(limit.gap() < 1e-6, "bracket is {}", limit.gap());
}

#[test]
fn a_drill_on_a_seated_part_can_only_spin_it() {
    let limit = limit(&seated(20_000.0, 0.1), [0.0, 0.0, -3000.0], [0.0, 0.0, -50.0]);
    close(limit.factor, 2.0, "thrust on the seat costs no torque");
    assert_eq!(limit.mode, Mode::Spin, "the part spins");
}

#[test]
fn a_seat_is_no_help_against_pull() {
    let pull = limit(&seated(20_000.0, 0.1), [0.0, 0.0, 500.0], [0.0; 3]);
    close(pull.factor, 4.0, "pull");
}

// Torque alone is left to friction, and slips at mu F d / 2 however much the seat bears.
#[test]
fn a_little_torque_under_a_great_thrust_on_the_seat_slips_at_its_own_limit() {
    for support in [LateralSupport::Friction, LateralSupport::Jaws] {
        for torque in [10.0, 1.0, 0.3] {
            let part = seated(20_000.0, 0.1).supported(support);
            let thrust = Wrench { force: [0.0, 0.0, -3000.0], moment: [0.0, 30.0, torque] };
            let limit = *part.hold(&thrust).unwrap().limit().unwrap();
            close(limit.factor, 100.0 / torque, "thrust at 10 mm on a ring of 40 mm");
            assert_eq!(limit.mode, Mode::Spin, "{support:?}: the part spins");
        }
    }
}

#[test]
fn a_thrust_borne_by_the_seat_and_next_to_no_torque_is_carried() {
    for support in [LateralSupport::Friction, LateralSupport::Jaws] {
        let part = seated(20_000.0, 0.1).supported(support);
        for torque in [1e-3, 1e-9, 1e-15] {
            let thrust = Wrench { force: [0.0, 0.0, -3000.0], moment: [0.0, 30.0, torque] };
            assert_eq!(part.hold(&thrust), Ok(Hold::CarriedBySeat), "{support:?}, {torque} N m");
        }
    }
}

// Found by random search: no motion that the seat allows was found.
#[test]
fn six_jaws_that_centre_over_a_wide_seat_slip_at_mu_f_half_diameter() {
    let (friction, force, radius, torque) = (0.276, 44_100.0, 0.10435, -2.62);
    let grip = JawGrip { jaws: 6, half_angle: 0.166, radius, length: 0.00958, force, ..grip(0.0) };
    let seat = Some(Seat { radius: 0.10146, z: -0.00958 });
    let part = Clamped::new(&grip.contacts(4, 2).unwrap(), friction, seat).unwrap();
    let load = Wrench { force: [858.6, -35.6, -1370.7], moment: [53.36, 26.34, torque] };
    let limit = *part.supported(LateralSupport::Jaws).hold(&load).unwrap().limit().unwrap();
    close(limit.factor, friction * force * radius / -torque, "torque");
}

// Found by random search: steps that leave the central path stall short of the goal.
#[test]
fn the_bracket_closes_where_long_steps_stall() {
    let wide = |jaws, half_angle, radius, length, clamping, friction, ring, force, moment| {
        let grip = JawGrip { jaws, half_angle, radius, length, ..grip(clamping) };
        let seat = Some(Seat { radius: ring, z: -length });
        let part = Clamped::new(&grip.contacts(4, 2).unwrap(), friction, seat).unwrap();
        part.hold(&Wrench { force, moment }).unwrap().limit().unwrap().gap()
    };
    let gaps = [
        wide(
            4,
            0.3319356936026791,
            0.06639366120151705,
            0.034539363930954435,
            55662.12815695953,
            0.3786466292408991,
            0.006751319452103329,
            [1499.5819848751341, 1429.9229318693112, 1180.302657816304],
            [-44.72816331408889, 70.20611565514781, 40.11499872455308],
        ),
        wide(
            3,
            0.41905500191047956,
            0.18435232417720052,
            0.024921531407943752,
            35007.015122481665,
            0.3777853684810771,
            0.07502233192651304,
            [838.0512840907844, -1688.3943555598637, 211.60082939748878],
            [-30.744136602263715, -7.647379459352837, -8.697220606109944],
        ),
    ];
    assert!(gaps.iter().all(|gap| *gap < 1e-6), "gaps {gaps:?}");
}

#[test]
fn lost_grip_and_no_friction_are_no_grip() {
    let load = Wrench { force: [1.0, 0.0, 0.0], moment: [0.0; 3] };
    let lost = clamped(-500.0, 0.1);
    assert_eq!(lost.hold(&load), Ok(Hold::NoGrip), "grip lost at speed");
    let slick = clamped(20_000.0, 0.0);
    assert_eq!(slick.hold(&load), Ok(Hold::NoGrip), "no friction");
    let nothing = Clamped::new(&[], 0.1, None).unwrap();
    assert_eq!(nothing.hold(&load), Ok(Hold::NoGrip), "no contact");
    let rotating = RotatingWrench { steady: load, ..RotatingWrench::default() };
    assert_eq!(lost.worst(&rotating, 3).unwrap().hold, Hold::NoGrip, "worst angle");
}

#[test]
fn no_load_is_told_apart() {
    let part = clamped(20_000.0, 0.1);
    assert_eq!(part.hold(&Wrench::default()), Ok(Hold::NoLoad), "nil wrench");
    let worst = part.worst(&RotatingWrench::default(), 3).unwrap();
    assert_eq!(worst.hold, Hold::NoLoad, "nil rotating wrench");
}

#[test]
fn a_single_point_holds_no_moment() {
    let contact = ContactPoint { position: [0.05, 0.0, 0.0], normal: [-1.0, 0.0, 0.0], normal_force: 1e3 };
    let part = Clamped::new(&[contact], 0.1, None).unwrap();
    let limit = limit(&part, [0.0; 3], [0.0, 0.0, 10.0]);
    assert_eq!(limit.factor, 0.0, "nothing resists a turn about the point");
    // The solver's own softness, far below any load of interest.
    assert!(limit.upper < 1e-6, "upper bound is {}", limit.upper);
}

#[test]
fn inputs_outside_their_range_are_refused() {
    let contacts = grip(1e4).contacts(5, 3).unwrap();
    let refused = |contacts: &[ContactPoint], friction: f64, seat: Option<Seat>| {
        Clamped::new(contacts, friction, seat).unwrap_err()
    };
    assert_eq!(refused(&contacts, -0.1, None), HoldError::Friction, "negative friction");
    let flat = Some(Seat { radius: 0.0, z: 0.0 });
    assert_eq!(refused(&contacts, 0.1, flat), HoldError::Seat, "seat without size");
    let pulling = ContactPoint { normal_force: -1.0, ..contacts[0] };
    assert_eq!(refused(&[pulling], 0.1, None), HoldError::Force, "negative normal force");
    let aimless = ContactPoint { normal: [0.0; 3], ..contacts[0] };
    assert_eq!(refused(&[aimless], 0.1, None), HoldError::Contact, "no normal");
    let part = clamped(1e4, 0.1);
    let bad = Wrench { force: [f64::NAN, 0.0, 0.0], moment: [0.0; 3] };
    assert_eq!(part.hold(&bad), Err(HoldError::Wrench), "load not a number");
    let none = part.worst(&RotatingWrench::default(), 0);
    assert_eq!(none, Err(HoldError::Jaws), "no jaws");
}

fn overhung_turning() -> CutLoad {
    let tool = ToolPosition { radius: 0.04, z: 0.04 };
    CutLoad { tool, radial: -300.0, tangential: -1000.0, axial: -400.0, couple: 0.0 }
}

#[test]
fn the_worst_angle_matches_a_dense_scan() {
    let load = overhung_turning().rotating();
    for part in [clamped(20_000.0, 0.1), seated(20_000.0, 0.1)] {
        let worst = part.worst(&load, 3).unwrap();
        let found = worst.hold.limit().unwrap().factor;
        let dense = (0..720)
            .map(|k| load.at(TAU / 3.0 * f64::from(k) / 720.0))
            .map(|wrench| part.hold(&wrench).unwrap().limit().unwrap().factor)
            .fold(f64::INFINITY, f64::min);
        // Refinement stops once it gains less than 1e-6.
        assert!(found < dense * (1.0 + 3e-6), "worst {found} is above the scan's {dense}");
        // The scan's own step of 1/6 degree leaves less than this.
        assert!(found > dense * (1.0 - 1e-5), "worst {found} is far below the scan's {dense}");
        assert!((0.0..TAU / 3.0).contains(&worst.angle), "angle {} within a pitch", worst.angle);
    }
}

#[test]
fn the_worst_angle_of_a_pull_is_any() {
    let pull = CutLoad { radial: 0.0, tangential: 0.0, axial: 500.0, ..overhung_turning() };
    let on_axis = CutLoad { tool: ToolPosition { radius: 0.0, z: 0.1 }, ..pull };
    let worst = clamped(20_000.0, 0.1).worst(&on_axis.rotating(), 3).unwrap();
    close(worst.hold.limit().unwrap().factor, 4.0, "pull on the axis");
}

// Statics by hand: a lever on two rings with its force borne at the grip's
// centre leaves a couple of arm `length`.
#[test]
fn jaws_that_centre_leave_friction_the_moment_about_the_grip() {
    let (length, overhang) = (0.03, 0.12);
    let part = two_rings(0.04, length, 0.2).supported(LateralSupport::Jaws);
    let push = Wrench::of_force_at([0.0, 100.0, 0.0], [0.0, 0.0, overhang]);
    let limit = *part.hold(&push).unwrap().limit().unwrap();
    let couple = 0.2 * 4000.0 * length / 2.0 / (overhang + length / 2.0);
    close(limit.factor, couple / 100.0, "couple");
    let shown = part.trial(&push, &limit.motion);
    assert!(shown.is_some(), "the motion leaves the centre of the grip in place");
}

#[test]
fn jaws_that_centre_bear_a_force_through_the_centre_of_the_grip() {
    let part = clamped(20_000.0, 0.1).supported(LateralSupport::Jaws);
    // Two points half a grip apart: their mean is the centre but for rounding.
    let moment = Wrench { force: [400.0, 0.0, 0.0], moment: [0.0, -0.015 * 400.0, 0.0] };
    let held = part.hold(&moment).unwrap();
    let borne = held == Hold::CarriedByJaws || held.limit().is_some_and(|l| l.factor > 1e9);
    assert!(borne, "a force at the centre of the grip: {held:?}");
    let torque = limit(&part, [400.0, -300.0, 0.0], [-4.5, -6.0, 50.0]);
    close(torque.factor, 2.0, "only the torque is left to friction");
}

#[test]
fn two_narrow_jaws_hold_nothing_along_their_line_by_friction() {
    let along = limit(&two_rings(0.04, 0.03, 0.2), [100.0, 0.0, 0.0], [0.0, -1.5, 0.0]);
    assert_eq!(along.factor, 0.0, "the part slides into a jaw for nothing");
}

#[test]
fn rotated_points_hold_a_rotated_load_alike() {
    let part = clamped(20_000.0, 0.1);
    let contacts: Vec<ContactPoint> = part
        .contacts
        .iter()
        .map(|c| ContactPoint {
            position: [-c.position[1], c.position[0], c.position[2]],
            normal: [-c.normal[1], c.normal[0], c.normal[2]],
            ..*c
        })
        .collect();
    let turned = Clamped::new(&contacts, 0.1, None).unwrap();
    let load = overhung_turning().rotating();
    let here = part.hold(&load.at(0.3)).unwrap().limit().unwrap().factor;
    let there = turned.hold(&load.at(0.3 + FRAC_PI_2)).unwrap().limit().unwrap().factor;
    close(there, here, "a quarter turn of everything");
}

#[test]
fn unbalanced_normal_forces_show() {
    let lone = ContactPoint { position: [0.05, 0.0, 0.0], normal: [-2.0, 0.0, 0.0], normal_force: 1e3 };
    let part = Clamped::new(&[lone; 2], 0.1, None).unwrap();
    // Two like forces side by side: nothing opposes them.
    assert!((part.imbalance() - 1.0).abs() < 1e-12, "imbalance {}", part.imbalance());
}
