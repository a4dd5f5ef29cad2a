//! The JSON Schema of a set-up, judged by a validator that is not ours.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a schema or example that cannot be read must fail")]

use holdround_core::examples::EXAMPLES;
use holdround_core::setup::{Entries, INPUTS, Setup, json_schema};
use jsonschema::Validator;
use serde_json::{Value, json};

fn validator() -> Validator {
    let schema = json_schema();
    assert!(jsonschema::meta::is_valid(&schema), "the schema is itself valid");
    jsonschema::validator_for(&schema).unwrap()
}

#[test]
fn the_schema_takes_every_example_as_the_reader_does() {
    let schema = validator();
    for example in EXAMPLES {
        let document: Value = serde_json::from_str(example.json).unwrap();
        if let Err(error) = schema.validate(&document) {
            panic!("{}: {error} at {}", example.id, error.instance_path());
        }
        let entries = Entries::from_json(example.json).unwrap();
        let written: Value = serde_json::from_str(&entries.to_json()).unwrap();
        assert!(schema.is_valid(&written), "{}: what we write is valid too", example.id);
    }
}

#[test]
fn schema_and_reader_refuse_the_same_documents() {
    let schema = validator();
    let bad = [
        json!({}),
        json!([]),
        json!({"schema": 2}),
        json!({"schema": "1"}),
        json!({"schema": 1, "colour": "red"}),
        json!({"schema": 1, "part": 3}),
        json!({"schema": 1, "part": {"colour": "red"}}),
        json!({"schema": 1, "part": {"length": true}}),
        json!({"schema": 1, "part": {"length": "long"}}),
        json!({"schema": 1, "part": {"length": ""}}),
        json!({"schema": 1, "part": {"length": -30}}),
        json!({"schema": 1, "part": {"length": 1e308}}),
        json!({"schema": 1, "part": {"material": "cheese"}}),
        json!({"schema": 1, "jaws": {"material": "titanium-6al-4v"}}),
        json!({"schema": 1, "chuck": {"jaws": "7"}}),
        json!({"schema": 1, "job": {"name": "x".repeat(81)}}),
        json!({"schema": 1, "cuts": {"feed": 0.2}}),
        json!({"schema": 1, "cuts": [{"colour": "red"}]}),
        json!({"schema": 1, "cuts": vec![json!({"feed": 0.2}); 9]}),
    ];
    for document in bad {
        assert!(!schema.is_valid(&document), "the schema takes {document}");
        let read = Entries::from_json(&document.to_string()).and_then(|entries| Setup::read(&entries));
        assert!(read.is_err(), "the reader takes {document}");
    }
}

#[test]
fn every_declared_input_stands_in_the_schema_with_its_default_and_bounds() {
    let (schema, described) = (validator(), json_schema());
    for input in INPUTS.iter().flat_map(|group| group.inputs) {
        let place = format!("/properties/{}", input.path.replace("*.", "items.").replace("items.", "items/"))
            .replace('.', "/properties/")
            .replace("/properties/items/", "/items/properties/");
        let found = described.pointer(&place);
        assert_eq!(found.map(|found| &found["title"]), Some(&json!(input.name)), "{} at {place}", input.path);
        if !input.default.is_empty() {
            assert!(schema.is_valid(&with(input.path, input.default.into())), "{}: its default is refused", input.path);
        }
        if let holdround_core::setup::Form::Quantity { kind, least, most, .. } = input.form {
            let unit = kind.bare_unit();
            for (value, allowed) in
                [(least, true), (most, true), (most * 1.01, false), (least - most.abs() * 0.01, false)]
            {
                let document = with(input.path, unit.from_si(value).into());
                assert_eq!(schema.is_valid(&document), allowed, "{}: {value} in SI", input.path);
            }
        }
    }
}

/// A document with one entry.
fn with(path: &str, value: Value) -> Value {
    match path.split('.').collect::<Vec<_>>().as_slice() {
        [group, field] => json!({"schema": 1, *group: {*field: value}}),
        [list, _, field] => json!({"schema": 1, *list: [{*field: value}]}),
        _ => panic!("{path} is neither a field nor in a list"),
    }
}
