//! Records of two places become one without loss, in whichever order they meet.

use alloc::string::String;
use alloc::vec::Vec;

use super::{CHANGED, Fields, Record, Records, text_of, to_text};
use crate::setup::Document;

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
        let (newer, older) = if key(&other.fields) > key(&self.fields) {
            (other.fields, core::mem::take(&mut self.fields))
        } else {
            (core::mem::take(&mut self.fields), other.fields)
        };
        self.fields = newer;
        for version in other.earlier.into_iter().chain([older]) {
            unite(&mut self.earlier, version);
        }
        let now = key(&self.fields);
        self.earlier.retain(|version| key(version) != now);
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
            let Some(there) = self.get_mut(&id) else {
                self.put(id, record);
                report.added += 1;
                continue;
            };
            let before = to_text(&there.to_document(&id));
            there.merge(record);
            if to_text(&there.to_document(&id)) == before {
                report.same += 1;
            } else {
                report.changed += 1;
            }
        }
        report
    }
}

/// What versions and borings are in order of: by their time, then by all that is in them.
fn key(fields: &Fields) -> String {
    let mut key = String::new();
    for name in ["date", CHANGED] {
        key.push_str(text_of(fields, name));
        key.push('\n');
    }
    key + &to_text(&Document::Group(fields.clone()))
}

/// Puts `one` among `all` in order; it is not put there twice.
pub(super) fn unite(all: &mut Vec<Fields>, one: Fields) {
    let new = key(&one);
    let place = all.iter().position(|there| key(there) >= new).unwrap_or(all.len());
    if all.get(place).is_none_or(|there| key(there) != new) {
        all.insert(place, one);
    }
}
