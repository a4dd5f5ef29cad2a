//! Which range decides a limit: the one without which the limit would move most.

use super::corner::{Corner, Ends};
use super::limit::{Asked, Corners};
use super::sampling::VARYING;
use super::wall::Wall;
use super::work::WindowWork;
use crate::evaluate::elastic::Work;
use crate::evaluate::engine::Engine;
use crate::setup::Setup;

/// Least part of a limit by which a range moves it, to be named.
const NOTICED: f64 = 1e-3;

/// The range that decides a limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Decider {
    /// The entry of the range.
    pub entry: &'static str,
    /// What the range is of.
    pub name: &'static str,
    /// The limit's ratio, 1 as it stands, with this range left out and the others at their bad ends.
    pub without: f64,
}

impl WindowWork {
    /// The range that decides a boundary at `speed` rad/s. None where no range does, as at a plate, or before the
    /// boundary is found.
    ///
    /// ```
    /// use holdround_core::{Engine, WindowWork, setup::{Entries, Setup}};
    /// let setup = Setup::read(&Entries::default()).unwrap();
    /// let (mut engine, mut work) = (Engine::default(), WindowWork::new(&setup));
    /// while work.step(&mut engine) {}
    /// let boundaries = &work.window().boundaries;
    /// let hold = boundaries.iter().position(|boundary| boundary.key == "worst_hold").unwrap();
    /// let decider = work.decided_by(&engine, hold, 50.0).unwrap();
    /// assert!(decider.without > 1.0, "without it, the pressure would hold more");
    /// ```
    #[must_use]
    pub fn decided_by(&self, engine: &Engine, boundary: usize, speed: f64) -> Option<Decider> {
        let (limit, jaw) = (*self.limits.get(boundary)?, self.jaw.as_ref()?);
        let ends = limit.ends()?;
        let pressure = self.window.boundaries.get(boundary)?.at(speed)?;
        let Some((_, Work::Done(elastic))) = &engine.kept else { return None };
        let thin = match &self.thin {
            Some(Wall::Done(_, face)) => Some(face),
            _ => None,
        };
        let ratio = |setup: &Setup, ends: &Ends, thin| {
            let at = Corner::of(setup, ends).at(jaw, pressure, speed)?;
            let corners = Corners::of(setup, setup);
            Some(Asked { elastic, thin, jaw, corners: &corners }.at(limit, &at))
        };
        let bad = self.thin_setup.as_ref().filter(|_| limit.of_shape()).unwrap_or(&self.setup);
        let all = ratio(bad, &ends, thin)?;
        let without = |entry: &str| match entry {
            "ranges.friction" => ratio(bad, &Ends { friction: 0.0, ..ends }, thin),
            "ranges.condition" => ratio(bad, &Ends { condition: 0.0, ..ends }, thin),
            "ranges.pressure" => ratio(bad, &Ends { pressure: 0.0, ..ends }, thin),
            "ranges.bore" => ratio(bad, &Ends { bore: 0.0, ..ends }, thin),
            "ranges.force" => ratio(bad, &Ends { force: 0.0, ..ends }, thin),
            "ranges.wall" if limit.of_shape() => ratio(&self.setup, &ends, None),
            "grip.upper_deviation" if limit.of_shape() => ratio(&of_middle_size(bad), &ends, thin),
            _ => None,
        };
        VARYING
            .iter()
            .filter_map(|(entry, name)| Some(Decider { entry, name, without: without(entry)? / all }))
            .max_by(|one, other| (one.without - 1.0).abs().total_cmp(&(other.without - 1.0).abs()))
            .filter(|decider| (decider.without - 1.0).abs() > NOTICED)
    }
}

/// The set-up with parts of one size, the middle one.
fn of_middle_size(setup: &Setup) -> Setup {
    let mut other = setup.clone();
    let middle = (setup.grip.upper_deviation + setup.grip.lower_deviation) / 2.0;
    (other.grip.upper_deviation, other.grip.lower_deviation) = (middle, middle);
    other
}
