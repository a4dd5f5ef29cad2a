//! Grip against speed from readings of a grip gauge that turns: what the spin takes or gives, with its scatter.

use alloc::vec::Vec;

use super::Side;
use super::error::{GripError, Input, between, not_negative};
use super::line::Line;

/// One reading of a grip gauge that turns.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpinReading {
    /// Speed, rad/s.
    pub speed: f64,
    /// Total grip read, N.
    pub grip: f64,
}

/// Least-squares line of grip against the square of speed, all at one pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpinLine {
    line: Line,
    away: f64,
}

/// A coefficient with its interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpinCoefficient {
    /// Grip that the spin takes from an outside grip or adds to an inside grip, over the square of speed, N s2 = kg m.
    pub value: f64,
    /// Half the width of its interval at the confidence asked for; none with two readings.
    pub half_width: Option<f64>,
}

impl SpinLine {
    /// Fits `F = F0 - c w^2` for an outside grip, `F = F0 + c w^2` for an inside grip: linear in the square of speed, as
    /// the spin force is (VDI 3106:2004 as quoted in secondary literature). Two readings at least, at different speeds.
    ///
    /// ```
    /// use holdround_mechanics::grip::{Side, SpinLine, SpinReading};
    /// let readings = [(0.0, 60e3), (200.0, 52e3), (300.0, 42.5e3)].map(|(speed, grip)| SpinReading { speed, grip });
    /// let line = SpinLine::fit(&readings, Side::Outside)?;
    /// let coefficient = line.coefficient(0.95)?;
    /// assert!((coefficient.value - 0.1947).abs() < 1e-3 && coefficient.half_width.is_some());
    /// # Ok::<(), holdround_mechanics::grip::GripError>(())
    /// ```
    ///
    /// # Errors
    /// [`GripError`] when there are too few readings, all at one speed, or a reading is not a number of its kind.
    pub fn fit(readings: &[SpinReading], side: Side) -> Result<Self, GripError> {
        if readings.len() < 2 {
            return Err(GripError::TooFewReadings { given: readings.len() });
        }
        let mut points = Vec::new();
        for reading in readings {
            let speed = not_negative(Input::Speed, reading.speed)?;
            points.push([speed * speed, not_negative(Input::Grip, reading.grip)?]);
        }
        let away = if side == Side::Outside { -1.0 } else { 1.0 };
        let line = Line::through(&points).ok_or(GripError::OneSpeedOnly)?;
        Ok(Self { line, away })
    }

    /// Grip of the line at standstill, N.
    #[must_use]
    pub fn at_rest(&self) -> f64 {
        self.line.at(0.0)
    }

    /// Standard deviation of the readings about the line, N; `None` with two readings.
    #[must_use]
    pub fn residual_deviation(&self) -> Option<f64> {
        self.line.deviation()
    }

    /// The spin coefficient, with the interval `t s / sqrt(sum (x - mean)^2)`, x the square of speed (S. M. Ross,
    /// Introduction to Probability and Statistics for Engineers and Scientists, section 9.4, from memory).
    ///
    /// # Errors
    /// [`GripError::OutOfRange`] for a confidence outside (0, 1).
    pub fn coefficient(&self, confidence: f64) -> Result<SpinCoefficient, GripError> {
        let confidence = between(Input::Confidence, confidence, f64::EPSILON, 1.0 - f64::EPSILON)?;
        let half_width = self.line.slope_error().map(|error| self.line.student(confidence) * error);
        Ok(SpinCoefficient { value: self.away * self.line.slope, half_width })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn readings_that_make_no_line_are_refused() {
        let read = |speed, grip| SpinReading { speed, grip };
        let fit = |readings: &[SpinReading]| SpinLine::fit(readings, Side::Outside);
        assert_eq!(fit(&[read(0.0, 1.0)]), Err(GripError::TooFewReadings { given: 1 }), "one reading");
        assert_eq!(fit(&[read(9.0, 1.0), read(9.0, 2.0)]), Err(GripError::OneSpeedOnly), "one speed");
        assert!(fit(&[read(-1.0, 1.0), read(9.0, 2.0)]).is_err(), "a negative speed");
    }

    proptest! {
        #[test]
        fn a_true_coefficient_is_found_on_either_side(
            coefficient in 0.01..2.0_f64, rest in 1e4..2e5_f64, speeds in prop::collection::vec(0.0..400.0_f64, 3..9)
        ) {
            let spread = speeds.iter().fold(0.0, |most: f64, speed| most.max((speed - speeds[0]).abs()));
            prop_assume!(spread > 20.0);
            for (side, sign) in [(Side::Outside, -1.0), (Side::Inside, 1.0)] {
                let grips = speeds.iter().map(|w| SpinReading { speed: *w, grip: (rest + sign * coefficient * w * w).max(0.0) });
                let readings: Vec<_> = grips.collect();
                prop_assume!(readings.iter().all(|reading| reading.grip > 0.0));
                let line = SpinLine::fit(&readings, side).unwrap();
                let found = line.coefficient(0.95).unwrap();
                prop_assert!((found.value / coefficient - 1.0).abs() < 1e-6, "coefficient {}", found.value);
                prop_assert!((line.at_rest() / rest - 1.0).abs() < 1e-6, "grip at rest {}", line.at_rest());
            }
        }
    }
}
