//! Boring the jaws, as typed values.

use alloc::string::String;
use alloc::vec::Vec;

use crate::quantity::{Angle, AngularVelocity, Length, Pressure, Ratio, UnitSystem};
use crate::taper::End;

/// How the jaws are bored, and what readings of them have shown.
#[derive(Clone, Debug)]
pub struct Boring {
    /// Diameter at which the jaws stand before; from the blank if none.
    pub standing: Option<Length>,
    /// Taken off the front face.
    pub skim: Length,
    /// How far beyond the chamfer the front is skimmed.
    pub skim_width: Length,
    /// Leg of the lead chamfer.
    pub chamfer: Length,
    /// Width of the relief groove.
    pub relief_width: Length,
    /// Depth of the relief groove.
    pub relief_depth: Length,
    /// Nose radius.
    pub nose_radius: Length,
    /// Angle between the finished face and the edge behind the nose.
    pub behind: Angle,
    /// Diameter of the bar, or thickness of the shank.
    pub bar_diameter: Length,
    /// How far it stands out.
    pub bar_reach: Length,
    /// Width of what holds it.
    pub holder_width: Length,
    /// Roughing depth of cut, per side.
    pub depth_of_cut: Length,
    /// Left for finishing, per side.
    pub allowance: Length,
    /// Feed of roughing, per revolution.
    pub rough_feed: Length,
    /// Feed of finishing, per revolution.
    pub finish_feed: Length,
    /// Surface speed wanted, m/s.
    pub surface_speed: f64,
    /// Share of it for interrupted cutting.
    pub interrupted: Ratio,
    /// The user's own speed limit.
    pub speed_limit: AngularVelocity,
    /// Where the tool starts, in front of the jaws.
    pub start: Length,
    /// The units of the program, where they were chosen by hand; else those in which lengths are shown.
    pub units: Option<UnitSystem>,
    /// Whether the spindle turns backward.
    pub backward: bool,
    /// Program number.
    pub number: String,
    /// Name of the program.
    pub name: String,
    /// Readings of how the jaws bear, in the order taken.
    pub readings: Vec<TaperReading>,
}

impl Boring {
    /// What does not bear at the bottom and at the mouth of the bore, m along the axis.
    #[must_use]
    pub fn bare(&self) -> [f64; 2] {
        let grooved = self.relief_width.value > 0.0 && self.relief_depth.value > 0.0;
        [if grooved { self.relief_width.value } else { 0.0 }, self.chamfer.value]
    }
}

/// A reading of how bored jaws bear on a true plug or part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TaperReading {
    /// More metal at the tip than at the base, per side.
    pub taper: Length,
    /// What it showed.
    pub shows: Bears,
    /// Pressure then; that of the run if none.
    pub pressure: Option<Pressure>,
}

/// What a reading showed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bears {
    /// A feeler of this thickness goes in at the tip.
    Gap(Length),
    /// Blue rubs off at one end only, and over which length from there, where that was measured.
    Only(End, Option<Length>),
    /// Blue rubs off at both ends.
    Even,
}
