//! Reads entries into typed values, collecting every fault and every assumed default on the way.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use uom::si::{
    angle::radian, angular_velocity::radian_per_second, force::newton, length::meter, mass::kilogram, power::watt,
    pressure::pascal, ratio::ratio,
};

use super::fault::range_words;
use super::input::{Form, MaterialUse};
use super::job::{Assumed, AssumedFrom};
use super::{Entries, Fault, Input, bracketed};
use crate::materials::{self, Material};
use crate::quantity::{Angle, AngularVelocity, Force, Kind, Length, Mass, Measure, Power, Pressure, Ratio, Unit};
use crate::text::Text;

/// One pass over the entries of a set-up.
pub(super) struct Reader<'a> {
    entries: &'a Entries,
    pub(super) faults: Vec<Fault>,
    pub(super) assumed: Vec<Assumed>,
}

impl<'a> Reader<'a> {
    pub(super) fn new(entries: &'a Entries) -> Self {
        Self { entries, faults: Vec::new(), assumed: Vec::new() }
    }

    pub(super) fn count(&self, list: &str) -> usize {
        self.entries.count(list)
    }

    /// The text that holds for `input`, noting when it is the default.
    fn text(&mut self, input: &Input, index: usize) -> (String, &'a str) {
        let path = input.at(index);
        let entries = self.entries;
        let entered = entries.get(&path);
        let by_hand = entered.filter(|_| !matches!(input.form, Form::Text(_))).and_then(bracketed);
        if let Some(text) = entered.filter(|_| by_hand.is_none()) {
            return (path, text.trim());
        }
        let taken = by_hand.map_or(input.default, str::trim);
        if !taken.is_empty() {
            let from = if by_hand.is_some() { AssumedFrom::Brackets } else { AssumedFrom::Default };
            self.assumed.push(Assumed { path: path.clone(), taken: taken.into(), from });
        }
        (path, taken)
    }

    /// The SI value of a quantity; `None` when it is left empty or faulty.
    fn si(&mut self, input: &Input, index: usize) -> Option<f64> {
        let Form::Quantity { kind, least, most, optional } = input.form else { return None };
        let (path, text) = self.text(input, index);
        if text.is_empty() && optional {
            return None;
        }
        match Measure::parse(kind, text) {
            Ok(measure) if measure.si >= least && measure.si <= most => Some(measure.si),
            Ok(measure) => {
                let remedy = if measure.si < least { "Type a larger value." } else { "Type a smaller value." };
                let allowed = range_words(least, most, measure.unit);
                self.faults.push(Fault::new(&path, input, text, allowed, remedy.into()));
                None
            }
            Err(error) => {
                let allowed = range_words(least, most, typed_unit(kind, text));
                self.faults.push(Fault::unreadable(&path, input, text, allowed, &error));
                None
            }
        }
    }

    pub(super) fn length(&mut self, input: &Input) -> Option<Length> {
        self.item_length(input, 0)
    }

    pub(super) fn item_length(&mut self, input: &Input, index: usize) -> Option<Length> {
        self.si(input, index).map(Length::new::<meter>)
    }

    pub(super) fn force(&mut self, input: &Input, index: usize) -> Option<Force> {
        self.si(input, index).map(Force::new::<newton>)
    }

    pub(super) fn pressure(&mut self, input: &Input, index: usize) -> Option<Pressure> {
        self.si(input, index).map(Pressure::new::<pascal>)
    }

    pub(super) fn rotation(&mut self, input: &Input) -> Option<AngularVelocity> {
        self.item_rotation(input, 0)
    }

    pub(super) fn item_rotation(&mut self, input: &Input, index: usize) -> Option<AngularVelocity> {
        self.si(input, index).map(AngularVelocity::new::<radian_per_second>)
    }

    pub(super) fn mass(&mut self, input: &Input) -> Option<Mass> {
        self.si(input, 0).map(Mass::new::<kilogram>)
    }

    pub(super) fn power(&mut self, input: &Input, index: usize) -> Option<Power> {
        self.si(input, index).map(Power::new::<watt>)
    }

    pub(super) fn angle(&mut self, input: &Input, index: usize) -> Option<Angle> {
        self.si(input, index).map(Angle::new::<radian>)
    }

    pub(super) fn ratio(&mut self, input: &Input, index: usize) -> Option<Ratio> {
        self.si(input, index).map(Ratio::new::<ratio>)
    }

    /// The key of a choice.
    pub(super) fn choice(&mut self, input: &Input, index: usize) -> Option<&'static str> {
        let (path, text) = self.text(input, index);
        let choices = input.choices();
        let found = choices.iter().find(|choice| choice.key == text);
        if found.is_none() {
            let keys = choices.iter().map(|choice| Text::typed(choice.key));
            self.faults.push(Fault::new(&path, input, text, Text::row(keys, ", "), "Choose one of these.".into()));
        }
        found.map(|choice| choice.key)
    }

    /// Whether `key` is chosen, without noting anything.
    pub(super) fn is_chosen(&self, input: &Input, key: &str) -> bool {
        self.entries.text_or_default(input.path, input).trim() == key
    }

    /// Notes that `input` is from the indicator, while it is as it was taken over into `adopted`.
    pub(super) fn adopted(&mut self, input: &Input, adopted: &Input) {
        let typed = [input, adopted].map(|input| self.entries.get(input.path).unwrap_or_default());
        let [one, other] = typed.map(|text| Measure::parse(input.kind()?, text).ok());
        if one.zip(other).is_some_and(|(one, other)| one.si == other.si) {
            let from = AssumedFrom::Indicator;
            self.assumed.push(Assumed { path: input.path.into(), taken: typed[0].trim().into(), from });
        }
    }

    /// The SI value of a quantity for which the library of typed quantities has no name.
    pub(super) fn plain(&mut self, input: &Input) -> Option<f64> {
        self.si(input, 0)
    }

    /// A material of the table.
    pub(super) fn material(&mut self, input: &Input) -> Option<&'static Material> {
        let Form::Material(wanted) = input.form else { return None };
        let (path, text) = self.text(input, 0);
        let found = materials::find(text).filter(|material| match wanted {
            MaterialUse::Part => material.part,
            MaterialUse::Jaw => material.jaw,
        });
        if found.is_none() {
            let allowed = "a material of the table for this use".into();
            self.faults.push(Fault::new(&path, input, text, allowed, "Choose one from the list.".into()));
        }
        found
    }

    /// Free text.
    pub(super) fn words(&mut self, input: &Input) -> Option<String> {
        self.item_words(input, 0)
    }

    /// Free text in a list.
    pub(super) fn item_words(&mut self, input: &Input, index: usize) -> Option<String> {
        let Form::Text(most) = input.form else { return None };
        let (path, text) = self.text(input, index);
        if text.chars().count() > most {
            let allowed = Text::of("at most {} characters").with(most);
            self.faults.push(Fault::new(&path, input, text, allowed, "Shorten it.".into()));
            return None;
        }
        Some(text.to_string())
    }

    /// Notes a fault between entries, at the one that is easiest to put right.
    pub(super) fn conflict(&mut self, input: &Input, index: usize, allowed: impl Into<Text>, remedy: &'static str) {
        let path = input.at(index);
        let value = self.entries.text_or_default(&path, input).to_string();
        self.faults.push(Fault::new(&path, input, &value, allowed.into(), remedy.into()));
    }

    /// The unit in which `input` was typed, for words about it.
    pub(super) fn unit_of(&self, input: &Input, index: usize) -> &'static Unit {
        typed_unit(input.kind().unwrap_or(Kind::Plain), self.entries.text_or_default(&input.at(index), input))
    }
}

/// The unit in which `text` was typed, even where its number cannot be read; else that of a bare number.
fn typed_unit(kind: Kind, text: &str) -> &'static Unit {
    if let Ok(measure) = Measure::parse(kind, text) {
        return measure.unit;
    }
    let last = text.rsplit_once(' ').map_or("", |(_, last)| last);
    Unit::named(kind, last).unwrap_or_else(|| kind.bare_unit())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::setup::Setup;

    #[test]
    fn a_fault_speaks_in_the_unit_that_was_typed() {
        let cases = [
            ("wide in", "0.0394 in to 78.7402 in"),
            ("1.2.3 in", "0.0394 in to 78.7402 in"),
            ("99 in", "0.0394 in to 78.7402 in"),
            ("wide", "1 mm to 2000 mm"),
            ("12 psi", "1 mm to 2000 mm"),
            ("", "1 mm to 2000 mm"),
        ];
        for (typed, allowed) in cases {
            let mut entries = Entries::default();
            entries.set("part.length", typed);
            let faults = Setup::read(&entries).unwrap_err();
            assert_eq!(faults[0].allowed, allowed, "{typed:?}");
        }
    }
}
