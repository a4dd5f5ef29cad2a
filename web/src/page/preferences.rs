//! How the reader wants the page: units, theme and language.

use std::fmt;

use holdround_core::quantity::{Kind, Unit, UnitSystem};

use crate::language::Tongue;
use crate::units::Units;

/// The look of the sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Theme {
    /// As the device is set.
    #[default]
    Device,
    /// Ink on warm paper.
    Paper,
    /// Light lines on blueprint.
    Blueprint,
    /// Black on white, for bright shop light.
    Shop,
}

impl Theme {
    /// Every theme with its key and name.
    pub(crate) const ALL: [(Self, &'static str, &'static str); 4] = [
        (Self::Device, "device", "As the device"),
        (Self::Paper, "paper", "Paper"),
        (Self::Blueprint, "blueprint", "Blueprint"),
        (Self::Shop, "shop", "Shop light"),
    ];

    /// The theme with this key; as the device if there is none.
    pub(crate) fn named(key: &str) -> Self {
        Self::ALL.iter().find(|(_, known, _)| *known == key).map_or(Self::Device, |(theme, ..)| *theme)
    }

    /// Its key.
    pub(crate) fn key(self) -> &'static str {
        Self::ALL.iter().find(|(theme, ..)| *theme == self).map_or("device", |(_, key, _)| *key)
    }
}

/// Units, theme and language as they are stored.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Preferences {
    length: String,
    pressure: String,
    force: String,
    theme: Theme,
    tongue: Option<Tongue>,
}

impl Preferences {
    /// What is stored of these choices.
    pub(crate) fn of(units: Units, theme: Theme, tongue: Option<Tongue>) -> Self {
        let length = Kind::Length.unit_in(units.system).symbol;
        Self {
            length: length.to_owned(),
            pressure: units.pressure.symbol.to_owned(),
            force: units.force.symbol.to_owned(),
            theme,
            tongue,
        }
    }

    /// Reads what was written of them, and tells whether that is all that was written.
    pub(crate) fn parse(text: &str) -> Option<(Self, bool)> {
        let mut words = text.split(' ').map(str::to_owned);
        let (length, pressure, force) = (words.next()?, words.next()?, words.next()?);
        let theme = Theme::named(&words.next()?);
        let tongue = words.next().and_then(|code| Tongue::of_code(&code));
        let read = Self { length, pressure, force, theme, tongue };
        let (units, theme, tongue) = read.read();
        let all = Self::of(units, theme, tongue).to_string() == text;
        Some((read, all))
    }

    /// The choices that were stored; what is not known any more takes its usual value. No language means that of the
    /// device.
    pub(crate) fn read(&self) -> (Units, Theme, Option<Tongue>) {
        let mut units = Units::of(system(&self.length));
        units.pressure = Unit::named(Kind::Pressure, &self.pressure).unwrap_or(units.pressure);
        units.force = Unit::named(Kind::Force, &self.force).unwrap_or(units.force);
        (units, self.theme, self.tongue)
    }
}

impl fmt::Display for Preferences {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {} {} {}", self.length, self.pressure, self.force, self.theme.key())?;
        self.tongue.map_or(Ok(()), |tongue| write!(f, " {}", tongue.code()))
    }
}

/// The family of units that goes with a unit of length.
pub(crate) fn system(length: &str) -> UnitSystem {
    if length == "in" { UnitSystem::Inch } else { UnitSystem::Metric }
}

/// `units` in another family; a unit that was chosen apart from its family stays.
pub(crate) fn changed_to(units: Units, system: UnitSystem) -> Units {
    let (before, after) = (Units::of(units.system), Units::of(system));
    Units {
        system,
        pressure: if units.pressure == before.pressure { after.pressure } else { units.pressure },
        force: if units.force == before.force { after.force } else { units.force },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn choices_survive_being_stored() {
        let mut units = Units::of(UnitSystem::Inch);
        units.pressure = Unit::named(Kind::Pressure, "bar").unwrap();
        for tongue in [None, Some(Tongue::English), Some(Tongue::German)] {
            let kept = Preferences::of(units, Theme::Shop, tongue);
            let (read, all) = Preferences::parse(&kept.to_string()).unwrap();
            assert_eq!(read.read(), (units, Theme::Shop, tongue), "the same units, theme and language");
            assert!(all, "and nothing else was written");
        }
        for newer in ["in bar lbf night", "in bar lbf shop large", "in bar lbf shop de large", "ell bar lbf shop"] {
            assert!(Preferences::parse(newer).is_some_and(|(_, all)| !all), "{newer} says more than is read");
        }
    }

    #[test]
    fn a_unit_chosen_apart_from_its_family_stays() {
        let mut units = Units::of(UnitSystem::Metric);
        units.pressure = Unit::named(Kind::Pressure, "psi").unwrap();
        units.force = Unit::named(Kind::Force, "N").unwrap();
        let inch = changed_to(units, UnitSystem::Inch);
        assert_eq!((inch.pressure.symbol, inch.force.symbol), ("psi", "N"), "both were chosen");
        let usual = changed_to(Units::of(UnitSystem::Metric), UnitSystem::Inch);
        assert_eq!((usual.pressure.symbol, usual.force.symbol), ("psi", "lbf"), "what goes with inches");
    }
}
