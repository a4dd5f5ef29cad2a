//! What the diagram draws: sizes, forces and shapes in SI, nothing that would have to be computed again.

use alloc::vec::Vec;
use core::f64::consts::TAU;

use super::boring::{BluingPicture, JawPath};
use super::indicator::Dial;
use super::placing::{Placing, Procedure};
use crate::text::Text;

/// What the diagram draws.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Scene {
    /// Half the angle over which one jaw touches, rad.
    pub contact_half_angle: f64,
    /// Radius of the jaw's end nearest the axis, m.
    pub jaw_inner_radius: f64,
    /// Radius of the jaw's far end on its own axis, m.
    pub jaw_outer_radius: f64,
    /// Radius of the farthest jaw corner, m.
    pub swing_radius: f64,
    /// Grip of one jaw at rest, N.
    pub jaw_grip_at_rest: f64,
    /// Grip of one jaw at speed, at the end of the range that is bad for slip, N.
    pub jaw_grip_at_speed: f64,
    /// Mean contact pressure under a jaw at rest, Pa.
    pub contact_pressure: f64,
    /// Contact pressure over half a jaw face at rest.
    pub pressure: PressureMap,
    /// The clamped outside at rest.
    pub clamped_outside: Wave,
    /// The clamped bore at rest; flat if solid.
    pub clamped_bore: Wave,
    /// The clamped outside along the axis, at rest.
    pub outside_along: Vec<Shift>,
    /// The clamped bore along the axis, at rest; empty if solid.
    pub bore_along: Vec<Shift>,
    /// Share of the clamped shape that is left at speed, at the end of the range that is bad for shape.
    pub shape_share_at_speed: f64,
    /// The released profile that the headline of roundness judges; none where it is refused.
    pub trace: Option<Trace>,
    /// The path that bores the jaws; none where none can be planned.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub jaw_path: Option<JawPath>,
    /// Taper to cut now, m per side: what the readings ask for, or else what is worked out; 0 where that can hardly be
    /// cut. None where none can be told, where readings tell none, or where the ring is to be changed first.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub cut_taper: Option<f64>,
    /// Bluing with too little, the right and too much taper (a thousandth of an inch off, or what it takes to show), and
    /// with the taper set.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub bluing: Vec<BluingPicture>,
    /// Where the jaws stand; none unless it was asked for.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub placing: Option<Placing>,
    /// What an indicator showed; none unless it was read. Its waves are findings, and are not written twice.
    #[cfg_attr(feature = "serde", serde(skip))]
    pub indicator: Option<Dial>,
    /// What is to be done at the machine.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub procedures: Vec<Procedure>,
}

/// The released profile of one round surface, and its reference circles.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Trace {
    /// Name of the surface.
    pub surface: Text,
    /// Its radius where it is least round, m.
    pub radius: f64,
    /// Its departure after release, about the mean of the clamped cut.
    pub released: Wave,
    /// Least squares, minimum zone, minimum circumscribed and maximum inscribed, in this order.
    pub circles: [TraceCircle; 4],
}

/// One reference circle of a trace.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct TraceCircle {
    /// Its name.
    pub name: &'static str,
    /// Centre from the axis toward jaw 1, m.
    pub x: f64,
    /// Centre from the axis toward a quarter turn from jaw 1, m.
    pub y: f64,
    /// Radius of the circle less that of the surface, m; midway between the two of the minimum zone.
    pub radius: f64,
    /// Peak to valley from this circle, m (RONt); the width of the minimum zone.
    pub roundness: f64,
}

/// Pressure over half a jaw face; the other half mirrors it.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct PressureMap {
    /// Angles from the middle of the jaw, rad.
    pub angles: Vec<f64>,
    /// Places along the part's axis, from its chuck side, m.
    pub heights: Vec<f64>,
    /// Pressure, Pa: for each angle, each place.
    pub pressure: Vec<f64>,
}

/// How far a place along a surface is moved outward.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Shift {
    /// Along the axis, from the part's chuck side, m. Where steps meet it stands twice, for either diameter.
    pub z: f64,
    /// At the middle of a jaw, m.
    pub at_jaw: f64,
    /// Midway between jaws, m.
    pub between_jaws: f64,
}

/// A surface's radial departure from its true circle, symmetric about each jaw.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Wave {
    /// Mean departure, m, positive outward.
    pub mean: f64,
    /// Order and amplitude, m, of each cosine; jaw 1 stands at angle 0.
    pub harmonics: Vec<(u32, f64)>,
}

impl Wave {
    /// The departure at `angle` from jaw 1, m.
    ///
    /// ```
    /// use holdround_core::findings::Wave;
    /// let wave = Wave { mean: 1e-6, harmonics: vec![(3, 2e-6)] };
    /// assert!((wave.at(0.0) - 3e-6).abs() < 1e-18);
    /// ```
    #[must_use]
    pub fn at(&self, angle: f64) -> f64 {
        let lobes = self.harmonics.iter().map(|(order, amplitude)| amplitude * libm::cos(f64::from(*order) * angle));
        self.mean + lobes.sum::<f64>()
    }

    /// The departures at `count` angles, evenly around from jaw 1 on, m; quicker than one by one.
    ///
    /// ```
    /// use holdround_core::findings::Wave;
    /// let wave = Wave { mean: 1e-6, harmonics: vec![(3, 2e-6), (6, 5e-7)] };
    /// let around = wave.around(240);
    /// assert!((around[50] - wave.at(core::f64::consts::TAU * 50.0 / 240.0)).abs() < 1e-18);
    /// ```
    #[must_use]
    pub fn around(&self, count: usize) -> Vec<f64> {
        let cosines: Vec<f64> = (0..count).map(|at| libm::cos(TAU * at as f64 / count as f64)).collect();
        let lobes = |at: usize| self.harmonics.iter().map(move |(order, amplitude)| (*order as usize * at, amplitude));
        let departure =
            |at| self.mean + lobes(at).map(|(turned, amplitude)| amplitude * cosines[turned % count]).sum::<f64>();
        (0..count).map(departure).collect()
    }
}
