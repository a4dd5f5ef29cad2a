//! The diameter to bore to and what it does to the part, as findings.

use alloc::vec::Vec;

use super::elastic::{Elasticity, Work};
use super::engine::{Engine, Progress};
use super::grip_at_speed::{self, Spinning};
use super::placing::{Line, tell_length};
use super::pressed::{Effort, Pressed};
use super::released;
use super::{grip_at_rest, jaw};
use crate::bore::best;
use crate::contact::{Contact, Face};
use crate::findings::{Finding, Scene, Step, term};
use crate::part::Side as SurfaceSide;
use crate::quantity::{Kind, Length};
use crate::setup::{Setup, Side};
use crate::text::Text;
use uom::si::length::meter;

/// How far beyond the tolerance of the part a bored diameter is sought, m: our own value, several times the squeeze
/// of a part that is held at all gently.
const BEYOND: f64 = 1e-4;
/// What a bored diameter is missed by in the study, m: a thousandth of an inch on diameter.
const MISS: f64 = 25.4e-6;

/// What the bored diameter does to the part: the curve over diameters, and findings.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct BoreChoice {
    /// Bored diameter and worst released roundness over the largest and the smallest part, m, by diameter.
    pub curve: Vec<[f64; 2]>,
    /// Whether the least lies at the end of what was searched, so that it is no optimum.
    pub at_end: bool,
    /// The best diameter, its roundness, that of the nominal diameter, and those of missing it.
    pub findings: Vec<Finding>,
}

/// What is told of the bored diameter in every evaluation.
pub(super) fn tell(setup: &Setup, found: &mut Vec<Finding>) {
    let nominal = 2.0 * setup.gripped_radius();
    let bored = 2.0 * setup.bored_radius();
    let words = match setup.grip.side {
        Side::Inside => {
            "Jaws that open into a bore are bored to the nominal diameter: larger or smaller, they bear on edges or on a line."
        }
        Side::Outside => {
            "To nominal, unless the study of bored diameters shows a better compromise over the part's tolerance."
        }
    };
    found.push(
        Finding::new("bore.off_nominal", "Bored diameter less the nominal one", Kind::Departure, bored - nominal)
            .caution(words)
            .entry("jaws.bored_diameter")
            .step(Step {
                says: "Diameter bored at the tip, less the nominal gripped diameter",
                formula: "D_b − D",
                given: [term("D_b", bored, Kind::Length), term("D", nominal, Kind::Length)].into(),
                result: term("D_b − D", bored - nominal, Kind::Departure),
                source: "definition; to nominal: common practice, no source",
            }),
    );
    let boring = &setup.boring;
    let [groove, chamfer] = boring.bare();
    tell_length(
        found,
        &Line {
            id: "bore.face",
            name: "Face left between chamfer and relief groove",
            entry: "boring.relief_width",
            says: "Grip length less chamfer and groove",
            formula: "L − c − w",
            given: &["L", "c", "w"],
            symbol: "L − c − w",
            source: "geometry",
        },
        setup.grip.length.value - chamfer - groove,
        None,
        if setup.bears_between() {
            "So much of the grip length bears: contact, pressure and hold are worked out over it."
        } else {
            TOO_LITTLE
        },
        &[setup.grip.length.value, chamfer, groove],
    );
    let into = if groove > 0.0 { boring.relief_depth.value } else { 0.0 };
    let round = (boring.nose_radius.value - into).max(0.0);
    let words = if round > 0.0 {
        "A sharp edge of the part would ride on this round and not sit flush: chamfer the part, or cut a deeper groove."
    } else {
        "The groove takes the nose's round away: a sharp edge of the part sits flush."
    };
    tell_length(
        found,
        &Line {
            id: "bore.corner",
            name: "Round left under the edge of the part",
            entry: "boring.relief_depth",
            says: "Nose radius less the depth of the groove",
            formula: "max(0, r − d)",
            given: &["r", "d"],
            symbol: "max(0, r − d)",
            source: "geometry",
        },
        round,
        None,
        words,
        &[boring.nose_radius.value, into],
    );
}

impl Engine {
    /// The bored diameter with which the worst of the largest and the smallest part comes out roundest, and the price
    /// of missing the nominal one. Presses the jaws some forty times: ask for it, do not follow a slider with it.
    ///
    /// ```
    /// use holdround_core::{Engine, setup::{Entries, Setup}};
    /// let setup = Setup::read(&Entries::default()).unwrap();
    /// let choice = Engine::default().bore_choice(&setup);
    /// let [best, nominal] = ["bore.best.roundness", "bore.nominal.roundness"]
    ///     .map(|id| *choice.findings.iter().find(|finding| finding.id == id).unwrap().value.as_ref().unwrap());
    /// assert!(best <= nominal);
    /// ```
    #[must_use]
    pub fn bore_choice(&mut self, setup: &Setup) -> BoreChoice {
        while self.prepare(setup) != Progress::Done {}
        let refused = |why: Text| BoreChoice {
            curve: Vec::new(),
            at_end: false,
            findings: [Finding::refused("bore.best", BEST, Kind::Length, why)].into(),
        };
        let elastic = match &self.kept {
            Some((_, Work::Done(elastic))) => elastic,
            Some((_, Work::Refused(why))) => return refused(why.clone()),
            _ => return refused("The jaws cannot be as described.".into()),
        };
        let (mut unheard, mut unseen) = (Vec::new(), Scene::default());
        let jaw = jaw::tell(setup, &mut unheard, &mut unseen);
        let rest = grip_at_rest::tell(setup, &mut unheard);
        let spinning =
            jaw.zip(rest).and_then(|(jaw, rest)| grip_at_speed::tell(setup, &jaw, rest, &mut unheard, &mut unseen));
        let Some(spinning) = spinning else { return refused("There is no grip to squeeze the part with.".into()) };
        study(setup, elastic, &spinning)
            .unwrap_or_else(|| refused("No round surface is named, or no contact is found.".into()))
    }
}

/// Where chamfer and groove leave hardly any face.
pub(super) const TOO_LITTLE: &str = "Chamfer and relief groove leave less than a quarter of the grip to bear. Contact, pressure and hold are worked out over the whole grip, as if there were neither: make them smaller.";
const BEST: &str = "Bored diameter with the roundest part";
const END: &str = "End of the search, where parts are roundest so far: bored diameter";

fn study(setup: &Setup, elastic: &Elasticity, spinning: &Spinning) -> Option<BoreChoice> {
    let nominal = 2.0 * setup.gripped_radius();
    let mut of = |diameter: f64| {
        let pressed = press(setup, elastic, spinning, diameter, Effort::Sliding)?;
        let contacts: Vec<&Contact> = pressed.sizes.iter().map(|size| &size.at_speed).collect();
        worst(setup, elastic, &elastic.usual, &contacts)
    };
    let mut findings = Vec::new();
    let mut told = |id: &'static str, name: Text, value: f64, caution: &'static str| {
        let name = Text::of("Roundness after release, {}").with(name);
        findings.push(
            Finding::new(id, name, Kind::Departure, value).caution(caution).entry("jaws.bored_diameter").step(Step {
                says: "Worst of every round surface, on the largest and on the smallest part",
                formula: "max RONt",
                given: Vec::new(),
                result: term("max RONt", value, Kind::Departure),
                source: "minimum zone: ISO 12181-1:2011, from memory; harmonic finite elements in one-sided contact",
            }),
        );
    };
    let at_nominal = of(nominal)?;
    told("bore.nominal.roundness", "bored to nominal".into(), at_nominal, "To nominal.");
    told(
        "bore.larger.roundness",
        "bored a thousandth of an inch too large".into(),
        of(nominal + MISS)?,
        "On diameter.",
    );
    told(
        "bore.smaller.roundness",
        "bored a thousandth of an inch too small".into(),
        of(nominal - MISS)?,
        "On diameter.",
    );
    let range =
        [nominal + setup.grip.lower_deviation.value - BEYOND, nominal + setup.grip.upper_deviation.value + BEYOND];
    let mut found = best(range, &mut of)?;
    if at_nominal <= found.value {
        (found.at, found.value) = (nominal, at_nominal);
    }
    // What is told of the nearest inner diameter looked at is no more than a rounding of the search.
    let at_end = found.at <= range[0] || found.at >= range[1];
    let [best_name, bored_to] =
        if at_end { [END, "bored to the end of the search"] } else { [BEST, "bored to the best diameter"] };
    let short = if at_end {
        "Still falling there: no optimum."
    } else {
        "The search may stop a few percent short of the least."
    };
    told("bore.best.roundness", bored_to.into(), found.value, short);
    if let Some([even, rigid]) = bounds(setup, elastic, spinning, found.at) {
        let bound = "A bound: real jaws lie between even and rigid ones.";
        told("bore.best.even", Text::of("{}, if the jaws pressed evenly").with(bored_to), even, bound);
        told("bore.best.rigid", Text::of("{}, if the jaws were rigid").with(bored_to), rigid, bound);
    }
    let words = match setup.grip.side {
        Side::Inside => {
            "Bore jaws for an inside grip to nominal all the same: the gain is seldom worth a part that rocks."
        }
        Side::Outside if at_end => {
            "No best diameter within what was searched: roundness still gains at its end, 0.1 mm beyond the tolerance of the part. Beyond it the jaws bear on their edges or their middle alone, which marks the part and holds it less. Bore to nominal, or weigh the gain against the greatest pressure under a jaw."
        }
        Side::Outside => "The best compromise over the part's tolerance, with the force of the run.",
    };
    findings.insert(
        0,
        Finding::new("bore.best", best_name, Kind::Length, found.at).caution(words).entry("jaws.bored_diameter").step(
            Step {
                says: "Where the worst roundness over both ends of the tolerance is least: seven diameters, then a golden section",
                formula: "min over D_b of max RONt",
                given: [term("from", range[0], Kind::Length), term("to", range[1], Kind::Length)].into(),
                result: term("D_b", found.at, Kind::Length),
                source: "Kiefer 1953, from memory",
            },
        ),
    );
    Some(BoreChoice { curve: found.curve, at_end, findings })
}

/// The jaws bored to a diameter, on both sizes of part.
fn press(setup: &Setup, elastic: &Elasticity, spinning: &Spinning, diameter: f64, effort: Effort) -> Option<Pressed> {
    let mut other = setup.clone();
    other.jaws.bored_diameter = Some(Length::new::<meter>(diameter));
    Pressed::new(&other, elastic, spinning, effort).ok()
}

/// Roundness with jaws that press evenly, and with rigid ones.
fn bounds(setup: &Setup, elastic: &Elasticity, spinning: &Spinning, diameter: f64) -> Option<[f64; 2]> {
    let pressed = press(setup, elastic, spinning, diameter, Effort::Full)?;
    let rigid: Vec<&Contact> = pressed.sizes.iter().filter_map(|size| size.rigid.as_ref()).collect();
    Some([worst(setup, elastic, &elastic.usual, &[&pressed.even])?, worst(setup, elastic, &elastic.rigid, &rigid)?])
}

/// The worst released roundness of any round surface under any of the contacts.
fn worst(setup: &Setup, elastic: &Elasticity, face: &Face<'_>, contacts: &[&Contact]) -> Option<f64> {
    // Without named surfaces, the whole outside and the whole bore are judged.
    let named = elastic.surfaces.len() - setup.part.surfaces.len();
    let first = if setup.part.surfaces.is_empty() { 0 } else { named };
    let mut worst: Option<f64> = None;
    for (at, surface) in elastic.surfaces.iter().enumerate().skip(first) {
        if surface.side == SurfaceSide::Face {
            continue;
        }
        for contact in contacts {
            let (_, lobing) = face.worst(contact, at)?;
            let [_, zone, ..] = released::circles(&lobing);
            let value = zone.roundness;
            worst = Some(worst.map_or(value, |worst| worst.max(value)));
        }
    }
    worst
}
