//! The boring ring or plug: what the jaws bear on while they are bored.
//!
//! It must push back in the direction in which the part will. Jaws of an outside grip close, and are stopped by a
//! ring whose *outside* lies against the far walls of the screw counterbores or of a groove cut in the jaw faces, or
//! by a plug between the jaw ends. Jaws of an inside grip open, and are stopped by a ring whose *inside* lies
//! against those walls, or that goes around the jaw ends.

mod bearing;
mod groove;

pub use bearing::{
    Bearing, Place, Ring, Section, bar_clearance, below_bore, cut_clearance, gauged_diameter, position_on,
};
pub use groove::{Groove, NoRoom, groove, groove_for};

#[cfg(test)]
mod tests;
