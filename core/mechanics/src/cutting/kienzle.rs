//! Specific cutting force after Kienzle.

use super::CuttingError;

/// The length to which `kc1.1` refers: a chip 1 mm wide and 1 mm thick.
const REFERENCE_LENGTH: f64 = 1e-3;

/// Kienzle's constants of a work material.
///
/// The law (Kienzle 1952; Klocke, *Fertigungsverfahren 1*; Tschätsch, *Praxis
/// der Zerspantechnik*) is fitted to chips about 0.1 to 1.4 mm thick; textbook
/// constants differ by 10 to 20 %.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpecificForce {
    /// `kc1.1`: specific cutting force in Pa of a chip 1 mm wide and 1 mm
    /// thick; positive. 1 N/mm² is 1e6 Pa.
    pub kc11: f64,
    /// `mc`: fall of the specific force with chip thickness, in `[0, 1)`.
    pub mc: f64,
}

/// The cross-section of an undeformed chip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Chip {
    /// Width `b` in m.
    pub width: f64,
    /// Thickness `h` in m.
    pub thickness: f64,
}

impl Chip {
    /// `b = ap / sin kappa`, `h = f sin kappa`: depth of cut and feed in m,
    /// approach angle in rad.
    pub(crate) fn of(depth: f64, feed: f64, approach: f64) -> Self {
        let sin_kappa = libm::sin(approach);
        Self { width: depth / sin_kappa, thickness: feed * sin_kappa }
    }
}

impl SpecificForce {
    /// Specific cutting force `kc = kc1.1 (h / 1 mm)^-mc` in Pa, for a chip of
    /// the given thickness in m (positive).
    ///
    /// # Errors
    /// A constant outside its range, or a thickness that is not positive.
    pub fn at(&self, thickness: f64) -> Result<f64, CuttingError> {
        if !(self.kc11 > 0.0 && self.kc11.is_finite()) {
            return Err(CuttingError::SpecificForce);
        }
        if !(self.mc >= 0.0 && self.mc < 1.0) {
            return Err(CuttingError::ChipExponent);
        }
        if !(thickness > 0.0 && thickness.is_finite()) {
            return Err(CuttingError::Feed);
        }
        Ok(self.kc11 * libm::pow(thickness / REFERENCE_LENGTH, -self.mc))
    }

    /// Cutting force `Fc = kc b h = kc1.1 b h^(1-mc)` in N.
    ///
    /// # Errors
    /// As for [`SpecificForce::at`].
    pub fn cutting_force(&self, chip: Chip) -> Result<f64, CuttingError> {
        Ok(self.at(chip.thickness)? * chip.width * chip.thickness)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const C45: SpecificForce = SpecificForce { kc11: 2220e6, mc: 0.14 };

    // Groover, Fundamentals of Modern Manufacturing (from memory): unit energy
    // at a 0.25 mm chip, carbon steel 201-250 HB 1.8 J/mm³, aluminium alloy 0.8.
    // Two tables of different origin differ by up to 60 %.
    #[test]
    fn specific_force_is_of_the_size_of_groovers_unit_energy() {
        for (ours, groover) in [(C45, 1.8e9), (SpecificForce { kc11: 700e6, mc: 0.25 }, 0.8e9)] {
            let ratio = ours.at(0.25e-3).unwrap() / groover;
            assert!(ratio > 0.6 && ratio < 1.6, "ratio to unit energy is {ratio}");
        }
    }

    #[test]
    fn constants_outside_their_range_are_refused() {
        let zero = SpecificForce { kc11: 0.0, mc: 0.2 };
        let steep = SpecificForce { kc11: 1e9, mc: 1.0 };
        let nan = SpecificForce { kc11: 1e9, mc: f64::NAN };
        assert_eq!(zero.at(1e-4), Err(CuttingError::SpecificForce), "kc1.1 of zero");
        assert_eq!(steep.at(1e-4), Err(CuttingError::ChipExponent), "mc of one");
        assert_eq!(nan.at(1e-4), Err(CuttingError::ChipExponent), "mc not a number");
        assert_eq!(C45.at(0.0), Err(CuttingError::Feed), "no feed");
    }
}
