//! Where a ring or plug bears, the size it must have, and what it leaves free.

use crate::grip::Side;
use crate::stroke::{Blank, outward};

/// Where the jaws bear on the ring or plug.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bearing {
    /// The walls of the near screw counterbores.
    Counterbores,
    /// The jaw ends, on a plug between them.
    Plug,
    /// The wall of a groove cut in the jaw faces.
    Groove,
    /// The jaw ends, in a ring around them.
    Around,
}

impl Bearing {
    /// Every one of them.
    pub const ALL: [Self; 4] = [Self::Counterbores, Self::Plug, Self::Groove, Self::Around];

    /// Whether it stops the jaws of this grip: those of an outside grip close, those of an inside grip open.
    #[must_use]
    pub const fn stops(self, side: Side) -> bool {
        match self {
            Self::Counterbores | Self::Groove => true,
            Self::Plug => matches!(side, Side::Outside),
            Self::Around => matches!(side, Side::Inside),
        }
    }

    /// Why such a ring does not go where it bears; none if it does.
    ///
    /// ```
    /// use holdround_core::boring_ring::{Bearing, Ring};
    /// # let blank = holdround_core::stroke::Blank { length: 0.07, first_groove: 0.001, near_screw: 0.03,
    /// #     far_screw: 0.05, counterbore: 0.02, counterbore_depth: 0.03, nut: 0.04 };
    /// let plug = Ring { outside: 0.08, inside: 0.0, height: 0.01 };
    /// assert!(Bearing::Plug.refuses(&plug, &blank).is_none());
    /// assert!(Bearing::Counterbores.refuses(&plug, &blank).is_some());
    /// ```
    #[must_use]
    pub fn refuses(self, ring: &Ring, blank: &Blank) -> Option<&'static str> {
        match self {
            Self::Plug => None,
            _ if ring.inside <= 0.0 => Some("a plug, where a ring is wanted"),
            Self::Counterbores if ring.outside - ring.inside > 2.0 * blank.counterbore => {
                Some("too thick for the counterbores")
            }
            _ => None,
        }
    }

    /// Distance, m, from the gripping end of the jaw to what bears; none for a groove, which is cut where it is wanted.
    #[must_use]
    pub fn distance(self, blank: &Blank) -> Option<f64> {
        match self {
            Self::Counterbores => Some(blank.bearing_wall()),
            Self::Plug | Self::Around => Some(0.0),
            Self::Groove => None,
        }
    }
}

/// A ring or plug.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ring {
    /// Outside diameter, m.
    pub outside: f64,
    /// Inside diameter, m; 0 for a plug.
    pub inside: f64,
    /// Height along the axis, m.
    pub height: f64,
}

/// The section of a ring that is to be made, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Section {
    /// Its radial thickness.
    pub thickness: f64,
    /// Its height along the axis.
    pub height: f64,
}

impl Ring {
    /// The diameter the jaws bear on, m.
    #[must_use]
    pub const fn bearing_diameter(&self, side: Side) -> f64 {
        match side {
            Side::Outside => self.outside,
            Side::Inside => self.inside,
        }
    }

    /// A ring to be made with this bearing diameter. A plug is solid.
    #[must_use]
    pub fn to_make(bearing: Bearing, side: Side, diameter: f64, section: Section) -> Self {
        let height = section.height;
        match (bearing, side) {
            (Bearing::Plug, _) => Self { outside: diameter, inside: 0.0, height },
            (_, Side::Outside) => {
                Self { outside: diameter, inside: (diameter - 2.0 * section.thickness).max(0.0), height }
            }
            (_, Side::Inside) => Self { outside: diameter + 2.0 * section.thickness, inside: diameter, height },
        }
    }
}

/// Where the jaws stand and what they are bored to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// The grip.
    pub side: Side,
    /// Radius of the gripping end with the master jaw fully closed, on the chosen tooth, m.
    pub end_closed: f64,
    /// Bored radius, m.
    pub bored_radius: f64,
    /// Height of the jaw above the serrations, m.
    pub height: f64,
    /// Depth of the bore from the front of the jaw, m.
    pub bored_depth: f64,
}

impl Place {
    /// Radius, m, of what stands `distance` from the gripping end when the master jaw stands at `position`.
    #[must_use]
    pub fn radius(&self, distance: f64, position: f64) -> f64 {
        self.end_closed + position + outward(self.side) * distance
    }
}

/// The diameter, m, that must be gauged by ring or plug for the jaws to stand at `position`: the ring's outside for an
/// outside grip, its inside for an inside grip. None for a groove, or where it would be nothing.
///
/// ```
/// use holdround_core::boring_ring::{Bearing, Place, gauged_diameter};
/// use holdround_core::{grip::Side, stroke::Blank};
/// let blank = Blank { length: 0.07, first_groove: 0.001, near_screw: 0.03, far_screw: 0.05, counterbore: 0.02,
///     counterbore_depth: 0.03, nut: 0.04 };
/// let place = Place { side: Side::Outside, end_closed: 0.035, bored_radius: 0.05, height: 0.05, bored_depth: 0.02 };
/// // Screws at 65 + 2 mm from the axis, counterbores of 20 mm: the ring is 2 (67 + 10) mm.
/// let ring = gauged_diameter(Bearing::Counterbores, &place, &blank, 0.002).unwrap();
/// assert!((ring - 0.154).abs() < 1e-12);
/// ```
#[must_use]
pub fn gauged_diameter(bearing: Bearing, place: &Place, blank: &Blank, position: f64) -> Option<f64> {
    let diameter = 2.0 * place.radius(bearing.distance(blank)?, position);
    (diameter > 0.0).then_some(diameter)
}

/// The position, m, at which the jaws stand on a ring. A groove is cut to suit its ring, so that the jaws stand in the
/// middle of the stroke: none.
///
/// ```
/// # use holdround_core::{grip::Side, stroke::Blank};
/// # use holdround_core::boring_ring::{Bearing, Place, Ring, position_on};
/// # let blank = Blank { length: 0.07, first_groove: 0.001, near_screw: 0.03, far_screw: 0.05, counterbore: 0.02,
/// #     counterbore_depth: 0.03, nut: 0.04 };
/// # let place = Place { side: Side::Outside, end_closed: 0.035, bored_radius: 0.05, height: 0.05, bored_depth: 0.02 };
/// // The walls that bear stand at 35 + 30 + 10 = 75 mm with the jaws closed; the ring's at 77 mm.
/// let ring = Ring { outside: 0.154, inside: 0.134, height: 0.01 };
/// let position = position_on(Bearing::Counterbores, &ring, &place, &blank).unwrap();
/// assert!((position - 0.002).abs() < 1e-12);
/// assert_eq!(position_on(Bearing::Groove, &ring, &place, &blank), None);
/// ```
#[must_use]
pub fn position_on(bearing: Bearing, ring: &Ring, place: &Place, blank: &Blank) -> Option<f64> {
    Some(0.5 * ring.bearing_diameter(place.side) - place.radius(bearing.distance(blank)?, 0.0))
}

/// What the ring leaves free for the cut, m; negative where they meet. It clears the cut beside it, per side between the
/// bored circle and the ring, or below it, from the bottom of the bore down to its top: the larger of the two counts.
/// Its middle stands `middle` m above the serrations.
///
/// ```
/// # use holdround_core::{grip::Side, boring_ring::{Place, Ring, cut_clearance}};
/// # let place = Place { side: Side::Outside, end_closed: 0.035, bored_radius: 0.05, height: 0.05, bored_depth: 0.02 };
/// // A ring at half the height of the jaws, with its inside 17 mm outside the bore.
/// let ring = Ring { outside: 0.154, inside: 0.134, height: 0.01 };
/// assert!((cut_clearance(&ring, &place, 0.025) - 0.017).abs() < 1e-12);
/// ```
#[must_use]
pub fn cut_clearance(ring: &Ring, place: &Place, middle: f64) -> f64 {
    let beside = match place.side {
        Side::Outside => 0.5 * ring.inside - place.bored_radius,
        Side::Inside => place.bored_radius - 0.5 * ring.outside,
    };
    beside.max(below_bore(ring, place, middle))
}

/// From the bottom of the bore down to the top of the ring, m; negative where the ring stands higher.
///
/// ```
/// # use holdround_core::{grip::Side, boring_ring::{Place, Ring, below_bore}};
/// # let place = Place { side: Side::Outside, end_closed: 0.035, bored_radius: 0.05, height: 0.05, bored_depth: 0.02 };
/// // The bore ends 30 mm above the serrations, the ring 20 + 5 mm.
/// let ring = Ring { outside: 0.06, inside: 0.0, height: 0.01 };
/// assert!((below_bore(&ring, &place, 0.02) - 0.005).abs() < 1e-12);
/// ```
#[must_use]
pub fn below_bore(ring: &Ring, place: &Place, middle: f64) -> f64 {
    place.height - place.bored_depth - (middle + 0.5 * ring.height)
}

/// What a boring bar of this diameter has to spare, m on diameter, where it first goes in: between the jaw ends, and
/// through the ring unless that lies below the bore. `end` is the radius of the jaw ends.
///
/// ```
/// # use holdround_core::{grip::Side, boring_ring::{Place, Ring, bar_clearance}};
/// # let place = Place { side: Side::Outside, end_closed: 0.035, bored_radius: 0.05, height: 0.05, bored_depth: 0.02 };
/// // A bar of 25 mm between jaw ends 74 mm apart, through a ring of 40 mm; and over it, where it lies below the bore.
/// let ring = Ring { outside: 0.07, inside: 0.04, height: 0.01 };
/// assert!((bar_clearance(&ring, &place, 0.04, 0.037, 0.025) - 0.015).abs() < 1e-12);
/// assert!((bar_clearance(&ring, &place, 0.01, 0.037, 0.025) - 0.049).abs() < 1e-12);
/// ```
#[must_use]
pub fn bar_clearance(ring: &Ring, place: &Place, middle: f64, end: f64, bar: f64) -> f64 {
    let opening = if below_bore(ring, place, middle) >= 0.0 { 2.0 * end } else { (2.0 * end).min(ring.inside) };
    opening - bar
}
