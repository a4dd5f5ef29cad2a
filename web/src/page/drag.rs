//! Sizes dragged on the drawing.

use holdround_core::quantity::{Kind, UnitSystem, decimal, parse_number};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, PointerEvent};

use super::Page;

/// Movement below which a press is no drag, in pixels.
const LEAST: f64 = 4.0;

/// A size on its way.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Drag {
    /// The entry it changes.
    path: String,
    /// Which pointer drags it.
    pointer: i32,
    /// Whether it is dragged upward, or to the right.
    upward: bool,
    /// Where it began, in pixels.
    from: f64,
    /// The size there, m.
    size: f64,
    /// Change of the size for a pixel, m.
    per_pixel: f64,
    /// Whether it was moved at all.
    moved: bool,
}

impl Drag {
    /// Takes hold of the handle under the pointer, if there is one.
    fn of(event: &PointerEvent) -> Option<Self> {
        let handle = event.target()?.dyn_into::<Element>().ok()?.closest("[data-drag]").ok()??;
        let number = |name: &str| parse_number(&handle.get_attribute(name)?).ok();
        let sheet = handle.closest("svg").ok()??;
        let upward = handle.get_attribute("data-axis")? == "r";
        Some(Self {
            path: handle.get_attribute("data-drag")?,
            pointer: event.pointer_id(),
            upward,
            from: place(event, upward),
            size: number("data-value")?,
            per_pixel: number("data-scale")? / pixels_per_unit(&sheet)?,
            moved: false,
        })
    }

    /// The size with the pointer at `place`, m; none if it would be nothing.
    fn size_at(&self, place: f64) -> Option<f64> {
        let toward = if self.upward { self.from - place } else { place - self.from };
        Some(self.size + toward * self.per_pixel).filter(|size| *size > 0.0 && size.is_finite())
    }
}

impl Page {
    /// A pointer pressed, perhaps on a handle.
    pub(super) fn take_hold(&mut self, event: &Event) {
        let Some(event) = event.dyn_ref::<PointerEvent>().filter(|event| event.is_primary()) else { return };
        self.drag = Drag::of(event);
        if self.drag.is_some() {
            event.prevent_default();
            self.desk.history.rest();
        }
    }

    /// A pointer moved, perhaps with a handle.
    pub(super) fn drag(&mut self, event: &Event) {
        let Some(event) = event.dyn_ref::<PointerEvent>() else { return };
        let Some(drag) = self.drag.as_mut().filter(|drag| drag.pointer == event.pointer_id()) else { return };
        let place = place(event, drag.upward);
        drag.moved |= (place - drag.from).abs() >= LEAST;
        let Some(size) = drag.size_at(place).filter(|_| drag.moved) else { return };
        let path = drag.path.clone();
        let typed = rounded(self.desk.units.unit(Kind::Length).from_si(size), self.desk.units.system);
        self.desk.type_in(&path, &typed);
        self.refresh();
    }

    /// A pointer lifted: what it dragged is one change.
    pub(super) fn let_go(&mut self) {
        if self.drag.take().is_some_and(|drag| drag.moved) {
            self.desk.history.rest();
            self.refresh();
        }
    }
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

/// A dragged size as it would be typed: to 0.1 mm or 0.005 in, but never to nothing.
fn rounded(value: f64, system: UnitSystem) -> String {
    let step = match system {
        UnitSystem::Metric => 0.1,
        UnitSystem::Inch => 0.005,
    };
    decimal((value / step).round().max(1.0) * step, 3)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dragged_sizes_are_round() {
        for (value, system, typed) in [
            (79.9612, UnitSystem::Metric, "80"),
            (80.0612, UnitSystem::Metric, "80.1"),
            (0.01, UnitSystem::Metric, "0.1"),
            (3.1512, UnitSystem::Inch, "3.15"),
            (3.1531, UnitSystem::Inch, "3.155"),
        ] {
            assert_eq!(rounded(value, system), typed, "{value}");
        }
    }

    #[test]
    fn a_size_follows_the_pointer_and_never_goes_below_nothing() {
        let drag = Drag {
            path: "part.length".into(),
            pointer: 1,
            upward: false,
            from: 100.0,
            size: 0.03,
            per_pixel: 0.001,
            moved: false,
        };
        let longer = drag.size_at(110.0).unwrap();
        assert!((longer - 0.04).abs() < 1e-12, "ten pixels to the right are 10 mm more: {longer}");
        assert_eq!(drag.size_at(60.0), None, "40 mm less than 30 mm is no size");
        let wider = Drag { upward: true, ..drag }.size_at(90.0).unwrap();
        assert!((wider - 0.04).abs() < 1e-12, "upward is larger: {wider}");
    }
}
