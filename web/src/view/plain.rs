//! Results as plain text with their units, to be copied into whatever is being written.

use std::fmt::Write;

use holdround_core::findings::{Finding, Findings, Term, Weight};

use super::{mark, steps};
use crate::language::{fill_plain, said, say};
use crate::units::Units;

/// What stands below every copied result.
const HEED: &str = "Calculated, no certificate. The chuck's plate and manual rule; check the grip with a gauge.";

/// One finding with how it was reached.
pub(crate) fn finding(finding: &Finding, units: Units) -> String {
    let mut text = line(finding, units);
    if let Some(caution) = &finding.caution {
        let _written = writeln!(text, "{}", said(caution));
    }
    for step in &finding.steps {
        let _written = writeln!(text, "\n{}\n{}", say(step.says), say(step.formula));
        if !step.given.is_empty() {
            let given: Vec<String> = step.given.iter().map(|given| term(given, units)).collect();
            text += &fill_plain("with {}", &[&given.join(", ")]);
            text.push('\n');
        }
        let source = fill_plain("Source: {}", &[&say(step.source)]);
        let _written = writeln!(text, "{}\n{source}", term(&step.result, units));
    }
    text + "\n" + say(HEED) + "\n"
}

/// Every finding in a line, and what forbids the job.
pub(crate) fn all(found: &Findings, units: Units) -> String {
    let mut text = String::new();
    if !found.job.is_empty() {
        let _written = writeln!(text, "{}\n", found.job);
    }
    for caution in found.cautions.iter().filter(|caution| caution.weight == Weight::Stop) {
        let _written = writeln!(text, "{}", fill_plain("Stop. {}", &[&said(&caution.says)]));
    }
    for one in &found.findings {
        text.push_str(&line(one, units));
    }
    text + "\n" + say(HEED) + "\n"
}

/// Name, value, limit and how it stands to that.
fn line(finding: &Finding, units: Units) -> String {
    let mut text = format!("{}: {}", said(&finding.name), steps::value(finding, units));
    if let Some(held) = &finding.limit {
        text += &fill_plain(", {}, from {}", &[&steps::limit(finding, held, units), &said(&held.origin)]);
    }
    if finding.value.is_ok() && finding.limit.is_some() {
        let _written = write!(text, ": {}", mark::word(finding));
    }
    if let Err(why) = &finding.value {
        let _written = write!(text, " {}", fill_plain("No figure is given. {}", &[&said(why)]));
    }
    text + "\n"
}

fn term(term: &Term, units: Units) -> String {
    format!("{} = {}", say(term.symbol), units.show(term.kind, term.value))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::desk::Desk;
    use holdround_core::setup::Entries;

    #[test]
    fn a_copied_result_has_its_unit_its_limit_and_the_caution() {
        let desk = Desk::worked_out(Entries::default());
        let (_, found) = desk.good.as_ref().unwrap();
        let grip = found.get("speed.set").unwrap();
        let text = finding(grip, desk.units);
        assert!(text.contains("rev/min, at most "), "value and limit have their unit: {text}");
        assert!(text.contains("Source: ") && text.ends_with(&format!("{HEED}\n")), "source and caution: {text}");
        let all = all(found, desk.units);
        for one in &found.findings {
            assert!(all.contains(&said(&one.name)), "{} is among all", one.name);
        }
    }
}
