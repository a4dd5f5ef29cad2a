//! The window: between which pressures and up to which speed the job runs, drawn with what limits it.

use holdround_core::quantity::{Kind, Unit, decimal, fixed};
use holdround_core::setup::jaw_inputs::FINISH_PRESSURE;
use holdround_core::window::Keep;
use holdround_core::{Boundary, Opening, Window};
use maud::{Markup, html};

use super::drawing::{Anchor, Point, at_least, closed, coordinate, letters, open};
use crate::page::desk::Desk;
use crate::units::Units;

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

/// A boundary with its number; its points lie within the drawing, or there are none.
struct Shown<'a> {
    number: usize,
    /// Its place among the window's boundaries.
    at: usize,
    boundary: &'a Boundary,
    points: Vec<[f64; 2]>,
}

fn shown<'a>(window: &'a Window) -> Vec<Shown<'a>> {
    let [least, most] = window.pressures;
    let within = |points: &[[f64; 2]]| points.iter().any(|[_, p]| *p > least * 1.01 && *p < most * 0.999);
    let all = window.boundaries.iter().enumerate().map(|(at, boundary)| (at, boundary, boundary.points()));
    all.filter(|(.., points)| within(points))
        .zip(1..)
        .map(|((at, boundary, points), number)| Shown { number, at, boundary, points })
        .collect()
}

/// The drawing, what it says in words, and its limits.
pub(crate) fn show(desk: &Desk) -> Markup {
    let (Some(window), Some(setup)) = (desk.window(), desk.drawn_setup()) else {
        return html! { p { "There is no window before there is a valid set-up." } };
    };
    let (pressure, speed) = (setup.pressure.value, setup.speed.value);
    let shown = shown(window);
    let faulty = !desk.faults.is_empty();
    html! {
        @if faulty { p.stale { "Of the last valid set-up, not of what is typed now." } }
        div.window-sheet.old[faulty] {
            (draw(desk, window, &shown, pressure, speed))
            div {
                (told(desk, window, &shown, pressure, speed))
                (openings(desk))
            }
        }
        ol.limits { @for limit in shown.iter().chain(&never(window, &shown, speed)) { (listed(desk, limit, speed)) } }
        (always(window, &shown, speed))
        (parts(desk))
    }
}

fn draw(desk: &Desk, window: &Window, shown: &[Shown<'_>], pressure: f64, speed: f64) -> Markup {
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
            role="group" aria-label="Window: clamping pressure across, spindle speed upward" xmlns="http://www.w3.org/2000/svg" {
            defs { @for (id, angle) in HATCHES { (hatching(id, angle)) } }
            path class="good" d=(good(window, plane)) {}
            path class="grid" d=(grid(plane, pressures, speeds)) {}
            (band("hatch-plate", &[(left, plate), (right, plate)], &[(right, plate - BREADTH), (left, plate - BREADTH)]))
            path class="limit" d=(open(&[(left, plate), (right, plate)])) {}
            (letters((right - 4.0, plate + 20.0), Anchor::End, "note", "plate"))
            @for limit in shown { (curve(limit, plane)) }
            @for (at, limit) in shown.iter().enumerate() { (balloon(limit, plane, at)) }
            path class="outline" d={ (closed(&[(left, top), (right, top), (right, bottom), (left, bottom)])) } {}
            (axes(plane, pressures, speeds))
            @if let Some((x, y)) = recommended {
                path class="recommended" d={ (open(&[(x - 13.0, y), (x + 13.0, y)])) (open(&[(x, y - 13.0), (x, y + 13.0)])) } {}
            }
            g class="handle plane" id=(POINT) role="slider" tabindex="0" data-plane="" aria-label="Pressure and speed set: arrows left and right for pressure, up and down for speed"
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
            (letters((plane.point(pressures.to_si(value), 0.0).0, bottom + 22.0), Anchor::Middle, "figure", &decimal(value, places(across.0))))
        }
        @for value in up.1 {
            (letters((left - 6.0, plane.point(0.0, speeds.to_si(value)).1 + 6.0), Anchor::End, "figure", &decimal(value, places(up.0))))
        }
        (letters((right, bottom + 46.0), Anchor::End, "note", &format!("Clamping pressure, {}", pressures.symbol)))
        (letters((left + 6.0, PLANE[1] + 18.0), Anchor::Start, "note", &format!("Speed, {}", speeds.symbol)))
    }
}

/// The window at the speed set, in words.
fn told(desk: &Desk, window: &Window, shown: &[Shown<'_>], pressure: f64, speed: f64) -> Markup {
    let units = desk.units;
    let span = window.span(speed);
    let show = |pressure: f64| units.show(Kind::Pressure, pressure);
    let by = |end: usize| format!("{}{}", name(window, span.by[end]), decided(desk, span.by[end]));
    let at = units.show(Kind::RotationalSpeed, speed);
    let beyond: Vec<&str> = broken(window, pressure, speed);
    html! {
        @if desk.drawn_pressure() == FINISH_PRESSURE.path { p { "The drawing is of finishing, at its own pressure." } (roughing(desk, speed)) }
        @if desk.is_tracing() { p.faint { "Still being traced; limits are missing." } }
        @if !window.is_covered { p.stop { "The model does not cover the part with its thinnest wall, so no pressure is called good. Enter a smaller range for the wall." } }
        @if span.is_open() {
            p { "At " (at) " from " strong { (show(span.pressures[0])) } " (" (by(0)) ") to " strong { (show(span.pressures[1])) } " (" (by(1)) ")." }
            @if let Some(middle) = window.recommended(speed) {
                p { "The middle is furthest from either: " strong { (show(settable(middle, units))) } "." }
                @if desk.faults.is_empty() { button type="button" id="adopt" data-act="adopt" { "Set this pressure" } }
                p.note { "Check the grip with a gauge. The plates rule." }
            }
        } @else {
            p.stop {
                "At " (at) " there is no good pressure. At least " (show(span.pressures[0])) " is asked for by: " (by(0))
                ". At most " (show(span.pressures[1].max(0.0))) " is allowed by: " (by(1)) "."
            }
        }
        @if beyond.is_empty() {
            p { "What is set is inside." }
        } @else {
            p { "What is set is beyond: " (beyond.join(", ")) "." }
        }
        @if let Some(fastest) = window.fastest() { p { "Some pressure is good up to " (units.show(Kind::RotationalSpeed, fastest)) "." } }
        p.note { "Limits of hold count the ranges of friction, condition, gauge and cutting force at their bad ends; limits of form those of condition, gauge, wall, bore and diameter. " (shown.len()) " limits lie on the drawing." }
    }
}

/// The range that decides a limit, as it follows the limit's name; nothing where none does or that is not yet known.
fn decided(desk: &Desk, limit: Option<usize>) -> String {
    let decider = desk.bounds().and_then(|bounds| bounds.decider(limit));
    decider.map_or_else(String::new, |decider| format!(", decided by {}", decider.name))
}

/// What stands where no limit is met.
const NO_LIMIT: &str = "end of what is looked at";

/// What sets an end of the good pressures.
fn name(window: &Window, by: Option<usize>) -> &str {
    by.and_then(|at| window.boundaries.get(at)).map_or(NO_LIMIT, |boundary| &boundary.name)
}

/// The pressures that are good for the cuts before the last pressure, and whether that set is among them.
fn roughing(desk: &Desk, speed: f64) -> Markup {
    let (Some(window), Some((setup, _))) = (desk.rough_window(), &desk.good) else { return html! {} };
    let (span, pressure) = (window.span(speed), setup.pressure.value);
    let [low, high] = span.pressures.map(|pressure| desk.units.show(Kind::Pressure, pressure));
    let [from, to] = span.by.map(|by| name(window, by));
    let beyond = broken(window, pressure, speed);
    html! {
        p id="window-roughing" {
            "While roughing, at the same speed: "
            @if span.is_open() { "from " strong { (low) } " (" (from) ") to " strong { (high) } " (" (to) "). " }
            @else { "no pressure is good: " (from) " asks for at least " (low) ", " (to) " allows " (high) ". " }
            "Set: " (desk.units.show(Kind::Pressure, pressure))
            @if beyond.is_empty() { ", inside." } @else { ", beyond: " (beyond.join(", ")) "." }
        }
    }
}

/// What the verdict adds from the window: whether what is set is good at the bad ends of the ranges, and which range
/// decides that. None before it is known.
pub(crate) fn at_worst(desk: &Desk) -> Option<(bool, String)> {
    let (window, bounds) = (desk.window()?, desk.bounds().filter(|_| !desk.is_tracing())?);
    let setup = desk.drawn_setup()?;
    let (pressure, speed) = (setup.pressure.value, setup.speed.value);
    let [low, high] = bounds.span.pressures;
    let end = usize::from(pressure > high || (pressure >= low && high - pressure < pressure - low));
    let limit = name(window, bounds.span.by[end]);
    let decider = bounds.decider(bounds.span.by[end]);
    let decides = decider.map_or("judged as entered", |decider| decider.name);
    let decided = decider.map_or("", |_| " decides");
    if !broken(window, pressure, speed).is_empty() {
        return Some((false, format!("At worst not good: {limit} ({decides}{decided}).")));
    }
    if let (Some(rough), Some((roughing, _))) = (desk.rough_window(), &desk.good)
        && let Some(limit) = broken(rough, roughing.pressure.value, speed).first()
    {
        return Some((false, format!("At worst not good while roughing: {limit}.")));
    }
    Some((true, format!("At worst still good; nearest: {limit} ({decides}{decided}).")))
}

/// The limits that pressure and speed set are beyond.
fn broken(window: &Window, pressure: f64, speed: f64) -> Vec<&str> {
    let speeding = (speed > window.greatest_speed * (1.0 + 1e-9)).then_some("the plate's speed");
    let beyond = window.boundaries.iter().filter(|boundary| {
        boundary.at(speed).is_some_and(|at| match boundary.keep() {
            Keep::AtLeast => pressure < at,
            Keep::AtMost => pressure > at,
        })
    });
    beyond.map(|boundary| boundary.name.as_str()).chain(speeding).collect()
}

/// A pressure as it is set at the machine: to the nearest of its steps.
pub(crate) fn settable(pressure: f64, units: Units) -> f64 {
    let unit = units.unit(Kind::Pressure);
    let step = step(unit);
    unit.to_si((unit.from_si(pressure) / step).round() * step)
}

/// What pressure or speed is set by, in its unit.
pub(crate) fn step(unit: &Unit) -> f64 {
    match unit.symbol {
        "MPa" => 0.01,
        "bar" => 0.1,
        "psi" => 1.0,
        _ => 10.0,
    }
}

/// Which side of a limit the pressure is to be.
pub(super) fn sense(keep: Keep) -> &'static str {
    if keep == Keep::AtLeast { "at least" } else { "at most" }
}

/// One limit of the list: what it does at the speed set, which range decides it, and what would move it.
fn listed(desk: &Desk, limit: &Shown<'_>, speed: f64) -> Markup {
    let boundary = limit.boundary;
    let at = boundary.at(speed).map(|at| desk.units.show(Kind::Pressure, at)).unwrap_or_default();
    let told = if limit.points.is_empty() {
        "no pressure keeps it".to_owned()
    } else {
        format!("{} {at}", sense(boundary.keep()))
    };
    html! {
        li {
            details id={ "limit-" (limit.number) } {
                summary { span.name { (boundary.name) } " " span.value { (told) } (decided(desk, Some(limit.at))) }
                p { (boundary.says) " It moves with:" }
                ul { @for (entry, says) in boundary.moves {
                    li { (says) " " button type="button" id={ "move-" (limit.number) "-" (entry) } data-act="goto" data-path=(entry) aria-label={ "Go to it: " (says) } { "Go to it" } }
                } }
            }
        }
    }
}

/// Whether some pressure looked at keeps a limit whose curve lies beside the drawing.
fn is_kept(window: &Window, boundary: &Boundary, speed: f64) -> Option<bool> {
    let ([least, most], at) = (window.pressures, boundary.at(speed)?);
    Some(if boundary.keep() == Keep::AtMost { at > least * 1.01 } else { at < most * 0.999 })
}

fn is_shown(shown: &[Shown<'_>], boundary: &Boundary) -> bool {
    shown.iter().any(|shown| shown.boundary.key == boundary.key)
}

/// The limits that no pressure keeps, numbered after those drawn.
fn never<'a>(window: &'a Window, shown: &[Shown<'_>], speed: f64) -> Vec<Shown<'a>> {
    let never = window
        .boundaries
        .iter()
        .enumerate()
        .filter(|(_, boundary)| !is_shown(shown, boundary) && is_kept(window, boundary, speed) == Some(false));
    let number = |((at, boundary), number)| Shown { number, at, boundary, points: Vec::new() };
    never.zip(shown.len() + 1..).map(number).collect()
}

/// The limits that every pressure keeps.
fn always(window: &Window, shown: &[Shown<'_>], speed: f64) -> Markup {
    let always = window
        .boundaries
        .iter()
        .filter(|boundary| !is_shown(shown, boundary) && is_kept(window, boundary, speed) == Some(true));
    let always = always.map(|boundary| boundary.name.as_str()).collect::<Vec<_>>().join(", ");
    html! { @if !always.is_empty() { p.note { "Kept at every pressure looked at: " (always) "." } } }
}

/// How parts come out within the ranges.
fn parts(desk: &Desk) -> Markup {
    let Some(sampled) = desk.sampled() else { return html! {} };
    html! {
        details id="window-parts" open {
            summary { h3 { "How parts come out with what is set" } }
            p { (sampled.words()) }
            ul { @for output in &sampled.outputs {
                li {
                    (output.name) ": " strong { (percent(output.good)) } " good"
                    @let driven: Vec<_> = output.driven_by.iter().filter(|(.., share)| share.of_variance >= 0.05).take(3).collect();
                    @if !driven.is_empty() {
                        "; its spread goes back to "
                        @for (at, (_, name, share)) in driven.iter().enumerate() { @if at > 0 { ", " } (name) " " (percent(share.of_variance)) }
                    }
                    "."
                }
            } }
            p.note { "Each input drawn evenly within its range under “How well it is known”, and by itself. Shares are first-order shares of the variance." }
        }
    }
}

fn percent(share: f64) -> String {
    fixed(100.0 * share, 0) + " %"
}

/// What would open the window.
fn openings(desk: &Desk) -> Markup {
    let found: Vec<&Opening> = desk.openings();
    html! {
        @if desk.is_shut() {
            h3 { "What would open it" }
            @if found.is_empty() && !desk.is_opening() { p { "None of the changes tried does: take another way of holding the part." } }
            ol { @for opening in found {
                li {
                    (opening.says) ": " @if opening.span.is_open() {
                        strong { "opens it" } ", from " (desk.units.show(Kind::Pressure, opening.span.pressures[0])) " to " (desk.units.show(Kind::Pressure, opening.span.pressures[1]))
                    } @else { "gains " (desk.units.show(Kind::Pressure, opening.gain)) ", not enough alone" }
                    ". " button type="button" id={ "open-" (opening.entry) } data-act="goto" data-path=(opening.entry) aria-label={ "Go to it: " (opening.says) } { "Go to it" }
                }
            } }
            @if desk.is_opening() { p.faint { "Trying changes of jaws, cut and pressures …" } }
        }
    }
}
