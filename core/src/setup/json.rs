//! Set-ups as JSON: `{"schema": 1, "part": {"length": "30 mm", ...}, "cuts": [{...}]}`.

use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use serde_json::{Map, Value};

use super::inputs::LISTS;
use super::{Entries, Fault};

/// Version of the set-up's shape. It rises when an older reader could misread a newer file.
pub const SCHEMA_VERSION: u64 = 1;

/// Largest document that is read, in bytes; a full set-up takes less than a tenth of it.
const LARGEST: usize = 262_144;

impl Entries {
    /// Reads a set-up. Quantities are text with a unit (`"30 mm"`), or bare numbers in the unit the schema names.
    ///
    /// # Errors
    /// Every fault of form: no JSON, another schema version, unknown entries, wrong kinds of value.
    ///
    /// ```
    /// use holdround_core::setup::Entries;
    /// let entries = Entries::from_json(r#"{"schema": 1, "part": {"length": 30, "bore_diameter": "5 1/2 in"}}"#).unwrap();
    /// assert_eq!(entries.get("part.length"), Some("30"));
    /// let faults = Entries::from_json(r#"{"schema": 1, "part": {"colour": "red"}}"#).unwrap_err();
    /// assert_eq!(faults[0].path, "part.colour");
    /// ```
    pub fn from_json(text: &str) -> Result<Self, Vec<Fault>> {
        const REMEDY: &str = "Send a whole set-up as saved by the page, or see its JSON Schema.";
        if text.len() > LARGEST {
            let value = format!("{} bytes", text.len());
            return Err([Fault::document(&value, &format!("at most {LARGEST} bytes"), REMEDY)].into());
        }
        let value: Value = serde_json::from_str(text)
            .map_err(|error| [Fault::document(&format!("not JSON ({error})"), "a JSON object", REMEDY)])?;
        Self::from_value(&value)
    }

    fn from_value(value: &Value) -> Result<Self, Vec<Fault>> {
        const REMEDY: &str = "Send a whole set-up as saved by the page, or see its JSON Schema.";
        let Value::Object(groups) = value else {
            return Err([Fault::document("not an object", "a JSON object", REMEDY)].into());
        };
        if groups.get("schema").and_then(Value::as_u64) != Some(SCHEMA_VERSION) {
            let found =
                groups.get("schema").map_or_else(|| "without schema version".to_string(), |v| format!("schema {v}"));
            let remedy = "A newer page wrote this, or \"schema\" is missing: open it in the newest page.";
            return Err([Fault::document(&found, &format!("\"schema\": {SCHEMA_VERSION}"), remedy)].into());
        }
        let mut entries = Self::default();
        let mut faults = Vec::new();
        for (group, value) in groups.iter().filter(|(group, _)| *group != "schema") {
            entries.take_named(group, group, value, &mut faults);
        }
        if faults.is_empty() { Ok(entries) } else { Err(faults) }
    }

    /// A name with a point in it would pass for a path, and the document for another than it is.
    fn take_named(&mut self, path: &str, name: &str, value: &Value, faults: &mut Vec<Fault>) {
        if name.contains('.') {
            faults.push(Fault::unknown(path, &value.to_string()));
        } else {
            self.take(path, value, faults);
        }
    }

    fn take(&mut self, path: &str, value: &Value, faults: &mut Vec<Fault>) {
        // serde_json bounds the depth of what it reads, so this recursion is bounded too.
        match value {
            // A list's items come in an array, in which alone they stand by index.
            Value::Object(_) if LISTS.iter().any(|list| list.name == path) => {
                faults.push(Fault::unknown(path, "not an array"));
            }
            Value::Object(fields) => {
                for (field, value) in fields {
                    self.take_named(&format!("{path}.{field}"), field, value, faults);
                }
            }
            Value::Array(items) => {
                for (index, item) in items.iter().enumerate() {
                    self.take(&format!("{path}.{index}"), item, faults);
                }
            }
            Value::Null => {}
            Value::String(text) => self.take_text(path, text, faults),
            Value::Number(number) => self.take_text(path, &number.to_string(), faults),
            Value::Bool(_) => faults.push(Fault::unknown(path, &value.to_string())),
        }
    }

    fn take_text(&mut self, path: &str, text: &str, faults: &mut Vec<Fault>) {
        if !self.set(path, text) {
            faults.push(Fault::unknown(path, text));
        }
    }

    /// The set-up as JSON text, in the same shape that [`Entries::from_json`] reads.
    ///
    /// ```
    /// use holdround_core::setup::Entries;
    /// let mut entries = Entries::default();
    /// entries.set("cuts.0.feed", "0.2 mm/rev");
    /// let json = entries.to_json();
    /// assert_eq!(json, r#"{"cuts":[{"feed":"0.2 mm/rev"}],"schema":1}"#);
    /// assert_eq!(Entries::from_json(&json).unwrap(), entries);
    /// ```
    #[must_use]
    pub fn to_json(&self) -> String {
        // Sorted here: the library sorts or keeps the order, as another crate in the build may please.
        let mut root: BTreeMap<&str, Value> = [("schema", SCHEMA_VERSION.into())].into();
        for (path, text) in self.iter() {
            let Some((group, rest)) = path.split_once('.') else { continue };
            let slot = match rest.split_once('.') {
                Some((index, field)) if LISTS.iter().any(|list| list.name == group) => {
                    let items = root.entry(group).or_insert_with(|| Value::Array(Vec::new()));
                    list_slot(items, index.parse().unwrap_or(0)).map(|item| (item, field))
                }
                _ => root.entry(group).or_insert_with(|| Value::Object(Map::new())).as_object_mut().map(|g| (g, rest)),
            };
            if let Some((fields, field)) = slot {
                fields.insert(field.to_string(), text.into());
            }
        }
        Value::Object(root.into_iter().map(|(group, value)| (group.to_string(), value)).collect()).to_string()
    }
}

/// The fields of item `index` of `items`, with the items before it made if need be.
fn list_slot(items: &mut Value, index: usize) -> Option<&mut Map<String, Value>> {
    let items = items.as_array_mut()?;
    while items.len() <= index {
        items.push(Value::Object(Map::new()));
    }
    items.get_mut(index)?.as_object_mut()
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::vec;

    #[test]
    fn junk_is_refused_in_words() {
        let deep = "[".repeat(10_000);
        let cases = vec![
            String::new(),
            "nonsense".to_string(),
            "[]".to_string(),
            "{}".to_string(),
            r#"{"schema": 2}"#.to_string(),
            r#"{"schema": 1, "part": 3}"#.to_string(),
            r#"{"schema": 1, "part": {"length": true}}"#.to_string(),
            r#"{"schema": 1, "part": {"length": {"value": 3}}}"#.to_string(),
            r#"{"schema": 1, "cuts": {"feed": 3}}"#.to_string(),
            format!(r#"{{"schema": 1, "part": {deep}"#),
            "x".repeat(LARGEST + 1),
        ];
        for text in cases {
            let faults = Entries::from_json(&text).unwrap_err();
            assert!(!faults.is_empty(), "{} is refused", text.chars().take(30).collect::<String>());
            for fault in faults {
                assert!(fault.to_string().len() < 400, "a fault stays one readable line: {fault}");
            }
        }
    }
}
