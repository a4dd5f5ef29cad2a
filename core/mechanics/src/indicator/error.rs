//! Why readings tell nothing.

use core::fmt;

use super::fit::STATIONS;
use crate::text::Text;

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

impl From<&IndicatorError> for Text {
    fn from(error: &IndicatorError) -> Self {
        match error {
            IndicatorError::Stations(given) => {
                let [least, most] = STATIONS;
                Self::of("{} stations are given; {} to {} can be read").with(*given).with(least).with(most)
            }
            IndicatorError::NotANumber => Self::of("A reading is not a number"),
            IndicatorError::TooFew { given, needed } => {
                Self::of("{} stations are read. To part offset, oval and lobes, {} are needed: read more of them")
                    .with(*given)
                    .with(*needed)
            }
            IndicatorError::Gap => Self::of(
                "Too many stations side by side are missing to tell the waves apart: read some of those that are missing",
            ),
            IndicatorError::SameGrip(_) => {
                Self::of("The two sets were read at nearly the same grip: read the second at half of it or less")
            }
            IndicatorError::Different => Self::of("The two sets were read at different stations"),
        }
    }
}

impl fmt::Display for IndicatorError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for IndicatorError {}
