//! The circles of ISO 12181 on 1,000 random profiles, against linear programming by a library.

use std::f64::consts::TAU;

use holdround_core::roundness::Profile;
use serde_json::Value;

/// A linear congruential generator, as `reference/readings/readings.py` has it.
struct Draws(u64);

impl Draws {
    fn below(&mut self, bound: u64) -> u64 {
        self.0 = (1_103_515_245 * self.0 + 12_345) % (1 << 31);
        (self.0 >> 16) % bound
    }
}

/// Departures in µm at equal angles.
fn profile(seed: u64) -> Vec<f64> {
    let mut draws = Draws(seed);
    let count = 8 + draws.below(65);
    let (lobes, height, noise) = (2 + draws.below(6), draws.below(40), 1 + draws.below(100));
    let off = draws.below(60);
    let departure = |at: u64| {
        let angle = TAU * at as f64 / count as f64;
        let scatter = draws.below(1000) as f64 / 1000.0 * noise as f64;
        off as f64 * libm::cos(angle) + height as f64 * libm::cos(lobes as f64 * angle) + scatter
    };
    (0..count).map(departure).collect()
}

#[test]
fn circles_are_those_of_linear_programming_on_a_thousand_profiles() {
    let told: Value = serde_json::from_str(include_str!("../reference/readings/circles.json")).expect("numbers");
    let profiles = told["profiles"].as_array().expect("a list");
    assert_eq!(profiles.len(), 1000, "every profile");
    let mut worst: f64 = 0.0;
    for (seed, expected) in (1..).zip(profiles) {
        let found = Profile::equally_spaced(&profile(seed)).expect("a profile").assess();
        let ours = [
            ("least squares", found.least_squares.roundness()),
            ("minimum zone", found.minimum_zone.roundness()),
            ("circumscribed radius", found.minimum_circumscribed.radius),
            ("inscribed radius", found.maximum_inscribed.radius),
        ];
        for ((name, ours), theirs) in ours.into_iter().zip(expected.as_array().expect("four numbers")) {
            let theirs = theirs.as_f64().expect("a number");
            let off = (ours - theirs).abs();
            worst = worst.max(off);
            // The library holds its constraints to 1e-10 µm or so; departures are up to 200 µm.
            assert!(off < 1e-8, "profile {seed}, {name}: {ours} µm, by linear programming {theirs} µm");
        }
    }
    println!("farthest apart: {worst} µm");
}
