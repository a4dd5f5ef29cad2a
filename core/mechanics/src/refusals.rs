//! Every refusal says in words what is wrong, with the figures given and allowed where it has them.

use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt::Display;

use crate::contact::ContactError;
use crate::cutting::CuttingError;
use crate::grip::{GripError, Input};
use crate::hold::HoldError;
use crate::indicator::IndicatorError;
use crate::jaw::{Dimension, JawError};
use crate::jaw_spring::ColumnError;
use crate::part::{PartError, ProfileError, TooLarge};
use crate::ring::RingError;
use crate::roundness::RoundnessError;
use crate::taper::TaperError;

/// Each refusal holds its words, and no two are the same.
fn told(refusals: &[(&dyn Display, &[&str])]) {
    let mut lines: Vec<String> = Vec::new();
    for (refusal, words) in refusals {
        let line = refusal.to_string();
        for word in *words {
            assert!(line.contains(word), "{word:?} is not in {line:?}");
        }
        assert!(!lines.contains(&line), "two refusals read {line:?}");
        lines.push(line);
    }
}

#[test]
fn cuts_and_holds_name_what_is_out_of_range() {
    use CuttingError as C;
    use HoldError as H;
    told(&[
        (&C::SpecificForce, &["cutting resistance"]),
        (&C::ChipExponent, &["exponent"]),
        (&C::Depth, &["depth of cut"]),
        (&C::Feed, &["feed"]),
        (&C::Approach, &["edge angle"]),
        (&C::Width, &["groove"]),
        (&C::Diameter, &["drill"]),
        (&C::Power, &["power"]),
        (&C::Efficiency, &["efficiency"]),
        (&C::Speed, &["speed"]),
        (&C::Correction, &["wear"]),
        (&C::Ratios, &["shares"]),
        (&C::Tool, &["tool"]),
        (&C::Overflow, &["too large"]),
        (&H::Jaws, &["1 to 64"]),
        (&H::HalfAngle, &["share of the circle"]),
        (&H::Radius, &["gripped radius"]),
        (&H::Length, &["grip length"]),
        (&H::Force, &["a force"]),
        (&H::Points, &["points", "64"]),
        (&H::Contact, &["contact point"]),
        (&H::Friction, &["friction"]),
        (&H::Seat, &["seat"]),
        (&H::Wrench, &["load"]),
        (&H::Unsettled, &["not held"]),
    ]);
}

#[test]
fn grips_name_what_was_given_and_what_is_allowed() {
    use GripError as G;
    let range = G::OutOfRange { input: Input::Efficiency, value: 1.25, least: 0.0, greatest: 1.0 };
    told(&[
        (&range, &["efficiency", "1.25", "0 and 1"]),
        (&G::RodFillsBore { rod: 0.06, bore: 0.05 }, &["0.06 m", "0.05 m"]),
        (&G::TooFewReadings { given: 1 }, &["1 readings", "two"]),
        (&G::OnePressureOnly, &["one pressure"]),
        (&G::OneSpeedOnly, &["one speed"]),
        (&G::GripDoesNotRise { slope: -0.25 }, &["-0.25 N/Pa"]),
        (&G::OutsideReadings { pressure: 9e5, least: 1e5, greatest: 5e5 }, &["900000", "100000 to 500000"]),
        (&G::NoGrip { pressure: 2e5 }, &["200000 Pa"]),
        (&G::RestGripTooSmall { needed: 27e3, rest_grip: 20e3 }, &["20000 N", "27000 N"]),
    ]);
}

#[test]
fn jaws_name_what_was_given_and_what_is_allowed() {
    use JawError as J;
    let range = J::OutOfRange { dimension: Dimension::Height, value: -0.5, least: 0.001, greatest: 2.0 };
    let overlap = J::Overlap { dimension: Dimension::Width, value: 0.125, limit: 0.0625 };
    told(&[
        (&range, &["height", "-0.5", "0.001 and 2"]),
        (&J::WiderThanGrip { width: 0.25, limit: 0.125 }, &["0.25 m", "0.125 m"]),
        (&J::NothingBehindFace { length: 0.0625, limit: 0.07 }, &["0.0625 m", "0.07 m"]),
        (&J::BoredThrough { depth: 0.05, limit: 0.04 }, &["0.05 m", "0.04 m"]),
        (&J::CrossesAxis { reach: 0.08, limit: 0.07 }, &["0.08 m", "0.07 m"]),
        (&overlap, &["width", "0.125", "0.0625"]),
        (&J::CutAway { saw_cut: 0.03, limit: 0.02 }, &["0.03 m", "0.02 m"]),
        (&ColumnError::Section { section: 1 }, &["Section 2"]),
        (&ColumnError::Material, &["elastic"]),
        (&ColumnError::Stiffness, &["master jaw"]),
    ]);
}

#[test]
fn parts_count_their_steps_and_surfaces_from_one() {
    use PartError as P;
    use ProfileError as R;
    told(&[
        (&R::NoSteps, &["no steps"]),
        (&R::TooManySteps { count: 250 }, &["250", "at most 200"]),
        (&R::NotADimension { step: 1 }, &["Step 2", "number"]),
        (&R::NoLength { step: 2 }, &["Step 3", "length"]),
        (&R::Crossed { step: 0 }, &["Step 1", "no wall"]),
        (&R::TooThin { step: 3, wall: 0.25e-3 }, &["Step 4", "0.25 mm"]),
        (&R::Gap { step: 4 }, &["Step 5", "step 4"]),
        (&P::Material, &["elastic"]),
        (&P::Density, &["0.1 and 10"]),
        (&P::Jaws { jaws: 13 }, &["13 jaws", "2 to 12"]),
        (&P::BandOffPart, &["not lie on the part"]),
        (&P::BandNotCylinder, &["one cylinder"]),
        (&P::NoSurface { surface: 2 }, &["Surface 3"]),
        (&P::from(TooLarge { nodes: 7001 }), &["7001", "at most 6000"]),
        (&P::Singular { order: 6 }, &["slender", "order 6"]),
    ]);
}

#[test]
fn rings_contacts_tapers_and_readings_say_what_is_missing() {
    use IndicatorError as I;
    use TaperError as T;
    told(&[
        (&RingError::Radii, &["wall"]),
        (&RingError::Material, &["Poisson"]),
        (&RingError::Unbalanced, &["once-round"]),
        (&RingError::NoBore, &["no bore"]),
        (&RingError::Jaws, &["2 to 6"]),
        (&RingError::Arc, &["overlaps"]),
        (&RingError::Load, &["force"]),
        (&RingError::Spin, &["density"]),
        (&RingError::NotFinite, &["not finite"]),
        (&ContactError::Arc, &["overlap"]),
        (&T::from(ContactError::Force), &["force of a jaw"]),
        (&ContactError::Gap, &["gap", "whole band"]),
        (&ContactError::Give, &["give of the jaw"]),
        (&ContactError::Compliance, &["compliance"]),
        (&T::NoTaper, &["No taper"]),
        (&T::Reading(0), &["Reading 1", "bored diameter"]),
        (&T::Contradiction(1), &["Reading 2", "contradicts"]),
        (&T::Rigid(2), &["Reading 3", "stiffer than rigid"]),
        (&T::Loose(3), &["Reading 4", "thirty times softer"]),
        (&T::Blind, &["does not tell"]),
        (&I::Stations(5), &["5 stations", "6 to 36"]),
        (&I::NotANumber, &["not a number"]),
        (&I::TooFew { given: 5, needed: 7 }, &["5 stations", "7 are needed"]),
        (&I::Gap, &["side by side"]),
        (&I::SameGrip(0.95), &["half of it"]),
        (&I::Different, &["different stations"]),
        (&RoundnessError::TooFew, &["four readings"]),
        (&RoundnessError::Unpaired, &["differ in number"]),
        (&RoundnessError::NotFinite, &["usable number"]),
        (&RoundnessError::RepeatedAngle, &["same angle"]),
        (&RoundnessError::Gap, &["half the circle"]),
    ]);
}
