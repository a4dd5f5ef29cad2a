//! Will it hold: limit analysis of a clamped part.
//!
//! The part is rigid; it is held by friction at contact points whose normal
//! forces stay as clamping left them. For a load `W` the hold factor is the
//! smallest multiple of `W` at which some rigid motion `v` costs friction no
//! more than the load supplies:
//!
//! `min over v, W.v = 1, of sum mu N_i |tangential velocity at i|`
//!
//! (upper-bound theorem of limit analysis: Drucker, Prager & Greenberg 1952;
//! for grasped bodies Goyal, Ruina & Papadopoulos 1991, from memory). The same
//! number is the largest multiple of `W` that friction forces within
//! `|t_i| <= mu N_i` can balance (lower-bound theorem). Both are computed; the
//! lower is what is called the factor.
//!
//! Not in the model: a load that changes the normal forces (a jaw pushed back,
//! the part wedged across the jaws), elastic unloading of a patch. The normal forces should balance among themselves, as those of a
//! clamped part do: see [`Clamped::imbalance`].
//!
//! ```
//! use holdround_mechanics::cutting::{CutLoad, ToolPosition, Wrench};
//! use holdround_mechanics::grip::Side;
//! use holdround_mechanics::hold::{
//!     Centre, Clamped, ContactPoint, Hold, HoldError, JawGrip, LateralSupport, Limit, Mode, Motion, Seat, WorstHold,
//!     Wrap,
//! };
//!
//! let grip = JawGrip {
//!     jaws: 3, half_angle: 0.3, radius: 0.05, length: 0.03,
//!     force: 20_000.0, side: Side::Outside, wrap: Wrap::Ignored,
//! };
//! let contacts: Vec<ContactPoint> = grip.contacts(5, 3)?;
//! let part = Clamped::new(&contacts, 0.1, None)?;
//! assert!(part.imbalance() < 1e-12, "three equal jaws push against each other");
//!
//! // mu F d / 2 = 100 N m
//! let torque = Wrench { force: [0.0; 3], moment: [0.0, 0.0, 50.0] };
//! let held = part.hold(&torque)?;
//! let Some(Limit { factor, motion, mode, .. }) = held.limit() else { unreachable!() };
//! assert!((factor - 2.0).abs() < 1e-6, "half the torque that slips");
//! assert!(held.limit().unwrap().gap() < 1e-6, "bracketed from both sides");
//! assert_eq!(*mode, Mode::Spin);
//!
//! // No motion costs less friction than the one found.
//! assert!((part.trial(&torque, motion).unwrap() - factor).abs() < 1e-5);
//! let skew = Motion { velocity: [1.0, 0.0, 0.0], ..*motion };
//! assert!(part.trial(&torque, &skew).unwrap() >= *factor);
//! assert_eq!(skew.velocity_at([0.0; 3]), [1.0, 0.0, 0.0]);
//! assert!((motion.power_of(&torque) - 50.0 * motion.rotation[2]).abs() < 1e-9);
//!
//! // A cut goes round: the worst place of the tool counts.
//! let tool = ToolPosition { radius: 0.05, z: 0.06 };
//! let cut = CutLoad { tool, radial: -400.0, tangential: -1000.0, axial: -300.0, couple: 0.0 };
//! let WorstHold { hold, .. } = part.worst(&cut.rotating(), 3)?;
//! let bare = hold.limit().unwrap().factor;
//! assert!(part.worst_unless_above(&cut.rotating(), 3, 0.1)?.is_none(), "clearly above 0.1");
//!
//! // A stop under the part, jaws that bear across, and a centre each help.
//! let seated = Clamped::new(&contacts, 0.1, Some(Seat { radius: 0.045, z: -0.03 }))?.supported(LateralSupport::Jaws);
//! assert!(seated.worst(&cut.rotating(), 3)?.hold.limit().unwrap().factor > bare);
//! let across = seated.allowed(&skew);
//! assert!(seated.trial(&torque, &across).is_some());
//! let centre = Centre { z: 0.1, thrust: 2000.0 };
//! let centred = seated.clone().centred(centre)?;
//! assert!(centre.bears_across() > 1000.0);
//! assert!(centred.across(&cut.wrench(0.0)) > 0.0);
//! assert_eq!(part.hold(&Wrench { force: [0.0; 3], moment: [0.0; 3] })?, Hold::NoLoad);
//! assert_eq!(part.centred(centre).err(), Some(HoldError::Centre), "a centre needs a seat to press on");
//! # Ok::<(), HoldError>(())
//! ```

mod centre;
mod interior;
mod jaws;
mod limit;
mod matrix;
mod motion;
mod worst;

pub use centre::Centre;
pub use jaws::{JawGrip, Wrap};
pub use motion::{Mode, Motion};
pub use worst::{SCAN_STEP, WorstHold};

use crate::cutting::{Wrench, cross};
use alloc::vec::Vec;
use core::fmt;

use crate::text::Text;
use limit::{Problem, Slip};

/// Positions beyond this, in m, are refused.
const FARTHEST: f64 = 1e3;

/// A point at which a jaw presses on the part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ContactPoint {
    /// Position in m, in chuck coordinates.
    pub position: [f64; 3],
    /// Direction of the jaw's normal force on the part; any length but zero.
    pub normal: [f64; 3],
    /// Normal force in N; not negative.
    pub normal_force: f64,
}

/// A ring-shaped face against which the part rests: it pushes the part out of
/// the chuck and cannot pull; its own friction is not counted.
///
/// Stands for [`Seat::POINTS`] points on the ring, the first on the first
/// jaw's axis. Their polygon lies inside the ring and outside one of 0.9914 the
/// radius, so tipping is judged a little on the safe side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seat {
    /// Radius of the ring in m; positive.
    pub radius: f64,
    /// Its position along the axis in m: minus the grip length where the part
    /// rests on the bottom of the bored step.
    pub z: f64,
}

impl Seat {
    /// Points that stand for the ring.
    pub const POINTS: usize = 24;
}

/// What resists a force across the axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum LateralSupport {
    /// Friction alone, at normal forces that stay as they are: the part may
    /// slide into a jaw and pay nothing for it. Always on the safe side, and
    /// far on it for narrow jaws: two of them hold nothing along their line.
    #[default]
    Friction,
    /// The jaws of a self-centring chuck: one presses more and another less,
    /// their sum stays, and the centre of the grip does not move across the
    /// axis. It does not cover a jaw that lifts off: with three or more equal
    /// jaws one does when the force across the axis reaches half the grip
    /// (derived independently: equal radial springs). Tipping is still left to
    /// friction alone.
    Jaws,
}

impl LateralSupport {
    /// The part of a force that friction must bear.
    fn borne_by_friction(self, [x, y, z]: [f64; 3]) -> [f64; 3] {
        match self {
            Self::Friction => [x, y, z],
            Self::Jaws => [0.0, 0.0, z],
        }
    }
}

/// Why a hold cannot be judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HoldError {
    /// The number of jaws must be 1 to 64.
    Jaws,
    /// The half-angle of a jaw must lie in `[0, pi / jaws]`.
    HalfAngle,
    /// The gripped radius must be positive and finite.
    Radius,
    /// The grip length must be positive and finite.
    Length,
    /// A grip or normal force must be finite; a normal force not negative.
    Force,
    /// Points along arc and length must each be 1 to 64.
    Points,
    /// A contact point's position is beyond 1000 m, or its normal nil or not finite.
    Contact,
    /// The friction coefficient must be finite and not negative.
    Friction,
    /// The seat's radius must be positive, and neither number beyond 1000 m.
    Seat,
    /// A centre needs a seat to press the part on, a positive thrust, and a place in front of the jaws within 1000 m.
    Centre,
    /// The load is not finite.
    Wrench,
    /// The solver found no bracket: take the part as not held.
    Unsettled,
}

impl From<&HoldError> for Text {
    fn from(error: &HoldError) -> Self {
        Self::Words(match error {
            HoldError::Jaws => "the number of jaws must be 1 to 64",
            HoldError::HalfAngle => "a jaw covers more than its share of the circle",
            HoldError::Radius => "the gripped radius is out of range",
            HoldError::Length => "the grip length is out of range",
            HoldError::Force => "a force is out of range",
            HoldError::Points => "the contact points must be 1 to 64 each way",
            HoldError::Contact => "a contact point is out of range",
            HoldError::Friction => "the friction is out of range",
            HoldError::Seat => "the seat is out of range",
            HoldError::Centre => "a centre needs a seat to press the part on",
            HoldError::Wrench => "the load is out of range",
            HoldError::Unsettled => "the solver found no bracket; take the part as not held",
        })
    }
}

impl fmt::Display for HoldError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for HoldError {}

/// How a load is held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Hold {
    /// There is no friction to hold with: no grip left, or no friction.
    NoGrip,
    /// There is no load, or less than 1e-12 of the friction.
    NoLoad,
    /// The seat bears the load: friction would give way at no less than a
    /// thousand times its own sum.
    CarriedBySeat,
    /// The jaws bear what load there is by their normal forces alone, see
    /// [`LateralSupport::Jaws`].
    CarriedByJaws,
    /// The part moves at a finite multiple of the load.
    Limit(Limit),
}

impl Hold {
    /// The limit, where there is one.
    #[must_use]
    pub fn limit(&self) -> Option<&Limit> {
        match self {
            Self::Limit(limit) => Some(limit),
            Self::NoGrip | Self::NoLoad | Self::CarriedBySeat | Self::CarriedByJaws => None,
        }
    }
}

/// The multiple of the load at which the part moves, and how it moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    /// Hold factor: friction forces exist that balance this multiple of the load.
    pub factor: f64,
    /// The multiple at which [`Limit::motion`] would begin; never below `factor`.
    pub upper: f64,
    /// The motion that begins.
    pub motion: Motion,
    /// What that motion mostly is.
    pub mode: Mode,
}

impl Limit {
    /// Width of the bracket over its upper end; 0 where both are nil.
    ///
    /// Below 1e-6 unless the solver ran out of steps.
    #[must_use]
    pub fn gap(&self) -> f64 {
        if self.upper > 0.0 { (self.upper - self.factor) / self.upper } else { 0.0 }
    }
}

/// A clamped part: where friction holds it, and what it rests on.
#[derive(Debug, Clone)]
pub struct Clamped {
    contacts: Vec<ContactPoint>,
    friction: f64,
    seat: Option<Seat>,
    support: LateralSupport,
    centre: Option<Centre>,
    problem: Option<Problem>,
}

impl Clamped {
    /// A part held at `contacts` with the same coefficient of friction at each.
    ///
    /// # Errors
    /// Names the input that is outside its valid range.
    pub fn new(contacts: &[ContactPoint], friction: f64, seat: Option<Seat>) -> Result<Self, HoldError> {
        if !(friction >= 0.0 && friction.is_finite()) {
            return Err(HoldError::Friction);
        }
        if let Some(seat) = seat
            && !(seat.radius > 0.0 && seat.radius <= FARTHEST && seat.z.abs() <= FARTHEST)
        {
            return Err(HoldError::Seat);
        }
        let contacts = contacts.iter().map(ContactPoint::checked).collect::<Result<Vec<_>, _>>()?;
        let support = LateralSupport::default();
        let problem = Problem::new(&contacts, friction, seat.as_ref(), support, None);
        Ok(Self { contacts, friction, seat, support, centre: None, problem })
    }

    /// The same part with forces across the axis borne otherwise.
    #[must_use]
    pub fn supported(self, support: LateralSupport) -> Self {
        let centre = self.centre.as_ref();
        let problem = Problem::new(&self.contacts, self.friction, self.seat.as_ref(), support, centre);
        Self { support, problem, ..self }
    }

    /// The same part with a centre in its tail end.
    ///
    /// # Errors
    /// [`HoldError::Centre`].
    pub fn centred(self, centre: Centre) -> Result<Self, HoldError> {
        let covered = centre.thrust > 0.0 && centre.thrust.is_finite() && centre.z > 0.0 && centre.z <= FARTHEST;
        if !(covered && self.seat.is_some()) {
            return Err(HoldError::Centre);
        }
        let problem = Problem::new(&self.contacts, self.friction, self.seat.as_ref(), self.support, Some(&centre));
        Ok(Self { centre: Some(centre), problem, ..self })
    }

    /// Force across the axis in N that the jaws may have to bear under a load: the load's own, or where a centre takes
    /// all of its tilt, as the far support of a beam, what then comes on the jaws; whichever is more.
    #[must_use]
    pub fn across(&self, load: &Wrench) -> f64 {
        let [x, y, _] = load.force;
        let own = libm::hypot(x, y);
        let Some((centre, problem)) = self.centre.as_ref().zip(self.problem.as_ref()) else { return own };
        let middle = problem.centre();
        let moved = cross(middle, load.force);
        let [about_x, about_y] = [0, 1].map(|k| (load.moment[k] - moved[k]) / (centre.z - middle[2]));
        own.max(libm::hypot(x - about_y, y + about_x))
    }

    /// The hold factor for one load.
    ///
    /// # Errors
    /// [`HoldError::Wrench`] if the load is not finite; [`HoldError::Unsettled`].
    pub fn hold(&self, load: &Wrench) -> Result<Hold, HoldError> {
        if !load.is_finite() {
            return Err(HoldError::Wrench);
        }
        let Some(problem) = &self.problem else {
            return Ok(Hold::NoGrip);
        };
        self.describe(problem, problem.solve(load, &mut None, limit::FINE))
    }

    /// The upper-bound theorem's ratio for a trial motion: friction power over
    /// load power. The hold factor is never above it. None where the load does
    /// no work on the motion, or the seat or the jaws forbid it.
    #[must_use]
    pub fn trial(&self, load: &Wrench, motion: &Motion) -> Option<f64> {
        // A motion about the seat's edge is at rest there but for rounding.
        let lifts = self.seat.is_none_or(|seat| {
            let rounding = 1e-12 * motion.speed(seat.radius.max(seat.z.abs()));
            let rises = |point: &[f64; 3]| motion.velocity_at(*point)[2] >= -rounding;
            seat.points().iter().all(rises)
        });
        let stays = self.problem.as_ref().is_none_or(|problem| {
            let centre = problem.centre();
            let [x, y, _] = motion.velocity_at(centre);
            let reach = crate::sqrt(motion::dot(centre, centre));
            self.support == LateralSupport::Friction || libm::hypot(x, y) <= 1e-12 * motion.speed(reach)
        });
        let allowed = lifts && stays;
        let power = motion.power_of(load);
        if !(allowed && power > 0.0) {
            return None;
        }
        let friction: f64 =
            self.contacts.iter().map(|contact| self.friction * contact.normal_force * motion.slip_at(contact)).sum();
        let centre = self.centre.map_or(0.0, |centre| centre.cost(motion));
        Some((friction + centre) / power)
    }

    /// A motion found for another spread of the normal forces, shifted so that the jaws allow it: see
    /// [`LateralSupport::Jaws`].
    #[must_use]
    pub fn allowed(&self, motion: &Motion) -> Motion {
        let Some(problem) = self.problem.as_ref().filter(|_| self.support == LateralSupport::Jaws) else {
            return *motion;
        };
        let [across, up, _] = motion.velocity_at(problem.centre());
        let [x, y, z] = motion.velocity;
        Motion { velocity: [x - across, y - up, z], ..*motion }
    }

    /// How far the normal forces are from balancing among themselves: the larger
    /// of their resultant over their sum, and of their moment about their centre
    /// over their sum times their distance from it.
    #[must_use]
    pub fn imbalance(&self) -> f64 {
        limit::imbalance(&self.contacts)
    }

    fn describe(&self, problem: &Problem, slip: Slip) -> Result<Hold, HoldError> {
        Ok(match slip {
            Slip::NothingToHold => match self.support {
                LateralSupport::Friction => Hold::NoLoad,
                LateralSupport::Jaws => Hold::CarriedByJaws,
            },
            Slip::CarriedBySeat => Hold::CarriedBySeat,
            Slip::Unsettled => return Err(HoldError::Unsettled),
            Slip::At { lower, upper, velocity } => Hold::Limit(Limit {
                factor: lower,
                upper,
                motion: problem.motion(&velocity),
                mode: motion::mode_of(&velocity),
            }),
        })
    }
}

impl ContactPoint {
    /// The same point with a normal of unit length.
    fn checked(&self) -> Result<Self, HoldError> {
        let [x, y, z] = self.normal;
        let length = crate::sqrt(x * x + y * y + z * z);
        if !(length > 0.0 && length.is_finite() && self.position.iter().all(|p| p.abs() <= FARTHEST)) {
            return Err(HoldError::Contact);
        }
        if !(self.normal_force >= 0.0 && self.normal_force.is_finite()) {
            return Err(HoldError::Force);
        }
        Ok(Self { normal: self.normal.map(|n| n / length), ..*self })
    }
}

impl Seat {
    fn points(&self) -> [[f64; 3]; Self::POINTS] {
        core::array::from_fn(|k| {
            let angle = core::f64::consts::TAU * k as f64 / Self::POINTS as f64;
            [self.radius * libm::cos(angle), self.radius * libm::sin(angle), self.z]
        })
    }
}

#[cfg(test)]
mod properties;
#[cfg(test)]
mod tests;
