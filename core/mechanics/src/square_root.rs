//! The square root, from the machine where there is one.

/// Square root of `x`. IEEE 754 rounds it correctly, so that every way of working it out gives the same bits: the
/// feature `std` takes the machine's own, which in the page is one instruction where the library takes dozens.
///
/// ```
/// assert_eq!(holdround_mechanics::sqrt(2.25), 1.5);
/// ```
#[must_use]
#[inline]
pub fn sqrt(x: f64) -> f64 {
    #[cfg(feature = "std")]
    return x.sqrt();
    #[cfg(not(feature = "std"))]
    return libm::sqrt(x);
}

#[cfg(test)]
mod tests {
    #[test]
    fn both_ways_give_the_same_bits() {
        let mut x = 1.0e-300_f64;
        while x < 1.0e300 {
            assert_eq!(super::sqrt(x).to_bits(), libm::sqrt(x).to_bits(), "of {x:e}");
            x *= 1.000_37 + x.fract().abs() * 1e-3;
        }
        assert!(super::sqrt(-1.0).is_nan(), "of a negative number");
    }
}
