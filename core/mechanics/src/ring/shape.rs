//! Radial displacement of a surface around the axis, the same at every jaw.

use alloc::vec::Vec;
use core::f64::consts::PI;

use libm::cos;

use super::clausen::{clausen, cubic_sine_sum};
use super::extremum::extremes;

/// One term of a [`Shape`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Harmonic {
    /// Waves per turn, a multiple of the number of jaws.
    pub order: u32,
    /// Amplitude of the radial displacement, m; positive is outward at the jaws.
    pub amplitude: f64,
}

/// Radial displacement of one surface under equal jaws, m, positive outward.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// Mean radial displacement, m.
    pub mean: f64,
    /// The leading harmonics, orders J, 2J, ...; those left out add less than a
    /// millionth of the peak to valley or, on the loaded surface, are in closed form.
    pub harmonics: Vec<Harmonic>,
    pub(crate) lobes: u32,
    pub(crate) half_angle: f64,
    /// The harmonics less what the near field already holds of them.
    pub(crate) smooth: Vec<f64>,
    pub(crate) near_field: NearField,
}

/// The half-plane's answer to the pressure, summed over all orders in closed form:
/// `square * sin(m beta) cos(m theta) / m^2 + cube * the same / m^3`.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub(crate) struct NearField {
    pub(crate) square: f64,
    pub(crate) cube: f64,
}

impl Shape {
    /// Radial displacement at `theta` (rad, zero on the first jaw), m.
    #[must_use]
    pub fn radial(&self, theta: f64) -> f64 {
        let lobes = f64::from(self.lobes);
        let mut radial = self.mean + cosine_series(&self.smooth, lobes * theta);
        if self.near_field != NearField::default() {
            let (left, right) = (lobes * (self.half_angle + theta), lobes * (self.half_angle - theta));
            radial += 0.5 * self.near_field.square * (clausen(left) + clausen(right)) / (lobes * lobes)
                + 0.5 * self.near_field.cube * (cubic_sine_sum(left) + cubic_sine_sum(right)) / (lobes * lobes * lobes);
        }
        radial
    }

    /// Radial displacement at `count` equal angles from zero, m.
    #[must_use]
    pub fn sampled(&self, count: usize) -> Vec<f64> {
        let step = 2.0 * PI / count as f64;
        let lobes = self.lobes as usize;
        if !count.is_multiple_of(lobes) {
            return (0..count).map(|i| self.radial(step * i as f64)).collect();
        }
        let period = count / lobes;
        let half: Vec<f64> = (0..=period / 2).map(|i| self.radial(step * i as f64)).collect();
        let mirrored = |i: usize| half[i.min(period - i)];
        (0..count).map(|i| mirrored(i % period)).collect()
    }

    /// Peak to valley of the displacement around the whole surface, m, found by a
    /// scan of half a lobe and refined: the lowest point need not be at a jaw.
    #[must_use]
    pub fn peak_to_valley(&self) -> f64 {
        let pitch = PI / f64::from(self.lobes);
        let edge = self.half_angle.min(pitch);
        let under = extremes(|t| self.radial(t), 0.0, edge);
        let between = extremes(|t| self.radial(t), edge, pitch);
        under.1.max(between.1) - under.0.min(between.0)
    }
}

/// Sum of `coefficients[k-1] * cos(k angle)` by Clenshaw's recurrence.
pub(crate) fn cosine_series(coefficients: &[f64], angle: f64) -> f64 {
    let twice = 2.0 * cos(angle);
    let (mut one, mut two) = (0.0, 0.0);
    for c in coefficients.iter().rev() {
        (one, two) = (c + twice * one - two, one);
    }
    0.5 * twice * one - two
}
