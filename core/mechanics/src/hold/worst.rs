//! The worst angle of the tool to the jaws.

use super::interior::Point;
use super::limit::{self, Goal, Problem, Slip};
use super::{Clamped, Hold, HoldError};
use crate::cutting::{RotatingWrench, Wrench};
use core::f64::consts::TAU;

/// Angles of the tool are tried at most so far apart over one jaw pitch, rad.
///
/// The inverse of the hold factor is convex in the load and grows in proportion
/// to it, and the load runs on a circle. So between samples `d` apart it exceeds
/// the larger of the two by at most `1 - cos(d / 2)` times its value for the
/// turning part of the load alone, which is 0.9 %. Refinement then removes most
/// of that.
pub const SCAN_STEP: f64 = core::f64::consts::PI / 12.0;

/// A scan only has to tell angles apart.
const SCAN_GAP: f64 = 1e-3;
/// A refinement that lowers the factor by a smaller share is the last.
const ENOUGH: f64 = 1e-6;
/// A factor this much above another at every angle of the scan is above it at the angles between.
const CLEARLY: f64 = 1.1;
const MOST_REFINEMENTS: usize = 12;

/// The hold factor at the worst angle of the tool.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WorstHold {
    /// Angle of the tool from the first jaw in rad, within one jaw pitch.
    pub angle: f64,
    /// The hold at that angle.
    pub hold: Hold,
}

impl Clamped {
    /// The hold at the worst angle over one jaw pitch, for `jaws` equal jaws
    /// (1 to 64; 1 scans the whole turn, for contacts without symmetry).
    ///
    /// # Errors
    /// [`HoldError::Wrench`] if the load is not finite; [`HoldError::Jaws`];
    /// [`HoldError::Unsettled`].
    pub fn worst(&self, load: &RotatingWrench, jaws: usize) -> Result<WorstHold, HoldError> {
        let unheld = WorstHold { angle: 0.0, hold: Hold::NoGrip };
        Ok(self.worst_unless_above(load, jaws, f64::INFINITY)?.unwrap_or(unheld))
    }

    /// The same, but none as soon as the factor is seen to be clearly above `enough`: where several loads are
    /// judged and the least factor is wanted, most need no exact one.
    ///
    /// # Errors
    /// As for [`Clamped::worst`].
    pub fn worst_unless_above(
        &self,
        load: &RotatingWrench,
        jaws: usize,
        enough: f64,
    ) -> Result<Option<WorstHold>, HoldError> {
        if !(1..=64).contains(&jaws) {
            return Err(HoldError::Jaws);
        }
        if ![load.steady, load.cosine, load.sine].iter().all(|part| part.is_finite()) {
            return Err(HoldError::Wrench);
        }
        let Some(problem) = &self.problem else {
            return Ok(Some(WorstHold { angle: 0.0, hold: Hold::NoGrip }));
        };
        let pitch = TAU / jaws as f64;
        let clear = CLEARLY * enough;
        let mut near = None;
        let Some((lowest, scanned)) = scan(problem, load, pitch, clear, &mut near)? else {
            return Ok(Some(WorstHold { angle: 0.0, hold: self.hold(&load.at(0.0))? }));
        };
        if lowest > clear {
            return Ok(None);
        }
        // For a fixed motion the worst angle has a closed form, for a fixed
        // angle the motion is solved: each lowers the factor.
        let mut worst = scanned;
        for _ in 0..MOST_REFINEMENTS {
            let angle = worst_angle(problem, load, &worst.velocity);
            // Its motion bounds the factor there, so that there is one.
            let Some(next) = Sample::at(problem, load, angle, &mut near, limit::FINE)? else {
                break;
            };
            worst = next;
            let further = load.at(worst_angle(problem, load, &worst.velocity));
            let power = |load| problem.power(load, &worst.velocity);
            if power(&further) <= power(&load.at(angle)) * (1.0 + ENOUGH) {
                break;
            }
        }
        let angle = worst.angle - pitch * libm::floor(worst.angle / pitch);
        let Sample { lower, upper, velocity, .. } = worst;
        Ok(Some(WorstHold { angle, hold: self.describe(problem, Slip::At { lower, upper, velocity })? }))
    }
}

/// The limit at one angle.
struct Sample {
    angle: f64,
    lower: f64,
    upper: f64,
    velocity: [f64; 6],
}

impl Sample {
    /// None where the load needs no friction.
    fn at(
        problem: &Problem,
        load: &RotatingWrench,
        angle: f64,
        near: &mut Option<Point>,
        goal: Goal,
    ) -> Result<Option<Self>, HoldError> {
        match problem.solve(&load.at(angle), near, goal) {
            Slip::At { lower, upper, velocity } => Ok(Some(Self { angle, lower, upper, velocity })),
            Slip::NothingToHold | Slip::CarriedBySeat => Ok(None),
            Slip::Unsettled => Err(HoldError::Unsettled),
        }
    }
}

/// The angle with the lowest factor, or none where no angle has one; before it the lowest factor shown to
/// hold at every angle of the scan. Factors above `clear` are not told apart.
fn scan(
    problem: &Problem,
    load: &RotatingWrench,
    pitch: f64,
    clear: f64,
    near: &mut Option<Point>,
) -> Result<Option<(f64, Sample)>, HoldError> {
    let mut lowest = f64::INFINITY;
    let mut worst: Option<Sample> = None;
    // A drill's load is the same at every angle.
    let turns = [load.cosine, load.sine] != [Wrench::default(); 2];
    let angles = if turns { libm::ceil(pitch / SCAN_STEP - 1e-9) as usize } else { 1 };
    for k in 0..angles {
        let angle = pitch * k as f64 / angles as f64;
        let enough = worst.as_ref().map_or(f64::INFINITY, |worst| worst.upper).min(clear);
        let goal = Goal { gap: SCAN_GAP, enough };
        let sample = Sample::at(problem, load, angle, near, goal)?;
        lowest = sample.as_ref().map_or(lowest, |sample| sample.lower.min(lowest));
        worst = match (worst, sample) {
            (Some(a), Some(b)) => Some(if b.upper < a.upper { b } else { a }),
            (a, b) => a.or(b),
        };
    }
    Ok(worst.map(|worst| (lowest, worst)))
}

/// The angle at which the load does most work on a scaled velocity.
fn worst_angle(problem: &Problem, load: &RotatingWrench, velocity: &[f64; 6]) -> f64 {
    let (cosine, sine) = (problem.power(&load.cosine, velocity), problem.power(&load.sine, velocity));
    libm::atan2(sine, cosine)
}
