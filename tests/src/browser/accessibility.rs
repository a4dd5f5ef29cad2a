//! The rules of the Web Content Accessibility Guidelines that a program can check.

use std::fmt;
use std::fs;

use serde_json::{Value, json};

use super::session::Browser;
use super::surroundings;

/// A rule that the page breaks, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Violation {
    /// The rule's name in axe-core.
    pub rule: String,
    /// What the rule asks.
    pub help: String,
    /// Selectors of the elements that break it.
    pub elements: Vec<String>,
}

impl fmt::Display for Violation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {} ({})", self.rule, self.help, self.elements.join(", "))
    }
}

impl Browser {
    /// Checks the page as it is now against WCAG 2.2, levels A and AA, and axe-core's best practices.
    pub fn accessibility_violations(&self) -> Vec<Violation> {
        let axe = fs::read_to_string(surroundings::axe()).expect("axe-core's script");
        self.execute(&format!("{axe}; window.axe = axe;"), Vec::new());
        let tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
        let found = self.execute(
            "return axe.run(document, { runOnly: arguments[0] }).then((result) => result.violations)",
            vec![json!(tags)],
        );
        found.as_array().expect("axe-core gives a list").iter().map(violation).collect()
    }
}

fn violation(found: &Value) -> Violation {
    let words = |key: &str| found[key].as_str().unwrap_or_default().to_owned();
    let elements = found["nodes"].as_array().into_iter().flatten();
    Violation {
        rule: words("id"),
        help: words("help"),
        elements: elements.map(|node| node["target"].to_string()).collect(),
    }
}
