//! Findings as JSON: values in SI with the unit beside them.

use alloc::vec::Vec;

use serde::ser::{Serialize, SerializeStruct, Serializer};

use super::{Finding, Sense, Step, Term};
use crate::text::Text;

#[derive(serde::Serialize)]
struct LimitOut<'a> {
    value: f64,
    sense: Sense,
    origin: &'a Text,
}

#[derive(serde::Serialize)]
struct StepOut<'a> {
    says: &'a str,
    formula: &'a str,
    given: Vec<TermOut<'a>>,
    result: TermOut<'a>,
    source: &'a str,
}

#[derive(serde::Serialize)]
struct TermOut<'a> {
    symbol: &'a str,
    value: f64,
    unit: &'a str,
}

impl<'a> From<&'a Term> for TermOut<'a> {
    fn from(term: &'a Term) -> Self {
        Self { symbol: term.symbol, value: term.value, unit: term.kind.si_symbol() }
    }
}

impl<'a> From<&'a Step> for StepOut<'a> {
    fn from(step: &'a Step) -> Self {
        Self {
            says: step.says,
            formula: step.formula,
            given: step.given.iter().map(TermOut::from).collect(),
            result: (&step.result).into(),
            source: step.source,
        }
    }
}

impl Serialize for Finding {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let limit =
            self.limit.as_ref().map(|limit| LimitOut { value: limit.value, sense: limit.sense, origin: &limit.origin });
        let steps: Vec<StepOut<'_>> = self.steps.iter().map(StepOut::from).collect();
        let mut out = serializer.serialize_struct("Finding", 12)?;
        out.serialize_field("id", &self.id)?;
        out.serialize_field("name", &self.name)?;
        out.serialize_field("value", &self.value.as_ref().ok())?;
        out.serialize_field("unit", self.kind.si_symbol())?;
        out.serialize_field("refused", &self.value.as_ref().err())?;
        out.serialize_field("band", &self.band)?;
        out.serialize_field("limit", &limit)?;
        out.serialize_field("margin", &self.margin())?;
        out.serialize_field("mark", &self.mark())?;
        out.serialize_field("caution", &self.caution)?;
        out.serialize_field("entry", &self.entry)?;
        out.serialize_field("steps", &steps)?;
        out.end()
    }
}
