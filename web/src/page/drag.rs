//! Sizes dragged on the drawing.

use holdround_core::quantity::{Kind, UnitSystem, decimal, parse_number};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, PointerEvent};

use super::Page;
use crate::root;
use crate::view::drawing::at_most;

/// Movement below which a press is no drag, in pixels.
const LEAST: f64 = 4.0;
/// Decimals that hold any round figure.
const DECIMALS: usize = 3;
/// Finest steps of a dragged size, in its unit.
const FINEST_METRIC: f64 = 0.1;
const FINEST_INCH: f64 = 0.005;

/// A handle on the drawing, in the unit shown.
#[derive(Clone, Debug, PartialEq)]
struct Handle {
    /// The entry it changes; empty if it parts a step in two.
    path: String,
    /// Whether it is dragged upward, or to the right.
    upward: bool,
    /// The size as it stands.
    size: f64,
    /// The least and the most it may become.
    range: [f64; 2],
    /// Change of the size for a pixel.
    per_pixel: f64,
    /// What sizes are rounded to.
    step: f64,
}

impl Handle {
    /// The handle that was hit, if one was.
    fn of(event: &Event, system: UnitSystem) -> Option<Self> {
        let handle = event.target()?.dyn_into::<Element>().ok()?.closest("[data-drag]").ok()??;
        let number = |name: &str| parse_number(&handle.get_attribute(name)?).ok();
        let sheet = handle.closest("svg").ok()??;
        let per_pixel = number("data-scale")? / pixels_per_unit(&sheet)?;
        Some(Self {
            path: handle.get_attribute("data-drag")?,
            upward: handle.get_attribute("data-axis")? == "r",
            size: number("aria-valuenow")?,
            range: [number("aria-valuemin")?, number("aria-valuemax")?],
            per_pixel,
            step: round_step(per_pixel, system),
        })
    }

    /// The size `way` from where it stands, as it would be typed: a round figure within the range.
    fn moved(&self, way: f64) -> f64 {
        let [least, most] = self.range.map(|end| end / self.step);
        // Within rounding of a figure is that figure.
        let (least, most) = ((least - 1e-6).ceil(), (most + 1e-6).floor());
        ((self.size + way) / self.step).round().max(least).min(most) * self.step
    }
}

/// A size on its way.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Drag {
    handle: Handle,
    /// Which pointer drags it.
    pointer: i32,
    /// Where it began, in pixels.
    from: f64,
    /// Whether it was moved at all.
    moved: bool,
}

impl Drag {
    /// How far the size is dragged with the pointer at `place`.
    fn way(&self, place: f64) -> f64 {
        let toward = if self.handle.upward { self.from - place } else { place - self.from };
        toward * self.handle.per_pixel
    }
}

impl Page {
    /// A pointer pressed, perhaps on a handle, or on a step that it chooses.
    pub(super) fn take_hold(&mut self, event: &Event) {
        let Some(event) = event.dyn_ref::<PointerEvent>().filter(|event| event.is_primary()) else { return };
        if self.hold_point(event) {
            return;
        }
        self.drag = Handle::of(event, self.desk.units.system).map(|handle| Drag {
            from: place(event, handle.upward),
            handle,
            pointer: event.pointer_id(),
            moved: false,
        });
        if let Some(drag) = &self.drag {
            event.prevent_default();
            // A field keeps what stands in it while it has the keyboard: the handle takes it over.
            if let Some(handle) = root::by_id(&format!("drag-{}", drag.handle.path)) {
                root::give_keyboard(&handle);
            }
            self.desk.history.rest();
        } else if let Some(step) = step_under(event) {
            self.choose_step(step);
        }
    }

    /// Gives the handles to a step.
    pub(super) fn choose_step(&mut self, step: usize) {
        self.desk.choose_step(step);
        self.show();
    }

    /// A pointer moved, perhaps with a handle.
    pub(super) fn drag(&mut self, event: &Event) {
        let Some(event) = event.dyn_ref::<PointerEvent>() else { return };
        if self.move_point(event) {
            return;
        }
        let Some(drag) = self.drag.as_mut().filter(|drag| drag.pointer == event.pointer_id()) else { return };
        let place = place(event, drag.handle.upward);
        drag.moved |= (place - drag.from).abs() >= LEAST;
        if drag.moved {
            let (handle, way) = (drag.handle.clone(), drag.way(place));
            self.set_size(&handle, way);
        }
    }

    /// A pointer lifted: what it dragged is one change.
    pub(super) fn let_go(&mut self, event: &Event) {
        self.drop_point();
        let Some(drag) = self.drag.take() else { return };
        // A browser that takes the pointer away, to scroll, asks for nothing.
        if drag.handle.path.is_empty() && event.type_() == "pointerup" {
            self.part_step(&drag.handle);
        } else if drag.moved {
            self.desk.history.rest();
            self.refresh();
        }
    }

    /// A key on a handle; whether it meant something there.
    pub(super) fn nudge(&mut self, event: &Event, key: &str) -> bool {
        let Some(handle) = Handle::of(event, self.desk.units.system) else { return false };
        let way = match key {
            "ArrowUp" | "ArrowRight" => handle.step,
            "ArrowDown" | "ArrowLeft" => -handle.step,
            "PageUp" => 10.0 * handle.step,
            "PageDown" => -10.0 * handle.step,
            "Enter" | " " if handle.path.is_empty() => {
                self.part_step(&handle);
                return true;
            }
            _ => return false,
        };
        self.set_size(&handle, way);
        true
    }

    fn set_size(&mut self, handle: &Handle, way: f64) {
        let size = handle.moved(way);
        if handle.path.is_empty() {
            self.desk.parting = Some(self.desk.units.unit(Kind::Length).to_si(size));
            self.show();
        } else {
            self.desk.type_in(&handle.path, &decimal(size, DECIMALS));
            self.refresh();
        }
    }

    /// Parts the chosen step where its handle stands.
    fn part_step(&mut self, handle: &Handle) {
        let unit = self.desk.units.unit(Kind::Length);
        let place = self.desk.parting.unwrap_or_else(|| unit.to_si(handle.moved(0.0)));
        self.desk.history.rest();
        self.desk.part_chosen(place);
        self.refresh();
    }
}

/// The step of the part under the pointer.
fn step_under(event: &Event) -> Option<usize> {
    let area = event.target()?.dyn_into::<Element>().ok()?.closest("[data-step]").ok()??;
    area.get_attribute("data-step")?.parse().ok()
}

fn place(event: &PointerEvent, upward: bool) -> f64 {
    f64::from(if upward { event.client_y() } else { event.client_x() })
}

/// How large a unit of the drawing stands on the screen; the drawing fills its place as far as its proportions let it.
fn pixels_per_unit(sheet: &Element) -> Option<f64> {
    let view_box = sheet.get_attribute("viewBox")?;
    let numbers: Vec<f64> = view_box.split(' ').filter_map(|number| parse_number(number).ok()).collect();
    let [_, _, wide, high] = numbers[..] else { return None };
    let room = sheet.get_bounding_client_rect();
    Some((room.width() / wide).min(room.height() / high)).filter(|scale| *scale > 0.0 && scale.is_finite())
}

/// The round figure that a size is dragged by: about what a pixel shows, and no finer than a drawing gives.
fn round_step(per_pixel: f64, system: UnitSystem) -> f64 {
    let finest = match system {
        UnitSystem::Metric => FINEST_METRIC,
        UnitSystem::Inch => FINEST_INCH,
    };
    at_most(per_pixel).map_or(finest, |step| step.max(finest))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn handle() -> Handle {
        let (per_pixel, range) = (0.3, [2.0, 80.0]);
        let step = round_step(per_pixel, UnitSystem::Metric);
        Handle { path: "part.length".into(), upward: false, size: 30.04, range, per_pixel, step }
    }

    #[test]
    fn dragged_sizes_are_round_in_the_unit_shown() {
        for (per_pixel, system, step) in [
            (0.001, UnitSystem::Metric, 0.1),
            (0.57, UnitSystem::Metric, 0.5),
            (0.004, UnitSystem::Inch, 0.005),
            (0.03, UnitSystem::Inch, 0.02),
            (f64::NAN, UnitSystem::Inch, 0.005),
        ] {
            assert_eq!(round_step(per_pixel, system), step, "{per_pixel} a pixel");
        }
        assert_eq!(decimal(handle().moved(0.11), DECIMALS), "30.2", "to the nearest step");
        assert_eq!(decimal(handle().moved(-1000.0), DECIMALS), "2", "no less than the least");
        assert_eq!(decimal(handle().moved(1000.0), DECIMALS), "80", "no more than the most");
        let narrow = Handle { range: [29.95, 30.31], ..handle() };
        assert_eq!(decimal(narrow.moved(9.0), DECIMALS), "30.2", "the last round figure within the range");
    }

    #[test]
    fn a_size_follows_the_pointer() {
        let drag = |upward| Drag { handle: Handle { upward, ..handle() }, pointer: 1, from: 100.0, moved: false };
        assert!((drag(false).way(110.0) - 3.0).abs() < 1e-12, "ten pixels to the right are more");
        assert!((drag(true).way(110.0) + 3.0).abs() < 1e-12, "ten pixels down are less");
    }
}
