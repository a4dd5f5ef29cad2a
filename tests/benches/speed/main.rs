//! How fast the engines are beside others and in other places, in one run: what counts are the ratios, since a time
//! alone says as much about the machine.
//!
//! `cargo run -- site`, then `cargo bench -p holdround-tests --bench speed`; words after `--` choose among `work`,
//! `module`, `growth` and `others`. A part that lacks what it needs says so, and the others run.

#![allow(
    clippy::unwrap_used,
    missing_docs,
    reason = "a reference that cannot be read must fail; a bench has no reader"
)]

mod growth;
mod module;
mod others;
mod work;

use std::env;

use holdround_build::budget::Budget;

fn main() {
    let words: Vec<String> = env::args().skip(1).filter(|word| !word.starts_with("--")).collect();
    let wanted = |name: &str| words.is_empty() || words.iter().any(|word| word == name);
    let times = Budget::read().unwrap().milliseconds;
    if wanted("work") {
        work::compare(&times);
    }
    if wanted("module") {
        module::compare(&times);
    }
    if wanted("growth") {
        growth::tell();
    }
    if wanted("others") {
        others::compare();
    }
}
