//! A number with its unit, as typed: `3.5 in`, `2 1/4"`, `250 psi`.

use alloc::format;
use alloc::string::{String, ToString};

use super::{Kind, NumberError, Unit, decimal, parse_number};

/// What was typed into a field: the number's text, untouched, and the unit it was typed in.
#[derive(Clone, Debug, PartialEq)]
pub struct Measure {
    /// The number's text as typed.
    pub text: String,
    /// The unit it was typed in.
    pub unit: &'static Unit,
    /// The value in SI.
    pub si: f64,
}

/// Why a typed quantity was not understood.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MeasureError {
    /// The number itself.
    Number(NumberError),
    /// A unit that this kind of quantity does not have.
    Unit(String),
}

impl Measure {
    /// Reads `text` as a quantity of `kind`; a bare number is read in the kind's first unit.
    ///
    /// # Errors
    /// [`MeasureError`] tells the number's fault from the unit's.
    ///
    /// ```
    /// use holdround_mechanics::quantity::{Kind, Measure};
    /// let bore = Measure::parse(Kind::Length, "2 1/4 in").unwrap();
    /// assert_eq!((bore.text.as_str(), bore.unit.symbol), ("2 1/4", "in"));
    /// assert_eq!(bore.si, 2.25 * 0.0254);
    /// ```
    pub fn parse(kind: Kind, text: &str) -> Result<Self, MeasureError> {
        let text = text.trim();
        let (number, unit) = split_unit(text);
        let unit = if unit.is_empty() {
            kind.bare_unit()
        } else {
            Unit::named(kind, unit).ok_or_else(|| MeasureError::Unit(unit.to_string()))?
        };
        let value = parse_number(number).map_err(MeasureError::Number)?;
        let si = unit.to_si(value);
        if !si.is_finite() {
            return Err(MeasureError::Number(NumberError::TooLarge));
        }
        Ok(Self { text: number.to_string(), unit, si })
    }

    /// The number's text in `unit`: what was typed when the unit is the same, else the exact conversion.
    ///
    /// ```
    /// use holdround_mechanics::quantity::{Kind, Measure, Unit};
    /// let width = Measure::parse(Kind::Length, "3.50 in").unwrap();
    /// assert_eq!(width.text_in(Unit::named(Kind::Length, "mm").unwrap()), "88.9");
    /// assert_eq!(width.text_in(width.unit), "3.50");
    /// ```
    #[must_use]
    pub fn text_in(&self, unit: &Unit) -> String {
        if unit.symbol == self.unit.symbol {
            return self.text.clone();
        }
        decimal(unit.from_si(self.si), 9 - digits_before_point(unit.from_si(self.si)).min(8))
    }
}

/// Nine significant figures leave no trace of binary rounding and outlast any shop measurement.
fn digits_before_point(value: f64) -> usize {
    let magnitude = libm::fabs(value);
    if magnitude < 1.0 { 0 } else { libm::floor(libm::log10(magnitude)) as usize + 1 }
}

/// Parts the number from what follows its last digit; an `e` between digits belongs to the number.
fn split_unit(text: &str) -> (&str, &str) {
    let mut end = 0;
    let bytes = text.as_bytes();
    for (at, c) in text.char_indices() {
        let exponent = matches!(c, 'e' | 'E')
            && at > 0
            && bytes.get(at - 1).is_some_and(|b| b.is_ascii_digit() || matches!(b, b'.' | b','))
            && bytes.get(at + 1).is_some_and(|b| b.is_ascii_digit() || matches!(b, b'+' | b'-'));
        if c.is_ascii_digit() || matches!(c, '.' | ',' | '/' | '-' | '+' | ' ' | '\u{2212}') || exponent {
            end = at + c.len_utf8();
        } else {
            break;
        }
    }
    let (number, unit) = text.split_at(end);
    if number.trim().is_empty() { (text, "") } else { (number.trim(), unit.trim()) }
}

/// `si` in `unit` with its symbol, to the decimals customary for the unit.
///
/// ```
/// use holdround_mechanics::quantity::{shown, Kind, Unit};
/// assert_eq!(shown(0.1016, Unit::named(Kind::Length, "in").unwrap()), "4 in");
/// ```
#[must_use]
pub fn shown(si: f64, unit: &Unit) -> String {
    let number = decimal(unit.from_si(si), unit.decimals);
    if unit.symbol.is_empty() {
        number
    } else if unit.symbol == "°" {
        format!("{number}°")
    } else {
        format!("{number} {}", unit.symbol)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn number_and_unit_are_told_apart() {
        let cases = [
            (Kind::Length, "150mm", "150", "mm"),
            (Kind::Length, "2 1/4\"", "2 1/4", "in"),
            (Kind::Length, "1e2 mm", "1e2", "mm"),
            (Kind::Length, "12", "12", "mm"),
            (Kind::Pressure, "250 PSI", "250", "psi"),
            (Kind::Departure, "12 um", "12", "µm"),
            (Kind::RotationalSpeed, "1200 rpm", "1200", "rev/min"),
            (Kind::Angle, "95°", "95", "°"),
            (Kind::Plain, "0,12", "0,12", ""),
        ];
        for (kind, text, number, unit) in cases {
            let measure = Measure::parse(kind, text).unwrap();
            assert_eq!((measure.text.as_str(), measure.unit.symbol), (number, unit), "{text:?}");
        }
    }

    #[test]
    fn faults_name_number_or_unit() {
        assert_eq!(
            Measure::parse(Kind::Length, "12 psi"),
            Err(MeasureError::Unit("psi".into())),
            "a pressure is not a length"
        );
        assert_eq!(
            Measure::parse(Kind::Length, "wide"),
            Err(MeasureError::Number(NumberError::NotANumber)),
            "no number at all"
        );
        assert_eq!(
            Measure::parse(Kind::Stress, "1e308 GPa"),
            Err(MeasureError::Number(NumberError::TooLarge)),
            "overflows in SI"
        );
    }

    #[test]
    fn an_exponent_stands_right_behind_a_digit_and_a_degree_sign_right_behind_the_number() {
        assert_eq!(Measure::parse(Kind::Length, "5 e2"), Err(MeasureError::Unit("e2".into())), "a space between");
        let [degree, millimetre] =
            [(Kind::Angle, "°"), (Kind::Length, "mm")].map(|(kind, name)| Unit::named(kind, name));
        let turn = core::f64::consts::FRAC_PI_2;
        assert!(shown(turn, degree.unwrap()).ends_with("90°"), "{}", shown(turn, degree.unwrap()));
        assert!(shown(0.09, millimetre.unwrap()).ends_with(" mm"), "{}", shown(0.09, millimetre.unwrap()));
    }

    /// A bar is 1e5 Pa and a psi 4.4482216152605 N on (25.4 mm)^2, both exactly (NIST SP 811).
    #[test]
    fn another_unit_has_nine_figures_however_large() {
        let pound = Unit::named(Kind::Pressure, "psi").unwrap();
        for (text, shown) in [("100 bar", "1450.37738"), ("1 bar", "14.5037738"), ("0.01 bar", "0.145037738")] {
            assert_eq!(Measure::parse(Kind::Pressure, text).unwrap().text_in(pound), shown, "{text}");
        }
    }

    #[test]
    fn there_and_back_again_leaves_the_typed_text_alone() {
        for text in ["3.5 in", "3.50 in", "2 1/4 in", "0,125 in"] {
            let typed = Measure::parse(Kind::Length, text).unwrap();
            let millimetre = Unit::named(Kind::Length, "mm").unwrap();
            let converted = Measure::parse(Kind::Length, &format!("{} mm", typed.text_in(millimetre))).unwrap();
            assert!((converted.si - typed.si).abs() <= 1e-9 * typed.si, "{text} survives in value");
            assert_eq!(format!("{} in", typed.text_in(typed.unit)), text, "{text} survives in text");
        }
    }
}
