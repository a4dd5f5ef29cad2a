#![no_main]

use holdround_tests::fuzz::setup_json;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| setup_json(text));
