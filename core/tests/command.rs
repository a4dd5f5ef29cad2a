//! The findings from the command line, as a script meets them.
//!
//! `cargo test` builds the example beside this test; with `--test command` alone it must have been built before.

#![cfg(feature = "serde")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "a program that cannot be run must fail")]

use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Output, Stdio};

use holdround_core::evaluate;
use holdround_core::examples::EXAMPLES;
use holdround_core::setup::{Entries, Setup};

/// `target/debug/examples/findings`, from this test's own `target/debug/deps/command-…`.
fn program() -> PathBuf {
    let test = std::env::current_exe().unwrap();
    test.ancestors().nth(2).unwrap().join("examples").join(format!("findings{}", std::env::consts::EXE_SUFFIX))
}

fn findings_of(setup: &[u8]) -> Output {
    let mut child = Command::new(program())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap_or_else(|error| panic!("{}: {error}; build it with --example findings", program().display()));
    // A program that refuses before it has read everything closes the pipe.
    let _ = child.stdin.take().unwrap().write_all(setup);
    child.wait_with_output().unwrap()
}

#[test]
fn a_set_up_on_standard_input_gives_its_findings_as_json() {
    for example in EXAMPLES {
        let output = findings_of(example.json.as_bytes());
        assert_eq!(output.status.code(), Some(0), "{}: {output:?}", example.id);
        assert!(output.stderr.is_empty(), "{}: nothing is wrong", example.id);
        let printed = String::from_utf8(output.stdout).unwrap();
        let setup = Setup::read(&Entries::from_json(example.json).unwrap()).unwrap();
        let computed = serde_json::to_string_pretty(&evaluate(&setup)).unwrap();
        let difference = printed.lines().zip(computed.lines()).find(|(printed, computed)| printed != computed);
        assert_eq!(difference, None, "{}: the same findings as in this process, to the bit", example.id);
        assert_eq!(printed.lines().count(), computed.lines().count(), "{}: and no more of them", example.id);
    }
}

#[test]
fn every_fault_is_one_line_on_standard_error_and_the_status_is_2() {
    let cases: [(&[u8], &[&str]); 6] = [
        (b"", &["set-up"]),
        (b"no JSON\nat all", &["set-up"]),
        (b"\xff\xfe", &["UTF-8"]),
        (br#"{"schema": 7}"#, &["schema 7"]),
        (br#"{"schema": 1, "part": {"colour": "red\nblue", "weight": 3}}"#, &["part.colour", "part.weight"]),
        (
            br#"{"schema": 1, "part": {"length": "-3 mm"}, "chuck": {"jaws": "7"}, "run": {"speed": "fast\r\nfaster"}}"#,
            &["part.length", "chuck.jaws", "run.speed"],
        ),
    ];
    for (setup, named) in cases {
        let output = findings_of(setup);
        let errors = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(2), "{errors}");
        assert!(output.stdout.is_empty(), "no findings of a faulty set-up");
        assert_eq!(errors.lines().count(), named.len(), "one line per fault: {errors:?}");
        for (line, name) in errors.lines().zip(named) {
            assert!(line.contains(name), "{line:?} names {name}");
        }
    }
}

#[test]
fn a_megabyte_of_junk_is_refused_in_one_line() {
    let output = findings_of(&vec![b'['; 1 << 20]);
    let errors = String::from_utf8(output.stderr).unwrap();
    assert_eq!((output.status.code(), errors.lines().count()), (Some(2), 1), "{errors}");
    assert!(errors.len() < 400, "a readable line: {errors}");
}
