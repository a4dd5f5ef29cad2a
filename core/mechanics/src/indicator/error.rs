//! Why readings tell nothing.

use core::fmt;

use super::fit::STATIONS;

/// Why no waves are told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum IndicatorError {
    /// So many stations are not fitted.
    Stations(usize),
    /// A reading, the resolution or the start is not a number of its kind.
    NotANumber,
    /// There are fewer readings than unknowns.
    TooFew {
        /// Readings given.
        given: usize,
        /// Readings that would do.
        needed: usize,
    },
    /// So many neighbouring stations are missing that the waves cannot be told apart.
    Gap,
    /// The grip of the two sets is too much the same; the share of the second in the first.
    SameGrip(f64),
    /// The two sets were read at different stations.
    Different,
}

impl fmt::Display for IndicatorError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Stations(given) => {
                let [least, most] = STATIONS;
                write!(out, "{given} stations are given; {least} to {most} can be read")
            }
            Self::NotANumber => out.write_str("A reading is not a number"),
            Self::TooFew { given, needed } => {
                write!(out, "{given} stations are read. To part offset, oval and lobes, {needed} are needed: read more of them")
            }
            Self::Gap => out.write_str(
                "Too many stations side by side are missing to tell the waves apart: read some of those that are missing",
            ),
            Self::SameGrip(_) => out.write_str(
                "The two sets were read at nearly the same grip: read the second at half of it or less",
            ),
            Self::Different => out.write_str("The two sets were read at different stations"),
        }
    }
}

impl core::error::Error for IndicatorError {}
