//! The table of units: symbol, kind of quantity and exact factor to SI.

use super::Kind;

/// International yard and pound agreement, 1959: one inch, exactly, in metres.
const INCH: f64 = 0.0254;
/// International yard and pound agreement, 1959: one pound, exactly, in kilograms.
const POUND: f64 = 0.453_592_37;
/// Standard gravity, 3rd General Conference on Weights and Measures, 1901: exactly, in m/s².
const STANDARD_GRAVITY: f64 = 9.806_65;
/// The pound-force, exactly, in newtons (4.448 221 615 260 5).
const POUND_FORCE: f64 = POUND * STANDARD_GRAVITY;
/// The pound-force per square inch in pascals.
const PSI: f64 = POUND_FORCE / (INCH * INCH);
/// One revolution per minute in rad/s.
const REV_PER_MIN: f64 = core::f64::consts::PI / 30.0;

/// Which family of units the reader prefers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnitSystem {
    /// Millimetres and what goes with them.
    Metric,
    /// Inches and what goes with them.
    Inch,
}

/// One unit of one kind of quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// How it is shown, e.g. `mm/rev`.
    pub symbol: &'static str,
    /// Other spellings that are understood when typed, in lower case.
    pub spellings: &'static [&'static str],
    /// The kind of quantity it measures.
    pub kind: Kind,
    /// One of it, in SI.
    pub factor: f64,
    /// Decimals that show a shop-floor step of this unit.
    pub decimals: usize,
}

const fn unit(
    kind: Kind,
    symbol: &'static str,
    spellings: &'static [&'static str],
    factor: f64,
    decimals: usize,
) -> Unit {
    Unit { symbol, spellings, kind, factor, decimals }
}

/// Every unit, the first of each kind being the one a bare number is read in.
pub static UNITS: &[Unit] = &[
    unit(Kind::Length, "mm", &["millimetre", "millimeter"], 1e-3, 3),
    unit(Kind::Length, "in", &["\"", "inch", "inches", "″"], INCH, 4),
    unit(Kind::Length, "cm", &[], 1e-2, 4),
    unit(Kind::Length, "m", &[], 1.0, 6),
    unit(Kind::Length, "µm", &["um", "μm"], 1e-6, 1),
    unit(Kind::Departure, "µm", &["um", "μm", "micron", "microns"], 1e-6, 1),
    unit(Kind::Departure, "in", &["\"", "inch", "inches", "″"], INCH, 5),
    unit(Kind::Departure, "mm", &["millimetre", "millimeter"], 1e-3, 4),
    unit(Kind::Feed, "mm/rev", &["mm", "mm/r", "mm/u"], 1e-3, 3),
    unit(Kind::Feed, "in/rev", &["in", "ipr", "\"", "in/r", "in/u"], INCH, 4),
    unit(Kind::Pressure, "MPa", &["n/mm2", "n/mm²"], 1e6, 2),
    unit(Kind::Pressure, "bar", &[], 1e5, 1),
    unit(Kind::Pressure, "psi", &["lbf/in2", "lbf/in²"], PSI, 0),
    unit(Kind::Stress, "MPa", &["n/mm2", "n/mm²"], 1e6, 1),
    unit(Kind::Stress, "GPa", &["kn/mm2", "kn/mm²"], 1e9, 2),
    unit(Kind::Stress, "ksi", &[], PSI * 1e3, 2),
    unit(Kind::Stress, "psi", &["lbf/in2", "lbf/in²"], PSI, 0),
    unit(Kind::Force, "kN", &[], 1e3, 2),
    unit(Kind::Force, "lbf", &["lb", "lbs", "pound-force"], POUND_FORCE, 0),
    unit(Kind::Force, "N", &["newton"], 1.0, 0),
    unit(Kind::RotationalSpeed, "rev/min", &["rpm", "r/min", "1/min", "min-1", "min⁻¹", "u/min"], REV_PER_MIN, 0),
    unit(Kind::RotationalSpeed, "rad/s", &[], 1.0, 2),
    unit(Kind::SurfaceSpeed, "m/min", &[], 1.0 / 60.0, 0),
    unit(Kind::SurfaceSpeed, "ft/min", &["sfm", "fpm"], 0.3048 / 60.0, 0),
    unit(Kind::Mass, "kg", &[], 1.0, 3),
    unit(Kind::Mass, "lb", &["lbs", "lbm"], POUND, 3),
    unit(Kind::Mass, "g", &["gram"], 1e-3, 0),
    unit(Kind::Density, "kg/m³", &["kg/m3"], 1.0, 0),
    unit(Kind::Density, "g/cm³", &["g/cm3", "g/cc"], 1e3, 3),
    unit(Kind::Density, "lb/in³", &["lb/in3"], POUND / (INCH * INCH * INCH), 4),
    unit(Kind::Power, "kW", &[], 1e3, 2),
    unit(Kind::Power, "hp", &[], 550.0 * 0.3048 * POUND_FORCE, 2),
    unit(Kind::Power, "W", &[], 1.0, 0),
    unit(Kind::Torque, "N·m", &["nm", "n.m", "n m"], 1.0, 1),
    unit(Kind::Torque, "lbf·ft", &["lbf.ft", "ft·lbf", "ft.lbf", "lbf ft", "ft lbf"], POUND_FORCE * 0.3048, 1),
    unit(Kind::Angle, "°", &["deg", "degree", "degrees"], core::f64::consts::PI / 180.0, 2),
    unit(Kind::Angle, "rad", &[], 1.0, 4),
    unit(Kind::Stiffness, "N/µm", &["n/um", "n/μm"], 1e6, 1),
    unit(Kind::Stiffness, "lbf/in", &["lb/in"], POUND_FORCE / INCH, 0),
    unit(Kind::TiltStiffness, "N·m/rad", &["nm/rad", "n.m/rad"], 1.0, 0),
    unit(Kind::TiltStiffness, "lbf·ft/rad", &["lbf.ft/rad", "ft·lbf/rad"], POUND_FORCE * 0.3048, 0),
    unit(Kind::Plain, "", &[], 1.0, 3),
    unit(Kind::Plain, "%", &["percent"], 1e-2, 1),
];

impl Unit {
    /// The unit of `kind` that `text` names, by symbol or by another spelling, without regard to case.
    ///
    /// ```
    /// use holdround_mechanics::quantity::{Kind, Unit};
    /// let inch = Unit::named(Kind::Length, "Inch").unwrap();
    /// assert_eq!(inch.factor, 0.0254);
    /// assert!(Unit::named(Kind::Length, "furlong").is_none());
    /// ```
    #[must_use]
    pub fn named(kind: Kind, text: &str) -> Option<&'static Self> {
        let of_kind = || UNITS.iter().filter(|unit| unit.kind == kind);
        of_kind().find(|unit| unit.symbol == text).or_else(|| {
            let lower = text.to_ascii_lowercase();
            of_kind().find(|unit| unit.symbol.eq_ignore_ascii_case(&lower) || unit.spellings.contains(&lower.as_str()))
        })
    }

    /// `value` in SI, expressed in this unit.
    #[must_use]
    pub fn from_si(&self, value: f64) -> f64 {
        value / self.factor
    }

    /// `value` in this unit, expressed in SI.
    #[must_use]
    pub fn to_si(&self, value: f64) -> f64 {
        value * self.factor
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_units_and_no_spelling_is_claimed_twice() {
        for unit in UNITS {
            let claims = UNITS.iter().filter(|other| {
                other.kind == unit.kind
                    && (other.symbol == unit.symbol
                        || unit
                            .spellings
                            .iter()
                            .any(|s| other.spellings.contains(s) || other.symbol.eq_ignore_ascii_case(s)))
            });
            assert_eq!(claims.count(), 1, "{} of {:?} must be unambiguous", unit.symbol, unit.kind);
        }
    }
}
