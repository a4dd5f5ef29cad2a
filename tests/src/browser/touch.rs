//! A finger on the screen.

use serde_json::{Value, json};

use super::session::Browser;

/// A point on the screen, in CSS pixels.
pub type Point = (f64, f64);

/// How many times a finger on its way is seen.
const STEPS: u32 = 12;

impl Browser {
    /// Brings the first element a CSS selector finds onto the screen and gives its middle, once it has come to rest.
    pub fn middle(&self, selector: &str) -> Point {
        let middle = self.execute(
            "return new Promise((done) => {
                const seen = [];
                const look = () => {
                    const element = document.querySelector(arguments[0]);
                    element.scrollIntoView({ block: 'center', behavior: 'instant' });
                    const box = element.getBoundingClientRect();
                    const middle = [box.x + box.width / 2, box.y + box.height / 2];
                    seen.push(middle.join());
                    if (seen.length > 3 && seen.slice(-4).every((it) => it === seen.at(-1))) done(middle);
                    else requestAnimationFrame(look);
                };
                look();
            })",
            vec![json!(selector)],
        );
        let at = |axis: usize| middle[axis].as_f64().expect("the middle of an element is a point");
        (at(0), at(1))
    }

    /// Taps the middle of the first element a CSS selector finds.
    pub fn tap(&self, selector: &str) {
        let at = self.middle(selector);
        self.touch("touchStart", Some(at));
        self.touch("touchEnd", None);
    }

    /// Taps a field and writes into it with the keyboard on the screen, in place of what is there.
    pub fn tap_and_write(&self, selector: &str, text: &str) {
        self.tap(selector);
        self.execute(
            "const field = document.querySelector(arguments[0]);
            return new Promise((done) => {
                const look = () => document.activeElement === field ? done() : setTimeout(look, 16);
                look();
            })",
            vec![json!(selector)],
        );
        self.devtools("Input.dispatchKeyEvent", json!({ "type": "keyDown", "commands": ["selectAll"] }));
        self.devtools("Input.insertText", json!({ "text": text }));
    }

    /// Puts a finger down, draws it across the screen and lifts it.
    pub fn drag(&self, from: Point, to: Point) {
        self.touch("touchStart", Some(from));
        for step in 1..=STEPS {
            let share = f64::from(step) / f64::from(STEPS);
            self.touch("touchMove", Some((from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share)));
        }
        self.touch("touchEnd", None);
    }

    fn touch(&self, event: &str, at: Option<Point>) {
        let points: Vec<Value> = at.iter().map(|(x, y)| json!({ "x": x, "y": y })).collect();
        self.devtools("Input.dispatchTouchEvent", json!({ "type": event, "touchPoints": points }));
    }
}
