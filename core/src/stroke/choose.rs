//! Which tooth: every one is tried, and where none will do, what else would.

use alloc::vec::Vec;
use core::cmp::Ordering;

use holdround_mechanics::sorting::sort;

use super::placed::{Check, Placed, Task, end_at, outward, place};
use super::{Blank, MasterJaw, StrokeError};

/// The teeth tried, and the best of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// The best: fewest faults, the middle third weighing least, then the step nearest to the wanted one.
    pub best: Placed,
    /// The teeth at which the T-nuts lie over the master jaw's face, from the axis outward.
    pub teeth: Vec<Placed>,
}

impl Choice {
    /// Whether the best tooth has no fault.
    #[must_use]
    pub fn fits(&self) -> bool {
        self.best.fails.is_empty()
    }

    /// The teeth tried, the best first; `wanted_step` is the step wanted under the part, m.
    #[must_use]
    pub fn best_first(&self, wanted_step: f64) -> Vec<&Placed> {
        let mut ranked: Vec<&Placed> = self.teeth.iter().collect();
        sort(&mut ranked, |one, other| compared(one, other, wanted_step));
        ranked
    }
}

/// What would help where no tooth of the jaws as mounted does. Each is a jaw that was tried and has no fault.
#[derive(Debug, Clone, PartialEq)]
pub enum Remedy {
    /// Turn the jaws round.
    TurnRound(Placed),
    /// Use jaws longer at the gripping end by so much, m.
    Extend(f64, Placed),
    /// Turn the jaws round and have them longer by so much, m.
    TurnRoundAndExtend(f64, Placed),
}

/// Most teeth tried, far more than any chuck has.
const MOST_TEETH: f64 = 2000.0;
/// The longest extension tried, as a share of the jaw's length.
const LONGEST_EXTENSION: f64 = 1.5;
/// Most extensions tried.
const MOST_EXTENSIONS: f64 = 80.0;

/// Tries every tooth.
///
/// ```
/// # use holdround_core::jaw::{Jaw, Shape};
/// # use holdround_core::{grip::Side, stroke::*};
/// # let master = MasterJaw { stroke: 4e-3, first_groove: 0.035, face: 0.06, body: 0.1, serration: SERRATIONS[3].1 };
/// # let blank = Blank { length: 0.07, first_groove: 0.0015, near_screw: 0.03, far_screw: 0.05, counterbore: 0.02,
/// #     counterbore_depth: 0.035, nut: 0.03 };
/// # let jaw = Jaw { shape: Shape::Ordinary { width: 0.04 }, side: Side::Outside, count: 3, length: 0.07, height: 0.045,
/// #     step: 0.01, bored_depth: 0.015, grip_radius: 0.05 };
/// # let task = Task { jaw, part: [0.05; 3], passing: 0.05, least_wall: 3e-3, least_clearance: 0.5e-3, swing: None,
/// #     stand: Stand::At(2e-3) };
/// let choice = choose(&master, &blank, &task)?;
/// assert!(choice.fits() && choice.best.tooth == 2);
/// # Ok::<(), StrokeError>(())
/// ```
///
/// # Errors
/// [`StrokeError`] when blank and master jaw make no sense together.
pub fn choose(master: &MasterJaw, blank: &Blank, task: &Task) -> Result<Choice, StrokeError> {
    let (first, last) = teeth(master, blank, task)?;
    let teeth: Vec<_> = (first..=last).map(|tooth| place(master, blank, task, tooth)).collect();
    let best = teeth.iter().min_by(|one, other| compared(one, other, task.jaw.step)).ok_or(StrokeError::NoTooth)?;
    Ok(Choice { best: best.clone(), teeth })
}

/// What would help, each tried: turning the jaws round, longer jaws, and both.
///
/// ```
/// # use holdround_core::jaw::{Jaw, Shape};
/// # use holdround_core::{grip::Side, stroke::*};
/// # let master = MasterJaw { stroke: 4e-3, first_groove: 0.035, face: 0.06, body: 0.1, serration: SERRATIONS[3].1 };
/// # let blank = Blank { length: 0.07, first_groove: 0.0015, near_screw: 0.03, far_screw: 0.05, counterbore: 0.02,
/// #     counterbore_depth: 0.035, nut: 0.03 };
/// # let jaw = Jaw { shape: Shape::Ordinary { width: 0.04 }, side: Side::Outside, count: 3, length: 0.07, height: 0.045,
/// #     step: 0.01, bored_depth: 0.015, grip_radius: 0.05 };
/// # let task = Task { jaw, part: [0.05; 3], passing: 0.05, least_wall: 3e-3, least_clearance: 0.5e-3, swing: None,
/// #     stand: Stand::At(2e-3) };
/// // The screws sit near the end that grips; turned round, the long end does.
/// let short = Blank { near_screw: 0.012, far_screw: 0.032, ..blank };
/// let deep = Task { jaw: Jaw { bored_depth: 0.03, ..jaw }, ..task };
/// assert!(!choose(&master, &short, &deep)?.fits());
/// assert!(matches!(remedies(&master, &short, &deep)?[0], Remedy::TurnRound(_)));
/// # Ok::<(), StrokeError>(())
/// ```
///
/// # Errors
/// As [`choose`].
pub fn remedies(master: &MasterJaw, blank: &Blank, task: &Task) -> Result<Vec<Remedy>, StrokeError> {
    blank.check(master)?;
    let mut found = Vec::new();
    let turned = blank.turned(master.serration.pitch);
    if let Some(placed) = fitting(master, &turned, task) {
        found.push(Remedy::TurnRound(placed));
    }
    if let Some((by, placed)) = extension(master, blank, task) {
        found.push(Remedy::Extend(by, placed));
    }
    if found.is_empty()
        && let Some((by, placed)) = extension(master, &turned, task)
    {
        found.push(Remedy::TurnRoundAndExtend(by, placed));
    }
    Ok(found)
}

/// The best tooth of a blank if it has no fault.
fn fitting(master: &MasterJaw, blank: &Blank, task: &Task) -> Option<Placed> {
    choose(master, blank, task).ok().filter(Choice::fits).map(|choice| choice.best)
}

/// The shortest extension, by whole teeth, with which a tooth has no fault.
fn extension(master: &MasterJaw, blank: &Blank, task: &Task) -> Option<(f64, Placed)> {
    let pitch = master.serration.pitch;
    let most = (LONGEST_EXTENSION * blank.length / pitch).min(MOST_EXTENSIONS) as i32;
    (1..=most).find_map(|count| {
        let by = f64::from(count) * pitch;
        fitting(master, &blank.extended(by), task).map(|placed| (by, placed))
    })
}

/// The teeth on which the middle of the T-nut lies over the serrated face.
fn teeth(master: &MasterJaw, blank: &Blank, task: &Task) -> Result<(i32, i32), StrokeError> {
    blank.check(master)?;
    let side = task.jaw.side;
    let pitch = master.serration.pitch;
    // Where the middle of the nut would stand on tooth 0, from the first groove.
    let from = end_at(master, blank, side, 0, 0.0) + outward(side) * blank.nut_middle() - master.first_groove;
    let first = libm::ceil(-from / pitch);
    let last = libm::floor((master.face - from) / pitch);
    if !(first.is_finite() && last.is_finite() && last >= first && last - first < MOST_TEETH) {
        return Err(StrokeError::NoTooth);
    }
    Ok((first as i32, last as i32))
}

/// How one tooth stands to another: the better comes first.
fn compared(one: &Placed, other: &Placed, wanted_step: f64) -> Ordering {
    let faults = |placed: &Placed| placed.fails.iter().filter(|check| **check != Check::MiddleThird).count();
    let thirds = |placed: &Placed| placed.fails.contains(&Check::MiddleThird);
    let off = |placed: &Placed| libm::fabs(placed.step - wanted_step);
    let key = |placed: &Placed| (faults(placed), thirds(placed), off(placed));
    key(one).partial_cmp(&key(other)).unwrap_or(Ordering::Equal)
}
