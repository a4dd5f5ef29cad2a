//! Writes the page of evidence to standard output.

use std::process::ExitCode;

fn main() -> ExitCode {
    match holdround_tests::evidence::page() {
        Ok(page) => {
            println!("{page}");
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}
