//! The contact problem: minimise `p C p / 2 + g p` with `c p = F` and `p >= 0`.
//!
//! Its solution is the pressure at which parts that touch do not overlap and parts that do not
//! touch carry nothing; the force's multiplier is the jaw's travel. Solved by a primal-dual
//! active set (M. Hintermueller, K. Ito, K. Kunisch, SIAM J. Optim. 13 (2002) 865-888; from
//! memory); should that go in circles, by a primal one that cannot.

use super::lines::{add_lines, dot};
use alloc::vec::Vec;

/// Rounds before the primal-dual set is taken to go in circles.
const MOST_ROUNDS: usize = 60;

/// A multiplier or pressure this small beside the largest is rounding.
const ROUNDING: f64 = 1e-12;

/// The problem's data: `compliance` and its `inverse` have `gap.len()` squared numbers, `travelled` are the pressures
/// under which the whole face travels by one, `inverse` times `weight`.
#[derive(Clone, Copy)]
pub(crate) struct Problem<'a> {
    pub(crate) compliance: &'a [f64],
    pub(crate) inverse: &'a [f64],
    pub(crate) gap: &'a [f64],
    pub(crate) weight: &'a [f64],
    pub(crate) travelled: &'a [f64],
    pub(crate) force: f64,
}

/// Pressures, what is left of the gap at each point (both in the problem's own measure), the
/// multiplier of the force, and how many sets were tried.
pub(crate) struct Solution {
    pub(crate) pressure: Vec<f64>,
    pub(crate) clearance: Vec<f64>,
    pub(crate) travel: f64,
    pub(crate) rounds: usize,
}

impl Problem<'_> {
    /// Begins with the set `first`, which changes the work but not the answer. None if the compliance is
    /// not positive definite.
    pub(crate) fn solve(&self, first: Vec<bool>) -> Option<Solution> {
        let mut active = first;
        let filled = self.filled();
        let largest = self.largest();
        for round in 1..=MOST_ROUNDS {
            let Some(mut solution) = self.on_set(&active, &filled) else {
                break;
            };
            let next = next_set(&active, &solution, close(largest, solution.travel));
            if next == active {
                solution.rounds = round;
                return Some(solution);
            }
            active = next;
        }
        self.primal(&filled, largest)
    }

    /// Pressures that close the gap everywhere.
    fn filled(&self) -> Vec<f64> {
        times(self.inverse, self.gap.len(), self.gap.iter().copied().enumerate())
    }

    /// Equality everywhere on the set, nothing off it.
    fn on_set(&self, active: &[bool], filled: &[f64]) -> Option<Solution> {
        let n = active.len();
        let (set, off): (Vec<usize>, Vec<usize>) = (0..n).partition(|&i| active[i]);
        // Solved for the weights and for the gaps: the travel that makes up the force tells how they go together. The
        // smaller of the two sets is the one to eliminate.
        let pressed = set.len() <= off.len();
        let (among, matrix) = if pressed { (&set, self.compliance) } else { (&off, self.inverse) };
        let sides = if pressed { [self.weight, self.gap] } else { [self.travelled, filled] };
        let solved = solve(matrix, n, among, sides)?;
        let [once, begun] = [0, 1].map(|at| {
            let among: f64 = among.iter().zip(&solved[at]).map(|(&i, value)| sides[0][i] * value).sum();
            if pressed { among } else { dot(self.weight, sides[at]) - among }
        });
        if once.is_nan() || once <= 0.0 {
            return None;
        }
        let travel = (self.force + begun) / once;
        let together = |weight: &[f64], gap: &[f64]| -> Vec<f64> {
            weight.iter().zip(gap).map(|(weight, gap)| travel * weight - gap).collect()
        };
        let (side, solved) = (together(sides[0], sides[1]), together(&solved[0], &solved[1]));
        let solved = || among.iter().copied().zip(solved.iter().copied());
        let mut clearance = alloc::vec![0.0; n];
        let mut pressure;
        if pressed {
            pressure = alloc::vec![0.0; n];
            solved().for_each(|(i, value)| pressure[i] = value);
            let give = times(matrix, n, solved());
            off.iter().for_each(|&i| clearance[i] = give[i] - side[i]);
        } else {
            pressure = side;
            add_lines(&mut pressure, solved().map(|(i, value)| (-value, &matrix[i * n..(i + 1) * n])));
            solved().for_each(|(i, value)| (pressure[i], clearance[i]) = (0.0, -value));
        }
        Some(Solution { pressure, clearance, travel, rounds: 0 })
    }

    /// The largest weight and gap.
    fn largest(&self) -> [f64; 2] {
        [self.weight, self.gap].map(|side| side.iter().fold(0.0, |most: f64, value| most.max(value.abs())))
    }

    /// From the feasible even pressure, one constraint at a time: the energy falls at every
    /// full step, so no set comes back.
    fn primal(&self, filled: &[f64], largest: [f64; 2]) -> Option<Solution> {
        let n = self.gap.len();
        let even = self.force / self.weight.iter().sum::<f64>();
        let mut pressure = alloc::vec![even; n];
        let mut active = alloc::vec![true; n];
        for round in 1..=8 * n {
            let mut solution = self.on_set(&active, filled)?;
            let mut step = 1.0;
            for i in 0..n {
                let (from, to) = (pressure[i], solution.pressure[i]);
                if active[i] && to < 0.0 {
                    step = f64::min(step, from / (from - to));
                }
            }
            for i in 0..n {
                pressure[i] += step * (solution.pressure[i] - pressure[i]);
                if active[i] && solution.pressure[i] < 0.0 && pressure[i] <= ROUNDING * even {
                    pressure[i] = 0.0;
                    active[i] = false;
                }
            }
            if step < 1.0 {
                continue;
            }
            let close = close(largest, solution.travel);
            let worst =
                (0..n).filter(|&i| !active[i]).min_by(|&i, &j| solution.clearance[i].total_cmp(&solution.clearance[j]));
            match worst {
                Some(i) if solution.clearance[i] < -close => active[i] = true,
                _ => {
                    solution.rounds = MOST_ROUNDS + round;
                    return Some(solution);
                }
            }
        }
        None
    }
}

/// A clearance no larger than this is rounding.
fn close([weight, gap]: [f64; 2], travel: f64) -> f64 {
    ROUNDING * (travel * weight).abs().max(gap)
}

fn next_set(active: &[bool], solution: &Solution, close: f64) -> Vec<bool> {
    let points = active.iter().zip(&solution.pressure).zip(&solution.clearance);
    points.map(|((on, pressure), clearance)| if *on { *pressure > 0.0 } else { *clearance < -close }).collect()
}

/// Solves the rows and columns `set` of a symmetric matrix of `n` for those entries of two right sides; none if it is
/// not positive definite.
fn solve(matrix: &[f64], n: usize, set: &[usize], sides: [&[f64]; 2]) -> Option<[Vec<f64>; 2]> {
    let size = set.len();
    // The right sides stand behind the rows, and are eliminated with them.
    let width = size + sides.len();
    let mut rows = alloc::vec![0.0; size * width];
    for ((row, &i), k) in rows.chunks_exact_mut(width).zip(set).zip(0..) {
        let whole = &matrix[i * n..(i + 1) * n];
        row.iter_mut().zip(set).skip(k).for_each(|(value, &j)| *value = whole[j]);
        row[size..].iter_mut().zip(sides).for_each(|(value, side)| *value = side[i]);
    }
    let scales = eliminate(&mut rows, size, width)?;
    let mut solved = sides.map(|_| alloc::vec![0.0; size]);
    for (k, row) in rows.chunks_exact(width).enumerate().rev() {
        for (solved, side) in solved.iter_mut().zip(&row[size..]) {
            solved[k] = (side - dot(&row[k + 1..size], &solved[k + 1..])) * scales[k];
        }
    }
    Some(solved)
}

/// A symmetric matrix of `n` times a vector given by its entries that are not zero.
pub(crate) fn times(matrix: &[f64], n: usize, entries: impl Iterator<Item = (usize, f64)>) -> Vec<f64> {
    let mut product = alloc::vec![0.0; n];
    add_lines(&mut product, entries.map(|(j, entry)| (entry, &matrix[j * n..(j + 1) * n])));
    product
}

/// Inverse of a symmetric matrix of `n`; none if it is not positive definite.
pub(crate) fn inverse(matrix: &[f64], n: usize) -> Option<Vec<f64>> {
    let mut rows = matrix.to_vec();
    let scales = eliminate(&mut rows, n, n)?;
    // U X = D^-1 U^-T, whose right side is known on and above the diagonal: D^-1 there, nothing above it.
    let mut inverse = alloc::vec![0.0; n * n];
    for i in (0..n).rev() {
        let factors: Vec<f64> = rows[i * n + i + 1..(i + 1) * n].iter().map(|entry| -entry * scales[i]).collect();
        let (row, below) = inverse[i * n..].split_at_mut(n);
        let (diagonal, beside) = row[i..].split_at_mut(1);
        add_lines(beside, factors.iter().copied().zip(below.chunks_exact(n).map(|line| &line[i + 1..])));
        diagonal[0] = scales[i] + factors.iter().zip(&*beside).map(|(factor, entry)| factor * entry).sum::<f64>();
        below.chunks_exact_mut(n).zip(beside).for_each(|(line, entry)| line[i] = *entry);
    }
    Some(inverse)
}

/// Turns the rows of a symmetric matrix `A = U^T D U` of `n` into those of `D U`, reading and writing nothing below the
/// diagonal, and what stands behind them up to `width` into `U^-T` times that; the reciprocals of D, or none if A is
/// not positive definite.
fn eliminate(rows: &mut [f64], n: usize, width: usize) -> Option<Vec<f64>> {
    let mut scales = Vec::with_capacity(n);
    for i in 0..n {
        let (done, rest) = rows.split_at_mut(i * width);
        let lines = done.chunks_exact(width).zip(&scales).map(|(line, scale)| (-line[i] * scale, &line[i..]));
        add_lines(&mut rest[i..width], lines);
        scales.push(reciprocal(rest[i])?);
    }
    Some(scales)
}

fn reciprocal(pivot: f64) -> Option<f64> {
    (pivot > 0.0 && pivot.is_finite()).then(|| 1.0 / pivot)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A positive definite compliance from any numbers.
    fn compliance(n: usize, seed: &[f64]) -> Vec<f64> {
        let at = |i: usize, j: usize| seed[(i * 7 + j * 13) % seed.len()];
        let mut c = alloc::vec![0.0; n * n];
        for i in 0..n {
            for j in 0..n {
                c[i * n + j] = (0..n).map(|k| at(i, k) * at(j, k)).sum();
            }
            c[i * n + i] += 0.05;
        }
        c
    }

    fn is_solution(problem: &Problem<'_>, solution: &Solution) -> Result<(), TestCaseError> {
        let n = problem.gap.len();
        let force: f64 = problem.weight.iter().zip(&solution.pressure).map(|(c, p)| c * p).sum();
        prop_assert!((force / problem.force - 1.0).abs() < 1e-9, "force {force}");
        let scale = close(problem.largest(), solution.travel) / ROUNDING;
        for i in 0..n {
            prop_assert!(solution.pressure[i] >= 0.0, "pressure {}", solution.pressure[i]);
            let give: f64 = (0..n).map(|j| problem.compliance[i * n + j] * solution.pressure[j]).sum();
            let left = give + problem.gap[i] - solution.travel * problem.weight[i];
            prop_assert!(left > -1e-9 * scale, "overlap {left} at {i}");
            if solution.pressure[i] > 0.0 {
                prop_assert!(left.abs() < 1e-9 * scale, "pressed at {i} over a gap of {left}");
            }
        }
        Ok(())
    }

    proptest! {
        #[test]
        fn both_sets_reach_pressures_without_overlap(
            seed in prop::collection::vec(-1.0..1.0f64, 40),
            gap in prop::collection::vec(0.0..1.0f64, 11),
            weight in prop::collection::vec(0.1..1.0f64, 11),
            force in 0.01..10.0f64,
        ) {
            let compliance = compliance(11, &seed);
            let inverse = inverse(&compliance, 11).expect("positive definite");
            let travelled = times(&inverse, 11, weight.iter().copied().enumerate());
            let problem = Problem {
                compliance: &compliance, inverse: &inverse, gap: &gap, weight: &weight, travelled: &travelled, force,
            };
            let dual = problem.solve(alloc::vec![true; 11]).expect("positive definite");
            is_solution(&problem, &dual)?;
            let primal = problem.primal(&problem.filled(), problem.largest()).expect("positive definite");
            is_solution(&problem, &primal)?;
            for (a, b) in dual.pressure.iter().zip(&primal.pressure) {
                prop_assert!((a - b).abs() < 1e-7 * (1.0 + a.abs()), "{a} and {b}: one solution");
            }
        }
    }
}
