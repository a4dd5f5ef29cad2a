//! One limit's curve, found root by root until it is straight to plotting accuracy between them.

use alloc::vec::Vec;

use super::root::{Root, root};

/// How far a curve may lie from where it is drawn, as a share of the pressure axis.
pub const PLOTTING_ACCURACY: f64 = 1.0 / 500.0;
/// Share of that left to the roots themselves.
const ROOTS: f64 = 0.25;
/// Halvings of the axis beyond which a kink is drawn as it is.
const DEEPEST: u32 = 13;
/// Where, between the curve and the end it must be kept toward, the limit is asked once more: a limit broken there
/// brings the curve nearer.
const PROBES: [f64; 2] = [0.4, 0.75];

/// The part of the plane in which curves are sought.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    /// Least and greatest pressure, Pa.
    pub pressure: [f64; 2],
    /// Greatest speed, rad/s; the least is none.
    pub speed: f64,
}

/// On which side of a curve its limit is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keep {
    /// At this pressure or above it: the part is held.
    AtLeast,
    /// At this pressure or below it: the part stays in tolerance.
    AtMost,
}

/// Over which speeds a curve is sought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// Over all of them.
    Every,
    /// At one, for the limit does not hang on the speed.
    Any,
    /// At the greatest alone.
    Greatest,
}

/// The pressure at which a limit is reached, over speed.
///
/// ```
/// use holdround_mechanics::window::{Curve, Keep, Over, Plane};
/// // Grip 20 mN per Pa, less 0.3 kg m at speed; 12 kN are needed.
/// let held = |pressure: f64, speed: f64| (0.02 * pressure - 0.3 * speed * speed) / 12e3;
/// let plane = Plane { pressure: [0.0, 4e6], speed: 300.0 };
/// let mut curve = Curve::new(Keep::AtLeast, Over::Every, plane);
/// while curve.step(&held) {}
/// let needed = (12e3 + 0.3 * 200.0 * 200.0) / 0.02;
/// assert!((curve.at(200.0) / needed - 1.0).abs() < 1e-9);
/// ```
#[derive(Clone, Debug)]
pub struct Curve {
    keep: Keep,
    over: Over,
    plane: Plane,
    /// Where the first root is still to be doubted.
    unprobed: &'static [f64],
    /// Square of the speed as a share of its greatest, and the root there; by speed.
    nodes: Vec<(f64, Root)>,
    /// Shares between which the curve is not yet known to be straight, and how often the axis was halved.
    open: Vec<(f64, f64, u32)>,
}

impl Curve {
    /// A curve of which nothing is known yet.
    #[must_use]
    pub fn new(keep: Keep, over: Over, plane: Plane) -> Self {
        Self { keep, over, plane, unprobed: &PROBES, nodes: Vec::new(), open: Vec::new() }
    }

    /// Whether no root is found yet.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.nodes.is_empty()
    }

    /// Which side of it is kept.
    #[must_use]
    pub fn keep(&self) -> Keep {
        self.keep
    }

    /// Finds one more root of `ratio`, a function of pressure and speed; false when none is wanted any more.
    pub fn step(&mut self, ratio: &dyn Fn(f64, f64) -> f64) -> bool {
        match (self.nodes.len(), self.over) {
            (0, _) => self.first(ratio),
            (1, _) if !self.unprobed.is_empty() => self.doubt(ratio),
            (1, Over::Every) => {
                let begun = self.nodes[0].1;
                self.find(1.0, begun, ratio);
            }
            (2, Over::Every) => {
                let expected = self.between(0.5).at;
                let bend = (self.find(0.5, self.between(0.5), ratio) - expected).abs();
                let [least, most] = self.plane.pressure;
                // A limit out of reach at either end and in the middle is taken to be out of reach, and one that is
                // straight there is looked at once more.
                if self.nodes.iter().any(|(_, root)| root.at > least && root.at < most) {
                    self.open = [(0.0, 0.5, 1)].into();
                    if bend > ROOTS * self.accuracy() {
                        self.open.push((0.5, 1.0, 1));
                    }
                }
            }
            _ => {
                let Some((from, to, depth)) = self.open.pop() else { return false };
                let share = f64::midpoint(from, to);
                let expected = self.between(share);
                let found = self.find(share, expected, ratio);
                // The new root brings what is left of a smooth bend down to a quarter of it; where it turns from one
                // side to the other, less.
                if (found - expected.at).abs() > (1.0 - ROOTS) * self.accuracy() && depth < DEEPEST {
                    self.open.extend([(share, to, depth + 1), (from, share, depth + 1)]);
                }
            }
        }
        !self.unprobed.is_empty() || !self.open.is_empty() || (self.over == Over::Every && self.nodes.len() < 3)
    }

    /// The first root.
    fn first(&mut self, ratio: &dyn Fn(f64, f64) -> f64) {
        let [least, most] = self.plane.pressure;
        let (share, speed) = if self.over == Over::Greatest { (1.0, self.plane.speed) } else { (0.0, 0.0) };
        let middle = Root { at: f64::midpoint(least, most), slope: 0.0 };
        let found = self.root(&|pressure| ratio(pressure, speed), [least, most], middle);
        self.nodes.push((share, found));
    }

    /// Asks once more on the side of the first root that is kept; if the limit is broken there, a root is looked for
    /// beyond.
    fn doubt(&mut self, ratio: &dyn Fn(f64, f64) -> f64) {
        let (Some((part, rest)), Some((share, found))) = (self.unprobed.split_first(), self.nodes.pop()) else {
            return;
        };
        self.unprobed = rest;
        let speed = self.plane.speed * crate::sqrt(share);
        let here = |pressure: f64| ratio(pressure, speed);
        let [least, most] = self.plane.pressure;
        let end = if self.keep == Keep::AtMost { least } else { most };
        let probe = found.at + (end - found.at) * part;
        let (range, broken) = match self.keep {
            Keep::AtMost => ([least, probe], here(probe) > 1.0),
            Keep::AtLeast => ([probe, most], here(probe) < 1.0),
        };
        let found =
            if broken && probe != found.at { self.root(&here, range, Root { at: probe, slope: 0.0 }) } else { found };
        self.nodes.push((share, found));
        if self.unprobed.is_empty() && self.over == Over::Any {
            self.nodes.push((1.0, found));
        }
    }

    fn accuracy(&self) -> f64 {
        PLOTTING_ACCURACY * (self.plane.pressure[1] - self.plane.pressure[0])
    }

    fn root(&self, ratio: &dyn Fn(f64) -> f64, range: [f64; 2], like: Root) -> Root {
        root(ratio, range, like, ROOTS * self.accuracy())
    }

    /// Finds the root at a share of the square of the greatest speed.
    fn find(&mut self, share: f64, like: Root, ratio: &dyn Fn(f64, f64) -> f64) -> f64 {
        let speed = self.plane.speed * crate::sqrt(share);
        let found = self.root(&|pressure| ratio(pressure, speed), self.plane.pressure, like);
        let place = self.nodes.partition_point(|(at, _)| *at < share);
        self.nodes.insert(place, (share, found));
        found.at
    }

    /// What a straight line between its neighbours has for a share.
    fn between(&self, share: f64) -> Root {
        let after = self.nodes.partition_point(|(at, _)| *at < share).max(1).min(self.nodes.len().max(1) - 1);
        let pair = self.nodes.get(after.saturating_sub(1)).zip(self.nodes.get(after));
        let Some(((from, one), (to, two))) = pair else {
            return self.nodes.first().map_or(Root { at: 0.0, slope: 0.0 }, |(_, only)| *only);
        };
        if to <= from {
            return *one;
        }
        let along = (share - from) / (to - from);
        let slope = if one.slope > 0.0 && two.slope > 0.0 { f64::midpoint(one.slope, two.slope) } else { 0.0 };
        Root { at: one.at + (two.at - one.at) * along, slope }
    }

    /// The pressure at which the limit is reached at `speed` rad/s, Pa, as far as the curve is known; an end of the
    /// plane where it is not reached.
    #[must_use]
    pub fn at(&self, speed: f64) -> f64 {
        let share = speed / self.plane.speed;
        self.between((share * share).min(1.0)).at
    }

    /// Speeds (rad/s) and pressures (Pa) to draw straight lines between, at least `pieces` of them to the greatest
    /// speed; empty before anything is known.
    #[must_use]
    pub fn points(&self, pieces: usize) -> Vec<[f64; 2]> {
        if self.nodes.len() < 2 {
            return Vec::new();
        }
        let even = (0..=pieces).map(|k| k as f64 / pieces.max(1) as f64).map(|share| share * share);
        let mut shares: Vec<f64> = self.nodes.iter().map(|(share, _)| *share).collect();
        for share in even {
            let place = shares.partition_point(|at| *at < share);
            if shares.get(place).is_none_or(|at| *at > share) {
                shares.insert(place, share);
            }
        }
        shares.into_iter().map(|share| [self.plane.speed * crate::sqrt(share), self.between(share).at]).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use core::cell::Cell;

    const PLANE: Plane = Plane { pressure: [0.0, 4e6], speed: 439.8 };

    fn traced(keep: Keep, ratio: &dyn Fn(f64, f64) -> f64) -> (Curve, usize) {
        let count = Cell::new(0);
        let mut curve = Curve::new(keep, Over::Every, PLANE);
        while curve.step(&|p, w| {
            count.set(count.get() + 1);
            ratio(p, w)
        }) {}
        (curve, count.get())
    }

    /// Furthest from `exact` over many speeds, as a share of the axis; where it is steep, from what it passes within
    /// plotting accuracy of the speed.
    fn worst(curve: &Curve, exact: &dyn Fn(f64) -> f64) -> f64 {
        let off = |k: u32| {
            let speed = PLANE.speed * f64::from(k) / 997.0;
            let near = PLANE.speed * PLOTTING_ACCURACY;
            let exact = [speed - near, speed, speed + near].map(|speed| exact(speed.max(0.0)).clamp(0.0, 4e6));
            let [low, high] = [exact.iter().copied().fold(4e6, f64::min), exact.iter().copied().fold(0.0, f64::max)];
            let at = curve.at(speed);
            if high - low < 0.01 * 4e6 { (at - exact[1]).abs() / 4e6 } else { (low - at).max(at - high).max(0.0) / 4e6 }
        };
        (0..=997).map(off).fold(0.0, f64::max)
    }

    #[test]
    fn curves_of_constant_friction_and_linear_distortion_are_exact() {
        // Sources of the numbers: VDI 3106 as quoted in secondary literature; 1.2 kg at 0.075 m, three jaws, 60 kN at
        // 2 MPa, 12 kN for the cut, factors 1.5 and 1.5: 2725.843013 rev/min at 2 MPa.
        let grip = |p: f64| p * 60e3 / 2e6 / 1.5;
        let spin = |w: f64| 0.27 * w * w;
        let slip = |p: f64, w: f64| (grip(p) - spin(w)) / (1.5 * 12e3);
        let (held, count) = traced(Keep::AtLeast, &slip);
        let exact = |w: f64| (1.5 * 12e3 + spin(w)) * 1.5 * 2e6 / 60e3;
        assert!(worst(&held, &exact) < 1e-9, "slip: {}", worst(&held, &exact));
        assert!(count <= 12, "{count} evaluations");
        let permissible = 2_725.843_013 * core::f64::consts::PI / 30.0;
        assert!(
            (held.at(permissible) / 2e6 - 1.0).abs() < 1e-9,
            "the speed permitted at 2 MPa: {}",
            held.at(permissible)
        );
        // 0.1 mm per 60 kN at rest, 20 um allowed, half the spin force felt.
        let lobes = |p: f64, w: f64| 1e-4 * (p * 60e3 / 2e6 - 0.5 * spin(w)) / 60e3 / 20e-6;
        let (round, _) = traced(Keep::AtMost, &lobes);
        let exact = |w: f64| (0.2 * 60e3 + 0.5 * spin(w)) * 2e6 / 60e3;
        assert!(worst(&round, &exact) < 1e-9, "roundness: {}", worst(&round, &exact));
    }

    #[test]
    fn bent_and_broken_curves_are_drawn_to_plotting_accuracy() {
        let power = |w: f64| 3e5 + 1e8 / w.max(1.0);
        let (curve, _) = traced(Keep::AtLeast, &|p, w| p / power(w));
        assert!(worst(&curve, &power) < PLOTTING_ACCURACY, "a cut by power: {}", worst(&curve, &power));
        let wave = |w: f64| 2e6 + 1e6 * libm::sin(w / 120.0);
        let (curve, count) = traced(Keep::AtMost, &|p, w| libm::pow(p / wave(w), 1.7));
        assert!(worst(&curve, &wave) < PLOTTING_ACCURACY, "a wave: {}", worst(&curve, &wave));
        assert!(count < 400, "{count} evaluations");
    }

    #[test]
    fn a_limit_broken_twice_is_drawn_where_it_is_broken_first() {
        // In tolerance up to 1 MPa, out of it to 2.6 MPa, in again, and out from 3.5 MPa.
        let ratio = |p: f64, _: f64| 1.0 + (p - 1e6) * (p - 2.6e6) * (p - 3.5e6) / 1e19;
        let (curve, _) = traced(Keep::AtMost, &ratio);
        assert!((curve.at(0.0) - 1e6).abs() < PLOTTING_ACCURACY * 4e6, "{}", curve.at(0.0));
    }

    #[test]
    fn points_run_with_the_speed_and_lie_on_the_curve() {
        let (curve, _) = traced(Keep::AtLeast, &|p, w| (p - 10.0 * w * w) / 1e6);
        let points = curve.points(24);
        assert!(points.len() >= 25, "{} points", points.len());
        assert!(points.windows(2).all(|pair| pair[0][0] < pair[1][0]), "by speed");
        assert!(points.iter().all(|[w, p]| (p - 1e6 - 10.0 * w * w).abs() < 10.0), "on the curve");
    }
}
