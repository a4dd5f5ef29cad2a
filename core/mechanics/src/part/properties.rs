//! Any profile is refused, or meshed and solved with finite numbers.

use super::element::points;
use super::*;
use alloc::vec::Vec;
use proptest::prelude::*;

/// Steps of lengths and diameters from a few micrometres apart to absurd, some solid, some conical.
fn steps() -> impl Strategy<Value = Vec<Step>> {
    let diameter = prop_oneof![Just(0.0), Just(0.05), 0.04..0.12f64, (0..5u8).prop_map(|k| 0.1 + 1e-5 * f64::from(k)),];
    let pair =
        (diameter.clone(), diameter, prop::bool::ANY).prop_map(|(a, b, cone)| if cone { [a, b] } else { [a, a] });
    let step = (1e-3..0.05f64, pair.clone(), pair).prop_map(|(length, p, q)| {
        let (inner, outer) = if p[0] + p[1] < q[0] + q[1] { (p, q) } else { (q, p) };
        Step { length, outer, inner }
    });
    prop::collection::vec(step, 1..6)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]
    #[test]
    fn every_element_of_every_profile_is_the_right_way_out(
        steps in steps(),
        from in 0.0..1.0f64,
        density in 0.5..2.0f64,
    ) {
        let Ok(profile) = Profile::new(&steps) else { return Ok(()) };
        let length = profile.length();
        let band = Band { side: Side::Outside, z: [from * length, length], cells: Band::CELLS };
        let Ok(mesh) = Mesh::new(&profile, &band, &[], density) else { return Ok(()) };
        let mut area = 0.0;
        for element in &mesh.elements {
            for p in &points(&mesh, element) {
                prop_assert!(p.weight > 0.0 && p.weight.is_finite(), "inside out: {:?}", element);
                area += p.weight / p.r;
            }
        }
        let wanted: f64 = steps
            .iter()
            .map(|s| s.length * (s.outer[0] + s.outer[1] - s.inner[0] - s.inner[1]) / 4.0)
            .sum();
        prop_assert!((area / wanted - 1.0).abs() < 1e-6, "area {} of {}", area, wanted);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]
    #[test]
    fn every_profile_is_refused_or_answers_in_finite_numbers(steps in steps(), jaws in 2..7usize) {
        let Ok(profile) = Profile::new(&steps) else { return Ok(()) };
        let first = steps.first().map_or(0.0, |s| s.length);
        let band = Band { side: Side::Outside, z: [0.0, first], cells: Band::CELLS };
        let elastic = Elastic { youngs: 69e9, poisson: 0.33, density: 2700.0 };
        let face = Surface { name: "front".into(), side: Side::Face, z: [0.0, 0.0] };
        let Ok(model) = PartModel::new(&profile, elastic, band, jaws, &[face], 0.6) else {
            return Ok(());
        };
        for order in [0, jaws, 6 * jaws] {
            if let Ok(response) = model.respond(order) {
                let numbers = response.band.iter().chain(response.surfaces.iter().chain(&response.spin).flatten());
                prop_assert!(numbers.copied().all(f64::is_finite), "order {}", order);
            }
        }
    }
}

#[test]
fn two_hundred_steps_are_solved_or_refused_for_their_size() {
    for wave in [1, 7, 50] {
        let steps: Vec<Step> = (0..200)
            .map(|k| {
                let outer = 0.1 + 0.0002 * f64::from((k / wave) * 37 % 11);
                Step::cylinder(0.001, outer, 0.08)
            })
            .collect();
        let profile = Profile::new(&steps).expect("sound");
        let band = Band { side: Side::Outside, z: [0.0, 0.001], cells: Band::CELLS };
        let elastic = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
        match PartModel::new(&profile, elastic, band, 3, &[], 0.6) {
            Ok(model) => assert!(model.unknowns() <= 3 * MAX_NODES, "within the bound"),
            Err(e) => assert!(matches!(e, PartError::TooLarge(_)), "for its size: {e}"),
        }
    }
}
