//! The diameter at which something is least, found with few calls.

use alloc::vec::Vec;

use crate::sorting::sort;

/// Diameters looked at before the search closes in.
const LOOKS: usize = 7;
/// Calls of the search that closes in: each narrows by the golden section.
const CLOSER: usize = 6;

/// What was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Best {
    /// The diameter at which it is least.
    pub at: f64,
    /// What it is there.
    pub value: f64,
    /// Every diameter looked at with its value, by diameter.
    pub curve: Vec<[f64; 2]>,
}

/// Where `of` is least between two diameters, with 13 calls: an even look over all of it, then a golden section about
/// the least (Kiefer 1953). None where `of` has no value anywhere.
///
/// ```
/// use holdround_mechanics::bore::best;
/// let found = best([0.0, 10.0], &mut |x| Some((x - 3.3) * (x - 3.3))).unwrap();
/// assert!((found.at - 3.3).abs() < 0.2 && found.curve.len() == 13);
/// ```
pub fn best([from, to]: [f64; 2], of: &mut dyn FnMut(f64) -> Option<f64>) -> Option<Best> {
    let mut curve: Vec<[f64; 2]> = Vec::new();
    let mut look = |at: f64, curve: &mut Vec<[f64; 2]>| {
        let value = of(at).filter(|value| value.is_finite());
        curve.extend(value.map(|value| [at, value]));
        value.unwrap_or(f64::INFINITY)
    };
    let pitch = (to - from) / (LOOKS - 1) as f64;
    for step in 0..LOOKS {
        look(from + pitch * step as f64, &mut curve);
    }
    let least = |curve: &[[f64; 2]]| curve.iter().copied().min_by(|a, b| a[1].total_cmp(&b[1]));
    let [middle, _] = least(&curve)?;
    let (mut low, mut high) = ((middle - pitch).max(from), (middle + pitch).min(to));
    let golden = (crate::sqrt(5.0) - 1.0) / 2.0;
    let mut inner = [high - golden * (high - low), low + golden * (high - low)];
    let mut values = inner.map(|at| look(at, &mut curve));
    for _ in 2..CLOSER {
        if values[0] <= values[1] {
            high = inner[1];
            inner = [high - golden * (high - low), inner[0]];
            values = [look(inner[0], &mut curve), values[0]];
        } else {
            low = inner[0];
            inner = [inner[1], low + golden * (high - low)];
            values = [values[1], look(inner[1], &mut curve)];
        }
    }
    let [at, value] = least(&curve)?;
    sort(&mut curve, |a, b| a[0].total_cmp(&b[0]));
    Some(Best { at, value, curve })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Four narrowings by the golden section leave 2 g^4 of a pitch between looks; its inner points stand g^2 of that
    /// from its ends (Kiefer 1953).
    #[test]
    fn the_least_of_a_parabola_is_found_as_nearly_as_thirteen_calls_can_wherever_it_is() {
        let golden = (libm::sqrt(5.0) - 1.0) / 2.0;
        for step in 0..=100 {
            let (least, mut calls) = (f64::from(step) / 100.0, 0);
            let found = best([0.0, 1.0], &mut |x: f64| {
                calls += 1;
                Some((x - least) * (x - least))
            });
            let off = (found.unwrap().at - least).abs();
            assert!(off <= 2.0 / 6.0 * libm::pow(golden, 6.0) + 1e-12, "off by {off} of {least}");
            assert_eq!(calls, 13, "calls");
        }
    }

    #[test]
    fn the_least_of_a_kink_and_of_an_end_is_found() {
        let kink = best([-1.0, 1.0], &mut |x: f64| Some((x - 0.3).abs().max(0.5 * (0.3 - x)))).unwrap();
        assert!((kink.at - 0.3).abs() < 0.04, "a kink, as where two sizes of part change places: {}", kink.at);
        let end = best([0.0, 1.0], &mut Some).unwrap();
        assert_eq!(end.at, 0.0, "at an end");
        assert!(kink.curve.windows(2).all(|pair| pair[0][0] < pair[1][0]), "by diameter");
        assert_eq!(best([0.0, 1.0], &mut |_| None), None, "nowhere a value");
    }
}
