extern crate std;

use libm::sin;
use std::format;

use super::*;

const STEEL: Annulus = Annulus { inner: 0.045, outer: 0.050, modulus: 207e9, poisson: 0.3 };

fn load(edge: Edge, jaws: u32, half_angle: f64) -> JawLoad {
    JawLoad { edge, jaws, half_angle, force_per_jaw: 10e3, length: 0.040 }
}

#[test]
fn thin_ring_bends_as_point_loads_require() {
    // n equal radial loads: moment (W R/2)(1/a - cot a) under a load, hoop compression
    // (W/2) cot a, a = pi/n. Roark, ch. 9, ring case 7 (from memory); derived independently
    // by Castigliano. In W R at the load: n = 2, 3, 4, 6.
    let moments = [(2, core::f64::consts::FRAC_1_PI), (3, 0.188789694681), (4, 0.136619772368), (6, 0.0889042547669)];
    for (jaws, moment) in moments {
        let load = load(Edge::Outside, jaws, 0.0);
        let ring = Annulus { inner: 0.09995, outer: 0.10005, ..STEEL };
        let (wall, mean) = (1e-4, 0.1);
        let a = PI / f64::from(jaws);
        let bending = 6.0 * moment * load.force_per_jaw * mean / (load.length * wall * wall);
        let compression = 0.5 * load.force_per_jaw / libm::tan(a) / (load.length * wall);
        let peak = ring.peak_hoop(&load).unwrap();
        // Bore in tension under the load. The moment's kink is rounded over about a wall
        // thickness: of the order of n/pi walls in the radius, 1e-3, with its factor.
        let ratio = peak.bore.unwrap() / (bending - compression);
        assert!((ratio - 1.0).abs() < 5e-3, "{jaws} jaws: ratio {ratio}");
    }
}

#[test]
fn full_circle_jaws_give_lames_stress() {
    let load = load(Edge::Outside, 3, PI / 3.0);
    let pressure = load.pressure(0.050).unwrap();
    let lame = STEEL.response(0, Edge::Outside, -pressure).unwrap();
    let peak = STEEL.peak_hoop(&load).unwrap();
    let (outside, bore) = (lame.outside.hoop.abs(), lame.bore.unwrap().hoop.abs());
    assert!((peak.outside / outside - 1.0).abs() < 1e-9, "outside {}", peak.outside);
    assert!((peak.bore.unwrap() / bore - 1.0).abs() < 1e-9, "bore {:?}", peak.bore);
}

#[test]
fn stress_equals_the_plain_harmonic_sum() {
    for (inner, edge, beta) in [(0.045, Edge::Outside, 0.4), (0.045, Edge::Bore, 0.2), (0.015, Edge::Outside, 0.1)] {
        let ring = Annulus { inner, ..STEEL };
        let load = load(edge, 3, beta);
        let contact = load.pressure(ring.radius(edge)).unwrap();
        let mean = 3.0 * contact * beta / PI;
        let uniform = ring.response(0, edge, -mean).unwrap();
        let far_of = |r: crate::ring::Response| match edge {
            Edge::Outside => r.bore.unwrap().hoop,
            Edge::Bore => r.outside.hoop,
        };
        let mut most: f64 = 0.0;
        for i in 0..=600 {
            let theta = PI / 3.0 * f64::from(i) / 600.0;
            let mut hoop = far_of(uniform);
            for k in 1..=400_u32 {
                let m = f64::from(3 * k);
                let amplitude = 2.0 * contact * 3.0 / PI * sin(m * beta) / m;
                hoop += far_of(ring.response(3 * k, edge, -amplitude).unwrap()) * libm::cos(m * theta);
            }
            most = most.max(hoop.abs());
        }
        let peak = ring.peak_hoop(&load).unwrap();
        let found = match edge {
            Edge::Outside => peak.bore.unwrap(),
            Edge::Bore => peak.outside,
        };
        // TAIL of peak_hoop is 1e-4.
        assert!((found / most - 1.0).abs() < 2e-4, "{}", format!("{found} against {most}"));
    }
}

#[test]
fn solid_disc_under_wide_jaws_bears_about_the_pressure() {
    // Half-plane under uniform pressure: surface stress along the surface equals the
    // pressure (Timoshenko & Goodier, distributed load on a straight boundary).
    let solid = Annulus { inner: 0.0, ..STEEL };
    let load = load(Edge::Outside, 3, 0.02);
    let pressure = load.pressure(0.050).unwrap();
    let peak = solid.peak_hoop(&load).unwrap();
    // The rest of the disc adds the mean pressure, 3 * 0.02 / pi of the jaw's.
    assert!((peak.outside / pressure - 1.0).abs() < 0.03, "ratio {}", peak.outside / pressure);
    assert_eq!(peak.bore, None, "no bore");
}

#[test]
fn faults_are_named() {
    let narrow = STEEL.peak_hoop(&load(Edge::Outside, 3, 0.0)).unwrap();
    assert!(narrow.outside.is_finite(), "line contact is finite");
    assert_eq!(STEEL.peak_hoop(&load(Edge::Outside, 9, 0.1)), Err(RingError::Jaws), "nine jaws");
}
