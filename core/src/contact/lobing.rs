//! Displacement around a surface as a cosine series in multiples of the number of jaws.

use alloc::vec::Vec;

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
    /// use holdround_core::contact::Lobing;
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

    /// Highest minus lowest displacement around the surface, m: a scan, refined at its
    /// extremes, because the lowest point need not lie at a jaw or midway.
    pub fn peak_to_valley(&self) -> f64 {
        let waves = self.amplitudes.len().max(2);
        let last = 4 * waves;
        let step = core::f64::consts::PI / self.jaws.max(1) as f64 / last as f64;
        let scan = || (0..=last).map(|k| k as f64 * step);
        let by_height = |a: &f64, b: &f64| self.at(*a).total_cmp(&self.at(*b));
        let high = scan().max_by(by_height).unwrap_or(0.0);
        let low = scan().min_by(by_height).unwrap_or(0.0);
        self.at(self.summit(high, step)) - self.at(self.summit(low, step))
    }

    /// Angle of the peak or valley nearest to `angle`, by parabolas of shrinking width.
    fn summit(&self, mut angle: f64, mut step: f64) -> f64 {
        for _ in 0..4 {
            let [before, here, after] = [-step, 0.0, step].map(|d| self.at(angle + d));
            let (slope, bend) = ((after - before) / 2.0, before + after - 2.0 * here);
            if bend != 0.0 {
                angle += step * (-slope / bend).clamp(-1.0, 1.0);
            }
            step /= 8.0;
        }
        angle
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
