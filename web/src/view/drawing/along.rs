//! Places along the axis, to the sheet's scale; what is too long for the sheet is drawn broken.

use holdround_core::setup::Side;

use super::sheet::{LEFT, RIGHT, Sheet};
use crate::view::Stage;

/// How much of the chuck is drawn behind its face.
const CHUCK_DEPTH: f64 = 52.0;
/// What is left free at either edge of the view.
const MARGIN: f64 = 8.0;
/// From the part's front end to the lines of its diameters, where they stand beside it.
const BORE_LINE: f64 = 62.0;
const OUTSIDE_LINE: f64 = 107.0;
/// Room in front of the part: for the lines of its diameters, or for a tool alone.
const BESIDE_RING: f64 = 135.0;
const BESIDE_STEPS: f64 = 44.0;
/// Half the gap of a break.
const HALF_GAP: f64 = 5.0;
/// How far from a break a tool keeps.
const BESIDE_BREAK: f64 = 10.0;

/// Where things stand along the axis, view units.
#[derive(Clone, Debug)]
pub(in crate::view) struct Along {
    /// Where the chuck is broken off behind its face.
    pub(in crate::view) back: f64,
    /// The chuck's face, on which the jaws stand.
    pub(in crate::view) chuck: f64,
    /// Where the grip starts.
    pub(in crate::view) seat: f64,
    /// The front of the jaws.
    pub(in crate::view) front: f64,
    /// The part's front end.
    pub(in crate::view) end: f64,
    /// Lengths of the three stretches between these, to scale and as drawn.
    stretches: [(f64, f64); 3],
    /// Where the grip starts along the part, m.
    start: f64,
    /// View units per metre.
    pub(in crate::view) scale: f64,
}

impl Along {
    /// The axis of what `stage` shows.
    pub(in crate::view) fn of(stage: &Stage<'_>, sheet: Sheet) -> Self {
        let (grip, start) = (stage.setup.grip.length.value, stage.setup.grip.start.value);
        let lengths = [stage.setup.jaws.height.value - grip, grip, stage.setup.part.length() - start - grip]
            .map(|length| length.max(0.0) * sheet.scale);
        let beside = if stage.setup.part.stepped { BESIDE_STEPS } else { BESIDE_RING };
        let room = RIGHT - LEFT - 2.0 * MARGIN - CHUCK_DEPTH - beside;
        let longest = longest_unbroken(lengths, room);
        let stretches = lengths.map(|length| (length, length.min(longest)));
        let left_over = room - stretches.iter().map(|(_, drawn)| drawn).sum::<f64>();
        let back = LEFT + MARGIN + left_over.max(0.0) / 2.0;
        let chuck = back + CHUCK_DEPTH;
        let seat = chuck + stretches[0].1;
        let front = seat + stretches[1].1;
        Self { back, chuck, seat, front, end: front + stretches[2].1, stretches, start, scale: sheet.scale }
    }

    /// Where a tool `distance` m in front of the jaws stands.
    pub(in crate::view) fn tool(&self, distance: f64) -> f64 {
        let ahead = distance * self.scale;
        if ahead < 0.0 {
            self.seat + within(self.stretches[1], self.stretches[1].0 + ahead, BESIDE_BREAK)
        } else {
            self.front + within(self.stretches[2], ahead, BESIDE_BREAK)
        }
    }

    /// Where a point of the part `z` m from its chuck side is drawn; what reaches into the chuck, no farther than it
    /// is drawn.
    pub(in crate::view) fn place(&self, z: f64) -> f64 {
        let [below, grip, ahead] = self.stretches;
        let from_seat = (z - self.start) * self.scale;
        if from_seat < -below.0 {
            (self.chuck + from_seat + below.0).max(self.back)
        } else if from_seat < 0.0 {
            self.chuck + within(below, below.0 + from_seat, 0.0)
        } else if from_seat <= grip.0 {
            self.seat + within(grip, from_seat, 0.0)
        } else {
            self.front + within(ahead, from_seat - grip.0, 0.0)
        }
    }

    /// Whether `x` lies in a break.
    pub(in crate::view) fn is_broken_at(&self, x: f64) -> bool {
        self.breaks().into_iter().flatten().any(|(left, right)| (left..=right).contains(&x))
    }

    /// Where the lines of bore and outside diameter stand beside the part.
    pub(in crate::view) fn diameter_lines(&self) -> (f64, f64) {
        (self.end + BORE_LINE, self.end + OUTSIDE_LINE)
    }

    /// How far forward the jaw's outer end reaches: past the seat only if it grips an outside.
    pub(in crate::view) fn outer_end(&self, side: Side) -> f64 {
        match side {
            Side::Outside => self.front,
            Side::Inside => self.seat,
        }
    }

    /// Both lines of the break in each stretch: below the seat, in the grip, in front of the jaws.
    pub(in crate::view) fn breaks(&self) -> [Option<(f64, f64)>; 3] {
        let starts = [self.chuck, self.seat, self.front];
        core::array::from_fn(|at| {
            let (length, drawn) = self.stretches[at];
            let middle = starts[at] + drawn / 2.0;
            (drawn < length).then_some((middle - HALF_GAP, middle + HALF_GAP))
        })
    }
}

/// The length to which longer stretches are cut so that all fit into `room`; the same for each.
fn longest_unbroken(lengths: [f64; 3], room: f64) -> f64 {
    let mut longest = room / 3.0;
    if lengths.iter().sum::<f64>() <= room {
        return f64::INFINITY;
    }
    // Each round hands what the short ones leave to the long ones; three stretches settle in three.
    for _ in 0..lengths.len() {
        let short: f64 = lengths.iter().filter(|length| **length <= longest).sum();
        let long = lengths.iter().filter(|length| **length > longest).count();
        if long > 0 {
            longest = (room - short) / long as f64;
        }
    }
    longest
}

/// Where `place` along a stretch is drawn: to scale from the nearer end, `beside` the break's nearer side if it was
/// cut out.
fn within((length, drawn): (f64, f64), place: f64, beside: f64) -> f64 {
    let side = (drawn / 2.0 - HALF_GAP - beside).max(0.0);
    if drawn >= length {
        place.max(0.0).min(drawn)
    } else if place <= length / 2.0 {
        place.max(0.0).min(side)
    } else {
        drawn - (length - place).max(0.0).min(side)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROOM: f64 = 300.0;

    #[test]
    fn stretches_that_fit_are_to_scale() {
        assert_eq!(longest_unbroken([100.0, 50.0, 150.0], ROOM), f64::INFINITY, "they fill the room exactly");
    }

    #[test]
    fn only_the_long_ones_are_cut_and_all_fit() {
        for lengths in [[10.0, 20.0, 5000.0], [500.0, 20.0, 5000.0], [400.0, 400.0, 400.0], [1.0, 150.0, 150.0]] {
            let longest = longest_unbroken(lengths, ROOM);
            let drawn: f64 = lengths.iter().map(|length| length.min(longest)).sum();
            assert!((drawn - ROOM).abs() < 1e-9, "{lengths:?} are drawn {drawn} long");
        }
    }

    #[test]
    fn places_keep_their_order_across_a_break() {
        let stretch = (1000.0, 100.0);
        for beside in [0.0, BESIDE_BREAK] {
            let drawn: Vec<f64> = (0..=100).map(|at| within(stretch, f64::from(at) * 10.0, beside)).collect();
            assert!(
                drawn.windows(2).all(|pair| pair[0] <= pair[1]),
                "what is farther out is drawn no nearer: {drawn:?}"
            );
            assert_eq!((drawn[0], drawn[100]), (0.0, 100.0), "the ends stand at the ends");
        }
    }
}
