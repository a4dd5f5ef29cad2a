//! What must hold of any text at all, for each way a text comes in from outside. Run on kept and changed texts by
//! `tests/fuzz.rs`, and on texts that look for untrodden paths by the targets in `fuzz/`.

#![allow(clippy::panic, reason = "what must hold of any text and does not has failed")]

use holdround_core::record::{Records, to_text};
use holdround_core::setup::{Document, Entries, Fault, Setup};

use crate::program_reader::{read, run};

/// What one target asks of a text.
pub type Target = fn(&str);

/// Every target by its name, which is that of its folder of kept texts too.
pub const TARGETS: [(&str, Target); 4] =
    [("setup_json", setup_json), ("link", link), ("records", records), ("program", program)];

/// A set-up as JSON is refused in words, or means the same once written and read again.
pub fn setup_json(text: &str) {
    match Entries::from_json(text) {
        Ok(entries) => {
            assert_eq!(Entries::from_json(&entries.to_json()).as_ref(), Ok(&entries), "written and read again");
            readable(&entries);
        }
        Err(faults) => in_words(&faults),
    }
}

/// A link is refused in words, or means the same once written and read again.
pub fn link(text: &str) {
    match Entries::from_link(text) {
        Ok(entries) => readable(&entries),
        Err(error) => assert!((10..300).contains(&error.to_string().len()), "a reason in words: {error}"),
    }
}

/// A file of records is refused in words, or means the same once written and read again; merged with itself it stays
/// as it is.
pub fn records(text: &str) {
    let Some(Ok((records, _))) = Document::from_json(text).map(|document| Records::from_document(&document)) else {
        return;
    };
    let written = to_text(&records.to_document());
    let again = Document::from_json(&written).map(|document| Records::from_document(&document));
    assert_eq!(again, Some(Ok((records.clone(), Vec::new()))), "written and read again");
    let mut merged = records.clone();
    merged.merge(records.clone());
    assert_eq!(merged, records, "merged with itself");
}

/// A program is refused in words, or its moves have a place.
pub fn program(text: &str) {
    const MILLIMETRE: f64 = 1e-3;
    match read(text).and_then(|blocks| run(&blocks, MILLIMETRE)) {
        Ok(motions) => {
            let all = motions.iter().flat_map(|motion| motion.from.iter().chain(&motion.to).chain([&motion.feed]));
            assert!(all.into_iter().all(|number| number.is_finite()), "every move has a place: {motions:?}");
        }
        Err(why) => assert!(!why.is_empty(), "a reason in words"),
    }
}

/// Entries go the way of the page: into a set-up or into faults, and into a link and back. A link has room for more
/// than any set-up, not for every text.
fn readable(entries: &Entries) {
    if let Err(faults) = Setup::read(entries) {
        in_words(&faults);
    }
    let link = entries.to_link();
    if link.len() < 32_768 {
        assert_eq!(Entries::from_link(&link).as_ref(), Ok(entries), "as a link and back: {link}");
    }
}

fn in_words(faults: &[Fault]) {
    assert!(!faults.is_empty(), "a refusal has a fault");
    for fault in faults {
        let line = fault.to_string();
        assert!(!fault.remedy.is_empty() && line.len() < 500, "one readable line that says what to do: {line}");
        assert!(!line.chars().any(char::is_control), "without control characters: {line:?}");
    }
}
