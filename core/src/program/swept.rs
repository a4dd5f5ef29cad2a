//! The shape that a finishing pass leaves: the envelope of the nose along its moves.

use alloc::vec::Vec;

use super::plan::{Move, Purpose};

/// Straight pieces that draw the round left in an inner corner.
const PIECES: usize = 8;

/// The shape that the finishing moves leave, from the front to the seat: radius and z, m. `sign` is that of
/// [`super::JawCut::sign`].
///
/// ```
/// use holdround_core::program::{Move, Purpose, swept};
/// let step = |x, z, feed, purpose| Move { x, z, feed, purpose };
/// // Along a straight bore of 80 mm with a 1 mm nose, then in along the seat: a corner of 1 mm is left.
/// let moves = [
///     step(0.080, 0.001, 0.0, Purpose::Approach),
///     step(0.080, -0.010, 1e-4, Purpose::Finish),
///     step(0.060, -0.010, 1e-4, Purpose::Seat),
/// ];
/// let shape = swept(&moves, 1e-3, 1.0);
/// let least = shape.iter().map(|[r, z]| (r - 0.039).hypot(z + 0.009)).fold(1.0, f64::min);
/// assert!((least - 1e-3).abs() < 1e-9);
/// ```
#[must_use]
pub fn swept(moves: &[Move], nose: f64, sign: f64) -> Vec<[f64; 2]> {
    let finishing =
        |step: &Move| matches!(step.purpose, Purpose::Chamfer | Purpose::Finish | Purpose::Relief | Purpose::Seat);
    let Some(first) = moves.iter().position(finishing) else { return Vec::new() };
    let passed = moves.iter().skip(first).take_while(|step| finishing(step));
    let centres: Vec<[f64; 2]> = moves
        .iter()
        .skip(first.saturating_sub(1))
        .take(1)
        .chain(passed)
        .map(|step| [sign * step.x / 2.0 - nose, step.z + nose])
        .collect();
    let mut shape = Vec::new();
    let lines: Vec<[[f64; 2]; 2]> = centres.windows(2).map(|pair| [pair[0], pair[1]]).collect();
    for (at, line) in lines.iter().enumerate() {
        let normal = into_metal(line);
        if at == 0 {
            shape.push(beside(line[0], normal, nose));
        }
        match lines.get(at + 1) {
            Some(next) => corner(line[1], normal, into_metal(next), nose, &mut shape),
            None => shape.push(beside(line[1], normal, nose)),
        }
    }
    shape.iter().map(|[u, z]| [sign * u, *z]).collect()
}

/// Unit normal of a line, from the path into the metal.
fn into_metal([from, to]: &[[f64; 2]; 2]) -> [f64; 2] {
    let (du, dz) = (to[0] - from[0], to[1] - from[1]);
    let length = libm::hypot(du, dz);
    if length > 0.0 { [-dz / length, du / length] } else { [1.0, 0.0] }
}

fn beside(centre: [f64; 2], normal: [f64; 2], nose: f64) -> [f64; 2] {
    [centre[0] + nose * normal[0], centre[1] + nose * normal[1]]
}

/// An inner corner keeps the nose's round; at an outer one the two lines meet sharp.
fn corner(centre: [f64; 2], before: [f64; 2], after: [f64; 2], nose: f64, shape: &mut Vec<[f64; 2]>) {
    let turn = before[0] * after[1] - before[1] * after[0];
    let along = before[0] * after[0] + before[1] * after[1];
    if turn < 0.0 {
        let angle = libm::atan2(turn, along);
        let start = libm::atan2(before[1], before[0]);
        shape.extend((0..=PIECES).map(|piece| {
            let at = start + angle * piece as f64 / PIECES as f64;
            beside(centre, [libm::cos(at), libm::sin(at)], nose)
        }));
    } else {
        let reach = nose / (1.0 + along);
        shape.push([centre[0] + reach * (before[0] + after[0]), centre[1] + reach * (before[1] + after[1])]);
    }
}
