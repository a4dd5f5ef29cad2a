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
    println!("    full findings: {}", beside(kept([&ring, &other], Effort::Full), wanted.full_findings.natively));
    println!("    shape work is {:.1} times the load work of a move", shape / sliding);
    println!("the examples, natively, their shape work kept");
    for example in EXAMPLES {
        let [one, two] = setups(example.json);
        println!(
            "    full findings of {}: {}",
            example.id,
            beside(kept([&one, &two], Effort::Full), wanted.full_findings.natively)
        );
    }
    let example = EXAMPLES[0];
    println!("    window of {}: {}", example.id, beside(window(&setups(example.json)[0]), wanted.window.natively));
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
