//! Draws that are the same on every machine.

/// An even draw in [0, 1), by its sample and its input.
///
/// The counter mixed by SplitMix64 (Steele, Lea and Flood, OOPSLA 2014; constants from memory, checked against
/// published output in a test): whole numbers alone, so that every machine draws the same.
///
/// ```
/// let one = holdround_mechanics::sampling::draw(1, 17, 3);
/// assert_eq!(one, holdround_mechanics::sampling::draw(1, 17, 3));
/// assert_ne!(one, holdround_mechanics::sampling::draw(2, 17, 3));
/// ```
#[must_use]
pub fn draw(seed: u64, sample: u32, input: u32) -> f64 {
    let counter = (u64::from(sample) << 32) | u64::from(input);
    let bits = mixed(mixed(seed).wrapping_add(counter));
    // The upper 53 bits fill the fraction of a double.
    (bits >> 11) as f64 / (1_u64 << 53) as f64
}

/// One output of SplitMix64 from a state.
fn mixed(state: u64) -> u64 {
    let z = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mixer_gives_published_output() {
        // First outputs from the states 0 and 1234567 (from memory, as given in collections of test vectors).
        assert_eq!(mixed(0), 0xe220_a839_7b1d_cdaf);
        assert_eq!(mixed(1_234_567), 6_457_827_717_110_365_317);
    }

    #[test]
    fn draws_are_even_and_do_not_hang_together() {
        let n = 20_000;
        let of = |input: u32| (0..n).map(move |sample| draw(1, sample, input));
        let mean = of(0).sum::<f64>() / f64::from(n);
        let square = of(0).map(|x| x * x).sum::<f64>() / f64::from(n);
        let product = of(0).zip(of(1)).map(|(a, b)| a * b).sum::<f64>() / f64::from(n);
        // Four standard errors: sqrt(1/12/n), sqrt(4/45/n), sqrt(7/144/n).
        assert!((mean - 0.5).abs() < 0.0082, "{mean}");
        assert!((square - 1.0 / 3.0).abs() < 0.0085, "{square}");
        assert!((product - 0.25).abs() < 0.0063, "{product}");
    }
}
