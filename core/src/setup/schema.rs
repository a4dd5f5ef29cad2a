//! The JSON Schema of a set-up, written from the declarations of its inputs.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use serde_json::{Map, Value, json};

use super::document::SCHEMA_VERSION;
use super::input::{Form, Input, MaterialUse};
use super::inputs::{LISTS, every_input};
use crate::materials;

/// The JSON Schema (draft 2020-12) of a set-up.
///
/// ```
/// let schema = holdround_core::setup::json_schema();
/// assert_eq!(schema["properties"]["schema"]["const"], 1);
/// assert_eq!(schema["properties"]["part"]["additionalProperties"], false);
/// ```
#[must_use]
pub fn json_schema() -> Value {
    let mut groups: Map<String, Value> = Map::new();
    groups.insert("schema".to_string(), json!({"const": SCHEMA_VERSION}));
    for input in every_input() {
        let Some((group, field)) = input.path.split_once('.') else { continue };
        let (field, list) = match field.strip_prefix("*.") {
            Some(field) => (field, LISTS.iter().find(|list| list.name == group)),
            None => (field, None),
        };
        let slot = groups.entry(group).or_insert_with(|| match list {
            Some(list) => json!({"type": "array", "maxItems": list.most, "items": empty_object()}),
            None => empty_object(),
        });
        let object = if list.is_some() { slot.get_mut("items") } else { Some(slot) };
        if let Some(Value::Object(fields)) = object.and_then(|object| object.get_mut("properties")) {
            fields.insert(field.to_string(), describe(input));
        }
    }
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Holdround set-up",
        "description": "A quantity is text with its unit, such as \"30 mm\" or \"2 1/4 in\", or a bare number in the unit its description names. What is absent takes its default; what stands in brackets is marked as assumed.",
        "type": "object",
        "properties": groups,
        "required": ["schema"],
        "additionalProperties": false
    })
}

/// Keys as they are, and in the brackets that mark them as assumed.
fn assumed_or_not(keys: &[&str]) -> Vec<String> {
    keys.iter().map(|key| key.to_string()).chain(keys.iter().map(|key| format!("({key})"))).collect()
}

fn empty_object() -> Value {
    json!({"type": "object", "properties": {}, "additionalProperties": false})
}

fn describe(input: &Input) -> Value {
    let mut schema = match input.form {
        Form::Quantity { kind, least, most, optional } => {
            let unit = kind.bare_unit();
            let mut forms = alloc::vec![
                json!({"type": "number", "minimum": unit.from_si(least), "maximum": unit.from_si(most)}),
                json!({"type": "string", "pattern": r"^\s*\(?[-+0-9.,/ eE]*[0-9.,]\s*\D*$", "maxLength": 60}),
            ];
            if optional {
                forms.push(json!({"const": ""}));
            }
            json!({"anyOf": forms, "description": format!("{} A bare number is in {}.", input.help, bare_unit_words(unit.symbol))})
        }
        Form::Choice(choices) => {
            let keys: Vec<&str> = choices.iter().map(|choice| choice.key).collect();
            json!({"enum": assumed_or_not(&keys), "description": input.help})
        }
        Form::Material(wanted) => {
            let ids: Vec<&str> = materials::all()
                .filter(|material| match wanted {
                    MaterialUse::Part => material.part,
                    MaterialUse::Jaw => material.jaw,
                })
                .map(|material| material.id)
                .collect();
            json!({"enum": assumed_or_not(&ids), "description": input.help})
        }
        Form::Text(most) => json!({"type": "string", "maxLength": most, "description": input.help}),
    };
    if let Value::Object(fields) = &mut schema {
        fields.insert("title".to_string(), input.name.into());
        if !input.default.is_empty() {
            fields.insert("default".to_string(), input.default.into());
        }
    }
    schema
}

fn bare_unit_words(symbol: &str) -> &str {
    if symbol.is_empty() { "no unit" } else { symbol }
}
