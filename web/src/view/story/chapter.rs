//! The steps of the job, in order, and which of them a job has.

use holdround_core::findings::Findings;
use holdround_core::program::Purpose;
use holdround_core::setup::Setup;

/// The end of a step, before the next begins.
const DONE: f64 = 0.999;

/// One step of the job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Chapter {
    /// Blank jaws on their teeth.
    Mount,
    /// Jaws that came back and are used as they are.
    Reuse,
    /// The ring or plug goes in.
    RingIn,
    /// The jaws are clamped on it.
    ClampRing,
    /// They are bored or turned.
    Bore,
    /// The groove in their corner, and the seat.
    Relief,
    /// The ring comes out.
    RingOut,
    /// The part goes in.
    PartIn,
    /// It is clamped.
    Clamp,
    /// The spindle starts.
    Spin,
    /// It is roughed, at a pressure of its own.
    Rough,
    /// It is clamped anew at the pressure for finishing.
    Reclamp,
    /// It is cut, for the last time in this clamping.
    Cut,
    /// The jaws let go.
    Release,
    /// The part as it comes out.
    Out,
}

impl Chapter {
    /// The steps of this job.
    pub(super) fn all(setup: &Setup, findings: &Findings) -> Vec<Self> {
        let mut all = Vec::new();
        if setup.reuses_jaws() == Some(true) {
            all.push(Self::Reuse);
        } else {
            all.extend([Self::Mount, Self::RingIn, Self::ClampRing, Self::Bore]);
            let path = findings.scene.jaw_path.as_ref();
            if path.is_some_and(|path| path.moves.iter().any(|step| step.purpose == Purpose::Relief)) {
                all.push(Self::Relief);
            }
            all.push(Self::RingOut);
        }
        all.extend([Self::PartIn, Self::Clamp]);
        if setup.speed.value > 0.0 {
            all.push(Self::Spin);
        }
        if setup.finish_pressure.is_some() {
            all.extend([Self::Rough, Self::Reclamp]);
        }
        all.extend([Self::Cut, Self::Release, Self::Out]);
        all
    }

    /// Whether the jaws are made in it, and no part is there yet.
    pub(super) fn makes_jaws(self) -> bool {
        matches!(
            self,
            Self::Mount | Self::Reuse | Self::RingIn | Self::ClampRing | Self::Bore | Self::Relief | Self::RingOut
        )
    }

    /// Whether the jaws are cut in it.
    pub(super) fn cuts_jaws(self) -> bool {
        matches!(self, Self::Bore | Self::Relief)
    }

    /// Whether the part is cut in it.
    pub(super) fn cuts_part(self) -> bool {
        matches!(self, Self::Rough | Self::Cut)
    }

    /// How long it is played, in milliseconds.
    pub(crate) fn lasts(self) -> f64 {
        match self {
            Self::Bore => 7000.0,
            Self::Relief | Self::Reclamp | Self::Cut | Self::Release => 4500.0,
            _ => 3000.0,
        }
    }

    /// The moment that shows it best in a still picture, of a chuck with so many jaws.
    pub(super) fn still(self, jaws: u32) -> f64 {
        match self {
            Self::Bore => 0.7,
            Self::Relief => 0.5,
            Self::Mount | Self::RingOut => 0.4,
            Self::PartIn => 0.45,
            // The spindle stands so that the tool is between two jaws.
            Self::Rough | Self::Cut => (1.0 + 0.5 / f64::from(jaws)) / super::moment::CUT_TURNS,
            _ => DONE,
        }
    }
}
