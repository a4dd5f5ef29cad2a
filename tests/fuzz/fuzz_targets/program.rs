#![no_main]

use holdround_tests::fuzz::program;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| program(text));
