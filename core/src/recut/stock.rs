//! Stock per side, what cleaning up needs of it, and what would bring it right.

use crate::grip::Side;
use crate::stroke::outward;

/// The faces as they came back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Old {
    /// Their run-out on the ring, full indicator reading, m.
    pub runout: f64,
    /// Whether it was measured. Assumed, it makes a cut deep enough and tells nothing of jaws that are not cut.
    pub measured: bool,
    /// Taper per side in them, m.
    pub taper: f64,
    /// Depth of the deepest dent or scratch, m.
    pub damage: f64,
}

/// How the stock stands to what is needed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outlook {
    /// The jaws already stand beyond the target: metal is missing.
    TooLarge,
    /// Part of the old face would stay.
    TooLittle,
    /// It cleans up.
    Enough,
    /// It cleans up, and cuts away more than it need.
    Wasteful,
}

/// Stock per side, m, between diameters in m: positive where metal is to come off.
///
/// ```
/// use holdround_core::{grip::Side, recut::stock_per_side};
/// // Jaws standing at 3.935 in for a 3.950 in bore leave 0.0075 in per side.
/// assert!((stock_per_side(Side::Outside, 3.935, 3.950) - 0.0075).abs() < 1e-12);
/// assert!((stock_per_side(Side::Inside, 3.950, 3.935) - 0.0075).abs() < 1e-12);
/// ```
#[must_use]
pub fn stock_per_side(side: Side, standing: f64, target: f64) -> f64 {
    outward(side) * (target - standing) / 2.0
}

/// Stock per side, m, that cleans the faces up: half the run-out, the change of taper, and the damage.
///
/// A jaw set off centre by `e` shows a run-out of `2 e`, and one of its faces lies `e` deeper than their mean.
///
/// ```
/// use holdround_core::recut::{Old, needed_stock};
/// // Half of 0.08 mm run-out, a taper changed by 0.02 mm and a dent of 0.1 mm.
/// let old = Old { runout: 0.08e-3, measured: true, taper: 0.03e-3, damage: 0.1e-3 };
/// assert!((needed_stock(&old, 0.01e-3) - 0.16e-3).abs() < 1e-12);
/// ```
#[must_use]
pub fn needed_stock(old: &Old, new_taper: f64) -> f64 {
    0.5 * old.runout + libm::fabs(new_taper - old.taper) + old.damage
}

impl Outlook {
    /// Judges `stock` against what is `needed` and what one recut may `spend` beyond that, all per side, m.
    #[must_use]
    pub fn of(stock: f64, needed: f64, spend: f64) -> Self {
        // A micrometre's billionth is rounding of unit conversions.
        const ROUNDING: f64 = 1e-15;
        if stock < -ROUNDING {
            Self::TooLarge
        } else if stock < needed - ROUNDING {
            Self::TooLittle
        } else if stock <= needed + spend + ROUNDING {
            Self::Enough
        } else {
            Self::Wasteful
        }
    }
}

/// Change of the diameter that the ring gauges, m, that turns `stock` into `wanted`, both per side.
///
/// The ring holds the top jaws, not the master jaws: another tooth on the same ring changes no stock, only where in the
/// stroke the master jaws stand; see [`teeth_to_middle`].
///
/// ```
/// use holdround_core::{grip::Side, recut::ring_change};
/// // Outside grip, 0.1 mm per side too much: a ring 0.2 mm larger lets the jaws stand farther out.
/// assert!((ring_change(Side::Outside, 0.3e-3, 0.2e-3) - 0.2e-3).abs() < 1e-12);
/// assert!((ring_change(Side::Inside, 0.3e-3, 0.2e-3) + 0.2e-3).abs() < 1e-12);
/// ```
#[must_use]
pub fn ring_change(side: Side, stock: f64, wanted: f64) -> f64 {
    outward(side) * 2.0 * (stock - wanted)
}

/// Teeth by which to move the top jaws outward (negative: inward) on the master jaws, the ring being the same, for these
/// to stand nearest to the middle of the stroke. Each tooth outward lets the master jaw stand a pitch farther in.
///
/// ```
/// use holdround_core::recut::teeth_to_middle;
/// assert_eq!(teeth_to_middle(5.1e-3, 4e-3, 1.5e-3), 2);
/// assert_eq!(teeth_to_middle(1.6e-3, 4e-3, 1.5e-3), 0);
/// ```
#[must_use]
pub fn teeth_to_middle(position: f64, stroke: f64, pitch: f64) -> i32 {
    libm::round((position - 0.5 * stroke) / pitch).clamp(-1e6, 1e6) as i32
}

/// Whether jaws that are mounted as before can be used as they are: within `tolerance` of the target on diameter,
/// without damage, and running true to within `runout` as far as that was measured.
///
/// ```
/// use holdround_core::recut::{Old, reusable};
/// let old = Old { runout: 0.02e-3, measured: true, taper: 0.0, damage: 0.0 };
/// assert!(reusable(0.10001, 0.1, 0.02e-3, &old, 0.03e-3));
/// assert!(!reusable(0.10001, 0.1, 0.02e-3, &Old { damage: 0.1e-3, ..old }, 0.03e-3), "dented");
/// ```
#[must_use]
pub fn reusable(standing: f64, target: f64, tolerance: f64, old: &Old, runout: f64) -> bool {
    let true_enough = !old.measured || old.runout <= runout;
    libm::fabs(standing - target) <= tolerance && old.damage <= 0.0 && true_enough
}
