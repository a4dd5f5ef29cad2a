//! Between what stands in a field and what is stored: the number as typed, with the unit it was typed in.

use holdround_core::quantity::{Kind, Measure, MeasureError, Unit};
use holdround_core::setup::bracketed;

/// What is stored when `typed` stands in a field whose label names `unit`.
///
/// A unit typed with the number wins over the label's. Text that is no number is stored with the
/// label's unit all the same, so that it comes back as it was typed.
pub(crate) fn stored(kind: Kind, unit: &Unit, typed: &str) -> String {
    let typed = typed.trim();
    if typed.is_empty() {
        return String::new();
    }
    if let Some(assumed) = bracketed(typed) {
        return format!("({})", stored(kind, unit, assumed));
    }
    let labelled = format!("{typed} {}", unit.symbol);
    if Measure::parse(kind, &labelled).is_ok() {
        return labelled.trim_end().to_owned();
    }
    match Measure::parse(kind, typed) {
        Ok(_) | Err(MeasureError::Unit(_)) => typed.to_owned(),
        Err(MeasureError::Number(_)) => labelled.trim_end().to_owned(),
    }
}

/// What stands in a field whose label names `unit` when `text` is stored.
pub(crate) fn in_field(kind: Kind, unit: &Unit, text: &str) -> String {
    if let Some(assumed) = bracketed(text) {
        return format!("({})", in_field(kind, unit, assumed));
    }
    if let Ok(measure) = Measure::parse(kind, text) {
        return measure.text_in(unit);
    }
    let without_unit = text.strip_suffix(unit.symbol).filter(|_| !unit.symbol.is_empty());
    without_unit.and_then(|rest| rest.strip_suffix(' ')).unwrap_or(text).to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unit(kind: Kind, symbol: &str) -> &'static Unit {
        Unit::named(kind, symbol).unwrap()
    }

    #[test]
    fn what_was_typed_comes_back_after_a_change_of_units_and_back() {
        let (inch, millimetre) = (unit(Kind::Length, "in"), unit(Kind::Length, "mm"));
        for typed in ["3.5", "3.50", "3,5", "2 1/4", "15/16"] {
            let kept = stored(Kind::Length, inch, typed);
            assert_ne!(in_field(Kind::Length, millimetre, &kept), typed, "{typed} in is another number in mm");
            assert_eq!(in_field(Kind::Length, inch, &kept), typed, "{typed} must come back as typed");
        }
    }

    #[test]
    fn a_unit_typed_with_the_number_wins_over_the_label() {
        let millimetre = unit(Kind::Length, "mm");
        assert_eq!(stored(Kind::Length, millimetre, "4 in"), "4 in", "inches stay inches");
        assert_eq!(in_field(Kind::Length, millimetre, "4 in"), "101.6", "and are shown in the label's unit");
        assert_eq!(stored(Kind::Plain, unit(Kind::Plain, ""), "10 %"), "10 %", "per cent of a plain number");
    }

    #[test]
    fn brackets_around_a_number_stay_around_it() {
        let (inch, millimetre) = (unit(Kind::Length, "in"), unit(Kind::Length, "mm"));
        let kept = stored(Kind::Length, inch, "(2 1/4)");
        assert_eq!(kept, "(2 1/4 in)", "the unit goes inside");
        assert_eq!(in_field(Kind::Length, inch, &kept), "(2 1/4)", "and comes back as typed");
        assert_eq!(in_field(Kind::Length, millimetre, &kept), "(57.15)", "in another unit too");
        assert_eq!(in_field(Kind::Length, inch, &stored(Kind::Length, inch, "((")), "((", "half a bracket is text");
    }

    #[test]
    fn what_is_no_number_is_kept_as_typed() {
        let millimetre = unit(Kind::Length, "mm");
        for typed in ["wide", "1.2.3", "-", "1,234.5", "12 psi", "1/0"] {
            let kept = stored(Kind::Length, millimetre, typed);
            assert!(Measure::parse(Kind::Length, &kept).is_err(), "{typed} must stay a fault");
            assert_eq!(in_field(Kind::Length, millimetre, &kept), typed, "{typed} must come back as typed");
        }
        assert_eq!(stored(Kind::Length, millimetre, "  "), "", "nothing is nothing");
    }
}
