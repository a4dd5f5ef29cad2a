//! Where the jaws stand, for drawing: teeth, stroke, ring or plug. SI; radii from the spindle axis.

use alloc::string::String;
use alloc::vec::Vec;

/// Where the jaws stand while they are bored.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Placing {
    /// The tooth the jaws are on.
    pub tooth: i32,
    /// Pitch of the serrations, m.
    pub pitch: f64,
    /// Height of the sharp teeth, m.
    pub tooth_height: f64,
    /// Stroke of a master jaw, m.
    pub stroke: f64,
    /// Position in the stroke, m.
    pub bored_at: f64,
    /// Position in the stroke when gripping the least, the nominal and the greatest part, m.
    pub gripping_at: [f64; 3],
    /// Inner and outer end of the serrated face, m.
    pub master: [f64; 2],
    /// Gripping end and other end of the top jaw, m.
    pub jaw: [f64; 2],
    /// The bored face, m.
    pub bored_radius: f64,
    /// Near and far screw, m.
    pub screws: [f64; 2],
    /// Diameter and depth of their counterbores, m.
    pub counterbore: [f64; 2],
    /// Inner and outer end of the T-nut, m.
    pub nut: [f64; 2],
    /// What a jaw moves away from the part for loading, m; outward for an outside grip.
    pub travel: f64,
    /// The teeth tried.
    pub teeth: Vec<Tooth>,
    /// The ring or plug the jaws are bored on; none if it cannot be told.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub ring: Option<RingSection>,
    /// The groove to cut in the jaw faces; none if none is wanted.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub groove: Option<RingSection>,
    /// Every way in which a ring could bear, with what it would leave free.
    pub bearings: Vec<BearingChoice>,
    /// The user's own rings, in their order.
    pub own_rings: Vec<OwnRingFit>,
}

/// One tooth that was tried.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Tooth {
    /// Its number.
    pub tooth: i32,
    /// Position in the stroke while bored, m.
    pub bored_at: f64,
    /// Step left under the part, m.
    pub step: f64,
    /// Metal to the nearest counterbore, m.
    pub wall: f64,
    /// Clearance per side for loading, m.
    pub clearance: f64,
    /// What is wrong with it, in words; empty if nothing.
    pub faults: Vec<&'static str>,
}

/// Section of a ring, plug or groove.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct RingSection {
    /// Inside and outside radius, m; 0 inside for a plug.
    pub radii: [f64; 2],
    /// Bottom and top above the serrations, m.
    pub heights: [f64; 2],
}

/// One way in which a ring or plug could bear.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct BearingChoice {
    /// Its key, as in the input `ring.bearing`.
    pub bearing: &'static str,
    /// The diameter that ring or plug must gauge for mid-stroke, m.
    pub diameter: f64,
    /// What it leaves free for the cut, m.
    pub clearance: f64,
    /// Whether that is enough.
    pub clears: bool,
}

/// One of the user's own rings.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct OwnRingFit {
    /// The user's own name for it.
    pub name: String,
    /// Position in the stroke at which the jaws stand on it, m.
    pub position: f64,
    /// What it leaves free for the cut, m.
    pub clearance: f64,
    /// What speaks against it, in words; empty if it serves.
    pub against: Vec<&'static str>,
}

/// Something to be done at the machine, step by step.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Procedure {
    /// Its name in data: `recut.touch_off`.
    pub id: &'static str,
    /// Its title.
    pub title: &'static str,
    /// The steps, in order.
    pub steps: Vec<&'static str>,
}
