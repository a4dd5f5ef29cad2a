//! A top jaw as a short cantilever above its serrations, on a master jaw that tilts and gives.

use alloc::vec::Vec;
use core::fmt;

use crate::text::Text;

/// Tilt stiffness of a master jaw in its guideway, N m/rad, where no reading refines it:
/// common practice, no source; with it and [`TILT_DEPTH`] the opening of bored jaws on a chuck of
/// about 200 mm comes out as shops report it (checked in `contact`).
pub const TILT_STIFFNESS: f64 = 1.0e6;

/// Depth below the serrations of the guideway about which a master jaw tilts, m: common practice,
/// no source.
pub const TILT_DEPTH: f64 = 0.02;

/// Radial stiffness of a master jaw and its serrations, N/m. Y. Ito, *Modular Design for Machine
/// Tools*, 2008, p. 452 gives 216 N/um for a jaw with steel top jaws.
pub const RADIAL_STIFFNESS: f64 = 216.0e6;

/// Shear coefficient of a rectangular section (Timoshenko).
const SHEAR: f64 = 6.0 / 5.0;

/// A length of the jaw with one rectangular section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Length along the height of the jaw, m.
    pub length: f64,
    /// Width across the face, m.
    pub width: f64,
    /// Metal behind the face in the direction of the force, m.
    pub depth: f64,
}

/// Why a jaw is no column.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ColumnError {
    /// A section (counted from the serrations, from 0) has no length, width or depth.
    Section {
        /// Which one.
        section: usize,
    },
    /// The elastic constants are those of no solid.
    Material,
    /// A stiffness is not positive, or the tilting depth is negative.
    Stiffness,
}

impl From<&ColumnError> for Text {
    fn from(error: &ColumnError) -> Self {
        match error {
            ColumnError::Section { section } => Self::of("Section {} of the jaw has no metal.").with(section + 1),
            ColumnError::Material => Self::of("The jaw's elastic constants are out of range."),
            ColumnError::Stiffness => Self::of("The stiffnesses of the master jaw must be above zero."),
        }
    }
}

impl fmt::Display for ColumnError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for ColumnError {}

/// Flexibility of a jaw's face along its height.
///
/// A radial force at height `s` above the serrations moves the face at height `z` by
/// `c(z, s) = 1/Kr + (z + z0)(s + z0)/Kt + bending + shear`, with
/// `bending = int_0^min (z - x)(s - x) / (E I(x)) dx` and `shear = int_0^min kappa / (G A(x)) dx`
/// (Timoshenko's beam; Castigliano).
///
/// ```
/// use holdround_mechanics::jaw_spring::{JawColumn, MasterJaw, Section};
/// let block = Section { length: 0.05, width: 0.04, depth: 0.04 };
/// let jaw = JawColumn::new(&[block], 207e9, 0.3, MasterJaw::default())?;
/// // Symmetric: what s does to z, z does to s.
/// assert_eq!(jaw.give(0.01, 0.04), jaw.give(0.04, 0.01));
/// # Ok::<(), holdround_mechanics::jaw_spring::ColumnError>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct JawColumn {
    sections: Vec<Section>,
    youngs: f64,
    shear_modulus: f64,
    master: MasterJaw,
}

/// What carries the top jaw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MasterJaw {
    /// Radial stiffness `Kr`, N/m.
    pub radial: f64,
    /// Tilt stiffness `Kt`, N m/rad.
    pub tilt: f64,
    /// Depth `z0` of the tilting centre below the serrations, m.
    pub depth: f64,
}

impl Default for MasterJaw {
    /// [`RADIAL_STIFFNESS`], [`TILT_STIFFNESS`], [`TILT_DEPTH`].
    fn default() -> Self {
        Self { radial: RADIAL_STIFFNESS, tilt: TILT_STIFFNESS, depth: TILT_DEPTH }
    }
}

impl JawColumn {
    /// A jaw of `sections` from the serrations outward, of a material with `youngs` (Pa) and
    /// `poisson`, on a master jaw.
    ///
    /// # Errors
    /// [`ColumnError`], naming what is wrong.
    pub fn new(sections: &[Section], youngs: f64, poisson: f64, master: MasterJaw) -> Result<Self, ColumnError> {
        let positive = |x: f64| x > 0.0 && x.is_finite();
        for (section, s) in sections.iter().enumerate() {
            if ![s.length, s.width, s.depth].into_iter().all(positive) {
                return Err(ColumnError::Section { section });
            }
        }
        if sections.is_empty() {
            return Err(ColumnError::Section { section: 0 });
        }
        if !(positive(youngs) && poisson > -1.0 && poisson <= 0.5) {
            return Err(ColumnError::Material);
        }
        let depth = master.depth >= 0.0 && master.depth.is_finite();
        if !(positive(master.radial) && positive(master.tilt) && depth) {
            return Err(ColumnError::Stiffness);
        }
        Ok(Self { sections: sections.to_vec(), youngs, shear_modulus: youngs / (2.0 * (1.0 + poisson)), master })
    }

    /// The same jaw on a master jaw that tilts `factor` times as stiffly (above zero).
    ///
    /// ```
    /// use holdround_mechanics::jaw_spring::{JawColumn, MasterJaw, Section};
    /// let jaw = JawColumn::new(&[Section { length: 0.05, width: 0.04, depth: 0.04 }], 207e9, 0.3, MasterJaw::default())?;
    /// assert!(jaw.tilting(2.0).give(0.05, 0.05) < jaw.give(0.05, 0.05));
    /// # Ok::<(), holdround_mechanics::jaw_spring::ColumnError>(())
    /// ```
    #[must_use]
    pub fn tilting(&self, factor: f64) -> Self {
        Self { master: MasterJaw { tilt: self.master.tilt * factor, ..self.master }, ..self.clone() }
    }

    /// Height of the jaw above the serrations, m.
    pub fn height(&self) -> f64 {
        self.sections.iter().map(|s| s.length).sum()
    }

    /// Radial motion of the face at height `z` for a unit force at height `s`, m/N. Heights
    /// beyond the jaw are taken at its tip, below the serrations at them.
    pub fn give(&self, z: f64, s: f64) -> f64 {
        let within = |x: f64| x.max(0.0).min(self.height());
        let (z, s) = (within(z), within(s));
        let tilt = (z + self.master.depth) * (s + self.master.depth) / self.master.tilt;
        1.0 / self.master.radial + tilt + self.beam(z, s)
    }

    /// Bending and shear between the serrations and the lower of the two heights.
    fn beam(&self, z: f64, s: f64) -> f64 {
        let lower = z.min(s);
        let mut sum = 0.0;
        let mut from = 0.0;
        for section in &self.sections {
            let to = (from + section.length).min(lower);
            if to <= from {
                break;
            }
            let area = section.width * section.depth;
            let inertia = area * section.depth * section.depth / 12.0;
            // Simpson's rule is exact for the product of two straight lines.
            let arm = |x: f64| (z - x) * (s - x);
            let moments = (arm(from) + 4.0 * arm((from + to) / 2.0) + arm(to)) * (to - from) / 6.0;
            sum += moments / (self.youngs * inertia);
            sum += SHEAR * (to - from) / (self.shear_modulus * area);
            from = to;
        }
        sum
    }

    /// [`Self::give`] between every pair of `heights` (m above the serrations), row by row.
    pub fn matrix(&self, heights: &[f64]) -> Vec<f64> {
        heights.iter().flat_map(|&z| heights.iter().map(move |&s| self.give(z, s))).collect()
    }

    /// Gap that boring leaves along the face, m, never negative, zero where the face stands
    /// proudest: the jaw was cut straight while a ring pressed on it with `force` (N) at
    /// height `ring`, and springs back when the ring is taken out.
    pub fn bored_relief(&self, ring: f64, force: f64, heights: &[f64]) -> Vec<f64> {
        let back: Vec<f64> = heights.iter().map(|&z| force * self.give(z, ring)).collect();
        let proudest = back.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        back.iter().map(|b| proudest - b).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STIFF: MasterJaw = MasterJaw { radial: 1e30, tilt: 1e30, depth: 0.0 };

    fn block(length: f64) -> Section {
        Section { length, width: 0.04, depth: 0.04 }
    }

    #[test]
    fn a_block_bends_and_shears_as_a_cantilever() {
        // 40 x 40 steel, 30 high, 10 kN: bending 2.038043478 um (F h^3 / 3 E I), shear
        // 2.826086957 um (kappa F h / G A), slope 0.1019021739 mrad (F h^2 / 2 E I). Source:
        // Timoshenko, *Strength of Materials*, evaluated independently.
        let jaw = JawColumn::new(&[block(0.06)], 207e9, 0.3, STIFF).expect("a jaw");
        let tip = 1e4 * jaw.give(0.03, 0.03);
        assert!((tip - (2.038043478e-6 + 2.826086957e-6)).abs() < 1e-14, "at the force: {tip:e}");
        let slope = 1e4 * (jaw.give(0.06, 0.03) - jaw.give(0.04, 0.03)) / 0.02;
        assert!((slope - 0.1019021739e-3).abs() < 1e-12, "straight beyond the force: {slope:e}");
    }

    #[test]
    fn tilt_and_radial_give_add_as_springs() {
        let master = MasterJaw { radial: 2e8, tilt: 1e6, depth: 0.01 };
        let soft = JawColumn::new(&[block(0.06)], 207e9, 0.3, master).expect("a jaw");
        let stiff = JawColumn::new(&[block(0.06)], 207e9, 0.3, STIFF).expect("a jaw");
        let extra = soft.give(0.05, 0.02) - stiff.give(0.05, 0.02);
        let wanted = 1.0 / 2e8 + 0.06 * 0.03 / 1e6;
        assert!((extra - wanted).abs() < 1e-9 * wanted, "{extra:e} for {wanted:e}");
    }

    #[test]
    fn a_jaw_cut_in_sections_is_the_same_jaw() {
        let whole = JawColumn::new(&[block(0.06)], 69e9, 0.33, STIFF).expect("a jaw");
        let cut = JawColumn::new(&[block(0.017), block(0.043)], 69e9, 0.33, STIFF).expect("a jaw");
        for (z, s) in [(0.01, 0.05), (0.03, 0.02), (0.06, 0.06)] {
            let (a, b) = (whole.give(z, s), cut.give(z, s));
            assert!((a - b).abs() < 1e-12 * a, "{z}, {s}: {a:e} and {b:e}");
        }
    }

    #[test]
    fn boring_under_a_ring_at_the_root_leaves_the_root_open() {
        let jaw = JawColumn::new(&[block(0.06)], 207e9, 0.3, MasterJaw::default()).expect("a jaw");
        let relief = jaw.bored_relief(0.01, 5e3, &[0.0, 0.03, 0.06]);
        assert_eq!(relief[2], 0.0, "the tip sprang back most");
        assert!(relief[0] > relief[1] && relief[1] > 0.0, "less towards the root: {relief:?}");
    }

    #[test]
    fn what_is_no_jaw_is_refused() {
        let flat = Section { length: 0.01, width: 0.0, depth: 0.04 };
        let make = |sections: &[Section], youngs: f64, master: MasterJaw| {
            JawColumn::new(sections, youngs, 0.3, master).map(|_| ())
        };
        let master = MasterJaw::default();
        let bad = Err(ColumnError::Section { section: 1 });
        assert_eq!(make(&[block(0.02), flat], 207e9, master), bad, "no width");
        assert_eq!(make(&[block(0.02)], f64::NAN, master), Err(ColumnError::Material), "no E");
        let loose = MasterJaw { tilt: 0.0, ..master };
        assert_eq!(make(&[block(0.02)], 207e9, loose), Err(ColumnError::Stiffness), "no tilt");
    }
}
