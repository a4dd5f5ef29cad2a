//! A smooth function of a few inputs, asked at few places and read in between.

use alloc::vec::Vec;

/// A function over a box, by polynomials through Chebyshev's places along each side.
///
/// ```
/// use holdround_mechanics::sampling::Table;
/// let sides = [3, 4];
/// let values: Vec<f64> = Table::places(&sides).iter().map(|x| (x[0] * x[0] + 1.0) * x[1]).collect();
/// let table = Table::new(&sides, values).unwrap();
/// assert!((table.at(&[0.3, 0.7]) - 1.09 * 0.7).abs() < 1e-12);
/// ```
#[derive(Clone, Debug)]
pub struct Table {
    sides: Vec<usize>,
    values: Vec<f64>,
}

impl Table {
    /// Where the function is to be asked, each coordinate 0 to 1, for so many places along each side; a side of one
    /// place is one on which nothing hangs.
    #[must_use]
    pub fn places(sides: &[usize]) -> Vec<Vec<f64>> {
        let whole: usize = sides.iter().product();
        let place = |mut at: usize| {
            let mut along = |count: usize| {
                let k = at % count;
                at /= count;
                node(k, count)
            };
            sides.iter().map(|count| along((*count).max(1))).collect()
        };
        (0..whole).map(place).collect()
    }

    /// A table of values in the order of [`Self::places`]; none if there are not as many as places.
    #[must_use]
    pub fn new(sides: &[usize], values: Vec<f64>) -> Option<Self> {
        (values.len() == sides.iter().product::<usize>() && !values.is_empty())
            .then(|| Self { sides: sides.to_vec(), values })
    }

    /// The function at a place, each coordinate 0 to 1.
    #[must_use]
    pub fn at(&self, place: &[f64]) -> f64 {
        let mut values = self.values.clone();
        for (count, x) in self.sides.iter().zip(place) {
            let weights = weights(*x, *count);
            values = values
                .chunks_exact(*count)
                .map(|line| line.iter().zip(&weights).map(|(value, weight)| value * weight).sum())
                .collect();
        }
        values.first().copied().unwrap_or(0.0)
    }
}

/// Chebyshev's places with the ends among them.
fn node(k: usize, count: usize) -> f64 {
    if count < 2 {
        return 0.5;
    }
    0.5 - 0.5 * libm::cos(core::f64::consts::PI * k as f64 / (count - 1) as f64)
}

/// Weights of the values along one side: Lagrange's polynomials.
fn weights(x: f64, count: usize) -> Vec<f64> {
    (0..count)
        .map(|k| {
            let others = (0..count).filter(|other| *other != k).map(|other| node(other, count));
            others.map(|other| (x - other) / (node(k, count) - other)).product()
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn polynomials_of_its_degree_come_back_and_others_come_near() {
        let sides = [5, 1, 3];
        let cubic = |x: &[f64]| (x[0] * x[0] * x[0] - 0.2 * x[0]) * (1.0 + x[2] * x[2]);
        let table = Table::new(&sides, Table::places(&sides).iter().map(|x| cubic(x)).collect()).unwrap();
        let smooth = |x: &[f64]| libm::exp(x[0]) / (1.0 + x[2]);
        let near = Table::new(&sides, Table::places(&sides).iter().map(|x| smooth(x)).collect()).unwrap();
        for k in 0..50 {
            let x = [0, 1, 2].map(|input| crate::sampling::draw(3, k, input));
            assert!((table.at(&x) - cubic(&x)).abs() < 1e-12, "{x:?}");
            // Three places on 1 / (1 + x): off by x (x - 1/2) (x - 1) / 3 of it, by hand.
            assert!((near.at(&x) / smooth(&x) - 1.0).abs() < 0.0165, "{x:?}");
        }
        assert!(Table::new(&sides, alloc::vec![0.0; 3]).is_none(), "too few values");
    }
}
