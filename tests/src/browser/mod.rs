//! The finished page in a real browser.
//!
//! A [`Browser`] opens with a fresh profile on one of the [`Viewport`]s our users hold; the site
//! comes from a server on this machine, or from the disk as the single file. Every call waits for
//! its answer and panics with what went wrong, so that a test reads as what a person does.
//!
//! ```no_run
//! use holdround_tests::browser::{Browser, Viewport, serve_site};
//!
//! let site = serve_site();
//! let browser = Browser::open(Viewport::TABLET);
//! browser.goto(&site.url());
//! assert!(browser.text("main").contains("Holdround"), "the page must say its name");
//! assert_eq!(browser.console_errors(), Vec::<String>::new(), "the console must stay clean");
//! ```

#![allow(clippy::panic, clippy::expect_used, reason = "a test that cannot steer its browser has failed, and says so")]

mod accessibility;
mod driver;
mod session;
mod surroundings;
mod touch;
mod viewport;

pub use accessibility::Violation;
pub use session::{Browser, Paper};
pub use surroundings::{serve_site, single_file_url, site_folder};
pub use touch::Point;
pub use viewport::Viewport;
