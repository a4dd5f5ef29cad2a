//! The kinds of quantity a set-up and its findings are made of.

use super::unit::{UNITS, Unit, UnitSystem};

/// A kind of quantity: what decides the units it may be typed and shown in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// A size of the part, jaw or chuck.
    Length,
    /// A small departure from a true size or form: roundness, run-out, size change.
    Departure,
    /// Tool travel per revolution.
    Feed,
    /// Hydraulic or air pressure in the clamping cylinder.
    Pressure,
    /// Stress, modulus or cutting resistance.
    Stress,
    /// Force.
    Force,
    /// Speed of rotation.
    RotationalSpeed,
    /// Speed of the edge along the surface it cuts.
    SurfaceSpeed,
    /// Mass.
    Mass,
    /// Mass per volume.
    Density,
    /// Power.
    Power,
    /// Torque.
    Torque,
    /// Plane angle.
    Angle,
    /// Force per radial travel.
    Stiffness,
    /// Moment per angle of tilt.
    TiltStiffness,
    /// A plain number or ratio.
    Plain,
}

impl Kind {
    /// The units of this kind; a bare number is read in the first.
    ///
    /// ```
    /// use holdround_mechanics::quantity::Kind;
    /// let symbols: Vec<_> = Kind::Pressure.units().map(|unit| unit.symbol).collect();
    /// assert_eq!(symbols, ["MPa", "bar", "psi"]);
    /// ```
    pub fn units(self) -> impl Iterator<Item = &'static Unit> {
        UNITS.iter().filter(move |unit| unit.kind == self)
    }

    /// The unit a bare number is read in, and the one this kind is shown in for `system`
    /// unless the reader chose another.
    #[must_use]
    pub fn unit_in(self, system: UnitSystem) -> &'static Unit {
        let symbol = match (self, system) {
            (Self::Length | Self::Departure, UnitSystem::Inch) => "in",
            (Self::Feed, UnitSystem::Inch) => "in/rev",
            (Self::Pressure, UnitSystem::Inch) => "psi",
            (Self::Stress, UnitSystem::Inch) => "ksi",
            (Self::Force, UnitSystem::Inch) => "lbf",
            (Self::SurfaceSpeed, UnitSystem::Inch) => "ft/min",
            (Self::Mass, UnitSystem::Inch) => "lb",
            (Self::Density, UnitSystem::Inch) => "lb/in³",
            (Self::Power, UnitSystem::Inch) => "hp",
            (Self::Torque, UnitSystem::Inch) => "lbf·ft",
            (Self::Stiffness, UnitSystem::Inch) => "lbf/in",
            (Self::TiltStiffness, UnitSystem::Inch) => "lbf·ft/rad",
            _ => return self.bare_unit(),
        };
        Unit::named(self, symbol).unwrap_or_else(|| self.bare_unit())
    }

    /// The unit a bare number of this kind is read in.
    #[must_use]
    pub fn bare_unit(self) -> &'static Unit {
        const NONE: &Unit = &Unit { symbol: "", spellings: &[], kind: Kind::Plain, factor: 1.0, decimals: 3 };
        UNITS.iter().find(|unit| unit.kind == self).unwrap_or(NONE)
    }

    /// The symbol of the coherent SI unit, in which findings are written to JSON.
    #[must_use]
    pub const fn si_symbol(self) -> &'static str {
        match self {
            Self::Length | Self::Departure => "m",
            Self::Feed => "m/rev",
            Self::Pressure | Self::Stress => "Pa",
            Self::Force => "N",
            Self::RotationalSpeed => "rad/s",
            Self::SurfaceSpeed => "m/s",
            Self::Mass => "kg",
            Self::Density => "kg/m³",
            Self::Power => "W",
            Self::Torque => "N·m",
            Self::Angle => "rad",
            Self::Stiffness => "N/m",
            Self::TiltStiffness => "N·m/rad",
            Self::Plain => "1",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_a_unit_for_those_who_think_in_inches() {
        let symbols = [
            (Kind::Length, "in"),
            (Kind::Departure, "in"),
            (Kind::Feed, "in/rev"),
            (Kind::Pressure, "psi"),
            (Kind::Stress, "ksi"),
            (Kind::Force, "lbf"),
            (Kind::SurfaceSpeed, "ft/min"),
            (Kind::Mass, "lb"),
            (Kind::Density, "lb/in³"),
            (Kind::Power, "hp"),
            (Kind::Torque, "lbf·ft"),
            (Kind::Stiffness, "lbf/in"),
            (Kind::TiltStiffness, "lbf·ft/rad"),
        ];
        for (kind, symbol) in symbols {
            assert_eq!(kind.unit_in(UnitSystem::Inch).symbol, symbol, "{kind:?}");
        }
    }
}
