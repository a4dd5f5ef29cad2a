//! The drawn dial: the part's outline with a button for each station, the readings, the waves fitted and the engine's.

use core::f64::consts::TAU;

use holdround_core::findings::Dial;
use holdround_core::quantity::{Kind, Measure, decimal};
use holdround_core::setup::indicator_inputs::{DIAL_READING, START};
use maud::{Markup, html};

use super::drawing::{Anchor, Point, at_least, closed, coordinate, letters, polar};
use crate::language::{fill, fill_plain, number, say};
use crate::page::desk::Desk;

/// Circle of the part on the drawing, and room for departures to either side of it.
const SURFACE: f64 = 110.0;
const ROOM: f64 = 52.0;
/// Circle and size of the stations' buttons: a finger's breadth on the narrowest screen.
const RIM: f64 = 218.0;
const FINGER: f64 = 31.0;
/// As many buttons have room side by side.
const MOST: usize = 20;
/// Points around a curve.
const POINTS: usize = 240;

pub(super) fn draw(desk: &Desk, count: usize, chosen: usize) -> Markup {
    let dial = desk.good.as_ref().and_then(|(_, findings)| findings.scene.indicator.as_ref());
    let start = desk.entries.text_or_default(START.path, &START);
    let start = Measure::parse(Kind::Angle, start).map_or(0.0, |angle| angle.si);
    let angle = |at: usize| start + TAU * at as f64 / count.max(1) as f64;
    let every = count.div_ceil(MOST).max(1);
    let scale = dial.map(Scale::of);
    html! {
        svg class="view dial" viewBox="-250 -250 500 500" role="group" aria-labelledby="dial-title" font-size="22" xmlns="http://www.w3.org/2000/svg" {
            g role="img" aria-labelledby="dial-title dial-says" {
                title id="dial-title" { (say("Readings around the part, seen from the front, jaw 1 at the top")) }
                desc id="dial-says" { (described(desk, dial)) }
                circle class="thin" r=(coordinate(SURFACE)) {}
                (jaws(desk))
                @if let Some((dial, scale)) = dial.zip(scale.as_ref()) { (scale.curves(dial)) }
            }
            @for at in (0..count).step_by(every) {
                @let (x, y) = polar(RIM, angle(at));
                @let read = desk.entries.get(&DIAL_READING.at(at)).filter(|text| !text.is_empty());
                g class="station" id={ "station-" (at) } role="button" tabindex="0" data-act="dial-station" data-index=(at)
                    aria-pressed=(at == chosen) aria-label=(fill_plain("Station {}: {}", &[&(at + 1), &read.unwrap_or(say("not read"))])) {
                    circle class=(if read.is_some() { "read" } else { "unread" }) cx=(coordinate(x)) cy=(coordinate(y)) r=(coordinate(FINGER)) {}
                    (letters((x, y + 8.0), Anchor::Middle, "", &(at + 1).to_string()))
                }
            }
        }
        p.hint {
            @if every == 2 { (say("Every second station has a button; Before and After reach all.")) " " }
            @if every > 2 { (say("Not every station has a button; Before and After reach all.")) " " }
            @if let Some(scale) = scale {
                (fill("Dots: readings. Solid: waves fitted. Dashed: worked out. Departures × {}.", &[&number(decimal(scale.magnification, 0))]))
            }
        }
    }
}

/// The jaws, marked from outside.
fn jaws(desk: &Desk) -> Markup {
    let count = desk.good.as_ref().map_or(0, |(setup, _)| setup.chuck.jaws);
    html! {
        @for jaw in 0..count {
            @let angle = TAU * f64::from(jaw) / f64::from(count.max(1));
            @let corners = [polar(164.0, angle), polar(182.0, angle - 0.07), polar(182.0, angle + 0.07)];
            path class="filled" d=(closed(&corners)) {}
        }
    }
}

/// The drawing in words.
fn described(desk: &Desk, dial: Option<&Dial>) -> String {
    let Some(dial) = dial else { return say("No curve yet.").into() };
    let read = dial.stations.iter().filter(|(_, read)| read.is_some()).count();
    let show = |height: f64| desk.units.show(Kind::Departure, 2.0 * height);
    let waves: Vec<String> = (dial.fitted.iter())
        .map(|(order, cos, sin)| {
            fill_plain("{} times round {} from peak to valley", &[order, &show(libm::hypot(*cos, *sin))])
        })
        .collect();
    let engine = dial.predicted.iter().flat_map(|shape| shape.harmonics.iter().take(2));
    let engine: Vec<String> =
        engine.map(|(order, height)| fill_plain("{} times round {}", &[order, &show(height.abs())])).collect();
    fill_plain("{} stations read. Fitted: {}. Worked out: {}.", &[&read, &waves.join(", "), &engine.join(", ")])
}

struct Scale {
    /// View units for a metre of departure.
    units: f64,
    magnification: f64,
}

impl Scale {
    fn of(dial: &Dial) -> Self {
        let curve = (0..POINTS).map(|at| TAU * at as f64 / POINTS as f64);
        let shapes = curve
            .map(|angle| dial.at(angle).abs().max(dial.predicted.as_ref().map_or(0.0, |shape| shape.at(angle).abs())));
        let read = dial.stations.iter().filter_map(|(_, read)| read.map(f64::abs));
        let farthest = shapes.chain(read).fold(1e-9, f64::max);
        let surface = SURFACE / dial.radius.max(1e-6);
        // The greatest round magnification that leaves everything on the drawing.
        let magnification = at_least(farthest * surface / ROOM).map_or(1.0, |divisor| 1.0 / divisor);
        Self { units: magnification * surface, magnification }
    }

    fn place(&self, angle: f64, departure: f64) -> Point {
        polar((SURFACE + departure * self.units).clamp(0.0, RIM), angle)
    }

    fn curve(&self, at: &dyn Fn(f64) -> f64) -> String {
        let angles = (0..POINTS).map(|at| TAU * at as f64 / POINTS as f64);
        closed(&angles.map(|angle| self.place(angle, at(angle))).collect::<Vec<_>>())
    }

    fn curves(&self, dial: &Dial) -> Markup {
        html! {
            @if let Some(shape) = &dial.predicted { path class="engine" d=(self.curve(&|angle| shape.at(angle))) {} }
            @if !dial.fitted.is_empty() { path class="fitted" d=(self.curve(&|angle| dial.at(angle))) {} }
            @for (angle, read) in &dial.stations {
                @if let Some(read) = read {
                    @let (x, y) = self.place(*angle, *read);
                    circle class="filled" cx=(coordinate(x)) cy=(coordinate(y)) r="6" {}
                }
            }
        }
    }
}
