//! What `cargo run -- test` hands to the browser tests: the built site and the programs to use.

use std::env;
use std::path::PathBuf;

use holdround_build::chromium::Chromium;
use holdround_build::serve::Server;
use holdround_build::site::SINGLE_FILE;

/// The folder of the finished site.
pub fn site_folder() -> PathBuf {
    handed("HOLDROUND_SITE")
}

/// Serves the finished site on a port of its own; stop it to take the network away.
pub fn serve_site() -> Server {
    Server::start(site_folder(), 0).unwrap_or_else(|fault| panic!("the site cannot be served: {fault}"))
}

/// The address of the one-file page on this disk.
pub fn single_file_url() -> String {
    format!("file://{}", site_folder().join(SINGLE_FILE).display())
}

pub(crate) fn chromium() -> Chromium {
    Chromium { browser: handed("HOLDROUND_CHROMIUM"), driver: handed("HOLDROUND_CHROMEDRIVER") }
}

pub(crate) fn axe() -> PathBuf {
    handed("HOLDROUND_AXE")
}

fn handed(variable: &str) -> PathBuf {
    env::var_os(variable).map(PathBuf::from).unwrap_or_else(|| {
        panic!("the browser tests need the built site and a browser: start them with `cargo run -- test` ({variable} is not set)")
    })
}
