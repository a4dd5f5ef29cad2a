//! Grip at rest from readings of a grip gauge: a straight line with its scatter.

use alloc::vec::Vec;

use super::error::{GripError, Input, between, not_negative, positive};
use super::line::Line;

/// One reading of a grip gauge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// Actuating pressure, Pa.
    pub pressure: f64,
    /// Total grip read, N.
    pub grip: f64,
}

/// Least-squares line of grip against pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GripLine {
    line: Line,
    lowest: f64,
    highest: f64,
}

/// How far a further reading may lie from the line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scatter {
    /// Standard error of one further reading, N.
    pub standard_error: f64,
    /// Half the width of the prediction interval at the confidence asked for, N.
    pub half_width: f64,
}

/// Grip predicted from the line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prediction {
    /// Expected total grip, N.
    pub grip: f64,
    /// Scatter about it; `None` with two readings, which a line always fits.
    pub scatter: Option<Scatter>,
}

impl GripLine {
    /// Fits the line `F = a + b p` to at least two readings at different pressures.
    ///
    /// ```
    /// use holdround_mechanics::grip::{GripLine, Reading};
    /// let readings = [(1e6, 21e3), (2e6, 40e3), (3e6, 62e3)].map(|(pressure, grip)| Reading { pressure, grip });
    /// let line = GripLine::fit(&readings)?;
    /// let middle = line.predict(2e6, 0.0, 0.95)?;
    /// assert!((middle.grip - 41e3).abs() < 1.0 && middle.scatter.is_some());
    /// # Ok::<(), holdround_mechanics::grip::GripError>(())
    /// ```
    ///
    /// # Errors
    /// [`GripError`] when there are too few readings, all at one pressure, none rising, or a
    /// reading is not a number of its kind.
    pub fn fit(readings: &[Reading]) -> Result<Self, GripError> {
        let count = readings.len();
        if count < 2 {
            return Err(GripError::TooFewReadings { given: count });
        }
        let (mut lowest, mut highest) = (f64::INFINITY, 0.0_f64);
        for reading in readings {
            let pressure = positive(Input::Pressure, reading.pressure)?;
            lowest = lowest.min(pressure);
            highest = highest.max(pressure);
            not_negative(Input::Grip, reading.grip)?;
        }
        let points: Vec<[f64; 2]> = readings.iter().map(|reading| [reading.pressure, reading.grip]).collect();
        let line = Line::through(&points).filter(|_| lowest < highest).ok_or(GripError::OnePressureOnly)?;
        if line.slope <= 0.0 {
            return Err(GripError::GripDoesNotRise { slope: line.slope });
        }
        Ok(Self { line, lowest, highest })
    }

    /// Rise of grip with pressure, N/Pa.
    #[must_use]
    pub const fn slope(&self) -> f64 {
        self.line.slope
    }

    /// Grip the line gives at no pressure, N; below zero, it tells the pressure lost to friction.
    #[must_use]
    pub fn intercept(&self) -> f64 {
        self.line.at(0.0)
    }

    /// Lowest and highest pressure of the readings, Pa.
    #[must_use]
    pub const fn measured_range(&self) -> (f64, f64) {
        (self.lowest, self.highest)
    }

    /// Standard deviation of the readings about the line, N; `None` with two readings.
    #[must_use]
    pub fn residual_deviation(&self) -> Option<f64> {
        self.line.deviation()
    }

    /// Grip at a pressure (Pa) no more than `margin` (Pa) outside the readings, with the
    /// prediction interval for one further reading at the given confidence in (0, 1):
    /// `t s sqrt(1 + 1/n + (p - mean)^2 / Spp)` (S. M. Ross, Introduction to Probability and
    /// Statistics for Engineers and Scientists, equation 9.4.6).
    ///
    /// # Errors
    /// [`GripError::OutsideReadings`] too far from the readings, [`GripError::NoGrip`] where the
    /// line gives none, [`GripError::OutOfRange`] for an input out of its range.
    pub fn predict(&self, pressure: f64, margin: f64, confidence: f64) -> Result<Prediction, GripError> {
        let pressure = positive(Input::Pressure, pressure)?;
        let margin = not_negative(Input::Margin, margin)?;
        let confidence = between(Input::Confidence, confidence, f64::EPSILON, 1.0 - f64::EPSILON)?;
        let (least, greatest) = (self.lowest - margin, self.highest + margin);
        if pressure < least || pressure > greatest {
            return Err(GripError::OutsideReadings { pressure, least, greatest });
        }
        let grip = self.line.at(pressure);
        if grip <= 0.0 {
            return Err(GripError::NoGrip { pressure });
        }
        let scatter = self.line.further(pressure).map(|standard_error| {
            let half_width = self.line.student(confidence) * standard_error;
            Scatter { standard_error, half_width }
        });
        Ok(Prediction { grip, scatter })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn readings(pairs: &[(f64, f64)]) -> Vec<Reading> {
        pairs.iter().map(|&(pressure, grip)| Reading { pressure, grip }).collect()
    }

    /// F. J. Anscombe, Graphs in Statistical Analysis, The American Statistician 27 (1973), first
    /// set: slope 0.5001, intercept 3.0001, residual standard error 1.237 on 9 degrees of freedom
    /// (read in a university course's printed regression summary).
    #[test]
    fn line_matches_a_published_regression() {
        let x = [10.0, 8.0, 13.0, 9.0, 11.0, 14.0, 6.0, 4.0, 12.0, 7.0, 5.0];
        let y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];
        let pairs: Vec<_> = x.into_iter().zip(y).collect();
        let line = GripLine::fit(&readings(&pairs)).unwrap();
        assert!((line.slope() - 0.5001).abs() < 5e-5, "slope to four decimals: {}", line.slope());
        assert!((line.intercept() - 3.0001).abs() < 5e-5, "intercept: {}", line.intercept());
        let deviation = line.residual_deviation().unwrap();
        assert!((deviation - 1.237).abs() < 5e-4, "residual deviation: {deviation}");
        // At the mean the spread is 1 + 1/11; t for 9 degrees at 95 % is 2.262 (printed table).
        let scatter = line.predict(9.0, 0.0, 0.95).unwrap().scatter.unwrap();
        let expected = 2.262 * 1.237 * crate::sqrt(12.0 / 11.0);
        assert!((scatter.half_width / expected - 1.0).abs() < 1e-3, "printed values carry three digits");
    }

    #[test]
    fn two_readings_give_a_line_without_scatter() {
        let line = GripLine::fit(&readings(&[(1e6, 18e3), (3e6, 58e3)])).unwrap();
        let between = line.predict(2e6, 0.0, 0.95).unwrap();
        assert!((between.grip - 38e3).abs() < 1e-6, "half way, to rounding");
        assert_eq!(between.scatter, None, "no scatter can be told");
    }

    #[test]
    fn prediction_stops_at_the_stated_margin() {
        let line = GripLine::fit(&readings(&[(1e6, 18e3), (3e6, 58e3)])).unwrap();
        assert!(line.predict(3.2e6, 0.2e6, 0.95).is_ok(), "at the margin");
        assert_eq!(
            line.predict(3.3e6, 0.2e6, 0.95),
            Err(GripError::OutsideReadings { pressure: 3.3e6, least: 0.8e6, greatest: 3.2e6 }),
            "beyond the margin"
        );
        let late = GripLine::fit(&readings(&[(1e6, 1e3), (2e6, 50e3)])).unwrap();
        assert_eq!(
            late.predict(0.9e6, 0.5e6, 0.95),
            Err(GripError::NoGrip { pressure: 0.9e6 }),
            "a line below zero is no grip"
        );
    }

    #[test]
    fn readings_that_make_no_line_are_refused() {
        assert_eq!(GripLine::fit(&readings(&[(1e6, 1e3)])), Err(GripError::TooFewReadings { given: 1 }), "one reading");
        assert_eq!(
            GripLine::fit(&readings(&[(1e6, 1e3), (1e6, 2e3)])),
            Err(GripError::OnePressureOnly),
            "one pressure"
        );
        assert!(
            matches!(GripLine::fit(&readings(&[(1e6, 2e3), (2e6, 1e3)])), Err(GripError::GripDoesNotRise { .. })),
            "falling"
        );
        assert!(
            matches!(
                GripLine::fit(&readings(&[(f64::NAN, 2e3), (2e6, 1e3)])),
                Err(GripError::OutOfRange { input: Input::Pressure, .. })
            ),
            "not a number"
        );
    }

    proptest! {
        #[test]
        fn a_true_line_is_found_and_order_does_not_matter(
            slope in 1e-3..0.1_f64, start in 0.0..1e4_f64, pressures in prop::collection::vec(1e5..7e6_f64, 3..9)
        ) {
            let mut made: Vec<_> =
                pressures.iter().map(|&p| Reading { pressure: p, grip: start + slope * p }).collect();
            let spread = pressures.iter().fold(0.0, |m: f64, p| m.max((p - pressures[0]).abs()));
            prop_assume!(spread > 1e4);
            let line = GripLine::fit(&made).unwrap();
            prop_assert!((line.slope() / slope - 1.0).abs() < 1e-8, "slope found");
            made.reverse();
            let turned = GripLine::fit(&made).unwrap();
            prop_assert!((turned.slope() / line.slope() - 1.0).abs() < 1e-9, "order does not matter");
            let (least, greatest) = line.measured_range();
            let at_end = line.predict(greatest, 0.0, 0.95).unwrap().scatter.unwrap();
            let middle = line.predict(0.5 * (least + greatest), 0.0, 0.5).unwrap().scatter.unwrap();
            prop_assert!(at_end.half_width.is_finite() && middle.half_width.is_finite(), "finite scatter");
        }
    }
}
