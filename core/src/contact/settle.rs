//! Refining the mesh until the lobes no longer move.

use super::arc::Arc;
use super::compliance::JawGive;
use super::face::{ContactError, Face, Gap};
use super::lobing::Lobing;
use crate::part::{Band, Elastic, PartError, PartModel, PartSpring, Profile, Surface};
use alloc::vec::Vec;
use core::fmt;

/// Usual tolerance: peak to valley moves by less than 1 % in the last refinement.
pub const TOLERANCE: f64 = 0.01;

/// Mesh densities tried in turn.
pub const DENSITIES: [f64; 5] = [0.6, 1.0, 1.6, 2.5, 4.0];

/// Multiplications of one harmonic at which refining stops: about half a second for all harmonics
/// on one thread.
const MOST_WORK: f64 = 4e7;

/// Peak to valley below this share of the largest one around is not judged.
const FAINT: f64 = 0.05;

/// A part to be made into a spring that has settled.
#[derive(Clone, Copy, Debug)]
pub struct Job<'a> {
    /// The part.
    pub profile: &'a Profile,
    /// Its elastic constants.
    pub elastic: Elastic,
    /// Where it is gripped.
    pub band: Band,
    /// Number of jaws.
    pub jaws: usize,
    /// Its surfaces of interest.
    pub surfaces: &'a [Surface],
    /// Arc of a jaw's face, rad.
    pub arc: f64,
    /// Force of a jaw along its axis, N.
    pub force: f64,
    /// Radius of the jaws less radius of the part, m.
    pub larger: f64,
}

/// A part's spring and how far it has settled.
#[derive(Clone, Debug)]
pub struct Settled {
    /// The spring on the last mesh.
    pub spring: PartSpring,
    /// Density of the last mesh.
    pub density: f64,
    /// Largest relative change of peak to valley in the last refinement, over all surfaces,
    /// under even pressure and under rigid jaws.
    pub change: f64,
    /// Whether `change` came under the tolerance before the mesh grew too large.
    pub settled: bool,
}

/// Why a part could not be settled.
#[derive(Clone, Debug, PartialEq)]
pub enum SettleError {
    /// The part.
    Part(PartError),
    /// The contact.
    Contact(ContactError),
}

impl fmt::Display for SettleError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Part(e) => e.fmt(f),
            Self::Contact(e) => e.fmt(f),
        }
    }
}

impl core::error::Error for SettleError {}

impl From<PartError> for SettleError {
    fn from(e: PartError) -> Self {
        Self::Part(e)
    }
}

impl From<ContactError> for SettleError {
    fn from(e: ContactError) -> Self {
        Self::Contact(e)
    }
}

impl Job<'_> {
    /// Refines until peak to valley changes by less than `tolerance` (relative), or until the
    /// next mesh would be too large; says which.
    ///
    /// # Errors
    /// [`SettleError`] if not even the coarsest mesh can be solved.
    pub fn settle(&self, tolerance: f64) -> Result<Settled, SettleError> {
        let mut last: Option<(Settled, [Vec<f64>; 2])> = None;
        for density in DENSITIES {
            let model = PartModel::new(self.profile, self.elastic, self.band, self.jaws, self.surfaces, density);
            let model = match (model, &last) {
                (Err(PartError::TooLarge(_)), Some(_)) => break,
                (model, _) => model?,
            };
            if last.is_some() && model.work() > MOST_WORK {
                break;
            }
            let spring = model.spring()?;
            let lobes = self.lobes(&spring)?;
            let change = last
                .as_ref()
                .map_or(f64::INFINITY, |(_, before)| change(&before[0], &lobes[0]).max(change(&before[1], &lobes[1])));
            let settled = change <= tolerance;
            last = Some((Settled { spring, density, change, settled }, lobes));
            if settled {
                break;
            }
        }
        last.map(|(settled, _)| settled).ok_or(SettleError::Contact(ContactError::Compliance))
    }

    /// Peak to valley of each surface's worst station, under even pressure and rigid jaws.
    fn lobes(&self, spring: &PartSpring) -> Result<[Vec<f64>; 2], ContactError> {
        let arc = Arc::graded(self.arc, Arc::CELLS);
        let face = Face::new(spring, arc, &JawGive::default())?;
        let even = face.even(self.force)?;
        let rigid = face.press(self.force, &Gap::straight(self.larger))?;
        Ok([even, rigid].map(|contact| {
            (0..self.surfaces.len())
                .map(|k| {
                    let stations = face.lobing(&contact, k);
                    stations.iter().map(Lobing::peak_to_valley).fold(0.0, f64::max)
                })
                .collect()
        }))
    }
}

/// Largest relative change among values that are not faint beside the largest.
fn change(before: &[f64], after: &[f64]) -> f64 {
    let largest = after.iter().copied().fold(0.0, f64::max);
    before
        .iter()
        .zip(after)
        .filter(|(_, b)| **b > FAINT * largest)
        .map(|(a, b)| (a / b - 1.0).abs())
        .fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::part::{Side, Step};
    use alloc::string::String;

    const STEEL: Elastic = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };

    #[test]
    fn the_change_stated_is_of_the_size_of_what_refining_further_moves() {
        let profile = Profile::new(&[Step::cylinder(0.03, 0.15, 0.138)]).expect("a ring");
        let surfaces = [Surface { name: String::from("bore"), side: Side::Bore, z: [0.0, 0.03] }];
        let job = Job {
            profile: &profile,
            elastic: STEEL,
            band: Band { side: Side::Outside, z: [0.0, 0.015] },
            jaws: 6,
            surfaces: &surfaces,
            arc: core::f64::consts::FRAC_PI_6,
            force: 3000.0,
            larger: 0.0,
        };
        let usual = job.settle(0.02).expect("sound");
        let fine = job.settle(0.003).expect("sound");
        assert!(usual.settled && usual.change <= 0.02, "settled at {}", usual.change);
        assert!(fine.density > usual.density, "a tighter tolerance refines further");
        let (a, b) = (job.lobes(&usual.spring), job.lobes(&fine.spring));
        let (a, b) = (a.expect("sound"), b.expect("sound"));
        for k in 0..2 {
            // At a rigid jaw's edge the solution settles slowly and not always one way.
            let moved = change(&a[k], &b[k]);
            assert!(moved <= 3.0 * usual.change, "moved {moved}, stated {}", usual.change);
        }
    }
}
