//! Cholesky factors of a symmetric matrix kept by its envelope, in 3 x 3 blocks.
//!
//! Row `i` of blocks runs from its first block to the diagonal; its three scalar rows lie one
//! after the other. Nothing outside the envelope fills in.

use alloc::vec::Vec;

/// Shape of an envelope: for each block row, its first block and where its numbers start.
#[derive(Clone, Debug)]
pub(crate) struct Envelope {
    first: Vec<usize>,
    start: Vec<usize>,
}

impl Envelope {
    /// From the first block of each row (at most the row itself).
    pub(crate) fn new(first: Vec<usize>) -> Self {
        let mut start = Vec::with_capacity(first.len() + 1);
        let mut numbers = 0;
        for (row, f) in first.iter().enumerate() {
            start.push(numbers);
            numbers += 9 * (row - f + 1);
        }
        start.push(numbers);
        Self { first, start }
    }

    /// Block rows.
    pub(crate) fn rows(&self) -> usize {
        self.first.len()
    }

    /// Numbers kept.
    pub(crate) fn len(&self) -> usize {
        self.start[self.rows()]
    }

    /// Length of each of the three scalar rows of block row `i`.
    fn width(&self, i: usize) -> usize {
        3 * (i - self.first[i] + 1)
    }

    /// Where scalar entry (3 i + a, 3 j + b), j <= i, is kept; j must be in the envelope.
    pub(crate) fn index(&self, i: usize, a: usize, j: usize, b: usize) -> usize {
        self.start[i] + a * self.width(i) + 3 * (j - self.first[i]) + b
    }

    /// First block of row `i`.
    pub(crate) fn first(&self, i: usize) -> usize {
        self.first[i]
    }

    /// Replaces the matrix by its lower Cholesky factor. The diagonal of the factor is kept as
    /// its reciprocal. False if a pivot is not positive: the matrix is not positive definite.
    pub(crate) fn factor(&self, values: &mut [f64]) -> bool {
        for i in 0..self.rows() {
            let (done, rest) = values.split_at_mut(self.start[i]);
            let width = self.width(i);
            let (r0, rest) = rest.split_at_mut(width);
            let (r1, rest) = rest.split_at_mut(width);
            let r2 = &mut rest[..width];
            for j in self.first[i]..i {
                let from = self.first[i].max(self.first[j]);
                let (lo, hi) = (3 * (from - self.first[i]), 3 * (j - self.first[i]));
                let row = |a: usize| {
                    let at = self.index(j, a, from, 0);
                    &done[at..at + hi - lo]
                };
                let s = products([&r0[lo..hi], &r1[lo..hi], &r2[lo..hi]], [row(0), row(1), row(2)]);
                let pivot = |a: usize, b: usize| done[self.index(j, a, j, b)];
                for (r, s) in [&mut *r0, &mut *r1, &mut *r2].into_iter().zip(s) {
                    let x = &mut r[hi..hi + 3];
                    x[0] = (x[0] - s[0]) * pivot(0, 0);
                    x[1] = (x[1] - s[1] - x[0] * pivot(1, 0)) * pivot(1, 1);
                    x[2] = (x[2] - s[2] - x[0] * pivot(2, 0) - x[1] * pivot(2, 1)) * pivot(2, 2);
                }
            }
            let d = width - 3;
            let rows = [&r0[..d], &r1[..d], &r2[..d]];
            let s = products(rows, rows);
            let Some(l00) = root(r0[d] - s[0][0]) else {
                return false;
            };
            let l10 = (r1[d] - s[1][0]) * l00;
            let l20 = (r2[d] - s[2][0]) * l00;
            let Some(l11) = root(r1[d + 1] - s[1][1] - l10 * l10) else {
                return false;
            };
            let l21 = (r2[d + 1] - s[2][1] - l20 * l10) * l11;
            let Some(l22) = root(r2[d + 2] - s[2][2] - l20 * l20 - l21 * l21) else {
                return false;
            };
            r0[d] = l00;
            (r1[d], r1[d + 1]) = (l10, l11);
            (r2[d], r2[d + 1], r2[d + 2]) = (l20, l21, l22);
        }
        true
    }

    /// Solves for several right sides at once: `x` holds 3 x rows lines of `sides` numbers and
    /// is replaced by the solutions. Lines before block row `from` are known to be zero.
    pub(crate) fn solve(&self, factor: &[f64], x: &mut [f64], sides: usize, from: usize) {
        for i in from..self.rows() {
            let (known, rest) = x.split_at_mut(3 * i * sides);
            let mine = &mut rest[..3 * sides];
            let first = self.first[i].max(from);
            let lines = known[3 * first * sides..].chunks_exact(3 * sides);
            for (j, lines) in (first..i).zip(lines) {
                take(mine, self.block(factor, i, j), lines, sides);
            }
            let l = self.block(factor, i, i);
            let [m0, m1, m2] = three(mine, sides);
            for ((x0, x1), x2) in m0.iter_mut().zip(m1).zip(m2) {
                *x0 *= l[0][0];
                *x1 = (*x1 - l[1][0] * *x0) * l[1][1];
                *x2 = (*x2 - l[2][0] * *x0 - l[2][1] * *x1) * l[2][2];
            }
        }
        for i in (0..self.rows()).rev() {
            let (before, rest) = x.split_at_mut(3 * i * sides);
            let mine = &mut rest[..3 * sides];
            let l = self.block(factor, i, i);
            let [m0, m1, m2] = three(mine, sides);
            for ((x0, x1), x2) in m0.iter_mut().zip(m1).zip(m2) {
                *x2 *= l[2][2];
                *x1 = (*x1 - l[2][1] * *x2) * l[1][1];
                *x0 = (*x0 - l[1][0] * *x1 - l[2][0] * *x2) * l[0][0];
            }
            let first = self.first[i];
            let lines = before[3 * first * sides..].chunks_exact_mut(3 * sides);
            for (j, lines) in (first..i).zip(lines) {
                let b = self.block(factor, i, j);
                let turned = core::array::from_fn(|p| core::array::from_fn(|q| b[q][p]));
                take(lines, turned, mine, sides);
            }
        }
    }

    fn block(&self, factor: &[f64], i: usize, j: usize) -> [[f64; 3]; 3] {
        core::array::from_fn(|a| {
            let at = self.index(i, a, j, 0);
            [factor[at], factor[at + 1], factor[at + 2]]
        })
    }

    /// Product of the symmetric matrix kept in `values` (not factored) with a vector.
    #[cfg(test)]
    pub(crate) fn product(&self, values: &[f64], x: &[f64]) -> Vec<f64> {
        let mut y = alloc::vec![0.0; x.len()];
        for i in 0..self.rows() {
            for a in 0..3 {
                let row = 3 * i + a;
                let low = 3 * self.first[i];
                let at = self.index(i, a, self.first[i], 0);
                for (k, v) in values[at..=at + row - low].iter().enumerate() {
                    y[row] += v * x[low + k];
                    if low + k < row {
                        y[low + k] += v * x[row];
                    }
                }
            }
        }
        y
    }
}

/// `x -= block y`, both three lines of `sides` numbers.
fn take(x: &mut [f64], block: [[f64; 3]; 3], y: &[f64], sides: usize) {
    let [x0, x1, x2] = three(x, sides);
    let (y0, y1, y2) = (&y[..sides], &y[sides..2 * sides], &y[2 * sides..3 * sides]);
    for s in 0..sides {
        let (a, b, c) = (y0[s], y1[s], y2[s]);
        x0[s] -= block[0][0] * a + block[0][1] * b + block[0][2] * c;
        x1[s] -= block[1][0] * a + block[1][1] * b + block[1][2] * c;
        x2[s] -= block[2][0] * a + block[2][1] * b + block[2][2] * c;
    }
}

/// Three lines of `sides` numbers.
fn three(x: &mut [f64], sides: usize) -> [&mut [f64]; 3] {
    let (x0, rest) = x.split_at_mut(sides);
    let (x1, rest) = rest.split_at_mut(sides);
    [x0, x1, &mut rest[..sides]]
}

/// Reciprocal of the square root of a pivot, if it is positive.
fn root(pivot: f64) -> Option<f64> {
    (pivot > 0.0 && pivot.is_finite()).then(|| 1.0 / crate::sqrt(pivot))
}

/// The nine dot products of three rows with three rows.
fn products(a: [&[f64]; 3], b: [&[f64]; 3]) -> [[f64; 3]; 3] {
    let n = a[0].len();
    let [a0, a1, a2] = a.map(|row| &row[..n]);
    let [b0, b1, b2] = b.map(|row| &row[..n]);
    let mut s = [[0.0; 3]; 3];
    for k in 0..n {
        let x = [a0[k], a1[k], a2[k]];
        let y = [b0[k], b1[k], b2[k]];
        for (row, xi) in s.iter_mut().zip(x) {
            for (sum, yj) in row.iter_mut().zip(y) {
                *sum += xi * yj;
            }
        }
    }
    s
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A positive definite matrix on a ragged envelope.
    fn example() -> (Envelope, Vec<f64>) {
        let envelope = Envelope::new(alloc::vec![0, 0, 1, 0, 3, 2]);
        let mut values = alloc::vec![0.0; envelope.len()];
        for i in 0..6 {
            for j in envelope.first(i)..=i {
                for a in 0..3 {
                    for b in 0..3 {
                        let (row, col) = (3 * i + a, 3 * j + b);
                        let entry = if row == col { 9.0 } else { 1.0 / (1.0 + (row + col) as f64) };
                        values[envelope.index(i, a, j, b)] = entry;
                    }
                }
            }
        }
        (envelope, values)
    }

    #[test]
    fn the_solution_times_the_matrix_is_the_right_side() {
        let (envelope, values) = example();
        let mut factor = values.clone();
        assert!(envelope.factor(&mut factor), "positive definite");
        let sides = 2;
        let mut x = alloc::vec![0.0; 18 * sides];
        for row in 3..18 {
            x[row * sides] = row as f64 - 7.0;
            x[row * sides + 1] = 1.0 / row as f64;
        }
        let wanted = x.clone();
        envelope.solve(&factor, &mut x, sides, 1);
        for side in 0..sides {
            let column: Vec<f64> = x.iter().skip(side).step_by(sides).copied().collect();
            let got = envelope.product(&values, &column);
            for (row, g) in got.iter().enumerate() {
                let w = wanted[row * sides + side];
                assert!((g - w).abs() < 1e-13, "row {row}: {g} for {w}");
            }
        }
    }

    #[test]
    fn a_matrix_that_is_not_positive_definite_is_refused() {
        let (envelope, mut values) = example();
        values[envelope.index(4, 1, 4, 1)] = -1.0;
        assert!(!envelope.factor(&mut values), "a negative pivot");
    }
}
