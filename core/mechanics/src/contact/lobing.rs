//! Displacement around a surface as a cosine series in multiples of the number of jaws.

use crate::sorting::sort;
use alloc::vec::Vec;

/// Terms of the series that a scan for extremes looks at; shorter waves only sharpen what it finds.
const LONG_WAVES: usize = 48;
/// Summits of the scan that are looked at more closely, and how far below the tallest they may be, as a share of
/// the scan's height.
const SUMMITS: (usize, f64) = (3, 0.1);
/// Steps of the scan to either side of a summit that the closer look begins with.
const REACH: usize = 4;
/// How often the closer look narrows by four.
const NARROWINGS: usize = 4;
/// Last terms that together reach this share of the largest are left out.
const NEGLIGIBLE: f64 = 1e-4;

/// `u(t) = sum_k amplitudes[k] cos(k J t)`, m, outward; t from the middle of a jaw.
#[derive(Clone, Debug, PartialEq)]
pub struct Lobing {
    /// Number of jaws J.
    pub jaws: usize,
    /// Amplitudes of orders 0, J, 2 J, ..., m.
    pub amplitudes: Vec<f64>,
}

impl Lobing {
    /// Mean displacement, m: half the change of diameter.
    pub fn mean(&self) -> f64 {
        self.amplitudes.first().copied().unwrap_or(0.0)
    }

    /// Displacement at an angle (rad) from the middle of a jaw, m.
    ///
    /// ```
    /// use holdround_mechanics::contact::Lobing;
    /// let round = Lobing { jaws: 3, amplitudes: vec![-1e-6, 2e-6] };
    /// assert!((round.at(0.0) - 1e-6).abs() < 1e-18);
    /// assert!((round.peak_to_valley() - 4e-6).abs() < 1e-12);
    /// ```
    pub fn at(&self, angle: f64) -> f64 {
        // Clenshaw's sum for a cosine series.
        let c = libm::cos(self.jaws as f64 * angle);
        let (mut b1, mut b2) = (0.0, 0.0);
        for amplitude in self.amplitudes.iter().skip(1).rev() {
            (b1, b2) = (amplitude + 2.0 * c * b1 - b2, b1);
        }
        self.mean() + c * b1 - b2
    }

    /// Sum of the squares of the amplitudes of all waves, m2.
    pub fn power(&self) -> f64 {
        self.amplitudes.iter().skip(1).map(|a| a * a).sum()
    }

    /// Leaves out the last terms that add nothing.
    pub(super) fn trim(&mut self) {
        let largest = self.amplitudes.iter().skip(1).fold(0.0, |most: f64, a| most.max(a.abs()));
        let mut left = NEGLIGIBLE * largest;
        while let [_, _, .., last] = self.amplitudes[..] {
            left -= last.abs();
            if left < 0.0 {
                break;
            }
            self.amplitudes.pop();
        }
    }

    /// Displacement at `count` angles from `from` on, a `step` apart, by the first `waves` terms.
    fn scan(&self, from: f64, step: f64, count: usize, waves: usize) -> Vec<f64> {
        // Clenshaw's sum as in `at`, for all angles at a time.
        let turns: Vec<f64> = (0..count).map(|k| libm::cos(self.jaws as f64 * (from + k as f64 * step))).collect();
        let mut last = alloc::vec![0.0; count];
        let mut before = last.clone();
        for amplitude in self.amplitudes.iter().take(waves).skip(1).rev() {
            for ((c, last), before) in turns.iter().zip(&mut last).zip(&mut before) {
                (*last, *before) = (amplitude + 2.0 * c * *last - *before, *last);
            }
        }
        let terms = turns.iter().zip(last).zip(before);
        terms.map(|((c, last), before)| self.mean() + c * last - before).collect()
    }

    /// Lowest and highest displacement around the surface, m: a scan that sees the long waves, then a
    /// closer and closer look where it found extremes, because the lowest point need not lie at a jaw or
    /// midway, and may be the sharp dent at a jaw's edge.
    pub fn extremes(&self) -> [f64; 2] {
        let long = self.amplitudes.len().clamp(2, LONG_WAVES);
        let last = 4 * long;
        let step = core::f64::consts::PI / self.jaws.max(1) as f64 / last as f64;
        let scanned = self.scan(0.0, step, last + 1, long);
        [-self.extreme(&scanned, step, -1.0), self.extreme(&scanned, step, 1.0)]
    }

    /// Highest minus lowest displacement around the surface, m.
    pub fn peak_to_valley(&self) -> f64 {
        let [lowest, highest] = self.extremes();
        highest - lowest
    }

    /// Greatest `way` times displacement, near the tallest summits of a scan.
    fn extreme(&self, scanned: &[f64], step: f64, way: f64) -> f64 {
        let height = |k: usize| way * scanned[k];
        let summit = |k: &usize| {
            let beside = [k.checked_sub(1), Some(k + 1).filter(|next| *next < scanned.len())];
            beside.into_iter().flatten().all(|next| height(next) <= height(*k))
        };
        let mut summits: Vec<usize> = (0..scanned.len()).filter(summit).collect();
        sort(&mut summits, |a, b| height(*b).total_cmp(&height(*a)));
        let tallest = summits.first().map_or(0.0, |k| height(*k));
        let lowest = (0..scanned.len()).map(height).fold(tallest, f64::min);
        let (most, share) = SUMMITS;
        let tall = summits.into_iter().take(most).filter(|k| height(*k) >= tallest - share * (tallest - lowest));
        tall.map(|k| self.climbed(k as f64 * step, step, way)).fold(f64::NEG_INFINITY, f64::max)
    }

    /// Greatest `way` times displacement around `angle`: a finer and finer scan about the greatest so far,
    /// first as wide as the waves are that the coarse scan, `step` apart, did not see.
    fn climbed(&self, mut angle: f64, mut step: f64, way: f64) -> f64 {
        let mut reach = REACH;
        let mut greatest = f64::NEG_INFINITY;
        for _ in 0..NARROWINGS {
            step /= 4.0;
            let from = angle - (4 * reach) as f64 * step;
            for (k, u) in self.scan(from, step, 8 * reach + 1, self.amplitudes.len()).into_iter().enumerate() {
                if way * u > greatest {
                    (greatest, angle) = (way * u, from + k as f64 * step);
                }
            }
            reach = 1;
        }
        greatest
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_series_and_its_extremes_match_the_plain_sum() {
        // 10 cos 3t + 4 cos 6t um: valley where cos 3t = -10/16, peak to valley 21.125 um
        // (by hand: 14 - (2 x 4 x (25/64) - 10 x 10/16 - 4)).
        let lobing = Lobing { jaws: 3, amplitudes: alloc::vec![0.5e-6, 10e-6, 4e-6] };
        let t = 0.37;
        let plain = 0.5e-6 + 10e-6 * libm::cos(3.0 * t) + 4e-6 * libm::cos(6.0 * t);
        assert!((lobing.at(t) - plain).abs() < 1e-20, "series");
        assert!((lobing.peak_to_valley() - 21.125e-6).abs() < 1e-7 * 21e-6, "extremes");
    }
}
