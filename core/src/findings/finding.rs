//! One result: its value or why there is none, its limit, and the steps by which it was reached.

use alloc::string::String;
use alloc::vec::Vec;

use crate::quantity::Kind;
use crate::text::Text;

/// One result of the engines.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Its name in data: `hold.factor`, `cuts.0.force`.
    pub id: String,
    /// Its name as shown.
    pub name: Text,
    /// The kind of quantity.
    pub kind: Kind,
    /// The value in SI, or why there is none.
    pub value: Result<f64, Text>,
    /// Least and greatest value, where inputs or model leave a range.
    pub band: Option<(f64, f64)>,
    /// What it is held against.
    pub limit: Option<Limit>,
    /// What to beware of in acting on it.
    pub caution: Option<Text>,
    /// The entry at which a message about it stands: what moves it most directly.
    pub entry: Option<&'static str>,
    /// How it was reached.
    pub steps: Vec<Step>,
    /// What would change it most, most first; none while that is not worked out.
    pub moved_by: Option<Vec<Moved>>,
}

/// An input changed a little by itself, and what that does to a value.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// The path of the input.
    pub entry: String,
    /// Its name.
    pub name: &'static str,
    /// What it is changed to, as typed.
    pub to: String,
    /// By how much the value changes, SI.
    pub by: f64,
}

/// What a value is held against.
#[derive(Clone, Debug, PartialEq)]
pub struct Limit {
    /// The limit in SI.
    pub value: f64,
    /// Which side of it is allowed.
    pub sense: Sense,
    /// Where the limit comes from.
    pub origin: Text,
}

/// Which side of a limit is allowed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
pub enum Sense {
    /// The value may not exceed the limit.
    AtMost,
    /// The value may not fall short of the limit.
    AtLeast,
}

/// How a value stands to its limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
pub enum Mark {
    /// Within its limit with room to spare.
    Within,
    /// Within its limit by less than a tenth of it.
    Close,
    /// Beyond its limit.
    Beyond,
    /// Told for information; nothing limits it.
    Told,
    /// There is no value, and the reason is told.
    Refused,
}

/// One step of a calculation.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What the step does, in words.
    pub says: &'static str,
    /// The formula.
    pub formula: &'static str,
    /// The numbers put in.
    pub given: Vec<Term>,
    /// What comes out.
    pub result: Term,
    /// Where the formula comes from.
    pub source: &'static str,
}

/// A symbol with its value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Term {
    /// The symbol, as in the formula.
    pub symbol: &'static str,
    /// Its value in SI.
    pub value: f64,
    /// Its kind of quantity.
    pub kind: Kind,
}

/// A symbol with its value.
///
/// ```
/// use holdround_core::{findings::term, quantity::Kind};
/// assert_eq!(term("F", 2500.0, Kind::Force).symbol, "F");
/// ```
#[must_use]
pub const fn term(symbol: &'static str, value: f64, kind: Kind) -> Term {
    Term { symbol, value, kind }
}

/// Share of a limit within which a value is called close to it.
const CLOSE: f64 = 0.1;
/// Share of a limit that rounding may take.
const ROUNDING: f64 = 1e-9;

impl Finding {
    /// A result without limit, caution or steps yet. A value that is not finite becomes a refusal.
    #[must_use]
    pub fn new(id: impl Into<String>, name: impl Into<Text>, kind: Kind, value: f64) -> Self {
        Self::plain(id.into(), name.into(), kind, value)
    }

    /// One function for whatever id and name are: the page would hold a copy for each kind.
    #[inline(never)]
    fn plain(id: String, name: Text, kind: Kind, value: f64) -> Self {
        let value =
            if value.is_finite() { Ok(value) } else { Err("The numbers entered have no finite result.".into()) };
        Self {
            id,
            name,
            kind,
            value,
            band: None,
            limit: None,
            caution: None,
            entry: None,
            steps: Vec::new(),
            moved_by: None,
        }
    }

    /// A refusal: no value, and why.
    #[must_use]
    #[inline(never)]
    pub fn refused(id: impl Into<String>, name: impl Into<Text>, kind: Kind, why: impl Into<Text>) -> Self {
        Self { value: Err(why.into()), ..Self::new(id, name, kind, 0.0) }
    }

    /// Held to at most `value`.
    #[must_use]
    #[inline(never)]
    pub fn at_most(mut self, value: f64, origin: impl Into<Text>) -> Self {
        self.limit = Some(Limit { value, sense: Sense::AtMost, origin: origin.into() });
        self
    }

    /// Held to at least `value`.
    #[must_use]
    #[inline(never)]
    pub fn at_least(mut self, value: f64, origin: impl Into<Text>) -> Self {
        self.limit = Some(Limit { value, sense: Sense::AtLeast, origin: origin.into() });
        self
    }

    /// With a caution.
    #[must_use]
    #[inline(never)]
    pub fn caution(mut self, text: impl Into<Text>) -> Self {
        self.caution = Some(text.into());
        self
    }

    /// With the entry at which a message about it stands.
    #[must_use]
    #[inline(never)]
    pub fn entry(mut self, path: &'static str) -> Self {
        self.entry = Some(path);
        self
    }

    /// With the range that inputs or model leave.
    #[must_use]
    #[inline(never)]
    pub fn band(mut self, least: f64, most: f64) -> Self {
        self.band = Some((least, most));
        self
    }

    /// With one more step.
    #[must_use]
    #[inline(never)]
    pub fn step(mut self, step: Step) -> Self {
        self.steps.push(step);
        self
    }

    /// What is left to the limit, as a share of it; negative beyond it. None without value or limit.
    ///
    /// ```
    /// use holdround_core::findings::Finding;
    /// use holdround_core::quantity::Kind;
    /// let speed = Finding::new("speed", "Speed", Kind::RotationalSpeed, 90.0).at_most(120.0, "the plate");
    /// assert_eq!(speed.margin(), Some(0.25));
    /// ```
    #[must_use]
    pub fn margin(&self) -> Option<f64> {
        let (value, limit) = (self.value.as_ref().ok()?, self.limit.as_ref()?);
        let room = match limit.sense {
            Sense::AtMost => limit.value - value,
            Sense::AtLeast => value - limit.value,
        };
        (limit.value > 0.0).then(|| room / limit.value)
    }

    /// How the value stands to its limit.
    #[must_use]
    pub fn mark(&self) -> Mark {
        match (&self.value, &self.limit, self.margin()) {
            (Err(_), ..) => Mark::Refused,
            (_, None, _) => Mark::Told,
            (Ok(_), Some(_), Some(margin)) if margin >= CLOSE => Mark::Within,
            (Ok(_), Some(_), Some(margin)) if margin >= -ROUNDING => Mark::Close,
            _ => Mark::Beyond,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_follow_the_margin() {
        let value = |v: f64| Finding::new("x", "X", Kind::Plain, v);
        assert_eq!(value(1.0).mark(), Mark::Told, "no limit");
        assert_eq!(value(1.0).at_most(2.0, "").mark(), Mark::Within, "half of it left");
        assert_eq!(value(1.9).at_most(2.0, "").mark(), Mark::Close, "a twentieth left");
        assert_eq!(value(2.1).at_most(2.0, "").mark(), Mark::Beyond, "over");
        assert_eq!(value(2.1).at_least(2.0, "").mark(), Mark::Close, "just enough");
        assert_eq!(value(45.0 - 16.0 - 28.0).at_least(1.0 + 1e-12, "").mark(), Mark::Close, "short by rounding alone");
        assert_eq!(value(1.0).at_least(2.0, "").mark(), Mark::Beyond, "too little");
        assert_eq!(value(1.0).at_most(0.0, "").mark(), Mark::Beyond, "a limit of nothing is never kept");
        assert_eq!(value(f64::NAN).mark(), Mark::Refused, "no number leaves as NaN");
        assert_eq!(value(f64::INFINITY).mark(), Mark::Refused, "nor as infinity");
    }
}
