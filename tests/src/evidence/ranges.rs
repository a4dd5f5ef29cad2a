//! Between which bounds each engine was checked: the least and greatest of every number it was given.

use std::collections::BTreeMap;

use holdround_core::setup::Setup;
use maud::{Markup, html};
use serde_json::Value;

use super::figure::number;
use super::solids::Bodies;
use super::table::table;
use crate::job::listed;
use crate::reference::Topic;
use crate::solids::Case;

/// Least and greatest.
type Bounds = [f64; 2];

/// Bounds by the names of what they bound, for one engine.
type Checked = BTreeMap<String, Bounds>;

/// All engines, each under the topic that checks it.
///
/// # Errors
/// When a job of a check cannot be read.
pub(super) fn section(topics: &BTreeMap<String, Topic>, bodies: &Bodies) -> Result<Markup, String> {
    let mut engines: BTreeMap<String, Checked> = BTreeMap::new();
    let mut jobs = Checked::new();
    for topic in topics.values() {
        for check in &topic.checks {
            if let Some(engine) = &check.engine {
                let name = format!("{}: {}, {}", topic.topic, engine.replace('_', " "), topic.units);
                gather(&check.inputs, "", engines.entry(name).or_default());
            }
            for job in check.setup.iter().chain(&check.over) {
                let setup = Setup::read(&job.entries()?).map_err(|faults| listed(&faults))?;
                for (name, value) in sizes(&setup) {
                    widen(&mut jobs, name, value);
                }
            }
        }
    }
    engines.insert("Whole jobs, SI units".into(), jobs);
    let held = engines.entry("Held parts, beside solids, SI units".into()).or_default();
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
    Ok(html! {
        section #ranges {
            h2 { "Between which bounds was each engine checked?" }
            p {
                "Least and greatest of the numbers that the checks gave it. Between them the checks stand behind it; "
                "beyond them it rests on its equations alone, up to where it refuses."
            }
            details {
                summary { "Bounds of " (engines.len()) " engines" }
                (table("Bounds", &["Checks, engine, units", "Given", "From", "To"], &rows))
            }
        }
    })
}

/// What a job is told by.
fn sizes(setup: &Setup) -> [(&'static str, f64); 6] {
    [
        ("gripped diameter", 2.0 * setup.gripped_radius()),
        ("grip length", setup.grip.length.value),
        ("jaws", f64::from(setup.chuck.jaws)),
        ("step of the jaws", setup.jaws.step.value),
        ("pressure", setup.pressure.value),
        ("speed", setup.speed.value),
    ]
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
