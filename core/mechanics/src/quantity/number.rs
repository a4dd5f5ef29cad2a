//! Numbers as people type them: decimal point or comma, fractions, exponents.

use alloc::format;
use alloc::string::{String, ToString};

/// Why a typed number was not understood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NumberError {
    /// Nothing was typed.
    Empty,
    /// Not a number.
    NotANumber,
    /// A point and a comma, or two of one: could be read two ways.
    Ambiguous,
    /// A fraction over zero.
    OverZero,
    /// Too large to be held.
    TooLarge,
}

/// Reads a number: `3.5`, `3,5`, `-0.02`, `1e-3`, `2 1/4`, `2-1/4`, `15/16`.
///
/// # Errors
/// [`NumberError`] says why the text is not one number.
///
/// ```
/// use holdround_mechanics::quantity::{parse_number, NumberError};
/// assert_eq!(parse_number("2 1/4"), Ok(2.25));
/// assert_eq!(parse_number("3,5"), Ok(3.5));
/// assert_eq!(parse_number("1,234.5"), Err(NumberError::Ambiguous));
/// ```
pub fn parse_number(text: &str) -> Result<f64, NumberError> {
    let text = text.trim().replace('\u{2212}', "-");
    if text.is_empty() {
        return Err(NumberError::Empty);
    }
    if let Some((before, denominator)) = text.split_once('/') {
        return parse_fraction(before.trim(), denominator.trim());
    }
    parse_decimal(&text)
}

fn parse_decimal(text: &str) -> Result<f64, NumberError> {
    let separators = text.chars().filter(|c| matches!(c, '.' | ',')).count();
    if separators > 1 {
        return Err(NumberError::Ambiguous);
    }
    if text.is_empty() || !text.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+' | 'e' | 'E')) {
        return Err(NumberError::NotANumber);
    }
    let (mantissa, exponent) = match text.split_once(['e', 'E']) {
        Some((mantissa, exponent)) => (mantissa, exponent.parse().map_err(|_| NumberError::NotANumber)?),
        None => (text, 0),
    };
    let negative = mantissa.starts_with('-');
    let mantissa = mantissa.strip_prefix(['-', '+']).unwrap_or(mantissa);
    let (whole, fraction) = mantissa.split_once(['.', ',']).unwrap_or((mantissa, ""));
    let digits = || whole.bytes().chain(fraction.bytes());
    if digits().next().is_none() || !digits().all(|digit| digit.is_ascii_digit()) {
        return Err(NumberError::NotANumber);
    }
    let value = scaled(digits(), fraction.len(), exponent);
    if value.is_finite() { Ok(if negative { -value } else { value }) } else { Err(NumberError::TooLarge) }
}

/// `digits` with a point before the last `decimals` of them, times ten to the `exponent`.
///
/// With up to 15 digits and 22 decimals both the digits and the power of ten are exact, and one rounding
/// leaves the nearest number there is (Clinger, "How to read floating point numbers accurately", 1990; from
/// memory). Longer ones come within a few units in the last place. The standard library's reader rounds
/// those too, by tables that weigh more than all of the page's inputs.
fn scaled(digits: impl Iterator<Item = u8>, decimals: usize, exponent: i32) -> f64 {
    let (mut mantissa, mut power) = (0_u64, i64::from(exponent) - decimals as i64);
    for digit in digits {
        if mantissa < 100_000_000_000_000_000 {
            mantissa = 10 * mantissa + u64::from(digit - b'0');
        } else {
            power += 1;
        }
    }
    let (mut value, mut power) = (mantissa as f64, power.clamp(-400, 400));
    while power > EXACT {
        (value, power) = (value * power_of_ten(EXACT), power - EXACT);
    }
    while power < -EXACT {
        (value, power) = (value / power_of_ten(EXACT), power + EXACT);
    }
    if power < 0 { value / power_of_ten(-power) } else { value * power_of_ten(power) }
}

/// The largest power of ten that is a number without rounding.
const EXACT: i64 = 22;

/// Exact up to [`EXACT`].
fn power_of_ten(power: i64) -> f64 {
    (0..power).fold(1.0, |product, _| 10.0 * product)
}

/// `before` is `15`, `2 1`, `2-1` or `-2 1`; whole numbers only.
fn parse_fraction(before: &str, denominator: &str) -> Result<f64, NumberError> {
    let (negative, before) = match before.strip_prefix('-') {
        Some(rest) => (true, rest.trim_start()),
        None => (false, before),
    };
    let (whole, numerator) = match before.rsplit_once([' ', '-']) {
        Some((whole, numerator)) => (whole_number(whole.trim())?, whole_number(numerator)?),
        None => (0.0, whole_number(before)?),
    };
    let denominator = whole_number(denominator)?;
    if denominator == 0.0 {
        return Err(NumberError::OverZero);
    }
    let value = whole + numerator / denominator;
    Ok(if negative { -value } else { value })
}

fn whole_number(text: &str) -> Result<f64, NumberError> {
    if text.is_empty() || text.len() > 9 || !text.chars().all(|c| c.is_ascii_digit()) {
        return Err(NumberError::NotANumber);
    }
    text.parse::<u32>().map(f64::from).map_err(|_| NumberError::NotANumber)
}

/// The greatest power of ten that is at most `value`: its exponent, and itself. That of 1 where `value` is not positive
/// or not finite. (Powers and logarithms of the library would bring a table of four kilobytes to the page.)
///
/// ```
/// use holdround_mechanics::quantity::decade;
/// assert_eq!(decade(730.0), (2, 100.0));
/// assert_eq!(decade(0.001), (-3, 0.001));
/// ```
#[must_use]
pub fn decade(value: f64) -> (i32, f64) {
    let (mut exponent, mut ten) = (0, 1.0);
    if !(value > 0.0 && value.is_finite()) {
        return (exponent, ten);
    }
    while value >= 10.0 * ten {
        (exponent, ten) = (exponent + 1, 10.0 * ten);
    }
    // Those below one are one over exact ones.
    let mut over = 1.0;
    while value < ten {
        over *= 10.0;
        (exponent, ten) = (exponent - 1, 1.0 / over);
    }
    (exponent, ten)
}

/// Beyond this a number is told as beyond it.
const LARGEST: f64 = 1e18;

/// `value` with at most `decimals` decimals and no idle zeros; very small values keep three figures.
///
/// ```
/// use holdround_mechanics::quantity::decimal;
/// assert_eq!(decimal(88.9, 3), "88.9");
/// assert_eq!(decimal(0.000_042, 3), "0.000042");
/// assert_eq!(decimal(-0.0, 1), "0");
/// assert_eq!(decimal(1e300, 1), "over 10^18");
/// ```
#[must_use]
pub fn decimal(value: f64, decimals: usize) -> String {
    let magnitude = libm::fabs(value);
    let mut places = decimals;
    if magnitude > 0.0 && magnitude < 1.0 {
        let leading = decade(magnitude).0.unsigned_abs() as usize;
        if leading >= decimals {
            places = leading.saturating_add(2);
        }
    }
    fixed(value, places.min(15))
}

/// `value` rounded to `places` decimals, at most 15, without idle zeros.
///
/// ```
/// use holdround_mechanics::quantity::fixed;
/// assert_eq!(fixed(-0.126, 2), "-0.13");
/// assert_eq!(fixed(-0.001, 2), "0");
/// ```
#[must_use]
pub fn fixed(value: f64, places: usize) -> String {
    if !value.is_finite() {
        return "—".to_string();
    }
    let magnitude = libm::fabs(value);
    if magnitude > LARGEST {
        return if value > 0.0 { "over 10^18" } else { "under -10^18" }.to_string();
    }
    let unit = (0..places.min(15)).fold(1_u64, |unit, _| 10 * unit);
    let whole = libm::trunc(magnitude);
    let (mut whole, mut parts) = (whole as u64, rounded_product(magnitude - whole, unit));
    if parts == unit {
        (whole, parts) = (whole + 1, 0);
    }
    let sign = if value < 0.0 && (whole, parts) != (0, 0) { "-" } else { "" };
    if parts == 0 {
        return format!("{sign}{whole}");
    }
    let fraction = format!("{parts:0width$}", width = places.min(15));
    format!("{sign}{whole}.{}", fraction.trim_end_matches('0'))
}

/// `fraction`, from 0 to less than 1, times `unit`, to the nearest whole number and a tie to the even one.
/// The product is taken without rounding first: 1.005 is less than it looks, and becomes 1.00, not 1.01.
fn rounded_product(fraction: f64, unit: u64) -> u64 {
    const MANTISSA: u32 = 52;
    let bits = fraction.to_bits();
    let exponent = (bits >> MANTISSA) as u32;
    // `fraction` is a whole number of units in its last place, which is 2^-shift.
    let shift = 1075 - exponent;
    if exponent == 0 || shift > 120 {
        return 0;
    }
    let mantissa = (bits & ((1 << MANTISSA) - 1)) | (1 << MANTISSA);
    let product = u128::from(mantissa) * u128::from(unit);
    let (below, half) = (product & ((1 << shift) - 1), 1 << (shift - 1));
    let floor = (product >> shift) as u64;
    floor + u64::from(below > half || (below == half && floor % 2 == 1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn numbers_too_large_to_write_say_so_with_their_sign() {
        assert_eq!([1e19, -1e19].map(|value| fixed(value, 2)), ["over 10^18", "under -10^18"]);
    }

    #[test]
    fn shop_notations_are_read() {
        let cases = [
            ("150", 150.0),
            (" 3.5 ", 3.5),
            ("3,5", 3.5),
            (".5", 0.5),
            ("5.", 5.0),
            ("1e-3", 1e-3),
            ("2 1/4", 2.25),
            ("2-1/4", 2.25),
            ("-2 1/4", -2.25),
            ("15/16", 0.9375),
            ("1 / 16", 0.0625),
            ("\u{2212}4", -4.0),
            ("+4", 4.0),
            ("1E+3", 1e3),
            ("0.000000001", 1e-9),
            ("0e999", 0.0),
            ("1e-999", 0.0),
        ];
        for (text, value) in cases {
            assert_eq!(parse_number(text), Ok(value), "{text:?}");
        }
    }

    #[test]
    fn what_is_not_one_number_is_refused_with_its_reason() {
        let cases = [
            ("", NumberError::Empty),
            ("   ", NumberError::Empty),
            ("abc", NumberError::NotANumber),
            ("NaN", NumberError::NotANumber),
            ("inf", NumberError::NotANumber),
            ("1.2.3", NumberError::Ambiguous),
            ("1,234.5", NumberError::Ambiguous),
            ("1e999", NumberError::TooLarge),
            ("1/0", NumberError::OverZero),
            ("1/2/3", NumberError::NotANumber),
            ("2 x/4", NumberError::NotANumber),
            ("--3", NumberError::NotANumber),
            ("3-", NumberError::NotANumber),
            (".", NumberError::NotANumber),
            ("e3", NumberError::NotANumber),
            ("1e", NumberError::NotANumber),
            ("1e2.5", NumberError::NotANumber),
            ("1e99999999999", NumberError::NotANumber),
        ];
        for (text, error) in cases {
            assert_eq!(parse_number(text), Err(error), "{text:?}");
        }
    }

    proptest! {
        /// The standard library reads and writes correctly rounded.
        #[test]
        fn numbers_are_read_and_written_as_the_standard_library_does(
            mantissa in -999_999_999_999_999_i64..=999_999_999_999_999, power in -22..=22_i32, places in 0..=15_usize,
        ) {
            let text = format!("{mantissa}e{power}");
            let value: f64 = text.parse().unwrap();
            prop_assert_eq!(parse_number(&text), Ok(value));
            let small = mantissa as f64 / libm::exp2(f64::from(power) + 30.0);
            let wanted = format!("{small:.places$}");
            let wanted = if places > 0 { wanted.trim_end_matches('0').trim_end_matches('.') } else { &wanted };
            let wanted = if wanted == "-0" { "0" } else { wanted };
            if small.abs() <= LARGEST {
                prop_assert_eq!(fixed(small, places), wanted);
            }
        }

        #[test]
        fn long_numbers_are_read_to_within_rounding(text in "[0-9]{1,40}\\.[0-9]{0,40}(e-?[0-9]{1,2})?") {
            let value: f64 = text.parse().unwrap();
            let read = parse_number(&text).unwrap();
            prop_assert!((read - value).abs() <= 4.0 * f64::EPSILON * value, "{} is not {}", read, value);
        }
    }
}
