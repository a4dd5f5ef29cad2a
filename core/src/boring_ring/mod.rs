//! The boring ring or plug: what the jaws bear on while they are bored.
//!
//! It must push back in the direction in which the part will. Jaws of an outside grip close, and are stopped by a
//! ring whose *outside* lies against the far walls of the screw counterbores or of a groove cut in the jaw faces, or
//! by a plug between the jaw ends. Jaws of an inside grip open, and are stopped by a ring whose *inside* lies
//! against those walls, or that goes around the jaw ends.
//!
//! ```
//! use holdround_core::boring_ring::{Bearing, Groove, NoRoom, Place, Ring, Section, groove};
//! use holdround_core::{grip::Side, stroke::Blank};
//! let blank = Blank { length: 0.07, first_groove: 0.001, near_screw: 0.045, far_screw: 0.06, counterbore: 0.01,
//!     counterbore_depth: 0.03, nut: 0.04 };
//! let place = Place { side: Side::Outside, end_closed: 0.035, bored_radius: 0.05, height: 0.05, bored_depth: 0.02 };
//!
//! // For an outside grip, whatever a ring's outside or a plug lies against stops the jaws; going around them does not.
//! assert!(Bearing::Counterbores.stops(Side::Outside) && !Bearing::Around.stops(Side::Outside));
//! // The wall that bears is 45 mm and half a counterbore from the gripping end.
//! let wall = Bearing::Counterbores.distance(&blank).unwrap();
//! assert!((place.radius(wall, 0.0) - (0.035 + 0.045 + 0.005)).abs() < 1e-12);
//! let ring = Ring::to_make(Bearing::Counterbores, Side::Outside, 0.17, Section { thickness: 0.01, height: 0.01 });
//! assert!((ring.inside - 0.15).abs() < 1e-12);
//! assert_eq!(ring.bearing_diameter(Side::Outside), 0.17);
//!
//! // A groove of its own in the jaw faces, or how much room is wanting.
//! let thin = Section { thickness: 0.006, height: 0.006 };
//! let Groove { inside, outside, .. } = groove(&place, &blank, 0.002, thin, 2e-3, 0.5e-3)?;
//! assert!(outside > inside);
//! let thick = Section { thickness: 0.03, height: 0.006 };
//! let NoRoom { needed, widest } = groove(&place, &blank, 0.002, thick, 2e-3, 0.5e-3).unwrap_err();
//! assert!(needed > widest);
//! # Ok::<(), NoRoom>(())
//! ```

mod bearing;
mod groove;

pub use bearing::{
    Bearing, Place, Ring, Section, bar_clearance, below_bore, cut_clearance, gauged_diameter, position_on,
};
pub use groove::{Groove, NoRoom, groove, groove_for};

#[cfg(test)]
mod tests;
