#![no_main]

use holdround_tests::fuzz::records;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| records(text));
