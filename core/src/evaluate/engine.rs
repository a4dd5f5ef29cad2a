//! The engine: keeps shape work from one set-up to the next, and turns each into findings.

use alloc::vec::Vec;

use super::elastic::{DENSITIES, SETTLED, Shapes, Work};
use super::pressed::{Effort, Pressed};
use super::{
    bore, cautions, contact, finish, grip_at_rest, grip_at_speed, hold, indicator, jaw, placing, program, shape, speed,
    taper,
};
use crate::findings::{Assumption, Findings, Scene};
use crate::jaw::BoredJaw;
use crate::setup::{Assumed, AssumedFrom, Setup, declared};

/// Where a value comes from that was entered in brackets.
const BY_HAND: &str = "entered in brackets, as assumed: common practice, no source";
/// Where a value comes from that was taken over from readings.
const FROM_INDICATOR: &str = "from the indicator, all of the difference taken for this";

/// How far the shape work for a set-up has come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Progress {
    /// Under way; the share of the present mesh that is solved.
    Under(f64),
    /// Nothing is left to do.
    Done,
}

/// Evaluates set-ups one after another, keeping the shape work while sizes and materials stay.
///
/// ```
/// use holdround_core::{Effort, Engine, Progress, setup::{Entries, Setup}};
/// let setup = Setup::read(&Entries::default()).unwrap();
/// let mut engine = Engine::default();
/// while let Progress::Under(share) = engine.prepare(&setup) {
///     assert!((0.0..=1.0).contains(&share));
/// }
/// let findings = engine.evaluate(&setup, Effort::Full);
/// assert_eq!(findings, holdround_core::evaluate(&setup));
/// ```
#[derive(Debug, Default)]
pub struct Engine {
    pub(super) kept: Option<(Shapes, Work)>,
}

impl Engine {
    /// Densities of the part's mesh tried in turn (see [`crate::part::PartModel::new`]).
    pub const DENSITIES: [f64; 5] = DENSITIES;
    /// Relative change of the lobes from one mesh to the next with which it is content.
    pub const SETTLED: f64 = SETTLED;

    /// Does one slice of the shape work that `setup` needs, a millisecond or a few, and says how far it has come.
    pub fn prepare(&mut self, setup: &Setup) -> Progress {
        let Ok(jaw) = BoredJaw::new(setup.jaw()) else { return Progress::Done };
        let shapes = Shapes::of(setup, &jaw);
        let work = match self.kept.take() {
            Some((kept, work)) if kept == shapes => work.slice(&shapes),
            _ => Work::begin(&shapes),
        };
        let progress = match &work {
            Work::Under(_) => Progress::Under(work.share_done()),
            Work::Done(_) | Work::Refused(_) => Progress::Done,
        };
        self.kept = Some((shapes, work));
        progress
    }

    /// Whether the shape work kept is done, and is that of `setup`.
    pub(super) fn has_shape_of(&self, setup: &Setup) -> bool {
        let Ok(jaw) = BoredJaw::new(setup.jaw()) else { return true };
        matches!(&self.kept, Some((kept, Work::Done(_) | Work::Refused(_))) if *kept == Shapes::of(setup, &jaw))
    }

    /// The mesh on which the shape work now kept was solved: r and z of either end of each side of an element, m, z
    /// from the part's chuck side. None before the work is done.
    ///
    /// ```
    /// use holdround_core::{Effort, Engine, setup::{Entries, Setup}};
    /// let setup = Setup::read(&Entries::default()).unwrap();
    /// let mut engine = Engine::default();
    /// assert!(engine.mesh().is_none());
    /// engine.evaluate(&setup, Effort::Sliding);
    /// assert!(engine.mesh().unwrap().len() > 20);
    /// ```
    #[must_use]
    pub fn mesh(&self) -> Option<Vec<[f64; 4]>> {
        match &self.kept {
            Some((shapes, Work::Done(elastic))) => Some(shapes.model(elastic.density).ok()?.mesh().lines()),
            _ => None,
        }
    }

    /// Everything there is to know about a set-up; finishes its shape work first.
    #[must_use]
    pub fn evaluate(&mut self, setup: &Setup, effort: Effort) -> Findings {
        while self.prepare(setup) != Progress::Done {}
        let mut found = Vec::new();
        let mut scene = Scene::default();
        let jaw = jaw::tell(setup, &mut found, &mut scene);
        let rest = grip_at_rest::tell(setup, &mut found);
        let spinning =
            jaw.zip(rest).and_then(|(jaw, rest)| grip_at_speed::tell(setup, &jaw, rest, &mut found, &mut scene));
        let elastic = match &self.kept {
            Some((_, Work::Done(elastic))) => Ok(elastic),
            Some((_, Work::Refused(why))) => Err(why.clone()),
            _ => Err("The jaws cannot be as described.".into()),
        };
        let pressed = match (&elastic, &spinning) {
            (Ok(elastic), Some(spinning)) => Some(Pressed::new(setup, elastic, spinning, effort)),
            _ => None,
        };
        let last = setup.finish_pressure.map(|_| setup.while_cutting(true));
        let finish = last.as_ref().and_then(|last| {
            let (jaw, elastic) = (jaw.as_ref()?, elastic.as_ref().ok()?);
            let spinning = finish::spin(last, jaw, &mut found, &mut scene)?;
            let pressed = Pressed::new(last, elastic, &spinning, effort).ok()?;
            Some((last, spinning, pressed))
        });
        let slip = |pressed: &'_ Pressed| pressed.for_slip.clone();
        let contacts = [
            pressed.as_ref().and_then(|pressed| slip(pressed.as_ref().ok()?)),
            finish.as_ref().and_then(|(.., pressed)| slip(pressed)),
        ];
        let face = elastic.as_ref().ok().map(|elastic| &elastic.usual);
        let held = |at: usize, spinning| hold::Held { slip: face.zip(contacts[at].as_ref()), spinning };
        let finishing = last.as_ref().map(|_| held(1, finish.as_ref().map(|(_, spinning, _)| spinning)));
        let [hold, hold_last] = hold::hold(setup, &held(0, spinning.as_ref()), finishing.as_ref(), &mut found);
        let at_last = finish.as_ref().map(|(last, spinning, _)| (*last, spinning, hold_last));
        speed::limits(setup, spinning.as_ref(), hold, at_last, &mut found);
        if let (Ok(elastic), Some(spinning), Effort::Full) = (&elastic, &spinning, effort) {
            let like = pressed.as_ref().and_then(|pressed| Some(&pressed.as_ref().ok()?.sizes.first()?.at_rest));
            taper::tell(setup, elastic, spinning, like, &mut found, &mut scene);
        }
        if let Some(read) = &setup.indicator {
            let model = elastic.as_ref().ok().map(|elastic| &***elastic).zip(spinning.as_ref());
            indicator::tell(setup, read, model, &mut found, &mut scene);
        }
        match (elastic, pressed, jaw, spinning) {
            (Ok(elastic), Some(Ok(pressed)), Some(jaw), Some(spinning)) => {
                contact::press(setup, &jaw, elastic, &pressed, &spinning, &mut found, &mut scene);
                match (&last, &finish) {
                    (None, _) => shape::tell(setup, elastic, &pressed, &spinning, &mut found, &mut scene),
                    (_, Some((last, at_last, pressed))) => {
                        shape::tell(last, elastic, pressed, at_last, &mut found, &mut scene);
                    }
                    _ => shape::refuse("There is no grip to finish with.", &mut found),
                }
            }
            (Ok(_), Some(Err(error)), ..) => shape::refuse(&error, &mut found),
            (Ok(_), ..) => shape::refuse("There is no grip to squeeze the part with.", &mut found),
            (Err(why), ..) => shape::refuse(why, &mut found),
        }
        bore::tell(setup, &mut found);
        placing::tell(setup, Some(setup.boring.bar_diameter.value), &mut found, &mut scene);
        if let Some(jaw) = &jaw {
            program::tell(setup, jaw, &mut found, &mut scene);
        }
        let cautions = cautions::of(setup, jaw.as_ref(), &found);
        let assumed = setup.assumed.iter().filter_map(assumption).collect();
        Findings { job: setup.name.clone(), findings: found, cautions, assumed, scene }
    }
}

fn assumption(assumed: &Assumed) -> Option<Assumption> {
    let input = declared(&assumed.path)?;
    let source = match assumed.from {
        AssumedFrom::Default => input.source,
        AssumedFrom::Brackets => BY_HAND,
        AssumedFrom::Indicator => FROM_INDICATOR,
    };
    Some(Assumption {
        entry: assumed.path.clone(),
        name: input.name,
        taken: assumed.taken.clone(),
        source,
        matters: None,
    })
}
