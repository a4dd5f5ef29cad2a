//! The functions offered to other pages, on good and on hostile input.
#![cfg(target_arch = "wasm32")]

use holdround_web::api::{evaluate, examples, validate};
use js_sys::{Array, JSON, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

fn get(object: &JsValue, name: &str) -> JsValue {
    Reflect::get(object, &name.into()).unwrap_or(JsValue::UNDEFINED)
}

fn words(object: &JsValue, name: &str) -> String {
    get(object, name).as_string().unwrap_or_default()
}

/// What the JavaScript expression `code` gives.
fn js(code: &str) -> JsValue {
    js_sys::Function::new_no_args(&format!("return ({code})")).call0(&JsValue::NULL).unwrap_or(JsValue::UNDEFINED)
}

fn paths(faults: &Array) -> Vec<String> {
    faults.iter().map(|fault| words(&fault, "path")).collect()
}

#[wasm_bindgen_test]
fn every_example_is_valid_and_its_findings_are_finite_numbers_with_units() -> Result<(), JsValue> {
    let all = examples()?;
    assert!(all.length() >= 4, "there are worked examples");
    for example in all {
        let setup = get(&example, "setup");
        assert_eq!(validate(&setup).length(), 0, "{} is valid", words(&example, "id"));
        let found = evaluate(&setup)?;
        let text = evaluate(&JsValue::from(JSON::stringify(&setup)?))?;
        let both = [&found, &text].map(|found| JSON::stringify(found).map(String::from));
        assert_eq!(both[0], both[1], "an object and its JSON text mean the same");
        let hold = get(&found, "findings")
            .unchecked_into::<Array>()
            .iter()
            .find(|finding| words(finding, "id") == "hold.factor")
            .unwrap_or(JsValue::UNDEFINED);
        assert!(get(&hold, "value").as_f64().is_some_and(f64::is_finite), "the hold factor is a number");
        assert_eq!(words(&hold, "unit"), "1", "a plain number says so");
    }
    Ok(())
}

#[wasm_bindgen_test]
fn a_refusal_is_an_error_that_carries_every_fault() {
    let setup = js("({schema: 1, part: {length: '-3 mm'}, chuck: {jaws: 7}})");
    let error = evaluate(&setup).err().unwrap_or(JsValue::UNDEFINED);
    assert!(error.is_instance_of::<js_sys::Error>(), "an Error is thrown");
    let faults = get(&error, "faults").unchecked_into::<Array>();
    let mut named = paths(&faults);
    named.sort();
    assert_eq!(named, ["chuck.jaws", "part.length"], "each fault names its entry");
    for field in ["name", "value", "allowed", "remedy"] {
        assert!(!words(&faults.get(0), field).is_empty(), "a fault says its {field}");
    }
}

#[wasm_bindgen_test]
fn hostile_input_is_refused_at_its_entry_and_never_taken_for_nothing() {
    let cases = [
        ("({schema: 1, part: {length: NaN}})", "part.length"),
        ("({schema: 1, part: {length: Infinity}})", "part.length"),
        ("({schema: 1, part: {length: 1e308}})", "part.length"),
        ("({schema: 1, part: {length: true}})", "part.length"),
        ("({schema: 1, part: {colour: 'red'}})", "part.colour"),
        ("({schema: 1, run: {speed: 0, pressure: 0}})", "run.pressure"),
        ("({schema: 1, part: {bore_diameter: '200 mm', outside_diameter: '100 mm'}})", "part.bore_diameter"),
        ("({schema: 2})", "set-up"),
        ("undefined", "set-up"),
        ("null", "set-up"),
        ("42", "set-up"),
        ("() => 1", "set-up"),
        ("'nonsense'", "set-up"),
        ("'x'.repeat(1 << 20)", "set-up"),
        ("({schema: 1, part: {length: 10n}})", "set-up"),
        ("(() => { const ring = {schema: 1}; ring.part = ring; return ring; })()", "set-up"),
        (
            "(() => { let deep = []; for (let i = 0; i < 10000; i++) deep = [deep]; return {schema: 1, part: deep}; })()",
            "set-up",
        ),
        ("'['.repeat(10000)", "set-up"),
        ("(() => { throw 1; })()", "set-up"),
        ("({get schema() { throw new Error('no'); }})", "set-up"),
    ];
    for (code, path) in cases {
        let setup = js(code);
        let faults = validate(&setup);
        assert!(paths(&faults).contains(&path.to_owned()), "{code} must be refused at {path}: {:?}", paths(&faults));
        assert!(evaluate(&setup).is_err(), "{code} must not be evaluated");
    }
}
