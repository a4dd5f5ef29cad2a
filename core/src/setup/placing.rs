//! Where the jaws stand on the chuck: tooth, boring ring, and what is left of jaws bored before.

use alloc::string::String;
use alloc::vec::Vec;

use super::Setup;
use crate::boring_ring::{Bearing, Ring, Section};
use crate::recut::{Old, reusable};
use crate::stroke::{Blank, MasterJaw};

/// Where the jaws stand. Lengths in m.
#[derive(Clone, Debug, Default)]
pub struct Placing {
    /// Tooth and ring, if they are to be worked out.
    pub plan: Option<Plan>,
    /// The jaws as they came back, if they have been bored before.
    pub recut: Option<Recut>,
}

/// What tooth and ring depend on.
#[derive(Clone, Debug)]
pub struct Plan {
    /// The master jaw; its chuck body comes from the chuck.
    pub master: MasterJaw,
    /// The blank as it is mounted.
    pub blank: Blank,
    /// Whether it is mounted turned round from the way it was measured.
    pub turned: bool,
    /// Least metal between gripping face and counterbores.
    pub least_wall: f64,
    /// Least clearance per side for loading.
    pub least_clearance: f64,
    /// Another diameter that must pass.
    pub passing: Option<f64>,
    /// The tooth chosen; else the best.
    pub tooth: Option<i32>,
    /// Position while bored, where neither a ring nor the middle of the stroke decides it.
    pub bored_at: Option<f64>,
    /// Where ring or plug bears.
    pub bearing: Bearing,
    /// Place of the ring in use among the user's own.
    pub ring_used: Option<usize>,
    /// Section of a ring to be made.
    pub section: Section,
    /// Clearance between ring and tool.
    pub tool_clearance: f64,
    /// The user's own rings.
    pub rings: Vec<OwnRing>,
}

/// A ring the shop keeps.
#[derive(Clone, Debug)]
pub struct OwnRing {
    /// The user's own name for it.
    pub name: String,
    /// Its sizes.
    pub ring: Ring,
}

/// Jaws that came back.
#[derive(Clone, Debug)]
pub struct Recut {
    /// Diameter at which they stand on the ring, once measured.
    pub standing: Option<f64>,
    /// Whether chuck, teeth and order are as before; none until that is answered.
    pub as_before: Option<bool>,
    /// The old faces.
    pub old: Old,
    /// Depth of the old bore from the front to the seat, where it is not the new one.
    pub depth: Option<f64>,
    /// Stock per side that one recut takes.
    pub stock: f64,
    /// Departure on diameter with which they are used as they are.
    pub tolerance: f64,
    /// Metal measured from the old face to the counterbores.
    pub metal: Option<f64>,
}

impl Setup {
    /// Whether the jaws came back such that nothing need be cut ([`reusable`]); none while that hangs on how they are
    /// mounted, which is not answered.
    ///
    /// ```
    /// use holdround_core::setup::{Entries, Setup};
    /// let setup = Setup::read(&Entries::default()).unwrap();
    /// assert_eq!(setup.reuses_jaws(), Some(false), "new jaws are bored first");
    /// ```
    #[must_use]
    pub fn reuses_jaws(&self) -> Option<bool> {
        let (target, allowed) = (2.0 * self.bored_radius(), self.part.runout_limit.value);
        let back = self.placing.recut.as_ref();
        let fit = back.filter(|back| {
            back.standing.is_some_and(|standing| reusable(standing, target, back.tolerance, &back.old, allowed))
        });
        fit.map_or(Some(false), |back| back.as_before)
    }
}
