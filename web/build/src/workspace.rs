//! Where the workspace lies, and where cargo puts what it builds.

use std::env;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::fault::{Fault, Outcome};
use crate::shell;

/// The two folders every step starts from.
#[derive(Debug, Clone)]
pub struct Workspace {
    /// The folder of the workspace's `Cargo.toml`.
    pub root: PathBuf,
    /// The folder cargo builds into.
    pub target: PathBuf,
}

impl Workspace {
    /// Asks cargo about the workspace around the current folder.
    ///
    /// # Errors
    /// When cargo cannot answer.
    pub fn find() -> Outcome<Self> {
        let told = shell::read(cargo(Path::new(".")).args(["metadata", "--format-version=1", "--no-deps"]))?;
        let told: serde_json::Value = serde_json::from_str(&told)?;
        let folder = |key: &str| {
            told[key].as_str().map(PathBuf::from).ok_or_else(|| Fault::new(format!("cargo metadata told no {key}")))
        };
        Ok(Self { root: folder("workspace_root")?, target: folder("target_directory")? })
    }

    /// Cargo, to be run in the root with further arguments; it builds into the target folder.
    pub fn cargo(&self) -> Command {
        let mut command = cargo(&self.root);
        command.env("CARGO_TARGET_DIR", &self.target);
        command
    }

    /// Where cargo keeps the sources of libraries.
    ///
    /// # Errors
    /// When there is neither `CARGO_HOME` nor a home folder.
    pub fn cargo_home(&self) -> Outcome<PathBuf> {
        let set = env::var_os("CARGO_HOME").map(|home| self.root.join(home));
        set.or_else(|| env::home_dir().map(|home| home.join(".cargo")))
            .ok_or_else(|| Fault::new("there is neither CARGO_HOME nor a home folder"))
    }

    /// The files of the page that are written by hand.
    pub fn www(&self) -> PathBuf {
        self.root.join("www")
    }

    /// The finished site.
    pub fn site(&self) -> PathBuf {
        self.target.join("site")
    }
}

fn cargo(folder: &Path) -> Command {
    let mut command = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(folder);
    command
}
