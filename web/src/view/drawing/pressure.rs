//! Contact pressure as bands of arrows, around the jaw and along it, to one round scale.

use holdround_core::quantity::Kind;

use super::round_number::at_least;
use crate::view::Stage;

/// Length of the arrow that stands for the round pressure named in the key, view units.
pub(in crate::view) const PRESSURE_KEY: f64 = 32.0;
/// Share of the gripped radius that a band takes inside it.
const MOST_INSIDE: f64 = 0.5;

/// Pressure under a jaw: around it as a mean over the grip length, along it as a mean over its arc.
#[derive(Clone, Debug)]
pub(in crate::view) struct PressureBand {
    /// Angle from the middle of the jaw, rad, from 0 on, and pressure, Pa.
    around: Vec<(f64, f64)>,
    /// Place from the part's chuck side, m, and pressure, Pa.
    along: Vec<(f64, f64)>,
    /// The round pressure drawn [`PRESSURE_KEY`] long, in its unit; none if there is no pressure.
    pub(in crate::view) round: Option<f64>,
    /// View units for a pascal.
    scale: f64,
    longest: f64,
}

impl PressureBand {
    /// What `stage` shows, at rest or, times the share of the grip that is left, at speed; no arrow is longer than half
    /// of `grip_radius` inside it.
    pub(in crate::view) fn of(stage: &Stage<'_>, at_speed: bool, inside: bool, grip_radius: f64) -> Self {
        let scene = &stage.findings.scene;
        let share = scene.jaw_grip_at_speed / scene.jaw_grip_at_rest;
        let share = if share.is_finite() { share.max(0.0) } else { 1.0 };
        let held = if at_speed { share } else { 1.0 };
        let map = &scene.pressure;
        let (around, along) = if map.angles.len() > 1 && map.heights.len() > 1 {
            let across = map.heights.len();
            let at = |angle: usize, height: usize| map.pressure.get(angle * across + height).copied().unwrap_or(0.0);
            let around = means(&map.angles, &map.heights, &|angle, height| at(angle, height));
            let along = means(&map.heights, &map.angles, &|height, angle| at(angle, height));
            (around, along)
        } else {
            let (start, length) = (stage.setup.grip.start.value, stage.setup.grip.length.value);
            let even = scene.contact_pressure;
            let half = scene.contact_half_angle.clamp(0.0, core::f64::consts::PI);
            (vec![(0.0, even), (half, even)], vec![(start, even), (start + length, even)])
        };
        // The greater of rest and speed, so that the scale stays when the spindle starts.
        let most = around.iter().chain(&along).map(|(_, pressure)| *pressure).fold(0.0, f64::max) * share.max(1.0);
        let unit = stage.units.unit(Kind::Stress);
        let round = at_least(unit.from_si(most)).filter(|round| unit.to_si(*round).is_finite());
        let key = round.map_or(f64::INFINITY, |round| unit.to_si(round));
        let longest = if inside { (grip_radius * MOST_INSIDE).min(PRESSURE_KEY) } else { PRESSURE_KEY };
        let held = |line: Vec<(f64, f64)>| line.into_iter().map(|(place, pressure)| (place, pressure * held)).collect();
        Self { around: held(around), along: held(along), round, scale: PRESSURE_KEY / key, longest }
    }

    /// Half the angle up to which the face is pressed anywhere.
    pub(in crate::view) fn half_angle(&self) -> f64 {
        self.around.last().map_or(0.0, |(angle, _)| *angle)
    }

    /// Length of the arrow at `angle` from the middle of the jaw, view units.
    pub(in crate::view) fn around(&self, angle: f64) -> f64 {
        self.length(&self.around, angle.abs())
    }

    /// Length of the arrow at `z` m from the part's chuck side, view units.
    pub(in crate::view) fn along(&self, z: f64) -> f64 {
        self.length(&self.along, z)
    }

    fn length(&self, line: &[(f64, f64)], place: f64) -> f64 {
        let after = line.iter().position(|(at, _)| *at >= place).unwrap_or(line.len().saturating_sub(1));
        let pressure = match (after.checked_sub(1).and_then(|before| line.get(before)), line.get(after)) {
            (Some(low), Some(high)) if high.0 > low.0 => {
                low.1 + (high.1 - low.1) * ((place - low.0) / (high.0 - low.0)).clamp(0.0, 1.0)
            }
            (_, Some(here)) => here.1,
            _ => 0.0,
        };
        let length = pressure * self.scale;
        if length.is_finite() { length.clamp(0.0, self.longest) } else { 0.0 }
    }
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
}
