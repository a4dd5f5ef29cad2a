//! Between which bounds each engine was checked: the least and greatest of every number it was given.

use std::collections::BTreeMap;

use maud::{Markup, html};
use serde_json::Value;

use super::figure::number;
use super::solids::Bodies;
use super::table::table;
use crate::reference::Topic;
use crate::solids::Case;

/// Least and greatest.
type Bounds = [f64; 2];

/// Bounds by the names of what they bound, for one engine.
type Checked = BTreeMap<String, Bounds>;

/// All engines.
pub(super) fn section(topics: &BTreeMap<String, Topic>, bodies: &Bodies) -> Markup {
    let mut engines: BTreeMap<String, Checked> = BTreeMap::new();
    for check in topics.values().flat_map(|topic| &topic.checks) {
        if let Some(engine) = &check.engine {
            gather(&check.inputs, "", engines.entry(engine.replace('_', " ")).or_default());
        }
    }
    let held = engines.entry("held parts, against solids".into()).or_default();
    for (name, value) in bodies.cases().flat_map(Case::proportions) {
        widen(held, name, value);
    }
    engines.retain(|_, checked| !checked.is_empty());
    let rows = html! {
        @for (engine, checked) in &engines {
            @for (at, (name, [least, greatest])) in checked.iter().enumerate() {
                tr {
                    @if at == 0 { th scope="rowgroup" rowspan=(checked.len()) { (engine) } }
                    td { (name) }
                    td { (number(*least)) }
                    td { (number(*greatest)) }
                }
            }
        }
    };
    html! {
        section #ranges {
            h2 { "Between which bounds was each engine checked?" }
            p {
                "Least and greatest of the numbers that the checks gave it, in SI units. Between them the checks stand "
                "behind it; beyond them it rests on its equations alone, up to where it refuses."
            }
            (table("Bounds", &["Engine", "Given", "From", "To"], &rows))
        }
    }
}

/// Every number within `inputs`, by its name; those of a list share the list's.
fn gather(inputs: &Value, name: &str, into: &mut Checked) {
    match inputs {
        Value::Number(value) => widen(into, name, value.as_f64().unwrap_or_default()),
        Value::Array(values) => values.iter().for_each(|value| gather(value, name, into)),
        Value::Object(members) => members.iter().for_each(|(key, value)| gather(value, &key.replace('_', " "), into)),
        Value::Null | Value::Bool(_) | Value::String(_) => {}
    }
}

fn widen(checked: &mut Checked, name: &str, value: f64) {
    let [least, greatest] = checked.entry(name.into()).or_insert([value; 2]);
    *least = least.min(value);
    *greatest = greatest.max(value);
}
