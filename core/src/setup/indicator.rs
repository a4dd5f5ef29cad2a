//! Readings of an indicator, as typed values.

use alloc::vec::Vec;

use super::part::SurfaceSide;
use crate::quantity::{Angle, Length, Pressure};

/// What an indicator showed around the part.
#[derive(Clone, Debug)]
pub struct Indicator {
    /// Which surface it was read on.
    pub side: SurfaceSide,
    /// Where, along the axis, from the chuck side of the part.
    pub place: Length,
    /// Station 1 from the middle of jaw 1.
    pub start: Angle,
    /// Whether the part was released, after being turned in these jaws.
    pub released: bool,
    /// Smallest step that can be read.
    pub resolution: Length,
    /// The set read.
    pub first: DialSet,
    /// The set read at another grip.
    pub second: Option<DialSet>,
}

/// One set of readings.
#[derive(Clone, Debug)]
pub struct DialSet {
    /// How far outward each station stands, m; none where it was not read.
    pub departures: Vec<Option<f64>>,
    /// Pressure then. None: that of the run for the first set, hardly any grip for the second.
    pub pressure: Option<Pressure>,
}
