//! What measured lobes correct, each taking all of the difference: the chuck's condition, or how stiffly its master jaws
//! tilt. Friction between jaw and part is not in contact without friction, and a master jaw's radial give moves a jaw
//! as a whole: neither changes lobes.

use alloc::vec::Vec;

use super::indicator::{Model, Set};
use super::indicator_words as words;
use crate::findings::{Finding, Step, term};
use crate::indicator::{Fit, Wave};
use crate::quantity::Kind;
use crate::setup::GripFrom;
use crate::text::Text;

/// The condition a chuck can have.
const CONDITIONS: [f64; 2] = [0.2, 1.0];
/// How near the engine must come to the lobes measured, as a share of them, and in how many tries.
const NEAR: (f64, usize) = (1e-3, 8);
/// The same for the tilt stiffness, on which lobes hang less.
const NEAR_TILT: (f64, usize) = (1e-5, 12);
/// Natural logarithm of how many times as stiff or as soft as entered a master jaw may tilt: four times, our own
/// estimate, no source.
const PLAUSIBLE: f64 = 2.0 * core::f64::consts::LN_2;
/// Stiffnesses looked at, evenly spread on a scale of powers.
const PLACES: usize = 7;
/// Share of the lobes by which the plausible stiffnesses must move them to be told: engine and solids agree to 2 to 3 %.
const HARDLY: f64 = 0.05;

/// Lobes measured, and all that they hang on.
pub(super) struct Lobes<'a> {
    pub(super) read: &'a Set<'a>,
    pub(super) lobes: &'a Wave,
    /// The wave twice a jaw, where it can be told.
    pub(super) edge: Option<&'a Wave>,
    pub(super) model: Model<'a>,
}

/// A tilt stiffness over that entered, the ends of its interval, and whether the wave twice a jaw fits it.
struct Tilt {
    factor: f64,
    ends: [f64; 2],
    edge_fits: bool,
}

/// The condition of the chuck, and the tilt stiffness of its master jaws, with which the engine shows the lobes that
/// were measured.
pub(super) fn tell(lobes: &Lobes<'_>, found: &mut Vec<Finding>) {
    let measured = term("measured", 2.0 * lobes.lobes.cos, Kind::Departure);
    let name = "Chuck condition that the lobes tell";
    let condition = match lobes.condition() {
        Ok((entered, share)) => {
            let condition = entered * share;
            let part = lobes.uncertainty();
            Finding::new("indicator.condition", name, Kind::Plain, condition)
                .band((condition * (1.0 - part)).max(0.0), condition * (1.0 + part))
                .caution(words::condition(share))
                .step(Step {
                    says: "The grip at which the lobes worked out are as high as those measured",
                    formula: "u_J(c) = measured",
                    given: [measured, term("c entered", entered, Kind::Plain)].into(),
                    result: term("c", condition, Kind::Plain),
                    source: "lobes rise with the grip: part and jaws in one-sided contact",
                })
        }
        Err(why) => Finding::refused("indicator.condition", name, Kind::Plain, why),
    };
    found.push(condition.entry("chuck.condition"));
    let name = "Tilt stiffness of a master jaw that the lobes tell";
    let entered = lobes.read.setup.chuck.tilt_stiffness;
    let tilt = match lobes.tilt() {
        Ok(Tilt { factor, ends: [least, most], edge_fits }) => {
            let gauged = matches!(lobes.read.setup.chuck.grip_from, GripFrom::Gauge(_));
            Finding::new("indicator.tilt", name, Kind::TiltStiffness, entered * factor)
                .band(entered * least, entered * most)
                .caution(words::tilt(gauged, edge_fits))
                .step(Step {
                    says: "The tilt stiffness at which the lobes worked out are as high as those measured; looked for between a quarter and four times the one entered",
                    formula: "u_J(K_t) = measured",
                    given: [measured, term("K_t entered", entered, Kind::TiltStiffness)].into(),
                    result: term("K_t", entered * factor, Kind::TiltStiffness),
                    source: "a jaw that tilts bears less at its tip: part and jaws in one-sided contact",
                })
        }
        Err(why) => Finding::refused("indicator.tilt", name, Kind::TiltStiffness, why),
    };
    found.push(tilt.entry("chuck.tilt_stiffness"));
}

impl Lobes<'_> {
    /// Uncertainty of the lobes as a share of them.
    fn uncertainty(&self) -> f64 {
        self.lobes.uncertainty / libm::fabs(self.lobes.cos)
    }

    fn are_seen(&self) -> Result<(), Text> {
        if libm::fabs(self.lobes.cos) <= self.lobes.uncertainty {
            return Err("The lobes at the jaws do not stand out of their uncertainty.".into());
        }
        Ok(())
    }

    /// The waves that the engine shows with a share of the condition entered, or with another tilt stiffness, and its
    /// lobes over those measured.
    fn by_engine(&self, share: Option<f64>, tilt: Option<f64>) -> Result<(Fit, f64), Text> {
        let (elastic, _) = self.model.ok_or(words::TURNED)?;
        let tilting = tilt.map(|factor| elastic.tilting(self.read.setup, factor)).transpose();
        let tilting = tilting.map_err(|error| Text::from(&error))?;
        let shape = self.read.shape(self.model, self.read.force(share)?, tilting.as_ref())?;
        let seen = self.read.seen_of(&shape).map_err(|error| Text::of("{}.").with(&error))?;
        let over = seen.wave(self.lobes.order).map_or(0.0, |wave| wave.cos) / self.lobes.cos;
        if over > 0.0 && over.is_finite() { Ok((seen, over)) } else { Err(words::TURNED.into()) }
    }

    /// The condition entered, and the share of it that the lobes tell.
    fn condition(&self) -> Result<(f64, f64), Text> {
        let (GripFrom::Plate { condition, .. } | GripFrom::Chart { condition, .. }) = &self.read.setup.chuck.grip_from
        else {
            return Err(words::GAUGED.into());
        };
        self.are_seen()?;
        let entered = condition.value;
        let mut share = 1.0;
        let (near, tries) = NEAR;
        for _ in 0..tries {
            let ratio = 1.0 / self.by_engine(Some(share), None)?.1;
            share *= ratio;
            let [least, most] = CONDITIONS;
            if share * entered > most * 1.2 || share * entered < least / 1.2 {
                break;
            }
            if libm::fabs(ratio - 1.0) < near {
                break;
            }
        }
        let condition = entered * share;
        if (CONDITIONS[0]..=CONDITIONS[1]).contains(&condition) {
            Ok((entered, share))
        } else {
            Err(words::beyond(condition > CONDITIONS[1]).into())
        }
    }

    /// The tilt stiffness over that entered that the lobes tell.
    fn tilt(&self) -> Result<Tilt, Text> {
        self.are_seen()?;
        // Powers of the greatest factor, and the engine's lobes there over those measured.
        let mut table = [[0.0; 2]; PLACES];
        for (at, place) in table.iter_mut().enumerate() {
            let power = 2.0 * at as f64 / (PLACES - 1) as f64 - 1.0;
            *place = [power, self.by_engine(None, Some(factor(power)))?.1];
        }
        let rises: Vec<f64> = table.windows(2).map(|pair| pair[1][1] - pair[0][1]).collect();
        let moved = libm::fabs(rises.iter().sum::<f64>());
        if moved < HARDLY.max(self.uncertainty()) {
            return Err(words::hardly(moved));
        }
        let up = rises.iter().all(|rise| *rise > 0.0);
        if !up && !rises.iter().all(|rise| *rise < 0.0) {
            return Err(words::MANY_TILTS.into());
        }
        if !up {
            table.reverse();
        }
        let [least, most] = [table[0][1], table[PLACES - 1][1]];
        if least > 1.0 || most < 1.0 {
            return Err(words::NO_TILT.into());
        }
        let (power, seen) = self.root(&table)?;
        let part = self.uncertainty();
        // The table's straight lines miss the root a little, and its interval by about as much.
        let end = |over: f64| factor(power + inverse(&table, over) - inverse(&table, 1.0));
        let (one, other) = (end(1.0 - part), end(1.0 + part));
        let edge = self.edge.and_then(|edge| Some((edge, seen.wave(edge.order)?)));
        Ok(Tilt {
            factor: factor(power),
            ends: [one.min(other), one.max(other)],
            edge_fits: edge.is_none_or(|(read, by)| {
                libm::fabs(read.cos - by.cos) <= read.uncertainty.max(HARDLY * libm::fabs(by.cos))
            }),
        })
    }

    /// The power at which the engine's lobes are those measured, in a table in which they rise, and its waves there: a
    /// secant kept in a bracket.
    fn root(&self, table: &[[f64; 2]; PLACES]) -> Result<(f64, Fit), Text> {
        let at = table.iter().position(|place| place[1] >= 1.0).unwrap_or(PLACES - 1).max(1);
        let (mut low, mut high) = (table[at - 1], table[at]);
        let (near, tries) = NEAR_TILT;
        let mut tried = 0;
        loop {
            let share = (1.0 - low[1]) / (high[1] - low[1]);
            // Halved now and then, so that a bent curve does not keep one end.
            let share = if tried % 3 == 2 { 0.5 } else { share };
            let power = low[0] + share * (high[0] - low[0]);
            let (seen, over) = self.by_engine(None, Some(factor(power)))?;
            tried += 1;
            if libm::fabs(over - 1.0) < near || tried == tries {
                return Ok((power, seen));
            }
            *(if over < 1.0 { &mut low } else { &mut high }) = [power, over];
        }
    }
}

fn factor(power: f64) -> f64 {
    libm::exp(PLAUSIBLE * power)
}

/// The power at which lobes in a rising table are `over` those measured; the nearer end of the table beyond it.
fn inverse(table: &[[f64; 2]; PLACES], over: f64) -> f64 {
    let mut before = table[0];
    for place in table {
        if place[1] >= over {
            let rise = place[1] - before[1];
            return if rise > 0.0 { before[0] + (over - before[1]) / rise * (place[0] - before[0]) } else { place[0] };
        }
        before = *place;
    }
    before[0]
}
