#![no_main]

use holdround_tests::fuzz::link;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| link(text));
