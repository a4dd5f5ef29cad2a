//! Shape work beside load work, natively.

use std::hint::black_box;

use holdround_build::budget::{Wanted, beside};
use holdround_core::examples::EXAMPLES;
use holdround_core::setup::{Entries, Setup};
use holdround_core::{Effort, Engine, Progress, WindowWork};
use holdround_tests::speed::{FLANGED_RING, OTHER_PRESSURE, in_turn, least};

pub(crate) fn compare(wanted: &Wanted) {
    println!("\nflanged ring, natively: once for a size, and at every move of a slider");
    let [ring, other] = setups(FLANGED_RING);
    let shape = least(40, |_| {
        let mut engine = Engine::default();
        while engine.prepare(black_box(&ring)) != Progress::Done {}
    });
    let sliding = kept([&ring, &other], Effort::Sliding);
    println!("    shape work: {}", beside(shape, wanted.shape_work.natively));
    println!("    load work while a slider moves: {}", beside(sliding, wanted.load_work.natively));
    println!("    load work with every bound: {:.2} ms", kept([&ring, &other], Effort::Full));
    println!("    shape work is {:.1} times the load work of a move", shape / sliding);
    let example = EXAMPLES[0];
    let [one, two] = setups(example.json);
    println!("{}, natively, its shape work kept", example.id);
    println!("    full findings: {}", beside(kept([&one, &two], Effort::Full), wanted.full_findings.natively));
    println!("    window: {}", beside(window(&one), wanted.window.natively));
}

fn setups(json: &str) -> [Setup; 2] {
    in_turn(json, OTHER_PRESSURE).unwrap().map(|entries: Entries| Setup::read(&entries).unwrap())
}

fn kept(setups: [&Setup; 2], effort: Effort) -> f64 {
    let mut engine = Engine::default();
    let _ = engine.evaluate(setups[0], effort);
    least(400, |turn| {
        black_box(engine.evaluate(black_box(setups[turn % 2]), effort));
    })
}

/// As after a change that leaves sizes alone: the walls are kept too.
fn window(setup: &Setup) -> f64 {
    let mut engine = Engine::default();
    let _ = engine.evaluate(setup, Effort::Sliding);
    let mut kept: Option<WindowWork> = None;
    least(20, |_| {
        let mut work = WindowWork::new(black_box(setup));
        if let Some(earlier) = kept.take() {
            work.take_over(earlier);
        }
        while work.step(&mut engine) {}
        kept = Some(work);
    })
}
