//! The waves in a set of readings, by least squares.

use alloc::vec::Vec;
use core::f64::consts::{FRAC_PI_2, TAU};

use super::error::IndicatorError;
use super::sight::{Sight, orders, sight};
use crate::student::two_sided_quantile;

/// Least and greatest number of stations.
pub(super) const STATIONS: [usize; 2] = [6, 36];
/// Confidence of every uncertainty.
const CONFIDENCE: f64 = 0.95;
/// A term whose variance grows beyond this by what is missing is not told: rule of thumb for variance inflation,
/// common practice, no source.
const MOST_INFLATION: f64 = 10.0;

/// One set of readings at evenly spaced stations.
#[derive(Debug, Clone, Copy)]
pub struct Readings<'a> {
    /// Departure outward at each station, m; none where it was not read.
    pub departures: &'a [Option<f64>],
    /// Angle of the first station from the middle of jaw 1, rad.
    pub start: f64,
    /// Number of jaws.
    pub jaws: usize,
    /// Smallest step that can be read, m.
    pub resolution: f64,
}

/// One wave and how well it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wave {
    /// How often it goes round.
    pub order: usize,
    /// Its part that is greatest in the middle of jaw 1, m.
    pub cos: f64,
    /// Its part a quarter of a wave on, m; 0 where the stations do not see it.
    pub sin: f64,
    /// Half the width of the interval that holds its height with a confidence of 95 %, m.
    pub uncertainty: f64,
}

impl Wave {
    /// Its height over the mean, m.
    #[must_use]
    pub fn height(&self) -> f64 {
        libm::hypot(self.cos, self.sin)
    }

    /// Angle of its first crest from the middle of jaw 1, rad, from 0 to a wave's length.
    #[must_use]
    pub fn crest(&self) -> f64 {
        let angle = libm::atan2(self.sin, self.cos);
        (if angle < 0.0 { angle + TAU } else { angle }) / self.order as f64
    }

    /// Whether it stands out of its uncertainty.
    #[must_use]
    pub fn is_seen(&self) -> bool {
        self.height() > self.uncertainty
    }
}

/// What one set of readings shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// Mean departure, m.
    pub mean: f64,
    /// The waves that the stations can tell, in rising order.
    pub waves: Vec<Wave>,
    /// Standard deviation of the readings about the sum of these, m; none if nothing is left over to tell it.
    pub scatter: Option<f64>,
    /// Highest less lowest reading, m.
    pub range: f64,
}

impl Readings<'_> {
    /// Fits the mean and the waves of [`orders`] that the stations see.
    ///
    /// Scatter `s^2 = sum(residual^2) / (m - p)` with m readings and p unknowns; variances `s^2 (X'X)^-1` (linear
    /// least squares: Draper and Smith, Applied Regression Analysis, from memory). An uncertainty is the larger of `t s`,
    /// t Student's, and `2 d / sqrt(12)`, d the resolution (JCGM 100:2008, F.2.2.1 and G, from memory), times the root
    /// of the term's share in `(X'X)^-1`.
    ///
    /// ```
    /// use holdround_mechanics::indicator::Readings;
    /// // Twelve stations on three lobes of 10 um, off the axis by 20 um toward jaw 1.
    /// let turn = core::f64::consts::TAU / 12.0;
    /// let read = |k: u8| 20e-6 * (turn * f64::from(k)).cos() + 10e-6 * (3.0 * turn * f64::from(k)).cos();
    /// let departures: Vec<_> = (0..12).map(|k| Some(read(k))).collect();
    /// let fit = Readings { departures: &departures, start: 0.0, jaws: 3, resolution: 1e-6 }.fit()?;
    /// assert!((fit.wave(1).unwrap().height() - 20e-6).abs() < 1e-12);
    /// assert!((fit.wave(3).unwrap().height() - 10e-6).abs() < 1e-12);
    /// # Ok::<(), holdround_mechanics::indicator::IndicatorError>(())
    /// ```
    ///
    /// # Errors
    /// [`IndicatorError`] when there are too few readings, or those that are missing leave too wide a gap.
    pub fn fit(&self) -> Result<Fit, IndicatorError> {
        let stations = self.departures.len();
        if stations < STATIONS[0] || stations > STATIONS[1] {
            return Err(IndicatorError::Stations(stations));
        }
        let read: Vec<(f64, f64)> = (self.departures.iter().enumerate())
            .filter_map(|(at, departure)| departure.map(|y| (self.angle(at), y)))
            .collect();
        let sound = self.start.is_finite() && self.resolution.is_finite() && self.resolution >= 0.0;
        if !sound || !read.iter().all(|(_, y)| y.is_finite()) {
            return Err(IndicatorError::NotANumber);
        }
        // Each unknown as the order and the quarter turns of its wave; the mean is of order 0.
        let mut unknowns = alloc::vec![(0, 0.0)];
        for order in orders(self.jaws) {
            match sight(stations, order, self.start) {
                Sight::Whole => unknowns.extend([(order, 0.0), (order, 1.0)]),
                Sight::AtJaws => unknowns.push((order, 0.0)),
                Sight::Hidden | Sight::LooksLike(_) => {}
            }
        }
        if read.len() < unknowns.len() {
            return Err(IndicatorError::TooFew { given: read.len(), needed: unknowns.len() });
        }
        self.solve(&read, &unknowns)
    }

    /// Angle of a station from the middle of jaw 1, rad.
    #[must_use]
    pub fn angle(&self, at: usize) -> f64 {
        self.start + TAU * at as f64 / self.departures.len() as f64
    }

    fn solve(&self, read: &[(f64, f64)], unknowns: &[(usize, f64)]) -> Result<Fit, IndicatorError> {
        let count = unknowns.len();
        let column = |k: usize, angle: f64| {
            let (order, quarter) = unknowns[k];
            libm::cos(order as f64 * angle - quarter * FRAC_PI_2)
        };
        let rows: Vec<Vec<f64>> =
            read.iter().map(|(angle, _)| (0..count).map(|k| column(k, *angle)).collect()).collect();
        let product = |i: usize, j: usize| rows.iter().map(|row| row[i] * row[j]).sum::<f64>();
        let mut inverse: Vec<Vec<f64>> = (0..count).map(|i| (0..count).map(|j| product(i, j)).collect()).collect();
        let squares: Vec<f64> = (0..count).map(|k| inverse[k][k]).collect();
        invert(&mut inverse);
        // A pivot that is nought leaves no number here.
        if !(0..count).all(|k| (0.0..=MOST_INFLATION).contains(&(inverse[k][k] * squares[k]))) {
            return Err(IndicatorError::Gap);
        }
        let right: Vec<f64> = (0..count).map(|k| rows.iter().zip(read).map(|(row, (_, y))| row[k] * y).sum()).collect();
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        let solution: Vec<f64> = inverse.iter().map(|row| dot(row, &right)).collect();
        let left = rows.iter().zip(read).map(|(row, (_, y))| {
            let off = y - dot(row, &solution);
            off * off
        });
        let free = read.len() - unknowns.len();
        let scatter = (free > 0).then(|| crate::sqrt(left.sum::<f64>() / free as f64));
        let told = 2.0 * self.resolution / crate::sqrt(12.0);
        let one = scatter.map_or(told, |s| told.max(two_sided_quantile(CONFIDENCE, free) * s));
        let mut waves: Vec<Wave> = Vec::new();
        for (k, (order, quarter)) in unknowns.iter().enumerate().skip(1) {
            if *quarter > 0.0 {
                continue;
            }
            let whole = unknowns.get(k + 1).is_some_and(|next| next.0 == *order);
            let (cos, sin) = (solution[k], if whole { solution[k + 1] } else { 0.0 });
            let [cc, cs, ss] = if whole {
                [inverse[k][k], inverse[k][k + 1], inverse[k + 1][k + 1]]
            } else {
                [inverse[k][k], 0.0, 0.0]
            };
            let square = cos * cos + sin * sin;
            // In the direction of the wave; of one that is nought, the wider of the two.
            let spread = if square > 0.0 {
                (cos * cos * cc + 2.0 * cos * sin * cs + sin * sin * ss) / square
            } else {
                cc.max(ss)
            };
            waves.push(Wave { order: *order, cos, sin, uncertainty: one * crate::sqrt(spread) });
        }
        let (low, high) =
            read.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), (_, y)| (low.min(*y), high.max(*y)));
        Ok(Fit { mean: solution[0], waves, scatter, range: high - low })
    }
}

/// Puts the inverse of a symmetric positive definite matrix in its place (Gauss and Jordan).
#[inline(never)]
fn invert(matrix: &mut [Vec<f64>]) {
    for k in 0..matrix.len() {
        let mut row = matrix[k].clone();
        let pivot = 1.0 / row[k];
        row[k] = 1.0;
        row.iter_mut().for_each(|value| *value *= pivot);
        for (_, other) in matrix.iter_mut().enumerate().filter(|(i, _)| *i != k) {
            let factor = core::mem::replace(&mut other[k], 0.0);
            other.iter_mut().zip(&row).for_each(|(value, above)| *value -= factor * above);
        }
        matrix[k] = row;
    }
}

impl Fit {
    /// The wave of this order, if the stations can tell it.
    #[must_use]
    pub fn wave(&self, order: usize) -> Option<&Wave> {
        self.waves.iter().find(|wave| wave.order == order)
    }
}

#[cfg(test)]
#[path = "tests.rs"]
mod tests;
