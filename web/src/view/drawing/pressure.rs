//! Contact pressure as bands of arrows, around the jaw and along it, to one round scale.

use holdround_core::quantity::Kind;
use holdround_core::setup::Side;

use super::round_number::at_least;
use super::sheet::Sheet;
use crate::view::Stage;

/// Length of the arrow that stands for the round pressure named in the key, view units.
pub(in crate::view) const PRESSURE_KEY: f64 = 32.0;
/// Share of the gripped radius that a band takes inside it.
const MOST_INSIDE: f64 = 0.5;

/// Between two arrows around a jaw and along it, view units.
const BETWEEN: f64 = 10.0;

/// Pressure under a jaw: around it as a mean over the grip length, along it as a mean over its arc.
///
/// Each arrow stands for the mean over its own share of the face: at a sharp edge the pressure itself has no bound.
#[derive(Clone, Debug)]
pub(in crate::view) struct PressureBand {
    /// Angle from the middle of the jaw, rad, and length of the arrow there, view units.
    pub(in crate::view) around: Vec<(f64, f64)>,
    /// Place from the part's chuck side, m, and length of the arrow there, view units.
    pub(in crate::view) along: Vec<(f64, f64)>,
    /// Angles from the middle of the jaw, rad, between which it bears; none if it bears nowhere.
    pub(in crate::view) touching: Vec<(f64, f64)>,
    /// The round pressure drawn [`PRESSURE_KEY`] long, in its unit; none if there is no pressure.
    pub(in crate::view) round: Option<f64>,
}

/// Pressure, Pa, at places along a line, straight between them.
type Line = Vec<(f64, f64)>;

impl PressureBand {
    /// What `stage` shows, at rest or, times the share of the grip that is left, at speed; no arrow of a grip in a bore
    /// reaches past half of `radius`.
    pub(in crate::view) fn of(stage: &Stage<'_>, sheet: Sheet, at_speed: bool, radius: f64) -> Self {
        let scene = &stage.findings.scene;
        let share = scene.jaw_grip_at_speed / scene.jaw_grip_at_rest;
        let share = if share.is_finite() { share.max(0.0) } else { 1.0 };
        let held = if at_speed { share } else { 1.0 };
        let (half_face, face) = lines(stage);
        let width = half_face.last().map_or(0.0, |(angle, _)| 2.0 * angle * radius);
        let height = face.first().zip(face.last()).map_or(0.0, |(first, last)| (last.0 - first.0) * sheet.scale);
        let half = shares(&half_face, width / 2.0);
        let along = shares(&face, height);
        // The greater of rest and speed, so that the scale stays when the spindle starts.
        let most = half.iter().chain(&along).map(|(_, pressure)| *pressure).fold(0.0, f64::max) * share.max(1.0);
        let unit = stage.units.unit(Kind::Stress);
        let round = at_least(unit.from_si(most)).filter(|round| unit.to_si(*round).is_finite());
        let scale = round.map_or(0.0, |round| PRESSURE_KEY / unit.to_si(round));
        let longest = match stage.setup.grip.side {
            Side::Outside => PRESSURE_KEY,
            Side::Inside => (radius * MOST_INSIDE).min(PRESSURE_KEY),
        };
        let arrow = |(place, pressure): &(f64, f64)| {
            let length = pressure * held * scale;
            (*place, if length.is_finite() { length.max(0.0).min(longest) } else { 0.0 })
        };
        let mirrored = half.iter().rev().map(|(angle, pressure)| (-angle, *pressure));
        let around: Line = mirrored.chain(half.iter().copied()).collect();
        let touching = if held > 0.0 { pressed(&half_face) } else { Vec::new() };
        Self { around: around.iter().map(arrow).collect(), along: along.iter().map(arrow).collect(), touching, round }
    }
}

/// Pressure around half the jaw, by angle, and along it; even where no contact was computed.
fn lines(stage: &Stage<'_>) -> (Line, Line) {
    let scene = &stage.findings.scene;
    let map = &scene.pressure;
    if map.angles.len() > 1 && map.heights.len() > 1 {
        let across = map.heights.len();
        let at = |angle: usize, height: usize| map.pressure.get(angle * across + height).copied().unwrap_or(0.0);
        let around = means(&map.angles, &map.heights, &|angle, height| at(angle, height));
        let along = means(&map.heights, &map.angles, &|height, angle| at(angle, height));
        return (around, along);
    }
    let even = scene.contact_pressure;
    let half = scene.contact_half_angle.clamp(0.0, core::f64::consts::PI);
    (vec![(0.0, even), (half, even)], stage.setup.bearing().map(|z| (z, even)).into())
}

/// `line` as means over equal shares of it, so many that arrows stand about [`BETWEEN`] apart over `length` view units.
fn shares(line: &[(f64, f64)], length: f64) -> Line {
    let (Some(first), Some(last)) = (line.first(), line.last()) else { return Line::new() };
    let count = (length / BETWEEN).round().clamp(3.0, 40.0);
    let each = (last.0 - first.0) / count;
    let share = |at: usize| {
        let (from, to) = (first.0 + each * at as f64, first.0 + each * (at + 1) as f64);
        let force: f64 = line.windows(2).map(|ends| part_of(ends[0], ends[1], from, to)).sum();
        let mean = force / each;
        (f64::midpoint(from, to), if mean.is_finite() { mean.max(0.0) } else { 0.0 })
    };
    (0..count as usize).map(share).collect()
}

/// Integral between `from` and `to` of what runs straight from one point to another.
fn part_of(start: (f64, f64), end: (f64, f64), from: f64, to: f64) -> f64 {
    let (low, high) = (from.max(start.0), to.min(end.0));
    if high <= low {
        return 0.0;
    }
    let at = |x: f64| start.1 + (end.1 - start.1) * (x - start.0) / (end.0 - start.0);
    (high - low) * f64::midpoint(at(low), at(high))
}

/// Stretches between places with pressure, of half a face and mirrored.
fn pressed(half: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut stretches: Vec<(f64, f64)> = Vec::new();
    for ends in half.windows(2).filter(|ends| ends[0].1 > 0.0 || ends[1].1 > 0.0) {
        match stretches.last_mut() {
            Some(last) if last.1 >= ends[0].0 => last.1 = ends[1].0,
            _ => stretches.push((ends[0].0, ends[1].0)),
        }
    }
    let mirrored: Vec<_> = stretches.iter().map(|(from, to)| (-to, -from)).collect();
    stretches.extend(mirrored);
    stretches
}

/// At each of `places` the mean of `value(place, other)` over the `others`, by trapezia.
fn means(places: &[f64], others: &[f64], value: &dyn Fn(usize, usize) -> f64) -> Vec<(f64, f64)> {
    let whole = others.last().zip(others.first()).map_or(0.0, |(last, first)| last - first);
    let mean = |at: usize| {
        let pieces = others.windows(2).enumerate();
        let sum: f64 =
            pieces.map(|(k, ends)| (ends[1] - ends[0]) * f64::midpoint(value(at, k), value(at, k + 1))).sum();
        sum / whole
    };
    places.iter().enumerate().map(|(at, place)| (*place, mean(at))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mean_across_is_by_trapezia() {
        // Rising from 0 to 2 and flat at 2, over unequal pieces: (1 x 1 + 3 x 2) / 4 by hand.
        let found = means(&[7.0], &[0.0, 1.0, 4.0], &|_, k| [0.0, 2.0, 2.0][k]);
        assert_eq!(found, [(7.0, 1.75)], "place and mean");
    }

    #[test]
    fn arrows_carry_the_whole_force() {
        // A peak at the edge: the integral is 1 x 3 + 1 x 11.5 = 14.5 by hand.
        let line = [(0.0, 3.0), (1.0, 3.0), (2.0, 20.0)];
        for length in [0.0, 47.0, 1e4] {
            let arrows = shares(&line, length);
            let force: f64 = arrows.iter().map(|(_, mean)| mean * 2.0 / arrows.len() as f64).sum();
            assert!((force - 14.5).abs() < 1e-12, "{} arrows carry {force}", arrows.len());
        }
    }

    #[test]
    fn a_face_bears_where_there_is_pressure() {
        let half = [(0.0, 0.0), (0.1, 0.0), (0.2, 5.0), (0.3, 0.0), (0.4, 0.0)];
        assert_eq!(pressed(&half), [(0.1, 0.3), (-0.3, -0.1)], "at both edges, not in the middle");
    }
}
