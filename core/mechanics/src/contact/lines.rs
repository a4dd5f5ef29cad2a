//! Sums of lines of numbers.

/// Sum of the products of two lines, in four sums at a time, so that none waits for another.
#[inline(never)] // One copy of it in the page: it is called everywhere.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let ((fours, rest_a), (others, rest_b)) = (a.as_chunks::<4>(), b.as_chunks::<4>());
    let mut sums = [0.0; 4];
    for (a, b) in fours.iter().zip(others) {
        sums.iter_mut().zip(a.iter().zip(b)).for_each(|(sum, (a, b))| *sum += a * b);
    }
    let rest: f64 = rest_a.iter().zip(rest_b).map(|(a, b)| a * b).sum();
    (sums[0] + sums[1]) + (sums[2] + sums[3]) + rest
}

/// Adds lines, each times its factor: four at a time, so that the sum is fetched and put back less often.
pub(super) fn add_lines<'a>(sum: &mut [f64], lines: impl Iterator<Item = (f64, &'a [f64])>) {
    let mut lines = lines.fuse();
    while let Some(first) = lines.next() {
        match (lines.next(), lines.next(), lines.next()) {
            (Some(second), Some(third), Some(fourth)) => {
                let [a, b, c, d] = [first, second, third, fourth].map(|(factor, line)| (factor, &line[..sum.len()]));
                let values = a.1.iter().zip(b.1).zip(c.1).zip(d.1);
                for (sum, (((p, q), r), s)) in sum.iter_mut().zip(values) {
                    *sum = *sum + a.0 * p + b.0 * q + c.0 * r + d.0 * s;
                }
            }
            (second, third, _) => {
                for (factor, line) in core::iter::once(first).chain(second).chain(third) {
                    sum.iter_mut().zip(line).for_each(|(sum, value)| *sum += factor * value);
                }
            }
        }
    }
}
