//! The outline of one jaw seen from the front, its own axis straight up.

use holdround_core::setup::{JawShape, Side};

use super::path::{FARTHEST, Point, arc, held, polar};
use super::sheet::{Sheet, stand_back};
use crate::view::Stage;

/// Points across a block's bored end.
const ACROSS: usize = 24;

/// One jaw, in view units.
#[derive(Clone, Debug)]
pub(in crate::view) struct JawOutline {
    /// The full jaw below the seat.
    pub(in crate::view) whole: Vec<Point>,
    /// What stands in front of the seat: it carries the gripping face.
    pub(in crate::view) front: Vec<Point>,
    /// Its end nearest the axis.
    pub(in crate::view) inner: f64,
    /// Its far end, on its own axis.
    pub(in crate::view) outer: f64,
    /// Radius of its gripping face.
    pub(in crate::view) grip: f64,
}

impl JawOutline {
    /// The jaw that `stage` shows, gripping.
    pub(in crate::view) fn of(stage: &Stage<'_>, sheet: Sheet) -> Self {
        let side = stage.setup.grip.side;
        let pitch = core::f64::consts::PI / f64::from(stage.setup.chuck.jaws);
        let grip = sheet.radius(2.0 * stage.setup.gripped_radius());
        let scene = &stage.findings.scene;
        let outer = held(scene.jaw_outer_radius * sheet.scale, 1.0, FARTHEST);
        let inner = held(scene.jaw_inner_radius * sheet.scale, 0.0, outer);
        match stage.setup.jaws.shape {
            JawShape::Ordinary(width) => {
                // Blocks that close in a bore are pointed so far that they still clear each other.
                let (_, back) = stand_back(stage, sheet);
                let point = |x: f64| x.abs() / libm::tan(pitch) - back.min(0.0);
                block(sheet.radius(width.value), inner, outer, grip, &point, side)
            }
            JawShape::Wide(angle) => sector(|_| angle.value / 2.0, inner, outer, grip, side),
            JawShape::Pie(cut) => {
                let half_cut = sheet.radius(cut.value);
                // Where the two saw cuts beside a jaw meet.
                let apex = half_cut / libm::sin(pitch);
                let half_angle = |radius: f64| pitch - libm::asin((half_cut / radius.max(1e-9)).min(1.0));
                sector(|radius| half_angle(radius).max(0.0), inner.max(apex).min(outer), outer, grip, side)
            }
        }
    }
}

/// A block with flat sides, whose inner end lies no nearer the axis than `point(x)`.
fn block(half: f64, inner: f64, outer: f64, grip: f64, point: &dyn Fn(f64) -> f64, side: Side) -> JawOutline {
    let across = |radius_at: &dyn Fn(f64) -> f64| -> Vec<Point> {
        (0..=ACROSS)
            .map(|at| {
                let x = half * (2.0 * at as f64 / ACROSS as f64 - 1.0);
                (x, -radius_at(x))
            })
            .collect()
    };
    let flat = |_: f64| outer;
    let end = |x: f64| point(x).max(inner).min(outer);
    let bored = |x: f64| (grip * grip - x * x).max(0.0).sqrt().max(end(x)).min(outer);
    let between = |low: &dyn Fn(f64) -> f64, high: &dyn Fn(f64) -> f64| {
        let mut points = across(low);
        points.extend(across(high).into_iter().rev());
        points
    };
    let front = match side {
        Side::Outside => between(&bored, &flat),
        Side::Inside => between(&end, &bored),
    };
    JawOutline { whole: between(&end, &flat), front, inner, outer, grip }
}

/// A sector whose half angle may vary with the radius.
fn sector(half_angle: impl Fn(f64) -> f64, inner: f64, outer: f64, grip: f64, side: Side) -> JawOutline {
    let between = |low: f64, high: f64| {
        let mut points = arc(low, -half_angle(low), half_angle(low));
        points.extend(arc(high, half_angle(high), -half_angle(high)));
        points
    };
    let face = grip.max(inner).min(outer);
    let front = match side {
        Side::Outside => between(face, outer),
        Side::Inside => between(inner, face),
    };
    JawOutline { whole: between(inner, outer), front, inner, outer, grip }
}

/// Lowest and highest point, in view units above the axis, of `points` turned clockwise by `angle`.
pub(in crate::view) fn heights(points: &[Point], angle: f64) -> (f64, f64) {
    let (up_x, up_y) = polar(1.0, -angle);
    points.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), (x, y)| {
        let height = x * up_x + y * up_y;
        (low.min(height), high.max(height))
    })
}
