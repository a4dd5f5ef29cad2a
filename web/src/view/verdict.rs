//! The verdict in words: what the title block says large, and what is read aloud.

use std::fmt::Write;

use holdround_core::findings::{Finding, Findings, Mark, Weight};
use holdround_core::{HEADLINES, QUESTION};

use super::{making, steps, window};
use crate::language::{fill_plain, said, say};
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
    stop.map(|caution| said(&caution.says))
        .or_else(|| beyond.map(|finding| fill_plain("{} is beyond its limit.", &[&said(&finding.name)])))
}

/// The verdict on valid findings, and on the window once it is traced: one mark and a few words.
pub(crate) fn of(desk: &Desk, findings: &Findings) -> (Mark, &'static str) {
    let any = |mark: Mark| findings.findings.iter().any(|finding| finding.mark() == mark);
    if findings.cautions.iter().any(|caution| caution.weight == Weight::Stop) || any(Mark::Beyond) {
        (Mark::Beyond, say("Do not run"))
    } else if let Some(refused) = headlines(findings).find(|finding| finding.mark() == Mark::Refused) {
        (Mark::Refused, if refused.id == QUESTION { say("Answer first") } else { say("No verdict") })
    } else if findings.findings.iter().any(|finding| finding.mark() == Mark::Close && !making::is_of_making(finding))
        || window::at_worst(desk).is_some_and(|(good, _)| !good)
    {
        (Mark::Close, say("Near a limit"))
    } else {
        (Mark::Within, say("Within limits"))
    }
}

/// The sentence that is read aloud once a change has settled.
pub(crate) fn spoken(desk: &Desk) -> String {
    if let Some(fault) = desk.faults.first() {
        let (name, others) = (said(&fault.name), desk.faults.len() - 1);
        return match others {
            0 => fill_plain("No verdict. Correct {}.", &[&name]),
            _ => fill_plain("No verdict. Correct {} and {} more.", &[&name, &others]),
        };
    }
    let Some((_, findings)) = &desk.good else { return String::new() };
    let mut words = format!("{}.", of(desk, findings).1);
    for finding in headlines(findings).take(3) {
        let _written = write!(words, " {} {}", said(&finding.name), steps::value(finding, desk.units));
        if let Some(limit) = &finding.limit {
            let _written = write!(words, ", {}", steps::limit(finding, limit, desk.units));
        }
        words.push('.');
    }
    words
}
