//! The window: between which pressures and up to which speed the job runs, drawn with what limits it.

mod drawing;
mod limits;

use holdround_core::quantity::{Kind, Unit, fixed};
use holdround_core::setup::jaw_inputs::FINISH_PRESSURE;
use holdround_core::window::Keep;
use holdround_core::{Opening, Window};
use maud::{Markup, html};

use crate::language::{fill, fill_plain, said, say};
use crate::page::desk::Desk;
use crate::units::Units;

use drawing::draw;
pub(crate) use drawing::{POINT, plane};
pub(super) use limits::sense;
use limits::{Shown, always, listed, never, shown};

/// The drawing, what it says in words, and its limits.
pub(crate) fn show(desk: &Desk) -> Markup {
    let (Some(window), Some(setup)) = (desk.window(), desk.drawn_setup()) else {
        return html! { p { (say("There is no window before there is a valid set-up.")) } };
    };
    let (pressure, speed) = (setup.pressure.value, setup.speed.value);
    let shown = shown(window);
    let faulty = !desk.faults.is_empty();
    html! {
        @if faulty { p.stale { (say("Of the last valid set-up, not of what is typed now.")) } }
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

/// The window at the speed set, in words.
fn told(desk: &Desk, window: &Window, shown: &[Shown<'_>], pressure: f64, speed: f64) -> Markup {
    let units = desk.units;
    let span = window.span(speed);
    let show = |pressure: f64| units.show(Kind::Pressure, pressure);
    let by = |end: usize| format!("{}{}", name(window, span.by[end]), decided(desk, span.by[end]));
    let at = units.show(Kind::RotationalSpeed, speed);
    let beyond = broken(window, pressure, speed);
    html! {
        @if desk.drawn_pressure() == FINISH_PRESSURE.path { p { (say("The drawing is of finishing, at its own pressure.")) } (roughing(desk, speed)) }
        @if desk.is_tracing() { p.faint { (say("Still being traced; limits are missing.")) } }
        @if !window.is_covered { p.stop { (say("The model does not cover the part with its thinnest wall, so no pressure is called good. Enter a smaller range for the wall.")) } }
        @if span.is_open() {
            @let [low, high] = span.pressures.map(|pressure| strong(&show(pressure)));
            p { (fill("At {} from {} ({}) to {} ({}).", &[&at, &low, &by(0), &high, &by(1)])) }
            @if let Some(middle) = window.recommended(speed) {
                p { (fill("The middle is furthest from either: {}.", &[&strong(&show(settable(middle, units)))])) }
                @if desk.faults.is_empty() { button type="button" id="adopt" data-act="adopt" { (say("Set this pressure")) } }
                p.note { (say("Check the grip with a gauge. The plates rule.")) }
            }
        } @else {
            p.stop {
                (fill(
                    "At {} there is no good pressure. At least {} is asked for by: {}. At most {} is allowed by: {}.",
                    &[&at, &show(span.pressures[0]), &by(0), &show(span.pressures[1].max(0.0)), &by(1)],
                ))
            }
        }
        @if beyond.is_empty() {
            p { (say("What is set is inside.")) }
        } @else {
            p { (fill("What is set is beyond: {}.", &[&beyond.join(", ")])) }
        }
        @if let Some(fastest) = window.fastest() { p { (fill("Some pressure is good up to {}.", &[&units.show(Kind::RotationalSpeed, fastest)])) } }
        p.note { (say("Limits of hold count the ranges of friction, condition, gauge and cutting force at their bad ends; limits of form those of condition, gauge, wall, bore and diameter.")) " " (fill("{} limits lie on the drawing.", &[&shown.len()])) }
    }
}

/// The range that decides a limit, as it follows the limit's name; nothing where none does or that is not yet known.
fn decided(desk: &Desk, limit: Option<usize>) -> String {
    let decider = desk.bounds().and_then(|bounds| bounds.decider(limit));
    decider.map_or_else(String::new, |decider| fill_plain(", decided by {}", &[&say(decider.name)]))
}

/// What stands where no limit is met.
const NO_LIMIT: &str = "end of what is looked at";

/// What sets an end of the good pressures.
fn name(window: &Window, by: Option<usize>) -> String {
    let boundary = by.and_then(|at| window.boundaries.get(at));
    boundary.map_or_else(|| say(NO_LIMIT).to_owned(), |boundary| said(&boundary.name))
}

fn strong(words: &str) -> Markup {
    html! { strong { (words) } }
}

/// The pressures that are good for the cuts before the last pressure, and whether that set is among them.
fn roughing(desk: &Desk, speed: f64) -> Markup {
    let (Some(window), Some((setup, _))) = (desk.rough_window(), &desk.good) else { return html! {} };
    let (span, pressure) = (window.span(speed), setup.pressure.value);
    let [low, high] = span.pressures.map(|pressure| desk.units.show(Kind::Pressure, pressure));
    let [from, to] = span.by.map(|by| name(window, by));
    let (set, beyond) = (desk.units.show(Kind::Pressure, pressure), broken(window, pressure, speed));
    html! {
        p id="window-roughing" {
            @if span.is_open() {
                (fill("While roughing, at the same speed: from {} ({}) to {} ({}).", &[&strong(&low), &from, &strong(&high), &to]))
            } @else {
                (fill("While roughing, at the same speed: no pressure is good: {} asks for at least {}, {} allows {}.", &[&from, &low, &to, &high]))
            }
            " "
            @if beyond.is_empty() { (fill("Set: {}, inside.", &[&set])) } @else { (fill("Set: {}, beyond: {}.", &[&set, &beyond.join(", ")])) }
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
    let judged = |decided: &str, as_entered: &str| match &decider {
        Some(decider) => fill_plain(decided, &[&limit, &say(decider.name)]),
        None => fill_plain(as_entered, &[&limit]),
    };
    if !broken(window, pressure, speed).is_empty() {
        let says = judged("At worst not good: {} ({} decides).", "At worst not good: {} (judged as entered).");
        return Some((false, says));
    }
    if let (Some(rough), Some((roughing, _))) = (desk.rough_window(), &desk.good)
        && let Some(limit) = broken(rough, roughing.pressure.value, speed).first()
    {
        return Some((false, fill_plain("At worst not good while roughing: {}.", &[limit])));
    }
    let says = judged(
        "At worst still good; nearest: {} ({} decides).",
        "At worst still good; nearest: {} (judged as entered).",
    );
    Some((true, says))
}

/// The limits that pressure and speed set are beyond.
fn broken(window: &Window, pressure: f64, speed: f64) -> Vec<String> {
    let speeding = (speed > window.greatest_speed * (1.0 + 1e-9)).then(|| say("the plate's speed").to_owned());
    let beyond = window.boundaries.iter().filter(|boundary| {
        boundary.at(speed).is_some_and(|at| match boundary.keep() {
            Keep::AtLeast => pressure < at,
            Keep::AtMost => pressure > at,
        })
    });
    beyond.map(|boundary| said(&boundary.name)).chain(speeding).collect()
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

/// How parts come out within the ranges.
fn parts(desk: &Desk) -> Markup {
    let Some(sampled) = desk.sampled() else { return html! {} };
    html! {
        details id="window-parts" open {
            summary { h3 { (say("How parts come out with what is set")) } }
            p { (said(&sampled.words())) }
            ul { @for output in &sampled.outputs {
                li {
                    (fill("{}: {} good", &[&said(&output.name), &strong(&percent(output.good))]))
                    @let driven: Vec<_> = output.driven_by.iter().filter(|(.., share)| share.of_variance >= 0.05).take(3).collect();
                    @if !driven.is_empty() {
                        @let from: Vec<String> = driven.iter().map(|(_, name, share)| format!("{} {}", say(name), percent(share.of_variance))).collect();
                        (fill("; its spread comes from {}", &[&from.join(", ")]))
                    }
                    "."
                }
            } }
            p.note { (say("Each input is drawn evenly within its range under “How well it is known”, whatever the others are. Shares are first-order shares of the variance.")) }
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
            h3 { (say("What would open it")) }
            @if found.is_empty() && !desk.is_opening() { p { (say("None of the changes tried does: take another way of holding the part.")) } }
            ol { @for opening in found {
                li {
                    @let says = say(opening.says);
                    @if opening.span.is_open() {
                        @let [low, high] = opening.span.pressures.map(|pressure| desk.units.show(Kind::Pressure, pressure));
                        (fill("{}: {}, from {} to {}.", &[&says, &strong(say("opens it")), &low, &high]))
                    } @else {
                        (fill("{}: gains {}, not enough alone.", &[&says, &desk.units.show(Kind::Pressure, opening.gain)]))
                    }
                    " " button type="button" id={ "open-" (opening.entry) } data-act="goto" data-path=(opening.entry) aria-label=(fill_plain("Go to it: {}", &[&says])) { (say("Go to it")) }
                }
            } }
            @if desk.is_opening() { p.faint { (say("Trying changes of jaws, cut and pressures …")) } }
        }
    }
}
