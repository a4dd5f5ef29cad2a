//! Six by six symmetric systems.
#![allow(clippy::needless_range_loop, reason = "index notation of linear algebra")]

/// A symmetric matrix, kept whole: straight loops beat half the work.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Symmetric([[f64; 6]; 6]);

/// Its Cholesky factor, with the inverse of the diagonal.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cholesky {
    lower: [[f64; 6]; 6],
    inverse: [f64; 6],
}

impl Symmetric {
    /// Nearly nil: just enough that a direction nothing resists has a solution.
    pub(crate) fn tiny() -> Self {
        let mut matrix = [[0.0; 6]; 6];
        for (k, row) in matrix.iter_mut().enumerate() {
            row[k] = 1e-12;
        }
        Self(matrix)
    }

    /// Sum of the diagonal.
    pub(crate) fn trace(&self) -> f64 {
        (0..6).map(|k| self.0[k][k]).sum()
    }

    /// Adds `A^T H A` for two rows `A` and a symmetric 2 x 2 `H`.
    pub(crate) fn add_rows(&mut self, rows: &[[f64; 6]; 2], h00: f64, h01: f64, h11: f64) {
        let [a, b] = rows;
        for i in 0..6 {
            let p = h00 * a[i] + h01 * b[i];
            let q = h01 * a[i] + h11 * b[i];
            for j in 0..6 {
                self.0[i][j] += p * a[j] + q * b[j];
            }
        }
    }

    /// Adds `h a^T a` for one row.
    pub(crate) fn add_row(&mut self, a: &[f64; 6], h: f64) {
        for i in 0..6 {
            for j in 0..6 {
                self.0[i][j] += h * a[i] * a[j];
            }
        }
    }

    /// Adds `h a^T a` for the row of a lift.
    pub(crate) fn add_lift(&mut self, a: &[f64; 3], h: f64) {
        for i in 0..3 {
            for j in 0..3 {
                self.0[LIFT + i][LIFT + j] += h * a[i] * a[j];
            }
        }
    }

    /// The factor; a pivot lost to rounding is treated as stiff.
    pub(crate) fn factor(&self) -> Cholesky {
        let mut lower = self.0;
        let mut inverse = [0.0; 6];
        for i in 0..6 {
            for j in 0..=i {
                let mut sum = self.0[i][j];
                for k in 0..j {
                    sum -= lower[i][k] * lower[j][k];
                }
                if i == j {
                    let pivot = if sum > 0.0 { sum } else { self.0[i][i] };
                    lower[i][i] = crate::sqrt(pivot);
                    inverse[i] = 1.0 / lower[i][i];
                } else {
                    lower[i][j] = sum * inverse[j];
                }
            }
        }
        Cholesky { lower, inverse }
    }
}

impl Cholesky {
    pub(crate) fn solve(&self, right: &[f64; 6]) -> [f64; 6] {
        let mut x = *right;
        for i in 0..6 {
            for k in 0..i {
                x[i] -= self.lower[i][k] * x[k];
            }
            x[i] *= self.inverse[i];
        }
        for i in (0..6).rev() {
            for k in i + 1..6 {
                x[i] -= self.lower[k][i] * x[k];
            }
            x[i] *= self.inverse[i];
        }
        x
    }
}

/// Where the three entries of a lift stand in its row: along the axis and tilting, none across or turning.
const LIFT: usize = 2;

/// The lift that a velocity gives at a row of three entries.
pub(crate) fn lift_of(row: &[f64; 3], v: &[f64; 6]) -> f64 {
    row[0] * v[LIFT] + (row[1] * v[LIFT + 1] + row[2] * v[LIFT + 2])
}

/// Adds a push along the lift of `row` to a load.
pub(crate) fn push(load: &mut [f64; 6], row: &[f64; 3], force: f64) {
    for k in 0..3 {
        load[LIFT + k] += row[k] * force;
    }
}

pub(crate) fn dot6(a: &[f64; 6], b: &[f64; 6]) -> f64 {
    (a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) + (a[3] * b[3] + a[4] * b[4] + a[5] * b[5])
}

pub(crate) fn scale(a: &[f64; 6], factor: f64) -> [f64; 6] {
    a.map(|x| x * factor)
}

pub(crate) fn add(a: &[f64; 6], b: &[f64; 6]) -> [f64; 6] {
    core::array::from_fn(|k| a[k] + b[k])
}

/// `A^T t` for two rows `A`.
pub(crate) fn transposed(rows: &[[f64; 6]; 2], t: [f64; 2]) -> [f64; 6] {
    core::array::from_fn(|k| rows[0][k] * t[0] + rows[1][k] * t[1])
}
