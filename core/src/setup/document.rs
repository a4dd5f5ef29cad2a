//! A set-up as groups, lists and texts, whoever wrote or reads them:
//! `{"schema": 1, "part": {"length": "30 mm", ...}, "cuts": [{...}]}`.

use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::fault::shortened;
use super::inputs::LISTS;
use super::{Entries, Fault};
use crate::text::Text;

/// Version of the set-up's shape. It rises when an older reader could misread a newer file.
pub const SCHEMA_VERSION: u64 = 1;

/// Largest document worth reading, in bytes; a full set-up takes less than a tenth of it.
pub const LARGEST_DOCUMENT: usize = 262_144;

const REMEDY: &str = "Send a whole set-up as saved by the page, or see its JSON Schema.";

/// What JSON can hold, as far as it matters to a set-up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Document {
    /// Nothing, where there might be something.
    Nothing,
    /// A text.
    Text(String),
    /// A number, as it is written.
    Number(String),
    /// What no set-up has, in words.
    Strange(String),
    /// Items in order.
    List(Vec<Self>),
    /// Values by name.
    Group(BTreeMap<String, Self>),
}

impl Document {
    /// The fault of text that cannot be read as a document, for the given reason.
    #[must_use]
    pub fn unreadable(reason: impl Into<Text>) -> Fault {
        Fault::document(reason.into(), "a JSON object", REMEDY)
    }

    /// In a few words, for a fault.
    fn told(&self) -> Text {
        match self {
            Self::Nothing => "nothing".into(),
            Self::Text(text) | Self::Number(text) | Self::Strange(text) => Text::Typed(shortened(text)),
            Self::List(_) => "a list".into(),
            Self::Group(_) => "a group".into(),
        }
    }
}

impl Entries {
    /// Reads a set-up. Quantities are text with a unit (`"30 mm"`), or bare numbers in the unit the schema names.
    ///
    /// # Errors
    /// Every fault of form: another schema version, unknown entries, wrong kinds of value.
    ///
    /// ```
    /// use holdround_core::setup::{Document, Entries};
    /// let mut entries = Entries::default();
    /// entries.set("cuts.0.feed", "0.2 mm/rev");
    /// assert_eq!(Entries::from_document(&entries.to_document()), Ok(entries));
    /// assert!(Entries::from_document(&Document::Nothing).is_err());
    /// ```
    pub fn from_document(document: &Document) -> Result<Self, Vec<Fault>> {
        let Document::Group(groups) = document else {
            return Err([Document::unreadable("not an object")].into());
        };
        let version = groups.get("schema");
        if version != Some(&Document::Number(SCHEMA_VERSION.to_string())) {
            let found =
                version.map_or_else(|| "without schema version".into(), |v| Text::of("schema {}").with(v.told()));
            let remedy = "A newer page wrote this, or \"schema\" is missing: open it in the newest page.";
            return Err([Fault::document(found, Text::typed(format!("\"schema\": {SCHEMA_VERSION}")), remedy)].into());
        }
        let mut entries = Self::default();
        let mut faults = Vec::new();
        for (group, value) in groups.iter().filter(|(group, _)| *group != "schema") {
            entries.take_named(group, group, value, &mut faults);
        }
        if faults.is_empty() { Ok(entries) } else { Err(faults) }
    }

    /// A name with a point in it would pass for a path, and the document for another than it is.
    fn take_named(&mut self, path: &str, name: &str, value: &Document, faults: &mut Vec<Fault>) {
        if name.contains('.') {
            faults.push(Fault::unknown(path, value.told()));
        } else {
            self.take(path, value, faults);
        }
    }

    fn take(&mut self, path: &str, value: &Document, faults: &mut Vec<Fault>) {
        // Whoever makes a document bounds its depth, so this recursion is bounded too.
        match value {
            // A list's items come in an array, in which alone they stand by index.
            Document::Group(_) if LISTS.iter().any(|list| list.name == path) => {
                faults.push(Fault::unknown(path, "not an array".into()));
            }
            Document::Group(fields) => {
                for (field, value) in fields {
                    self.take_named(&format!("{path}.{field}"), field, value, faults);
                }
            }
            Document::List(items) => {
                for (index, item) in items.iter().enumerate() {
                    self.take(&format!("{path}.{index}"), item, faults);
                }
            }
            Document::Nothing => {}
            Document::Text(text) | Document::Number(text) => {
                if !self.set(path, text) {
                    faults.push(Fault::unknown(path, Text::Typed(shortened(text))));
                }
            }
            Document::Strange(_) => faults.push(Fault::unknown(path, value.told())),
        }
    }

    /// The set-up in the shape that [`Entries::from_document`] reads.
    #[must_use]
    pub fn to_document(&self) -> Document {
        let mut root = BTreeMap::new();
        root.insert("schema".to_string(), Document::Number(SCHEMA_VERSION.to_string()));
        for (path, text) in self.iter() {
            let Some((group, rest)) = path.split_once('.') else { continue };
            let list = LISTS.iter().any(|list| list.name == group);
            let slot = root.entry(group.to_string()).or_insert_with(|| match list {
                true => Document::List(Vec::new()),
                false => Document::Group(BTreeMap::new()),
            });
            let (slot, field) = match (slot, rest.split_once('.')) {
                (Document::List(items), Some((index, field))) => (item(items, index.parse().unwrap_or(0)), field),
                (slot, _) => (Some(slot), rest),
            };
            if let Some(Document::Group(fields)) = slot {
                fields.insert(field.to_string(), Document::Text(text.to_string()));
            }
        }
        Document::Group(root)
    }
}

/// Item `index` of `items`, with the items before it made if need be.
fn item(items: &mut Vec<Document>, index: usize) -> Option<&mut Document> {
    while items.len() <= index {
        items.push(Document::Group(BTreeMap::new()));
    }
    items.get_mut(index)
}
