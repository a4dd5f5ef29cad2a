//! The sheet both views lie on: one scale and one axis for both, so that the section is projected
//! from the face (first-angle projection: seen from the left, drawn on the right).

use holdround_core::setup::{JawShape, Side};

use super::path::coordinate;
use crate::view::Stage;

/// Left edge of a view; the axis is at the origin.
pub(in crate::view) const LEFT: f64 = -250.0;
/// Right edge of a view.
pub(in crate::view) const RIGHT: f64 = 250.0;
/// Upper edge of a view.
pub(in crate::view) const TOP: f64 = -276.0;
/// From the axis to the farthest thing drawn of chuck, jaws and part.
pub(in crate::view) const REACH: f64 = 175.0;

/// Where chuck and jaws that are broken off end; jaws standing back from the part still fit.
pub(in crate::view) const CUT_OFF: f64 = REACH + 18.0;

/// Room around the part for its arrows, over its radius.
const LEAST_ROOM: f64 = 1.2;
/// Chuck and jaws beyond this many radii of the part are broken off, so that a small part is not lost.
const MOST_ROOM: f64 = 1.65;
/// Lower edge above which the key of the face has room.
const LEAST_BOTTOM: f64 = 360.0;
/// Tools listed in one row.
pub(in crate::view) const TOOLS_A_ROW: usize = 3;
/// Between the rows of dimensions and of tools: what a finger takes.
pub(in crate::view) const ROW: f64 = 46.0;
/// Middle of the first row under the section.
const FIRST_ROW: f64 = 206.0;

/// Scale and extent common to both views.
#[derive(Clone, Copy, Debug)]
pub(in crate::view) struct Sheet {
    /// View units per metre.
    pub(in crate::view) scale: f64,
    /// Whether chuck or jaws are broken off at [`CUT_OFF`].
    pub(in crate::view) broken: bool,
    /// Lower edge of both views.
    pub(in crate::view) bottom: f64,
    /// Middles of the rows under the section.
    pub(in crate::view) rows: Rows,
}

/// Middles of the rows under the section.
#[derive(Clone, Copy, Debug)]
pub(in crate::view) struct Rows {
    /// Diameters of steps; the same as the next if there are none.
    pub(in crate::view) diameters: f64,
    /// Where the grip starts, and its length.
    pub(in crate::view) grip: f64,
    /// Lengths of the part.
    pub(in crate::view) lengths: f64,
    /// Base line of the note.
    pub(in crate::view) note: f64,
    /// First row of the tools.
    pub(in crate::view) tools: f64,
}

impl Rows {
    fn of(stepped: bool) -> Self {
        let grip = if stepped { FIRST_ROW + ROW } else { FIRST_ROW };
        let lengths = grip + ROW;
        let note = lengths + 0.5 * ROW + 20.0;
        Self { diameters: FIRST_ROW, grip, lengths, note, tools: note + 28.0 }
    }
}

impl Sheet {
    /// The sheet for what `stage` shows.
    pub(in crate::view) fn of(stage: &Stage<'_>) -> Self {
        let part = stage.setup.part.largest_outside() / 2.0;
        let far =
            (stage.setup.chuck.body_diameter.value / 2.0).max(stage.findings.scene.swing_radius).max(part * LEAST_ROOM);
        let shown = far.min(part * MOST_ROOM);
        let rows = Rows::of(stage.setup.part.stepped);
        let tools = stage.setup.cuts.len().div_ceil(TOOLS_A_ROW).max(1);
        let bottom = (rows.tools + ROW * (tools as f64 - 0.5)).max(LEAST_BOTTOM);
        Self { scale: REACH / shown, broken: far > shown, bottom, rows }
    }

    /// The `viewBox` of both views.
    pub(in crate::view) fn view_box(&self) -> String {
        [LEFT, TOP, RIGHT - LEFT, self.bottom - TOP].map(coordinate).join(" ")
    }

    /// Radius in view units of a diameter in m.
    pub(in crate::view) fn radius(&self, diameter: f64) -> f64 {
        diameter / 2.0 * self.scale
    }
}

/// The style sheet's class for jaws that can stand back, and how far outward that moves them in view units.
pub(in crate::view) fn stand_back(stage: &Stage<'_>, sheet: Sheet) -> (&'static str, f64) {
    match stage.setup.grip.side {
        Side::Outside => ("outward", 16.0),
        Side::Inside => {
            // Jaws in a small bore have little room to close, and so have those that nearly meet.
            let in_bore = stage.setup.gripped_radius() * sheet.scale * 0.15;
            let meets = !matches!(stage.setup.jaws.shape, JawShape::Ordinary(_));
            if in_bore >= 10.0 && !meets { ("inward", -10.0) } else { ("inward-little", -3.0) }
        }
    }
}
