//! What the reader must be told about links and storage.

use holdround_core::text::Text;

/// Something to be told once, and to be put away when read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Notice {
    /// In words.
    pub(crate) says: Text,
    /// Text that could not be used, kept for copying.
    pub(crate) kept: Option<String>,
}

impl Notice {
    /// Words alone.
    pub(crate) fn new(says: impl Into<Text>) -> Self {
        Self { says: says.into(), kept: None }
    }

    /// Words about a text that could not be used.
    pub(crate) fn about(says: impl Into<Text>, kept: impl Into<String>) -> Self {
        Self { says: says.into(), kept: Some(kept.into()) }
    }
}

/// Adds a notice, unless it is there already.
pub(crate) fn tell(notices: &mut Vec<Notice>, notice: Notice) {
    if !notices.contains(&notice) {
        notices.push(notice);
    }
}
