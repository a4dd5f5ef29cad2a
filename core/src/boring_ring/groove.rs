//! A groove cut in the jaw faces for a ring of its own, where nothing else clears the cut.

use super::bearing::{Place, Ring, Section};
use crate::grip::Side;
use crate::stroke::{Blank, outward};

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

/// Strips of whole metal behind the bored face, less `wall` on either side: distances from the gripping end, m.
fn strips(place: &Place, blank: &Blank, position: f64, wall: f64) -> [(f64, f64); 3] {
    let face = outward(place.side) * (place.bored_radius - place.radius(0.0, position));
    let half = 0.5 * blank.counterbore;
    [
        (0.0, blank.near_screw - half),
        (blank.near_screw + half, blank.far_screw - half),
        (blank.far_screw + half, blank.length),
    ]
    .map(|(from, to)| (from.max(face) + wall, to - wall))
}

/// The groove for a ring there is, cut where that ring bears: none where it would leave less than `wall` of metal on
/// either side, or be as deep as the jaw is high.
///
/// ```
/// # use holdround_core::{grip::Side, stroke::Blank};
/// # use holdround_core::boring_ring::{Place, Ring, groove_for};
/// # let blank = Blank { length: 0.07, first_groove: 0.001, near_screw: 0.045, far_screw: 0.06, counterbore: 0.01,
/// #     counterbore_depth: 0.03, nut: 0.04 };
/// # let place = Place { side: Side::Outside, end_closed: 0.035, bored_radius: 0.05, height: 0.05, bored_depth: 0.02 };
/// // Whole metal from the bore at 50 mm to the near counterbore at 37 + 40 mm.
/// let ring = Ring { outside: 0.13, inside: 0.12, height: 0.008 };
/// let groove = groove_for(&place, &blank, 0.002, ring, 0.003, 0.0005).unwrap();
/// assert!((groove.inside - 0.119).abs() < 1e-12 && (groove.outside - 0.13).abs() < 1e-12);
/// assert_eq!(groove_for(&place, &blank, 0.002, ring, 0.02, 0.0005), None, "too little metal beside it");
/// ```
#[must_use]
pub fn groove_for(place: &Place, blank: &Blank, position: f64, ring: Ring, wall: f64, play: f64) -> Option<Groove> {
    let [inner, outer] = match place.side {
        Side::Outside => [0.5 * ring.inside - play, 0.5 * ring.outside],
        Side::Inside => [0.5 * ring.inside, 0.5 * ring.outside + play],
    };
    let from_end = |radius: f64| outward(place.side) * (radius - place.radius(0.0, position));
    let ends = [from_end(inner), from_end(outer)];
    let (near, far) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
    // Less than a nanometre is rounding.
    let whole = strips(place, blank, position, wall).iter().any(|(from, to)| near >= from - 1e-9 && far <= to + 1e-9);
    (whole && inner > 0.0 && ring.height < place.height).then_some(Groove {
        inside: 2.0 * inner,
        outside: 2.0 * outer,
        depth: ring.height,
        ring,
    })
}

/// The groove nearest to the gripping face that leaves `wall` of metal on either side of it, with `play` for the
/// ring beside the wall that bears. The jaws stand at `position` while groove and bore are cut.
///
/// The ring lies flush: the groove is as deep as the ring is high.
///
/// ```
/// # use holdround_core::{grip::Side, stroke::Blank};
/// # use holdround_core::boring_ring::{Place, Section, groove};
/// # let blank = Blank { length: 0.07, first_groove: 0.001, near_screw: 0.045, far_screw: 0.06, counterbore: 0.01,
/// #     counterbore_depth: 0.03, nut: 0.04 };
/// # let place = Place { side: Side::Outside, end_closed: 0.035, bored_radius: 0.05, height: 0.05, bored_depth: 0.02 };
/// // The bore is at 50 mm: behind 3 mm of metal a ring 5 mm thick with 0.5 mm of play bears at 58.5 mm.
/// let section = Section { thickness: 0.005, height: 0.008 };
/// let groove = groove(&place, &blank, 0.002, section, 0.003, 0.0005)?;
/// assert!((groove.ring.outside - 0.117).abs() < 1e-12 && (groove.inside - 0.106).abs() < 1e-12);
/// # Ok::<(), holdround_core::boring_ring::NoRoom>(())
/// ```
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
    let needed = section.thickness + play;
    let mut widest = 0.0_f64;
    for (from, to) in strips(place, blank, position, wall) {
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
