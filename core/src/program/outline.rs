//! The shape to be cut, as straight lines from the front of the jaws to the seat.

use alloc::vec::Vec;

use super::error::PlanError;
use super::plan::Purpose;
use crate::grip::Side;

/// The least that an edge must clear the surface behind it by, rad (3 degrees): common practice, no source.
const CLEAR_BEHIND: f64 = 0.052;
/// The steepest run into the groove, rad (45 degrees): steeper, the edge would plunge.
const STEEPEST: f64 = core::f64::consts::FRAC_PI_4;

/// The shape to be cut into the jaws, the same in each.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JawCut {
    /// Which way the jaws will grip: inside cuts for an outside grip, outside cuts for an inside grip.
    pub side: Side,
    /// Diameter at the front of the jaws, m: where the taper leaves most metal.
    pub diameter: f64,
    /// How much more metal stands at the front than at the seat, per side, m.
    pub taper: f64,
    /// Depth of the seat below the front, m.
    pub depth: f64,
    /// Leg of the lead chamfer at 45 degrees, m; 0 for none.
    pub chamfer: f64,
    /// Width along the axis and depth into the metal of the relief groove in the corner, m; 0 for none.
    pub relief: [f64; 2],
    /// Diameter at which the jaws stand before the cut, m.
    pub standing: f64,
    /// Diameter at which the metal of the jaws ends under the part, where the seat runs out, m; where it is nearer than
    /// what stands, as on jaws that were bored before, the seat runs on to it.
    pub inner: f64,
    /// Metal taken off the front face, m; 0 for none.
    pub skim: f64,
    /// How far beyond the chamfer the front is skimmed, m.
    pub skim_width: f64,
}

/// The tool that cuts it: one edge with a round nose, on a bar or a shank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tool {
    /// Nose radius, m.
    pub nose: f64,
    /// Angle between the finished face and the edge behind the nose, rad.
    pub behind: f64,
    /// Diameter of a boring bar, m; thickness of the shank along the axis for outside cuts.
    pub bar: f64,
    /// How far nose and bar stand out of the holder, m.
    pub reach: f64,
    /// Width of the holder, m.
    pub holder: f64,
}

impl JawCut {
    /// +1 where `u` is the radius, -1 where it is minus the radius.
    #[must_use]
    pub fn sign(&self) -> f64 {
        if self.side == Side::Outside { 1.0 } else { -1.0 }
    }

    /// Where the face lies at `z`, in `u`, m.
    #[must_use]
    pub fn face(&self, z: f64) -> f64 {
        self.sign() * self.diameter / 2.0 - self.taper * z / self.depth
    }

    /// Where the jaws stand before the cut, in `u`, m.
    #[must_use]
    pub fn stands(&self) -> f64 {
        self.sign() * self.standing / 2.0
    }

    /// Where the seat runs out, in `u`, m.
    pub(super) fn seat_ends(&self) -> f64 {
        (self.sign() * self.inner / 2.0).min(self.stands())
    }

    pub(super) fn check(&self, tool: &Tool) -> Result<(), PlanError> {
        let sizes = [
            self.inner,
            self.chamfer,
            self.relief[0],
            self.relief[1],
            self.skim,
            self.skim_width,
            tool.bar,
            tool.reach,
        ];
        let above = [self.diameter, self.depth, self.standing, tool.nose, tool.behind];
        let fine = sizes.iter().all(|size| *size >= 0.0 && size.is_finite())
            && above.iter().all(|size| *size > 0.0 && size.is_finite())
            && self.taper.is_finite();
        if !fine {
            return Err(PlanError::Size);
        }
        if self.stands() >= self.face(0.0).min(self.face(-self.depth)) {
            return Err(PlanError::NothingToCut);
        }
        Ok(())
    }

    /// Corners of the shape from the front to the seat, each with what the line to it is; the first and last
    /// lines run on beyond the metal.
    pub(super) fn corners(&self, tool: &Tool) -> Result<Vec<([f64; 2], Purpose)>, PlanError> {
        let [width, depth] = self.relief;
        let grooved = width > 0.0 && depth > 0.0;
        let width = if grooved { width } else { 0.0 };
        if self.chamfer + width >= self.depth {
            return Err(PlanError::NoFace);
        }
        let steepest = (tool.behind - CLEAR_BEHIND).min(STEEPEST);
        if self.taper / self.depth > libm::tan(steepest.max(0.0)) {
            return Err(PlanError::Behind);
        }
        let at = |z: f64| [self.face(z), z];
        let mut corners = Vec::new();
        if self.chamfer > 0.0 {
            let [u, z] = at(-self.chamfer);
            corners.push(([u + self.chamfer, 0.0], Purpose::Chamfer));
            corners.push(([u, z], Purpose::Chamfer));
        } else {
            corners.push((at(0.0), Purpose::Finish));
        }
        if grooved {
            if steepest <= 0.0 {
                return Err(PlanError::Behind);
            }
            let least = least_relief_width(depth, tool);
            if width < least {
                return Err(PlanError::ReliefNarrow { least });
            }
            let entry = width - self.depth;
            let bottom = self.face(-self.depth) + depth;
            let run = (bottom - self.face(entry)) / libm::tan(steepest);
            corners.push((at(entry), Purpose::Finish));
            corners.push(([bottom, entry - run], Purpose::Relief));
            corners.push(([bottom, -self.depth], Purpose::Relief));
        } else {
            corners.push((at(-self.depth), Purpose::Finish));
        }
        Ok(corners)
    }
}

/// Least width of a relief groove `depth` m deep, m: the run into it, and the nose standing in its corner.
///
/// ```
/// use holdround_core::program::{Tool, least_relief_width};
/// // 0.4 mm nose, 33 degrees behind it: a run at 30 degrees.
/// let tool = Tool { nose: 0.4e-3, behind: 0.576, bar: 0.02, reach: 0.06, holder: 0.04 };
/// let least = least_relief_width(0.5e-3, &tool);
/// assert!((least - 1.373e-3).abs() < 5e-6); // 0.5 / tan 30 + 0.4 (tan 15 + 1)
/// ```
#[must_use]
pub fn least_relief_width(depth: f64, tool: &Tool) -> f64 {
    let steepest = (tool.behind - CLEAR_BEHIND).clamp(1e-3, STEEPEST);
    depth / libm::tan(steepest) + tool.nose * (libm::tan(steepest / 2.0) + 1.0)
}
