//! Sums of lines of numbers.

/// Sum of the products of two lines.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
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
