//! What the page may weigh, and how fast it is wanted to be: read from `budget.json`.
//!
//! The weight is enforced. A time says as much about the machine as about the page: it is told beside what is wanted,
//! by `tests/tests/page/timing.rs` and the bench `speed`, and fails nothing.

use serde::Deserialize;

use crate::fault::{Outcome, While};

/// The whole file.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Budget {
    /// The most the page with all it needs may weigh as hosts send it, compressed with Brotli, in bytes.
    pub bytes: usize,
    /// Times that are wanted, in ms.
    pub milliseconds: Wanted,
}

/// Times that are wanted, in ms.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wanted {
    /// All findings of the first worked example, its shape work kept.
    pub full_findings: Both,
    /// Mesh, stiffness and compliance of the flanged ring, whose file is in `core/benches`.
    pub shape_work: Both,
    /// The findings of the flanged ring while a slider moves.
    pub load_work: Both,
    /// The limits of pressure and speed of a worked example.
    pub window: Both,
    /// From asking for the page, kept in the browser, until the verdict stands.
    pub verdict_after_warm_load: f64,
    /// The longest that the page is held, on a processor slowed 4 times.
    pub task_slowed_4_times: f64,
}

/// The same work in two places, in ms.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Both {
    /// Compiled for this machine.
    pub natively: f64,
    /// In the page's own module.
    pub in_chromium: f64,
}

impl Budget {
    /// Reads the file.
    ///
    /// # Errors
    /// When it lacks a figure or has one that nothing is held to.
    pub fn read() -> Outcome<Self> {
        serde_json::from_str(include_str!("../budget.json")).during("budget.json")
    }
}

/// A time beside the one that is wanted, both in ms.
pub fn beside(measured: f64, wanted: f64) -> String {
    let over = if measured > wanted { "MORE than the" } else { "of" };
    format!("{measured:.2} ms, {over} {wanted} wanted")
}

#[cfg(test)]
mod tests {
    use super::{Budget, beside};

    #[test]
    fn every_figure_of_the_file_is_read() {
        let budget = Budget::read().unwrap();
        assert!(budget.bytes > 0, "the page weighs something");
        assert!(
            budget.milliseconds.shape_work.natively < budget.milliseconds.shape_work.in_chromium,
            "less is wanted of a browser"
        );
    }

    #[test]
    fn a_time_over_what_is_wanted_is_told_apart() {
        assert_eq!(beside(1.234, 4.0), "1.23 ms, of 4 wanted", "within");
        assert_eq!(beside(5.0, 4.0), "5.00 ms, MORE than the 4 wanted", "over");
    }
}
