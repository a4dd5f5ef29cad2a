//! Where the libraries come from and under which licences, held to `deny.toml` beside this crate.

use serde_json::Value;

use crate::fault::{Fault, Outcome};
use crate::shell;
use crate::workspace::Workspace;

const ALLOWED: &str = include_str!("../deny.toml");
/// The registry every library comes from, as cargo names it.
const REGISTRY: &str = "registry+https://github.com/rust-lang/crates.io-index";

/// Holds every library that the lock file names to the allowed licences and to one registry; a lock file that does
/// not fit the manifests is refused by cargo.
///
/// # Errors
/// With every library that may not be used.
pub fn check(workspace: &Workspace) -> Outcome<()> {
    let told = shell::read(workspace.cargo().args(["metadata", "--format-version=1", "--locked", "--all-features"]))?;
    let told: Value = serde_json::from_str(&told)?;
    let packages = told["packages"].as_array().ok_or_else(|| Fault::new("cargo metadata told no packages"))?;
    let refused: Vec<String> = packages.iter().filter_map(refused).collect();
    println!("  {} libraries, licences among: {}", packages.len(), allowed().collect::<Vec<_>>().join(", "));
    if refused.is_empty() { Ok(()) } else { Err(Fault::new(refused.join("\n   "))) }
}

/// Why a package may not be used.
fn refused(package: &Value) -> Option<String> {
    let name = package["name"].as_str().unwrap_or("a library without a name");
    // Those of the workspace itself have no source.
    let foreign = package["source"].as_str().is_some_and(|source| source != REGISTRY);
    if foreign {
        return Some(format!("{name} comes from {}", package["source"]));
    }
    let licence = package["license"].as_str().unwrap_or_default();
    (!is_allowed(licence)).then(|| format!("{name} has the licence {licence:?}"))
}

/// The licences of the list in `deny.toml`.
fn allowed() -> impl Iterator<Item = &'static str> {
    let list = ALLOWED.split_once("allow = [").and_then(|(_, rest)| rest.split_once(']')).map_or("", |(list, _)| list);
    list.split('"').skip(1).step_by(2)
}

/// Whether an SPDX expression (ISO/IEC 5962) leaves a way that is allowed; the old stroke means "or".
fn is_allowed(expression: &str) -> bool {
    let spaced = expression.replace('/', " OR ").replace('(', " ( ").replace(')', " ) ");
    let mut words: Vec<&str> = spaced.split_whitespace().rev().collect();
    either(&mut words) == Some(true) && words.is_empty()
}

fn either(words: &mut Vec<&str>) -> Option<bool> {
    let mut any = all(words)?;
    while words.pop_if(|word| *word == "OR").is_some() {
        any |= all(words)?;
    }
    Some(any)
}

fn all(words: &mut Vec<&str>) -> Option<bool> {
    let mut every = one(words)?;
    while words.pop_if(|word| *word == "AND").is_some() {
        every &= one(words)?;
    }
    Some(every)
}

fn one(words: &mut Vec<&str>) -> Option<bool> {
    let word = words.pop()?;
    if word == "(" {
        let inside = either(words)?;
        return words.pop_if(|word| *word == ")").map(|_| inside);
    }
    let exception = if words.pop_if(|word| *word == "WITH").is_some() { words.pop() } else { None };
    let licence = exception.map_or_else(|| word.to_owned(), |exception| format!("{word} WITH {exception}"));
    Some(allowed().any(|allowed| allowed == licence))
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::{REGISTRY, is_allowed, refused};

    #[test]
    fn a_licence_is_allowed_if_one_of_its_ways_is() {
        for good in [
            "MIT",
            "MIT/Apache-2.0",
            "GPL-3.0 OR MIT",
            "(MIT OR GPL-2.0) AND Unicode-3.0",
            "Apache-2.0 WITH LLVM-exception",
        ] {
            assert!(is_allowed(good), "{good} leaves a way");
        }
        for bad in ["", "GPL-3.0", "MIT AND GPL-3.0", "MIT WITH strings", "(MIT", "MIT)", "MIT MIT", "OR MIT"] {
            assert!(!is_allowed(bad), "{bad:?} leaves none, or is no expression");
        }
    }

    #[test]
    fn a_library_from_elsewhere_is_refused() {
        let package = |source| json!({ "name": "one", "license": "MIT", "source": source });
        assert_eq!(refused(&package(Some(REGISTRY))), None, "from the registry");
        assert_eq!(refused(&package(None)), None, "of the workspace");
        assert!(refused(&package(Some("git+https://host.example/one"))).is_some(), "from a repository");
    }
}
