//! The worst angle of the tool to the jaws.

use super::limit::{self, Goal, Problem, Slip};
use super::{Clamped, Hold, HoldError};
use crate::cutting::RotatingWrench;
use core::f64::consts::TAU;

/// Angles of the tool tried over one jaw pitch.
///
/// The inverse of the hold factor is a convex function of the load, and the
/// load runs on a circle: between samples `d` apart the factor is lower than at
/// the samples by at most the share `1 - cos(d / 2)` of its varying part, less
/// than 0.1 % for three jaws and 0.3 % for two. Refinement removes most of that.
pub const SCAN_ANGLES: usize = 24;

/// A scan only has to tell angles apart.
const SCAN_GAP: f64 = 1e-3;
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
    /// [`HoldError::Wrench`] if the load is not finite; [`HoldError::Jaws`].
    pub fn worst(&self, load: &RotatingWrench, jaws: usize) -> Result<WorstHold, HoldError> {
        if !(1..=64).contains(&jaws) {
            return Err(HoldError::Jaws);
        }
        if ![load.steady, load.cosine, load.sine]
            .iter()
            .all(|part| part.is_finite())
        {
            return Err(HoldError::Wrench);
        }
        let Some(problem) = &self.problem else {
            return Ok(WorstHold {
                angle: 0.0,
                hold: Hold::NoGrip,
            });
        };
        let pitch = TAU / jaws as f64;
        let Some((mut angle, mut slip, mut near)) = scan(problem, load, pitch) else {
            return Ok(WorstHold {
                angle: 0.0,
                hold: self.hold(&load.at(0.0))?,
            });
        };
        // For a fixed motion the worst angle has a closed form, for a fixed
        // angle the motion is solved: each lowers the factor.
        for _ in 0..MOST_REFINEMENTS {
            let Slip::At {
                upper, velocity, ..
            } = slip
            else {
                break;
            };
            let next = worst_angle(problem, load, &velocity);
            let trial = problem.solve(&load.at(next), &mut near, limit::FINE);
            let Slip::At { upper: lowered, .. } = trial else {
                break;
            };
            if lowered < upper {
                (angle, slip) = (next, trial);
            }
            if lowered > upper * (1.0 - 1e-9) {
                break;
            }
        }
        let slip = problem.solve(&load.at(angle), &mut near, limit::FINE);
        let reduced = angle - pitch * libm::floor(angle / pitch);
        Ok(WorstHold {
            angle: reduced,
            hold: self.describe(problem, slip),
        })
    }
}

/// The angle with the lowest factor, or none where no angle has one.
fn scan(
    problem: &Problem,
    load: &RotatingWrench,
    pitch: f64,
) -> Option<(f64, Slip, Option<[f64; 6]>)> {
    let mut near = None;
    let mut best: Option<(f64, Slip, Option<[f64; 6]>)> = None;
    let mut lowest = f64::INFINITY;
    for k in 0..SCAN_ANGLES {
        let angle = pitch * k as f64 / SCAN_ANGLES as f64;
        let goal = Goal {
            gap: SCAN_GAP,
            enough: lowest,
        };
        let slip = problem.solve(&load.at(angle), &mut near, goal);
        if let Slip::At { upper, .. } = slip
            && upper < lowest
        {
            lowest = upper;
            best = Some((angle, slip, near));
        }
    }
    best
}

/// The angle at which the load does most work on a scaled velocity.
fn worst_angle(problem: &Problem, load: &RotatingWrench, velocity: &[f64; 6]) -> f64 {
    let (cosine, sine) = (
        problem.power(&load.cosine, velocity),
        problem.power(&load.sine, velocity),
    );
    libm::atan2(sine, cosine)
}
