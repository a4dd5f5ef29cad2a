extern crate std;

use core::f64::consts::PI;

use libm::{cos, sin};
use proptest::prelude::*;
use std::vec::Vec;

use super::*;

fn profile(count: usize, departure: impl Fn(f64) -> f64) -> Profile {
    let step = 2.0 * PI / count as f64;
    let departures: Vec<f64> = (0..count).map(|i| departure(step * i as f64)).collect();
    Profile::equally_spaced(&departures).unwrap()
}

fn circles(a: &Assessment) -> [ReferenceCircle; 4] {
    [a.least_squares, a.minimum_zone, a.minimum_circumscribed, a.maximum_inscribed]
}

/// Agreement to rounding on departures of about ten.
fn near(found: f64, expected: f64, what: &str) {
    assert!((found - expected).abs() < 1e-11, "{what}: {found} against {expected}");
}

#[test]
fn least_squares_is_the_mean_and_first_harmonic() {
    // NIST/SEMATECH e-Handbook, roundness by least squares: R = mean, x = 2 mean(r cos).
    let p = profile(36, |t| 3.0 + 2.0 * cos(t) - 1.5 * sin(t) + cos(5.0 * t));
    let circle = p.least_squares();
    near(circle.radius, 3.0, "mean radius");
    near(circle.x, 2.0, "x");
    near(circle.y, -1.5, "y");
    near(circle.eccentricity(), 2.5, "eccentricity");
}

#[test]
fn pure_oval_centres_on_itself() {
    // Held by two opposite stations only: the centre across them must not wander.
    for count in [8, 36, 360] {
        let assessment = profile(count, |t| 10.0 * cos(2.0 * t)).assess();
        for circle in circles(&assessment) {
            near(circle.roundness(), 20.0, "oval roundness");
            near(circle.eccentricity(), 0.0, "oval centre");
        }
        near(assessment.two_point_range.unwrap(), 40.0, "oval two-point range");
    }
}

#[test]
fn a_round_part_has_no_roundness_error() {
    for departure in [0.0, 7.0, -3e-6] {
        let assessment = profile(360, |_| departure).assess();
        for circle in circles(&assessment) {
            near(circle.roundness(), 0.0, "round");
            near(circle.radius, departure, "radius");
        }
    }
}

#[test]
fn one_spike_is_seen_whole_by_the_inscribed_circle() {
    // A spike of 1 on a round profile: MICI keeps the round part, and the least zone is
    // half the spike's span shared by a shift toward it.
    let p = profile(360, |t| if t == 0.0 { 1.0 } else { 0.0 });
    near(p.maximum_inscribed().roundness(), 1.0, "inscribed");
    assert!(p.minimum_zone().roundness() < 1.0, "zone");
}

#[test]
fn readings_at_uneven_angles_find_the_same_circle() {
    let angles = [0.3, 5.9, 1.2, 2.0, 2.9, 3.3, 4.1, 4.9];
    let departures: Vec<f64> = angles.iter().map(|&t| 2.0 + 3.0 * cos(t) - sin(t)).collect();
    let assessment = Profile::at_angles(&angles, &departures).unwrap().assess();
    for circle in circles(&assessment) {
        near(circle.radius, 2.0, "radius");
        near(circle.x, 3.0, "x");
        near(circle.y, -1.0, "y");
        near(circle.roundness(), 0.0, "roundness");
    }
    assert_eq!(assessment.two_point_range, None, "no opposite readings");
}

/// Zone of four alternating stations: the divided difference that no limacon survives,
/// `sum of e_i / prod sin((t_i - t_j)/2)`, over the sum of its weights.
fn four_point_zone(angles: [f64; 4], e: [f64; 4]) -> f64 {
    let (mut value, mut total) = (0.0, 0.0_f64);
    for i in 0..4 {
        let product: f64 = (0..4).filter(|&j| j != i).map(|j| sin(0.5 * (angles[i] - angles[j]))).product();
        value += e[i] / product;
        total += (1.0 / product).abs();
    }
    2.0 * (value / total).abs()
}

/// Circumscribed radius of three stations, if their triangle holds the axis.
fn three_point_radius(t: [f64; 3], e: [f64; 3]) -> Option<f64> {
    let weights = [sin(t[2] - t[1]), sin(t[0] - t[2]), sin(t[1] - t[0])];
    let total: f64 = weights.iter().sum();
    let shares = weights.map(|w| w / total);
    // Opposite pairs make one weight zero up to rounding.
    (total.abs() > 1e-9 && shares.iter().all(|&s| s > -1e-12)).then(|| shares.iter().zip(e).map(|(s, e)| s * e).sum())
}

/// By duality the least zone is the greatest over all fours, and the least circumscribed
/// radius the greatest over all threes that hold the axis.
fn brute_force(angles: &[f64], e: &[f64]) -> (f64, f64, f64) {
    let n = angles.len();
    let (mut zone, mut outer, mut inner) = (0.0_f64, f64::NEG_INFINITY, f64::INFINITY);
    for i in 0..n {
        for j in i + 1..n {
            for k in j + 1..n {
                let t = [angles[i], angles[j], angles[k]];
                let three = [e[i], e[j], e[k]];
                if let Some(radius) = three_point_radius(t, three) {
                    outer = outer.max(radius);
                    inner = inner.min(radius);
                }
                for l in k + 1..n {
                    zone = zone.max(four_point_zone([t[0], t[1], t[2], angles[l]], [e[i], e[j], e[k], e[l]]));
                }
            }
        }
    }
    (zone, outer, inner)
}

fn rotated(departures: &[f64], by: usize) -> Vec<f64> {
    let n = departures.len();
    (0..n).map(|i| departures[(i + by) % n]).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn circles_are_exact_against_every_subset(
        departures in prop::collection::vec(-10.0..10.0_f64, 4..14),
        jitter in prop::collection::vec(-0.3..0.3_f64, 14),
        even in any::<bool>(),
    ) {
        let n = departures.len();
        let angles: Vec<f64> = (0..n)
            .map(|i| (i as f64 + 0.5 + if even { 0.0 } else { jitter[i] }) * 2.0 * PI / n as f64)
            .collect();
        let p = Profile::at_angles(&angles, &departures).unwrap();
        let (zone, outer, inner) = brute_force(&angles, &departures);
        // Both sides round at about 1e-15 of ten, times the weights' condition.
        let tolerance = 1e-10;
        prop_assert!((p.minimum_zone().roundness() - zone).abs() < tolerance, "zone {zone}");
        let (circumscribed, inscribed) = (p.minimum_circumscribed(), p.maximum_inscribed());
        prop_assert!((circumscribed.radius - outer).abs() < tolerance, "outer {outer}");
        prop_assert!((inscribed.radius - inner).abs() < tolerance, "inner {inner}");
    }

    #[test]
    fn tied_readings_are_exact_too(
        levels in prop::collection::vec(0_u8..3, 4..12),
    ) {
        let departures: Vec<f64> = levels.iter().map(|&l| f64::from(l)).collect();
        let n = departures.len();
        let angles: Vec<f64> = (0..n).map(|i| i as f64 * 2.0 * PI / n as f64).collect();
        let p = Profile::equally_spaced(&departures).unwrap();
        let (zone, outer, inner) = brute_force(&angles, &departures);
        prop_assert!((p.minimum_zone().roundness() - zone).abs() < 1e-11, "zone {zone}");
        prop_assert!((p.minimum_circumscribed().radius - outer).abs() < 1e-11, "outer {outer}");
        prop_assert!((p.maximum_inscribed().radius - inner).abs() < 1e-11, "inner {inner}");
    }

    #[test]
    fn roundness_keeps_its_order_and_ignores_place_and_hand(
        departures in prop::collection::vec(-10.0..10.0_f64, 4..80),
        by in 0_usize..80,
        scale in 1e-7..10.0_f64,
        x in -5.0..5.0_f64,
        y in -5.0..5.0_f64,
    ) {
        let n = departures.len();
        let assess = |d: &[f64]| Profile::equally_spaced(d).unwrap().assess();
        let plain = assess(&departures);
        let least = plain.minimum_zone.roundness();
        for circle in circles(&plain) {
            prop_assert!(least <= circle.roundness() + 1e-11, "the zone is the least");
            prop_assert!(circle.roundness().is_finite(), "finite");
        }
        prop_assert!(plain.maximum_inscribed.radius <= plain.least_squares.radius, "MIC inside");
        prop_assert!(plain.least_squares.radius <= plain.minimum_circumscribed.radius, "MCC out");
        prop_assert!(least <= plain.total_indicator_reading + 1e-11, "TIR holds form");

        let mirrored: Vec<f64> = departures.iter().rev().copied().collect();
        let scaled: Vec<f64> = departures.iter().map(|d| d * scale).collect();
        let shifted: Vec<f64> = departures
            .iter()
            .enumerate()
            .map(|(i, d)| {
                let t = i as f64 * 2.0 * PI / n as f64;
                d + x * cos(t) + y * sin(t)
            })
            .collect();
        let changed = [
            ("turned", assess(&rotated(&departures, by)), 1.0),
            ("mirrored", assess(&mirrored), 1.0),
            ("scaled", assess(&scaled), scale),
            ("off centre", assess(&shifted), 1.0),
        ];
        for (how, assessment, factor) in changed {
            for (before, after) in circles(&plain).iter().zip(circles(&assessment)) {
                let error = (after.roundness() / factor - before.roundness()).abs();
                // Rounding of departures up to 20, times the weights' condition.
                prop_assert!(error < 1e-9, "{how}: off by {error:e}");
            }
        }
        let off = assess(&shifted).minimum_zone;
        prop_assert!((off.x - plain.minimum_zone.x - x).abs() < 1e-9, "centre follows");
    }
}

#[test]
fn long_and_rough_profiles_settle() {
    // A fixed multiplicative sequence stands for roughness; ties and steps are the worst
    // for an exchange method.
    for count in [360, 3600] {
        let rough = profile(count, |t| {
            let k = libm::round(t * count as f64 / (2.0 * PI));
            libm::fmod(k * 7919.0, 101.0) / 101.0
        });
        let steps = profile(count, |t| libm::floor(3.0 * cos(2.0 * t)));
        for p in [rough, steps] {
            let assessment = p.assess();
            let zone = assessment.minimum_zone;
            for (dx, dy) in [(1e-4, 0.0), (-1e-4, 0.0), (0.0, 1e-4), (0.0, -1e-4)] {
                let moved = about(&p.stations, zone.x + dx, zone.y + dy, |low, _| low);
                assert!(moved.roundness() >= zone.roundness(), "no better centre nearby");
            }
            // An exchange that gave up would have left the least-squares centre.
            let centred = Centred::new(&p);
            assert!(centred.minimum_zone().is_some(), "zone settled");
            assert!(centred.circumscribed(1.0).is_some(), "circumscribed settled");
            assert!(centred.circumscribed(-1.0).is_some(), "inscribed settled");
        }
    }
}
