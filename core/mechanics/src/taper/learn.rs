//! What readings of bored jaws teach: how stiff the chuck is in tilt, and the taper to cut next.

use super::grip::{Grip, TaperError};

/// How near a feeler or an eye on bluing tells a gap, m: our own estimate, no source.
pub const FEELER: f64 = 5e-6;
/// A gap at the tip at which bluing no longer rubs off there, m.
const JUST_OPEN: f64 = 1e-6;
/// A chuck this many times softer than thought is not believed.
const SOFTEST: f64 = 30.0;
/// While nothing but ends of bluing is known, tilt is sought within this factor: our own estimate, no source.
const LIKELY: f64 = 4.0;

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
    /// A feeler this thick, m, just goes in at the tip.
    TipGap(f64),
    /// Bluing at the base only.
    Base,
    /// Bluing at both ends.
    Even,
    /// Bluing at the tip only.
    Tip,
}

/// What was learned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Learned {
    /// Tilt stiffness of a master jaw, N m/rad.
    pub tilt: f64,
    /// The stiffnesses that the readings leave open, N m/rad; the second may be infinite.
    pub open: [f64; 2],
    /// Taper to cut next, m per side.
    pub taper: f64,
}

/// Flexibilities, rad/(N m).
struct Bounds {
    low: f64,
    high: f64,
}

impl Bounds {
    fn narrow(&mut self, low: f64, high: f64, slack: f64, at: usize, softest: f64) -> Result<(), TaperError> {
        if high <= 0.0 {
            return Err(TaperError::Rigid(at));
        }
        if low > softest {
            return Err(TaperError::Loose(at));
        }
        if low > self.high + slack || high < self.low - slack {
            return Err(TaperError::Contradiction(at));
        }
        let (low, high) = (self.low.max(low), self.high.min(high));
        // Readings that miss each other by less than they can tell agree in the middle.
        *self = if low <= high { Self { low, high } } else { Self { low: high, high: low } };
        Ok(())
    }
}

/// Learns the tilt stiffness from readings taken on jaws bored like those of `grip`, and tells the taper to cut next.
///
/// Each reading is one of the family of faces that lean and taper make together: the engine tells which taper would
/// show it if the chuck were as stiff as thought; what was really cut differs by the lean of the real chuck.
///
/// # Errors
/// [`TaperError`], naming the reading that does not fit.
pub fn learn(grip: &Grip<'_>, readings: &[Reading]) -> Result<Learned, TaperError> {
    let thought = 1.0 / grip.tilt;
    let right = grip.right_taper()?;
    let middle = grip.base + grip.length / 2.0;
    let lever = grip.lever(middle);
    let softest = SOFTEST * thought;
    let mut bounds = Bounds { low: 0.0, high: f64::INFINITY };
    let (mut told, mut count) = (0.0, 0.0);
    for (at, reading) in readings.iter().enumerate() {
        let then = Grip { force: reading.force, ..*grip };
        let right_then = if reading.force == grip.force { right } else { then.right_taper()? };
        let (equal, centre) = match reading.shows {
            Shows::TipGap(gap) => {
                let equal = then.taper_for_gap(gap, right_then)?.ok_or(TaperError::Reading(at))?;
                (equal, then.centre(&then.press(equal, None)?))
            }
            _ => (right_then, middle),
        };
        let lever = then.lever(centre);
        if libm::fabs(lever) * thought < FEELER / 2.0 {
            return Err(TaperError::Blind);
        }
        let flexibility = thought + (reading.taper - equal) / lever;
        // Jaws bear at both ends until the taper is off by as much as they and the part give.
        let blur = match reading.shows {
            Shows::Even => {
                then.taper_for_gap(JUST_OPEN, right_then)?.map_or(FEELER, |open| FEELER.max(right_then - open))
            }
            _ => FEELER,
        };
        let slack = blur / libm::fabs(lever);
        // With the ring leaning the jaws more than the part does, a softer chuck closes the tip.
        let softer_opens = lever > 0.0;
        let (low, high) = match (reading.shows, softer_opens) {
            (Shows::TipGap(_) | Shows::Even, _) => (flexibility - slack, flexibility + slack),
            (Shows::Base, true) | (Shows::Tip, false) => (flexibility, f64::INFINITY),
            (Shows::Tip, true) | (Shows::Base, false) => (f64::NEG_INFINITY, flexibility),
        };
        bounds.narrow(low, high, slack, at, softest)?;
        if matches!(reading.shows, Shows::TipGap(_) | Shows::Even) {
            told += flexibility;
            count += 1.0;
        }
    }
    let flexibility = if count > 0.0 {
        (told / count).max(bounds.low).min(bounds.high)
    } else {
        guess(&bounds, thought, FEELER / libm::fabs(lever))
    };
    // A single stiff reading may lie at the rigid end of what it can tell.
    let flexibility = flexibility.max(thought / SOFTEST);
    Ok(Learned {
        tilt: 1.0 / flexibility,
        open: [1.0 / bounds.high, 1.0 / bounds.low],
        taper: right + lever * (flexibility - thought),
    })
}

/// The flexibility to try next while only bounds are known: what is thought, if they leave it; else midway.
fn guess(bounds: &Bounds, thought: f64, slack: f64) -> f64 {
    if bounds.low + slack < thought && thought < bounds.high - slack {
        return thought;
    }
    let (low, high) = (bounds.low.max(thought / LIKELY), bounds.high.min(thought * LIKELY));
    match (low < high, bounds.high.is_finite()) {
        (true, _) => f64::midpoint(low, high),
        (false, true) => bounds.high / LIKELY,
        (false, false) => bounds.low * LIKELY,
    }
}
