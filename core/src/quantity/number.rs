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
/// use holdround_core::quantity::{parse_number, NumberError};
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
    let value: f64 = text.replace(',', ".").parse().map_err(|_| NumberError::NotANumber)?;
    if value.is_finite() { Ok(value) } else { Err(NumberError::TooLarge) }
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
    text.parse().map_err(|_| NumberError::NotANumber)
}

/// `value` with at most `decimals` decimals and no idle zeros; very small values keep three figures.
///
/// ```
/// use holdround_core::quantity::decimal;
/// assert_eq!(decimal(88.9, 3), "88.9");
/// assert_eq!(decimal(0.000_042, 3), "0.000042");
/// assert_eq!(decimal(-0.0, 1), "0");
/// ```
#[must_use]
pub fn decimal(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return "—".to_string();
    }
    let magnitude = libm::fabs(value);
    let mut places = decimals;
    if magnitude > 0.0 {
        let leading = libm::floor(libm::log10(magnitude));
        if leading < 0.0 && (-leading) >= decimals as f64 {
            places = ((2.0 - leading) as usize).min(15);
        }
    }
    let text = format!("{value:.places$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_string() } else { text.to_string() }
}

#[cfg(test)]
mod tests {
    use super::*;

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
        ];
        for (text, error) in cases {
            assert_eq!(parse_number(text), Err(error), "{text:?}");
        }
    }
}
