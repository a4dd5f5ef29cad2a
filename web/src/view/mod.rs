//! Views: functions from what lies on the desk to markup.

pub(crate) mod compare;
pub(crate) mod csv;
pub(crate) mod drawing;
pub(crate) mod examples;
pub(crate) mod face;
pub(crate) mod field;
pub(crate) mod files;
pub(crate) mod findings_list;
mod formula;
pub(crate) mod indicator;
mod indicator_dial;
pub(crate) mod inputs;
pub(crate) mod lessons;
pub(crate) mod making;
mod mark;
pub(crate) mod moves;
pub(crate) mod notes;
pub(crate) mod notices;
pub(crate) mod own;
pub(crate) mod paper;
mod paper_code;
pub(crate) mod plain;
pub(crate) mod play_bar;
pub(crate) mod records;
mod records_label;
pub(crate) mod section;
pub(crate) mod sheet;
mod steps;
pub(crate) mod story;
pub(crate) mod title_block;
pub(crate) mod tools;
pub(crate) mod trace;
pub(crate) mod verdict;
pub(crate) mod window;
pub(crate) mod words;

use holdround_core::findings::Findings;
use holdround_core::setup::Setup;

use crate::units::Units;

/// What the drawing views show: a valid set-up, what was found, and how the reader wants to see it.
pub(crate) struct Stage<'a> {
    /// The job.
    pub(crate) setup: &'a Setup,
    /// What was computed from it.
    pub(crate) findings: &'a Findings,
    /// The units to write in.
    pub(crate) units: Units,
    /// Whether the jaws are closed on the part, or stand back from it.
    pub(crate) clamped: bool,
    /// Whether the spindle turns.
    pub(crate) spinning: bool,
    /// The mesh to show in the section: r and z of either end of each side, m; none if it is not asked for.
    pub(crate) mesh: Option<&'a [[f64; 4]]>,
    /// The step of the part that has the handles.
    pub(crate) step: usize,
    /// Where it would be parted, m from its near end; in its middle if it was not said.
    pub(crate) parting: Option<f64>,
}

impl<'a> Stage<'a> {
    /// A set-up clamped, at rest, and as plain as it can be shown.
    pub(crate) fn of(setup: &'a Setup, findings: &'a Findings, units: Units) -> Self {
        Self { setup, findings, units, clamped: true, spinning: false, mesh: None, step: 0, parting: None }
    }
}
