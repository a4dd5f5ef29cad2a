extern crate std;

use core::f64::consts::PI;

use libm::cos;
use proptest::prelude::*;

use super::*;
use crate::ring::NARROWEST_HALF_ANGLE;

const STEEL: Annulus = Annulus { inner: 0.045, outer: 0.050, modulus: 207e9, poisson: 0.3 };

fn load(edge: Edge, jaws: u32, half_angle: f64) -> JawLoad {
    JawLoad { edge, jaws, half_angle, force_per_jaw: 10e3, length: 0.040 }
}

fn close(found: f64, expected: f64, relative: f64, what: &str) {
    let error = (found / expected - 1.0).abs();
    assert!(error <= relative, "{what}: {found} against {expected}, off by {error:e}");
}

#[test]
fn full_circle_jaws_leave_lames_shrink_and_no_lobes() {
    for jaws in 2..=6 {
        let load = load(Edge::Outside, jaws, PI / f64::from(jaws));
        for ring in [STEEL, Annulus { inner: 0.0, ..STEEL }, Annulus { inner: 0.0497, ..STEEL }] {
            let pressure = load.pressure(ring.outer).unwrap();
            let lame = ring.response(0, Edge::Outside, -pressure).unwrap();
            let shape = ring.squeeze(&load).unwrap();
            close(shape.outside.mean, lame.outside.radial, 1e-12, "shrink");
            let lobing = shape.outside.peak_to_valley();
            // Rounding of sin(pi) is amplified by the thin ring's compliance.
            assert!(lobing < 1e-9 * lame.outside.radial.abs(), "{jaws} jaws: lobing {lobing:e}");
        }
    }
}

#[test]
fn uniform_shrink_under_a_full_wrap_matches_the_optimum_bore() {
    // OD 100, ID 90, L 40 mm, 10 kN on each of three 120 degree jaws; p = W/(b L 2 sin 60).
    // Lame's shrink, derived independently to ten digits.
    let shape = STEEL.squeeze(&load(Edge::Outside, 3, PI / 3.0)).unwrap();
    close(shape.outside.mean, -0.006433352542e-3, 1e-9, "uniform shrink");
}

#[test]
fn closed_near_field_equals_the_plain_series() {
    for (ring, edge, beta) in [
        (STEEL, Edge::Outside, 0.3),
        (STEEL, Edge::Bore, 0.7),
        (Annulus { inner: 0.0, ..STEEL }, Edge::Outside, 0.5),
        (Annulus { inner: 0.020, ..STEEL }, Edge::Bore, 0.05),
    ] {
        let load = load(edge, 3, beta);
        let squeeze = ring.squeeze(&load).unwrap();
        let pressure = PressureSeries::new(&load, load.pressure(ring.radius(edge)).unwrap());
        let near = match edge {
            Edge::Outside => squeeze.outside,
            Edge::Bore => squeeze.bore.unwrap(),
        };
        let span = near.peak_to_valley();
        for theta in [0.0, 0.9 * beta, beta, 1.1 * beta, 0.8, PI / 3.0, 2.0, 4.5] {
            let mut radial = near.mean;
            for k in (1..=60_000_u32).rev() {
                let response = ring.response(3 * k, edge, -1.0).unwrap();
                let unit = match edge {
                    Edge::Outside => response.outside.radial,
                    Edge::Bore => response.bore.unwrap().radial,
                };
                let m = f64::from(3 * k);
                radial += unit * pressure.amplitude(m) * cos(m * theta);
            }
            let error = (near.radial(theta) - radial).abs() / span;
            // TAIL, and the plain series' own tail 2/(9 beta 60000) at worst.
            let plain = 2.0 / (9.0 * beta * 60_000.0);
            assert!(error < 1e-6 + plain, "theta {theta}: off by {error:e}");
        }
    }
}

#[test]
fn listed_harmonics_are_those_of_the_shape() {
    let squeeze = STEEL.squeeze(&load(Edge::Outside, 4, 0.2)).unwrap();
    for shape in [squeeze.outside, squeeze.bore.unwrap()] {
        let samples = shape.sampled(2048);
        let span = shape.peak_to_valley();
        for harmonic in &shape.harmonics[..6] {
            let sum: f64 = samples
                .iter()
                .enumerate()
                .map(|(i, r)| r * cos(2.0 * PI * f64::from(harmonic.order) * i as f64 / 2048.0))
                .sum();
            let error = (sum / 1024.0 - harmonic.amplitude).abs() / span;
            // Orders beyond 1024 fold back as 2/(m^2 beta).
            assert!(error < 1e-5, "order {}: off by {error:e}", harmonic.order);
        }
    }
}

#[test]
fn thin_ring_theory_is_a_few_per_cent_off_where_it_was_measured() {
    // Malluck & Melkote 2004, J. Manuf. Sci. Eng. 126(1):141 (abstract): thin-ring theory
    // within 6 % of the measured chucking deformation at inner/outer 0.881.
    let load = load(Edge::Outside, 3, 0.05);
    let ring = Annulus { inner: 0.881 * 0.050, ..STEEL };
    let (wall, mean) = (ring.outer - ring.inner, 0.5 * (ring.outer + ring.inner));
    let inertia = load.length * wall * wall * wall / 12.0;
    let thin = 0.030195357902 * load.force_per_jaw * mean * mean * mean / (ring.modulus * inertia);
    let exact = ring.squeeze(&load).unwrap().bore.unwrap().peak_to_valley();
    let ratio = thin / exact;
    assert!((0.94..1.0).contains(&ratio), "thin ring over exact is {ratio}");
}

#[test]
fn line_contact_is_finite_and_taken_as_the_narrowest_arc() {
    for edge in [Edge::Outside, Edge::Bore] {
        let line = STEEL.squeeze(&load(edge, 3, 0.0)).unwrap();
        let arc = STEEL.squeeze(&load(edge, 3, NARROWEST_HALF_ANGLE)).unwrap();
        assert_eq!(line, arc, "line contact on {edge:?}");
        assert!(line.outside.peak_to_valley().is_finite(), "finite lobing");
    }
}

#[test]
fn faults_are_named() {
    let good = load(Edge::Outside, 3, 0.3);
    let fault = |load: JawLoad| STEEL.squeeze(&load).unwrap_err();
    for jaws in [0, 1, 7, u32::MAX] {
        assert_eq!(fault(JawLoad { jaws, ..good }), RingError::Jaws, "{jaws} jaws");
    }
    for half_angle in [-0.01, 1.06] {
        assert_eq!(fault(JawLoad { half_angle, ..good }), RingError::Arc, "{half_angle}");
    }
    assert_eq!(fault(JawLoad { force_per_jaw: -1.0, ..good }), RingError::Load, "force");
    assert_eq!(fault(JawLoad { length: 0.0, ..good }), RingError::Load, "length");
    assert_eq!(fault(JawLoad { length: f64::NAN, ..good }), RingError::NotFinite, "NaN length");
    assert_eq!(fault(JawLoad { length: 1e-320, ..good }), RingError::NotFinite, "tiny length");
    let solid = Annulus { inner: 0.0, ..STEEL };
    let inside = JawLoad { edge: Edge::Bore, ..good };
    assert_eq!(solid.squeeze(&inside), Err(RingError::NoBore), "inside a solid disc");
}

proptest! {
    #[test]
    fn shape_is_finite_linear_in_force_and_the_same_at_every_jaw(
        inner in 0.0..0.0498_f64,
        jaws in 2_u32..=6,
        share in 0.0..=1.0_f64,
        theta in -10.0..10.0_f64,
        bore in any::<bool>(),
    ) {
        let edge = if bore && inner > 0.0 { Edge::Bore } else { Edge::Outside };
        let ring = Annulus { inner, ..STEEL };
        let once = load(edge, jaws, share * PI / f64::from(jaws));
        let one = ring.squeeze(&once).unwrap();
        let two = ring.squeeze(&JawLoad { force_per_jaw: 20e3, ..once }).unwrap();
        let pitch = 2.0 * PI / f64::from(jaws);
        let scale = one.outside.peak_to_valley() + one.outside.mean.abs();
        let at = one.outside.radial(theta);
        prop_assert!(at.is_finite(), "finite at {theta}");
        prop_assert!((two.outside.radial(theta) - 2.0 * at).abs() < 1e-9 * scale, "linear");
        prop_assert!((one.outside.radial(theta + pitch) - at).abs() < 1e-9 * scale, "next jaw");
        prop_assert!((one.outside.radial(-theta) - at).abs() < 1e-9 * scale, "mirror");
        if let Some(shape) = one.bore {
            let samples = shape.sampled(360);
            let low = samples.iter().copied().fold(f64::INFINITY, f64::min);
            let high = samples.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            let span = shape.peak_to_valley();
            prop_assert!(high - low <= span * (1.0 + 1e-9), "no sample outside the span");
        }
    }
}
