//! Why no path can be planned.

use core::fmt;

use crate::text::Text;

/// Why no path can be planned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PlanError {
    /// A size is negative, not a number, or has to be above zero and is not.
    Size,
    /// The jaws already stand as far out (outside grip) or in (inside grip) as they are to be cut.
    NothingToCut,
    /// Chamfer and groove leave nothing of the face.
    NoFace,
    /// The groove is narrower than the tool needs.
    ReliefNarrow {
        /// The least width, m.
        least: f64,
    },
    /// The angle behind the nose is too small for the groove or for the taper.
    Behind,
    /// Two corners are closer together than the nose reaches.
    Cramped,
    /// The opening before the cut is too small for the tool to stand in.
    NoRoom,
    /// More passes than any shop would let run.
    Passes,
}

impl From<&PlanError> for Text {
    fn from(error: &PlanError) -> Self {
        Self::Words(match error {
            PlanError::Size => "A size for the boring path is missing or negative.",
            PlanError::NothingToCut => {
                "The jaws already stand at the diameter they are to be cut to, or past it: there is nothing to cut."
            }
            PlanError::NoFace => "Chamfer and relief groove leave nothing of the face to grip with.",
            PlanError::ReliefNarrow { .. } => {
                "The relief groove is too narrow for its depth: widen it, or take a smaller nose or a shallower groove."
            }
            PlanError::Behind => {
                "The edge behind the nose would rub: it needs more angle, or no groove and less taper."
            }
            PlanError::Cramped => "The nose is too large for the shape: take a smaller nose radius.",
            PlanError::NoRoom => "The opening before boring is too small for a tool to start in.",
            PlanError::Passes => "It would take more than 200 roughing passes: take a larger depth of cut.",
        })
    }
}

impl fmt::Display for PlanError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for PlanError {}
