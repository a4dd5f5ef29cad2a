//! The accessibility checker that the browser tests put into the page. It is fetched for the
//! tests and is no part of the site.

use std::path::PathBuf;
use std::process::Command;

use crate::fault::{Fault, Outcome, While};
use crate::shell;
use crate::workspace::Workspace;

const PACKAGE: &str = "axe-core@4.14.1";

/// The checker's script, fetched through npm when it is not there yet.
///
/// # Errors
/// When npm is missing or cannot fetch it.
pub fn provide(workspace: &Workspace) -> Outcome<PathBuf> {
    let folder = workspace.target.join(PACKAGE);
    let script = folder.join("node_modules/axe-core/axe.min.js");
    if script.is_file() {
        return Ok(script);
    }
    let npm = if cfg!(windows) { "npm.cmd" } else { "npm" };
    shell::run(
        Command::new(npm)
            .args(["install", "--silent", "--no-save", "--ignore-scripts", "--no-audit", "--no-fund", "--prefix"])
            .arg(&folder)
            .arg(PACKAGE),
    )
    .during("the accessibility tests need npm (it comes with Node.js), to fetch axe-core")?;
    if script.is_file() { Ok(script) } else { Err(Fault::new(format!("npm left no {}", script.display()))) }
}
