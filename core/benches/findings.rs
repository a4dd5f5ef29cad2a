//! How long the findings of a set-up take, and the parts that take most of it.
//!
//! From scratch, shape work included; `shapes` tells shape work and load work apart.

#![allow(clippy::unwrap_used, missing_docs, reason = "an example that cannot be read must fail; a bench has no reader")]

use divan::{Bencher, black_box};
use holdround_core::cutting::{CutLoad, ToolPosition};
use holdround_core::evaluate;
use holdround_core::examples::{EXAMPLES, Example};
use holdround_core::grip::Side;
use holdround_core::hold::{Clamped, JawGrip, LateralSupport, Seat, Wrap};
use holdround_core::ring::{Annulus, Edge, JawLoad};
use holdround_core::roundness::Profile;
use holdround_core::setup::{Entries, Setup};

fn main() {
    divan::main();
}

fn example(id: &str) -> &'static Example {
    EXAMPLES.iter().find(|example| example.id == id).unwrap()
}

#[divan::bench(args = EXAMPLES.iter().map(|example| example.id))]
fn full_findings(bencher: Bencher, id: &str) {
    let setup = Setup::read(&Entries::from_json(example(id).json).unwrap()).unwrap();
    bencher.bench(|| evaluate(black_box(&setup)));
}

#[divan::bench(args = EXAMPLES.iter().map(|example| example.id))]
fn from_json_to_setup(bencher: Bencher, id: &str) {
    bencher.bench(|| Setup::read(&Entries::from_json(black_box(example(id).json)).unwrap()).unwrap());
}

/// Of the thin ring: 190/174 mm, three ordinary jaws in the bore.
const RING: Annulus = Annulus { inner: 0.087, outer: 0.095, modulus: 206e9, poisson: 0.3 };
const JAWS: JawLoad = JawLoad { edge: Edge::Bore, jaws: 3, half_angle: 0.23, force_per_jaw: 2700.0, length: 0.016 };

#[divan::bench]
fn squeeze(bencher: Bencher) {
    bencher.bench(|| black_box(&RING).squeeze(black_box(&JAWS)).unwrap());
}

#[divan::bench]
fn peak_to_valley(bencher: Bencher) {
    let shape = RING.squeeze(&JAWS).unwrap().outside;
    bencher.bench(|| black_box(&shape).peak_to_valley());
}

#[divan::bench]
fn sampled(bencher: Bencher) {
    let shape = RING.squeeze(&JAWS).unwrap().bore.unwrap();
    bencher.bench(|| black_box(&shape).sampled(360));
}

#[divan::bench]
fn peak_hoop(bencher: Bencher) {
    bencher.bench(|| black_box(&RING).peak_hoop(black_box(&JAWS)).unwrap());
}

#[divan::bench]
fn assess(bencher: Bencher) {
    let profile = Profile::equally_spaced(&RING.squeeze(&JAWS).unwrap().outside.sampled(360)).unwrap();
    bencher.bench(|| black_box(&profile).assess());
}

#[divan::bench(args = [true, false])]
fn worst_hold(bencher: Bencher, seated: bool) {
    let grip = JawGrip {
        jaws: 3,
        half_angle: 0.3,
        radius: 0.05,
        length: 0.03,
        force: 20_000.0,
        side: Side::Outside,
        wrap: Wrap::Ignored,
    };
    let seat = seated.then_some(Seat { radius: 0.04, z: -0.03 });
    let part = Clamped::new(&grip.contacts(5, 3).unwrap(), 0.1, seat).unwrap().supported(LateralSupport::Jaws);
    let tool = ToolPosition { radius: 0.04, z: 0.04 };
    let load = CutLoad { tool, radial: -300.0, tangential: -1000.0, axial: -400.0, couple: 0.0 }.rotating();
    bencher.bench(|| part.worst(black_box(&load), 3).unwrap());
}
