//! What readings of bored jaws teach: how stiff the chuck is in tilt, and the taper to cut next.

use alloc::vec::Vec;

use super::grip::{Aim, End, Grip, TaperError};

/// Half the step from one feeler to the next, m, and how near readings tell anything: common practice, no source.
pub const FEELER: f64 = 5e-6;
/// A chuck this many times softer than thought is not believed.
const SOFTEST: f64 = 30.0;
/// Jaws that open or close this much more than thought, m per side, are not lean but dirt or damage: our own estimate,
/// no source.
const MOST: f64 = 3e-4;

/// One reading of how jaws bear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Taper of the jaws then, m per side.
    pub taper: f64,
    /// Force of one jaw then, N.
    pub force: f64,
    /// What it showed.
    pub shows: Shows,
}

/// What a reading showed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shows {
    /// A feeler this thick, m, goes in at the tip, and the next one does not.
    TipGap(f64),
    /// Blue rubbed off at one end only, and over which length from there, m, where that was measured.
    Only(End, Option<f64>),
    /// Blue rubbed off at both ends.
    Even,
}

/// What was learned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Learned {
    /// The tilt stiffness that explains the readings, or why none can be told.
    pub tilt: Result<Tilt, TaperError>,
    /// How much more the jaws open at the tip than was thought, m per side.
    pub opening: f64,
    /// Taper to cut next, m per side.
    pub taper: f64,
    /// Whether that is the taper as last cut, which bears at both ends under this grip.
    pub kept: bool,
}

/// Tilt stiffness of a master jaw as told by readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tilt {
    /// N m/rad.
    pub stiffness: f64,
    /// The stiffnesses that the readings leave open, N m/rad; the second may be infinite.
    pub open: [f64; 2],
}

/// How much more the jaws open than thought, as one reading tells it, m per side.
struct Told {
    between: [f64; 2],
    /// What it is most likely, and about how far off that may be; none for an end of bluing without its length.
    about: Option<(f64, f64)>,
    /// How much a unit of tilt flexibility opens the tip then, N m^2.
    lever: f64,
}

/// What all readings together tell of it.
struct Opening {
    between: [f64; 2],
    about: f64,
}

/// Learns from readings taken on jaws bored like those of `grip`, and tells the taper to cut next.
///
/// Whatever leans the jaws more than was thought opens the tip as too little taper would. If it is the tilt of the
/// master jaws, it grows with the moment of the part's force less that of the ring's, and the readings tell how stiff
/// they are. Where ring and part lean the jaws nearly alike, or no stiffness explains the readings, it is something
/// else (the lathe's own taper, the tool pushed off, play taken up): then it is taken as the same at every force, and
/// the next cut makes up for it all the same.
///
/// An end of bluing alone tells which way, and not how far; with the length of the rubbed band it tells how far, as a
/// feeler does. Without any length the next cut is then within the tapers predicted to bear at both ends
/// of what is known, halfway where both ends are known, and never below straight.
///
/// `aim` is that of `grip`, which is dear to find and known to who asks.
///
/// # Errors
/// [`TaperError`], naming the reading that does not fit.
pub fn learn(grip: &Grip<'_>, aim: Aim, readings: &[Reading]) -> Result<Learned, TaperError> {
    let right = aim.taper;
    let lever = grip.lever(grip.middle());
    let told: Vec<Told> =
        readings.iter().enumerate().map(|(at, reading)| tell(grip, reading, at, aim)).collect::<Result<_, _>>()?;
    let (tilt, opening) = match by_tilt(grip, &told, lever, aim) {
        Ok((tilt, opening)) => (Ok(tilt), opening),
        Err(why) => {
            let opening = together(&told, &|_| 1.0, aim)?.about;
            let last = readings.len().saturating_sub(1);
            if opening > MOST {
                return Err(TaperError::Loose(last));
            }
            if opening < -MOST {
                return Err(TaperError::Rigid(last));
            }
            (Err(why), opening)
        }
    };
    let mut taper = right + opening;
    let straight = right.min(0.0);
    if taper < straight && !readings.iter().any(|reading| matches!(reading.shows, Shows::TipGap(_))) {
        let known = |reading: &Reading| matches!(reading.shows, Shows::Only(End::Tip, _)) && reading.taper <= straight;
        if let Some(at) = readings.iter().position(known) {
            return Err(TaperError::Straight(at));
        }
        taper = straight;
    }
    let last = readings.last().filter(|last| last.shows == Shows::Even && last.force == grip.force);
    taper = last.map_or(taper, |last| last.taper);
    Ok(Learned { tilt, opening: taper - right, taper, kept: last.is_some() })
}

/// One reading: with `equal` taper the jaws as thought would show the same, so that the rest of what was cut is what
/// the real jaws open more.
fn tell(grip: &Grip<'_>, reading: &Reading, at: usize, now: Aim) -> Result<Told, TaperError> {
    let then = Grip { force: reading.force, ..*grip };
    let Aim { taper: right, unseen: [from, to], .. } = if reading.force == grip.force { now } else { then.aim()? };
    let middle = grip.middle();
    let taper = reading.taper;
    let (between, about, centre) = match reading.shows {
        Shows::TipGap(gap) => {
            let far = then.taper_for_gap(gap + 2.0 * FEELER, right)?.ok_or(TaperError::Reading(at))?;
            let near = then.taper_for_gap(gap, right)?;
            let equal = near.map_or(far, |near| f64::midpoint(near, far));
            let least = near.map_or(f64::NEG_INFINITY, |near| taper - near);
            ([least, taper - far], Some((taper - equal, equal - far)), then.centre(&then.press(equal)?))
        }
        Shows::Even => ([taper - to, taper - from], Some((taper - right, to - from)), middle),
        Shows::Only(end, band) => {
            let just = if end == End::Base { from } else { to };
            let least = taper - just;
            let sure = if end == End::Base { [least, f64::INFINITY] } else { [f64::NEG_INFINITY, least] };
            let [base, tip] = grip.bears;
            let equal = match band {
                None => None,
                Some(band) if band >= tip - base => return Err(TaperError::Whole(at)),
                Some(band) => then.taper_for_band(end, band, just)?,
            };
            let centre = match equal {
                None => middle,
                Some(equal) => then.centre(&then.press(equal)?),
            };
            (sure, equal.map(|equal| (taper - equal, equal - just)), centre)
        }
    };
    Ok(Told { between, about, lever: then.lever(centre) })
}

/// The readings as the work of a tilt stiffness.
fn by_tilt(grip: &Grip<'_>, told: &[Told], lever: f64, aim: Aim) -> Result<(Tilt, f64), TaperError> {
    let thought = 1.0 / grip.tilt;
    let faint = |lever: f64| libm::fabs(lever) * thought < FEELER;
    if faint(lever) || told.iter().any(|one| faint(one.lever) || one.lever * lever < 0.0) {
        return Err(TaperError::Blind);
    }
    let Opening { between, about } = together(told, &|one| lever / one.lever, aim)?;
    let flexibility = |opening: f64| thought + opening / lever;
    let ends = between.map(flexibility);
    let (low, high) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
    let last = told.len().saturating_sub(1);
    if high <= 0.0 {
        return Err(TaperError::Rigid(last));
    }
    if low > SOFTEST * thought {
        return Err(TaperError::Loose(last));
    }
    // A single stiff reading may lie at the rigid end of what it can tell.
    let found = flexibility(about).max(thought / SOFTEST).min(SOFTEST * thought);
    let tilt = Tilt { stiffness: 1.0 / found, open: [1.0 / high, 1.0 / low.max(0.0)] };
    Ok((tilt, lever * (found - thought)))
}

/// The readings together, each scaled to the present grip.
fn together(told: &[Told], scale: &dyn Fn(&Told) -> f64, aim: Aim) -> Result<Opening, TaperError> {
    let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
    let (mut sum, mut weights) = (0.0, 0.0);
    // Ends of bluing alone show the width of what bears at both, too: it may be less than predicted, down to nothing.
    let alone = told.iter().all(|one| one.about.is_none());
    let slack = FEELER + if alone { aim.unseen[1] - aim.unseen[0] } else { 0.0 };
    for (at, one) in told.iter().enumerate() {
        let by = scale(one);
        let [from, to] = one.between.map(|end| end * by);
        if from > high + slack || to < low - slack {
            return Err(TaperError::Contradiction(at));
        }
        if let Some((about, off)) = one.about {
            // The nearer a reading tells, the more it counts.
            let off = libm::fabs(off * by).max(FEELER);
            sum += about * by / (off * off);
            weights += 1.0 / (off * off);
        }
        // Readings that miss each other by less than they can tell agree in the middle.
        let (from, to) = (low.max(from), high.min(to));
        (low, high) = if alone { (from, to) } else { (from.min(to), from.max(to)) };
    }
    let about = if weights > 0.0 { (sum / weights).max(low).min(high) } else { guess(low, high, aim) };
    Ok(Opening { between: [low, high], about })
}

/// What to try while only ends of bluing are known: none, if they leave it; else what puts the next taper halfway
/// between the one known to be too little and the one known to be too much, but no farther from what disproved the
/// prediction than the tapers predicted to bear at both ends lie apart, or it could leap over them.
fn guess(low: f64, high: f64, aim: Aim) -> f64 {
    if low < 0.0 && 0.0 < high {
        return 0.0;
    }
    let [from, to] = aim.unseen;
    let (little, much) = (low + from, high + to);
    let halfway = f64::midpoint(little, much);
    let next = if low >= 0.0 { halfway.min(little + (to - from)) } else { halfway.max(much - (to - from)) };
    next - aim.taper
}
