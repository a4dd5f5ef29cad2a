//! Writes `tests/pictures/page.png`, the first worked example on a tablet: `cargo run -p holdround-tests --example picture`.

use std::path::Path;

use holdround_build::fault::Outcome;
use holdround_build::serve::Server;
use holdround_build::workspace::Workspace;
use holdround_build::{chromium, site};
use holdround_tests::browser::{Browser, Viewport};

fn main() -> Outcome<()> {
    let host = Server::start(site::assemble(&Workspace::find()?)?, 0)?;
    let browser = Browser::start(&chromium::provide()?, Viewport::TABLET);
    browser.goto(&host.url());
    // Spoken last of all: by then every band and bound is worked out.
    browser.wait_until("document.querySelector('#spoken')?.textContent");
    let picture = Path::new(env!("CARGO_MANIFEST_DIR")).join("pictures/page.png");
    browser.screenshot(&picture);
    println!("  the picture is in {}", picture.display());
    Ok(())
}
