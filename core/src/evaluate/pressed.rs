//! Load work: the jaws pressed on the part, at rest and at speed, on the largest and smallest part.

use alloc::vec::Vec;

use super::elastic::{Elasticity, Tilting};
use super::grip_at_rest;
use super::grip_at_speed::Spinning;
use crate::contact::{Contact, ContactError, Face, Gap};
use crate::grip::RotatingMass;
use crate::jaw_spring::JawColumn;
use crate::setup::{Setup, Side};

/// How much to work out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effort {
    /// What must keep up with a finger on a slider: the answer itself.
    Sliding,
    /// The answer with its band and bounds.
    Full,
}

/// The jaws on one size of part.
#[derive(Debug)]
pub(super) struct OnSize {
    /// At rest, as the indicator finds it.
    pub(super) at_rest: Contact,
    /// At speed, at the end of the range that is bad for shape: as the tool finds it.
    pub(super) at_speed: Contact,
    /// At speed with softer and with stiffer jaws; with full effort only.
    pub(super) softer_stiffer: Option<[Contact; 2]>,
    /// At speed with rigid jaws; with full effort only.
    pub(super) rigid: Option<Contact>,
}

/// The jaws on the part.
#[derive(Debug)]
pub(super) struct Pressed {
    /// On the largest and on the smallest part, or on the one size there is.
    pub(super) sizes: Vec<OnSize>,
    /// Evenly spread pressure at speed.
    pub(super) even: Contact,
    /// At the grip with which slip is judged.
    pub(super) for_slip: Option<Contact>,
}

/// What a press depends on besides the part's size.
pub(super) struct Load<'a> {
    setup: &'a Setup,
    elastic: &'a Elasticity,
    /// The jaw along its height.
    column: &'a JawColumn,
    /// One top jaw as a lump.
    top: RotatingMass,
    /// Height of its centre above the serrations, m.
    centre_height: f64,
    /// Force of one jaw on the boring ring, N.
    ring_force: f64,
}

impl Pressed {
    pub(super) fn new(
        setup: &Setup,
        elastic: &Elasticity,
        spinning: &Spinning,
        effort: Effort,
    ) -> Result<Self, ContactError> {
        let jaws = f64::from(setup.chuck.jaws);
        let load = Load::of(setup, elastic, spinning);
        let (rest, speed) = (spinning.most_at_rest / jaws, spinning.at_speed.highest / jaws);
        // A grip that is gone at speed leaves the shape at rest to speak of.
        let speed = if speed > 0.0 { speed } else { rest };
        let (upper, lower) = (setup.grip.upper_deviation.value, setup.grip.lower_deviation.value);
        let largest = load.on_size(upper, rest, speed, effort, None)?;
        let smallest =
            if upper > lower { Some(load.on_size(lower, rest, speed, effort, Some(&largest))?) } else { None };
        let slip = spinning.at_speed.lowest / jaws;
        let slip = if slip > 0.0 { slip } else { spinning.least_at_rest / jaws };
        let for_slip = if slip > 0.0 {
            let middle = f64::midpoint(upper, lower);
            let omega = if spinning.at_speed.lowest > 0.0 { setup.speed.value } else { 0.0 };
            Some(elastic.usual.press_from(slip, &load.gap(middle, omega), Some(&largest.at_speed))?)
        } else {
            None
        };
        let sizes = core::iter::once(largest).chain(smallest).collect();
        Ok(Self { sizes, even: elastic.usual.even(speed)?, for_slip })
    }
}

/// The jaws on a part of middle size at another force per jaw, N, and speed, rad/s; as entered, or tilting otherwise.
pub(super) fn press(
    setup: &Setup,
    elastic: &Elasticity,
    spinning: &Spinning,
    tilting: Option<&Tilting>,
    [force, omega]: [f64; 2],
) -> Result<Contact, ContactError> {
    let middle = f64::midpoint(setup.grip.upper_deviation.value, setup.grip.lower_deviation.value);
    let (face, column) = tilting.map_or((&elastic.usual, &elastic.column), |Tilting { face, column }| (face, column));
    let load = Load { column, ..Load::of(setup, elastic, spinning) };
    face.press(force, &load.gap(middle, omega))
}

impl<'a> Load<'a> {
    pub(super) fn of(setup: &'a Setup, elastic: &'a Elasticity, spinning: &Spinning) -> Self {
        let boring = setup.jaws.boring_pressure.map_or(1.0, |pressure| grip_at_rest::over(setup, pressure.value));
        Self {
            setup,
            elastic,
            column: &elastic.column,
            top: spinning.top_jaw,
            centre_height: spinning.centre_height,
            ring_force: spinning.most_at_rest / f64::from(setup.chuck.jaws) * boring,
        }
    }

    /// The jaws on one size of part; `like` is the same on another size.
    fn on_size(
        &self,
        deviation: f64,
        rest: f64,
        speed: f64,
        effort: Effort,
        like: Option<&OnSize>,
    ) -> Result<OnSize, ContactError> {
        let still = self.gap(deviation, 0.0);
        let spinning = self.gap(deviation, self.setup.speed.value);
        let usual = &self.elastic.usual;
        let at_rest = usual.press_from(rest, &still, like.map(|like| &like.at_rest))?;
        let at_speed = if rest == speed && still == spinning {
            at_rest.clone()
        } else {
            usual.press_from(speed, &spinning, Some(&at_rest))?
        };
        let press = |face: &Face<'static>, like: Option<&Contact>| {
            face.press_from(speed, &spinning, Some(like.unwrap_or(&at_speed)))
        };
        let (softer_stiffer, rigid) = match effort {
            Effort::Sliding => (None, None),
            Effort::Full => {
                let [softer, stiffer] = &self.elastic.softer_stiffer;
                let [on_softer, on_stiffer] = match like.and_then(|like| like.softer_stiffer.as_ref()) {
                    Some([softer, stiffer]) => [Some(softer), Some(stiffer)],
                    None => [None, None],
                };
                let on_rigid = like.and_then(|like| like.rigid.as_ref());
                let ends = [press(softer, on_softer)?, press(stiffer, on_stiffer)?];
                (Some(ends), Some(press(&self.elastic.rigid, on_rigid)?))
            }
        };
        Ok(OnSize { at_rest, at_speed, softer_stiffer, rigid })
    }

    /// The gap before the jaws close on a part whose diameter departs from nominal, at `omega` rad/s.
    pub(super) fn gap(&self, deviation: f64, omega: f64) -> Gap {
        let setup = self.setup;
        let nominal = setup.gripped_radius();
        let bored = setup.bored_radius();
        let heights = &self.elastic.heights;
        let column = self.column;
        let base = setup.jaws.height.value - setup.grip.length.value;
        let bored_relief = column.bored_relief(setup.jaws.ring_height.value, self.ring_force, heights);
        // Thrown outward, the jaw leans away from an outside and into a bore.
        let away = if setup.grip.side == Side::Outside { 1.0 } else { -1.0 };
        let thrown = self.top.mass * self.top.radius * omega * omega;
        let relief = heights.iter().zip(&bored_relief).map(|(height, bored)| {
            let up = ((height - base) / setup.grip.length.value).clamp(0.0, 1.0);
            let taper = setup.jaws.taper.value * (1.0 - up);
            bored + taper + away * thrown * column.give(*height, self.centre_height)
        });
        Gap { larger: bored - (nominal + deviation / 2.0), relief: relief.collect() }
    }
}
