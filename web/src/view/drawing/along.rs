//! Places along the axis, to the sheet's scale; what is too long for the sheet is drawn broken.

use holdround_core::setup::Side;

use super::sheet::Sheet;
use crate::view::Stage;

/// The chuck's face.
const CHUCK_FACE: f64 = -190.0;
/// Room for jaws and part in front of it.
const ROOM: f64 = 300.0;
/// Half the gap of a break.
const HALF_GAP: f64 = 5.0;
/// How far from a break a tool keeps.
const BESIDE_BREAK: f64 = 10.0;

/// Where things stand along the axis, view units.
#[derive(Clone, Debug)]
pub(in crate::view) struct Along {
    /// The chuck's face, on which the jaws stand.
    pub(in crate::view) chuck: f64,
    /// Where the part's back end lies.
    pub(in crate::view) seat: f64,
    /// The front of the jaws.
    pub(in crate::view) front: f64,
    /// The part's front end.
    pub(in crate::view) end: f64,
    /// Lengths of the three stretches between these, to scale and as drawn.
    stretches: [(f64, f64); 3],
    scale: f64,
}

impl Along {
    /// The axis of what `stage` shows.
    pub(in crate::view) fn of(stage: &Stage<'_>, sheet: Sheet) -> Self {
        let grip = stage.setup.grip.length.value;
        let lengths = [stage.setup.jaws.height.value - grip, grip, stage.setup.part.length() - grip]
            .map(|length| length.max(0.0) * sheet.scale);
        let longest = longest_unbroken(lengths);
        let stretches = lengths.map(|length| (length, length.min(longest)));
        let seat = CHUCK_FACE + stretches[0].1;
        let front = seat + stretches[1].1;
        Self { chuck: CHUCK_FACE, seat, front, end: front + stretches[2].1, stretches, scale: sheet.scale }
    }

    /// Where a tool `distance` m in front of the jaws stands.
    pub(in crate::view) fn tool(&self, distance: f64) -> f64 {
        let ahead = distance * self.scale;
        if ahead < 0.0 {
            self.seat + within(self.stretches[1], self.stretches[1].0 + ahead)
        } else {
            self.front + within(self.stretches[2], ahead)
        }
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

/// The length to which longer stretches are cut so that all fit; the same for each.
fn longest_unbroken(lengths: [f64; 3]) -> f64 {
    let mut longest = ROOM / 3.0;
    if lengths.iter().sum::<f64>() <= ROOM {
        return f64::INFINITY;
    }
    // Each round hands what the short ones leave to the long ones; three stretches settle in three.
    for _ in 0..lengths.len() {
        let short: f64 = lengths.iter().filter(|length| **length <= longest).sum();
        let long = lengths.iter().filter(|length| **length > longest).count();
        if long > 0 {
            longest = (ROOM - short) / long as f64;
        }
    }
    longest
}

/// Where `place` along a stretch is drawn: to scale from the nearer end, at the break's nearer side if it was cut out.
fn within((length, drawn): (f64, f64), place: f64) -> f64 {
    let side = (drawn / 2.0 - HALF_GAP - BESIDE_BREAK).max(0.0);
    if drawn >= length {
        place.clamp(0.0, drawn)
    } else if place <= length / 2.0 {
        place.clamp(0.0, side)
    } else {
        drawn - (length - place).clamp(0.0, side)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stretches_that_fit_are_to_scale() {
        assert_eq!(longest_unbroken([100.0, 50.0, 150.0]), f64::INFINITY, "they fill the room exactly");
    }

    #[test]
    fn only_the_long_ones_are_cut_and_all_fit() {
        for lengths in [[10.0, 20.0, 5000.0], [500.0, 20.0, 5000.0], [400.0, 400.0, 400.0], [1.0, 150.0, 150.0]] {
            let longest = longest_unbroken(lengths);
            let drawn: f64 = lengths.iter().map(|length| length.min(longest)).sum();
            assert!((drawn - ROOM).abs() < 1e-9, "{lengths:?} are drawn {drawn} long");
        }
    }

    #[test]
    fn places_keep_their_order_across_a_break() {
        let stretch = (1000.0, 100.0);
        let drawn: Vec<f64> = (0..=100).map(|at| within(stretch, f64::from(at) * 10.0)).collect();
        assert!(drawn.windows(2).all(|pair| pair[0] <= pair[1]), "a tool farther out is drawn no nearer: {drawn:?}");
        assert_eq!((drawn[0], drawn[100]), (0.0, 100.0), "the ends stand at the ends");
    }
}
