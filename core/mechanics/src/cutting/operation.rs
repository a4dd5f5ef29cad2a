//! Operations, their chips and the directions of their forces.

use super::CuttingError;
use super::kienzle::{Chip, SpecificForce};

/// Way of an axial feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum AxialFeed {
    /// Toward the chuck: the tool pushes the part in.
    #[default]
    TowardChuck,
    /// Away from the chuck: the tool pulls the part out.
    AwayFromChuck,
}

/// Way of a radial feed across a face.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum RadialFeed {
    /// Toward the axis.
    #[default]
    Inward,
    /// Away from the axis.
    Outward,
}

/// The surface that is cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Surface {
    /// An outside diameter.
    #[default]
    Outside,
    /// A bore.
    Inside,
}

/// Turning an outside diameter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turning {
    /// Depth of cut in m, on the radius.
    pub depth: f64,
    /// Feed per revolution in m.
    pub feed: f64,
    /// Approach angle kappa in rad, between edge and feed.
    pub approach: f64,
    /// Way of the feed.
    pub direction: AxialFeed,
}

/// Boring (turning inside).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Boring {
    /// Depth of cut in m, on the radius.
    pub depth: f64,
    /// Feed per revolution in m.
    pub feed: f64,
    /// Approach angle kappa in rad, between edge and feed.
    pub approach: f64,
    /// Way of the feed.
    pub direction: AxialFeed,
}

/// Facing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Facing {
    /// Depth of cut in m, along the axis.
    pub depth: f64,
    /// Feed per revolution in m.
    pub feed: f64,
    /// Approach angle kappa in rad, between edge and feed.
    pub approach: f64,
    /// Way of the feed.
    pub direction: RadialFeed,
}

/// Grooving or parting with a square-ended tool fed radially.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grooving {
    /// Width of the tool in m.
    pub width: f64,
    /// Feed per revolution in m.
    pub feed: f64,
    /// Where the groove is cut.
    pub surface: Surface,
}

/// Drilling on the axis with a two-lipped twist drill.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drilling {
    /// Drill diameter in m.
    pub diameter: f64,
    /// Diameter of the hole already there in m; 0 when drilling from the solid.
    pub pilot: f64,
    /// Feed per revolution in m, both lips together.
    pub feed: f64,
    /// Point angle in rad (118 degrees is usual).
    pub point_angle: f64,
}

/// A cut known only by the power the spindle draws for it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpindlePower {
    /// Power in W at the motor, idle power taken off.
    pub power: f64,
    /// Share of it that reaches the cut, in `(0, 1]`. Use 1 to be cautious.
    pub efficiency: f64,
    /// Spindle speed in rad/s.
    pub angular_speed: f64,
    /// Which way the forces act.
    pub directions: Directions,
}

/// Which way the cutting forces act on the part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Directions {
    /// Feed along the axis; passive force toward the axis.
    Turning(AxialFeed),
    /// Feed along the axis; passive force away from the axis.
    Boring(AxialFeed),
    /// Feed along the radius; passive force toward the chuck.
    Facing(RadialFeed),
    /// Feed along the radius into the surface; no passive force.
    Grooving(Surface),
    /// Feed along the axis toward the chuck; no passive force.
    Drilling,
}

/// What the tool does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Operation {
    /// Turning an outside diameter.
    Turning(Turning),
    /// Facing.
    Facing(Facing),
    /// Boring.
    Boring(Boring),
    /// Grooving or parting.
    Grooving(Grooving),
    /// Drilling on the axis.
    Drilling(Drilling),
    /// Known by spindle power only.
    SpindlePower(SpindlePower),
}

/// Thrust of a sharp twist drill over the cutting force of both its lips:
/// `sin(point angle / 2)`.
///
/// Tschätsch, *Praxis der Zerspantechnik* (from memory); web thinning lowers it
/// and wear can double it.
#[must_use]
pub fn twist_drill_thrust_ratio(point_angle: f64) -> f64 {
    libm::sin(point_angle / 2.0)
}

/// Main cutting force and the radius at which it acts.
pub(crate) struct MainForce {
    pub(crate) force: f64,
    pub(crate) lever: f64,
    pub(crate) chip: Option<Chip>,
}

impl Operation {
    /// Which way the forces act.
    #[must_use]
    pub fn directions(&self) -> Directions {
        match self {
            Self::Turning(cut) => Directions::Turning(cut.direction),
            Self::Facing(cut) => Directions::Facing(cut.direction),
            Self::Boring(cut) => Directions::Boring(cut.direction),
            Self::Grooving(cut) => Directions::Grooving(cut.surface),
            Self::Drilling(_) => Directions::Drilling,
            Self::SpindlePower(cut) => cut.directions,
        }
    }

    pub(crate) fn main_force(&self, material: &SpecificForce, tool_radius: f64) -> Result<MainForce, CuttingError> {
        let edge = |depth: f64, feed: f64, approach: f64| {
            let chip = chip(depth, feed, approach)?;
            let force = material.cutting_force(chip)?;
            Ok(MainForce { force, lever: tool_radius, chip: Some(chip) })
        };
        match *self {
            Self::Turning(Turning { depth, feed, approach, .. })
            | Self::Boring(Boring { depth, feed, approach, .. })
            | Self::Facing(Facing { depth, feed, approach, .. }) => edge(depth, feed, approach),
            Self::Grooving(Grooving { width, feed, .. }) => {
                if !(width > 0.0 && width.is_finite()) {
                    return Err(CuttingError::Width);
                }
                edge(width, feed, core::f64::consts::FRAC_PI_2)
            }
            Self::Drilling(drill) => drill.main_force(material),
            Self::SpindlePower(spindle) => spindle.main_force(tool_radius),
        }
    }
}

fn chip(depth: f64, feed: f64, approach: f64) -> Result<Chip, CuttingError> {
    if !(depth > 0.0 && depth.is_finite()) {
        return Err(CuttingError::Depth);
    }
    if !(feed > 0.0 && feed.is_finite()) {
        return Err(CuttingError::Feed);
    }
    if !(approach > 0.0 && approach < core::f64::consts::PI) {
        return Err(CuttingError::Approach);
    }
    Ok(Chip::of(depth, feed, approach))
}

impl Drilling {
    /// Each lip cuts `h = (f / 2) sin kappa` over the radius left by the pilot;
    /// its force acts half way along it. From the solid the torque is then
    /// `kc f D^2 / 8` (Tschätsch; Klocke, *Fertigungsverfahren 1*).
    fn main_force(&self, material: &SpecificForce) -> Result<MainForce, CuttingError> {
        if !(self.pilot >= 0.0 && self.diameter > self.pilot && self.diameter.is_finite()) {
            return Err(CuttingError::Diameter);
        }
        let lip = chip((self.diameter - self.pilot) / 2.0, self.feed / 2.0, self.point_angle / 2.0)?;
        Ok(MainForce {
            force: 2.0 * material.cutting_force(lip)?,
            lever: (self.diameter + self.pilot) / 4.0,
            chip: Some(lip),
        })
    }
}

impl SpindlePower {
    /// `Fc = P eta / (omega r)`.
    fn main_force(&self, tool_radius: f64) -> Result<MainForce, CuttingError> {
        if !(self.power >= 0.0 && self.power.is_finite()) {
            return Err(CuttingError::Power);
        }
        if !(self.efficiency > 0.0 && self.efficiency <= 1.0) {
            return Err(CuttingError::Efficiency);
        }
        if !(self.angular_speed > 0.0 && self.angular_speed.is_finite()) {
            return Err(CuttingError::Speed);
        }
        if tool_radius <= 0.0 {
            return Err(CuttingError::Tool);
        }
        let force = self.power * self.efficiency / (self.angular_speed * tool_radius);
        Ok(MainForce { force, lever: tool_radius, chip: None })
    }
}
