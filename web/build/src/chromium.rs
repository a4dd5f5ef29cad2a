//! Finding a Chromium and its driver, and installing Debian's when there is none.

use std::env;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::fault::{Fault, Outcome, While};
use crate::shell;

/// A browser and the driver that steers it.
#[derive(Debug, Clone)]
pub struct Chromium {
    /// The browser's program.
    pub browser: PathBuf,
    /// The WebDriver program that starts it.
    pub driver: PathBuf,
}

const BROWSERS: [&str; 4] = ["chromium", "chromium-browser", "chrome", "google-chrome"];
const DRIVERS: [&str; 2] = ["chromedriver", "chromium.chromedriver"];
const ADVICE: &str = "The browser tests need Chromium and its WebDriver (chromedriver) of the same version. \
    On Debian or Ubuntu: sudo apt-get install chromium chromium-driver. \
    Elsewhere install both from your system's packages, then put them on PATH \
    or name them in the variables CHROMIUM and CHROMEDRIVER.";

/// The Chromium to test with: the one named in `CHROMIUM` and `CHROMEDRIVER`, else the one on
/// `PATH`, else Debian's, installed now.
///
/// # Errors
/// When there is none and it cannot be installed; the words say what to install.
pub fn provide() -> Outcome<Chromium> {
    if let Some(found) = find() {
        return Ok(found);
    }
    install().during(ADVICE)?;
    find().ok_or_else(|| Fault::new(format!("Chromium was installed, but is not on PATH. {ADVICE}")))
}

fn find() -> Option<Chromium> {
    Some(Chromium {
        browser: named("CHROMIUM").or_else(|| on_path(&BROWSERS))?,
        driver: named("CHROMEDRIVER").or_else(|| on_path(&DRIVERS))?,
    })
}

fn named(variable: &str) -> Option<PathBuf> {
    env::var_os(variable).map(PathBuf::from).filter(|path| path.is_file())
}

fn on_path(names: &[&str]) -> Option<PathBuf> {
    let path = env::var_os("PATH")?;
    names
        .iter()
        .flat_map(|name| env::split_paths(&path).map(move |folder| program(&folder, name)))
        .find(|candidate| candidate.is_file())
}

fn program(folder: &Path, name: &str) -> PathBuf {
    folder.join(name).with_extension(env::consts::EXE_EXTENSION)
}

fn install() -> Outcome<()> {
    if on_path(&["apt-get"]).is_none() {
        return Err(Fault::new("this system has no apt-get"));
    }
    if shell::read(Command::new("id").arg("-u"))?.trim() != "0" {
        return Err(Fault::new("only root may install packages"));
    }
    shell::run(apt_get().arg("update"))?;
    shell::run(apt_get().args(["install", "--yes", "--no-install-recommends", "chromium", "chromium-driver"]))
}

fn apt_get() -> Command {
    let mut command = Command::new("apt-get");
    command.arg("--quiet=2").env("DEBIAN_FRONTEND", "noninteractive");
    command
}
