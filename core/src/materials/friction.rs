//! Grip coefficients between jaw and part.
//!
//! The coefficient that holds a turned part is far below the dry friction of laboratory tables
//! (0.15 to 0.78 for steel on steel): coolant, oil and chatter are always there. Bored soft jaws
//! are [`JawFace::Smooth`]. A hardened part is gripped as a [`Surface::Finished`] one.
//!
//! ```
//! use holdround_core::materials::friction::{GripCoefficient, JawFace, Surface, grip_coefficient};
//! let GripCoefficient { lowest, highest } = grip_coefficient(Surface::Finished, JawFace::Smooth);
//! assert!(lowest.value < highest.value);
//! ```

use super::{Family, Figure, Source, figure};

/// How the gripped surface of the part was made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Surface {
    /// Finish turned or ground.
    Finished,
    /// Rough to medium turned.
    Turned,
    /// As rolled, forged or cast.
    Unmachined,
}

/// Face of the jaw.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JawFace {
    /// Bored or ground.
    Smooth,
    /// Diamond pattern.
    Diamond,
    /// Sharp serrations, which mark the part.
    Serrated,
}

/// Coefficient of grip of a steel part, as a range: slip is judged at `lowest`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GripCoefficient {
    /// Least value to reckon with.
    pub lowest: Figure,
    /// Greatest value a source gives.
    pub highest: Figure,
}

/// Grip coefficient of a steel part by its surface and the jaw's face.
///
/// ```
/// use holdround_core::materials::friction::{JawFace, Surface, grip_coefficient};
/// let bored = grip_coefficient(Surface::Turned, JawFace::Smooth);
/// assert_eq!(bored.lowest.value, 0.10);
/// ```
#[must_use]
pub const fn grip_coefficient(surface: Surface, face: JawFace) -> GripCoefficient {
    use Source::{GripFrictionTable, Vdi3106Recalled};
    let (lowest, highest) = match (face, surface) {
        (JawFace::Smooth, Surface::Finished) => (read(0.06), read(0.08)),
        (JawFace::Smooth, Surface::Turned) => (read(0.10), read(0.13)),
        (JawFace::Smooth, Surface::Unmachined) => (read(0.14), read(0.16)),
        (JawFace::Diamond, Surface::Finished) => (recalled(0.12), recalled(0.12)),
        (JawFace::Diamond, Surface::Turned) => (recalled(0.20), recalled(0.20)),
        (JawFace::Diamond, Surface::Unmachined) => (recalled(0.30), recalled(0.30)),
        (JawFace::Serrated, Surface::Finished) => (read(0.15), recalled(0.20)),
        (JawFace::Serrated, Surface::Turned) => (read(0.18), recalled(0.35)),
        (JawFace::Serrated, Surface::Unmachined) => (read(0.20), recalled(0.45)),
    };
    return GripCoefficient { lowest, highest };

    const fn read(value: f64) -> Figure {
        figure(value, GripFrictionTable)
    }
    const fn recalled(value: f64) -> Figure {
        figure(value, Vdi3106Recalled)
    }
}

/// Factor on [`grip_coefficient`] for a part that is not of steel; `None` where no source gives
/// one and the user must give the coefficient.
///
/// ```
/// use holdround_core::materials::{Family, friction::part_factor};
/// assert!(part_factor(Family::Plastic).is_none());
/// ```
#[must_use]
pub const fn part_factor(family: Family) -> Option<Figure> {
    match family {
        Family::Steel | Family::StainlessSteel | Family::ToolSteel => Some(figure(1.0, Source::GripFrictionTable)),
        Family::GreyIron => Some(figure(0.80, Source::GripFrictionTable)),
        Family::Aluminium => Some(figure(0.95, Source::Vdi3106Recalled)),
        Family::Brass => Some(figure(0.90, Source::Vdi3106Recalled)),
        Family::DuctileIron
        | Family::Bronze
        | Family::Copper
        | Family::Titanium
        | Family::Nickel
        | Family::Magnesium
        | Family::Plastic => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FACES: [JawFace; 3] = [JawFace::Smooth, JawFace::Diamond, JawFace::Serrated];
    const SURFACES: [Surface; 3] = [Surface::Finished, Surface::Turned, Surface::Unmachined];

    #[test]
    fn rougher_parts_and_sharper_jaws_grip_no_less() {
        for face in FACES {
            for pair in SURFACES.windows(2) {
                let (fine, rough) = (grip_coefficient(pair[0], face), grip_coefficient(pair[1], face));
                assert!(fine.lowest.value < rough.lowest.value, "{face:?}: lowest rises with roughness");
                assert!(fine.highest.value < rough.highest.value, "{face:?}: highest rises with roughness");
            }
        }
        for surface in SURFACES {
            let smooth = grip_coefficient(surface, JawFace::Smooth);
            for face in FACES {
                let other = grip_coefficient(surface, face);
                assert!(smooth.lowest.value <= other.lowest.value, "{surface:?}: smooth jaws grip least");
                assert!(other.lowest.value <= other.highest.value, "{face:?} {surface:?}: range in order");
            }
        }
    }

    /// VDI 3106, smooth jaws, from memory: 0.07, 0.10, 0.15.
    #[test]
    fn smooth_jaw_range_holds_the_recalled_vdi_values() {
        for (surface, vdi) in SURFACES.into_iter().zip([0.07, 0.10, 0.15]) {
            let range = grip_coefficient(surface, JawFace::Smooth);
            assert!(
                range.lowest.value <= vdi && vdi <= range.highest.value,
                "{surface:?}: {vdi} within the range read elsewhere"
            );
        }
    }

    #[test]
    fn part_factors_never_promise_more_than_steel() {
        for material in super::super::all() {
            if let Some(factor) = part_factor(material.family) {
                assert!(factor.value > 0.5 && factor.value <= 1.0, "{}: factor {}", material.id, factor.value);
            }
        }
    }
}
