//! How long the elastic answer takes, and how often it asks for memory: shape work once, load work at every move of a
//! slider.
//!
//! The bench `speed` of the tests tells the times without the counting, beside those that are wanted.

#![allow(clippy::unwrap_used, missing_docs, reason = "a job that is no job must fail; a bench has no reader")]

use divan::{AllocProfiler, Bencher, black_box};
use holdround_core::contact::{Arc, Face, Gap, JawGive};
use holdround_core::part::{Band, Elastic, PartModel, Profile, Side, Step};
use holdround_core::setup::{Entries, Setup};
use holdround_core::{Effort, Engine, Progress};

#[global_allocator]
static COUNTED: AllocProfiler = AllocProfiler::system();

fn main() {
    divan::main();
}

/// The flanged ring with some entries changed.
fn flanged(changes: &[(&str, &str)]) -> Setup {
    let mut entries = Entries::from_json(include_str!("flanged-ring.json")).unwrap();
    for (path, text) in changes {
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

#[divan::bench]
fn press(bencher: Bencher) {
    let profile = Profile::new(&[Step::cylinder(0.04, 0.12, 0.104)]).unwrap();
    let band = Band { side: Side::Outside, z: [0.0, 0.01], cells: Band::CELLS };
    let part = PartModel::new(&profile, STEEL, band, 3, &[], 1.0).unwrap().spring().unwrap();
    let face = Face::new(&part, Arc::graded(1.0, Arc::CELLS), &JawGive::default()).unwrap();
    bencher.bench(|| black_box(&face).press(3e3, &Gap::straight(2e-5)).unwrap());
}
