//! What the findings must show for a lesson's task to be done.

use crate::findings::{Findings, Mark, Sense};
use crate::quantity::Kind;
use crate::text::Text;

/// What one finding must show.
#[derive(Clone, Copy, Debug)]
pub struct Goal {
    /// The finding.
    pub finding: &'static str,
    /// What it is called for short.
    pub name: &'static str,
    /// What it must show.
    pub want: Want,
}

/// What a finding must show.
#[derive(Clone, Copy, Debug)]
pub enum Want {
    /// Its own limit is kept.
    Kept,
    /// At most this, SI.
    AtMost(f64),
    /// At least this, SI.
    AtLeast(f64),
    /// As much as another finding, but for this share of it either way.
    Near(&'static str, f64),
}

/// How a goal stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// The value now, or why there is none.
    pub value: Result<f64, Text>,
    /// The kind of quantity.
    pub kind: Kind,
    /// The least that is wanted, if there is a least.
    pub least: Option<f64>,
    /// The most that is wanted, if there is a most.
    pub most: Option<f64>,
    /// Whether it is met.
    pub met: bool,
}

impl Goal {
    /// How it stands in these findings.
    #[must_use]
    pub fn seen(&self, findings: &Findings) -> Seen {
        let none =
            |why: &'static str| Seen { value: Err(why.into()), kind: Kind::Plain, least: None, most: None, met: false };
        let Some(finding) = findings.get(self.finding) else {
            return none("There is no such figure for this set-up.");
        };
        let (least, most) = match (self.want, &finding.limit) {
            (Want::AtMost(most), _) => (None, Some(most)),
            (Want::AtLeast(least), _) => (Some(least), None),
            (Want::Near(other, share), _) => match findings.value(other) {
                Some(value) => (Some(value * (1.0 - share)), Some(value * (1.0 + share))),
                None => return none("There is nothing to hold it against."),
            },
            (Want::Kept, Some(limit)) if limit.sense == Sense::AtMost => (None, Some(limit.value)),
            (Want::Kept, Some(limit)) => (Some(limit.value), None),
            (Want::Kept, None) => return none("Nothing limits it in this set-up."),
        };
        let met = match (&finding.value, self.want) {
            (Err(_), _) => false,
            // As the page marks it.
            (Ok(_), Want::Kept) => matches!(finding.mark(), Mark::Within | Mark::Close),
            (Ok(value), _) => least.is_none_or(|least| *value >= least) && most.is_none_or(|most| *value <= most),
        };
        Seen { value: finding.value.clone(), kind: finding.kind, least, most, met }
    }
}
