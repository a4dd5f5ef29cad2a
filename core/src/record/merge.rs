//! Records of two places become one without loss, in whichever order they meet.

use alloc::collections::btree_map::Entry;
use alloc::vec::Vec;

use super::{CHANGED, Fields, Record, Records, text_of};

/// What a merge did, in numbers of records.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// Not there before.
    pub added: usize,
    /// Changed by what came.
    pub changed: usize,
    /// The same as before, or with nothing in them that was not there.
    pub same: usize,
}

impl Record {
    /// Takes over what `other`, of the same id, has: the newest fields hold, the others become an earlier version
    /// if they differ, and borings are united.
    pub fn merge(&mut self, other: Self) {
        let (newer, older) = if (text_of(&other.fields, CHANGED), &other.fields) > (self.get(CHANGED), &self.fields) {
            (other.fields, core::mem::take(&mut self.fields))
        } else {
            (core::mem::take(&mut self.fields), other.fields)
        };
        self.fields = newer;
        for version in other.earlier.into_iter().chain([older]) {
            unite(&mut self.earlier, version);
        }
        let Self { fields, earlier, .. } = self;
        earlier.retain(|version| version != fields);
        for boring in other.borings {
            unite(&mut self.borings, boring);
        }
    }
}

impl Records {
    /// Takes over every record of `other`.
    pub fn merge(&mut self, other: Self) -> Report {
        let mut report = Report::default();
        for (id, record) in other.0 {
            match self.0.entry(id) {
                Entry::Vacant(place) => {
                    place.insert(record);
                    report.added += 1;
                }
                Entry::Occupied(mut place) => {
                    let before = place.get().clone();
                    place.get_mut().merge(record);
                    if *place.get() == before {
                        report.same += 1;
                    } else {
                        report.changed += 1;
                    }
                }
            }
        }
        report
    }
}

/// Puts `one` among `all` in order of date, then of all that is in it; it is not put there twice.
pub(super) fn unite(all: &mut Vec<Fields>, one: Fields) {
    fn order(fields: &Fields) -> (&str, &str, &Fields) {
        (text_of(fields, "date"), text_of(fields, CHANGED), fields)
    }
    let place = all.iter().position(|there| order(there) >= order(&one)).unwrap_or(all.len());
    if all.get(place) != Some(&one) {
        all.insert(place, one);
    }
}
