//! The pressure at which a limit is reached.

/// Evaluations before a bracket is taken as it stands.
const MOST: usize = 60;
/// Steps without halving the bracket after which it is halved.
const PATIENCE: usize = 2;

/// A root, and how steeply the function passes through it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Root {
    pub(super) at: f64,
    /// Rise per pressure, 1/Pa; 0 while it is not known.
    pub(super) slope: f64,
}

/// Where `ratio` rises through 1 in `range`, within `tolerance`; an end of the range where it does not. `like` is a
/// root thought to be near, of which the slope may be 0 for unknown.
///
/// A secant kept in a bracket, first from the origin, because ratios are about proportional to the pressure; halving
/// where it gains too little, so that it ends whatever the function (after Dekker 1969 and Brent 1973, from memory).
pub(super) fn root(ratio: &dyn Fn(f64) -> f64, range: [f64; 2], like: Root, tolerance: f64) -> Root {
    let [least, most] = range;
    let (mut below, mut above): (Option<[f64; 2]>, Option<[f64; 2]>) = (None, None);
    let mut slope = like.slope;
    let mut x = like.at.max(least).min(most);
    let mut before: Option<[f64; 2]> = None;
    let (mut width, mut slow) = (f64::INFINITY, 0);
    for _ in 0..MOST {
        let off = ratio(x) - 1.0;
        // No number is taken as broken.
        let off = if off.is_nan() { f64::INFINITY } else { off };
        if let Some([earlier, value]) = before {
            let rise = (off - value) / (x - earlier);
            if rise.is_finite() && rise > 0.0 {
                slope = rise;
            }
        }
        if off == 0.0 {
            return Root { at: x, slope };
        }
        if off.abs() <= slope * tolerance {
            return Root { at: (x - off / slope).max(least).min(most), slope };
        }
        before = Some([x, off]);
        if off < 0.0 {
            below = before;
        } else {
            above = before;
        }
        x = match (below, above) {
            (Some([low, under]), Some([high, over])) => {
                if high - low <= tolerance {
                    return Root { at: f64::midpoint(low, high), slope };
                }
                slow = if high - low > 0.5 * width { slow + 1 } else { 0 };
                width = if slow == 0 { high - low } else { width };
                let secant = low - under * (high - low) / (over - under);
                let inside = secant > low && secant < high;
                if slow > PATIENCE || !inside {
                    (slow, width) = (0, high - low);
                    f64::midpoint(low, high)
                } else {
                    // A hair into the bracket, or an end that is already the root would be asked again.
                    let hair = 0.25 * tolerance;
                    secant.max(low + hair).min(high - hair)
                }
            }
            (Some([low, under]), None) if low < most => onward(low, under, slope, tolerance).max(low).min(most),
            (None, Some([high, over])) if high > least => onward(high, over, slope, tolerance).min(high).max(least),
            _ => return Root { at: x, slope: 0.0 },
        };
    }
    Root { at: x, slope: 0.0 }
}

/// Past the root as the slope has it, or else as a ratio in proportion to the pressure has it.
fn onward(at: f64, off: f64, slope: f64, tolerance: f64) -> f64 {
    let proportional = if off.is_finite() { off / (1.0 + off).max(0.1) * at } else { at };
    let by_slope = off / slope;
    let way = if by_slope.is_finite() { by_slope } else { proportional };
    // Some way farther, so that the root comes to lie within a bracket.
    at - way - libm::copysign(0.1 * way.abs() + 2.0 * tolerance, off)
}

#[cfg(test)]
mod tests {
    use super::*;
    use core::cell::Cell;

    fn asked(ratio: &dyn Fn(f64) -> f64, like: Root) -> (f64, usize) {
        let count = Cell::new(0);
        let counted = |x: f64| {
            count.set(count.get() + 1);
            ratio(x)
        };
        (root(&counted, [0.0, 4e6], like, 2e3).at, count.get())
    }

    const ANYWHERE: Root = Root { at: 1e6, slope: 0.0 };

    #[test]
    fn a_proportional_ratio_takes_three_evaluations() {
        let (at, count) = asked(&|p| p / 1.7e6, ANYWHERE);
        assert!((at - 1.7e6).abs() < 1.0, "{at}");
        assert!(count <= 3, "{count} evaluations");
        assert_eq!(asked(&|p| p / 1e6, ANYWHERE), (1e6, 1), "a guess that is right is taken");
        let (_, again) = asked(&|p| p / 1.7e6, Root { at: 1.7e6, slope: 1.0 / 1.7e6 });
        assert_eq!(again, 1, "one that is known only has to be looked at");
    }

    #[test]
    fn steps_kinks_and_curves_are_found_to_the_tolerance() {
        let step = |p: f64| if p < 0.3e6 { 0.2 } else { 7.0 };
        let kink = |p: f64| if p < 2e6 { p / 8e6 } else { 0.25 + (p - 2e6) / 1e6 };
        let curve = |p: f64| crate::sqrt(p / 3.1e6);
        let nothing_then_all = |p: f64| if p < 3.2e6 { 0.0 } else { f64::INFINITY };
        let mut counts = alloc::vec::Vec::new();
        for (ratio, expected) in
            [(&step as &dyn Fn(f64) -> f64, 0.3e6), (&kink, 2.75e6), (&curve, 3.1e6), (&nothing_then_all, 3.2e6)]
        {
            let (at, count) = asked(ratio, ANYWHERE);
            assert!((at - expected).abs() < 2e3, "{at}, not {expected}");
            counts.push(count);
        }
        // Halving alone takes eleven from 4 MPa to 2 kPa, as a step nearly does; a slip in the secant shows as more.
        assert!(counts.iter().zip([14, 4, 4, 13]).all(|(count, most)| *count <= most), "evaluations: {counts:?}");
    }

    #[test]
    fn a_limit_that_is_never_reached_ends_at_the_range() {
        assert_eq!(asked(&|p| p / 9e6, ANYWHERE).0, 4e6, "never broken");
        assert_eq!(asked(&|p| 2.0 + p, ANYWHERE).0, 0.0, "always broken");
        assert_eq!(asked(&|_| 0.0, ANYWHERE).0, 4e6, "nothing there");
        assert_eq!(asked(&|_| f64::NAN, ANYWHERE).0, 0.0, "no number is taken as broken");
    }
}
