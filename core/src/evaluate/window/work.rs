//! The window found a slice at a time.

use alloc::vec::Vec;

use super::corner::with_wall;
use super::limit::{Asked, Corners, Limit};
use super::wall::Wall;
use super::{Boundary, Window};
use crate::evaluate::elastic::{Elasticity, Work};
use crate::evaluate::engine::{Engine, Progress};
use crate::evaluate::grip_at_rest::BEYOND_READINGS;
use crate::jaw::BoredJaw;
use crate::setup::{GripFrom, Setup};
use crate::window::{Curve, Over, Plane};

/// How far beyond the cylinder's plate is looked, as a share of its pressure.
const BEYOND: f64 = 0.06;
/// Least pressure looked at, as a share of the greatest.
const LEAST: f64 = 1e-3;

/// The window of a set-up on its way. It hangs on everything but the pressure and the speed that are set.
#[derive(Debug)]
pub struct WindowWork {
    pub(super) setup: Setup,
    pub(super) jaw: Option<BoredJaw>,
    corners: Corners,
    over: Option<f64>,
    with_shape: bool,
    pub(super) limits: Vec<Limit>,
    pub(super) thin_setup: Option<Setup>,
    pub(super) thin: Option<Wall>,
    earlier: Option<Wall>,
    begun: bool,
    next: usize,
    pub(super) window: Window,
}

impl WindowWork {
    /// Work that has not begun.
    #[must_use]
    pub fn new(setup: &Setup) -> Self {
        let thin = with_wall(setup, -setup.ranges.wall.value);
        Self {
            jaw: BoredJaw::new(setup.jaw()).ok(),
            corners: Corners::of(setup, &thin.clone().unwrap_or_else(|| setup.clone())),
            over: None,
            with_shape: true,
            limits: Vec::new(),
            thin: None,
            earlier: None,
            begun: false,
            next: 0,
            window: Window {
                pressures: pressures(setup),
                greatest_speed: setup.chuck.max_speed.value,
                is_covered: thin.is_some(),
                boundaries: Vec::new(),
            },
            thin_setup: thin,
            setup: setup.clone(),
        }
    }

    /// The same at one speed alone, rad/s: where only [`Window::span`] at this speed is wanted.
    #[must_use]
    pub fn at_speed(setup: &Setup, speed: f64) -> Self {
        Self { over: Some(speed), ..Self::new(setup) }
    }

    /// The same without the limits of round form and size, as for a roughing cut.
    #[must_use]
    pub fn without_shape(self) -> Self {
        Self { with_shape: false, ..self }
    }

    /// Takes over the shape work of the thinnest wall from earlier work, where it is of the same part and jaws.
    pub fn take_over(&mut self, earlier: Self) {
        self.earlier = earlier.thin;
    }

    /// Does one slice, a few milliseconds, on an engine that keeps the shape work; false when nothing is left to do.
    pub fn step(&mut self, engine: &mut Engine) -> bool {
        let Some(jaw) = &self.jaw else { return false };
        if engine.prepare(&self.setup) != Progress::Done {
            return true;
        }
        let Some((_, Work::Done(elastic))) = &engine.kept else { return false };
        if !self.begun {
            self.begun = true;
            self.limits = Limit::all(&self.setup, elastic);
            self.limits.retain(|limit| self.with_shape || !limit.of_form());
            let plane =
                Plane { pressure: self.window.pressures, speed: self.over.unwrap_or(self.window.greatest_speed) };
            let over = |limit: Limit| if self.over.is_some() { Over::Greatest } else { limit.over() };
            self.window.boundaries =
                self.limits.iter().map(|limit| boundary(*limit, over(*limit), plane, elastic)).collect();
            let thin = self.thin_setup.as_ref().filter(|thin| thin.part.profile != self.setup.part.profile);
            self.thin = thin.map(|thin| Wall::begin(thin, jaw, elastic.density, self.earlier.take()));
            return true;
        }
        let Some(limit) = self.limits.get(self.next) else { return false };
        if limit.of_shape()
            && let Some(wall @ Wall::Under { .. }) = self.thin.take_if(|wall| matches!(wall, Wall::Under { .. }))
        {
            self.thin = Some(wall.slice());
            return true;
        }
        let thin = match &self.thin {
            Some(Wall::Done(_, face)) => Some(face),
            Some(Wall::Refused) => {
                self.window.is_covered = false;
                None
            }
            _ => None,
        };
        let covered = self.window.is_covered || !limit.of_shape();
        let asked = Asked { elastic, thin, jaw, corners: &self.corners };
        let more = match self.window.boundaries.get_mut(self.next) {
            Some(boundary) => boundary
                .curve
                .step(&|pressure, speed| if covered { asked.ratio(*limit, pressure, speed) } else { f64::INFINITY }),
            None => false,
        };
        self.next += usize::from(!more);
        self.next < self.limits.len()
    }

    /// The window as far as it is found.
    #[must_use]
    pub fn window(&self) -> &Window {
        &self.window
    }

    /// The window as far as it is found.
    #[must_use]
    pub fn into_window(self) -> Window {
        self.window
    }
}

fn boundary(limit: Limit, over: Over, plane: Plane, elastic: &Elasticity) -> Boundary {
    let (key, name, says, moves) = limit.words(elastic);
    Boundary { key, name, says, moves, curve: Curve::new(limit.keep(), over, plane) }
}

/// The pressures to look at.
fn pressures(setup: &Setup) -> [f64; 2] {
    let plate = setup.chuck.max_pressure.value;
    match &setup.chuck.grip_from {
        GripFrom::Gauge(readings) => {
            let all = readings.iter().map(|(pressure, _)| pressure.value);
            let (low, high) = (all.clone().fold(f64::INFINITY, f64::min), all.fold(0.0, f64::max));
            // The gauge's own range must not lead beyond what is trusted either.
            let beyond = (BEYOND_READINGS * (high - low) - setup.ranges.pressure.value).max(0.0) * (1.0 - 1e-9);
            [(low - beyond).max(LEAST * plate), high + beyond]
        }
        _ => [LEAST * plate, (1.0 + BEYOND) * plate],
    }
}
