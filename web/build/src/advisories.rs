//! Whether a known fault lies in a library that is used.

use crate::fault::{Fault, Outcome};
use crate::shell;
use crate::workspace::Workspace;

/// Asks cargo-deny, whose database of advisories comes from the network. Without either nothing is known, and that is
/// told: it is neither a pass nor a failure.
///
/// # Errors
/// With what was found, or why nothing could be.
pub fn check(workspace: &Workspace) -> Outcome<()> {
    let deny = |words: &[&str]| {
        shell::run(workspace.cargo().args(["deny", "--all-features", "--config", "web/build/deny.toml"]).args(words))
    };
    deny(&["--version"]).map_err(|_| Fault::unchecked("cargo-deny is not installed: cargo install cargo-deny"))?;
    deny(&["fetch", "db"]).map_err(|fault| Fault::unchecked(format!("no network to the advisories: {fault}")))?;
    // What was fetched is judged, without going to the network again.
    deny(&["--offline", "check", "advisories"])
}
