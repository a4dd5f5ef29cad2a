//! What an indicator showed around the part, beside what the engine has, as findings.

use alloc::vec::Vec;

use super::elastic::{Elasticity, Tilting};
use super::grip_at_rest::at_pressure;
use super::grip_at_speed::Spinning;
use super::indicator_corrections as corrections;
use super::indicator_words::{self as words, Goes};
use super::pressed::press;
use crate::contact::Lobing;
use crate::findings::{Dial, Finding, Scene, Step, Wave as Drawn, term};
use crate::grip::Side;
use crate::indicator::{Fit, IndicatorError, Readings, Sight, Wave, looks_like, orders, part, sight};
use crate::quantity::Kind;
use crate::setup::{DialSet, Indicator, Setup, SurfaceSide, Toward};
use crate::text::Text;

/// Waves of a shape that are enough to draw it.
const DRAWN: usize = 24;
const FIT: &str = "linear least squares; interval with Student's t or from the resolution (JCGM 100:2008, from memory)";

/// What the engine needs to tell a shape.
pub(super) type Model<'a> = Option<(&'a Elasticity, &'a Spinning)>;

/// Every wave with its uncertainty, what the engine has for it, what comes with the grip, and what this corrects.
pub(super) fn tell(setup: &Setup, read: &Indicator, model: Model<'_>, found: &mut Vec<Finding>, scene: &mut Scene) {
    let first = Set { setup, read, set: &read.first };
    let stations = read.first.departures.len();
    let [outside, bore] = setup.part.diameters_at(read.place.value, Toward::Chuck);
    let radius = if read.side == SurfaceSide::Bore { bore } else { outside } / 2.0;
    let mut dial = Dial { radius, cannot: cannot(stations, setup.chuck.jaws as usize), ..Dial::default() };
    let predicted = first.force(None).and_then(|force| first.shape(model, force, None));
    dial.predicted = predicted.as_ref().ok().map(drawn);
    let nothing = read.first.departures.iter().all(Option::is_none);
    let fit = first.readings().fit();
    let mean = fit.as_ref().map_or(0.0, |fit| fit.mean);
    let places = read.first.departures.iter().enumerate();
    dial.stations = places.map(|(at, y)| (first.readings().angle(at), y.map(|y| y - mean))).collect();
    let fit = match fit {
        _ if nothing => None,
        Ok(fit) => {
            dial.fitted = fit.waves.iter().map(|wave| (wave.order, wave.cos, wave.sin)).collect();
            Some(fit)
        }
        Err(error) => {
            let why = Text::of("{}.").with(&error);
            found.push(Finding::refused("indicator.offset", Goes::Once.name(), Kind::Departure, why));
            None
        }
    };
    scene.indicator = Some(dial);
    let Some(fit) = fit else { return };
    found.push(first.range(&fit));
    let engine = predicted.as_ref().ok().and_then(|shape| first.seen_of(shape).ok());
    for order in orders(setup.chuck.jaws as usize) {
        let goes = Goes::of(order, setup.chuck.jaws);
        match fit.wave(order) {
            Some(wave) => first.wave(goes, wave, &fit, engine.as_ref(), found),
            None => {
                let why = words::unseen(stations, order, sight(stations, order, read.start.value));
                found.push(Finding::refused(goes.id(""), goes.name(), Kind::Departure, why));
            }
        }
    }
    let parted = read.second.as_ref().map(|second| first.part(&fit, &Set { set: second, ..first }, found));
    let lobes = match &parted {
        None => fit.wave(setup.chuck.jaws as usize).copied(),
        Some(squeezed) => *squeezed,
    };
    if let (Some(lobes), Some(_)) = (lobes, model) {
        let edge = fit.wave(2 * setup.chuck.jaws as usize);
        corrections::tell(&corrections::Lobes { read: &first, lobes: &lobes, edge, model }, found);
    }
}

/// One set of readings and all that it hangs on.
#[derive(Clone, Copy)]
pub(super) struct Set<'a> {
    pub(super) setup: &'a Setup,
    read: &'a Indicator,
    set: &'a DialSet,
}

impl Set<'_> {
    fn readings(&self) -> Readings<'_> {
        Readings {
            departures: &self.set.departures,
            start: self.read.start.value,
            jaws: self.setup.chuck.jaws as usize,
            resolution: self.read.resolution.value,
        }
    }

    /// Total grip at rest then, N, with a share of the condition entered.
    pub(super) fn force(&self, share: Option<f64>) -> Result<f64, Text> {
        let grip = at_pressure(self.setup, self.set.pressure.unwrap_or(self.setup.pressure))?;
        Ok(grip * share.unwrap_or(1.0))
    }

    /// The surface as the indicator should find it, by the engine, under a total grip at rest; on master jaws as
    /// entered, or tilting otherwise.
    pub(super) fn shape(&self, model: Model<'_>, grip: f64, tilting: Option<&Tilting>) -> Result<Lobing, Text> {
        let (elastic, spinning) = model.ok_or("There is no shape to compare it with.")?;
        let setup = self.setup;
        let turned = if self.read.released { setup.speed.value } else { 0.0 };
        let thrown = spinning.careful.centrifugal_force(turned).map_err(|error| Text::from(&error))?;
        let share = f64::midpoint(spinning.share.low(), spinning.share.high());
        let away = if setup.grip.side == Side::Outside { -1.0 } else { 1.0 };
        let force = ((grip + away * share * thrown) / f64::from(setup.chuck.jaws)).max(0.0);
        let contact = press(setup, elastic, spinning, tilting, [force, turned]).map_err(|error| Text::from(&error))?;
        let none = "This surface is not on the part.";
        let at = elastic.surfaces.iter().position(|surface| surface.side == self.read.side).ok_or(none)?;
        let places = &elastic.usual.part().stations.get(at).ok_or(none)?.at;
        let off = |place: &[f64; 2]| libm::fabs(place[1] - self.read.place.value);
        let along = tilting.map_or(&elastic.usual, |other| &other.face).lobing(&contact, at);
        let near = places.iter().zip(along).min_by(|a, b| off(a.0).total_cmp(&off(b.0)));
        let (_, mut lobing) = near.ok_or(none)?;
        if self.read.released {
            lobing.amplitudes.iter_mut().for_each(|amplitude| *amplitude = -*amplitude);
        }
        Ok(lobing)
    }

    /// What these stations would show of a shape.
    pub(super) fn seen_of(&self, shape: &Lobing) -> Result<Fit, IndicatorError> {
        let readings = self.readings();
        let there = self.set.departures.iter().enumerate();
        let departures: Vec<_> = there.map(|(at, y)| y.map(|_| shape.at(readings.angle(at)))).collect();
        Readings { departures: &departures, ..readings }.fit()
    }

    fn range(&self, fit: &Fit) -> Finding {
        let step = Step {
            says: "Highest less lowest reading",
            formula: "TIR = max y − min y",
            given: [
                term("mean", fit.mean, Kind::Departure),
                term("scatter", fit.scatter.unwrap_or(0.0), Kind::Departure),
                term("resolution", self.read.resolution.value, Kind::Departure),
            ]
            .into(),
            result: term("TIR", fit.range, Kind::Departure),
            source: FIT,
        };
        let finding = Finding::new("indicator.range", "Run-out read (TIR)", Kind::Departure, fit.range).step(step);
        match fit.scatter {
            None => finding.caution("There are just as many readings as unknowns: nothing is left over to tell their scatter, and the uncertainties are of the resolution alone. Read more stations."),
            Some(scatter) if scatter > 3.0 * self.read.resolution.value => {
                finding.caution(words::SCATTERED)
            }
            Some(_) => finding,
        }
    }

    /// One wave as measured, and as the engine has it.
    fn wave(&self, goes: Goes, wave: &Wave, fit: &Fit, engine: Option<&Fit>, found: &mut Vec<Finding>) {
        let expected = engine.and_then(|engine| engine.wave(wave.order));
        let near = self.near(wave);
        found.push(
            measured(goes, "", goes.name(), wave)
                .caution(words::cause(goes, wave, expected, near, fit, self.read))
                .entry("indicator.use"),
        );
        if let (Some(expected), Goes::OnceAJaw | Goes::TwiceAJaw) = (expected, goes) {
            let value = goes.told(expected.height());
            let name = Text::of("{}: worked out").with(goes.name());
            found.push(
                Finding::new(goes.id(".predicted"), name, Kind::Departure, value)
                    .caution("The shape worked out, read at the same stations and fitted in the same way.")
                    .step(Step {
                        says: "Part and jaws pressed on each other as entered",
                        formula: "2 |u_n|",
                        given: self.force(None).ok().map(|grip| term("F₀", grip, Kind::Force)).into_iter().collect(),
                        result: term("2 |u_n|", value, Kind::Departure),
                        source: "harmonic finite elements of the part in one-sided contact with elastic jaws",
                    }),
            );
        }
    }

    /// The station nearest to a wave's crest, counted from 1.
    fn near(&self, wave: &Wave) -> usize {
        let stations = self.set.departures.len();
        let turns = (wave.crest() - self.read.start.value) / core::f64::consts::TAU;
        let at = libm::round((turns - libm::floor(turns)) * stations as f64) as usize;
        at % stations.max(1) + 1
    }

    /// What comes with the grip and what is there without it; gives the lobes that come with it.
    fn part(&self, fit: &Fit, second: &Set<'_>, found: &mut Vec<Finding>) -> Option<Wave> {
        let share = match (second.set.pressure, self.force(None)) {
            (None, _) => Ok(0.0),
            (Some(_), Ok(grip)) => second.force(None).map(|less| less / grip),
            (_, Err(why)) => Err(why),
        };
        let parted = share.and_then(|share| {
            let second = second.readings().fit().map_err(|error| Text::of("Second set: {}.").with(&error))?;
            let parted = part(fit, &second, share).map_err(|error| Text::of("{}.").with(&error))?;
            Ok((share, parted))
        });
        let (share, parted) = match parted {
            Ok(parted) => parted,
            Err(why) => {
                let name = "What comes with the grip";
                let entry = "indicator.second_pressure";
                found.push(Finding::refused("indicator.squeezed", name, Kind::Departure, why).entry(entry));
                return None;
            }
        };
        let mut lobes = None;
        for one in &parted {
            let goes = Goes::of(one.squeezed.order, self.setup.chuck.jaws);
            let both =
                [(".squeezed", "comes with the grip", &one.squeezed), (".there", "there without grip", &one.there)];
            for (key, says, wave) in both {
                let name = Text::of("{}: {}").with(goes.name()).with(says);
                let finding = measured(goes, key, name, wave).caution(words::parted(goes, key, wave));
                found.push(finding.step(Step {
                    says: "Two sets at two grips; what comes with the grip is taken to rise in proportion to it",
                    formula: "squeezed = (w₁ − w₂) / (1 − F₂ / F₁), there = w₁ − squeezed",
                    given: [term("F₂ / F₁", share, Kind::Plain)].into(),
                    result: term("told", goes.told(wave.height()), Kind::Departure),
                    source: "two equations in two unknowns; contact that grows with the grip bends them a little",
                }));
            }
            if goes == Goes::OnceAJaw {
                lobes = Some(one.squeezed);
            }
        }
        lobes
    }
}

/// A wave with its interval.
fn measured(goes: Goes, key: &str, name: impl Into<Text>, wave: &Wave) -> Finding {
    let [value, half] = [wave.height(), wave.uncertainty].map(|height| goes.told(height));
    Finding::new(goes.id(key), name, Kind::Departure, value).band((value - half).max(0.0), value + half).step(Step {
        says: "Least squares of mean and waves; the interval holds it with a confidence of 95 %",
        formula: "y = y₀ + Σ (a_n cos nθ + b_n sin nθ)",
        given: [
            term("n", wave.order as f64, Kind::Plain),
            term("a_n", wave.cos, Kind::Departure),
            term("b_n", wave.sin, Kind::Departure),
            term("±", half, Kind::Departure),
        ]
        .into(),
        result: term("told", value, Kind::Departure),
        source: FIT,
    })
}

fn drawn(shape: &Lobing) -> Drawn {
    let orders = shape.amplitudes.iter().enumerate().skip(1).take(DRAWN);
    Drawn { mean: 0.0, harmonics: orders.map(|(k, height)| ((k * shape.jaws) as u32, *height)).collect() }
}

/// What this number of stations cannot tell, in words.
fn cannot(stations: usize, jaws: usize) -> Vec<Text> {
    let told: Vec<usize> =
        orders(jaws).filter(|order| !matches!(sight(stations, *order, 0.0), Sight::LooksLike(_))).collect();
    let alike = told.iter().map(|order| Text::of("{} and {}").with(*order).with(stations - order));
    let alike = Text::row(alike, ", ");
    let mut cannot =
        Vec::from([Text::of("With {} stations these numbers of waves look alike: {}.").with(stations).with(alike)]);
    for waves in 2..=4 {
        let order = waves * jaws;
        let seen = looks_like(stations, order);
        if seen != order && (seen == 0 || told.contains(&seen)) {
            let like = if seen == 0 { "nothing".into() } else { Text::of("{} times round").with(seen) };
            cannot.push(Text::of("What the jaws press {} times a jaw reads like {}. Figures worked out are read at the same stations.").with(waves).with(like));
        }
    }
    cannot
}

#[cfg(test)]
#[path = "indicator_tests.rs"]
mod tests;
