//! Reference checks by topic, golden set-ups, and the page in a real browser.

#[cfg(feature = "browser")]
pub mod browser;
pub mod evidence;
pub mod job;
pub mod jobs;
pub mod reference;
pub mod solids;
