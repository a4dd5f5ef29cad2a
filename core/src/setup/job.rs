//! The set-up as typed values: the whole job, validated.

use alloc::string::String;
use alloc::vec::Vec;

use super::boring::Boring;
use super::chuck::Chuck;
use super::cut::{Cut, CutKind};
use super::indicator::Indicator;
use super::part::{Part, Toward};
use super::placing::Placing;
use super::ranges::Ranges;
use crate::grip::Side;
use crate::jaw::{Jaw, Shape};
use crate::materials::Material;
use crate::quantity::{Angle, AngularVelocity, Force, Length, Mass, Pressure, Ratio};

/// Least share of the grip's length that chamfer and groove leave to bear. Our own value.
const LEAST_BEARING: f64 = 0.25;

/// A valid set-up: everything the engines need, nothing they would have to doubt.
#[derive(Clone, Debug)]
pub struct Setup {
    /// The user's own name for the job.
    pub name: String,
    /// The part.
    pub part: Part,
    /// How it is gripped.
    pub grip: Grip,
    /// The chuck.
    pub chuck: Chuck,
    /// The top jaws.
    pub jaws: Jaws,
    /// Clamping pressure.
    pub pressure: Pressure,
    /// Clamping pressure for finishing, where it is another.
    pub finish_pressure: Option<Pressure>,
    /// Spindle speed.
    pub speed: AngularVelocity,
    /// The cuts, at least one.
    pub cuts: Vec<Cut>,
    /// How well all this is known.
    pub ranges: Ranges,
    /// How the jaws are bored.
    pub boring: Boring,
    /// Where the jaws stand.
    pub placing: Placing,
    /// What an indicator showed around the part, if it was read.
    pub indicator: Option<Indicator>,
    /// What was taken for want of an entry, or was entered in brackets.
    pub assumed: Vec<Assumed>,
}

/// An input of which the value is assumed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Assumed {
    /// Its path.
    pub path: String,
    /// What was taken, as it would be typed.
    pub taken: String,
    /// Where it is from.
    pub from: AssumedFrom,
}

/// Where what is assumed is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AssumedFrom {
    /// The declaration of the input.
    Default,
    /// Entered in brackets.
    Brackets,
    /// Told by readings of the indicator, and taken over.
    Indicator,
}

/// How the part is gripped.
#[derive(Clone, Debug)]
pub struct Grip {
    /// Outside or inside.
    pub side: Side,
    /// Where the grip starts along the part, from its chuck side.
    pub start: Length,
    /// Length of contact along the axis.
    pub length: Length,
    /// Largest gripped diameter less the nominal one.
    pub upper_deviation: Length,
    /// Smallest gripped diameter less the nominal one.
    pub lower_deviation: Length,
    /// Whether the part rests on the jaw step.
    pub seated: bool,
    /// Thrust of a live centre in the tail end, if there is one.
    pub thrust: Option<Force>,
    /// Friction between jaw and part.
    pub friction: Ratio,
    /// Least hold factor accepted.
    pub required_hold: Ratio,
}

/// The top jaws, all alike.
#[derive(Clone, Debug)]
pub struct Jaws {
    /// Their shape.
    pub shape: JawShape,
    /// Their material.
    pub material: &'static Material,
    /// Radial length of the blank.
    pub length: Length,
    /// Height above the serrations.
    pub height: Length,
    /// Step left under the part.
    pub step: Length,
    /// Diameter the jaws are bored to; the nominal gripped diameter if none.
    pub bored_diameter: Option<Length>,
    /// More metal at the tip than at the base, per side.
    pub taper: Length,
    /// Pressure while bored; as for the part if none.
    pub boring_pressure: Option<Pressure>,
    /// Height of the boring ring above the serrations.
    pub ring_height: Length,
    /// Weighed mass and centre of mass, in place of the computed ones.
    pub weighed: Option<Weighed>,
}

/// Shape of a top jaw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum JawShape {
    /// A block of this width.
    Ordinary(Length),
    /// A sector of this angle.
    Wide(Angle),
    /// A full circle parted by saw cuts of this width.
    Pie(Length),
}

/// A jaw on the scales.
#[derive(Clone, Debug)]
pub struct Weighed {
    /// Mass of one jaw.
    pub mass: Mass,
    /// Its centre of mass from the axis; the computed one if not known.
    pub radius: Option<Length>,
}

impl Setup {
    /// Whether what stands at `path` was taken over from readings of the indicator.
    ///
    /// ```
    /// use holdround_core::setup::{AssumedFrom, Entries, Setup};
    /// let setup = Setup::read(&Entries::default()).unwrap();
    /// assert!(setup.assumed.iter().all(|assumed| assumed.from == AssumedFrom::Default));
    /// assert!(!setup.is_from_indicator("chuck.condition"));
    /// ```
    #[must_use]
    pub fn is_from_indicator(&self, path: &str) -> bool {
        self.assumed.iter().any(|assumed| assumed.path == path && assumed.from == AssumedFrom::Indicator)
    }

    /// One top jaw as a solid, for the engines.
    #[must_use]
    pub fn jaw(&self) -> Jaw {
        Jaw {
            shape: match self.jaws.shape {
                JawShape::Ordinary(width) => Shape::Ordinary { width: width.value },
                JawShape::Wide(angle) => Shape::Wide { included_angle: angle.value },
                JawShape::Pie(saw_cut) => Shape::Pie { saw_cut: saw_cut.value },
            },
            side: self.grip.side,
            count: self.chuck.jaws,
            length: self.jaws.length.value,
            height: self.jaws.height.value,
            step: self.jaws.step.value,
            bored_depth: self.grip.length.value,
            grip_radius: self.gripped_radius(),
        }
    }

    /// The set-up as it is while roughing, with its cuts alone, or while finishing; itself where there is one pressure.
    #[must_use]
    pub fn while_cutting(&self, finishing: bool) -> Self {
        let mut stage = self.clone();
        if let Some(finish) = self.finish_pressure {
            stage.cuts.retain(|cut| cut.finishing == finishing);
            stage.finish_pressure = None;
            // What is not said was bored at the clamping pressure.
            stage.jaws.boring_pressure = self.jaws.boring_pressure.or(Some(self.pressure));
            stage.pressure = if finishing { finish } else { self.pressure };
        }
        stage
    }

    /// Radius the jaws are bored to, m: that of the part where none was entered.
    #[must_use]
    pub fn bored_radius(&self) -> f64 {
        self.jaws.bored_diameter.map_or_else(|| self.gripped_radius(), |diameter| diameter.value / 2.0)
    }

    /// Where the jaws' faces bear, from and to along the part, m: the grip less the relief groove at its bottom and the
    /// lead chamfer at its mouth, unless they leave too little of it ([`Self::bears_between`]).
    #[must_use]
    pub fn bearing(&self) -> [f64; 2] {
        let start = self.grip.start.value;
        let [base, tip] = if self.bears_between() { self.boring.bare() } else { [0.0; 2] };
        [start + base, start + self.grip.length.value - tip]
    }

    /// Whether chamfer and relief groove leave a quarter of the grip to bear. On a grip so short that they do not, they
    /// are as yet only assumed, or wrong: it is worked out without them, and that is said.
    #[must_use]
    pub fn bears_between(&self) -> bool {
        self.boring.bare().iter().sum::<f64>() <= (1.0 - LEAST_BEARING) * self.grip.length.value
    }

    /// Length of the jaws' faces that bears along the axis, m.
    #[must_use]
    pub fn bearing_length(&self) -> f64 {
        let [from, to] = self.bearing();
        to - from
    }

    /// From the front of the jaws to the tail end of the part, m.
    #[must_use]
    pub fn overhang(&self) -> f64 {
        self.part.length() - self.grip.start.value - self.grip.length.value
    }

    /// Why a centre cannot stand in the tail end, or is not covered; none where it can.
    #[must_use]
    pub fn no_centre(&self) -> Option<&'static str> {
        let [_, bore] = self.part.diameters_at(self.part.length(), Toward::Chuck);
        let through = |cut: &Cut| matches!(cut.kind, CutKind::Drilling { .. } | CutKind::Boring(..));
        if !self.grip.seated {
            Some("A centre presses the part into the chuck: it must rest on the jaw step.")
        } else if bore > 0.0 {
            Some("The tail end is bored: how a centre spreads it is not in this model. Choose none.")
        } else if self.overhang() <= 0.0 {
            Some("The part does not reach out of the jaws: a centre has nothing to hold.")
        } else if self.cuts.iter().any(through) {
            Some("A centre stands where a drill or boring bar goes in: choose none, or take that cut by itself.")
        } else {
            None
        }
    }

    /// Radius of the surface the jaws touch, m.
    #[must_use]
    pub fn gripped_radius(&self) -> f64 {
        let start = self.grip.start.value;
        let [outside, bore] = self.part.diameters_at(start, Toward::Far);
        match self.grip.side {
            Side::Outside => outside / 2.0,
            Side::Inside => bore / 2.0,
        }
    }
}
