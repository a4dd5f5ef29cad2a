//! The window: between which pressures, over speed, the part is held, stays in tolerance, and no plate is exceeded.

mod corner;
mod deciding;
mod limit;
mod opening;
mod sampling;
mod wall;
mod work;

pub use deciding::Decider;
pub use limit::Mover;
pub use opening::{Opening, OpeningWork};
pub use sampling::{SampleWork, Sampled, SampledOutput};
pub use work::WindowWork;

use alloc::string::String;
use alloc::vec::Vec;

use super::engine::Engine;
use crate::setup::Setup;
use crate::text::Text;
use crate::window::{Curve, Keep};

/// Straight pieces that a curve is handed out in, at least: bends of a parabola between them stay under plotting
/// accuracy.
const PIECES: usize = 24;

/// The window of a set-up, as far as it is found.
#[derive(Clone, Debug)]
pub struct Window {
    /// Least and greatest pressure looked at, Pa: from none to a little beyond the cylinder's plate, or as far as
    /// gauge readings are trusted.
    pub pressures: [f64; 2],
    /// The speed on the plate, rad/s.
    pub greatest_speed: f64,
    /// Whether the model covers the part with its thinnest wall; without that no pressure is called good.
    pub is_covered: bool,
    /// Every limit, with its curve.
    pub boundaries: Vec<Boundary>,
}

/// One limit and its curve.
#[derive(Clone, Debug)]
pub struct Boundary {
    /// Its key: `hold`, `roundness.0`.
    pub key: String,
    /// Its name.
    pub name: Text,
    /// What happens beyond it.
    pub says: &'static str,
    /// What would move it: an entry, and how.
    pub moves: &'static [Mover],
    curve: Curve,
}

/// The pressures that are good at one speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Least and greatest good pressure, Pa; crossed where none is good.
    pub pressures: [f64; 2],
    /// Which boundary sets either; none where it is the end of what was looked at.
    pub by: [Option<usize>; 2],
}

impl Span {
    /// Whether any pressure is good.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.pressures[0] <= self.pressures[1]
    }

    /// Greatest less least good pressure, Pa: below 0 by what is wanting where none is good.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.pressures[1] - self.pressures[0]
    }
}

impl Boundary {
    /// Which side of it is good.
    #[must_use]
    pub fn keep(&self) -> Keep {
        self.curve.keep()
    }

    /// Speeds (rad/s) and pressures (Pa) to draw straight lines between; empty before it is found. Where it lies at
    /// an end of the pressures looked at, the limit is out of reach.
    #[must_use]
    pub fn points(&self) -> Vec<[f64; 2]> {
        self.curve.points(PIECES)
    }

    /// The pressure at which it is reached at `speed` rad/s, Pa; none before it is found.
    #[must_use]
    pub fn at(&self, speed: f64) -> Option<f64> {
        (!self.curve.is_empty()).then(|| self.curve.at(speed))
    }
}

impl Window {
    /// The pressures that are good at `speed` rad/s, by the boundaries found so far. None of them is beyond the
    /// plate's speed.
    #[must_use]
    pub fn span(&self, speed: f64) -> Span {
        let mut span = Span { pressures: self.pressures, by: [None, None] };
        for (at, boundary) in self.boundaries.iter().enumerate() {
            let Some(pressure) = boundary.at(speed) else { continue };
            let [low, high] = &mut span.pressures;
            match boundary.keep() {
                Keep::AtLeast if pressure > *low => (*low, span.by[0]) = (pressure, Some(at)),
                Keep::AtMost if pressure < *high => (*high, span.by[1]) = (pressure, Some(at)),
                _ => {}
            }
        }
        // A limit that not even the greatest pressure keeps leaves nothing.
        if span.by[0].is_some() && span.pressures[0] >= self.pressures[1] {
            span.pressures[1] = span.pressures[1].min(self.pressures[1] * (1.0 - 1e-9));
        }
        if speed > self.greatest_speed * (1.0 + 1e-9) {
            span.pressures[1] = span.pressures[0].min(span.pressures[1]) - 1.0;
        }
        span
    }

    /// The pressure recommended at `speed`, Pa: the middle of what is good. None where nothing is.
    #[must_use]
    pub fn recommended(&self, speed: f64) -> Option<f64> {
        let span = self.span(speed);
        span.is_open().then(|| f64::midpoint(span.pressures[0], span.pressures[1]))
    }

    /// The greatest speed at which any pressure is good, rad/s, to a thousandth of the plate's; none if there is none
    /// even at standstill.
    #[must_use]
    pub fn fastest(&self) -> Option<f64> {
        let speed = |k: i32| self.greatest_speed * f64::from(k) / 1000.0;
        (0..=1000).take_while(|k| self.span(speed(*k)).is_open()).last().map(speed)
    }
}

impl Engine {
    /// The whole window of a set-up, shape work and all. On a page, take [`WindowWork`] a slice at a time.
    ///
    /// ```
    /// use holdround_core::{Engine, setup::{Entries, Setup}};
    /// let setup = Setup::read(&Entries::default()).unwrap();
    /// let window = Engine::default().window(&setup);
    /// let [still, turning] = [0.0, 300.0].map(|speed| window.span(speed));
    /// assert!(turning.pressures[0] >= still.pressures[0], "spin takes from an outside grip");
    /// ```
    #[must_use]
    pub fn window(&mut self, setup: &Setup) -> Window {
        let mut work = WindowWork::new(setup);
        while work.step(self) {}
        work.into_window()
    }
}
