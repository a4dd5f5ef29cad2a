//! A groove cut in the jaw faces for a ring of its own, where nothing else clears the cut.

use super::bearing::{Place, Ring, Section};
use crate::grip::Side;
use crate::stroke::Blank;

/// A groove and the ring that fits it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Groove {
    /// Diameter of its inner wall where it is cut, m.
    pub inside: f64,
    /// Diameter of its outer wall where it is cut, m.
    pub outside: f64,
    /// Its depth from the jaw face, m.
    pub depth: f64,
    /// The ring to make.
    pub ring: Ring,
}

/// No strip of the jaw face is wide enough.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NoRoom {
    /// The width needed, m.
    pub needed: f64,
    /// The widest there is, m; 0 if none.
    pub widest: f64,
}

/// The groove nearest to the gripping face that leaves `wall` of metal on either side of it, with `play` for the
/// ring beside the wall that bears. The jaws stand at `position` while groove and bore are cut.
///
/// The ring lies flush: the groove is as deep as the ring is high.
///
/// # Errors
/// [`NoRoom`] when neither before, nor between, nor behind the counterbores a strip is wide enough.
pub fn groove(
    place: &Place,
    blank: &Blank,
    position: f64,
    section: Section,
    wall: f64,
    play: f64,
) -> Result<Groove, NoRoom> {
    let end = place.radius(0.0, position);
    let face = match place.side {
        Side::Outside => place.bored_radius - end,
        Side::Inside => end - place.bored_radius,
    };
    let half = 0.5 * blank.counterbore;
    // Strips of whole metal, as distances from the gripping end.
    let edges = [
        (0.0, blank.near_screw - half),
        (blank.near_screw + half, blank.far_screw - half),
        (blank.far_screw + half, blank.length),
    ];
    let needed = section.thickness + play;
    let mut widest = 0.0_f64;
    for (from, to) in edges {
        let (from, to) = (from.max(face) + wall, to - wall);
        if to - from >= needed {
            let near = place.radius(from, position);
            let bearing = place.radius(from + needed, position);
            let depth = section.height;
            let ring = match place.side {
                Side::Outside => {
                    Ring { outside: 2.0 * bearing, inside: 2.0 * (bearing - section.thickness), height: depth }
                }
                Side::Inside => {
                    Ring { outside: 2.0 * (bearing + section.thickness), inside: 2.0 * bearing, height: depth }
                }
            };
            if near.min(bearing) > 0.0 {
                return Ok(Groove { inside: 2.0 * near.min(bearing), outside: 2.0 * near.max(bearing), depth, ring });
            }
        }
        widest = widest.max(to - from);
    }
    Err(NoRoom { needed, widest })
}
