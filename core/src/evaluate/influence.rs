//! What moves the findings most: each figure put in is changed a little by itself, and all is worked out again.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use core::cmp::Ordering;

use holdround_mechanics::sorting::sort;

use super::engine::{Engine, Progress};
use super::pressed::Effort;
use crate::findings::{Findings, Moved};
use crate::quantity::{Kind, Measure, decimal};
use crate::setup::{Entries, Form, INPUTS, Input, LISTS, Setup};

/// The findings that the verdict stands on first.
pub const HEADLINES: [&str; 5] = ["hold.factor", "shape.roundness", "shape.runout", "speed.set", "pressure.set"];

/// The groups of inputs that these stand on.
const GROUPS: [&str; 8] = ["part", "steps", "surfaces", "chuck", "gauge", "jaws", "run", "cuts"];
/// By which share a figure is changed.
const SHARE: f64 = 0.1;
/// How many movers are told.
const TOLD: usize = 4;
/// Share of a value below which a change of it is none.
const NONE: f64 = 1e-6;

/// One figure changed.
#[derive(Debug)]
struct Trial {
    input: &'static Input,
    path: String,
    /// What it is changed to, as typed.
    to: String,
    setup: Setup,
}

/// What is found: id, value, and what is left to the limit.
type Values = Vec<(String, Option<f64>, Option<f64>)>;

/// What moves the findings, worked out a slice at a time.
///
/// ```
/// use holdround_core::{InfluenceWork, evaluate, setup::{Entries, Setup}};
/// let entries = Entries::default();
/// let mut findings = evaluate(&Setup::read(&entries).unwrap());
/// let mut work = InfluenceWork::new(&entries);
/// while work.step() {}
/// work.tell(&mut findings);
/// let hold = findings.get("hold.factor").unwrap();
/// assert!(hold.moved_by.as_ref().unwrap().iter().any(|moved| moved.entry == "cylinder.bore"));
/// ```
#[derive(Debug, Default)]
pub struct InfluenceWork {
    /// The set-up as it is, first to be worked out.
    present: Option<Setup>,
    entries: Entries,
    /// Inputs not yet tried, the last one first.
    waiting: Vec<(&'static Input, usize)>,
    under: Option<Trial>,
    base: Values,
    done: Vec<(&'static Input, String, String, Values)>,
    /// Keeps the shape work of the set-up as it is.
    like: Engine,
    other: Engine,
}

impl InfluenceWork {
    /// Work on a set-up as typed; nothing to do if it is not valid.
    #[must_use]
    pub fn new(entries: &Entries) -> Self {
        let mut waiting = Vec::new();
        let inputs = INPUTS.iter().filter(|group| GROUPS.contains(&group.key)).flat_map(|group| group.inputs);
        for input in inputs.copied() {
            let list = input.in_list().and_then(|(name, _)| LISTS.iter().find(|list| list.name == name));
            let count = list.map_or(1, |list| entries.count(list.name).max(list.least));
            let at = (0..count).filter(|index| entries.matters(input, *index));
            waiting.extend(at.map(|index| (input, index)));
        }
        waiting.reverse();
        Self { present: Setup::read(entries).ok(), entries: entries.clone(), waiting, ..Self::default() }
    }

    /// Does one slice; false when nothing is left.
    pub fn step(&mut self) -> bool {
        if let Some(setup) = &self.present {
            if self.like.prepare(setup) == Progress::Done {
                self.base = values(&self.like.evaluate(setup, Effort::Sliding));
                self.present = None;
            }
            return true;
        }
        if self.base.is_empty() {
            return false;
        }
        if self.under.is_none() {
            let Some((input, index)) = self.waiting.pop() else { return false };
            self.under = Trial::of(&self.entries, input, index);
        }
        let Some(trial) = self.under.take() else { return true };
        let engine = if self.like.has_shape_of(&trial.setup) { &mut self.like } else { &mut self.other };
        if engine.prepare(&trial.setup) == Progress::Done {
            let values = values(&engine.evaluate(&trial.setup, Effort::Sliding));
            self.done.push((trial.input, trial.path, trial.to, values));
        } else {
            self.under = Some(trial);
        }
        self.under.is_some() || !self.waiting.is_empty()
    }

    /// Tells every finding what moves it most, and every assumption how much it matters, most first.
    pub fn tell(&self, findings: &mut Findings) {
        for finding in &mut findings.findings {
            finding.moved_by = Some(self.movers(&finding.id));
        }
        for assumed in &mut findings.assumed {
            let tried = self.done.iter().find(|(_, path, ..)| *path == assumed.entry);
            assumed.matters = tried.map(|(.., values)| self.moved_margin(values));
        }
        let assumed = &findings.assumed;
        // An assumption that was not tried stands after those that were, in its order.
        let weight = |at: &usize| assumed[*at].matters.unwrap_or(-1.0);
        let mut order: Vec<usize> = (0..assumed.len()).collect();
        sort(&mut order, |a, b| most_first(weight(a), weight(b)));
        findings.assumed = order.into_iter().map(|at| assumed[at].clone()).collect();
    }

    fn movers(&self, id: &str) -> Vec<Moved> {
        let Some(base) = value(&self.base, id).and_then(|(value, _)| value) else { return Vec::new() };
        let moved = self.done.iter().filter_map(|tried| Some((tried, value(&tried.3, id)?.0? - base)));
        let mut moved: Vec<_> = moved.filter(|(_, by)| libm::fabs(*by) > NONE * libm::fabs(base)).collect();
        sort(&mut moved, |(_, a), (_, b)| most_first(libm::fabs(*a), libm::fabs(*b)));
        let told = moved.into_iter().take(TOLD);
        told.map(|((input, path, to, _), by)| Moved { entry: path.clone(), name: input.name, to: to.clone(), by })
            .collect()
    }

    /// The most that what is left to a limit of the headlines moves, as a share of the limit.
    fn moved_margin(&self, values: &Values) -> f64 {
        let moved = HEADLINES.iter().filter_map(|id| {
            let (before, after) = (value(&self.base, id)?.1?, value(values, id)?.1);
            // A figure that is refused once this is changed hangs on it altogether.
            Some(after.map_or(1.0, |after| libm::fabs(after - before)))
        });
        moved.fold(0.0, f64::max)
    }
}

impl Trial {
    fn of(entries: &Entries, input: &'static Input, index: usize) -> Option<Self> {
        let Form::Quantity { kind, .. } = input.form else { return None };
        let path = input.at(index);
        let measure = Measure::parse(kind, entries.text_or_default(&path, input)).ok()?;
        let step = match kind {
            _ if measure.si != 0.0 => SHARE * libm::fabs(measure.si),
            Kind::Departure => 1e-5,
            Kind::Plain => SHARE,
            _ => return None,
        };
        [step, -step].into_iter().find_map(|step| {
            let unit = measure.unit;
            let number = decimal(unit.from_si(measure.si + step), 6);
            let to = if unit.symbol.is_empty() { number } else { format!("{number} {}", unit.symbol) };
            let mut changed = entries.clone();
            changed.set(&path, &to);
            let setup = Setup::read(&changed).ok()?;
            Some(Self { input, path: path.clone(), to, setup })
        })
    }
}

fn most_first(a: f64, b: f64) -> Ordering {
    b.partial_cmp(&a).unwrap_or(Ordering::Equal)
}

fn value(values: &Values, id: &str) -> Option<(Option<f64>, Option<f64>)> {
    values.iter().find(|(known, ..)| known == id).map(|(_, value, margin)| (*value, *margin))
}

fn values(findings: &Findings) -> Values {
    let told = |finding: &crate::findings::Finding| {
        (finding.id.clone(), finding.value.as_ref().ok().copied(), finding.margin())
    };
    findings.findings.iter().map(told).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::evaluate::evaluate;

    fn told(entries: &Entries) -> Findings {
        let mut findings = evaluate(&Setup::read(entries).unwrap());
        let mut work = InfluenceWork::new(entries);
        while work.step() {}
        work.tell(&mut findings);
        findings
    }

    #[test]
    fn what_moves_a_figure_is_what_a_change_typed_in_moves_it_by() {
        let entries = Entries::default();
        let findings = told(&entries);
        for id in HEADLINES {
            let movers = findings.get(id).unwrap().moved_by.clone().unwrap();
            assert!(!movers.is_empty() && movers.len() <= TOLD, "{id} is moved by something: {movers:?}");
            assert!(movers.is_sorted_by(|a, b| a.by.abs() >= b.by.abs()), "{id}: most first");
            let mut changed = entries.clone();
            assert!(changed.set(&movers[0].entry, &movers[0].to), "{id}: the mover is an entry");
            let value = |entries: &Entries| {
                Engine::default().evaluate(&Setup::read(entries).unwrap(), Effort::Sliding).value(id).unwrap()
            };
            let by = value(&changed) - value(&entries);
            assert!((by - movers[0].by).abs() <= 1e-9 * by.abs(), "{id}: {by} against {:?}", movers[0]);
        }
    }

    #[test]
    fn the_hold_factor_goes_with_friction_and_the_speed_set_with_itself() {
        let mut work = InfluenceWork::new(&Entries::default());
        while work.step() {}
        let hold = value(&work.base, "hold.factor").unwrap().0.unwrap();
        let friction = work.done.iter().find(|(_, path, ..)| path == "grip.friction").unwrap();
        let with_more = value(&friction.3, "hold.factor").unwrap().0.unwrap();
        // The resistance of a frictional grip is in proportion to friction (limit analysis, upper bound).
        let share = with_more / hold - 1.0;
        assert!((share - 0.1).abs() < 0.02, "a tenth more friction is a tenth more hold: {share}");
        let findings = told(&Entries::default());
        let speed = &findings.get("speed.set").unwrap().moved_by.clone().unwrap()[0];
        assert_eq!(speed.entry, "run.speed", "the speed set is what is set");
    }

    #[test]
    fn assumptions_are_sorted_by_how_much_they_matter() {
        let mut entries = Entries::default();
        entries.set("run.pressure", "(1.6 MPa)");
        let findings = told(&entries);
        let matters: Vec<f64> = findings.assumed.iter().map(|assumed| assumed.matters.unwrap_or(-1.0)).collect();
        assert!(matters.is_sorted_by(|a, b| a >= b), "most first: {matters:?}");
        assert!(matters[0] > 0.0, "something assumed matters");
        let place = |path: &str| findings.assumed.iter().position(|assumed| assumed.entry == path).unwrap();
        assert!(place("run.pressure") < place("chuck.max_draw"), "pressure matters more than a far limit");
        assert_eq!(findings.assumed.len(), evaluate(&Setup::read(&entries).unwrap()).assumed.len(), "none is lost");
    }

    #[test]
    fn nothing_is_told_of_a_set_up_that_is_none() {
        let mut entries = Entries::default();
        entries.set("part.length", "wide");
        assert!(!InfluenceWork::new(&entries).step(), "there is nothing to do");
    }
}
