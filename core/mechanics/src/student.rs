//! Student's distribution for a whole number of degrees of freedom.

use core::f64::consts::{FRAC_2_PI, FRAC_PI_2};

/// The `t` that a Student variable stays within, both sides, with the given probability.
/// `confidence` in (0, 1), `freedom` at least 1.
pub(crate) fn two_sided_quantile(confidence: f64, freedom: usize) -> f64 {
    let (mut low, mut high) = (0.0, FRAC_PI_2);
    // 60 halvings of a quarter turn leave less than the rounding of the angle.
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if probability_within(middle, freedom) < confidence {
            low = middle;
        } else {
            high = middle;
        }
    }
    crate::sqrt(freedom as f64) * libm::tan(low)
}

/// Probability of `|T| < sqrt(freedom) tan(angle)`: Abramowitz and Stegun, Handbook of
/// Mathematical Functions, 26.7.3 and 26.7.4.
fn probability_within(angle: f64, freedom: usize) -> f64 {
    let (sine, cosine) = libm::sincos(angle);
    let odd = freedom % 2 == 1;
    let mut term = if odd { cosine } else { 1.0 };
    let mut sum = if freedom == 1 { 0.0 } else { term };
    let mut power = if odd { 3 } else { 2 };
    while power < freedom {
        term *= cosine * cosine * (power - 1) as f64 / power as f64;
        sum += term;
        power += 2;
    }
    if odd { FRAC_2_PI * (angle + sine * sum) } else { sine * sum }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Critical values of Student's t, printed to three decimals: NIST/SEMATECH e-Handbook of
    /// Statistical Methods, table reprinted in a statistics textbook (read).
    #[test]
    fn quantiles_match_the_printed_table() {
        let table = [
            (0.95, 1, 12.706),
            (0.95, 2, 4.303),
            (0.95, 3, 3.182),
            (0.95, 4, 2.776),
            (0.95, 5, 2.571),
            (0.95, 10, 2.228),
            (0.95, 30, 2.042),
            (0.95, 100, 1.984),
            (0.90, 8, 1.860),
            (0.99, 9, 3.250),
        ];
        for (confidence, freedom, printed) in table {
            let t = two_sided_quantile(confidence, freedom);
            assert!((t - printed).abs() < 6e-4, "{confidence} with {freedom}: {t} against {printed}");
        }
    }
}
