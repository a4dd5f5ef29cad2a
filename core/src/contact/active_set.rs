//! The contact problem: minimise `p C p / 2 + g p` with `c p = F` and `p >= 0`.
//!
//! Its solution is the pressure at which parts that touch do not overlap and parts that do not
//! touch carry nothing; the force's multiplier is the jaw's travel. Solved by a primal-dual
//! active set (M. Hintermueller, K. Ito, K. Kunisch, SIAM J. Optim. 13 (2002) 865-888; from
//! memory); should that go in circles, by a primal one that cannot.

use crate::part::envelope::Envelope;
use alloc::vec::Vec;

/// Rounds before the primal-dual set is taken to go in circles.
const MOST_ROUNDS: usize = 60;

/// A multiplier or pressure this small beside the largest is rounding.
const ROUNDING: f64 = 1e-12;

/// The problem's data: `c` has `g.len()` squared numbers.
#[derive(Clone, Copy)]
pub(crate) struct Problem<'a> {
    pub(crate) compliance: &'a [f64],
    pub(crate) gap: &'a [f64],
    pub(crate) weight: &'a [f64],
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
        for round in 1..=MOST_ROUNDS {
            let Some(mut solution) = self.on_set(&active) else {
                break;
            };
            let next = self.next_set(&active, &solution);
            if next == active {
                solution.rounds = round;
                return Some(solution);
            }
            active = next;
        }
        self.primal()
    }

    /// Equality everywhere on the set, nothing off it.
    fn on_set(&self, active: &[bool]) -> Option<Solution> {
        let n = active.len();
        let set: Vec<usize> = (0..n).filter(|&i| active[i]).collect();
        let solved = self.solve_two(&set)?;
        let (mut cx, mut cy) = (0.0, 0.0);
        for (pair, &i) in solved.chunks_exact(2).zip(&set) {
            cx += self.weight[i] * pair[0];
            cy += self.weight[i] * pair[1];
        }
        if cx.is_nan() || cx <= 0.0 {
            return None;
        }
        let travel = (self.force + cy) / cx;
        let mut pressure = alloc::vec![0.0; n];
        for (pair, &i) in solved.chunks_exact(2).zip(&set) {
            pressure[i] = travel * pair[0] - pair[1];
        }
        let clearance = (0..n)
            .map(|i| {
                if active[i] {
                    return 0.0;
                }
                let row = &self.compliance[i * n..(i + 1) * n];
                let give: f64 = set.iter().map(|&j| row[j] * pressure[j]).sum();
                give + self.gap[i] - travel * self.weight[i]
            })
            .collect();
        Some(Solution { pressure, clearance, travel, rounds: 0 })
    }

    /// Solves the compliance on a set for the weights and for the gaps: pairs of numbers.
    fn solve_two(&self, set: &[usize]) -> Option<Vec<f64>> {
        let n = self.gap.len();
        let blocks = set.len().div_ceil(3);
        let envelope = Envelope::new(alloc::vec![0; blocks]);
        let mut values = alloc::vec![0.0; envelope.len()];
        for k in 0..3 * blocks {
            let start = envelope.index(k / 3, k % 3, 0, 0);
            match set.get(k) {
                Some(&i) => {
                    let row = &self.compliance[i * n..(i + 1) * n];
                    for (value, &j) in values[start..=start + k].iter_mut().zip(set) {
                        *value = row[j];
                    }
                }
                None => values[start + k] = 1.0,
            }
        }
        if !envelope.factor(&mut values) {
            return None;
        }
        let mut sides = alloc::vec![0.0; 6 * blocks];
        for (pair, &i) in sides.chunks_exact_mut(2).zip(set) {
            pair[0] = self.weight[i];
            pair[1] = self.gap[i];
        }
        envelope.solve(&values, &mut sides, 2, 0);
        Some(sides)
    }

    fn next_set(&self, active: &[bool], solution: &Solution) -> Vec<bool> {
        let close = ROUNDING * self.scale(solution.travel);
        active
            .iter()
            .enumerate()
            .map(|(i, &on)| if on { solution.pressure[i] > 0.0 } else { solution.clearance[i] < -close })
            .collect()
    }

    fn scale(&self, travel: f64) -> f64 {
        self.weight.iter().zip(self.gap).fold(0.0, |most: f64, (c, g)| most.max((travel * c).abs()).max(g.abs()))
    }

    /// From the feasible even pressure, one constraint at a time: the energy falls at every
    /// full step, so no set comes back.
    fn primal(&self) -> Option<Solution> {
        let n = self.gap.len();
        let even = self.force / self.weight.iter().sum::<f64>();
        let mut pressure = alloc::vec![even; n];
        let mut active = alloc::vec![true; n];
        for round in 1..=8 * n {
            let mut solution = self.on_set(&active)?;
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
            let close = ROUNDING * self.scale(solution.travel);
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
        let scale = problem.scale(solution.travel);
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
            let problem = Problem { compliance: &compliance, gap: &gap, weight: &weight, force };
            let dual = problem.solve(alloc::vec![true; 11]).expect("positive definite");
            is_solution(&problem, &dual)?;
            let primal = problem.primal().expect("positive definite");
            is_solution(&problem, &primal)?;
            for (a, b) in dual.pressure.iter().zip(&primal.pressure) {
                prop_assert!((a - b).abs() < 1e-7 * (1.0 + a.abs()), "{a} and {b}: one solution");
            }
        }
    }
}
