//! What the grip does and what it does not: two sets of readings at two grips.

use alloc::vec::Vec;

use super::error::IndicatorError;
use super::fit::{Fit, Wave};

/// Greatest share of the first grip at which the second set still tells something: our own choice, at which the
/// uncertainty has grown fourteenfold.
const MOST_SHARE: f64 = 0.9;

/// One wave of the first set in two.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parted {
    /// What comes with the grip, as in the first set.
    pub squeezed: Wave,
    /// What is there without any.
    pub there: Wave,
}

/// Parts each wave of `first` into what rises in proportion to the grip and what is there without it, from a `second`
/// set at a `share` of the grip, 0 to 0.9: with `w = there + squeezed` and `w2 = there + share squeezed`,
/// `squeezed = (w - w2) / (1 - share)`. Both sets must be read at the same stations.
///
/// ```
/// use holdround_mechanics::indicator::{Fit, Wave, part};
/// let set = |cos| Fit { mean: 0.0, waves: vec![Wave { order: 3, cos, sin: 0.0, uncertainty: 1e-6 }], scatter: None, range: 0.0 };
/// let parted = part(&set(10e-6), &set(6e-6), 0.5)?;
/// assert!((parted[0].squeezed.cos - 8e-6).abs() < 1e-18 && (parted[0].there.cos - 2e-6).abs() < 1e-18);
/// # Ok::<(), holdround_mechanics::indicator::IndicatorError>(())
/// ```
///
/// # Errors
/// [`IndicatorError::SameGrip`] when the share is above 0.9 or not a number, [`IndicatorError::Different`] when the sets tell
/// different waves.
pub fn part(first: &Fit, second: &Fit, share: f64) -> Result<Vec<Parted>, IndicatorError> {
    if !(0.0..=MOST_SHARE).contains(&share) {
        return Err(IndicatorError::SameGrip(share));
    }
    if !first.waves.iter().map(|wave| wave.order).eq(second.waves.iter().map(|wave| wave.order)) {
        return Err(IndicatorError::Different);
    }
    let mixed = |a: &Wave, b: &Wave, [of_a, of_b]: [f64; 2]| Wave {
        order: a.order,
        cos: of_a * a.cos + of_b * b.cos,
        sin: of_a * a.sin + of_b * b.sin,
        uncertainty: libm::hypot(of_a * a.uncertainty, of_b * b.uncertainty),
    };
    let one = 1.0 / (1.0 - share);
    let both = first.waves.iter().zip(&second.waves);
    Ok(both
        .map(|(a, b)| Parted { squeezed: mixed(a, b, [one, -one]), there: mixed(a, b, [-share * one, one]) })
        .collect())
}
