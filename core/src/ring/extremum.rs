//! Largest value of a smooth function on an interval.

const CELLS: u32 = 48;
const GOLDEN: f64 = 0.618_033_988_749_894_9;
/// Narrows two cells by a factor 1e5; the value then errs by its square.
const REFINEMENTS: u32 = 24;

/// Largest value of `f` on `[low, high]`: a scan, then golden section about its best point.
///
/// Never below any scanned value, the ends included. A peak narrower than a
/// forty-eighth of the interval may be missed.
pub(crate) fn maximum(f: impl Fn(f64) -> f64, low: f64, high: f64) -> f64 {
    let step = (high - low) / f64::from(CELLS);
    let (mut at, mut best) = (low, f(low));
    for i in 1..=CELLS {
        let x = low + step * f64::from(i);
        let value = f(x);
        if value > best {
            (at, best) = (x, value);
        }
    }
    let (mut left, mut right) = ((at - step).max(low), (at + step).min(high));
    let (mut x1, mut x2) = (right - GOLDEN * (right - left), left + GOLDEN * (right - left));
    let (mut f1, mut f2) = (f(x1), f(x2));
    for _ in 0..REFINEMENTS {
        if f1 > f2 {
            (right, x2, f2) = (x2, x1, f1);
            x1 = right - GOLDEN * (right - left);
            f1 = f(x1);
        } else {
            (left, x1, f1) = (x1, x2, f2);
            x2 = left + GOLDEN * (right - left);
            f2 = f(x2);
        }
        best = best.max(f1).max(f2);
    }
    best
}

#[cfg(test)]
mod tests {
    use super::maximum;
    use libm::cos;

    #[test]
    fn a_peak_between_scan_points_is_found() {
        let best = maximum(|x| cos(x - 0.777), 0.0, 2.0);
        assert!((best - 1.0).abs() < 1e-11, "found {best}");
    }

    #[test]
    fn an_empty_interval_gives_its_only_value() {
        assert_eq!(maximum(|x| x * x, 3.0, 3.0), 9.0, "value at the point");
    }
}
