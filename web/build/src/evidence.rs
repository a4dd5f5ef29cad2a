//! The page that shows what the numbers were checked against: worked out by the tests' own crate, as the site is built.

use crate::fault::Outcome;
use crate::shell;
use crate::workspace::Workspace;

/// The page's name within the site.
pub const EVIDENCE: &str = "evidence.html";

/// Works out the page.
///
/// # Errors
/// When it does not compile, or an engine refuses what it is checked on.
pub fn write(workspace: &Workspace) -> Outcome<String> {
    println!("  what the numbers were checked against is worked out");
    let package = ["run", "--quiet", "--package=holdround-tests", "--no-default-features", "--example=evidence"];
    shell::read(workspace.cargo().args(package))
}
