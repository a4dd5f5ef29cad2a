//! The window on the page: traced a slice at a time, and its point moved.

use holdround_core::quantity::{Kind, decimal};
use holdround_core::setup::Entries;
use holdround_core::setup::Setup;
use holdround_core::setup::jaw_inputs::{FINISH_PRESSURE, PRESSURE, SPEED};
use holdround_core::{Decider, Opening, OpeningWork, SampleWork, Sampled, Span, Window, WindowWork};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, PointerEvent};

use super::desk::Desk;
use super::{Page, SLICE, now};
use crate::root;
use crate::view::title_block;
use crate::view::window::{self, POINT, plane, settable, step};

/// Least time between two drawings of a window on its way, in milliseconds: each costs more than a slice of tracing.
const BETWEEN_DRAWINGS: f64 = 100.0;

/// What is traced, and for which entries.
#[derive(Debug, Default)]
pub(super) struct Tracing {
    /// The entries it is of, but for pressure and speed, on which it does not hang.
    of: Entries,
    work: Option<WindowWork>,
    /// Whether something is still to be traced.
    under: bool,
    /// What bounds it, at which speed.
    bounds: Option<(f64, Bounds)>,
    /// When it was last drawn on its way; at once when it is begun.
    drawn: f64,
    /// To be drawn in the next turn, and whether there is more to trace after that.
    due: Option<bool>,
    /// The grip for the cuts before the last pressure, at which speed.
    rough: Option<(f64, WindowWork, bool)>,
    /// What would open it, at which speed.
    opening: Option<(f64, OpeningWork, bool)>,
    /// How parts come out with what is set.
    sample: Option<SampleWork>,
}

/// What bounds the window at one speed.
#[derive(Clone, Debug)]
pub(crate) struct Bounds {
    /// The pressures that are good.
    pub(crate) span: Span,
    /// The range that decides each boundary, as far as they were asked; none where no range does.
    deciders: Vec<Option<Decider>>,
}

impl Bounds {
    /// The range that decides a boundary; none where no range does.
    pub(crate) fn decider(&self, boundary: Option<usize>) -> Option<Decider> {
        *self.deciders.get(boundary?)?
    }
}

impl Desk {
    /// The window, as far as it is traced.
    pub(crate) fn window(&self) -> Option<&Window> {
        self.tracing.work.as_ref().map(WindowWork::window).filter(|window| !window.boundaries.is_empty())
    }

    /// Whether it is still being traced.
    pub(crate) fn is_tracing(&self) -> bool {
        self.tracing.under
    }

    /// How parts come out with what is set, once that is known.
    pub(crate) fn sampled(&self) -> Option<&Sampled> {
        self.tracing.sample.as_ref().and_then(SampleWork::sampled)
    }

    /// The set-up that the window is drawn of: while finishing, where that has a pressure of its own.
    pub(crate) fn drawn_setup(&self) -> Option<Setup> {
        self.good.as_ref().map(|(setup, _)| setup.while_cutting(true))
    }

    /// The entry that the drawn pressure stands at.
    pub(crate) fn drawn_pressure(&self) -> &'static str {
        let two = self.good.as_ref().is_some_and(|(setup, _)| setup.finish_pressure.is_some());
        if two { FINISH_PRESSURE.path } else { PRESSURE.path }
    }

    /// What bounds the window at the speed set, once it is traced and every boundary was asked.
    pub(crate) fn bounds(&self) -> Option<&Bounds> {
        let (setup, _) = self.good.as_ref().filter(|_| self.is_traced())?;
        let (speed, bounds) = self.tracing.bounds.as_ref()?;
        (*speed == setup.speed.value && bounds.deciders.len() == self.window()?.boundaries.len()).then_some(bounds)
    }

    /// Whether what is traced is of the present entries, but for pressure and speed, on which it does not hang.
    fn is_traced(&self) -> bool {
        let free = [self.drawn_pressure(), SPEED.path];
        self.entries.iter().filter(|(path, _)| !free.contains(path)).eq(self.tracing.of.iter())
    }

    /// The window of the cuts before the last pressure, where there are two, at the speed set.
    pub(crate) fn rough_window(&self) -> Option<&Window> {
        let traced = self.tracing.rough.as_ref().filter(|(.., under)| !under).map(|(_, work, _)| work.window());
        traced.filter(|window| !window.boundaries.is_empty())
    }

    /// Looks for what bounds the window at the speed set, boundary by boundary; false when that is known.
    fn bound(&mut self) -> bool {
        let (Some((setup, _)), Some(work)) = (&self.good, &self.tracing.work) else { return false };
        let speed = setup.speed.value;
        let Some((_, bounds)) = self.tracing.bounds.as_mut().filter(|(known, _)| *known == speed) else {
            self.tracing.bounds = Some((speed, Bounds { span: work.window().span(speed), deciders: Vec::new() }));
            return true;
        };
        let next = bounds.deciders.len();
        let more = next < work.window().boundaries.len();
        if more {
            bounds.deciders.push(work.decided_by(&self.engine, next, speed));
        }
        more
    }

    /// Traces one slice for the cuts before the last pressure; false when nothing is left.
    fn trace_rough(&mut self) -> bool {
        let Some((setup, _)) = self.good.as_ref().filter(|(setup, _)| setup.finish_pressure.is_some()) else {
            self.tracing.rough = None;
            return false;
        };
        let speed = setup.speed.value;
        if self.tracing.rough.as_ref().is_none_or(|(at, ..)| *at != speed) {
            let work = WindowWork::at_speed(&setup.while_cutting(false), speed).without_shape();
            self.tracing.rough = Some((speed, work, true));
        }
        let Some((_, work, under)) = &mut self.tracing.rough else { return false };
        *under = *under && work.step(&mut self.engine);
        *under
    }

    /// Begins to draw parts with what is set.
    pub(super) fn begin_sample(&mut self) {
        let good = self.good.as_ref().filter(|_| self.faults.is_empty());
        // What was still to be drawn was the last: now there is more.
        self.tracing.due = None;
        self.tracing.sample = good.map(|(setup, _)| SampleWork::new(&setup.while_cutting(true)));
    }

    /// Whether no pressure is good at the speed set, as far as is known.
    pub(crate) fn is_shut(&self) -> bool {
        let speed = self.good.as_ref().map(|(setup, _)| setup.speed.value);
        !self.tracing.under
            && self
                .window()
                .zip(speed)
                .is_some_and(|(window, speed)| speed <= window.greatest_speed && !window.span(speed).is_open())
    }

    /// The changes that would open it, most gain first.
    pub(crate) fn openings(&self) -> Vec<&Opening> {
        self.tracing.opening.iter().flat_map(|(_, work, _)| work.found()).collect()
    }

    /// Whether changes are still being tried.
    pub(crate) fn is_opening(&self) -> bool {
        self.tracing.opening.as_ref().is_some_and(|(.., under)| *under)
    }

    /// Begins to trace the window of the present set-up, unless it is the same.
    pub(super) fn begin_window(&mut self) {
        let Some((setup, _)) = self.good.as_ref().filter(|_| self.faults.is_empty()) else { return };
        let setup = &setup.while_cutting(true);
        if self.tracing.work.is_none() || !self.is_traced() {
            let mut of = self.entries.clone();
            of.unset(self.drawn_pressure());
            of.unset(SPEED.path);
            let mut work = WindowWork::new(setup);
            if let Some(earlier) = self.tracing.work.take() {
                work.take_over(earlier);
            }
            self.tracing = Tracing { of, work: Some(work), under: true, ..Tracing::default() };
        }
        let speed = setup.speed.value;
        self.tracing.due = None;
        self.tracing.sample = None;
        if self.tracing.opening.as_ref().is_some_and(|(at, ..)| *at != speed) {
            self.tracing.opening = None;
        }
    }

    /// Traces one slice; false when nothing is left.
    pub(super) fn trace(&mut self) -> bool {
        if self.waiting.is_some() {
            return false;
        }
        let Tracing { work: Some(work), under, .. } = &mut self.tracing else { return false };
        if *under {
            *under = work.step(&mut self.engine);
            return true;
        }
        if self.bound() || self.trace_rough() {
            return true;
        }
        if let Some(sample) = &mut self.tracing.sample
            && sample.step(&mut self.engine)
        {
            return true;
        }
        if !self.is_shut() {
            self.tracing.opening = None;
            return false;
        }
        let Some(setup) = self.drawn_setup() else { return false };
        let (_, work, under) = self
            .tracing
            .opening
            .get_or_insert_with(|| (setup.speed.value, OpeningWork::new(&setup, setup.speed.value), true));
        *under = *under && work.step();
        *under
    }

    /// Sets pressure (Pa) and speed (rad/s) at one go, as they are set at the machine.
    fn set_point(&mut self, pressure: f64, speed: f64) {
        let typed = [(Kind::Pressure, self.drawn_pressure(), pressure), (Kind::RotationalSpeed, SPEED.path, speed)]
            .map(|(kind, path, si)| {
                let unit = self.units.unit(kind);
                let step = step(unit);
                let least = if kind == Kind::Pressure { step } else { 0.0 };
                let value = ((unit.from_si(si) / step).round() * step).max(least);
                (path, format!("{} {}", decimal(value, 2), unit.symbol))
            });
        self.change(Some(POINT), |entries| {
            for (path, text) in &typed {
                entries.set(path, text);
            }
        });
    }
}

impl Page {
    /// Traces the window for a while, and goes on after it.
    pub(super) fn trace(&mut self) {
        if let Some(more) = self.desk.tracing.due.take() {
            self.show_window();
            if self.desk.bounds().is_some() {
                // It tells what the window says once that is known.
                self.regions.show("verdict", title_block::show(&self.desk));
            }
            self.desk.tracing.drawn = now();
            if more {
                self.tracing.restart();
            }
            return;
        }
        let begun = now();
        let was_bound = self.desk.bounds().is_some();
        let mut more = true;
        while more && now() - begun < SLICE {
            more = self.desk.trace();
        }
        let is_bound = self.desk.bounds().is_some();
        if !more || is_bound != was_bound || now() - self.desk.tracing.drawn > BETWEEN_DRAWINGS {
            self.desk.tracing.due = Some(more);
        }
        self.tracing.restart();
    }

    pub(super) fn show_window(&mut self) {
        self.regions.show("window", window::show(&self.desk));
    }

    /// A pointer pressed on the point: it is held.
    pub(super) fn hold_point(&mut self, event: &PointerEvent) -> bool {
        let held = event.target().and_then(|target| target.dyn_into::<Element>().ok());
        let held = held.and_then(|element| element.closest("[data-plane]").ok().flatten());
        let Some(point) = held else { return false };
        event.prevent_default();
        root::give_keyboard(&point);
        self.desk.history.rest();
        self.point = Some(event.pointer_id());
        true
    }

    /// A pointer moved with the point.
    pub(super) fn move_point(&mut self, event: &PointerEvent) -> bool {
        if self.point != Some(event.pointer_id()) {
            return false;
        }
        if let (Some(plane), Some(sheet)) = (plane(&self.desk), root::by_id("window-drawing")) {
            let room = sheet.get_bounding_client_rect();
            let across = (f64::from(event.client_x()) - room.left()) / room.width();
            let down = (f64::from(event.client_y()) - room.top()) / room.height();
            let [pressure, speed] = plane.place(across, down);
            self.set_point(pressure, speed);
        }
        true
    }

    /// A pointer let the point go.
    pub(super) fn drop_point(&mut self) {
        if self.point.take().is_some() {
            self.desk.history.rest();
        }
    }

    /// A key on the point; whether it meant something there.
    pub(super) fn nudge_point(&mut self, event: &Event, key: &str) -> bool {
        let on = event.target().and_then(|target| target.dyn_into::<Element>().ok());
        if on.is_none_or(|element| element.id() != POINT) {
            return false;
        }
        let way = match key {
            "ArrowLeft" => [-1.0, 0.0],
            "ArrowRight" => [1.0, 0.0],
            "ArrowUp" => [0.0, 1.0],
            "ArrowDown" => [0.0, -1.0],
            "PageUp" => [0.0, 10.0],
            "PageDown" => [0.0, -10.0],
            _ => return false,
        };
        let Some(setup) = self.desk.drawn_setup() else { return false };
        let moved = |kind: Kind, si: f64, steps: f64| {
            let unit = self.desk.units.unit(kind);
            unit.to_si(unit.from_si(si) + steps * step(unit))
        };
        let pressure = moved(Kind::Pressure, setup.pressure.value, way[0]);
        let speed = moved(Kind::RotationalSpeed, setup.speed.value, way[1]);
        self.set_point(pressure, speed);
        true
    }

    /// Sets the pressure that is recommended at the speed set.
    pub(super) fn adopt(&mut self) {
        let Some((setup, _)) = &self.desk.good else { return };
        let speed = setup.speed.value;
        let Some(pressure) = self.desk.window().and_then(|window| window.recommended(speed)) else { return };
        self.desk.history.rest();
        self.set_point(settable(pressure, self.desk.units), speed);
        self.desk.history.rest();
    }

    fn set_point(&mut self, pressure: f64, speed: f64) {
        self.desk.set_point(pressure, speed);
        self.move_on(&[self.desk.drawn_pressure(), SPEED.path]);
        self.show_window();
    }
}

/// Opens what is said of a limit.
pub(super) fn open_limit(number: usize) {
    let id = format!("limit-{number}");
    if let Some(limit) = root::by_id(&id) {
        let _opened = limit.set_attribute("open", "");
        if let Some(summary) = limit.first_element_child() {
            root::give_keyboard(&summary);
        }
    }
}
