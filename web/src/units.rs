//! The units the reader chose, and values written in them.

use holdround_core::quantity::{Kind, Unit, UnitSystem, shown};

use crate::language::number;

/// The units the reader chose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Units {
    /// Millimetre or inch, and what goes with them.
    pub(crate) system: UnitSystem,
    /// Unit of clamping pressure.
    pub(crate) pressure: &'static Unit,
    /// Unit of force.
    pub(crate) force: &'static Unit,
}

impl Units {
    /// What goes together in `system`.
    pub(crate) fn of(system: UnitSystem) -> Self {
        Self { system, pressure: Kind::Pressure.unit_in(system), force: Kind::Force.unit_in(system) }
    }

    /// The unit in which a quantity of `kind` is shown.
    pub(crate) fn unit(&self, kind: Kind) -> &'static Unit {
        match kind {
            Kind::Pressure => self.pressure,
            Kind::Force => self.force,
            _ => kind.unit_in(self.system),
        }
    }

    /// `si` with its unit, to the decimals customary for the unit and with the decimal sign of the
    /// language that is spoken.
    pub(crate) fn show(&self, kind: Kind, si: f64) -> String {
        number(shown(si, self.unit(kind)))
    }
}
