use crate::quantity::decimal;
use core::fmt;

use crate::text::Text;

/// The dimension a refusal is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dimension {
    /// Number of jaws.
    Count,
    /// Radial length of the blank.
    Length,
    /// Height above the serrations.
    Height,
    /// How far jaw metal reaches past the gripping face.
    Step,
    /// Depth of the bore from the jaw's front face.
    BoredDepth,
    /// Gripping radius.
    GripRadius,
    /// Width of an ordinary jaw.
    Width,
    /// Included angle of a wide jaw.
    IncludedAngle,
    /// Width of the saw cut between pie jaws.
    SawCut,
    /// Density of the jaw material.
    Density,
}

impl Dimension {
    const fn words(self) -> &'static str {
        match self {
            Self::Count => "count",
            Self::Length => "length",
            Self::Height => "height",
            Self::Step => "step",
            Self::BoredDepth => "bored depth",
            Self::GripRadius => "grip radius",
            Self::Width => "width",
            Self::IncludedAngle => "included angle",
            Self::SawCut => "saw cut",
            Self::Density => "density",
        }
    }
}

/// Why a jaw cannot be as described. Lengths in m, angles in rad.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum JawError {
    /// The value lies outside what the dimension can be.
    OutOfRange {
        /// The dimension.
        dimension: Dimension,
        /// What was given.
        value: f64,
        /// Least possible value.
        least: f64,
        /// Greatest possible value.
        greatest: f64,
    },
    /// The jaw is as wide as the gripped circle or wider, so the bore never leaves its sides.
    WiderThanGrip {
        /// Jaw width.
        width: f64,
        /// The width must be less than this (the gripping diameter).
        limit: f64,
    },
    /// The step uses up the length of the blank: no metal is left behind the gripping face.
    NothingBehindFace {
        /// Length of the blank.
        length: f64,
        /// The length must be more than this.
        limit: f64,
    },
    /// The bore goes through the jaw: no metal is left to carry it.
    BoredThrough {
        /// Bored depth.
        depth: f64,
        /// The depth must be less than this (the height).
        limit: f64,
    },
    /// The blank would reach across the spindle axis.
    CrossesAxis {
        /// The radial reach of the blank toward the axis from the gripping face.
        reach: f64,
        /// Greatest reach.
        limit: f64,
    },
    /// Neighbouring jaws would overlap at their inner ends.
    Overlap {
        /// Width or included angle, whichever the shape has.
        dimension: Dimension,
        /// What was given.
        value: f64,
        /// The greatest that clears the neighbours.
        limit: f64,
    },
    /// The saw cuts leave no gripping face.
    CutAway {
        /// Width of the saw cut.
        saw_cut: f64,
        /// The cut must be less than this.
        limit: f64,
    },
}

impl From<&JawError> for Text {
    fn from(error: &JawError) -> Self {
        let told = |value: &f64| Self::number(decimal(*value, 6));
        match error {
            JawError::OutOfRange { dimension, value, least, greatest } => {
                Self::of("{} is {}; it must lie between {} and {}")
                    .with(dimension.words())
                    .with(told(value))
                    .with(told(least))
                    .with(told(greatest))
            }
            JawError::WiderThanGrip { width, limit } => {
                Self::of("jaw {} m wide on a gripping diameter of {} m").with(told(width)).with(told(limit))
            }
            JawError::NothingBehindFace { length, limit } => {
                Self::of("blank {} m long leaves nothing behind the face; more than {} m is needed")
                    .with(told(length))
                    .with(told(limit))
            }
            JawError::BoredThrough { depth, limit } => {
                Self::of("bored {} m deep in a jaw {} m high").with(told(depth)).with(told(limit))
            }
            JawError::CrossesAxis { reach, limit } => {
                Self::of("jaw reaches {} m toward the axis from the face; at most {} m is there")
                    .with(told(reach))
                    .with(told(limit))
            }
            JawError::Overlap { dimension, value, limit } => {
                Self::of("neighbouring jaws overlap: {} is {}, at most {}")
                    .with(dimension.words())
                    .with(told(value))
                    .with(told(limit))
            }
            JawError::CutAway { saw_cut, limit } => Self::of("saw cuts of {} m leave no face; they must be under {} m")
                .with(told(saw_cut))
                .with(told(limit)),
        }
    }
}

impl fmt::Display for JawError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for JawError {}
