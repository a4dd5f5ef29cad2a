//! Radial departures at known angles.

use crate::sorting::sort;
use alloc::vec::Vec;
use core::f64::consts::PI;
use core::fmt;

use crate::text::Text;
use libm::{fmod, sincos};

/// Radial departures of a surface around the spindle axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    /// In order of angle.
    pub(crate) stations: Vec<Station>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Station {
    pub(crate) angle: f64,
    pub(crate) cos: f64,
    pub(crate) sin: f64,
    pub(crate) departure: f64,
}

/// Why a set of readings was refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoundnessError {
    /// Fewer than four readings: any three lie on a circle.
    TooFew,
    /// Angles and departures differ in number.
    Unpaired,
    /// A reading or angle is not finite, or a departure exceeds a kilometre.
    NotFinite,
    /// Two readings at the same angle.
    RepeatedAngle,
    /// Half the circle or more has no reading: the circle there is a guess.
    Gap,
}

impl From<&RoundnessError> for Text {
    fn from(error: &RoundnessError) -> Self {
        Self::Words(match error {
            RoundnessError::TooFew => "roundness needs at least four readings",
            RoundnessError::Unpaired => "angles and readings differ in number",
            RoundnessError::NotFinite => "a reading or angle is not a usable number",
            RoundnessError::RepeatedAngle => "two readings are at the same angle",
            RoundnessError::Gap => "half the circle or more has no reading",
        })
    }
}

impl fmt::Display for RoundnessError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for RoundnessError {}

const FEWEST: usize = 4;
const LARGEST_DEPARTURE: f64 = 1e3;
/// Angles closer than this are the same place, and opposite if this near to half a turn.
const SAME_ANGLE: f64 = 1e-6;

impl Profile {
    /// Departures (m) at equal angles, the first at angle zero.
    ///
    /// ```
    /// use holdround_mechanics::roundness::Profile;
    /// let lobed: Vec<f64> =
    ///     (0..360).map(|i| 10e-6 * (3.0 * f64::from(i).to_radians()).cos()).collect();
    /// let zone = Profile::equally_spaced(&lobed).unwrap().minimum_zone();
    /// assert!((zone.roundness() - 20e-6).abs() < 1e-15);
    /// ```
    ///
    /// # Errors
    /// Fewer than four readings, or one that is not finite.
    pub fn equally_spaced(departures: &[f64]) -> Result<Self, RoundnessError> {
        let step = 2.0 * PI / departures.len() as f64;
        Self::from_readings(departures.iter().enumerate().map(|(i, &d)| (step * i as f64, d)))
    }

    /// Departures (m) at given angles (rad), in any order.
    ///
    /// # Errors
    /// Fewer than four readings, unequal counts, a value not finite, two readings at one
    /// angle, or no reading in half the circle.
    pub fn at_angles(angles: &[f64], departures: &[f64]) -> Result<Self, RoundnessError> {
        if angles.len() != departures.len() {
            return Err(RoundnessError::Unpaired);
        }
        Self::from_readings(angles.iter().copied().zip(departures.iter().copied()))
    }

    fn from_readings(readings: impl Iterator<Item = (f64, f64)>) -> Result<Self, RoundnessError> {
        let mut stations = Vec::with_capacity(readings.size_hint().0);
        for (angle, departure) in readings {
            // A NaN fails both comparisons.
            if !(angle.is_finite() && departure.abs() <= LARGEST_DEPARTURE) {
                return Err(RoundnessError::NotFinite);
            }
            let turn = fmod(angle, 2.0 * PI);
            let angle = if turn < 0.0 { turn + 2.0 * PI } else { turn };
            let (sin, cos) = sincos(angle);
            stations.push(Station { angle, cos, sin, departure });
        }
        if stations.len() < FEWEST {
            return Err(RoundnessError::TooFew);
        }
        sort(&mut stations, |a, b| a.angle.total_cmp(&b.angle));
        let mut previous = stations[stations.len() - 1].angle - 2.0 * PI;
        for station in &stations {
            let gap = station.angle - previous;
            if gap < SAME_ANGLE {
                return Err(RoundnessError::RepeatedAngle);
            }
            if gap > PI - SAME_ANGLE {
                return Err(RoundnessError::Gap);
            }
            previous = station.angle;
        }
        Ok(Self { stations })
    }

    /// What an indicator shows in one turn of the spindle, m: eccentricity and form.
    #[must_use]
    pub fn total_indicator_reading(&self) -> f64 {
        span(self.stations.iter().map(|s| s.departure))
    }

    /// Range of the diameter as a micrometer finds it, m: blind to odd lobes. `None`
    /// unless every reading has another exactly opposite.
    #[must_use]
    pub fn two_point_range(&self) -> Option<f64> {
        if !self.stations.len().is_multiple_of(2) {
            return None;
        }
        let (first, second) = self.stations.split_at(self.stations.len() / 2);
        let pairs = || first.iter().zip(second);
        let opposite = pairs().all(|(a, b)| (b.angle - a.angle - PI).abs() < SAME_ANGLE);
        opposite.then(|| span(pairs().map(|(a, b)| a.departure + b.departure)))
    }
}

fn span(values: impl Iterator<Item = f64>) -> f64 {
    let (low, high) = values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| (low.min(v), high.max(v)));
    high - low
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn faults_are_named() {
        let equal = |d: &[f64]| Profile::equally_spaced(d).unwrap_err();
        assert_eq!(equal(&[]), RoundnessError::TooFew, "empty");
        assert_eq!(equal(&[0.0; 3]), RoundnessError::TooFew, "three");
        for bad in [f64::NAN, f64::INFINITY, -1e300] {
            assert_eq!(equal(&[0.0, 0.0, bad, 0.0]), RoundnessError::NotFinite, "{bad}");
        }
        let at = |a: &[f64]| Profile::at_angles(a, &[0.0; 4]).unwrap_err();
        assert_eq!(at(&[0.0, 1.0, 2.0]), RoundnessError::Unpaired, "three angles");
        assert_eq!(at(&[0.0, 1.0, 2.0, 3.0]), RoundnessError::Gap, "half circle empty");
        assert_eq!(at(&[0.0, 2.0, 4.0, 2.0]), RoundnessError::RepeatedAngle, "same angle");
        assert_eq!(at(&[0.0, 2.0, 4.0, 2.0 * PI]), RoundnessError::RepeatedAngle, "full turn");
        assert_eq!(at(&[0.0, 2.0, 4.0, f64::NAN]), RoundnessError::NotFinite, "NaN angle");
    }

    #[test]
    fn order_and_turns_of_the_angles_do_not_matter() {
        let sorted = Profile::at_angles(&[0.5, 2.0, 3.5, 5.0], &[1.0, 2.0, 3.0, 4.0]).unwrap();
        let wound = Profile::at_angles(&[3.5 - 2.0 * PI, 5.0, 0.5 + 4.0 * PI, 2.0], &[3.0, 4.0, 1.0, 2.0]).unwrap();
        for (a, b) in sorted.stations.iter().zip(&wound.stations) {
            assert_eq!(a.departure, b.departure, "same order");
            assert!((a.angle - b.angle).abs() < 1e-14, "same angle");
        }
    }
}
