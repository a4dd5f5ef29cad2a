//! Waves around the part that are too short for its elements: there it answers as the surface of a half-space.
//!
//! Pressure `p cos(n t)` presses a plane in by `2 (1 - nu^2) R / (E n) p`, everywhere alike. Along the axis the
//! half-space spreads this over about `R / n`, and beyond the end of the grip the metal that goes on holds the
//! edge up: just there it gives half as much. The exact kernel along the axis is a Bessel function,
//! `k K0(k |z|) / pi` with `k = n / R` (Johnson, *Contact Mechanics*, from memory); `k exp(-k |z|) / 2`, of the same
//! area, is what `u - u'' / k^2 = p` answers, which hats solve at once.

use super::active_set::inverse;
use super::arc::Arc;
use super::compliance::{add_square, half_plane, share};
use super::face::SHORTEST_DENT;
use crate::part::PartSpring;
use alloc::vec::Vec;

/// Waves taken for equally long: the longest over the shortest.
const ALIKE: f64 = 1.4;

/// Orders taken for equally long.
#[derive(Clone, Debug)]
pub(super) struct ShortWaves {
    /// Each order up to [`SHORTEST_DENT`]: displacement amplitude per pressure amplitude around one face, m/Pa, for
    /// the pressure's hat at each angle.
    pub(super) dents: Vec<Vec<f64>>,
    /// Angles x angles: give of all orders together, m/Pa.
    pub(super) give: Vec<f64>,
    /// Points x points: how the pressure at each point spreads to each.
    pub(super) spread: Vec<f64>,
}

/// All of them.
pub(super) fn short_waves(part: &PartSpring, arc: &Arc) -> Option<Vec<ShortWaves>> {
    let solved = part.responses.iter().map(|r| r.order).max().unwrap_or(0);
    let mut all: Vec<ShortWaves> = Vec::new();
    let mut first = 0;
    arc.each_cosines(part.jaws, arc.shortest_wave().max(SHORTEST_DENT), |order, cosines| {
        if order <= solved {
            return;
        }
        if all.is_empty() || order as f64 > ALIKE * first as f64 {
            first = order;
            let give = alloc::vec![0.0; cosines.len() * cosines.len()];
            let wave_number = crate::sqrt(ALIKE) * order as f64 / part.radius;
            let spread = spread(part, wave_number).unwrap_or_default();
            all.push(ShortWaves { dents: Vec::new(), give, spread });
        }
        if let Some(last) = all.last_mut() {
            let factor = share(order, part.jaws) * half_plane(&part.elastic, part.radius, order);
            add_square(&mut last.give, factor, cosines);
            if order <= SHORTEST_DENT {
                last.dents.push(cosines.iter().map(|c| factor * c).collect());
            }
        }
    });
    all.iter().all(|waves| waves.spread.len() == part.mass.len()).then_some(all)
}

/// `(M + S / k^2 + e / k)^-1 M`, with `M` and `S` the integrals of hats and of their slopes and `e` 1 at an end of the
/// grip beyond which the part goes on: the decaying wave there.
fn spread(part: &PartSpring, wave_number: f64) -> Option<Vec<f64>> {
    let points = part.points.len();
    let mass: Vec<f64> = part.mass.iter().map(|m| m / part.radius).collect();
    let mut matrix = mass.clone();
    let decay = 1.0 / wave_number;
    for (k, pair) in part.points.windows(2).enumerate() {
        let slope = decay * decay / (pair[1] - pair[0]);
        for (i, j, sign) in [(k, k, 1.0), (k + 1, k + 1, 1.0), (k, k + 1, -1.0), (k + 1, k, -1.0)] {
            matrix[i * points + j] += sign * slope;
        }
    }
    for (end, goes_on) in [0, points - 1].into_iter().zip(part.goes_on) {
        if goes_on {
            matrix[end * points + end] += decay;
        }
    }
    Some(product(&inverse(&matrix, points)?, &mass, points))
}

/// Product of two square matrices.
pub(super) fn product(a: &[f64], b: &[f64], size: usize) -> Vec<f64> {
    let mut c = alloc::vec![0.0; size * size];
    for (c, a) in c.chunks_exact_mut(size).zip(a.chunks_exact(size)) {
        for (a, b) in a.iter().zip(b.chunks_exact(size)) {
            c.iter_mut().zip(b).for_each(|(c, b)| *c += a * b);
        }
    }
    c
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::part::{Band, Elastic, PartModel, Profile, Side, Step};

    #[test]
    fn the_end_of_the_grip_gives_half_where_the_part_goes_on_and_in_full_at_its_own_end() {
        let ring = Profile::new(&[Step::cylinder(0.04, 0.15, 0.138)]).expect("a ring");
        let steel = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
        let band = Band { side: Side::Outside, z: [0.0, 0.02], cells: 16 };
        let model = PartModel::new(&ring, steel, band, 3, &[], 0.6).expect("sound");
        let part = model.spring().expect("regular");
        assert_eq!(part.goes_on, [false, true], "the band starts at the part's end");
        let waves = short_waves(&part, &Arc::graded(1.0, 12)).expect("regular");
        let rows = waves[0].spread.chunks_exact(part.points.len());
        let even: Vec<f64> = rows.map(|row| row.iter().sum()).collect();
        // By symmetry of the half-space: the other half of an endless pressure would give the other half. A cell at
        // the end is a quarter as long as the wave decays.
        assert!((even[16] - 0.5).abs() < 0.01, "where the part goes on: {}", even[16]);
        assert!((even[8] - 1.0).abs() < 1e-3, "in the middle: {}", even[8]);
        assert!((even[0] - 1.0).abs() < 1e-3, "at the part's own end: {}", even[0]);
    }
}
