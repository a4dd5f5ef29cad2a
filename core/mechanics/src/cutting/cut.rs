//! One cut: its forces, its load on the part, what it asks of the spindle.

use super::CuttingError;
use super::kienzle::{Chip, SpecificForce};
use super::operation::{AxialFeed, Directions, Operation, RadialFeed, Surface};
use super::wrench::{RotatingWrench, Wrench};

/// Feed and passive force as shares of the main cutting force.
///
/// Textbooks give 0.3 to 0.6 for the feed force and 0.2 to 0.5 for the passive
/// force, rising with nose radius and wear (Klocke; from memory). For a drill
/// `feed` is the thrust over the force of both lips, see
/// [`twist_drill_thrust_ratio`](super::twist_drill_thrust_ratio).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ForceRatios {
    /// Feed force over main cutting force; not negative.
    pub feed: f64,
    /// Passive force over main cutting force; not negative.
    pub passive: f64,
}

/// Where the tool cuts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToolPosition {
    /// Distance from the spindle axis in m; not negative. Not used by a drill.
    pub radius: f64,
    /// Distance in front of the jaws' faces in m; negative inside the jaws.
    pub z: f64,
}

/// One cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// What the tool does.
    pub operation: Operation,
    /// Kienzle's constants. Not used where the force is found from power.
    pub material: SpecificForce,
    /// Product of the corrections for wear (1.3 to 1.5 for a worn edge, from
    /// memory), rake and the like; positive. Not used where the force is found
    /// from power, which already contains them.
    pub correction: f64,
    /// Feed and passive force over the main force.
    pub ratios: ForceRatios,
    /// Where the tool cuts.
    pub tool: ToolPosition,
}

/// Magnitudes of the forces of a cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CuttingForces {
    /// Main cutting force in N, along the cutting speed; both lips of a drill.
    pub cutting: f64,
    /// Feed force in N; the thrust of a drill.
    pub feed: f64,
    /// Passive force in N; nil for grooving and drilling.
    pub passive: f64,
    /// Torque about the spindle axis in N m.
    pub torque: f64,
    /// The chip of one edge; none where the force is found from power.
    pub chip: Option<Chip>,
}

/// What a cut asks of the spindle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpindleDemand {
    /// Torque at the spindle in N m.
    pub torque: f64,
    /// Power at the motor in W.
    pub power: f64,
}

/// The load of a cut on the part, by components at the tool.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CutLoad {
    /// Where the force acts.
    pub tool: ToolPosition,
    /// Force in N away from the axis.
    pub radial: f64,
    /// Force in N along the tangent, positive about `+z`.
    pub tangential: f64,
    /// Force in N along `+z`.
    pub axial: f64,
    /// Moment in N m about `+z` beyond that of the tangential force.
    pub couple: f64,
}

impl Cut {
    /// The forces of the cut.
    ///
    /// # Errors
    /// Names the input that is outside its valid range.
    pub fn forces(&self) -> Result<CuttingForces, CuttingError> {
        if !(self.correction > 0.0 && self.correction.is_finite()) {
            return Err(CuttingError::Correction);
        }
        let ratio_is_valid = |ratio: f64| ratio >= 0.0 && ratio.is_finite();
        if !(ratio_is_valid(self.ratios.feed) && ratio_is_valid(self.ratios.passive)) {
            return Err(CuttingError::Ratios);
        }
        if !(self.tool.radius >= 0.0 && self.tool.radius.is_finite() && self.tool.z.is_finite()) {
            return Err(CuttingError::Tool);
        }
        let main = self.operation.main_force(&self.material, self.tool.radius)?;
        let correction = if matches!(self.operation, Operation::SpindlePower(_)) { 1.0 } else { self.correction };
        let cutting = correction * main.force;
        let passive = match self.operation.directions() {
            Directions::Grooving(_) | Directions::Drilling => 0.0,
            _ => self.ratios.passive * cutting,
        };
        let forces = CuttingForces {
            cutting,
            feed: self.ratios.feed * cutting,
            passive,
            torque: cutting * main.lever,
            chip: main.chip,
        };
        let sum = forces.cutting + forces.feed + forces.passive + forces.torque;
        if sum.is_finite() { Ok(forces) } else { Err(CuttingError::Overflow) }
    }

    /// The load on the part.
    ///
    /// # Errors
    /// As for [`Cut::forces`].
    pub fn load(&self) -> Result<CutLoad, CuttingError> {
        let forces = self.forces()?;
        let CuttingForces { cutting, feed, passive, torque, .. } = forces;
        let along = |direction| match direction {
            AxialFeed::TowardChuck => -feed,
            AxialFeed::AwayFromChuck => feed,
        };
        let (radial, axial) = match self.operation.directions() {
            Directions::Turning(direction) => (-passive, along(direction)),
            Directions::Boring(direction) => (passive, along(direction)),
            Directions::Facing(RadialFeed::Inward) => (-feed, -passive),
            Directions::Facing(RadialFeed::Outward) => (feed, -passive),
            Directions::Grooving(Surface::Outside) => (-feed, 0.0),
            Directions::Grooving(Surface::Inside) => (feed, 0.0),
            Directions::Drilling => {
                return Ok(CutLoad {
                    tool: ToolPosition { radius: 0.0, z: self.tool.z },
                    radial: 0.0,
                    tangential: 0.0,
                    axial: -feed,
                    couple: -torque,
                });
            }
        };
        Ok(CutLoad { tool: self.tool, radial, tangential: -cutting, axial, couple: 0.0 })
    }

    /// Torque and power the spindle must give at `angular_speed` (rad/s, not
    /// negative) through a drive of the given efficiency in `(0, 1]`.
    ///
    /// # Errors
    /// As for [`Cut::forces`], and a speed or efficiency outside its range.
    pub fn demand(&self, angular_speed: f64, efficiency: f64) -> Result<SpindleDemand, CuttingError> {
        if !(angular_speed >= 0.0 && angular_speed.is_finite()) {
            return Err(CuttingError::Speed);
        }
        if !(efficiency > 0.0 && efficiency <= 1.0) {
            return Err(CuttingError::Efficiency);
        }
        let torque = self.forces()?.torque;
        Ok(SpindleDemand { torque, power: torque * angular_speed / efficiency })
    }
}

impl CutLoad {
    /// The wrench as a function of the tool's angle.
    #[must_use]
    pub fn rotating(&self) -> RotatingWrench {
        let ToolPosition { radius, z } = self.tool;
        let (radial, tangential, axial) = (self.radial, self.tangential, self.axial);
        RotatingWrench {
            steady: Wrench { force: [0.0, 0.0, axial], moment: [0.0, 0.0, radius * tangential + self.couple] },
            cosine: Wrench {
                force: [radial, tangential, 0.0],
                moment: [-z * tangential, z * radial - radius * axial, 0.0],
            },
            sine: Wrench {
                force: [-tangential, radial, 0.0],
                moment: [radius * axial - z * radial, -z * tangential, 0.0],
            },
        }
    }

    /// The wrench with the tool at angle `phi` in rad.
    #[must_use]
    pub fn wrench(&self, phi: f64) -> Wrench {
        self.rotating().at(phi)
    }
}

#[cfg(test)]
#[path = "cut_tests.rs"]
mod tests;
