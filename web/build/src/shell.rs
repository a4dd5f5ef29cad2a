//! Running other programs, with what they print going straight to the terminal.

use std::path::Path;
use std::process::Command;

use crate::fault::{Fault, Outcome, While};

/// Runs a program to its end.
///
/// # Errors
/// When it cannot be started, or ends with anything but success.
pub fn run(command: &mut Command) -> Outcome<()> {
    let name = words(command);
    println!("  $ {name}");
    let status = command.status().during(&name)?;
    if status.success() { Ok(()) } else { Err(Fault::new(format!("{name} ended with {status}"))) }
}

/// Runs a program to its end and gives what it printed on its standard output.
///
/// # Errors
/// When it cannot be started, ends with anything but success, or does not print UTF-8.
pub fn read(command: &mut Command) -> Outcome<String> {
    let name = words(command);
    let output = command.output().during(&name)?;
    if !output.status.success() {
        let said = String::from_utf8_lossy(&output.stderr);
        return Err(Fault::new(format!("{name} ended with {}: {}", output.status, said.trim())));
    }
    String::from_utf8(output.stdout).during(&name)
}

fn words(command: &Command) -> String {
    std::iter::once(Path::new(command.get_program()).file_stem().unwrap_or_default())
        .chain(command.get_args())
        .map(|word| word.to_string_lossy())
        .collect::<Vec<_>>()
        .join(" ")
}
