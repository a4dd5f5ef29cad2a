//! The chuck as typed values: its plate, what drives it, and how its grip is known.

use alloc::vec::Vec;

use crate::quantity::{AngularVelocity, Force, Length, Mass, Pressure, Ratio};

/// The chuck and what drives it.
#[derive(Clone, Debug)]
pub struct Chuck {
    /// Number of jaws.
    pub jaws: u32,
    /// Body diameter.
    pub body_diameter: Length,
    /// Greatest speed on the plate.
    pub max_speed: AngularVelocity,
    /// Greatest total grip on the plate.
    pub max_grip: Force,
    /// Greatest draw force on the plate.
    pub max_draw: Force,
    /// Greatest cylinder pressure.
    pub max_pressure: Pressure,
    /// Jaw height for which the plate holds.
    pub reference_height: Length,
    /// Greatest swing of the jaws, if known.
    pub max_swing: Option<Length>,
    /// How the grip at rest is known.
    pub grip_from: GripFrom,
    /// The cylinder, where a gauge tells the grip and the plate is only compared with it.
    pub behind_gauge: Option<Cylinder>,
    /// Readings of a grip gauge that turned: speed and total grip, all at one pressure.
    pub spun: Vec<(AngularVelocity, Force)>,
    /// Mass of one master jaw with nuts and screws.
    pub master_mass: Mass,
    /// Its centre of mass from the axis.
    pub master_radius: Length,
    /// Tilt stiffness of a master jaw, N·m/rad.
    pub tilt_stiffness: f64,
    /// Radial stiffness of a master jaw, N/m.
    pub radial_stiffness: f64,
    /// Least share of the spin force that reaches the part.
    pub spin_share_least: Ratio,
    /// Greatest share of the spin force that reaches the part.
    pub spin_share_most: Ratio,
}

/// How the grip at rest is known.
#[derive(Clone, Debug)]
pub enum GripFrom {
    /// From the plate and the cylinder.
    Plate {
        /// The cylinder.
        cylinder: Cylinder,
        /// Condition of the chuck.
        condition: Ratio,
    },
    /// From one point of the chuck's chart.
    Chart {
        /// Pressure of the point.
        pressure: Pressure,
        /// Total grip there.
        grip: Force,
        /// Condition of the chuck.
        condition: Ratio,
    },
    /// From readings of a grip gauge: pressure and total grip.
    Gauge(Vec<(Pressure, Force)>),
}

/// The clamping cylinder.
#[derive(Clone, Debug)]
pub struct Cylinder {
    /// Bore.
    pub bore: Length,
    /// Rod or draw tube diameter.
    pub rod: Length,
    /// Whether the oil acts on the rod side.
    pub rod_side: bool,
    /// Efficiency.
    pub efficiency: Ratio,
}
