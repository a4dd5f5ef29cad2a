//! The same part and cut on other jaws, side by side.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::vec::Vec;

use super::engine::Engine;
use super::pressed::Effort;
use super::window::{Span, WindowWork};
use crate::findings::Findings;
use crate::quantity::{Kind, decimal};
use crate::setup::chuck_inputs::JAW_COUNT;
use crate::setup::jaw_inputs::{BORED_DIAMETER, JAW_ANGLE, JAW_KIND, JAW_MATERIAL};
use crate::setup::part_inputs::GRIP_SIDE;
use crate::setup::{Entries, Form, Input, Setup};
use crate::text::Text;

/// Share of the circle that wide jaws wrap where their number changes, so that as many fit.
const WIDE_SHARE: f64 = 0.75;
/// The jaw materials compared: the two that soft jaws are mostly made of.
const MATERIALS: [&str; 2] = ["low-carbon-steel-1018", "aluminium-6061"];
/// The numbers of jaws compared.
const COUNTS: [u32; 3] = [3, 4, 6];

/// What a choice of jaws is judged by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Better {
    /// The more, the better.
    More,
    /// The less, the better.
    Less,
}

/// A line of the comparison.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// What it tells.
    pub name: &'static str,
    /// Its quantity.
    pub kind: Kind,
    /// Which way is better.
    pub better: Better,
    tell: fn(&Fitted) -> Option<f64>,
}

/// What is compared, in the order of the flow.
pub const ROWS: [Row; 7] = [
    Row { name: "Hold factor", kind: Kind::Plain, better: Better::More, tell: |jaws| jaws.found.value("hold.factor") },
    Row {
        name: "Width of the window at the speed set",
        kind: Kind::Pressure,
        better: Better::More,
        tell: |jaws| Some(jaws.window?.width().max(0.0)),
    },
    Row {
        name: "Run-out (TIR)",
        kind: Kind::Departure,
        better: Better::Less,
        tell: |jaws| jaws.found.value("shape.runout"),
    },
    Row {
        name: "Roundness, released",
        kind: Kind::Departure,
        better: Better::Less,
        tell: |jaws| jaws.found.value("shape.roundness"),
    },
    Row {
        name: "Highest speed allowed",
        kind: Kind::RotationalSpeed,
        better: Better::More,
        tell: |jaws| jaws.found.get("speed.set").and_then(|set| set.limit.as_ref()).map(|limit| limit.value),
    },
    Row {
        name: "Mass of one top jaw",
        kind: Kind::Mass,
        better: Better::Less,
        tell: |jaws| jaws.found.value("jaw.mass"),
    },
    Row {
        name: "Roughing passes to bore them",
        kind: Kind::Plain,
        better: Better::Less,
        tell: |jaws| jaws.found.value("program.passes"),
    },
];

/// Jaws that take the place of those set.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// What differs from the jaws set; empty for those themselves.
    pub differs: Text,
    /// The whole set-up with these jaws.
    pub entries: Entries,
}

/// Jaws that serve.
#[derive(Clone, Debug)]
pub struct Fitted {
    /// The set-up with them.
    pub setup: Setup,
    /// What is found for it.
    pub found: Findings,
    /// The pressures that are good at the speed set: while finishing, where that has a pressure of its own. None where
    /// the model does not cover the part in these jaws.
    pub window: Option<Span>,
}

/// How a choice of jaws does.
#[derive(Clone, Debug)]
pub struct Compared {
    /// The choice.
    pub choice: Choice,
    /// What is found with these jaws, or why they do not serve.
    pub fitted: Result<Fitted, Text>,
}

impl Compared {
    /// What stands in a row.
    #[must_use]
    pub fn value(&self, row: &Row) -> Option<f64> {
        self.fitted.as_ref().ok().and_then(row.tell)
    }
}

/// The comparison, worked out a slice at a time.
///
/// ```
/// use holdround_core::{Comparison, ROWS, setup::Entries};
/// let mut comparison = Comparison::of(&Entries::default());
/// while comparison.work() {}
/// let best = comparison.best(&ROWS[0]).unwrap();
/// assert!(comparison.done()[best].value(&ROWS[0]).is_some());
/// ```
#[derive(Debug, Default)]
pub struct Comparison {
    /// Choices not yet begun, the last one first.
    waiting: Vec<Choice>,
    /// The window of the choice under way.
    window: Option<WindowWork>,
    engine: Engine,
    done: Vec<Compared>,
}

impl Comparison {
    /// Begins to compare the jaws of `entries` with others that differ from them in one thing each.
    #[must_use]
    pub fn of(entries: &Entries) -> Self {
        let mut waiting = choices(entries);
        waiting.reverse();
        Self { waiting, ..Self::default() }
    }

    /// Does one slice of work, a few milliseconds; false when none is left.
    pub fn work(&mut self) -> bool {
        let Some(choice) = self.waiting.pop() else { return false };
        let fitted = match Setup::read(&choice.entries) {
            Ok(setup) => match self.fit(setup) {
                Some(fitted) => Ok(fitted),
                None => {
                    self.waiting.push(choice);
                    return true;
                }
            },
            Err(faults) => {
                let first = faults.into_iter().next();
                Err(first.map_or_else(|| "".into(), |fault| Text::of("{}: {}").with(fault.name).with(fault.remedy)))
            }
        };
        self.done.push(Compared { choice, fitted });
        !self.is_done()
    }

    /// One slice for the choice under way; how it does, once that is worked out.
    fn fit(&mut self, setup: Setup) -> Option<Fitted> {
        let speed = setup.speed.value;
        let work = self.window.get_or_insert_with(|| WindowWork::at_speed(&setup.while_cutting(true), speed));
        if work.step(&mut self.engine) {
            return None;
        }
        let window = self.window.take()?.into_window();
        let window = (!window.boundaries.is_empty()).then(|| window.span(speed));
        Some(Fitted { found: self.engine.evaluate(&setup, Effort::Sliding), setup, window })
    }

    /// Whether nothing is left to be worked out.
    #[must_use]
    pub fn is_done(&self) -> bool {
        self.waiting.is_empty()
    }

    /// What is worked out so far; the jaws set come first.
    #[must_use]
    pub fn done(&self) -> &[Compared] {
        &self.done
    }

    /// The only choice that does best in a row; none where two do, or fewer than two can be compared.
    #[must_use]
    pub fn best(&self, row: &Row) -> Option<usize> {
        let values = || self.done.iter().enumerate().filter_map(|(at, one)| Some((at, one.value(row)?)));
        let ahead = |a: f64, b: f64| match row.better {
            Better::More => a > b,
            Better::Less => a < b,
        };
        let (best, value) = values().reduce(|best, next| if ahead(next.1, best.1) { next } else { best })?;
        let rivals = values().filter(|(at, _)| *at != best);
        let alone = rivals.clone().count() > 0 && rivals.into_iter().all(|(_, other)| ahead(value, other));
        alone.then_some(best)
    }

    /// Whether the choices differ in a row at all.
    #[must_use]
    pub fn differs(&self, row: &Row) -> bool {
        let mut values = self.done.iter().map(|one| one.value(row));
        let first = values.next();
        values.any(|value| Some(value) != first)
    }
}

/// The jaws set, then others that differ in shape, number, material or the side they grip on.
fn choices(entries: &Entries) -> Vec<Choice> {
    let mut choices = Vec::from([Choice { differs: "".into(), entries: entries.clone() }]);
    let mut add = |differs: Text, changes: &[(&str, &str)]| {
        let mut entries = entries.clone();
        for (path, text) in changes {
            if text.is_empty() {
                entries.unset(path)
            } else {
                entries.set(path, text);
            }
        }
        choices.push(Choice { differs, entries });
    };
    let now = |input: &Input| entries.text_or_default(input.path, input).to_owned();
    let count = now(&JAW_COUNT).trim().parse::<u32>().unwrap_or(COUNTS[0]);
    let angle = |count: u32| format!("{}°", decimal(360.0 * WIDE_SHARE / f64::from(count), 3));
    if let Form::Choice(kinds) = JAW_KIND.form {
        for kind in kinds.iter().filter(|kind| kind.key != now(&JAW_KIND)) {
            let words = kind.name.split(':').next().unwrap_or(kind.name);
            match kind.key {
                "wide" => add(words.into(), &[(JAW_KIND.path, kind.key), (JAW_ANGLE.path, &angle(count))]),
                key => add(words.into(), &[(JAW_KIND.path, key)]),
            }
        }
    }
    let wide = now(&JAW_KIND) == "wide";
    for other in COUNTS.into_iter().filter(|other| *other != count) {
        let (number, fitting) = (format!("{other}"), angle(other));
        let mut changes = Vec::from([(JAW_COUNT.path, number.as_str())]);
        if wide {
            changes.push((JAW_ANGLE.path, fitting.as_str()));
        }
        add(Text::of("{} jaws").with(other), &changes);
    }
    for material in MATERIALS.into_iter().filter(|material| *material != now(&JAW_MATERIAL)) {
        let name = crate::materials::find(material).map_or(material, |material| material.name);
        add(name.into(), &[(JAW_MATERIAL.path, material)]);
    }
    let (side, words) = match now(&GRIP_SIDE).as_str() {
        "outside" => ("inside", "Gripped inside"),
        _ => ("outside", "Gripped outside"),
    };
    // Bored to the other diameter's nominal: the size entered belongs to this side.
    add(words.into(), &[(GRIP_SIDE.path, side), (BORED_DIAMETER.path, "")]);
    choices
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::string::{String, ToString};

    fn compared(changes: &[(&str, &str)]) -> Comparison {
        let mut entries = Entries::default();
        for (path, text) in changes {
            assert!(entries.set(path, text), "{path} is an input");
        }
        let mut comparison = Comparison::of(&entries);
        while comparison.work() {}
        comparison
    }

    #[test]
    fn the_jaws_set_come_first_and_every_other_differs_in_one_thing() {
        let comparison = compared(&[]);
        let differs: Vec<String> = comparison.done().iter().map(|one| one.choice.differs.to_string()).collect();
        assert_eq!(differs[0], "", "those set are not other than themselves");
        assert!(differs.len() >= 7, "two shapes, two numbers, a material, a side: {differs:?}");
        let set = &comparison.done()[0];
        let set_up = &set.fitted.as_ref().expect("the default job is valid").setup;
        let speed = set_up.speed.value;
        let window = Some(Engine::default().window(set_up).span(speed));
        let alone = Fitted { setup: set_up.clone(), found: crate::evaluate(set_up), window };
        for row in &ROWS {
            let (value, alone) = (set.value(row), (row.tell)(&alone));
            // A curve is drawn to plotting accuracy, at one speed the root is found.
            let same = match row.kind {
                Kind::Pressure => value.zip(alone).is_some_and(|(one, other)| (one - other).abs() < 2e4),
                _ => value == alone,
            };
            assert!(same, "{}: {value:?} against {alone:?} evaluated by itself", row.name);
        }
    }

    #[test]
    fn pie_jaws_hold_a_thin_ring_roundest() {
        // Full-circle jaws keep a thin ring round: common practice, no source.
        let comparison = compared(&[("part.bore_diameter", "148 mm")]);
        let row = ROWS.iter().find(|row| row.name.starts_with("Run-out")).expect("it is compared");
        let pie = |one: &Compared| one.choice.entries.get(JAW_KIND.path) == Some("pie");
        let best = comparison.best(row).map(|at| &comparison.done()[at]);
        let told: Vec<_> = comparison.done().iter().map(|one| (&one.choice.differs, one.value(row))).collect();
        assert!(best.is_some_and(pie), "not the pie jaws: {told:?}");
    }

    #[test]
    fn a_solid_part_cannot_be_gripped_inside_and_is_told_why() {
        let comparison = compared(&[("part.bore_diameter", "0 mm")]);
        let inside = comparison.done().last().expect("choices");
        assert!(inside.fitted.as_ref().is_err_and(|why| !why.is_empty()), "{:?}", inside.choice.differs);
        assert!(ROWS.iter().all(|row| inside.value(row).is_none()), "and has no figures");
    }

    #[test]
    fn nobody_is_best_where_two_do_as_well() {
        let comparison = compared(&[]);
        for row in &ROWS {
            let Some(best) = comparison.best(row) else { continue };
            let value = comparison.done()[best].value(row);
            let same = comparison.done().iter().filter(|one| one.value(row) == value).count();
            assert_eq!(same, 1, "{}: the best is alone", row.name);
        }
        assert!(ROWS.iter().any(|row| comparison.best(row).is_some()), "somebody is best at something");
    }
}
