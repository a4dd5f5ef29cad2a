//! Set-ups that were on the sheet before, kept by the browser: the last few jobs, each with the day it was left.

use holdround_core::setup::Entries;

use super::keep;

/// Where they are kept: a line each, the day, a space, and the link.
const KEY: &str = "holdround.recent.1";
/// How many are kept.
const MOST: usize = 8;

/// A set-up and the day it was left.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Recent {
    /// As in `2026-05-01`.
    pub(crate) day: String,
    /// The set-up.
    pub(crate) entries: Entries,
}

impl Recent {
    /// What it is called.
    pub(crate) fn name(&self) -> &str {
        name(&self.entries)
    }
}

fn name(entries: &Entries) -> &str {
    entries.get("job.name").map_or("", str::trim)
}

/// What the browser keeps; what cannot be read is left out.
pub(super) fn read() -> Vec<Recent> {
    parse(&keep::kept(KEY).unwrap_or_default())
}

fn parse(text: &str) -> Vec<Recent> {
    let one = |line: &str| {
        let (day, link) = line.split_once(' ')?;
        Some(Recent { day: day.to_owned(), entries: Entries::from_link(link).ok()? })
    };
    text.lines().filter_map(one).collect()
}

fn told(recent: &[Recent]) -> String {
    recent.iter().map(|one| format!("{} {}\n", one.day, one.entries.to_link())).collect()
}

/// Notes that these were left on `day`, and gives all there are. Another window may have noted others since.
pub(super) fn note<'a>(left: impl Iterator<Item = &'a Entries>, day: &str) -> Vec<Recent> {
    let mut recent = read();
    let news = left.filter(|entries| noted(&mut recent, entries, day)).count();
    if news > 0 {
        keep::put(KEY, &told(&recent));
    }
    recent
}

/// Puts `entries` in front, in place of an earlier state of the same named job; false if they are there already.
fn noted(recent: &mut Vec<Recent>, entries: &Entries, day: &str) -> bool {
    if recent.iter().any(|one| one.entries == *entries) {
        return false;
    }
    recent.retain(|one| name(entries).is_empty() || one.name() != name(entries));
    recent.insert(0, Recent { day: day.to_owned(), entries: entries.clone() });
    recent.truncate(MOST);
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    fn job(name: &str, length: &str) -> Entries {
        let mut entries = Entries::default();
        entries.set("job.name", name);
        entries.set("part.length", length);
        entries
    }

    #[test]
    fn the_last_jobs_are_kept_by_name_and_the_oldest_goes() {
        let mut recent = Vec::new();
        for at in 0..MOST + 2 {
            assert!(noted(&mut recent, &job(&format!("Job {at}"), "30 mm"), "2026-05-01"), "job {at} is new");
        }
        assert_eq!(recent.len(), MOST, "no more than these");
        assert!(!recent.iter().any(|one| one.name() == "Job 0"), "the oldest went");
        assert!(noted(&mut recent, &job("Job 5", "40 mm"), "2026-05-02"), "changed since");
        assert_eq!(recent.iter().filter(|one| one.name() == "Job 5").count(), 1, "a job stands there once");
        assert_eq!(recent[0].entries, job("Job 5", "40 mm"), "as it was left last");
        assert!(!noted(&mut recent, &job("Job 5", "40 mm"), "2026-05-03"), "the same again is no news");
        assert_eq!(parse(&told(&recent)), recent, "what is kept can be read");
    }

    #[test]
    fn jobs_without_a_name_are_told_apart_by_what_is_in_them() {
        let mut recent = Vec::new();
        noted(&mut recent, &job("", "30 mm"), "2026-05-01");
        noted(&mut recent, &job(" ", "40 mm"), "2026-05-01");
        assert_eq!(recent.len(), 2, "two jobs");
        assert_eq!(parse("junk\n2026-05-01 2-junk\n"), Vec::new(), "junk is left out");
    }
}
