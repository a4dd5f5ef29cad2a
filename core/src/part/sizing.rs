//! How long elements should be along a line: short at its ends, longer between.

use alloc::vec::Vec;

/// Growth of element length per length travelled away from an end.
const GROWTH: f64 = 0.8;

/// Wanted element lengths along one line, m.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Sizes {
    /// At the two ends.
    pub(crate) ends: [f64; 2],
    /// Nowhere longer than this.
    pub(crate) longest: f64,
}

impl Sizes {
    fn at(&self, x: f64, length: f64) -> f64 {
        (self.ends[0] + GROWTH * x).min(self.ends[1] + GROWTH * (length - x)).min(self.longest)
    }

    /// Ends of elements as shares of the length, 0 first and 1 last, at most `most` elements.
    pub(crate) fn divide(&self, length: f64, most: usize) -> Vec<f64> {
        const SAMPLES: usize = 256;
        let mut count = [0.0; SAMPLES + 1];
        for k in 0..SAMPLES {
            let x = (k as f64 + 0.5) / SAMPLES as f64;
            let wanted = self.at(x * length, length) / length;
            count[k + 1] = count[k] + 1.0 / (SAMPLES as f64 * wanted);
        }
        let total = count[SAMPLES];
        // A hair of grace keeps rounding from adding an element to an exact fit.
        let parts = (libm::ceil(total - 1e-6) as usize).clamp(1, most.max(1));
        let mut shares = alloc::vec![0.0];
        let mut k = 0;
        for part in 1..parts {
            let wanted = total * part as f64 / parts as f64;
            while k + 1 < SAMPLES && count[k + 1] < wanted {
                k += 1;
            }
            let within = (wanted - count[k]) / (count[k + 1] - count[k]);
            shares.push((k as f64 + within) / SAMPLES as f64);
        }
        shares.push(1.0);
        shares
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn elements_are_short_at_the_graded_end_and_fill_the_line() {
        let sizes = Sizes { ends: [0.1, 1.0], longest: 1.0 };
        let shares = sizes.divide(5.0, 100);
        assert_eq!((shares[0], shares[shares.len() - 1]), (0.0, 1.0), "the whole line");
        let lengths: Vec<f64> = shares.windows(2).map(|w| (w[1] - w[0]) * 5.0).collect();
        assert!(lengths[0] < 0.2, "first element near its wanted length: {lengths:?}");
        for pair in lengths.windows(2) {
            assert!(pair[1] > 0.99 * pair[0] && pair[1] < 2.5 * pair[0], "smooth: {lengths:?}");
        }
    }

    #[test]
    fn an_exact_fit_is_exact() {
        let sizes = Sizes { ends: [0.5, 0.5], longest: 0.5 };
        assert_eq!(sizes.divide(2.0, 100), [0.0, 0.25, 0.5, 0.75, 1.0], "four equal parts");
        assert_eq!(sizes.divide(2.0, 2), [0.0, 0.5, 1.0], "the bound holds");
    }
}
