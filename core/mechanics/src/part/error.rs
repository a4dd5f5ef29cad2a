//! Why a part cannot be made into a spring.

use super::mesh::TooLarge;
use core::fmt;

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

impl fmt::Display for PartError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Material => write!(f, "The material's elastic constants are out of range."),
            Self::Density => write!(f, "The mesh density must lie within 0.1 and 10."),
            Self::Jaws { jaws } => write!(f, "{jaws} jaws; 2 to 12 equal jaws are covered."),
            Self::BandOffPart => write!(f, "The gripped band does not lie on the part."),
            Self::BandNotCylinder => {
                write!(f, "The diameter changes within the gripped band; grip one cylinder.")
            }
            Self::NoSurface { surface } => {
                write!(f, "Surface {} is not on the part.", surface + 1)
            }
            Self::TooLarge(large) => large.fmt(f),
            Self::Singular { order } => write!(f, "The part is too slender to be solved reliably (order {order})."),
        }
    }
}

impl core::error::Error for PartError {}

impl From<TooLarge> for PartError {
    fn from(large: TooLarge) -> Self {
        Self::TooLarge(large)
    }
}
