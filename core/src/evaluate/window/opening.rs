//! What would open a window that is shut, or widen one that is not: changes of the set-up, each worked out.

use alloc::vec::Vec;

use super::Span;
use super::work::WindowWork;
use crate::evaluate::engine::Engine;
use crate::jaw::BoredJaw;
use crate::quantity::{Angle, Force, Length};
use crate::setup::jaw_inputs::SAW_CUT;
use crate::setup::part_inputs::THRUST;
use crate::setup::{CutKind, JawShape, Setup};

use uom::si::{angle::radian, force::newton, length::meter};

/// How much wider jaws are tried.
const WIDER: f64 = 1.5;
/// Share of their feed that cuts are tried with.
const LESS_FEED: f64 = 0.5;
/// Share of depth and feed that a finishing cut is taken with where none is entered.
const FINISHING: f64 = 0.25;

/// A change of the set-up, and what it does to the window at one speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opening {
    /// The change, in words.
    pub says: &'static str,
    /// The entry it is made at.
    pub entry: &'static str,
    /// The pressures that are good with it.
    pub span: Span,
    /// How much wider the window is with it, Pa.
    pub gain: f64,
}

struct Change {
    says: &'static str,
    entry: &'static str,
    /// The set-ups all of which must have a window; the flag leaves the limits of shape out.
    setups: Vec<(Setup, bool)>,
}

/// What would open or widen the window at one speed, a slice at a time.
#[derive(Debug)]
pub struct OpeningWork {
    speed: f64,
    /// What is still to be tried, the next last; the set-up as it is comes first.
    changes: Vec<Change>,
    under: Option<(WindowWork, Engine)>,
    narrowest: Option<Span>,
    present: Option<Span>,
    found: Vec<Opening>,
}

impl core::fmt::Debug for Change {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.says)
    }
}

impl OpeningWork {
    /// Work on a set-up at `speed` rad/s.
    #[must_use]
    pub fn new(setup: &Setup, speed: f64) -> Self {
        let mut changes: Vec<Change> =
            [pie(setup), wider(setup), six(setup), to_size(setup), less_feed(setup), tail(setup), two_stages(setup)]
                .into_iter()
                .flatten()
                .filter(|change| change.setups.iter().all(|(setup, _)| BoredJaw::new(setup.jaw()).is_ok()))
                .collect();
        changes.push(Change { says: "", entry: "", setups: [(setup.clone(), false)].into() });
        Self { speed, changes, under: None, narrowest: None, present: None, found: Vec::new() }
    }

    /// Does one slice; false when nothing is left to try.
    pub fn step(&mut self) -> bool {
        if let Some((work, engine)) = &mut self.under {
            if work.step(engine) {
                return true;
            }
            let span = work.window().span(self.speed);
            self.under = None;
            self.narrowest = Some(self.narrowest.filter(|other| other.width() < span.width()).unwrap_or(span));
        }
        let Some(change) = self.changes.last_mut() else { return false };
        if let Some((setup, without_shape)) = change.setups.pop() {
            let work = WindowWork::at_speed(&setup, self.speed);
            self.under = Some((if without_shape { work.without_shape() } else { work }, Engine::default()));
            return true;
        }
        let (says, entry) = (change.says, change.entry);
        self.changes.pop();
        let Some(span) = self.narrowest.take() else { return true };
        match self.present {
            None => self.present = Some(span),
            Some(present) => {
                let gain = span.width() - present.width();
                let place = self.found.partition_point(|other| other.gain >= gain);
                self.found.insert(place, Opening { says, entry, span, gain });
            }
        }
        !self.changes.is_empty()
    }

    /// The changes tried so far that widen the window, most gain first.
    pub fn found(&self) -> impl Iterator<Item = &Opening> {
        self.found.iter().filter(|opening| opening.gain > 0.0)
    }
}

fn change(says: &'static str, entry: &'static str, setup: Setup) -> Option<Change> {
    Some(Change { says, entry, setups: [(setup, false)].into() })
}

fn pie(setup: &Setup) -> Option<Change> {
    let mut other = setup.clone();
    other.jaws.shape = JawShape::Pie(Length::new::<meter>(SAW_CUT.assumed()?));
    let is_pie = matches!(setup.jaws.shape, JawShape::Pie(_));
    if is_pie { None } else { change("Pie jaws of the same length and height", "jaws.kind", other) }
}

fn wider(setup: &Setup) -> Option<Change> {
    let mut other = setup.clone();
    let most = 0.95 * core::f64::consts::TAU / f64::from(setup.chuck.jaws);
    other.jaws.shape = match setup.jaws.shape {
        JawShape::Ordinary(width) => JawShape::Ordinary(width * WIDER),
        JawShape::Wide(angle) if angle.value < most => {
            JawShape::Wide(Angle::new::<radian>((angle.value * WIDER).min(most)))
        }
        _ => return None,
    };
    let entry = if matches!(setup.jaws.shape, JawShape::Ordinary(_)) { "jaws.width" } else { "jaws.angle" };
    change("Jaws that wrap half as far again", entry, other)
}

fn six(setup: &Setup) -> Option<Change> {
    let mut other = setup.clone();
    other.chuck.jaws = 6;
    if setup.chuck.jaws < 6 {
        change("A chuck with six such jaws and the same total grip", "chuck.jaws", other)
    } else {
        None
    }
}

fn to_size(setup: &Setup) -> Option<Change> {
    let mut other = setup.clone();
    other.jaws.bored_diameter = None;
    let off = (setup.bored_radius() - setup.gripped_radius()).abs() > 1e-7;
    if off { change("Jaws bored to the nominal diameter", "jaws.bored_diameter", other) } else { None }
}

/// Feed and depth of every cut times a factor each.
fn lighter(setup: &Setup, feed_by: f64, depth_by: f64) -> Setup {
    let mut other = setup.clone();
    for cut in &mut other.cuts {
        match &mut cut.kind {
            CutKind::Turning(turned, _) | CutKind::Boring(turned, _) | CutKind::Facing(turned) => {
                turned.feed *= feed_by;
                turned.depth *= depth_by;
            }
            CutKind::Grooving { feed, .. } | CutKind::Drilling { feed, .. } => *feed *= feed_by,
            CutKind::Power { power, .. } => *power *= feed_by,
        }
    }
    other
}

fn less_feed(setup: &Setup) -> Option<Change> {
    change("Half the feed", "cuts.0.feed", lighter(setup, LESS_FEED, 1.0))
}

fn tail(setup: &Setup) -> Option<Change> {
    let mut other = setup.clone();
    other.grip.thrust = Some(Force::new::<newton>(THRUST.assumed()?));
    let fits = setup.grip.thrust.is_none() && setup.no_centre().is_none();
    if fits {
        change("A live centre in the tail end, with the thrust that is assumed for one", "grip.tail", other)
    } else {
        None
    }
}

/// Rough at one pressure, where shape does not matter, and finish at another: the last cut, or a lighter one.
fn two_stages(setup: &Setup) -> Option<Change> {
    let mut finish = if setup.cuts.len() > 1 { setup.clone() } else { lighter(setup, FINISHING, FINISHING) };
    let last = finish.cuts.pop()?;
    finish.cuts = [last].into();
    let says = if setup.cuts.len() > 1 {
        "Two pressures: clamp anew for the last cut"
    } else {
        "Two pressures: clamp anew, finish with a quarter of depth and feed"
    };
    Some(Change { says, entry: "run.pressure", setups: [(finish, false), (setup.clone(), true)].into() })
}
