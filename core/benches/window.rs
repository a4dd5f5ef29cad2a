//! How long a window takes, and 2000 parts drawn, with the shape work of the job itself kept; that of its thinnest and
//! thickest wall is done each time.

#![allow(clippy::unwrap_used, missing_docs, reason = "an example that cannot be read must fail; a bench has no reader")]

use divan::{Bencher, black_box};
use holdround_core::examples::EXAMPLES;
use holdround_core::setup::{Entries, Setup};
use holdround_core::{Effort, Engine, WindowWork};

fn main() {
    divan::main();
}

fn prepared(id: &str) -> (Setup, Engine) {
    let example = EXAMPLES.iter().find(|example| example.id == id).unwrap();
    let setup = Setup::read(&Entries::from_json(example.json).unwrap()).unwrap();
    let mut engine = Engine::default();
    let _ = engine.evaluate(&setup, Effort::Sliding);
    (setup, engine)
}

/// As after a change that leaves sizes alone: the walls are kept too.
#[divan::bench(args = EXAMPLES.iter().map(|example| example.id))]
fn whole_window(bencher: Bencher, id: &str) {
    let (setup, mut engine) = prepared(id);
    let mut kept = Some(WindowWork::new(&setup));
    while kept.as_mut().is_some_and(|work| work.step(&mut engine)) {}
    bencher.bench_local(|| {
        let mut work = WindowWork::new(black_box(&setup));
        if let Some(earlier) = kept.take() {
            work.take_over(earlier);
        }
        while work.step(&mut engine) {}
        kept = Some(work);
    });
}

#[divan::bench(args = EXAMPLES.iter().map(|example| example.id))]
fn window_with_its_walls(bencher: Bencher, id: &str) {
    let (setup, mut engine) = prepared(id);
    bencher.bench_local(|| engine.window(black_box(&setup)));
}

#[divan::bench(args = EXAMPLES.iter().map(|example| example.id))]
fn parts_drawn(bencher: Bencher, id: &str) {
    let (setup, mut engine) = prepared(id);
    bencher.bench_local(|| engine.sampled(black_box(&setup)));
}
