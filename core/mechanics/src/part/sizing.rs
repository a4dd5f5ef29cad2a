//! How long elements should be along a line: short at its ends, longer between.

use alloc::vec::Vec;

/// Wanted element lengths along one line, m.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Sizes {
    /// At the two ends.
    pub(crate) ends: [f64; 2],
    /// Nowhere longer than this.
    pub(crate) longest: f64,
    /// Growth per length travelled away from each end.
    pub(crate) growth: [f64; 2],
}

impl Sizes {
    /// Ends of elements as shares of the length, 0 first and 1 last, at most `most` elements.
    pub(crate) fn divide(&self, length: f64, most: usize) -> Vec<f64> {
        let [first, last] = self.ends.map(|end| end.min(self.longest));
        let [rise, fall] = self.growth;
        // Wanted length rises from either end until the two meet or it is longest.
        let meet = ((last - first + fall * length) / (rise + fall)).max(0.0).min(length);
        let rising = ((self.longest - first) / rise).min(meet);
        let falling = ((self.longest - last) / fall).min(length - meet);
        // Elements along a stretch: integral of one over the wanted length.
        let grown = |end: f64, growth: f64, x: f64| libm::log1p(growth * x / end) / growth;
        let level = (length - rising - falling).max(0.0) / self.longest;
        let (up, down) = (grown(first, rise, rising), grown(last, fall, falling));
        let total = up + level + down;
        // A hair of grace keeps rounding from adding an element to an exact fit.
        let parts = (libm::ceil(total - 1e-6) as usize).clamp(1, most.max(1));
        let reach = |end: f64, growth: f64, count: f64| end * libm::expm1(growth * count) / growth;
        let mut shares = alloc::vec![0.0];
        for part in 1..parts {
            let count = total * part as f64 / parts as f64;
            let x = if count <= up {
                reach(first, rise, count)
            } else if count <= up + level {
                rising + (count - up) * self.longest
            } else {
                length - reach(last, fall, total - count)
            };
            shares.push(x / length);
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
        let sizes = Sizes { ends: [0.1, 1.0], longest: 1.0, growth: [1.0; 2] };
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
        let sizes = Sizes { ends: [0.5, 0.5], longest: 0.5, growth: [1.0; 2] };
        assert_eq!(sizes.divide(2.0, 100), [0.0, 0.25, 0.5, 0.75, 1.0], "four equal parts");
        assert_eq!(sizes.divide(2.0, 2), [0.0, 0.5, 1.0], "the bound holds");
    }
}
