//! The moves of the tool: skim of the front, roughing, and one finishing pass along the shape.
//!
//! The control point is the imaginary sharp tip: the corner of the square around the nose that points into the
//! metal and toward the chuck. A tool set with it by touching off cuts true on the face and on the seat; along
//! slopes the path is set off so that the round nose, not the tip, follows the shape.

use alloc::vec::Vec;

use super::error::PlanError;
use super::outline::{JawCut, Tool};

/// How far from the metal the tool goes from rapid to feed, m: common practice, no source.
pub const STAND_OFF: f64 = 1e-3;
/// How far the tool leaves a surface before it goes back, m: common practice, no source.
pub const LIFT: f64 = 0.5e-3;
/// Most passes of one kind.
const MOST_PASSES: f64 = 200.0;

/// How it is cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cutting {
    /// Roughing depth of cut, per side, m.
    pub depth: f64,
    /// Left for the finishing pass, per side and on the seat, m.
    pub allowance: f64,
    /// Feed of roughing, m per revolution.
    pub rough_feed: f64,
    /// Feed of finishing, m per revolution.
    pub finish_feed: f64,
    /// Where the tool starts and ends, in front of the jaws, m.
    pub start: f64,
}

/// What a move is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
pub enum Purpose {
    /// To where cutting starts.
    Approach,
    /// Skim of the front face.
    Skim,
    /// Roughing.
    Rough,
    /// The lead chamfer.
    Chamfer,
    /// The finished face, with its taper.
    Finish,
    /// The relief groove in the corner.
    Relief,
    /// The seat.
    Seat,
    /// Away from the metal.
    Retract,
}

impl Purpose {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Approach => "approach",
            Self::Skim => "skim of the front",
            Self::Rough => "roughing",
            Self::Chamfer => "lead chamfer",
            Self::Finish => "finishing the face",
            Self::Relief => "relief groove",
            Self::Seat => "seat",
            Self::Retract => "retract",
        }
    }
}

/// One straight move.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Move {
    /// Diameter on which the tip ends, m; never negative.
    pub x: f64,
    /// Where along the axis it ends, m; 0 at the front of the jaws, negative toward the chuck.
    pub z: f64,
    /// Feed, m per revolution; 0 for rapid.
    pub feed: f64,
    /// What it is for.
    pub purpose: Purpose,
}

/// A path that cuts the jaws.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The shape.
    pub cut: JawCut,
    /// The tool.
    pub tool: Tool,
    /// The moves. The first is reached along the axis, then across it.
    pub moves: Vec<Move>,
    /// Roughing passes.
    pub passes: usize,
}

/// Moves as they come, in `u` and `z`.
struct Path {
    sign: f64,
    moves: Vec<Move>,
}

impl Path {
    fn to(&mut self, u: f64, z: f64, feed: f64, purpose: Purpose) {
        let x = 2.0 * self.sign * u;
        if self.moves.last().is_none_or(|last| last.x != x || last.z != z) {
            self.moves.push(Move { x, z, feed, purpose });
        }
    }
}

impl Plan {
    /// Plans the path.
    ///
    /// # Errors
    /// [`PlanError`], naming what is in the way.
    ///
    /// ```
    /// use holdround_core::{grip::Side, program::{Cutting, JawCut, Plan, Tool}};
    /// let cut = JawCut {
    ///     side: Side::Outside, diameter: 0.1, taper: 0.02e-3, depth: 0.02, chamfer: 0.5e-3,
    ///     relief: [2e-3, 0.5e-3], standing: 0.092, inner: 0.08, skim: 0.25e-3, skim_width: 5e-3,
    /// };
    /// let tool = Tool { nose: 0.4e-3, behind: 0.5, bar: 0.02, reach: 0.06, holder: 0.04 };
    /// let cutting = Cutting { depth: 1e-3, allowance: 0.2e-3, rough_feed: 0.15e-3, finish_feed: 0.08e-3, start: 0.05 };
    /// let plan = Plan::new(&cut, &tool, &cutting)?;
    /// assert_eq!(plan.passes, 4); // 3.8 mm per side at 1 mm
    /// # Ok::<(), holdround_core::program::PlanError>(())
    /// ```
    pub fn new(cut: &JawCut, tool: &Tool, cutting: &Cutting) -> Result<Self, PlanError> {
        cut.check(tool)?;
        let feeds = [cutting.depth, cutting.rough_feed, cutting.finish_feed, cutting.start];
        if !feeds.iter().all(|size| *size > 0.0 && size.is_finite()) || !(0.0..1.0).contains(&cutting.allowance) {
            return Err(PlanError::Size);
        }
        let clear = cut.stands() - STAND_OFF;
        if cut.sign() > 0.0 && clear <= 0.0 {
            return Err(PlanError::NoRoom);
        }
        let finish = finish(cut, tool)?;
        let Some(&([lead, _], _)) = finish.first() else { return Err(PlanError::Cramped) };
        let start = cutting.start.max(cut.skim + 2.0 * STAND_OFF);
        let mut path = Path { sign: cut.sign(), moves: Vec::new() };
        path.to(clear, start, 0.0, Purpose::Approach);
        skim(cut, cutting, lead, &mut path)?;
        let passes = rough(cut, cutting, &mut path)?;
        for (at, ([u, z], purpose)) in finish.iter().enumerate() {
            let (feed, purpose) = if at == 0 { (0.0, Purpose::Approach) } else { (cutting.finish_feed, *purpose) };
            path.to(*u, *z, feed, purpose);
        }
        if let Some(&([u, z], _)) = finish.last() {
            path.to(u, z + LIFT, cutting.finish_feed, Purpose::Retract);
            path.to(u, start, 0.0, Purpose::Retract);
        }
        Ok(Self { cut: *cut, tool: *tool, moves: path.moves, passes })
    }

    /// Largest diameter at which the tool cuts, m: there the surface speed is greatest.
    #[must_use]
    pub fn largest_diameter(&self) -> f64 {
        let cutting = self.moves.iter().filter(|step| step.feed > 0.0 && step.purpose != Purpose::Retract);
        cutting.map(|step| step.x).fold(self.cut.standing, f64::max)
    }
}

fn passes(of: f64, depth: f64) -> Result<usize, PlanError> {
    let count = libm::ceil(of / depth - 1e-9).max(0.0);
    if count > MOST_PASSES { Err(PlanError::Passes) } else { Ok(count as usize) }
}

/// The front face from the opening outward, at least as far as the finishing pass starts.
fn skim(cut: &JawCut, cutting: &Cutting, lead: f64, path: &mut Path) -> Result<(), PlanError> {
    let count = passes(cut.skim, cutting.depth)?;
    let clear = cut.stands() - STAND_OFF;
    let end = (cut.face(0.0) + cut.chamfer + cut.skim_width).max(lead + STAND_OFF);
    let above = cut.skim + STAND_OFF;
    for pass in 1..=count {
        let z = cut.skim * (1.0 - pass as f64 / count as f64);
        path.to(clear, above, 0.0, Purpose::Approach);
        path.to(clear, z, 0.0, Purpose::Approach);
        path.to(end, z, cutting.rough_feed, Purpose::Skim);
        path.to(end, above, cutting.rough_feed, Purpose::Retract);
    }
    path.to(clear, above, 0.0, Purpose::Retract);
    path.to(clear, STAND_OFF, 0.0, Purpose::Approach);
    Ok(())
}

/// Straight passes of equal depth from where the jaws stand; the last leaves the allowance where the face is nearest.
fn rough(cut: &JawCut, cutting: &Cutting, path: &mut Path) -> Result<usize, PlanError> {
    let last = cut.face(0.0).min(cut.face(-cut.depth)) - cutting.allowance;
    let stock = last - cut.stands();
    let bottom = cutting.allowance - cut.depth;
    let count = if bottom < 0.0 { passes(stock, cutting.depth)? } else { 0 };
    for pass in 1..=count {
        let u = cut.stands() + stock * pass as f64 / count as f64;
        path.to(u, STAND_OFF, 0.0, Purpose::Approach);
        path.to(u, bottom, cutting.rough_feed, Purpose::Rough);
        path.to(u - LIFT, bottom, cutting.rough_feed, Purpose::Retract);
        path.to(u - LIFT, STAND_OFF, 0.0, Purpose::Retract);
    }
    Ok(count)
}

/// Ends of the tip's moves along the shape: lines set off by the nose radius meet where the nose touches both.
fn finish(cut: &JawCut, tool: &Tool) -> Result<Vec<([f64; 2], Purpose)>, PlanError> {
    let mut corners = cut.corners(tool)?;
    let corner = corners.last().map_or(0.0, |([u, _], _)| *u);
    // The nose's round must leave a flat to seat on.
    if corner - tool.nose <= cut.seat_ends() {
        return Err(PlanError::Cramped);
    }
    // Jaws that meet on the axis are faced up to it.
    let end = cut.seat_ends() - STAND_OFF;
    let end = if cut.sign() > 0.0 { end.max(0.0) } else { end };
    corners.push(([end, -cut.depth], Purpose::Seat));
    let lines: Vec<Line> = corners.windows(2).map(|pair| Line::set_off(pair[0].0, pair[1].0, tool.nose)).collect();
    let purposes = corners.iter().skip(1).map(|(_, purpose)| *purpose);
    let (Some(first), Some(last)) = (lines.first(), lines.last()) else { return Err(PlanError::Cramped) };
    let mut centres = alloc::vec![first.at_z(STAND_OFF + tool.nose)];
    for pair in lines.windows(2) {
        centres.push(pair[0].meets(&pair[1]));
    }
    centres.push([last.from[0] + last.length * last.along[0], last.from[1]]);
    // A line that the nose cannot stand on is passed backward.
    let forward = centres.windows(2).zip(&lines).all(|(ends, line)| {
        let [from, to] = [ends[0], ends[1]];
        (to[0] - from[0]) * line.along[0] + (to[1] - from[1]) * line.along[1] >= 0.0
    });
    if !forward || !centres.iter().flatten().all(|c| c.is_finite()) {
        return Err(PlanError::Cramped);
    }
    let tips = centres.iter().map(|[u, z]| [u + tool.nose, z - tool.nose]);
    Ok(tips.zip(core::iter::once(Purpose::Approach).chain(purposes)).collect())
}

/// A straight line, set off from the shape into the air.
struct Line {
    from: [f64; 2],
    along: [f64; 2],
    length: f64,
}

impl Line {
    fn set_off(from: [f64; 2], to: [f64; 2], by: f64) -> Self {
        let (du, dz) = (to[0] - from[0], to[1] - from[1]);
        let length = libm::hypot(du, dz);
        let along = [du / length, dz / length];
        // The air is on the right of one who walks from the front to the seat, `u` up.
        Self { from: [from[0] + by * along[1], from[1] - by * along[0]], along, length }
    }

    fn at_z(&self, z: f64) -> [f64; 2] {
        [self.from[0] + self.along[0] * (z - self.from[1]) / self.along[1], z]
    }

    fn meets(&self, other: &Self) -> [f64; 2] {
        let turn = self.along[0] * other.along[1] - self.along[1] * other.along[0];
        let apart = [other.from[0] - self.from[0], other.from[1] - self.from[1]];
        // Lines that run on in the same direction meet where the second starts.
        if libm::fabs(turn) < 1e-12 {
            return other.from;
        }
        let far = (apart[0] * other.along[1] - apart[1] * other.along[0]) / turn;
        [self.from[0] + far * self.along[0], self.from[1] + far * self.along[1]]
    }
}
