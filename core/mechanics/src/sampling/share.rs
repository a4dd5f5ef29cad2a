//! Whose doing the spread of an output is.

use alloc::vec::Vec;

/// Classes into which an input is parted.
const CLASSES: usize = 20;

/// The share of the spread that an input alone explains.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// Share of the variance, 0 to 1.
    pub of_variance: f64,
    /// Whether more of the input means more of the output.
    pub rising: bool,
}

/// First-order share of the variance of `outputs` that goes back to an input drawn evenly in [0, 1), of which `draws`
/// has one for each: the correlation ratio, variance of the means of classes over the whole variance, less what
/// chance alone would give it (Pearson 1903; as an estimate of Sobol's first-order index: Saltelli and others, Global
/// Sensitivity Analysis, 2008; both from memory). None where nothing varies, or with too few samples.
///
/// ```
/// use holdround_mechanics::sampling::{draw, first_order};
/// let draws = |input| (0..2000).map(|k| draw(1, k, input)).collect::<Vec<_>>();
/// let (a, b) = (draws(0), draws(1));
/// // Variances of 2 a and b are as 4 to 1.
/// let outputs: Vec<f64> = a.iter().zip(&b).map(|(a, b)| 2.0 * a + b).collect();
/// assert!((first_order(&a, &outputs).unwrap().of_variance - 0.8).abs() < 0.05);
/// ```
#[must_use]
pub fn first_order(draws: &[f64], outputs: &[f64]) -> Option<Share> {
    let n = outputs.len();
    if draws.len() != n || n < 4 * CLASSES {
        return None;
    }
    let mean = outputs.iter().sum::<f64>() / n as f64;
    let whole = outputs.iter().map(|y| (y - mean) * (y - mean)).sum::<f64>();
    if !(whole.is_finite() && whole > 1e-18 * mean * mean * n as f64) {
        return None;
    }
    let mut classes: Vec<(f64, f64)> = alloc::vec![(0.0, 0.0); CLASSES];
    let mut slope = 0.0;
    for (x, y) in draws.iter().zip(outputs) {
        let class = &mut classes[((x * CLASSES as f64) as usize).min(CLASSES - 1)];
        *class = (class.0 + 1.0, class.1 + y - mean);
        slope += (x - 0.5) * (y - mean);
    }
    let filled = classes.iter().filter(|(count, _)| *count > 0.0);
    let between: f64 = filled.clone().map(|(count, sum)| sum * sum / count).sum();
    let free = filled.count() as f64 - 1.0;
    // Of an output that does not hang on the input, so much would still lie between the classes.
    let chance = free * (whole - between) / (n as f64 - free - 1.0);
    Some(Share { of_variance: ((between - chance) / whole).max(0.0), rising: slope > 0.0 })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sampling::draw;
    use core::f64::consts::{PI, TAU};

    fn draws(input: u32) -> Vec<f64> {
        (0..2000).map(|sample| draw(1, sample, input)).collect()
    }

    #[test]
    fn shares_of_a_function_with_known_indices_are_found() {
        // Ishigami and Homma 1990, a = 7, b = 0.1: S1 = 0.3139, S2 = 0.4424, S3 = 0 (closed form; from memory, and as
        // scipy.stats.sobol_indices finds them, see tests/solver/sampling.py).
        let inputs = [0, 1, 2].map(draws);
        let angle = |input: usize, k: usize| TAU * inputs[input][k] - PI;
        let ishigami = |k: usize| {
            let (a, b, c) = (libm::sin(angle(0, k)), libm::sin(angle(1, k)), angle(2, k));
            a + 7.0 * b * b + 0.1 * c * c * c * c * a
        };
        let outputs: Vec<f64> = (0..2000).map(ishigami).collect();
        for (input, expected) in inputs.iter().zip([0.3139, 0.4424, 0.0]) {
            let share = first_order(input, &outputs).unwrap().of_variance;
            // Standard error of such a share from 2000 samples is about 0.02.
            assert!((share - expected).abs() < 0.05, "{share}, not {expected}");
        }
    }

    /// Kelley's epsilon squared, (between - df mean square within) / whole (Kelley 1935, from memory), worked by hand:
    /// two classes of 40 about -1 and +1, each half a little above and half below.
    #[test]
    fn what_chance_would_give_is_taken_off_as_in_the_textbook() {
        let (mut draws, mut outputs) = (Vec::new(), Vec::new());
        for k in 0..80 {
            let high = k % 2 == 1;
            draws.push(if high { 0.99 } else { 0.01 });
            outputs.push(if high { 1.0 } else { -1.0 } + if k % 4 < 2 { 0.5 } else { -0.5 });
        }
        // Whole 80 (1 + 0.25), between 80, within 20 over 78 degrees of freedom.
        let share = first_order(&draws, &outputs).unwrap();
        assert!((share.of_variance - (80.0 - 20.0 / 78.0) / 100.0).abs() < 1e-12 && share.rising, "{share:?}");
        assert_eq!(first_order(&draws[1..], &outputs[1..]), None, "one sample fewer than four a class");
        assert_eq!(first_order(&draws, &outputs[1..]), None, "a sample without its draw");
    }

    #[test]
    fn an_output_that_does_not_vary_has_no_shares() {
        assert_eq!(first_order(&draws(0), &alloc::vec![3.0; 2000]), None);
        assert_eq!(first_order(&[0.5; 10], &[1.0; 10]), None, "nor ten samples");
        let falling: Vec<f64> = draws(0).iter().map(|x| -x).collect();
        let share = first_order(&draws(0), &falling).unwrap();
        assert!(!share.rising && share.of_variance > 0.99, "{share:?}");
    }
}
