//! Pressure of equal jaws as a Fourier series.

use core::f64::consts::PI;

use libm::sin;

use super::annulus::{Annulus, Edge, RingError};

/// Narrower arcs, down to a line contact, are taken as this half-angle, in
/// radians: under a true line load the elastic displacement is unbounded.
pub const NARROWEST_HALF_ANGLE: f64 = 1e-3;

/// Equal jaws, each with a uniform pressure over an arc centred on the jaw;
/// the first is at angle zero. On the outside they press inward, in the bore outward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JawLoad {
    /// The surface gripped.
    pub edge: Edge,
    /// Number of jaws, 2 to 6.
    pub jaws: u32,
    /// Half the arc of one jaw, rad, from 0 to pi over the number of jaws.
    pub half_angle: f64,
    /// Resultant of one jaw's pressure along that jaw's own axis, N. The integral of
    /// the pressure over the arc is larger by `half_angle / sin(half_angle)`.
    pub force_per_jaw: f64,
    /// Length of part under load, along its axis, m.
    pub length: f64,
}

impl JawLoad {
    /// Mean pressure under a jaw on a surface of this `radius` (m), Pa:
    /// `F / (2 R L sin(half_angle))`.
    ///
    /// ```
    /// use holdround_mechanics::ring::{Edge, JawLoad};
    /// let load = JawLoad {
    ///     edge: Edge::Outside, jaws: 3, half_angle: 0.5, force_per_jaw: 10e3, length: 0.040,
    /// };
    /// let p = load.pressure(0.050).unwrap();
    /// assert!((p - 10e3 / (2.0 * 0.050 * 0.040 * 0.479_425_538_604_203)).abs() < 1.0);
    /// ```
    ///
    /// # Errors
    /// A jaw count, arc, force or length out of range, or a radius that is not positive.
    pub fn pressure(&self, radius: f64) -> Result<f64, RingError> {
        self.check()?;
        if !(radius > 0.0 && radius.is_finite()) {
            return Err(RingError::Radii);
        }
        let pressure = self.force_per_jaw / (2.0 * radius * self.length * sin(self.arc()));
        if pressure.is_finite() { Ok(pressure) } else { Err(RingError::NotFinite) }
    }

    pub(crate) fn check_on(&self, ring: &Annulus) -> Result<(), RingError> {
        ring.check()?;
        if self.edge == Edge::Bore && ring.is_solid() {
            return Err(RingError::NoBore);
        }
        self.check()
    }

    fn check(&self) -> Result<(), RingError> {
        if ![self.half_angle, self.force_per_jaw, self.length].iter().all(|v| v.is_finite()) {
            return Err(RingError::NotFinite);
        }
        if !(2..=6).contains(&self.jaws) {
            return Err(RingError::Jaws);
        }
        // A full wrap typed in rounded degrees may exceed its limit by the rounding.
        if self.half_angle < 0.0 || self.half_angle > PI / f64::from(self.jaws) * (1.0 + 1e-9) {
            return Err(RingError::Arc);
        }
        if self.force_per_jaw < 0.0 || self.length <= 0.0 {
            return Err(RingError::Load);
        }
        Ok(())
    }

    /// The half-angle reckoned with, rad.
    pub(crate) fn arc(&self) -> f64 {
        self.half_angle.max(NARROWEST_HALF_ANGLE)
    }

    /// Sign of the push: -1 inward on the outside, +1 outward in the bore.
    pub(crate) fn direction(&self) -> f64 {
        match self.edge {
            Edge::Outside => -1.0,
            Edge::Bore => 1.0,
        }
    }
}

/// Fourier series of the jaws' pressure; only orders 0, J, 2J, ... are present.
pub(crate) struct PressureSeries {
    pub(crate) lobes: f64,
    pub(crate) half_angle: f64,
    /// Amplitude that point loads of the same force would have in every order, Pa.
    pub(crate) point: f64,
    /// Mean around the circle, Pa.
    pub(crate) mean: f64,
}

impl PressureSeries {
    pub(crate) fn new(load: &JawLoad, pressure: f64) -> Self {
        let (lobes, half_angle) = (f64::from(load.jaws), load.arc());
        Self {
            lobes,
            half_angle,
            point: pressure * 2.0 * lobes * sin(half_angle) / PI,
            mean: pressure * lobes * half_angle / PI,
        }
    }

    /// Amplitude at order `m`: `(2 p J / pi) sin(m beta) / m`.
    pub(crate) fn amplitude(&self, m: f64) -> f64 {
        self.point * sin(m * self.half_angle) / (m * sin(self.half_angle))
    }

    /// What the amplitude cannot exceed at order `m` or any beyond.
    pub(crate) fn envelope(&self, m: f64) -> f64 {
        self.point * (1.0 / (m * sin(self.half_angle))).min(1.0)
    }
}
