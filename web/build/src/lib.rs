//! Builds, serves and checks the page.
pub mod chromium;
pub mod fault;
pub mod shell;
