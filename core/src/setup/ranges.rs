//! How well what goes into a job is known, as typed values.

use super::range_inputs as r;
use super::reader::Reader;
use crate::quantity::{Length, Pressure, Ratio};

/// How far off what is entered may be, either way.
#[derive(Clone, Debug)]
pub struct Ranges {
    /// Friction, as a share of it.
    pub friction: Ratio,
    /// Condition of the chuck, as a share of it; none where the grip was read on a gauge.
    pub condition: Ratio,
    /// The pressure the gauge shows.
    pub pressure: Pressure,
    /// The wall.
    pub wall: Length,
    /// The bored diameter.
    pub bore: Length,
    /// The cutting force, as a share of it.
    pub force: Ratio,
    /// Least hold factor accepted at the worst end of every range.
    pub worst_hold: Ratio,
}

impl Ranges {
    pub(super) fn read(reader: &mut Reader<'_>) -> Option<Self> {
        let friction = reader.ratio(&r::FRICTION_RANGE, 0);
        let measured = reader.is_chosen(&super::chuck_inputs::GRIP_FROM, "gauge");
        let condition = if measured { Some(Ratio::default()) } else { reader.ratio(&r::CONDITION_RANGE, 0) };
        let pressure = reader.pressure(&r::GAUGE_RANGE, 0);
        let wall = reader.length(&r::WALL_RANGE);
        let bore = reader.length(&r::BORE_RANGE);
        let force = reader.ratio(&r::FORCE_RANGE, 0);
        let worst_hold = reader.ratio(&r::WORST_HOLD, 0);
        Some(Self {
            friction: friction?,
            condition: condition?,
            pressure: pressure?,
            wall: wall?,
            bore: bore?,
            force: force?,
            worst_hold: worst_hold?,
        })
    }
}
