//! Figures in a lesson's words: `{is hold.factor}` stands for what the engines found.
//!
//! `was` and `is` are the value at the start and now, `limit` is what it is held against now, `most` the upper end of
//! its range now.

use alloc::string::String;

use crate::findings::{Finding, Findings};
use crate::quantity::Kind;

/// `text` with its figures as `show` writes them; none where the findings do not have one.
///
/// ```
/// use holdround_core::{evaluate, lessons::figures, setup::{Entries, Setup}};
/// let findings = evaluate(&Setup::read(&Entries::default()).unwrap());
/// let fill = |text| figures::fill(text, &findings, &findings, |_, value| format!("{value:.1}"));
/// assert_eq!(fill("wanted: {limit hold.factor}"), Some("wanted: 2.0".to_string()));
/// assert_eq!(fill("{is nothing}"), None);
/// ```
pub fn fill(text: &str, was: &Findings, is: &Findings, show: impl Fn(Kind, f64) -> String) -> Option<String> {
    let mut filled = String::new();
    let mut pieces = text.split('{');
    filled.push_str(pieces.next()?);
    for piece in pieces {
        let (figure, rest) = piece.split_once('}')?;
        let (which, id) = figure.split_once(' ')?;
        let finding = if which == "was" { was } else { is }.get(id)?;
        filled.push_str(&show(finding.kind, value(which, finding)?));
        filled.push_str(rest);
    }
    Some(filled)
}

fn value(which: &str, finding: &Finding) -> Option<f64> {
    match which {
        "was" | "is" => finding.value.as_ref().ok().copied(),
        "limit" => finding.limit.as_ref().map(|limit| limit.value),
        "most" => finding.band.map(|(_, most)| most),
        _ => None,
    }
}
