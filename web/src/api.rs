//! The engines for other pages: `evaluate`, `validate`, `examples`. Their types are in `api.d.ts`.

use std::cell::RefCell;

use holdround_core::examples::EXAMPLES;
use holdround_core::setup::{Document, Fault, Setup};
use holdround_core::{Effort, Engine};
use js_sys::{Array, Error, JSON, Object, Reflect};
use serde::Serialize;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};

use crate::document;

thread_local! {
    /// Keeps the shape work between calls: set-ups that differ in force or speed only are quick.
    static ENGINE: RefCell<Engine> = RefCell::new(Engine::default());
}

/// The findings of a set-up, given as an object or as JSON text.
///
/// # Errors
/// An `Error` whose `faults` are an array of `{path, name, value, allowed, remedy}`.
#[wasm_bindgen]
pub fn evaluate(setup: &JsValue) -> Result<JsValue, JsValue> {
    let setup = read(setup).map_err(|faults| refusal(&faults))?;
    plain(&ENGINE.with_borrow_mut(|engine| engine.evaluate(&setup, Effort::Full)))
}

/// The faults of a set-up, given as an object or as JSON text; empty when it is valid.
#[wasm_bindgen]
pub fn validate(setup: &JsValue) -> Array {
    read(setup).err().map(|faults| listed(&faults)).unwrap_or_default()
}

/// The worked examples, as `{id, title, says, setup}`.
///
/// # Errors
/// When an example is not JSON, which the tests rule out.
#[wasm_bindgen]
pub fn examples() -> Result<Array, JsValue> {
    EXAMPLES
        .iter()
        .map(|example| {
            let setup = JSON::parse(example.json)?;
            Ok(object(&[
                ("id", example.id.into()),
                ("title", example.title.into()),
                ("says", example.says.into()),
                ("setup", setup),
            ]))
        })
        .collect()
}

fn read(setup: &JsValue) -> Result<Setup, Vec<Fault>> {
    Setup::read(&document::entries(&text(setup)?)?)
}

/// The set-up as JSON text. Numbers that JSON lacks are handed on as words, to be refused at their entry:
/// plain JSON would drop them, and their defaults would be taken in silence.
fn text(setup: &JsValue) -> Result<String, Vec<Fault>> {
    if let Some(text) = setup.as_string() {
        return Ok(text);
    }
    let spell_out =
        Closure::<dyn Fn(JsValue, JsValue) -> JsValue>::new(|_key: JsValue, value: JsValue| match value.as_f64() {
            Some(number) if !number.is_finite() => JsValue::from_str("not a number that JSON has"),
            _ => value,
        });
    JSON::stringify_with_replacer(setup, spell_out.as_ref())
        .ok()
        .and_then(|text| text.as_string())
        .ok_or_else(|| vec![Document::unreadable("something JSON cannot hold")])
}

/// Faults as an error to throw.
fn refusal(faults: &[Fault]) -> JsValue {
    let words: Vec<String> = faults.iter().map(ToString::to_string).collect();
    let error = Error::new(&words.join("\n"));
    let _set = Reflect::set(&error, &"faults".into(), &listed(faults));
    error.into()
}

fn listed(faults: &[Fault]) -> Array {
    faults
        .iter()
        .map(|fault| {
            let told = |text: &dyn ToString| JsValue::from_str(&text.to_string());
            object(&[
                ("path", told(&fault.path)),
                ("name", told(&fault.name)),
                ("value", told(&fault.value)),
                ("allowed", told(&fault.allowed)),
                ("remedy", told(&fault.remedy)),
            ])
        })
        .collect()
}

fn object(fields: &[(&str, JsValue)]) -> JsValue {
    let object = Object::new();
    for (name, value) in fields {
        let _set = Reflect::set(&object, &(*name).into(), value);
    }
    object.unchecked_into()
}

fn plain(value: &impl Serialize) -> Result<JsValue, JsValue> {
    Ok(value.serialize(&Serializer::json_compatible())?)
}
