//! Points across half of a jaw's face, from its middle to its edge.

use alloc::vec::Vec;

/// Angles from the middle of a jaw face to its edge, rad, with a linear hat at each. A pressure
/// on the grid is the same on the other half of the face.
#[derive(Clone, Debug, PartialEq)]
pub struct Arc {
    angles: Vec<f64>,
}

impl Arc {
    /// Cells by default: graded, within 0.15 % of 64 cells for peak to valley under a rigid jaw,
    /// where as many equal cells are 4 % off.
    pub const CELLS: usize = 12;

    /// A face of `arc` rad (above 0, at most 2 pi), in `cells` cells that shorten towards the
    /// edge as `sin`, where the pressure of a stiff jaw is singular.
    pub fn graded(arc: f64, cells: usize) -> Self {
        let last = cells.max(1);
        let quarter = core::f64::consts::FRAC_PI_2;
        let angles = (0..=last).map(|i| arc / 2.0 * libm::sin(quarter * i as f64 / last as f64)).collect();
        Self { angles }
    }

    /// A face of `arc` rad in cells of equal length.
    pub fn even(arc: f64, cells: usize) -> Self {
        let last = cells.max(1);
        Self { angles: (0..=last).map(|i| arc / 2.0 * i as f64 / last as f64).collect() }
    }

    /// Angles of the points, rad.
    pub fn angles(&self) -> &[f64] {
        &self.angles
    }

    /// Order of the shortest wave that matters: hats no longer see waves shorter than their cell, whose share
    /// falls as the fifth power from there.
    pub(crate) fn shortest_wave(&self) -> usize {
        let shortest = self.angles.windows(2).map(|w| w[1] - w[0]).fold(f64::INFINITY, f64::min);
        (8.0 / shortest).min(20_000.0) as usize
    }

    /// Integral over the whole face of each hat times `cos(n t)`.
    pub(crate) fn cosines(&self, n: usize) -> Vec<f64> {
        self.waves(n).hats()
    }

    /// [`Self::cosines`] of orders 0, `step`, 2 `step`, ... up to `last`, in turn. Sines are
    /// turned on from order to order instead of being evaluated again.
    pub(crate) fn each_cosines(&self, step: usize, last: usize, mut each: impl FnMut(usize, &[f64])) {
        let turn = self.waves(step);
        let mut now = self.waves(0);
        for order in (0..=last).step_by(step) {
            now.order = order;
            each(order, &now.hats());
            now.turn(&turn);
        }
    }

    fn waves(&self, order: usize) -> Waves<'_> {
        let n = order as f64;
        let wave = |t: f64| (libm::cos(n * t), libm::sin(n * t));
        Waves {
            order,
            angles: &self.angles,
            at: self.angles.iter().map(|t| wave(*t)).collect(),
            middle: self.angles.windows(2).map(|w| wave((w[0] + w[1]) / 2.0)).collect(),
            half: self.angles.windows(2).map(|w| wave((w[1] - w[0]) / 2.0)).collect(),
        }
    }

    /// Integral over the whole face of hat times hat.
    pub(crate) fn mass(&self) -> Vec<f64> {
        let m = self.angles.len();
        let mut mass = alloc::vec![0.0; m * m];
        for (k, w) in self.angles.windows(2).enumerate() {
            let length = 2.0 * (w[1] - w[0]);
            for (a, b, share) in [(0, 0, 3.0), (0, 1, 6.0), (1, 0, 6.0), (1, 1, 3.0)] {
                mass[(k + a) * m + k + b] += length / share;
            }
        }
        mass
    }
}

/// Cosine and sine of n times each angle, each cell's middle and each half cell.
struct Waves<'a> {
    order: usize,
    angles: &'a [f64],
    at: Vec<(f64, f64)>,
    middle: Vec<(f64, f64)>,
    half: Vec<(f64, f64)>,
}

impl Waves<'_> {
    fn turn(&mut self, by: &Self) {
        let pairs = [(&mut self.at, &by.at), (&mut self.middle, &by.middle), (&mut self.half, &by.half)];
        for (mine, theirs) in pairs {
            for (wave, (c, s)) in mine.iter_mut().zip(theirs) {
                *wave = (wave.0 * c - wave.1 * s, wave.1 * c + wave.0 * s);
            }
        }
    }

    fn hats(&self) -> Vec<f64> {
        let mut integrals = alloc::vec![0.0; self.angles.len()];
        let n = self.order as f64;
        for (k, w) in self.angles.windows(2).enumerate() {
            let length = w[1] - w[0];
            let (falling, rising) = if self.order == 0 {
                (length / 2.0, length / 2.0)
            } else {
                let mean = self.middle[k].1 * self.half[k].1 / (n * n * length / 2.0);
                (mean - self.at[k].1 / n, self.at[k + 1].1 / n - mean)
            };
            integrals[k] += 2.0 * falling;
            integrals[k + 1] += 2.0 * rising;
        }
        integrals
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hats_together_carry_the_whole_arc() {
        // The hats sum to one: their integrals sum to the integral of cos(n t) over the arc.
        for arc in [Arc::graded(1.1, 16), Arc::even(1.1, 7)] {
            for n in [0, 1, 3, 90, 3000] {
                let m = n as f64;
                let wanted = if n == 0 { 1.1 } else { 2.0 * libm::sin(m * 0.55) / m };
                let got: f64 = arc.cosines(n).iter().sum();
                assert!((got - wanted).abs() < 1e-13, "order {n}: {got} for {wanted}");
            }
        }
    }

    #[test]
    fn turning_on_from_order_to_order_loses_nothing() {
        let arc = Arc::graded(1.9, 16);
        arc.each_cosines(3, 6000, |order, turned| {
            for (a, b) in turned.iter().zip(arc.cosines(order)) {
                assert!((a - b).abs() < 1e-13, "order {order}: {a} and {b}");
            }
        });
    }

    #[test]
    fn one_hat_integrates_as_by_simpson() {
        let arc = Arc::graded(0.9, 8);
        let a = arc.angles();
        let (i, n) = (3, 7.0);
        let hat = |t: f64| {
            if t < a[i] { (t - a[i - 1]) / (a[i] - a[i - 1]) } else { (a[i + 1] - t) / (a[i + 1] - a[i]) }
        };
        let mut sum = 0.0;
        for (from, to) in [(a[i - 1], a[i]), (a[i], a[i + 1])] {
            let h = (to - from) / 200.0;
            for k in 0..=200 {
                let weight = if k == 0 || k == 200 {
                    1.0
                } else if k % 2 == 1 {
                    4.0
                } else {
                    2.0
                };
                let t = from + h * f64::from(k);
                sum += 2.0 * weight * h / 3.0 * hat(t) * libm::cos(n * t);
            }
        }
        let got = arc.cosines(7)[i];
        assert!((got - sum).abs() < 1e-9, "{got} and {sum}");
    }
}
