//! A straight line of least squares, and how well it is known.

use crate::student::two_sided_quantile;

/// `y = a + b x` through points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Line {
    pub(super) slope: f64,
    count: usize,
    mean: [f64; 2],
    x_squares: f64,
    residual_squares: f64,
}

impl Line {
    /// The line through at least two points that do not all have one x; else none.
    pub(super) fn through(points: &[[f64; 2]]) -> Option<Self> {
        let count = points.len();
        let mean: [f64; 2] = core::array::from_fn(|k| points.iter().map(|point| point[k]).sum::<f64>() / count as f64);
        let off = || points.iter().map(|[x, y]| (x - mean[0], y - mean[1]));
        let x_squares: f64 = off().map(|(x, _)| x * x).sum();
        let slope = off().map(|(x, y)| x * y).sum::<f64>() / x_squares;
        let residual_squares = off().map(|(x, y)| (y - slope * x) * (y - slope * x)).sum();
        (count > 1 && slope.is_finite()).then_some(Self { slope, count, mean, x_squares, residual_squares })
    }

    /// Height of the line.
    pub(super) fn at(&self, x: f64) -> f64 {
        self.mean[1] + self.slope * (x - self.mean[0])
    }

    /// Standard deviation of the points about the line; none with two, which a line always fits.
    pub(super) fn deviation(&self) -> Option<f64> {
        (self.count > 2).then(|| crate::sqrt(self.residual_squares / (self.count - 2) as f64))
    }

    /// Standard error of one further point.
    pub(super) fn further(&self, x: f64) -> Option<f64> {
        let off = x - self.mean[0];
        let spread = 1.0 + 1.0 / self.count as f64 + off * off / self.x_squares;
        self.deviation().map(|deviation| deviation * crate::sqrt(spread))
    }

    /// Standard error of the slope.
    pub(super) fn slope_error(&self) -> Option<f64> {
        self.deviation().map(|deviation| deviation / crate::sqrt(self.x_squares))
    }

    /// Student's t for both sides with the points left over; at least one must be.
    pub(super) fn student(&self, confidence: f64) -> f64 {
        two_sided_quantile(confidence, self.count.saturating_sub(2).max(1))
    }
}
