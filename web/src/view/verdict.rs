//! The verdict in words: what the title block says large, and what is read aloud.

use std::fmt::Write;

use holdround_core::findings::{Finding, Findings, Mark, Weight};
use holdround_core::{HEADLINES, QUESTION};

use super::{making, steps, window};
use crate::page::desk::Desk;

/// How many findings on making the jaws stand there at most, and only while they are beyond their limits.
const OF_MAKING: usize = 2;

/// The findings of the title block.
pub(crate) fn headlines(findings: &Findings) -> impl Iterator<Item = &Finding> {
    let of_making = making::in_the_way(findings).take(OF_MAKING);
    HEADLINES.iter().filter_map(|id| findings.get(id)).chain(of_making)
}

/// Why the job must not run, where the lines of the title block do not say it.
pub(crate) fn reason(findings: &Findings) -> Option<String> {
    if headlines(findings).any(|finding| finding.mark() == Mark::Beyond) {
        return None;
    }
    if let Some((_, why)) = making::held_up(findings) {
        return Some(why);
    }
    let beyond = findings.findings.iter().find(|finding| finding.mark() == Mark::Beyond);
    let stop = findings.cautions.iter().find(|caution| caution.weight == Weight::Stop);
    stop.map(|caution| caution.says.clone())
        .or_else(|| beyond.map(|finding| format!("{} is beyond its limit.", finding.name)))
}

/// The verdict on valid findings, and on the window once it is traced: one mark and a few words.
pub(crate) fn of(desk: &Desk, findings: &Findings) -> (Mark, &'static str) {
    let any = |mark: Mark| findings.findings.iter().any(|finding| finding.mark() == mark);
    if findings.cautions.iter().any(|caution| caution.weight == Weight::Stop) || any(Mark::Beyond) {
        (Mark::Beyond, "Do not run")
    } else if let Some(refused) = headlines(findings).find(|finding| finding.mark() == Mark::Refused) {
        (Mark::Refused, if refused.id == QUESTION { "Answer first" } else { "No verdict" })
    } else if findings.findings.iter().any(|finding| finding.mark() == Mark::Close && !making::is_of_making(finding))
        || window::at_worst(desk).is_some_and(|(good, _)| !good)
    {
        (Mark::Close, "Near a limit")
    } else {
        (Mark::Within, "Within limits")
    }
}

/// The sentence that is read aloud once a change has settled.
pub(crate) fn spoken(desk: &Desk) -> String {
    if let Some(fault) = desk.faults.first() {
        let others = desk.faults.len() - 1;
        let more = if others == 0 { String::new() } else { format!(" and {others} more") };
        return format!("No verdict. Correct {}{more}.", fault.name);
    }
    let Some((_, findings)) = &desk.good else { return String::new() };
    let mut words = format!("{}.", of(desk, findings).1);
    for finding in headlines(findings).take(3) {
        let _written = write!(words, " {} {}", finding.name, steps::value(finding, desk.units));
        if let Some(limit) = &finding.limit {
            let _written = write!(words, ", {}", steps::limit(finding, limit, desk.units));
        }
        words.push('.');
    }
    words
}
