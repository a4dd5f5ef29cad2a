//! Hold factors against a general second-order cone solver.
//!
//! `solver/hold_socp.py` poses the lower-bound theorem in raw contact forces
//! and solves it with Clarabel to 1e-10; its cases and answers are in
//! `solver/hold_socp.json`.

#![allow(clippy::unwrap_used, reason = "a reference case that cannot be read must fail")]

use holdround_core::cutting::Wrench;
use holdround_core::hold::{Clamped, ContactPoint, Limit, Seat};
use serde::Deserialize;

#[derive(Deserialize)]
struct Case {
    position: Vec<[f64; 3]>,
    normal: Vec<[f64; 3]>,
    normal_force: Vec<f64>,
    friction: f64,
    force: [f64; 3],
    moment: [f64; 3],
    seat: Option<SeatRing>,
    factor: f64,
    ring_factor: Option<f64>,
    inner_ring_factor: Option<f64>,
}

#[derive(Deserialize)]
struct SeatRing {
    radius: f64,
    z: f64,
}

impl Case {
    fn load(&self) -> Wrench {
        Wrench { force: self.force, moment: self.moment }
    }

    fn clamped(&self) -> Clamped {
        let contacts: Vec<ContactPoint> = self
            .position
            .iter()
            .zip(&self.normal)
            .zip(&self.normal_force)
            .map(|((&position, &normal), &normal_force)| ContactPoint { position, normal, normal_force })
            .collect();
        let seat = self.seat.as_ref().map(|ring| Seat { radius: ring.radius, z: ring.z });
        Clamped::new(&contacts, self.friction, seat).unwrap()
    }

    fn limit(&self) -> Limit {
        *self.clamped().hold(&self.load()).unwrap().limit().unwrap()
    }
}

fn cases() -> Vec<Case> {
    serde_json::from_str(include_str!("../solver/hold_socp.json")).unwrap()
}

#[test]
fn hold_factors_match_a_general_cone_solver() {
    let cases = cases();
    assert!(cases.len() >= 12, "only {} reference cases", cases.len());
    for (index, case) in cases.iter().enumerate() {
        let limit = case.limit();
        // The bracket closes to 1e-7, the reference to 1e-9 or better.
        let tolerance = 3e-7 * case.factor;
        assert!(
            (limit.factor - case.factor).abs() < tolerance && (limit.upper - case.factor).abs() < tolerance,
            "case {index}: bracket {} to {} misses {}",
            limit.factor,
            limit.upper,
            case.factor
        );
    }
}

#[test]
fn seat_points_lie_between_the_ring_and_the_circle_inside_them() {
    for (index, case) in cases().iter().enumerate() {
        if let (Some(ring), Some(inner)) = (case.ring_factor, case.inner_ring_factor) {
            let factor = case.limit().factor;
            // As above.
            let tolerance = 3e-7 * ring;
            assert!(
                factor < ring + tolerance && factor > inner - tolerance,
                "case {index}: {factor} is not between {inner} and {ring}"
            );
        }
    }
}

#[test]
fn the_reported_motion_attains_the_upper_bound() {
    for (index, case) in cases().iter().enumerate() {
        let limit = case.limit();
        let ratio = case.clamped().trial(&case.load(), &limit.motion).unwrap();
        // Rounding of a sum of a few dozen terms.
        assert!(
            (ratio / limit.upper - 1.0).abs() < 1e-9,
            "case {index}: motion costs {ratio}, upper bound is {}",
            limit.upper
        );
    }
}
