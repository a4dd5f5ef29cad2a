//! Reads a set-up as JSON from standard input and writes its findings as JSON to standard output.
//!
//! Every fault goes to standard error as one line, and the exit status is 2.

use std::io::{Read, Write};
use std::process::ExitCode;

use holdround_core::evaluate;
use holdround_core::setup::{Entries, Setup};

fn main() -> ExitCode {
    let mut text = String::new();
    if let Err(error) = std::io::stdin().read_to_string(&mut text) {
        return fail(&[error]);
    }
    let setup = match Entries::from_json(&text).and_then(|entries| Setup::read(&entries)) {
        Ok(setup) => setup,
        Err(faults) => return fail(&faults),
    };
    let written = serde_json::to_string_pretty(&evaluate(&setup))
        .map_err(std::io::Error::from)
        .and_then(|json| writeln!(std::io::stdout(), "{json}"));
    match written {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => fail(&[error]),
    }
}

fn fail<T: std::fmt::Display>(faults: &[T]) -> ExitCode {
    for fault in faults {
        eprintln!("{fault}");
    }
    ExitCode::from(2)
}
