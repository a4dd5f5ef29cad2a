//! Records of two places become one without loss, in whichever order they meet.

use alloc::vec::Vec;
use core::cmp::Ordering;

use super::{CHANGED, Fields, Record, Records, is_deleted, text_of, to_text, without_image};
use crate::setup::Document;
use crate::text::Text;

/// What a merge did, in numbers of records.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// Not there before.
    pub added: usize,
    /// Changed by what came.
    pub changed: usize,
    /// The same as before, or with nothing in them that was not there.
    pub same: usize,
    /// What was deleted in one place and not in the other: what became of it, and what it is called.
    pub fates: Vec<(Fate, Text)>,
}

/// What becomes of something that is deleted in one place and not in the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It was deleted elsewhere, and is now deleted here.
    Gone,
    /// It was deleted here, but changed elsewhere since: it is back.
    Back,
    /// It is deleted here and stays so; what came is older.
    StaysDeleted,
    /// It was deleted elsewhere, but changed here since: it stays.
    StaysHere,
}

impl Record {
    /// Takes over what `other`, of the same id, has: the newest fields hold, the others become an earlier version
    /// if they differ; so with every boring and photo. Gives what became of what one of the two had deleted.
    pub fn merge(&mut self, other: Self) -> Vec<(Fate, Text)> {
        let deleted = (self.is_deleted(), other.is_deleted());
        let (newer, older) = if order(&other.fields, &self.fields).is_gt() {
            (other.fields, core::mem::take(&mut self.fields))
        } else {
            (core::mem::take(&mut self.fields), other.fields)
        };
        self.fields = newer;
        for version in other.earlier.into_iter().chain([older]) {
            unite(&mut self.earlier, version);
        }
        let mut now = self.fields.clone();
        without_image(&mut now);
        self.earlier.retain(|version| *version != now);

        let mut fates = Vec::new();
        if let Some(fate) = fate(deleted, self.is_deleted()) {
            fates.push((fate, self.title()));
        }
        for of_child in [self.borings.merge(other.borings), self.photos.merge(other.photos)] {
            let named = |(fate, name)| (fate, Text::of("{}: {}").with(self.title()).with(name));
            fates.extend(of_child.fates.into_iter().map(named));
        }
        fates
    }
}

impl Records {
    /// Takes over every record of `other`.
    pub fn merge(&mut self, other: Self) -> Report {
        let mut report = Report::default();
        for (id, record) in other.0 {
            let deleted = record.is_deleted();
            let Some(there) = self.get_mut(&id) else {
                self.put(id, record);
                *if deleted { &mut report.same } else { &mut report.added } += 1;
                continue;
            };
            let before = there.clone();
            report.fates.append(&mut there.merge(record));
            *if *there == before { &mut report.same } else { &mut report.changed } += 1;
        }
        report
    }
}

/// What versions are in order of: their time; what is deleted after what it deletes; then all that is in them.
fn order(a: &Fields, b: &Fields) -> Ordering {
    let told = |fields: &Fields| to_text(&Document::Group(fields.clone()));
    let by_time = text_of(a, CHANGED).cmp(text_of(b, CHANGED));
    let by_time = by_time.then(is_deleted(a).cmp(&is_deleted(b)));
    if by_time.is_ne() || a == b { by_time } else { told(a).cmp(&told(b)) }
}

fn fate(deleted_before: (bool, bool), deleted: bool) -> Option<Fate> {
    match (deleted_before, deleted) {
        ((false, true), true) => Some(Fate::Gone),
        ((true, false), false) => Some(Fate::Back),
        ((true, false), true) => Some(Fate::StaysDeleted),
        ((false, true), false) => Some(Fate::StaysHere),
        _ => None,
    }
}

/// Puts `version` among the earlier ones in order; it is not put there twice.
fn unite(earlier: &mut Vec<Fields>, mut version: Fields) {
    without_image(&mut version);
    let place = earlier.iter().position(|there| order(there, &version).is_ge()).unwrap_or(earlier.len());
    if earlier.get(place) != Some(&version) {
        earlier.insert(place, version);
    }
}
