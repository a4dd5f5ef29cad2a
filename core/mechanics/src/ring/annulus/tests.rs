extern crate std;

use super::*;

fn ring(ratio: f64) -> Annulus {
    Annulus { inner: 1.0 / ratio, outer: 1.0, modulus: 1.0, poisson: 0.3 }
}

fn close(found: f64, expected: f64, relative: f64, what: &str) {
    let error = (found / expected - 1.0).abs();
    assert!(error <= relative, "{what}: {found} against {expected}, off by {error:e}");
}

/// `b/a`, m, then `E u/(p b)` radial b, a, tangential b, a and hoop/p at b, a.
///
/// Derived independently: the four Michell constants solved with 80 digits, displacements
/// by Kolosov's constant (Barber, *Elasticity*, table of Michell displacements).
const THIN_AND_HIGH: [(f64, u32, [f64; 6]); 6] = [
    (
        1.005,
        2,
        [
            -1.074706710124689e7,
            -1.074706733208645e7,
            5.333333450621888e6,
            5.413733916041669e6,
            -8.040050000310944e4,
            8.080250249687502e4,
        ],
    ),
    (
        1.005,
        3,
        [
            -1.511343851656019e6,
            -1.511343936662248e6,
            4.937312797155204e5,
            5.138314163850409e5,
            -3.015031250945782e4,
            3.030106405533862e4,
        ],
    ),
    (
        1.005,
        30,
        [
            -1.202121811569643e2,
            -1.202104660308757e2,
            -4.932934514138952,
            1.2956960680322e1,
            -2.685002165811329e2,
            2.698408461506783e2,
        ],
    ),
    (
        1.005,
        300,
        [
            -1.909066068371637e-2,
            -1.662022368010608e-2,
            -8.880587494049024e-3,
            9.424309996550395e-3,
            -2.983266908898424,
            2.824726139161438,
        ],
    ),
    (
        1.005,
        600,
        [
            -3.792866804482274e-3,
            -1.477386091683861e-3,
            -1.492369285393878e-3,
            1.105633582749242e-3,
            -1.199214438040809,
            6.652122773756507e-1,
        ],
    ),
    (
        1.3,
        300,
        [
            -6.658962877365304e-3,
            -7.055734685611647e-35,
            -2.311136790408782e-3,
            6.988662192216702e-35,
            -1.0,
            2.716405799873219e-32,
        ],
    ),
];

#[test]
fn thin_walls_and_high_orders_keep_their_digits() {
    for (ratio, m, expected) in THIN_AND_HIGH {
        let response = ring(ratio).response(m, Edge::Outside, -1.0).unwrap();
        let (outside, bore) = (response.outside, response.bore.unwrap());
        let found = [outside.radial, bore.radial, outside.tangential, bore.tangential, outside.hoop, bore.hoop];
        for (found, expected) in found.into_iter().zip(expected) {
            // The rounded ratio moves a wall of 1/200 by 1e-14 and its cube by 1e-13; at
            // order 300 through a thick wall exp(-m x) multiplies rounding by 80.
            close(found, expected, 1e-12, &std::format!("b/a {ratio}, m {m}"));
        }
    }
}

#[test]
fn high_order_reaches_the_solid_disc() {
    // E u/(p b) = -(2m - (1 - nu))/(m^2 - 1), the regular Michell terms alone.
    let solid = Annulus { inner: 0.0, ..ring(1.5) };
    for m in [2_u32, 3, 6, 40] {
        let order = f64::from(m);
        let expected = -(2.0 * order - 0.7) / (order * order - 1.0);
        let response = solid.response(m, Edge::Outside, -1.0).unwrap();
        close(response.outside.radial, expected, 1e-14, "solid disc");
        assert_eq!(response.bore, None, "a solid disc has no bore");
        let pinhole = Annulus { inner: 1e-12, ..solid };
        let pierced = pinhole.response(m, Edge::Outside, -1.0).unwrap();
        close(pierced.outside.radial, expected, 1e-14, "pinhole");
    }
    let ring = ring(1.5).response(600, Edge::Outside, -1.0).unwrap();
    close(ring.outside.radial, -(1200.0 - 0.7) / 359_999.0, 1e-12, "thick ring, order 600");
}

#[test]
fn edges_answer_each_other() {
    // Betti: a b-load's work on the a-displacement equals the a-load's on the b-displacement.
    for (ratio, m) in [(1.01, 3), (1.1, 2), (1.7, 5), (3.0, 9)] {
        let outer = ring(ratio).response(m, Edge::Outside, -1.0).unwrap().bore.unwrap();
        let inner = ring(ratio).response(m, Edge::Bore, -1.0).unwrap().outside;
        close(outer.radial / ratio, -inner.radial, 1e-12, "Betti's reciprocal theorem");
    }
}

#[test]
fn thin_ring_bends_as_a_curved_beam() {
    // Roark, ch. 9 (from memory): bending, hoop and shear of a curved beam per harmonic,
    // u = q [R^4/EI + R^2/EA + m^2 kappa R^2/GA]/(m^2 - 1)^2, kappa 6/5.
    for (ratio, tolerance) in [(1.005, 0.01), (1.05, 0.07)] {
        for m in [2_u32, 3, 6] {
            let order = f64::from(m);
            let wall = 1.0 - 1.0 / ratio;
            let mean: f64 = 1.0 - wall / 2.0;
            let m21 = order * order - 1.0;
            let square = mean * mean;
            let beam = (12.0 * square * square / (wall * wall * wall)
                + square / wall
                + order * order * 1.2 * square * 2.6 / wall)
                / (m21 * m21)
                / mean;
            let exact = ring(ratio).response(m, Edge::Outside, -1.0).unwrap().outside.radial;
            // Load at the outer radius instead of the mean: of the order of the wall.
            close(-exact, beam, tolerance, "curved beam");
        }
    }
}

#[test]
fn faults_are_named() {
    let good = ring(1.2);
    let outside = |ring: Annulus, m| ring.response(m, Edge::Outside, -1.0);
    assert_eq!(outside(good, 1), Err(RingError::Unbalanced), "order 1");
    for inner in [-0.1, 1.0, 2.0, 0.99999] {
        assert_eq!(outside(Annulus { inner, ..good }, 2), Err(RingError::Radii), "{inner}");
    }
    let bad = Annulus { inner: f64::NAN, ..good };
    assert_eq!(outside(bad, 2), Err(RingError::NotFinite), "NaN radius");
    for poisson in [-0.1, 0.5] {
        assert_eq!(outside(Annulus { poisson, ..good }, 2), Err(RingError::Material), "{poisson}");
    }
    let solid = Annulus { inner: 0.0, ..good };
    assert_eq!(solid.response(2, Edge::Bore, -1.0), Err(RingError::NoBore), "solid");
    assert_eq!(good.response(2, Edge::Outside, f64::INFINITY), Err(RingError::NotFinite), "infinite load");
}

/// Lame's thick cylinder under pressure in its bore (Timoshenko and Goodier, art. 28).
#[test]
fn pressure_in_the_bore_opens_both_edges_as_lame_has_it() {
    let (a, b, p) = (0.03, 0.05, 10e6);
    let tube = Annulus { inner: a, outer: b, modulus: 207e9, poisson: 0.3 };
    let opened = tube.response(0, Edge::Bore, -p).unwrap();
    let bore = opened.bore.unwrap();
    let (squares, wall) = (b * b + a * a, b * b - a * a);
    for (got, expected) in [
        (bore.hoop, p * squares / wall),
        (bore.radial, p * a / 207e9 * (squares / wall + 0.3)),
        (opened.outside.hoop, 2.0 * p * a * a / wall),
        (opened.outside.radial, 2.0 * p * a * a * b / (207e9 * wall)),
    ] {
        assert!((got / expected - 1.0).abs() < 1e-12, "{got}, not {expected}");
    }
}
