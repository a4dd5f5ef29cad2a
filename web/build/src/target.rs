//! Adding what the installed Rust still lacks: the standard library for another target.

use std::path::Path;
use std::process::Command;

use crate::fault::{Outcome, While};
use crate::shell;
use crate::workspace::Workspace;

/// The browser's target.
pub const WASM: &str = "wasm32-unknown-unknown";
/// A target without an operating system, on which nothing can lean on `std`.
pub const BARE: &str = "thumbv7em-none-eabihf";

/// Makes sure that this Rust can build for `target`, by adding it through rustup when it cannot.
///
/// # Errors
/// When rustup is missing or cannot download the target.
pub fn provide(workspace: &Workspace, target: &str) -> Outcome<()> {
    let sysroot = shell::read(Command::new("rustc").args(["--print", "sysroot"]).current_dir(&workspace.root))?;
    if Path::new(sysroot.trim()).join("lib/rustlib").join(target).join("lib").is_dir() {
        return Ok(());
    }
    shell::run(Command::new("rustup").args(["target", "add", target]).current_dir(&workspace.root))
        .during("this Rust cannot build for the target yet, and rustup could not add it")
}
