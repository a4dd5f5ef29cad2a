//! Checks of the part's spring against closed forms.

use super::*;
use alloc::string::String;
use alloc::vec::Vec;

/// Steel of the tables: E 207 GPa, nu 0.3.
const STEEL: Elastic = Elastic {
    youngs: 207e9,
    poisson: 0.3,
    density: 7850.0,
};

fn surface(side: Side, length: f64) -> Surface {
    Surface {
        name: String::from("s"),
        side,
        z: [0.0, length],
    }
}

/// A ring (diameters, m) gripped over its whole length; surfaces: outside, bore.
fn ring(outer: f64, inner: f64, length: f64, grip: Side, density: f64) -> PartModel {
    let profile = Profile::new(&[Step::cylinder(length, outer, inner)]).expect("a ring");
    let band = Band {
        side: grip,
        z: [0.0, length],
    };
    let mut surfaces = alloc::vec![surface(Side::Outside, length)];
    if inner > 0.0 {
        surfaces.push(surface(Side::Bore, length));
    }
    PartModel::new(&profile, STEEL, band, 2, &surfaces, density).expect("sound")
}

/// Mean over the length of the radial displacement of a surface under uniform outward pressure
/// of amplitude 1 Pa in order `n`, times E.
fn answer(model: &PartModel, n: usize, surface: usize) -> f64 {
    let response = model.respond(n).expect("regular");
    let points = libm::sqrt(response.band.len() as f64) as usize;
    let rows = response.surfaces[surface].chunks_exact(points);
    let sums: Vec<f64> = rows.map(|row| row.iter().sum()).collect();
    STEEL.youngs * sums.iter().sum::<f64>() / sums.len() as f64
}

/// Worst relative error against the plane stress annulus.
/// Source: Michell's stress function `A r^m + B r^-m + C r^(m+2) + D r^(2-m)` (Barber,
/// *Elasticity*, Michell table), coefficients solved independently to 40 digits and checked
/// against a Chebyshev solution of the Navier equations. A disc 1/1000 of its radius thick is in
/// plane stress to 1e-6.
fn annulus_error(density: f64) -> f64 {
    // (b/a, m, E ur(b)/(p b), E ur(a)/(p b)) for pressure p outside, outward here.
    let outside = [
        (1.1, 2, 1553.79049419, 1553.97617248),
        (1.1, 3, 220.444142402, 220.48398766),
        (1.1, 6, 12.0896299444, 12.0619814386),
        (1.3, 3, 11.8189602431, 11.77533158),
        (2.0, 2, 5.93950617284, 5.82716049383),
        (2.0, 3, 1.26351010101, 1.0101010101),
        (2.0, 6, 0.331870663655, 0.0628900232289),
    ];
    // (b/a, m, E ur(a)/(p a)) for pressure in the bore.
    let bore = [
        (1.1, 3, 220.619142402),
        (1.3, 3, 11.9939602431),
        (2.0, 3, 1.43851010101),
    ];
    let b = 0.05;
    let length = b / 1000.0;
    let mut worst: f64 = 0.0;
    let mut compare = |got: f64, wanted: f64, case: &str| {
        let error = (got / wanted - 1.0).abs();
        std::eprintln!("{case}: {error:.2e}");
        worst = worst.max(error);
    };
    for (ratio, m, at_b, at_a) in outside {
        let model = ring(2.0 * b, 2.0 * b / ratio, length, Side::Outside, density);
        compare(
            answer(&model, m, 0) / b,
            at_b,
            &std::format!("{ratio} {m} outside"),
        );
        compare(
            answer(&model, m, 1) / b,
            at_a,
            &std::format!("{ratio} {m} bore"),
        );
    }
    for (ratio, m, at_a) in bore {
        let model = ring(2.0 * b, 2.0 * b / ratio, length, Side::Bore, density);
        compare(
            answer(&model, m, 1) / (b / ratio),
            at_a,
            &std::format!("{ratio} {m} in bore"),
        );
    }
    worst
}

#[test]
fn the_annulus_is_within_a_thousandth_at_default_and_a_ten_thousandth_refined() {
    let (default, refined) = (annulus_error(1.0), annulus_error(2.0));
    assert!(default < 1e-3, "default mesh: {default:e}");
    assert!(refined < 1e-4, "twice as fine: {refined:e}");
}
