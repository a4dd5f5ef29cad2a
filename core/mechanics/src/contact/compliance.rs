//! Compliance between the points of a jaw's face: the part's, its short waves, and the jaw's.

use super::active_set::{inverse, times};
use super::arc::Arc;
use super::short_waves::{ShortWaves, product};
use crate::part::{Elastic, MAX_ORDER, PartSpring};
use alloc::vec::Vec;
use core::f64::consts::PI;

/// How a jaw gives, besides moving along its axis. All parts add up; the default is rigid.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JawGive {
    /// Give of the face under pressure on the same spot, m per Pa (1 / foundation modulus).
    pub spot: f64,
    /// Motion of the face along the jaw's axis at each band point (rows) for a force along it
    /// at each band point (columns), m/N; empty = none. See `jaw_spring`.
    pub column: Vec<f64>,
    /// The face's own elasticity across its width.
    pub body: Option<Elastic>,
}

/// What a point load on the face does to every point, and what the face's points weigh.
#[derive(Clone, Debug)]
pub(super) struct Compliance {
    /// Points x points, theta-major, m3/Pa: displacement weighed by area.
    pub(super) matrix: Vec<f64>,
    /// Its inverse.
    pub(super) inverse: Vec<f64>,
    /// Area of each point's hat times cos(theta), m2: a pressure's share in the jaw's force.
    pub(super) weight: Vec<f64>,
    /// Pressure at each point when the whole face travels by 1 m, Pa/m.
    pub(super) travelled: Vec<f64>,
    /// Area of each point's hat, m2.
    pub(super) area: Vec<f64>,
}

/// Factor from the integral over one face to the amplitude of an order, J faces together.
pub(super) fn share(order: usize, jaws: usize) -> f64 {
    let around = if order == 0 { 2.0 * PI } else { PI };
    jaws as f64 / around
}

/// Radial give of the part per unit pressure amplitude beyond the orders of the elements: the
/// half-plane's `2 (1 - nu^2) R / (E n)`, m/Pa.
pub(super) fn half_plane(elastic: &Elastic, radius: f64, order: usize) -> f64 {
    2.0 * (1.0 - elastic.poisson * elastic.poisson) * radius / (elastic.youngs * order as f64)
}

/// Radial give of a jaw body per unit pressure amplitude, m/Pa, in plane strain: outside grip, a
/// plate with a hole; inside grip, a disc. Source: Michell's solution (Barber, *Elasticity*):
/// `E' u / (p R) = (2 n +- (1 - nu')) / (n^2 - 1)`, and Lame's `1 +- nu'` for n = 0.
pub(super) fn body_give(elastic: &Elastic, radius: f64, hole: bool, order: usize) -> f64 {
    let nu = elastic.poisson;
    let (youngs, nu) = (elastic.youngs / (1.0 - nu * nu), nu / (1.0 - nu));
    let sign = if hole { 1.0 } else { -1.0 };
    let n = order as f64;
    let give = match order {
        0 => 1.0 + sign * nu,
        // Order 1 moves the body as a whole; equal jaws never call for it.
        1 => 0.0,
        _ => (2.0 * n + sign * (1.0 - nu)) / (n * n - 1.0),
    };
    give * radius / youngs
}

/// `matrix += left x right` (Kronecker): left between angles, right between band points.
fn add_product(matrix: &mut [f64], left: &[f64], right: &[f64], angles: usize, points: usize) {
    let size = angles * points;
    for i in 0..angles {
        for j in 0..angles {
            let factor = left[i * angles + j];
            for (a, line) in right.chunks_exact(points).enumerate() {
                let at = (i * points + a) * size + j * points;
                for (sum, value) in matrix[at..at + points].iter_mut().zip(line) {
                    *sum += factor * value;
                }
            }
        }
    }
}

/// `sum += factor v v^T`.
pub(super) fn add_square(sum: &mut [f64], factor: f64, v: &[f64]) {
    for (line, a) in sum.chunks_exact_mut(v.len()).zip(v) {
        for (entry, b) in line.iter_mut().zip(v) {
            *entry += factor * a * b;
        }
    }
}

impl Compliance {
    /// Of the part under a rigid jaw.
    pub(super) fn new(part: &PartSpring, arc: &Arc, short: &[ShortWaves]) -> Option<Self> {
        let (angles, points) = (arc.angles().len(), part.points.len());
        let size = angles * points;
        let mut matrix = alloc::vec![0.0; size * size];
        for response in &part.responses {
            let mut square = alloc::vec![0.0; angles * angles];
            add_square(&mut square, share(response.order, part.jaws), &arc.cosines(response.order));
            add_product(&mut matrix, &square, &response.band, angles, points);
        }
        for waves in short {
            add_product(&mut matrix, &waves.give, &product(&part.mass, &waves.spread, points), angles, points);
        }
        let (flat, cosine) = (arc.cosines(0), arc.cosines(1));
        let length: Vec<f64> = part.mass.chunks_exact(points).map(|row| row.iter().sum()).collect();
        let spread = |arc: &[f64]| -> Vec<f64> { arc.iter().flat_map(|a| length.iter().map(move |l| a * l)).collect() };
        Self::of(matrix, spread(&cosine), spread(&flat))
    }

    /// The same under a jaw that gives besides.
    pub(super) fn giving(&self, part: &PartSpring, arc: &Arc, give: &JawGive) -> Option<Self> {
        let (angles, points) = (arc.angles().len(), part.points.len());
        let mut matrix = self.matrix.clone();
        add_product(&mut matrix, &local(part, arc, give), &part.mass, angles, points);
        if give.column.len() == points * points {
            let between = product(&product(&part.mass, &give.column, points), &part.mass, points);
            let mut square = alloc::vec![0.0; angles * angles];
            add_square(&mut square, 1.0, &arc.cosines(1));
            add_product(&mut matrix, &square, &between, angles, points);
        }
        Self::of(matrix, self.weight.clone(), self.area.clone())
    }

    fn of(matrix: Vec<f64>, weight: Vec<f64>, area: Vec<f64>) -> Option<Self> {
        let inverse = inverse(&matrix, weight.len())?;
        let travelled = times(&inverse, weight.len(), weight.iter().copied().enumerate());
        Some(Self { matrix, inverse, weight, travelled, area })
    }
}

/// What acts on the same z only: the jaw's spots and body.
fn local(part: &PartSpring, arc: &Arc, give: &JawGive) -> Vec<f64> {
    let mut sum: Vec<f64> = arc.mass().iter().map(|mass| give.spot * mass).collect();
    if let Some(body) = &give.body {
        let hole = part.side != crate::part::Side::Bore;
        arc.each_cosines(part.jaws, arc.shortest_wave().max(MAX_ORDER), |order, cosines| {
            let softness = body_give(body, part.radius, hole, order);
            add_square(&mut sum, share(order, part.jaws) * softness, cosines);
        });
    }
    sum
}
