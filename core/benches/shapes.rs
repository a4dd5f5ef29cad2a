//! How long the elastic answer takes: shape work once, load work at every move of a slider.
//!
//! Wanted natively: shape work of the flanged ring 20 ms, load work 4 ms.

#![allow(clippy::unwrap_used, missing_docs, reason = "a job that is no job must fail; a bench has no reader")]

use divan::{Bencher, black_box};
use holdround_core::contact::{Arc, Face, Gap, JawGive};
use holdround_core::part::{Band, Elastic, PartModel, Profile, Side, Step};
use holdround_core::setup::{Entries, Setup};
use holdround_core::{Effort, Engine, Progress};

fn main() {
    divan::main();
}

/// The flanged ring: a flange and a tube, gripped at the tube's far end from the flange.
fn flanged(changes: &[(&str, &str)]) -> Setup {
    let ring = [
        ("part.shape", "steps"),
        ("steps.0.length", "45 mm"),
        ("steps.0.outside", "72 mm"),
        ("steps.0.bore", "60 mm"),
        ("steps.1.length", "11 mm"),
        ("steps.1.outside", "122 mm"),
        ("steps.1.bore", "60 mm"),
        ("grip.length", "20 mm"),
        ("jaws.width", "36 mm"),
        ("jaws.length", "60 mm"),
        ("cuts.0.diameter", "122 mm"),
        ("cuts.0.distance", "30 mm"),
        ("grip.upper_deviation", "20 µm"),
        ("grip.lower_deviation", "-20 µm"),
    ];
    let mut entries = Entries::default();
    for (path, text) in ring.iter().chain(changes) {
        assert!(entries.set(path, text), "{path} is declared");
    }
    Setup::read(&entries).unwrap()
}

#[divan::bench]
fn shape_work(bencher: Bencher) {
    let setup = flanged(&[]);
    bencher.bench(|| {
        let mut engine = Engine::default();
        while engine.prepare(black_box(&setup)) != Progress::Done {}
        engine
    });
}

const CHANGES: &[(&str, &str)] =
    &[("run.pressure", "0.6 MPa"), ("run.speed", "900 rev/min"), ("jaws.bored_diameter", "72.05 mm")];

fn load_work(bencher: Bencher, change: (&str, &str), effort: Effort) {
    let jobs = [flanged(&[]), flanged(&[change])];
    let mut engine = Engine::default();
    let mut turn = 0;
    let _ = engine.evaluate(&jobs[0], effort);
    bencher.bench_local(|| {
        turn += 1;
        engine.evaluate(black_box(&jobs[turn % 2]), effort)
    });
}

#[divan::bench(args = CHANGES)]
fn sliding(bencher: Bencher, change: &(&str, &str)) {
    load_work(bencher, *change, Effort::Sliding);
}

#[divan::bench(args = CHANGES)]
fn full(bencher: Bencher, change: &(&str, &str)) {
    load_work(bencher, *change, Effort::Full);
}

const STEEL: Elastic = Elastic { youngs: 206e9, poisson: 0.29, density: 7850.0 };

/// A tube as long as `times` its first length: elements along it in proportion.
fn tube(times: usize) -> PartModel {
    let profile = Profile::new(&vec![Step::cylinder(0.02, 0.12, 0.104); times]).unwrap();
    let band = Band { side: Side::Outside, z: [0.0, 0.01], cells: Band::CELLS };
    PartModel::new(&profile, STEEL, band, 3, &[], 1.0).unwrap()
}

#[divan::bench(args = [1, 2, 4, 8, 16])]
fn one_harmonic_of_so_many_lengths(bencher: Bencher, times: usize) {
    let model = tube(times);
    bencher.bench(|| black_box(&model).respond(3).unwrap());
}

#[divan::bench(args = [1, 2, 4, 8, 16])]
fn so_many_harmonics(bencher: Bencher, count: usize) {
    let model = tube(2);
    bencher.bench(|| (0..count).map(|k| black_box(&model).respond(3 * k).unwrap()).collect::<Vec<_>>());
}

#[divan::bench]
fn press(bencher: Bencher) {
    let part = tube(2).spring().unwrap();
    let face = Face::new(&part, Arc::graded(1.0, Arc::CELLS), &JawGive::default()).unwrap();
    bencher.bench(|| black_box(&face).press(3e3, &Gap::straight(2e-5)).unwrap());
}
