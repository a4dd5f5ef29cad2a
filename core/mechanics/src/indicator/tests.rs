use super::super::{Fit, IndicatorError, Readings, Sight, looks_like, orders, part, sight};
use alloc::vec::Vec;
use core::f64::consts::{PI, TAU};
use proptest::prelude::*;

/// Readings of waves `(order, cos, sin)` at `stations`.
fn read(stations: usize, start: f64, waves: &[(usize, f64, f64)]) -> Vec<Option<f64>> {
    let at = |k: usize| {
        let angle = start + TAU * k as f64 / stations as f64;
        let height = |&(n, a, b): &(usize, f64, f64)| a * libm::cos(n as f64 * angle) + b * libm::sin(n as f64 * angle);
        Some(waves.iter().map(height).sum())
    };
    (0..stations).map(at).collect()
}

fn fitted(departures: &[Option<f64>], start: f64, jaws: usize) -> Result<Fit, IndicatorError> {
    Readings { departures, start, jaws, resolution: 1e-6 }.fit()
}

#[test]
fn what_the_stations_cannot_tell_apart_reads_the_same() {
    for stations in 6..=36 {
        for order in 1..=12 {
            let seen = looks_like(stations, order);
            // At the stations, not between them: the cosine of either order is the same number.
            let alike = (0..stations).all(|k| {
                let turn = TAU * k as f64 / stations as f64;
                (libm::cos(order as f64 * turn) - libm::cos(seen as f64 * turn)).abs() < 1e-12
            });
            assert!(alike && 2 * seen <= stations, "{stations} stations, order {order}: {seen}");
        }
    }
    assert_eq!(sight(8, 6, 0.0), Sight::LooksLike(2), "six times on eight stations looks oval");
    assert_eq!(sight(6, 3, 0.0), Sight::AtJaws, "at each jaw and between");
    assert_eq!(sight(6, 3, PI / 6.0), Sight::Hidden, "where three lobes pass through nought");
    assert_eq!(sight(12, 3, 0.3), Sight::Whole, "four stations a lobe");
}

#[test]
fn six_stations_tell_three_lobes_and_nothing_of_their_scatter() {
    let departures = read(6, 0.0, &[(0, 5e-6, 0.0), (1, 3e-6, 4e-6), (3, 7e-6, 0.0)]);
    let fit = fitted(&departures, 0.0, 3).unwrap();
    assert!((fit.wave(1).unwrap().height() - 5e-6).abs() < 1e-15, "offset");
    assert!((fit.wave(3).unwrap().cos - 7e-6).abs() < 1e-15, "lobes at the jaws");
    assert!(fit.scatter.is_none() && fit.wave(6).is_none(), "six readings for six unknowns");
    // 2 d / sqrt 12 over sqrt 6, as each of six readings has a sixth of the weight.
    let expected = 2e-6 / libm::sqrt(12.0) / libm::sqrt(6.0);
    assert!((fit.wave(3).unwrap().uncertainty - expected).abs() < 1e-15, "the resolution alone");
}

#[test]
fn what_is_no_wave_told_is_scatter_and_the_range_is_that_of_the_readings() {
    // An order that is not told is square to all that are: its squares, m a^2 / 2, are left over.
    let departures = read(24, 0.0, &[(0, 50e-6, 0.0), (3, 7e-6, 0.0), (5, 4e-6, 0.0)]);
    let fit = fitted(&departures, 0.0, 3).unwrap();
    let unknowns = 1.0 + 2.0 * 4.0;
    let expected = libm::sqrt(24.0 * 16e-12 / 2.0 / (24.0 - unknowns));
    assert!((fit.scatter.unwrap() / expected - 1.0).abs() < 1e-9, "scatter {:?}, not {expected}", fit.scatter);
    // Student's t of 15 degrees of freedom at 95 % is 2.131 (table, from memory); each wave has 2/24 of the variance.
    let wave = fit.wave(3).unwrap().uncertainty;
    assert!((wave / (2.131 * expected * libm::sqrt(2.0 / 24.0)) - 1.0).abs() < 1e-3, "uncertainty {wave}");
    // All three are highest in the middle of jaw 1.
    let heights = departures.iter().flatten();
    let (low, high) = heights.fold((1.0_f64, -1.0_f64), |(low, high), y| (low.min(*y), high.max(*y)));
    assert!((high - 61e-6).abs() < 1e-15 && (fit.range - (high - low)).abs() < 1e-15, "range {}", fit.range);
}

#[test]
fn too_few_readings_or_too_wide_a_gap_are_refused() {
    let mut departures = read(6, 0.0, &[(3, 7e-6, 0.0)]);
    departures[2] = None;
    assert_eq!(fitted(&departures, 0.0, 3), Err(IndicatorError::TooFew { given: 5, needed: 6 }), "one is missing");
    let mut departures = read(24, 0.0, &[(3, 7e-6, 0.0)]);
    departures[10..].fill(None);
    assert_eq!(fitted(&departures, 0.0, 3), Err(IndicatorError::Gap), "more than half of the circle");
    assert_eq!(fitted(&[Some(0.0); 5], 0.0, 3), Err(IndicatorError::Stations(5)), "five stations");
    assert_eq!(fitted(&[Some(f64::NAN); 8], 0.0, 3), Err(IndicatorError::NotANumber), "no number");
}

#[test]
fn two_sets_at_one_grip_part_nothing() {
    let set = fitted(&read(12, 0.0, &[(3, 7e-6, 0.0)]), 0.0, 3).unwrap();
    assert!(matches!(part(&set, &set, 0.95), Err(IndicatorError::SameGrip(_))), "nearly the same grip");
    let eight = fitted(&read(8, 0.0, &[(3, 7e-6, 0.0)]), 0.0, 3).unwrap();
    assert_eq!(part(&set, &eight, 0.5), Err(IndicatorError::Different), "twelve stations tell six waves, eight do not");
}

proptest! {
    #[test]
    fn waves_put_in_are_found_wherever_the_stations_stand(
        stations in 13_usize..=36, jaws in 2_usize..=6, start in -3.0..3.0_f64,
        sizes in prop::array::uniform9(-20e-6..20e-6_f64), missing in 0_usize..13,
    ) {
        let mut put: Vec<(usize, f64, f64)> = orders(jaws).enumerate().map(|(k, n)| (n, sizes[2 * k], sizes[2 * k + 1])).collect();
        // What the stations cannot tell would show as something else.
        put.retain(|(order, ..)| sight(stations, *order, start) == Sight::Whole);
        put.push((0, sizes[8], 0.0));
        let mut departures = read(stations, start, &put);
        if stations > 18 {
            departures[missing] = None;
        }
        let fit = fitted(&departures, start, jaws).unwrap();
        for (order, cos, sin) in put {
            if order == 0 {
                prop_assert!((fit.mean - cos).abs() < 1e-14, "the mean: {}", fit.mean);
                continue;
            }
            let wave = fit.wave(order).unwrap();
            prop_assert!((wave.cos - cos).abs() < 1e-14 && (wave.sin - sin).abs() < 1e-14, "order {}: {:?}", order, wave);
            let at_crest = cos * libm::cos(order as f64 * wave.crest()) + sin * libm::sin(order as f64 * wave.crest());
            prop_assert!((at_crest - wave.height()).abs() < 1e-14, "the crest is the highest place");
        }
    }

    #[test]
    fn what_grip_does_is_parted_from_what_is_there(
        share in 0.0..0.9_f64, squeezed in -20e-6..20e-6_f64, there in -20e-6..20e-6_f64,
    ) {
        let set = |grip: f64| fitted(&read(12, 0.0, &[(3, grip * squeezed, 0.0), (1, there, 0.0)]), 0.0, 3).unwrap();
        let parted = part(&set(1.0), &set(share), share).unwrap();
        prop_assert!((parted[2].squeezed.cos - squeezed).abs() < 1e-13, "lobes come with the grip");
        prop_assert!((parted[0].there.cos - there).abs() < 1e-13, "the offset is there without");
        prop_assert!(parted[0].squeezed.height() < 1e-13, "and does not come with it");
    }
}
