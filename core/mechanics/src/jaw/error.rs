use crate::quantity::decimal;
use core::fmt;

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

impl fmt::Display for JawError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let told = |value: &f64| decimal(*value, 6);
        match self {
            Self::OutOfRange { dimension, value, least, greatest } => {
                write!(
                    f,
                    "{dimension:?} is {}; it must lie between {} and {}",
                    told(value),
                    told(least),
                    told(greatest)
                )
            }
            Self::WiderThanGrip { width, limit } => {
                write!(f, "jaw {} m wide on a gripping diameter of {} m", told(width), told(limit))
            }
            Self::NothingBehindFace { length, limit } => {
                write!(
                    f,
                    "blank {} m long leaves nothing behind the face; more than {} m is needed",
                    told(length),
                    told(limit)
                )
            }
            Self::BoredThrough { depth, limit } => {
                write!(f, "bored {} m deep in a jaw {} m high", told(depth), told(limit))
            }
            Self::CrossesAxis { reach, limit } => {
                write!(
                    f,
                    "jaw reaches {} m toward the axis from the face; at most {} m is there",
                    told(reach),
                    told(limit)
                )
            }
            Self::Overlap { dimension, value, limit } => {
                write!(f, "neighbouring jaws overlap: {dimension:?} is {}, at most {}", told(value), told(limit))
            }
            Self::CutAway { saw_cut, limit } => {
                write!(f, "saw cuts of {} m leave no face; they must be under {} m", told(saw_cut), told(limit))
            }
        }
    }
}

impl core::error::Error for JawError {}
