//! Why a part cannot be made into a spring.

use super::mesh::TooLarge;
use core::fmt;

use crate::text::Text;

/// Why a part cannot be made into a spring.
#[derive(Clone, Debug, PartialEq)]
pub enum PartError {
    /// Elastic constants that no solid has, or too near incompressible.
    Material,
    /// The mesh density is not within 0.1 to 10.
    Density,
    /// Fewer than 2 or more than 12 jaws.
    Jaws {
        /// The number given.
        jaws: usize,
    },
    /// The band is empty, on a face, or reaches beyond the part.
    BandOffPart,
    /// The band is not one cylinder: its diameter changes within.
    BandNotCylinder,
    /// No surface of the part lies there.
    NoSurface {
        /// Which of the surfaces, from 0.
        surface: usize,
    },
    /// The mesh would be too large.
    TooLarge(TooLarge),
    /// The stiffness is singular to rounding.
    Singular {
        /// Order around the axis.
        order: usize,
    },
}

impl From<&PartError> for Text {
    fn from(error: &PartError) -> Self {
        match error {
            PartError::Material => Self::of("The material's elastic constants are out of range."),
            PartError::Density => Self::of("The mesh density must lie within 0.1 and 10."),
            PartError::Jaws { jaws } => Self::of("{} jaws; 2 to 12 equal jaws are covered.").with(*jaws),
            PartError::BandOffPart => Self::of("The gripped band does not lie on the part."),
            PartError::BandNotCylinder => Self::of("The diameter changes within the gripped band; grip one cylinder."),
            PartError::NoSurface { surface } => Self::of("Surface {} is not on the part.").with(surface + 1),
            PartError::TooLarge(large) => large.into(),
            PartError::Singular { order } => {
                Self::of("The part is too slender to be solved reliably (order {}).").with(*order)
            }
        }
    }
}

impl fmt::Display for PartError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for PartError {}

impl From<TooLarge> for PartError {
    fn from(large: TooLarge) -> Self {
        Self::TooLarge(large)
    }
}
