//! Reference checks by topic, golden set-ups, and the page in a real browser.

#[cfg(feature = "browser")]
pub mod browser;
pub mod evidence;
pub mod fuzz;
pub mod job;
pub mod jobs;
pub mod program_reader;
pub mod reference;
pub mod solids;
pub mod speed;
