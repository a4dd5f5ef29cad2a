//! The part in section: its profile as it is, and as the jaws and the spin move it, magnified.

use holdround_core::findings::Shift;
use holdround_core::part::Step;
use holdround_core::setup::Toward;

use super::path::{Point, closed, open};
use super::{Along, Shape, Sheet};
use crate::view::Stage;

/// Which half of the section.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::view) enum Half {
    /// Above the axis, at jaw 1.
    Upper,
    /// Below it: at a jaw or midway between two.
    Lower,
}

/// The part's profile on the sheet.
pub(in crate::view) struct Outline<'a> {
    stage: &'a Stage<'a>,
    sheet: Sheet,
    along: &'a Along,
    shape: &'a Shape<'a>,
}

/// How a surface is moved: where it is known, and how much of it is drawn, view units for a metre.
#[derive(Clone, Copy, Debug)]
struct Moved<'a> {
    shifts: &'a [Shift],
    at_jaw: bool,
    factor: f64,
}

impl<'a> Outline<'a> {
    /// The part that `stage` shows.
    pub(in crate::view) fn of(stage: &'a Stage<'a>, sheet: Sheet, along: &'a Along, shape: &'a Shape<'a>) -> Self {
        Self { stage, sheet, along, shape }
    }

    fn steps(&self) -> impl DoubleEndedIterator<Item = (f64, &'a Step)> {
        let mut z = 0.0;
        let placed: Vec<_> = self
            .stage
            .setup
            .part
            .profile
            .steps()
            .iter()
            .map(|step| {
                let from = z;
                z += step.length;
                (from, step)
            })
            .collect();
        placed.into_iter()
    }

    /// Corners of the half section as it is, around.
    pub(in crate::view) fn true_half(&self, half: Half) -> Vec<Point> {
        self.half(half, [None, None])
    }

    /// Points of the half section as the jaws and the spin move it, around.
    pub(in crate::view) fn moved_half(&self, half: Half) -> Vec<Point> {
        let scene = &self.stage.findings.scene;
        let at_jaw = half == Half::Upper || self.stage.setup.chuck.jaws.is_multiple_of(2);
        let [outside, bore] = self.shape.factors();
        let moved = |shifts, factor| Some(Moved { shifts, at_jaw, factor });
        self.half(half, [moved(&scene.outside_along, outside), moved(&scene.bore_along, bore)])
    }

    /// How far the gripped surface is drawn from its true place at `z` m from the chuck side, at a jaw.
    pub(in crate::view) fn gripped_shift(&self, z: f64, outside: bool) -> f64 {
        let scene = &self.stage.findings.scene;
        let [outside_factor, bore_factor] = self.shape.factors();
        let (shifts, factor) =
            if outside { (&scene.outside_along, outside_factor) } else { (&scene.bore_along, bore_factor) };
        Moved { shifts, at_jaw: true, factor }.at(z, Toward::Far)
    }

    fn half(&self, half: Half, [outside, bore]: [Option<Moved<'_>>; 2]) -> Vec<Point> {
        let mut points = Vec::new();
        for (from, step) in self.steps() {
            self.add_line(&mut points, from, step.length, step.outer, outside);
        }
        let mut inner = Vec::new();
        for (from, step) in self.steps() {
            self.add_line(&mut inner, from, step.length, step.inner, bore);
        }
        points.extend(inner.into_iter().rev());
        if half == Half::Lower {
            for point in &mut points {
                point.1 = -point.1;
            }
        }
        points
    }

    /// Adds the line of one step between two diameters, with all points at which its movement is known.
    fn add_line(&self, points: &mut Vec<Point>, from: f64, length: f64, ends: [f64; 2], moved: Option<Moved<'_>>) {
        let mut point = |z: f64, toward: Toward| {
            let share = ((z - from) / length).clamp(0.0, 1.0);
            let diameter = ends[0] + (ends[1] - ends[0]) * share;
            let shift = moved.filter(|_| diameter > 0.0).map_or(0.0, |moved| moved.at(z, toward));
            points.push((self.along.place(z), -(self.sheet.radius(diameter) + shift).max(0.0)));
        };
        point(from, Toward::Far);
        let rounding = 1e-6 * length;
        let known = moved.map_or(&[][..], |moved| moved.shifts);
        for shift in known.iter().filter(|shift| shift.z > from + rounding && shift.z < from + length - rounding) {
            point(shift.z, Toward::Far);
        }
        point(from + length, Toward::Chuck);
    }

    /// Path data along the sides of a mesh, r and z of either end, as it is before it moves.
    pub(in crate::view) fn mesh(&self, mesh: &[[f64; 4]], half: Half) -> String {
        let up = if half == Half::Upper { -1.0 } else { 1.0 };
        let point = |r: f64, z: f64| (self.along.place(z), up * self.sheet.radius(2.0 * r));
        mesh.iter().map(|[r, z, r_to, z_to]| open(&[point(*r, *z), point(*r_to, *z_to)])).collect()
    }

    /// Places of the planes where steps meet or end, with the larger bore there: what is seen beyond the cut.
    pub(in crate::view) fn edges_beyond(&self) -> Vec<(f64, f64)> {
        let mut edges: Vec<(f64, f64)> = Vec::new();
        for (from, step) in self.steps() {
            for (z, bore) in [(from, step.inner[0]), (from + step.length, step.inner[1])] {
                let (x, radius) = (self.along.place(z), self.sheet.radius(bore));
                match edges.last_mut() {
                    Some(last) if (last.0 - x).abs() < 1e-6 => last.1 = last.1.max(radius),
                    _ => edges.push((x, radius)),
                }
            }
        }
        edges.retain(|(_, radius)| *radius > 0.0);
        edges
    }

    /// The thickest wall, view units.
    pub(in crate::view) fn thickest(&self) -> f64 {
        let walls = self.steps().flat_map(|(_, step)| [0, 1].map(|end| step.outer[end] - step.inner[end]));
        self.sheet.radius(walls.fold(0.0, f64::max))
    }
}

impl Moved<'_> {
    /// Movement at `z`, view units, toward one side where steps meet; as at the nearest known place beyond the last.
    fn at(&self, z: f64, toward: Toward) -> f64 {
        let rounding = 1e-9 + 1e-6 * z.abs();
        let before =
            |shift: &&Shift| if toward == Toward::Far { shift.z <= z + rounding } else { shift.z < z - rounding };
        let count = self.shifts.iter().take_while(before).count();
        let value = |shift: &Shift| if self.at_jaw { shift.at_jaw } else { shift.between_jaws };
        let (low, high) = (count.checked_sub(1).and_then(|at| self.shifts.get(at)), self.shifts.get(count));
        let metres = match (low, high) {
            (Some(low), Some(high)) if high.z > low.z => {
                let share = ((z - low.z) / (high.z - low.z)).clamp(0.0, 1.0);
                value(low) + (value(high) - value(low)) * share
            }
            (Some(only), _) | (None, Some(only)) => value(only),
            (None, None) => 0.0,
        };
        let shift = metres * self.factor;
        if shift.is_finite() { shift } else { 0.0 }
    }
}

/// Path data along `points` around, left out where they run along the axis: no edge is seen there.
pub(in crate::view) fn off_axis(points: &[Point]) -> String {
    let on_axis = |point: &Point| point.1.abs() < 1e-9;
    if !points.iter().any(on_axis) {
        return closed(points);
    }
    let mut data = String::new();
    let mut line: Vec<Point> = Vec::new();
    for (at, point) in points.iter().enumerate() {
        let next = points[(at + 1) % points.len()];
        if line.is_empty() {
            line.push(*point);
        }
        if on_axis(point) && on_axis(&next) {
            if line.len() > 1 {
                data += &open(&line);
            }
            line.clear();
        } else {
            line.push(next);
        }
    }
    if line.len() > 1 {
        data += &open(&line);
    }
    data
}
