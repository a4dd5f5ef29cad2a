//! How parts come out when everything varies within its range: the share that is good, and whose doing the spread is.

use alloc::string::ToString;
use alloc::vec::Vec;

use super::corner::{At, Corner, Ends, with_wall};
use super::limit::{Asked, Corners, FAR, Limit};
use super::wall::Wall;
use crate::evaluate::elastic::{Elasticity, Work};
use crate::evaluate::engine::{Engine, Progress};
use crate::evaluate::grip_at_rest::begins_at;
use crate::jaw::BoredJaw;
use crate::quantity::Length;
use crate::sampling::{Share, Table, draw, first_order};
use crate::setup::Setup;
use crate::text::Text;
use uom::si::length::meter;

/// Parts drawn.
const PARTS: u32 = 2000;
/// The fixed seed of the draws.
const SEED: u64 = 20_251;
/// Parts worked out one by one, to see how far the table is off.
const CHECKED: u32 = 12;
/// Places of the table along grip, fit of the jaws, and wall.
const SIDES: [usize; 3] = [5, 5, 3];
/// Places along friction at which the hold is worked out: without a centre it follows friction, and two would do.
const FRICTIONS: usize = 3;
/// Draws for a slice.
const SLICE: usize = 250;

/// What varies, in the order of its draws.
pub(super) const VARYING: [(&str, &str); 7] = [
    ("ranges.friction", "friction"),
    ("ranges.condition", "chuck condition"),
    ("ranges.pressure", "pressure gauge"),
    ("grip.upper_deviation", "part diameter"),
    ("ranges.wall", "wall"),
    ("ranges.bore", "jaw bore"),
    ("ranges.force", "cutting force"),
];

/// How parts come out.
#[derive(Clone, Debug, PartialEq)]
pub struct Sampled {
    /// Parts drawn, and the seed of the draws.
    pub parts: u32,
    /// The seed.
    pub seed: u64,
    /// Share of parts that are held with the factor wanted at its worst and stay in every tolerance.
    pub good: f64,
    /// Standard error of that share.
    pub error: f64,
    /// Largest error of the table on parts that were worked out one by one, as a share of the limit.
    pub table_error: f64,
    /// Each output that is judged.
    pub outputs: Vec<SampledOutput>,
}

/// One output over the parts drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct SampledOutput {
    /// Its name.
    pub name: Text,
    /// Share of parts that keep its limit.
    pub good: f64,
    /// Which inputs its spread goes back to, most first: entry, name, first-order share of the variance.
    pub driven_by: Vec<(&'static str, &'static str, Share)>,
}

/// Sampling on its way: at the pressure and speed that are set.
#[derive(Debug)]
pub struct SampleWork {
    setup: Setup,
    jaw: Option<BoredJaw>,
    corners: Corners,
    limits: Vec<Limit>,
    walls: [Option<Wall>; 2],
    begun: bool,
    /// Places of the table, and the limits' ratios there; of the hold, the one at which a jaw lifts off.
    places: Vec<Vec<f64>>,
    rows: Vec<Vec<f64>>,
    tables: Vec<Table>,
    /// The ratios at which friction gives way, friction by friction, and their table.
    slips: Vec<Vec<f64>>,
    slip: Option<Table>,
    /// Ratios of each part.
    drawn: Vec<Vec<f64>>,
    checked: u32,
    table_error: f64,
    sampled: Option<Sampled>,
}

impl SampleWork {
    /// Work on a set-up with its pressure and speed.
    #[must_use]
    pub fn new(setup: &Setup) -> Self {
        Self {
            jaw: BoredJaw::new(setup.jaw()).ok(),
            corners: Corners::of(setup, setup),
            setup: setup.clone(),
            limits: Vec::new(),
            walls: [None, None],
            begun: false,
            places: Vec::new(),
            rows: Vec::new(),
            tables: Vec::new(),
            slips: Vec::new(),
            slip: None,
            drawn: Vec::new(),
            checked: 0,
            table_error: 0.0,
            sampled: None,
        }
    }

    /// What came of it, once it is done. None before, or where the model does not cover every wall.
    #[must_use]
    pub fn sampled(&self) -> Option<&Sampled> {
        self.sampled.as_ref()
    }

    /// Does one slice, a few milliseconds, on an engine that keeps the shape work; false when nothing is left to do.
    pub fn step(&mut self, engine: &mut Engine) -> bool {
        if self.jaw.is_none() || self.sampled.is_some() {
            return false;
        }
        if engine.prepare(&self.setup) != Progress::Done {
            return true;
        }
        let Some((_, Work::Done(elastic))) = &engine.kept else { return false };
        if !self.begun {
            return self.begin(elastic);
        }
        for wall in &mut self.walls {
            match wall.take() {
                Some(under @ Wall::Under { .. }) => {
                    *wall = Some(under.slice());
                    return true;
                }
                Some(Wall::Refused) => return false,
                done => *wall = done,
            }
        }
        if let Some(place) = self.places.get(self.rows.len()) {
            let place = place.clone();
            self.work_out(elastic, &place);
        } else if self.tables.is_empty() {
            self.tabulate();
            return !self.tables.is_empty();
        } else if self.drawn.len() < PARTS as usize {
            let from = self.drawn.len();
            let to = (from + SLICE).min(PARTS as usize);
            let more: Vec<Vec<f64>> = (from..to).map(|part| self.by_table(&draws(part as u32))).collect();
            self.drawn.extend(more);
        } else if self.checked < CHECKED {
            self.check(elastic);
        } else {
            self.sampled = Some(self.sum_up(elastic));
        }
        self.sampled.is_none()
    }

    fn begin(&mut self, elastic: &Elasticity) -> bool {
        let Some(jaw) = &self.jaw else { return false };
        self.begun = true;
        self.limits = Limit::all(&self.setup, elastic);
        self.limits.retain(|limit| limit.of_form() || matches!(limit, Limit::WorstHold | Limit::Contact));
        let range = self.setup.ranges.wall.value;
        for (wall, end) in self.walls.iter_mut().zip([-1.0, 1.0]) {
            let Some(other) = with_wall(&self.setup, end * range) else { return false };
            if other.part.profile != self.setup.part.profile {
                *wall = Some(Wall::begin(&other, jaw, elastic.density, None));
            }
        }
        self.places = Table::places(&self.sides());
        self.slips = self.frictions().iter().map(|_| Vec::new()).collect();
        true
    }

    /// Places along grip, fit and wall: one where nothing varies.
    fn sides(&self) -> [usize; 3] {
        let varies = [self.grip_range() > 0.0, self.fit_range() > 0.0, self.walls[0].is_some()];
        core::array::from_fn(|at| if varies[at] { SIDES[at] } else { 1 })
    }

    /// Largest departure of the grip at rest from the one expected, as a share of it.
    fn grip_range(&self) -> f64 {
        let ranges = &self.setup.ranges;
        let gauge = ranges.pressure.value / self.gripping_pressure();
        (1.0 + ranges.condition.value) * (1.0 + gauge) - 1.0
    }

    /// What of the pressure grips, Pa: all of it, or what is beyond the foot of a grip gauge's line.
    fn gripping_pressure(&self) -> f64 {
        self.setup.pressure.value - begins_at(&self.setup)
    }

    /// Half the range of the bored diameter less that of the part, m.
    fn fit_range(&self) -> f64 {
        let grip = &self.setup.grip;
        self.setup.ranges.bore.value + (grip.upper_deviation - grip.lower_deviation).value / 2.0
    }

    /// Friction over that entered, where the hold is worked out.
    fn frictions(&self) -> Vec<f64> {
        let range = self.setup.ranges.friction.value;
        let places = Table::places(&[if range > 0.0 { FRICTIONS } else { 1 }]);
        places.iter().flatten().map(|place| 1.0 + (2.0 * place - 1.0) * range).collect()
    }

    /// Works out the limits' ratios where grip, fit and wall are at `place`, with the cutting force as entered.
    fn work_out(&mut self, elastic: &Elasticity, place: &[f64]) {
        let way = |at: usize| 2.0 * place.get(at).copied().unwrap_or(0.5) - 1.0;
        let (grip, setup) = (1.0 + way(0) * self.grip_range(), self.with_fit(way(1) * self.fit_range()));
        let Some(jaw) = &self.jaw else { return };
        let mut at = Corner::of(&setup, &Ends::default()).times(grip).at(jaw, setup.pressure.value, setup.speed.value);
        let asked = self.asked(elastic, jaw, way(2));
        let besides_hold = |limit: &Limit| at.as_ref().filter(|_| *limit != Limit::WorstHold);
        let mut row: Vec<f64> =
            (self.limits.iter()).map(|limit| besides_hold(limit).map_or(0.0, |at| asked.at(*limit, at))).collect();
        let mut lift = 0.0;
        let wanted = self.setup.ranges.worst_hold.value;
        for (friction, slips) in self.frictions().into_iter().zip(0..) {
            let factors = at.as_mut().and_then(|at| {
                at.setup.grip.friction = self.setup.grip.friction * friction;
                self.asked(elastic, jaw, way(2)).factors(at)
            });
            if let Some(slips) = self.slips.get_mut(slips) {
                slips.push(factors.map_or(0.0, |factors| factors.slip) / wanted);
            }
            lift = factors.map_or(0.0, |factors| factors.lift.min(FAR) / wanted);
        }
        // Friction has no part in lifting off: it is the same at each.
        let hold = self.limits.iter().zip(&mut row).find(|(limit, _)| **limit == Limit::WorstHold);
        if let Some((_, ratio)) = hold {
            *ratio = lift;
        }
        self.rows.push(row);
    }

    /// The limits' ratios of a part with its wall at `wall` of its range, -1, 0 or 1.
    fn at(&self, elastic: &Elasticity, at: Option<&At>, wall: f64) -> Vec<f64> {
        let (Some(jaw), Some(at)) = (&self.jaw, at) else { return alloc::vec![0.0; self.limits.len()] };
        let asked = self.asked(elastic, jaw, wall);
        self.limits.iter().map(|limit| asked.at(*limit, at)).collect()
    }

    fn asked<'a>(&'a self, elastic: &'a Elasticity, jaw: &'a BoredJaw, wall: f64) -> Asked<'a> {
        let other = if wall < -0.5 { &self.walls[0] } else { &self.walls[1] };
        let face = match other {
            Some(Wall::Done(_, face)) if wall.abs() > 0.5 => Some(face),
            _ => None,
        };
        Asked { elastic, thin: face, jaw, corners: &self.corners }
    }

    /// The set-up with one size of part, and jaws bored `fit` m larger on diameter against it.
    fn with_fit(&self, fit: f64) -> Setup {
        let mut setup = self.setup.clone();
        let middle = (setup.grip.upper_deviation + setup.grip.lower_deviation) / 2.0;
        let part = middle - Length::new::<meter>(fit);
        (setup.grip.upper_deviation, setup.grip.lower_deviation) = (part, part);
        setup
    }

    fn tabulate(&mut self) {
        let sides = self.sides();
        let column = |at: usize| {
            let mut column: Vec<f64> = self.rows.iter().map(|row| row.get(at).copied().unwrap_or(0.0)).collect();
            // What never lifts off a jaw does not where the grip is lost, either.
            if column.contains(&FAR) {
                column.fill(FAR);
            }
            column
        };
        self.tables = (0..self.limits.len()).filter_map(|at| Table::new(&sides, column(at))).collect();
        let [grip, fit, wall] = sides;
        self.slip = Table::new(&[grip, fit, wall, self.slips.len()], self.slips.concat());
    }

    /// Grip over the one expected, fit in m, wall from -1 to 1, and cutting force over that entered.
    fn drawn_part(&self, draws: &[f64; 7]) -> ([f64; 3], f64) {
        let ranges = &self.setup.ranges;
        let way = |at: usize| 2.0 * draws[at] - 1.0;
        let gauge = way(2) * ranges.pressure.value / self.gripping_pressure();
        let grip = (1.0 + way(1) * ranges.condition.value) * (1.0 + gauge);
        let half = (self.setup.grip.upper_deviation - self.setup.grip.lower_deviation).value / 2.0;
        let fit = way(5) * ranges.bore.value - way(3) * half;
        ([grip, fit, way(4)], 1.0 + way(6) * ranges.force.value)
    }

    /// The limits' ratios of a part by the tables.
    fn by_table(&self, draws: &[f64; 7]) -> Vec<f64> {
        let ([grip, fit, wall], force) = self.drawn_part(draws);
        let share = |value: f64, range: f64| if range > 0.0 { 0.5 + 0.5 * value / range } else { 0.5 };
        let place = [share(grip - 1.0, self.grip_range()), share(fit, self.fit_range()), 0.5 + 0.5 * wall, draws[0]];
        let slip = self.slip.as_ref().map_or(0.0, |table| table.at(&place));
        let ratio = |(table, limit): (&Table, &Limit)| {
            let value = table.at(&place).max(0.0);
            // The load scales the hold; lifting off a jaw does not hang on friction.
            if *limit == Limit::WorstHold { value.min(slip.max(0.0)) / force } else { value }
        };
        self.tables.iter().zip(&self.limits).map(ratio).collect()
    }

    /// Works one of the drawn parts out, with its wall at the nearest that shape work was done for.
    fn check(&mut self, elastic: &Elasticity) {
        let part = self.checked;
        self.checked += 1;
        let mut draws = draws(part);
        draws[4] = libm::round(2.0 * draws[4]) / 2.0;
        let ([grip, fit, wall], _) = self.drawn_part(&draws);
        let mut setup = self.with_fit(fit);
        let way = |at: usize| 2.0 * draws[at] - 1.0;
        setup.ranges.bore = Length::default();
        let ends = Ends { friction: way(0), force: way(6), ..Ends::default() };
        let Some(jaw) = &self.jaw else { return };
        let at = Corner::of(&setup, &ends).times(grip).at(jaw, setup.pressure.value, setup.speed.value);
        let exact = self.at(elastic, at.as_ref(), wall);
        for (exact, table) in exact.iter().zip(self.by_table(&draws)) {
            // Far from a limit, an error is of no account.
            self.table_error = self.table_error.max((exact - table).abs() / exact.max(1.0));
        }
    }

    fn sum_up(&self, elastic: &Elasticity) -> Sampled {
        let keeps =
            |at: usize, ratio: f64| if self.limits[at] == Limit::WorstHold { ratio >= 1.0 } else { ratio <= 1.0 };
        let parts = f64::from(PARTS);
        let share = |test: &dyn Fn(&Vec<f64>) -> bool| self.drawn.iter().filter(|row| test(row)).count() as f64 / parts;
        let good = share(&|row| row.iter().enumerate().all(|(at, ratio)| keeps(at, *ratio)));
        let inputs: Vec<Vec<f64>> =
            (0..VARYING.len()).map(|input| (0..PARTS).map(|part| draws(part)[input]).collect()).collect();
        let output = |(at, limit): (usize, &Limit)| {
            let values: Vec<f64> = self.drawn.iter().map(|row| row[at]).collect();
            let mut driven_by: Vec<(&'static str, &'static str, Share)> = Vec::new();
            for ((entry, name), draws) in VARYING.iter().zip(&inputs) {
                let Some(share) = first_order(draws, &values) else { continue };
                let place = driven_by.partition_point(|(.., other)| other.of_variance >= share.of_variance);
                driven_by.insert(place, (entry, name, share));
            }
            let (_, name, ..) = limit.words(elastic);
            let name = if *limit == Limit::WorstHold { "Hold".into() } else { name };
            SampledOutput { name, good: share(&|row| keeps(at, row[at])), driven_by }
        };
        Sampled {
            parts: PARTS,
            seed: SEED,
            good,
            error: crate::sqrt(good * (1.0 - good) / parts),
            table_error: self.table_error,
            outputs: self.limits.iter().enumerate().map(output).collect(),
        }
    }
}

/// The draws of one part, in the order of [`VARYING`].
fn draws(part: u32) -> [f64; 7] {
    core::array::from_fn(|input| draw(SEED, part, input as u32))
}

impl Sampled {
    /// In a few words: how many parts come out good, and how sure that is.
    #[must_use]
    pub fn words(&self) -> Text {
        let percent = |share: f64| Text::number(crate::quantity::fixed(100.0 * share, 1));
        Text::of(
            "{} % of {} parts drawn at random come out good (give or take {} %, seed {}; the table they are read from is off by at most {} % of a limit on {} of them worked out one by one).",
        )
        .with(percent(self.good))
        .with(self.parts)
        .with(percent(2.0 * self.error))
        .with(Text::number(self.seed.to_string()))
        .with(percent(self.table_error))
        .with(CHECKED)
    }
}

impl Engine {
    /// How parts of a set-up come out within their ranges, shape work and all. On a page, take [`SampleWork`] a slice
    /// at a time.
    ///
    /// ```
    /// use holdround_core::{Engine, setup::{Entries, Setup}};
    /// let setup = Setup::read(&Entries::default()).unwrap();
    /// let sampled = Engine::default().sampled(&setup).unwrap();
    /// assert!((0.0..=1.0).contains(&sampled.good));
    /// ```
    #[must_use]
    pub fn sampled(&mut self, setup: &Setup) -> Option<Sampled> {
        let mut work = SampleWork::new(setup);
        while work.step(self) {}
        work.sampled
    }
}
