//! Closed sums of slowly converging sine series.

use core::f64::consts::PI;

use libm::{log, remquo};

/// Riemann's zeta at 2, 4, ... 24 (Abramowitz & Stegun, table 23.3); 1 beyond.
const ZETA_EVEN: [f64; 12] = [
    1.644_934_066_848_226_4,
    1.082_323_233_711_138_2,
    1.017_343_061_984_449,
    1.004_077_356_197_944_4,
    1.000_994_575_127_818,
    1.000_246_086_553_308,
    1.000_061_248_135_058_7,
    1.000_015_282_259_408_6,
    1.000_003_817_293_265,
    1.000_000_953_962_033_9,
    1.000_000_238_450_502_7,
    1.000_000_059_608_189,
];

const TERMS: usize = 24;

/// Clausen's function, the sum over k of `sin(k x) / k^2`; `x` is finite.
///
/// Series of Abramowitz & Stegun 27.8.2, written with zeta for Bernoulli numbers.
pub(crate) fn clausen(x: f64) -> f64 {
    let x = remquo(x, 2.0 * PI).0;
    if x == 0.0 {
        return 0.0;
    }
    let turn = x / (2.0 * PI);
    let square = turn * turn;
    let mut series = 0.0;
    for n in (1..=TERMS).rev() {
        let zeta = ZETA_EVEN.get(n - 1).copied().unwrap_or(1.0);
        let n = n as f64;
        series = (series + zeta / (n * (2.0 * n + 1.0))) * square;
    }
    x * (1.0 - log(x.abs()) + series)
}

/// The sum over k of `sin(k x) / k^3`, a cubic on each turn (Abramowitz & Stegun 27.8.6).
pub(crate) fn cubic_sine_sum(x: f64) -> f64 {
    let x = remquo(x, 2.0 * PI).0;
    let u = x.abs();
    x * (PI * PI / 6.0 - PI * u / 4.0 + u * u / 12.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use libm::sin;

    #[test]
    fn clausen_matches_catalan_and_its_known_maximum() {
        // Catalan's constant and Cl2(pi/3): Abramowitz & Stegun 27.8, table 27.8.
        let known = [(PI / 2.0, 0.915_965_594_177_219), (PI / 3.0, 1.014_941_606_409_653_6)];
        for (x, value) in known {
            assert!((clausen(x) - value).abs() < 1e-15, "Cl2({x}) is {}", clausen(x));
        }
        assert!(clausen(PI).abs() < 1e-15, "Cl2(pi) is {}", clausen(PI));
    }

    #[test]
    fn closed_sums_match_the_series_they_stand_for() {
        for x in [-2.9, -0.4, 0.01, 1.3, 3.1, 5.0, 40.0] {
            let (mut square, mut cube) = (0.0, 0.0);
            for k in (1..200_000).rev() {
                let k = f64::from(k);
                square += sin(k * x) / (k * k);
                cube += sin(k * x) / (k * k * k);
            }
            // The cut tail is below 1/(k^2 sin(x/2)) = 5e-9 at the smallest x.
            assert!((clausen(x) - square).abs() < 1e-8, "Cl2({x})");
            assert!((cubic_sine_sum(x) - cube).abs() < 1e-12, "cubic sum at {x}");
        }
    }
}
