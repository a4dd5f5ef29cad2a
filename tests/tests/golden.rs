//! The findings of every worked example, kept to the bit. After a change that is meant to move them:
//! `HOLDROUND_BLESS=1 cargo test -p holdround-tests --test golden`, then read the difference.

#![allow(clippy::unwrap_used, reason = "a golden file that cannot be read must fail")]

use std::path::PathBuf;

use holdround_core::examples::EXAMPLES;
use holdround_tests::job::Job;
use serde_json::Value;

const BLESS: &str = "HOLDROUND_BLESS";

fn golden(id: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("golden").join(format!("{id}.json"))
}

fn findings(id: &str) -> String {
    let job = Job { example: Some(id.to_string()), ..Job::default() };
    serde_json::to_string_pretty(&job.findings().unwrap()).unwrap() + "\n"
}

/// Where two documents part, in words: the first finding that differs, or else the first part.
fn first_difference(kept: &Value, found: &Value) -> String {
    let list = |document: &Value| document["findings"].as_array().cloned().unwrap_or_default();
    let (was, is) = (list(kept), list(found));
    for at in 0..was.len().max(is.len()) {
        let (was, is) = (was.get(at), is.get(at));
        if was != is {
            let id = was.or(is).map(|finding| finding["id"].clone()).unwrap_or_default();
            return format!("finding {id}\n  was {}\n  is  {}", shown(was), shown(is));
        }
    }
    let parts = kept.as_object().into_iter().chain(found.as_object()).flatten();
    let part = parts.map(|(name, _)| name).find(|name| kept[name.as_str()] != found[name.as_str()]);
    part.map_or("the writing alone".to_string(), |name| {
        format!("{name}\n  was {}\n  is  {}", kept[name.as_str()], found[name.as_str()])
    })
}

fn shown(finding: Option<&Value>) -> String {
    finding.map_or("absent".to_string(), Value::to_string)
}

#[test]
fn the_findings_of_every_example_are_those_kept() {
    let mut differences = Vec::new();
    for example in EXAMPLES {
        let (path, found) = (golden(example.id), findings(example.id));
        if std::env::var_os(BLESS).is_some() {
            std::fs::write(&path, &found).unwrap();
        }
        let kept = std::fs::read_to_string(&path).unwrap_or_default();
        if kept != found {
            let kept = serde_json::from_str(&kept).unwrap_or_default();
            let difference = first_difference(&kept, &serde_json::from_str(&found).unwrap());
            differences.push(format!("{}: {difference}", example.id));
        }
    }
    assert!(differences.is_empty(), "meant so? Then bless with {BLESS}=1.\n{}", differences.join("\n"));
}

#[test]
fn no_golden_file_is_left_of_an_example_that_is_gone() {
    let folder = golden("any").parent().unwrap().to_path_buf();
    for file in std::fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        let id = path.file_stem().unwrap().to_string_lossy().into_owned();
        assert!(EXAMPLES.iter().any(|example| example.id == id), "{id} is no example");
    }
}

#[test]
fn a_difference_is_named_by_its_finding() {
    let kept: Value = serde_json::from_str(&findings("thin-ring")).unwrap();
    let mut found = kept.clone();
    let at = kept["findings"].as_array().unwrap().iter().position(|finding| finding["id"] == "grip.rest").unwrap();
    let value = kept["findings"][at]["value"].as_f64().unwrap();
    found["findings"][at]["value"] = value.next_up().into();
    assert!(first_difference(&kept, &found).starts_with("finding \"grip.rest\""), "one bit of one finding is seen");
    let mut gone = kept.clone();
    gone["findings"].as_array_mut().unwrap().pop();
    assert!(first_difference(&kept, &gone).ends_with("is  absent"), "a finding that is gone is seen");
    let mut scene = kept.clone();
    scene["scene"]["swing_radius"] = 1.into();
    assert!(first_difference(&kept, &scene).starts_with("scene"), "another part is named");
}
