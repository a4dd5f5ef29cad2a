//! Grip at speed: the jaws' centrifugal force, what of it reaches the part, and the speed it allows.
//!
//! Formulae of VDI 3106:2004, as quoted in secondary literature (the standard itself was not read):
//! `Fsp = Fsp0 -/+ Fc`, `Fc = Mc w^2`, `Fsp0 = Ssp (Sz Fspz +/- Fc)`. A share `k` of the
//! centrifugal force that reaches the part extends them; `k = 1` is the standard's own case.

use super::Side;
use super::error::{GripError, Input, between, fraction, not_negative, positive};

/// A lump that turns with the chuck: a jaw, nut or screw.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RotatingMass {
    /// Mass, kg.
    pub mass: f64,
    /// Radius of its centroid along the jaw's axis, m.
    pub radius: f64,
}

/// Centrifugal moment `Mc = sum(m r)`, kg m, of all lumps of all jaws.
///
/// ```
/// use holdround_mechanics::grip::{RotatingMass, centrifugal_moment};
/// let jaw = RotatingMass { mass: 1.2, radius: 0.075 };
/// assert!((centrifugal_moment(&[jaw; 3])? - 0.27).abs() < 1e-15);
/// # Ok::<(), holdround_mechanics::grip::GripError>(())
/// ```
///
/// # Errors
/// [`GripError::OutOfRange`] when a mass or radius is negative or not a number.
pub fn centrifugal_moment(masses: &[RotatingMass]) -> Result<f64, GripError> {
    masses.iter().try_fold(0.0, |sum, lump| {
        Ok(sum + not_negative(Input::Mass, lump.mass)? * not_negative(Input::Radius, lump.radius)?)
    })
}

/// Range of the share of the centrifugal force that reaches the part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    low: f64,
    high: f64,
}

impl Share {
    /// Nothing known: from none to all.
    pub const UNKNOWN: Self = Self { low: 0.0, high: 1.0 };
    /// All of it, the case of VDI 3106.
    pub const ALL: Self = Self { low: 1.0, high: 1.0 };

    /// A range within 0 to 1.
    ///
    /// # Errors
    /// [`GripError::OutOfRange`] when the ends are out of order or outside 0 to 1.
    pub fn new(low: f64, high: f64) -> Result<Self, GripError> {
        let high = between(Input::Share, high, 0.0, 1.0)?;
        Ok(Self { low: between(Input::Share, low, 0.0, high)?, high })
    }

    /// Share when the wedge is locked by friction, `Kw / (Kw + Kc)`: part and chuck mechanism are
    /// springs in series between fixed ends (derived from equilibrium of the jaw between them).
    /// Stiffnesses in N/m.
    ///
    /// # Errors
    /// [`GripError::OutOfRange`] when a stiffness is not positive.
    pub fn of_locked_wedge(part_stiffness: f64, chuck_stiffness: f64) -> Result<f64, GripError> {
        let part = positive(Input::Stiffness, part_stiffness)?;
        let chuck = positive(Input::Stiffness, chuck_stiffness)?;
        Ok(1.0 / (1.0 + chuck / part))
    }

    /// Lower end.
    #[must_use]
    pub const fn low(&self) -> f64 {
        self.low
    }

    /// Upper end.
    #[must_use]
    pub const fn high(&self) -> f64 {
        self.high
    }
}

/// Range of total grip, N: slip is judged at `lowest`, distortion at `highest`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GripRange {
    /// Least grip; 0 when it is lost.
    pub lowest: f64,
    /// Greatest grip.
    pub highest: f64,
}

/// What the cut asks of the grip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Demand {
    /// Grip `Fspz` that just holds the part against the cut, N.
    pub cutting_grip: f64,
    /// Safety factor `Sz` on the cut, at least 1 (VDI 3106: at least 1.5).
    pub cutting_factor: f64,
    /// Safety factor `Ssp` on the grip at rest, at least 1 (VDI 3106: at least 1.5).
    pub rest_factor: f64,
}

impl Demand {
    /// `Sz Fspz`, N.
    fn needed_at_speed(&self) -> Result<f64, GripError> {
        let factor = between(Input::SafetyFactor, self.cutting_factor, 1.0, GREATEST_FACTOR)?;
        Ok(factor * positive(Input::Grip, self.cutting_grip)?)
    }

    fn rest_factor(&self) -> Result<f64, GripError> {
        between(Input::SafetyFactor, self.rest_factor, 1.0, GREATEST_FACTOR)
    }
}

/// A grip at rest whose jaws turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpinningGrip {
    rest_grip: f64,
    side: Side,
    moment: f64,
    share: Share,
}

impl SpinningGrip {
    /// Total grip at rest (N), side, centrifugal moment of all jaws (kg m) and the share of it
    /// that reaches the part.
    ///
    /// ```
    /// use holdround_mechanics::grip::{Share, Side, SpinningGrip};
    /// let grip = SpinningGrip::new(60e3, Side::Outside, 0.27, Share::ALL)?;
    /// let speed = 3000.0 * core::f64::consts::PI / 30.0;
    /// assert!((grip.at(speed)?.lowest - 33_352.07).abs() < 0.01);
    /// # Ok::<(), holdround_mechanics::grip::GripError>(())
    /// ```
    ///
    /// # Errors
    /// [`GripError::OutOfRange`] when the grip is not positive or the moment negative.
    pub fn new(rest_grip: f64, side: Side, moment: f64, share: Share) -> Result<Self, GripError> {
        let rest_grip = positive(Input::Grip, rest_grip)?;
        let moment = not_negative(Input::Mass, moment)?;
        Ok(Self { rest_grip, side, moment, share })
    }

    /// Centrifugal force of all jaws `Fc = Mc w^2`, N, at a speed in rad/s.
    ///
    /// # Errors
    /// [`GripError::OutOfRange`] when the speed is negative or not a number.
    pub fn centrifugal_force(&self, speed: f64) -> Result<f64, GripError> {
        let speed = between(Input::Speed, speed, 0.0, GREATEST_SPEED)?;
        Ok(self.moment * speed * speed)
    }

    /// Grip at a speed in rad/s, over the range of the share: `F0 - k Fc` for an outside grip,
    /// `F0 + k Fc` for an inside grip.
    ///
    /// # Errors
    /// [`GripError::OutOfRange`] when the speed is negative or not a number.
    pub fn at(&self, speed: f64) -> Result<GripRange, GripError> {
        let force = self.centrifugal_force(speed)?;
        let (least, greatest) = (self.share.low * force, self.share.high * force);
        Ok(match self.side {
            Side::Outside => {
                GripRange { lowest: (self.rest_grip - greatest).max(0.0), highest: (self.rest_grip - least).max(0.0) }
            }
            Side::Inside => GripRange { lowest: self.rest_grip + least, highest: self.rest_grip + greatest },
        })
    }

    /// Speed, rad/s, at which the least outside grip has fallen to a fraction in (0, 1] of its
    /// value at rest; `None` if it never does. A third is the fraction that guide speeds of lathe
    /// chucks leave (DIN 6386 and EN 1550, as quoted in operating manuals of chucks and lathes).
    ///
    /// # Errors
    /// [`GripError::OutOfRange`] when the fraction is not in (0, 1].
    pub fn speed_leaving(&self, fraction_left: f64) -> Result<Option<f64>, GripError> {
        let left = fraction(Input::Fraction, fraction_left)?;
        Ok(self.speed_losing((1.0 - left) * self.rest_grip))
    }

    /// Speed, rad/s, at which the least outside grip is gone; `None` if it never is.
    #[must_use]
    pub fn speed_of_lost_grip(&self) -> Option<f64> {
        self.speed_losing(self.rest_grip)
    }

    /// Total grip at rest, N, that the demand asks for at a speed in rad/s:
    /// `Ssp (Sz Fspz + k Fc)` for an outside grip with the greatest share, and
    /// `Ssp (Sz Fspz - k Fc)` for an inside grip with the least, never below zero.
    ///
    /// # Errors
    /// [`GripError::OutOfRange`] when an input is out of its range.
    pub fn needed_rest_grip(&self, demand: &Demand, speed: f64) -> Result<f64, GripError> {
        let force = self.centrifugal_force(speed)?;
        let at_speed = demand.needed_at_speed()?;
        let at_rest = match self.side {
            Side::Outside => at_speed + self.share.high * force,
            Side::Inside => (at_speed - self.share.low * force).max(0.0),
        };
        Ok(demand.rest_factor()? * at_rest)
    }

    /// Permissible speed, rad/s: `sqrt((F0 / Ssp - Sz Fspz) / (k Mc))` for an outside grip, never
    /// above the plate's speed, which alone limits an inside grip.
    ///
    /// # Errors
    /// [`GripError::RestGripTooSmall`] when the grip does not hold the cut even at standstill,
    /// [`GripError::OutOfRange`] when an input is out of its range.
    pub fn permissible_speed(&self, demand: &Demand, plate_speed: f64) -> Result<f64, GripError> {
        let plate_speed = between(Input::Speed, plate_speed, f64::MIN_POSITIVE, GREATEST_SPEED)?;
        let spare = self.rest_grip / demand.rest_factor()? - demand.needed_at_speed()?;
        if spare < 0.0 {
            let needed = demand.rest_factor()? * demand.needed_at_speed()?;
            return Err(GripError::RestGripTooSmall { needed, rest_grip: self.rest_grip });
        }
        Ok(self.speed_losing(spare).map_or(plate_speed, |speed| speed.min(plate_speed)))
    }

    /// Speed at which the least outside grip has fallen by `loss`.
    fn speed_losing(&self, loss: f64) -> Option<f64> {
        let reaching = self.share.high * self.moment;
        let speed = crate::sqrt(loss / reaching);
        (self.side == Side::Outside && reaching > 0.0 && speed.is_finite()).then_some(speed)
    }
}

/// A safety factor above this is a slip of the hand.
const GREATEST_FACTOR: f64 = 100.0;

/// Above any lathe spindle by far (about 1e6 rev/min); keeps squares of nonsense out, rad/s.
const GREATEST_SPEED: f64 = 1e5;

#[cfg(test)]
mod tests;
