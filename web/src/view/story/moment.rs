//! What the drawing shows at one moment of the job: shares between nothing and all, no sizes.

use super::chapter::Chapter;

/// Turns that the spindle is seen to make while the part is cut; whole, so that it ends as it began.
pub(super) const CUT_TURNS: f64 = 3.0;
/// The same while the jaws are bored, and while their corner is cut.
const BORE_TURNS: f64 = 5.0;
const RELIEF_TURNS: f64 = 2.0;

/// One moment of the job.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Moment {
    /// How far the top jaws are on their master jaws.
    pub(super) mounted: f64,
    /// How far the jaws stand back from what they grip.
    pub(super) open: f64,
    /// How far the ring is in.
    pub(super) ring: f64,
    /// Whether the jaws press on it, growing from nothing.
    pub(super) on_ring: f64,
    /// How much of the boring path is behind the tool.
    pub(super) bored: f64,
    /// How far the part is in.
    pub(super) part: f64,
    /// Share of the grip at rest.
    pub(super) grip: f64,
    /// Share of the speed.
    pub(super) speed: f64,
    /// How much of the surfaces to be cut is cut true.
    pub(super) cut: f64,
    /// Turns of the spindle.
    pub(super) turn: f64,
    /// How clearly the part as it came out is set off from its true circle.
    pub(super) told: f64,
}

impl Moment {
    /// The moment `t` of a step. The corner of the jaws is cut from the share `corner` of the path on; a job without
    /// spindle speed does not turn.
    pub(super) fn of(chapter: Chapter, t: f64, corner: f64, turns: bool) -> Self {
        let on = |from: f64, to: f64| ease((t - from) / (to - from));
        let off = |from: f64, to: f64| 1.0 - on(from, to);
        let jaws = Self {
            mounted: 1.0,
            open: 1.0,
            ring: 0.0,
            on_ring: 0.0,
            bored: 0.0,
            part: 0.0,
            grip: 0.0,
            speed: 0.0,
            cut: 0.0,
            turn: 0.0,
            told: 0.0,
        };
        let on_ring = Self { ring: 1.0, open: 0.0, on_ring: 1.0, ..jaws };
        let bored = Self { bored: 1.0, ..jaws };
        let held = Self { part: 1.0, open: 0.0, grip: 1.0, ..bored };
        let turning = Self { speed: if turns { 1.0 } else { 0.0 }, ..held };
        let turn = |whole: f64| if turns { whole } else { 0.0 };
        match chapter {
            Chapter::Mount => Self { mounted: on(0.0, 0.8), ..jaws },
            Chapter::Reuse => bored,
            Chapter::RingIn => Self { ring: on(0.0, 0.8), ..jaws },
            Chapter::ClampRing => Self { ring: 1.0, open: off(0.0, 0.6), on_ring: on(0.6, 0.8), ..jaws },
            Chapter::Bore => Self { bored: corner * t, turn: BORE_TURNS * t, ..on_ring },
            Chapter::Relief => Self { bored: corner + (1.0 - corner) * t, turn: RELIEF_TURNS * t, ..on_ring },
            Chapter::RingOut => Self { on_ring: off(0.0, 0.15), open: on(0.15, 0.45), ring: off(0.45, 0.95), ..bored },
            Chapter::PartIn => Self { part: on(0.0, 0.9), ..bored },
            Chapter::Clamp => Self { part: 1.0, open: off(0.0, 0.45), grip: on(0.45, 0.9), ..bored },
            Chapter::Spin => Self { speed: on(0.0, 0.95), turn: turn(2.0 * t * t), ..held },
            Chapter::Rough => Self { turn: turn(CUT_TURNS * t), ..turning },
            Chapter::Reclamp => Self {
                speed: if turns { off(0.0, 0.2) + on(0.8, 1.0) } else { 0.0 },
                grip: off(0.2, 0.35) + on(0.65, 0.8),
                open: on(0.35, 0.45) - on(0.55, 0.65),
                turn: turn(on(0.0, 0.2) + on(0.8, 1.0)),
                ..held
            },
            Chapter::Cut => Self { cut: t, turn: turn(CUT_TURNS * t), ..turning },
            Chapter::Release => Self {
                cut: 1.0,
                speed: if turns { off(0.0, 0.3) } else { 0.0 },
                turn: turn(on(0.0, 0.35)),
                grip: off(0.4, 0.7),
                open: on(0.7, 0.95),
                ..held
            },
            Chapter::Out => Self { part: 1.0, cut: 1.0, told: on(0.0, 0.8), ..bored },
        }
    }

    /// Of a force between its value at rest and at speed: the speed works by its square.
    pub(super) fn force(&self, at_rest: f64, at_speed: f64) -> f64 {
        self.grip * (at_rest + (at_speed - at_rest) * self.speed * self.speed)
    }

    /// How much of its clamped shape at rest a surface shows; what is cut is cut true as it is held, and springs by as
    /// much when it is let go.
    pub(super) fn lobes(&self, at_speed: f64, turned: bool) -> f64 {
        let held = self.force(1.0, at_speed);
        if turned { held - self.cut * at_speed } else { held }
    }
}

/// From 0 to 1, gently at both ends.
fn ease(share: f64) -> f64 {
    let share = share.clamp(0.0, 1.0);
    share * share * (3.0 - 2.0 * share)
}
