//! Least and greatest value of a smooth function on an interval.

const CELLS: u32 = 32;
const GOLDEN: f64 = 0.618_033_988_749_894_9;
/// Narrows two cells by a factor 2000; the value then errs by its square.
const REFINEMENTS: u32 = 16;

/// Least and greatest value of `f` on `[low, high]`: one scan, then golden section about
/// its lowest and its highest point.
///
/// No scanned value, the ends included, lies outside them. A peak narrower than a
/// thirty-second of the interval may be missed.
pub(crate) fn extremes(f: impl Fn(f64) -> f64, low: f64, high: f64) -> (f64, f64) {
    let step = (high - low) / f64::from(CELLS);
    let (mut least, mut greatest) = ((low, f(low)), (low, f(low)));
    for i in 1..=CELLS {
        let x = low + step * f64::from(i);
        let value = f(x);
        if value < least.1 {
            least = (x, value);
        }
        if value > greatest.1 {
            greatest = (x, value);
        }
    }
    let around = |x: f64| ((x - step).max(low), (x + step).min(high));
    let lowest = -refined(|x| -f(x), around(least.0)).max(-least.1);
    let highest = refined(&f, around(greatest.0)).max(greatest.1);
    (lowest, highest)
}

/// Greatest value found by golden section in an interval of one peak.
fn refined(f: impl Fn(f64) -> f64, (mut left, mut right): (f64, f64)) -> f64 {
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
    }
    f1.max(f2)
}

#[cfg(test)]
mod tests {
    use super::extremes;
    use libm::cos;

    #[test]
    fn peaks_between_scan_points_are_found() {
        let (low, high) = extremes(|x| cos(x - 0.777), 0.0, 4.3);
        assert!((high - 1.0).abs() < 1e-8, "highest {high}");
        assert!((low + 1.0).abs() < 1e-8, "lowest {low}");
    }

    #[test]
    fn an_empty_interval_gives_its_only_value() {
        assert_eq!(extremes(|x| x * x, 3.0, 3.0), (9.0, 9.0), "value at the point");
    }
}
