//! The window as a drawing: pressure across, speed upward, and the limits with their hatching.

use holdround_core::quantity::{Kind, Unit, decimal};
use holdround_core::window::Keep;
use holdround_core::{Boundary, Window};
use maud::{Markup, html};

use super::limits::Shown;
use crate::language::{fill_plain, number, say};
use crate::page::desk::Desk;
use crate::view::drawing::{Anchor, Point, at_least, closed, coordinate, letters, open};

/// The id of the point that is dragged.
pub(crate) const POINT: &str = "window-point";

/// The drawing's own units: its width and height, and its plane within.
const WIDE: f64 = 620.0;
const HIGH: f64 = 440.0;
const PLANE: [f64; 4] = [64.0, 16.0, 600.0, 380.0];
/// Breadth of the hatching along a boundary.
const BREADTH: f64 = 11.0;
/// Least number of divisions of an axis.
const DIVISIONS: f64 = 5.0;
/// Hatchings told apart by angle: of what holds, of what squeezes, of plates.
const HATCHES: [(&str, i32); 3] = [("hatch-hold", 45), ("hatch-form", -45), ("hatch-plate", 20)];

/// The plane of pressure and speed as it lies on the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Plane {
    /// Greatest pressure, Pa.
    pub(crate) pressure: f64,
    /// Greatest speed, rad/s.
    pub(crate) speed: f64,
}

impl Plane {
    fn of(window: &Window) -> Self {
        Self { pressure: window.pressures[1], speed: window.greatest_speed * 1.06 }
    }

    fn point(&self, pressure: f64, speed: f64) -> Point {
        let [left, top, right, bottom] = PLANE;
        let along = (pressure / self.pressure).clamp(0.0, 1.0);
        let up = (speed / self.speed).clamp(0.0, 1.0);
        (left + (right - left) * along, bottom - (bottom - top) * up)
    }

    /// Pressure and speed at a share of the drawing's width and height.
    pub(crate) fn place(&self, across: f64, down: f64) -> [f64; 2] {
        let [left, top, right, bottom] = PLANE;
        let along = ((across * WIDE - left) / (right - left)).clamp(0.0, 1.0);
        let up = ((bottom - down * HIGH) / (bottom - top)).clamp(0.0, 1.0);
        [along * self.pressure, up * self.speed]
    }
}

/// The plane drawn for the window on the desk.
pub(crate) fn plane(desk: &Desk) -> Option<Plane> {
    desk.window().map(Plane::of)
}

pub(super) fn draw(desk: &Desk, window: &Window, shown: &[Shown<'_>], pressure: f64, speed: f64) -> Markup {
    let plane = Plane::of(window);
    let [left, top, right, bottom] = PLANE;
    let [pressures, speeds] = [Kind::Pressure, Kind::RotationalSpeed].map(|kind| desk.units.unit(kind));
    let plate = plane.point(0.0, window.greatest_speed).1;
    let (x, y) = plane.point(pressure, speed);
    let recommended = window.recommended(speed).map(|pressure| plane.point(pressure, speed));
    let spoken =
        format!("{}, {}", desk.units.show(Kind::Pressure, pressure), desk.units.show(Kind::RotationalSpeed, speed));
    html! {
        svg class="view window" viewBox={ "0 0 " (coordinate(WIDE)) " " (coordinate(HIGH)) } id="window-drawing"
            role="group" aria-label=(say("Window: clamping pressure across, spindle speed upward")) xmlns="http://www.w3.org/2000/svg" {
            defs { @for (id, angle) in HATCHES { (hatching(id, angle)) } }
            path class="good" d=(good(window, plane)) {}
            path class="grid" d=(grid(plane, pressures, speeds)) {}
            (band("hatch-plate", &[(left, plate), (right, plate)], &[(right, plate - BREADTH), (left, plate - BREADTH)]))
            path class="limit" d=(open(&[(left, plate), (right, plate)])) {}
            (letters((right - 4.0, plate + 20.0), Anchor::End, "note", say("plate")))
            @for limit in shown { (curve(limit, plane)) }
            @for (at, limit) in shown.iter().enumerate() { (balloon(limit, plane, at)) }
            path class="outline" d={ (closed(&[(left, top), (right, top), (right, bottom), (left, bottom)])) } {}
            (axes(plane, pressures, speeds))
            @if let Some((x, y)) = recommended {
                path class="recommended" d={ (open(&[(x - 13.0, y), (x + 13.0, y)])) (open(&[(x, y - 13.0), (x, y + 13.0)])) } {}
            }
            g class="handle plane" id=(POINT) role="slider" tabindex="0" data-plane="" aria-label=(say("Pressure and speed set: arrows left and right for pressure, up and down for speed"))
                aria-valuenow=(decimal(pressures.from_si(pressure), 3)) aria-valuemin="0"
                aria-valuemax=(decimal(pressures.from_si(plane.pressure), 3)) aria-valuetext=(spoken) {
                path class="grasp" d={ (open(&[(x, y)])) "h.01" } {}
                circle class="knob" cx=(coordinate(x)) cy=(coordinate(y)) r="10" {}
            }
        }
    }
}

fn hatching(id: &str, angle: i32) -> Markup {
    html! {
        pattern id=(id) width="6" height="6" patternUnits="userSpaceOnUse" patternTransform={ "rotate(" (angle) ")" } {
            path class="hatch" d="M0 0L0 6" {}
        }
    }
}

/// The area of good pressures over speed.
fn good(window: &Window, plane: Plane) -> String {
    const ROWS: u32 = 48;
    let mut sides: [Vec<Point>; 2] = [Vec::new(), Vec::new()];
    for row in 0..=ROWS {
        let speed = window.greatest_speed * f64::from(row) / f64::from(ROWS);
        let span = window.span(speed);
        if !span.is_open() {
            break;
        }
        for (side, pressure) in sides.iter_mut().zip(span.pressures) {
            side.push(plane.point(pressure, speed));
        }
    }
    let [low, high] = sides;
    if low.len() < 2 {
        return String::new();
    }
    closed(&low.into_iter().chain(high.into_iter().rev()).collect::<Vec<_>>())
}

fn key(boundary: &Boundary) -> &'static str {
    match boundary.keep() {
        Keep::AtLeast => HATCHES[0].0,
        Keep::AtMost if matches!(boundary.key.as_str(), "pressure" | "draw" | "grip") => HATCHES[2].0,
        Keep::AtMost => HATCHES[1].0,
    }
}

/// A curve as it lies on the drawing.
fn on_sheet(limit: &Shown<'_>, plane: Plane) -> Vec<Point> {
    limit.points.iter().map(|[speed, pressure]| plane.point(*pressure, *speed)).collect()
}

fn curve(limit: &Shown<'_>, plane: Plane) -> Markup {
    let points = on_sheet(limit, plane);
    let aside = if limit.boundary.keep() == Keep::AtLeast { -BREADTH } else { BREADTH };
    let back: Vec<Point> = points.iter().rev().map(|(x, y)| (x + aside, *y)).collect();
    html! {
        g data-act="window-limit" data-index=(limit.number) {
            (band(key(limit.boundary), &points, &back))
            path class="limit" d=(open(&points)) {}
            path class="near" d=(open(&points)) {}
        }
    }
}

fn band(hatch: &str, there: &[Point], back: &[Point]) -> Markup {
    html! { path class="band" fill={ "url(#" (hatch) ")" } d=(closed(&there.iter().chain(back).copied().collect::<Vec<_>>())) {} }
}

/// The number of a boundary, at a height of its own, so that numbers stand clear of each other.
fn balloon(limit: &Shown<'_>, plane: Plane, at: usize) -> Markup {
    let points = on_sheet(limit, plane);
    let wanted = PLANE[3] - 26.0 - 34.0 * (at % 9) as f64;
    let place = points.windows(2).find_map(|pair| {
        let [(x0, y0), (x1, y1)] = [pair[0], pair[1]];
        (wanted <= y0 && wanted >= y1 && y0 > y1).then(|| x0 + (x1 - x0) * (y0 - wanted) / (y0 - y1))
    });
    let x = place.unwrap_or(PLANE[0]);
    html! {
        circle class="balloon" cx=(coordinate(x)) cy=(coordinate(wanted)) r="13" {}
        (letters((x, wanted + 7.0), Anchor::Middle, "number", &limit.number.to_string()))
    }
}

/// Round divisions of an axis up to `most`, in its unit, and the step between them.
fn divisions(unit: &Unit, most: f64) -> (f64, Vec<f64>) {
    let most = unit.from_si(most);
    let step = at_least(most / DIVISIONS / 1.5).unwrap_or(most);
    (step, (0..40).map(|k| f64::from(k) * step).take_while(|value| *value <= most * (1.0 + 1e-9)).collect())
}

fn grid(plane: Plane, pressures: &Unit, speeds: &Unit) -> String {
    let [left, top, right, bottom] = PLANE;
    let mut lines = String::new();
    for value in divisions(pressures, plane.pressure).1 {
        let (x, _) = plane.point(pressures.to_si(value), 0.0);
        lines += &open(&[(x, top), (x, bottom)]);
    }
    for value in divisions(speeds, plane.speed).1 {
        let (_, y) = plane.point(0.0, speeds.to_si(value));
        lines += &open(&[(left, y), (right, y)]);
    }
    lines
}

fn axes(plane: Plane, pressures: &Unit, speeds: &Unit) -> Markup {
    let places = |step: f64| if step < 0.1 { 2 } else { usize::from(step < 1.0) };
    let [left, _, right, bottom] = PLANE;
    let (across, up) = (divisions(pressures, plane.pressure), divisions(speeds, plane.speed));
    html! {
        @for value in across.1 {
            (letters((plane.point(pressures.to_si(value), 0.0).0, bottom + 22.0), Anchor::Middle, "figure", &number(decimal(value, places(across.0)))))
        }
        @for value in up.1 {
            (letters((left - 6.0, plane.point(0.0, speeds.to_si(value)).1 + 6.0), Anchor::End, "figure", &number(decimal(value, places(up.0)))))
        }
        (letters((right, bottom + 46.0), Anchor::End, "note", &fill_plain("Clamping pressure, {}", &[&say(pressures.symbol)])))
        (letters((left + 6.0, PLANE[1] + 18.0), Anchor::Start, "note", &fill_plain("Speed, {}", &[&say(speeds.symbol)])))
    }
}
