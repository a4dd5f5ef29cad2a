//! The part's outline as it is drawn: clamped, at speed, or released, with its departures magnified.

use core::f64::consts::TAU;

use holdround_core::findings::{Shift, Wave};
use holdround_core::setup::{CutKind, Setup};

use super::bore::{is_hollow, narrowest};
use super::path::{Point, polar};
use super::round_number::at_most;
use super::sheet::Sheet;
use crate::view::Stage;

/// Greatest departure drawn, as a share of the part's radius.
pub(super) const GREATEST_DRAWN: f64 = 0.12;
/// Greatest departure of the bore drawn, as a share of its own radius, where the bore is small.
const GREATEST_IN_BORE: f64 = 0.3;
/// Magnification beyond which a departure is nothing a shop could measure.
const GREATEST_MAGNIFICATION: f64 = 1e5;
/// Points around an outline.
const AROUND: usize = 240;

/// What holds the part, and whether it turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::view) enum State {
    /// The jaws stand back.
    Released,
    /// Clamped, at rest.
    AtRest,
    /// Clamped, turning.
    AtSpeed,
}

/// A part's outline as drawn.
#[derive(Clone, Debug)]
pub(in crate::view) struct Shape<'a> {
    /// What holds it.
    pub(in crate::view) state: State,
    /// How many times departures are drawn larger than they are; none if there is nothing to draw.
    pub(in crate::view) magnification: Option<f64>,
    /// Whether the outside is turned in this clamping.
    pub(in crate::view) turns_outside: bool,
    /// Whether the bore is turned in this clamping.
    pub(in crate::view) turns_bore: bool,
    outside: (&'a Wave, f64),
    bore: (&'a Wave, f64),
    scale: f64,
}

impl<'a> Shape<'a> {
    /// The outline that `stage` shows.
    pub(in crate::view) fn of(stage: &Stage<'a>, sheet: Sheet) -> Self {
        let scene = &stage.findings.scene;
        let state = match (stage.clamped, stage.spinning && stage.setup.speed.value > 0.0) {
            (false, _) => State::Released,
            (true, false) => State::AtRest,
            (true, true) => State::AtSpeed,
        };
        let (turns_outside, turns_bore) = turned_surfaces(stage.setup);
        let at_speed = scene.shape_share_at_speed;
        // A surface turned true under deflection springs back to the reverse; the others to what they were.
        let share = |turned: bool| match state {
            State::AtRest => 1.0,
            State::AtSpeed => at_speed,
            State::Released if turned => -at_speed,
            State::Released => 0.0,
        };
        let radius = stage.setup.part.largest_outside() / 2.0;
        let bore_radius = narrowest(&stage.setup.part) / 2.0;
        let outside_room =
            GREATEST_DRAWN * radius / greatest(&scene.clamped_outside).max(greatest_along(&scene.outside_along));
        let in_bore = greatest(&scene.clamped_bore).max(greatest_along(&scene.bore_along));
        let bore_room = (GREATEST_DRAWN * radius).min(GREATEST_IN_BORE * bore_radius) / in_bore;
        // The larger of rest and speed decides, so that the magnification stays when the spindle starts.
        let magnification =
            at_most(outside_room.min(bore_room) / at_speed.max(1.0)).map(|factor| factor.min(GREATEST_MAGNIFICATION));
        Self {
            state,
            magnification,
            turns_outside,
            turns_bore,
            outside: (&scene.clamped_outside, share(turns_outside)),
            bore: (&scene.clamped_bore, share(turns_bore)),
            scale: sheet.scale,
        }
    }

    /// The same with so much of its clamped shape on outside and bore.
    pub(in crate::view) fn with_shares(&self, [outside, bore]: [f64; 2]) -> Self {
        Self { outside: (self.outside.0, outside), bore: (self.bore.0, bore), ..self.clone() }
    }

    /// How far the outside is drawn from its true circle at `angle` from jaw 1, view units.
    pub(in crate::view) fn outside_shift(&self, angle: f64) -> f64 {
        self.shift(self.outside, angle)
    }

    /// How far the bore is drawn from its true circle at `angle` from jaw 1, view units.
    pub(in crate::view) fn bore_shift(&self, angle: f64) -> f64 {
        self.shift(self.bore, angle)
    }

    /// View units drawn for a metre that the outside and the bore are moved when clamped at rest.
    pub(in crate::view) fn factors(&self) -> [f64; 2] {
        [self.outside.1, self.bore.1].map(|share| share * self.magnification.unwrap_or(0.0) * self.scale)
    }

    /// The outside as drawn, of `radius` view units where it is true.
    pub(in crate::view) fn outside_around(&self, radius: f64) -> Vec<Point> {
        self.around(self.outside, radius)
    }

    /// The bore as drawn, of `radius` view units where it is true.
    pub(in crate::view) fn bore_around(&self, radius: f64) -> Vec<Point> {
        self.around(self.bore, radius)
    }

    fn around(&self, (wave, share): (&Wave, f64), radius: f64) -> Vec<Point> {
        let shifts = wave.around(AROUND);
        on_circle(|at| radius + self.drawn(shifts[at], share))
    }

    fn shift(&self, (wave, share): (&Wave, f64), angle: f64) -> f64 {
        self.drawn(wave.at(angle), share)
    }

    fn drawn(&self, departure: f64, share: f64) -> f64 {
        let shift = departure * share * self.magnification.unwrap_or(0.0) * self.scale;
        if shift.is_finite() { shift } else { 0.0 }
    }
}

/// Points around a circle of `radius` view units.
pub(in crate::view) fn around(radius: f64) -> Vec<Point> {
    on_circle(|_| radius)
}

/// Points evenly around, the first in the direction of jaw 1, each at its own radius.
fn on_circle(radius: impl Fn(usize) -> f64) -> Vec<Point> {
    (0..AROUND).map(|at| polar(radius(at).max(0.0), TAU * at as f64 / AROUND as f64)).collect()
}

fn greatest(wave: &Wave) -> f64 {
    wave.around(AROUND).into_iter().map(f64::abs).fold(0.0, f64::max)
}

fn greatest_along(shifts: &[Shift]) -> f64 {
    shifts.iter().flat_map(|shift| [shift.at_jaw.abs(), shift.between_jaws.abs()]).fold(0.0, f64::max)
}

/// Whether the outside, and whether the bore, is turned by one of the cuts.
fn turned_surfaces(setup: &Setup) -> (bool, bool) {
    let middle = (setup.part.largest_outside() + narrowest(&setup.part)) / 2.0;
    let hollow = is_hollow(&setup.part);
    setup.cuts.iter().fold((false, false), |(outside, bore), cut| match &cut.kind {
        CutKind::Turning(..) => (true, bore),
        CutKind::Boring(..) => (outside, hollow),
        CutKind::Grooving { diameter, .. } | CutKind::Power { diameter, .. } => {
            let on_outside = !hollow || diameter.value >= middle;
            (outside || on_outside, bore || !on_outside)
        }
        CutKind::Facing(_) | CutKind::Drilling { .. } => (outside, bore),
    })
}
