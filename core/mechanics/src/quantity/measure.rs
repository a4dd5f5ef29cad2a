//! A number with its unit, as typed: `3.5 in`, `2 1/4"`, `250 psi`.

use alloc::format;
use alloc::string::{String, ToString};

use super::{Kind, NumberError, Unit, decimal, fixed, parse_number};

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

    /// The number's text in `unit`: what was typed when the unit is the same, else converted: sizes to what the trade
    /// reads, others to a tenth of that. What was typed is kept beside it, and is what is worked with.
    ///
    /// ```
    /// use holdround_mechanics::quantity::{Kind, Measure, Unit};
    /// let width = Measure::parse(Kind::Length, "3.50 in").unwrap();
    /// assert_eq!(width.text_in(Unit::named(Kind::Length, "mm").unwrap()), "88.9");
    /// assert_eq!(width.text_in(width.unit), "3.50");
    /// let ring = Measure::parse(Kind::Length, "160 mm").unwrap();
    /// assert_eq!(ring.text_in(Unit::named(Kind::Length, "in").unwrap()), "6.2992");
    /// ```
    #[must_use]
    pub fn text_in(&self, unit: &Unit) -> String {
        if unit.symbol == self.unit.symbol {
            return self.text.clone();
        }
        decimal(unit.from_si(self.si), unit.decimals + usize::from(!is_size(unit)))
    }
}

/// Whether `unit` is one of sizes, whose decimals the trade has settled.
fn is_size(unit: &Unit) -> bool {
    matches!(unit.kind, Kind::Length | Kind::Departure)
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
    let (number, unit) = text.split_at_checked(end).unwrap_or((text, ""));
    if number.trim().is_empty() { (text, "") } else { (number.trim(), unit.trim()) }
}

/// `si` in `unit` with its symbol, to the decimals customary for the unit. A size too small for them is told as less
/// than the last of them: nobody reads or cuts it. What is a millionth of that is rounding.
///
/// ```
/// use holdround_mechanics::quantity::{shown, Kind, Unit};
/// assert_eq!(shown(0.1016, Unit::named(Kind::Length, "in").unwrap()), "4 in");
/// assert_eq!(shown(6e-8, Unit::named(Kind::Departure, "in").unwrap()), "under 0.00001 in");
/// ```
#[must_use]
pub fn shown(si: f64, unit: &Unit) -> String {
    let value = unit.from_si(si);
    let number = if is_size(unit) {
        let number = fixed(value, unit.decimals);
        let last = (0..unit.decimals).fold(1.0, |last, _| last / 10.0);
        if number == "0" && libm::fabs(value) > 1e-6 * last {
            format!("under {}", fixed(last, unit.decimals))
        } else {
            number
        }
    } else {
        decimal(value, unit.decimals)
    };
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
    fn sizes_are_told_to_what_the_trade_reads_in_either_unit() {
        let told = |kind, symbol, si| shown(si, Unit::named(kind, symbol).unwrap());
        for (kind, symbol, si, wanted) in [
            (Kind::Departure, "in", 1.514e-6, "0.00006 in"),
            (Kind::Departure, "in", 1e-7, "under 0.00001 in"),
            (Kind::Departure, "in", -1e-7, "under 0.00001 in"),
            (Kind::Departure, "µm", 3e-8, "under 0.1 µm"),
            (Kind::Departure, "µm", -2.57e-6, "-2.6 µm"),
            (Kind::Departure, "in", 1e-22, "0 in"),
            (Kind::Length, "in", 0.1603, "6.311 in"),
            (Kind::Length, "in", 1e-6, "under 0.0001 in"),
            (Kind::Length, "mm", 2e-7, "under 0.001 mm"),
            (Kind::Plain, "", 0.000_042, "0.000042"),
        ] {
            assert_eq!(told(kind, symbol, si), wanted, "{si} as {kind:?}");
        }
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

    /// A bar is 1e5 Pa and a psi 4.4482216152605 N on (25.4 mm)^2, both exactly (NIST SP 811): 14.5037738 psi.
    #[test]
    fn another_unit_has_one_decimal_more_than_is_told_and_three_figures_where_it_is_small() {
        let pound = Unit::named(Kind::Pressure, "psi").unwrap();
        for (text, shown) in [("100 bar", "1450.4"), ("1 bar", "14.5"), ("0.01 bar", "0.145")] {
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
