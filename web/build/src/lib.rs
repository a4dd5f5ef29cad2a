//! Builds, serves and checks the page.
//!
//! ```text
//! cargo run            builds the site and serves it
//! cargo run -- site    builds the site only
//! cargo run -- test    checks everything there is
//! cargo run -- release builds the site twice, compares, and packs it with hashes
//! ```
//!
//! The site goes from the crate `holdround-web` through [`bind`] (module and glue) and [`site`]
//! (all files of a host's folder, with [`offline`] and [`single_file`]) to [`serve`].
//! [`checks`] is the list of what `test` runs.

pub mod advisories;
pub mod axe;
pub mod bind;
pub mod budget;
pub mod checks;
pub mod chromium;
pub mod dependencies;
pub mod evidence;
pub mod examples;
pub mod fault;
pub mod first_words;
mod names;
pub mod offline;
pub mod origins;
pub mod release;
pub mod serve;
pub mod shell;
pub mod single_file;
pub mod site;
pub mod size;
pub mod target;
pub mod workspace;
