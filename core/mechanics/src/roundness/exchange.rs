//! Small linear programs solved by exchanging one active constraint at a time.

/// `row . z >= bound`.
#[derive(Clone, Copy)]
pub(crate) struct Constraint<const D: usize> {
    pub(crate) row: [f64; D],
    pub(crate) bound: f64,
}

/// Where `D` constraints meet, with the weights by which they hold the objective.
#[derive(Clone, Copy)]
pub(crate) struct Vertex<const D: usize> {
    pub(crate) point: [f64; D],
    pub(crate) active: [usize; D],
    pub(crate) weights: [f64; D],
}

/// Violations below this are rounding: the caller scales its bounds to about 1.
const FEASIBLE: f64 = 1e-13;
/// Most exchanges that go for the worst violation; profiles of 360 take about ten.
const GREEDY: usize = 400;
/// Most exchanges by lowest index, which cannot cycle (Bland 1977).
const CAREFUL: usize = 4000;

/// Minimises `objective . z` from `start`, a set of constraints that holds the objective
/// with no negative weight: the dual simplex method, exact up to rounding.
///
/// `None` if the active rows are singular or the exchange bound is reached.
pub(crate) fn minimise<const D: usize>(
    constraints: &[Constraint<D>],
    objective: [f64; D],
    start: [usize; D],
) -> Option<Vertex<D>> {
    let mut active = start;
    for exchange in 0..GREEDY + CAREFUL {
        let inverse = invert(active.map(|i| constraints[i].row))?;
        let point: [f64; D] =
            core::array::from_fn(|row| (0..D).map(|k| inverse[row][k] * constraints[active[k]].bound).sum());
        let across =
            |row: [f64; D]| -> [f64; D] { core::array::from_fn(|k| (0..D).map(|i| row[i] * inverse[i][k]).sum()) };
        let weights = across(objective);
        let Some(entering) = violated(constraints, &point, exchange < GREEDY) else {
            return point.iter().all(|v| v.is_finite()).then_some(Vertex { point, active, weights });
        };
        let direction = across(constraints[entering].row);
        let largest = direction.iter().fold(0.0_f64, |most, d| most.max(d.abs()));
        let leaving = (0..D).filter(|&k| direction[k] > 1e-12 * largest).min_by(|&i, &j| {
            let ratio = |k: usize| weights[k].max(0.0) / direction[k];
            ratio(i).total_cmp(&ratio(j)).then(active[i].cmp(&active[j]))
        })?;
        active[leaving] = entering;
    }
    None
}

fn violated<const D: usize>(constraints: &[Constraint<D>], point: &[f64; D], worst: bool) -> Option<usize> {
    let (mut found, mut most) = (None, FEASIBLE);
    for (i, c) in constraints.iter().enumerate() {
        let reached: f64 = c.row.iter().zip(point).map(|(a, z)| a * z).sum();
        let short = c.bound - reached;
        if short > most {
            if !worst {
                return Some(i);
            }
            (found, most) = (Some(i), short);
        }
    }
    found
}

/// Gauss-Jordan with row pivoting; `None` if singular.
fn invert<const D: usize>(mut matrix: [[f64; D]; D]) -> Option<[[f64; D]; D]> {
    let mut inverse: [[f64; D]; D] = core::array::from_fn(|i| core::array::from_fn(|j| f64::from(u8::from(i == j))));
    for column in 0..D {
        let pivot = (column..D).max_by(|&i, &j| matrix[i][column].abs().total_cmp(&matrix[j][column].abs()))?;
        if matrix[pivot][column].abs() < 1e-300 {
            return None;
        }
        matrix.swap(column, pivot);
        inverse.swap(column, pivot);
        let scale = 1.0 / matrix[column][column];
        for k in 0..D {
            matrix[column][k] *= scale;
            inverse[column][k] *= scale;
        }
        for row in (0..D).filter(|&row| row != column) {
            let factor = matrix[row][column];
            for k in 0..D {
                matrix[row][k] -= factor * matrix[column][k];
                inverse[row][k] -= factor * inverse[column][k];
            }
        }
    }
    Some(inverse)
}
