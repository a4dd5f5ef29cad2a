//! The ends of what is known: the set-up as it would be there.

use alloc::vec::Vec;

use crate::evaluate::grip_at_rest;
use crate::evaluate::grip_at_speed::{self, Spinning};
use crate::findings::{Finding, Scene};
use crate::jaw::BoredJaw;
use crate::part::{Profile, Step};
use crate::quantity::{AngularVelocity, Pressure, Ratio};
use crate::setup::{CutKind, Setup, Side};

use uom::si::{angular_velocity::radian_per_second, pressure::pascal};

/// How far each range is used, from -1 at its low end to 1 at its high end.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(in crate::evaluate) struct Ends {
    pub(in crate::evaluate) friction: f64,
    pub(in crate::evaluate) condition: f64,
    pub(in crate::evaluate) pressure: f64,
    pub(in crate::evaluate) wall: f64,
    /// Both ends of the bored diameter at once: 1 widens the part's tolerance by its range.
    pub(in crate::evaluate) bore: f64,
    pub(in crate::evaluate) force: f64,
}

impl Ends {
    /// The ends at which the part slips first.
    pub(in crate::evaluate) const SLIP: Self =
        Self { friction: -1.0, condition: -1.0, pressure: -1.0, wall: 0.0, bore: 0.0, force: 1.0 };
    /// The ends at which the part is squeezed most.
    pub(in crate::evaluate) const SHAPE: Self =
        Self { friction: 0.0, condition: 1.0, pressure: 1.0, wall: -1.0, bore: 1.0, force: 0.0 };
}

/// A set-up somewhere within its ranges. Of its wall only the thickness is told; see [`with_wall`].
#[derive(Clone, Debug)]
pub(in crate::evaluate) struct Corner {
    setup: Setup,
    /// Pressure at the jaws less what the gauge shows, Pa.
    shift: f64,
    /// Grip over the one expected.
    grip: f64,
}

impl Corner {
    pub(in crate::evaluate) fn of(setup: &Setup, ends: &Ends) -> Self {
        let (mut setup, ranges) = (setup.clone(), setup.ranges.clone());
        setup.grip.friction *= 1.0 + ends.friction * ranges.friction.value;
        setup.grip.upper_deviation += ranges.bore * ends.bore;
        setup.grip.lower_deviation -= ranges.bore * ends.bore;
        let force = 1.0 + ends.force * ranges.force.value;
        for cut in &mut setup.cuts {
            strengthen(&mut cut.kind, force);
        }
        Self {
            setup,
            shift: ends.pressure * ranges.pressure.value,
            grip: 1.0 + ends.condition * ranges.condition.value,
        }
    }

    /// The same with a chuck that grips `factor` times as well.
    pub(in crate::evaluate) fn times(self, factor: f64) -> Self {
        Self { grip: self.grip * factor, ..self }
    }

    /// The set-up and its grip with the gauge at `pressure` Pa and the spindle at `speed` rad/s; none where there is
    /// no grip or it is not known.
    pub(in crate::evaluate) fn at(&self, jaw: &BoredJaw, pressure: f64, speed: f64) -> Option<At> {
        let mut setup = self.setup.clone();
        setup.pressure = Pressure::new::<pascal>(pressure + self.shift);
        setup.speed = AngularVelocity::new::<radian_per_second>(speed);
        if setup.pressure.value <= 0.0 {
            return None;
        }
        let mut found = Vec::new();
        let rest = grip_at_rest::tell(&setup, &mut found)?.times(self.grip);
        let spinning = grip_at_speed::tell(&setup, jaw, rest, &mut found, &mut Scene::default())?;
        Some(At { setup, spinning, found })
    }
}

/// A set-up at a place of the plane.
pub(in crate::evaluate) struct At {
    pub(in crate::evaluate) setup: Setup,
    pub(in crate::evaluate) spinning: Spinning,
    /// What grip at rest and at speed were found to be.
    pub(in crate::evaluate) found: Vec<Finding>,
}

impl At {
    /// A finding about the grip over its limit; 0 where it has none.
    pub(in crate::evaluate) fn over_limit(&self, id: &str) -> f64 {
        let finding = self.found.iter().find(|finding| finding.id == id);
        let parts = finding.and_then(|finding| Some((finding.value.as_ref().ok()?, finding.limit.as_ref()?.value)));
        parts.map_or(0.0, |(value, limit)| value / limit)
    }
}

fn strengthen(kind: &mut CutKind, force: f64) {
    let more = |wear: &mut Ratio| *wear *= force;
    match kind {
        CutKind::Turning(turned, _) | CutKind::Boring(turned, _) | CutKind::Facing(turned) => more(&mut turned.wear),
        CutKind::Grooving { wear, .. } | CutKind::Drilling { wear, .. } => more(wear),
        CutKind::Power { power, .. } => *power *= force,
    }
}

/// The set-up with a wall that is `more` m thicker, on the side that is not gripped; the same for a solid part. None
/// where such a wall is not covered.
pub(in crate::evaluate) fn with_wall(setup: &Setup, more: f64) -> Option<Setup> {
    let outside = setup.grip.side == Side::Outside;
    let hollow = |step: &Step| step.inner[0] > 0.0 && step.inner[1] > 0.0;
    let mut other = setup.clone();
    if more == 0.0 || !setup.part.profile.steps().iter().any(hollow) {
        return Some(other);
    }
    let thicker = |step: &Step| match outside {
        true if hollow(step) => Step { inner: step.inner.map(|inner| inner - 2.0 * more), ..*step },
        true => *step,
        false => Step { outer: step.outer.map(|outer| outer + 2.0 * more), ..*step },
    };
    let steps: Vec<Step> = setup.part.profile.steps().iter().map(thicker).collect();
    other.part.profile = Profile::new(&steps).ok()?;
    Some(other)
}
