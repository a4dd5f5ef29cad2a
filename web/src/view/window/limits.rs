//! The limits of the window in a list: what each does, which range decides it, and what would move it.

use holdround_core::quantity::Kind;
use holdround_core::window::Keep;
use holdround_core::{Boundary, Window};
use maud::{Markup, html};

use super::decided;
use crate::language::{fill, fill_plain, said, say};
use crate::page::desk::Desk;

/// A boundary with its number; its points lie within the drawing, or there are none.
pub(super) struct Shown<'a> {
    pub(super) number: usize,
    /// Its place among the window's boundaries.
    pub(super) at: usize,
    pub(super) boundary: &'a Boundary,
    pub(super) points: Vec<[f64; 2]>,
}

pub(super) fn shown<'a>(window: &'a Window) -> Vec<Shown<'a>> {
    let [least, most] = window.pressures;
    let within = |points: &[[f64; 2]]| points.iter().any(|[_, p]| *p > least * 1.01 && *p < most * 0.999);
    let all = window.boundaries.iter().enumerate().map(|(at, boundary)| (at, boundary, boundary.points()));
    all.filter(|(.., points)| within(points))
        .zip(1..)
        .map(|((at, boundary, points), number)| Shown { number, at, boundary, points })
        .collect()
}

/// Which side of a limit the pressure is to be.
pub(in crate::view) fn sense(keep: Keep) -> &'static str {
    if keep == Keep::AtLeast { say("at least") } else { say("at most") }
}

/// One limit of the list: what it does at the speed set, which range decides it, and what would move it.
pub(super) fn listed(desk: &Desk, limit: &Shown<'_>, speed: f64) -> Markup {
    let boundary = limit.boundary;
    let at = boundary.at(speed).map(|at| desk.units.show(Kind::Pressure, at)).unwrap_or_default();
    let told = if limit.points.is_empty() {
        say("no pressure keeps it").to_owned()
    } else {
        format!("{} {at}", sense(boundary.keep()))
    };
    html! {
        li {
            details id={ "limit-" (limit.number) } {
                summary { span.name { (said(&boundary.name)) } " " span.value { (told) } (decided(desk, Some(limit.at))) }
                p { (say(boundary.says)) " " (say("It moves with:")) }
                ul { @for (entry, says) in boundary.moves {
                    li { (say(says)) " " button type="button" id={ "move-" (limit.number) "-" (entry) } data-act="goto" data-path=(entry) aria-label=(fill_plain("Go to it: {}", &[&say(says)])) { (say("Go to it")) } }
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
pub(super) fn never<'a>(window: &'a Window, shown: &[Shown<'_>], speed: f64) -> Vec<Shown<'a>> {
    let never = window
        .boundaries
        .iter()
        .enumerate()
        .filter(|(_, boundary)| !is_shown(shown, boundary) && is_kept(window, boundary, speed) == Some(false));
    let number = |((at, boundary), number)| Shown { number, at, boundary, points: Vec::new() };
    never.zip(shown.len() + 1..).map(number).collect()
}

/// The limits that every pressure keeps.
pub(super) fn always(window: &Window, shown: &[Shown<'_>], speed: f64) -> Markup {
    let always = window
        .boundaries
        .iter()
        .filter(|boundary| !is_shown(shown, boundary) && is_kept(window, boundary, speed) == Some(true));
    let always = always.map(|boundary| said(&boundary.name)).collect::<Vec<_>>().join(", ");
    html! { @if !always.is_empty() { p.note { (fill("Kept at every pressure looked at: {}.", &[&always])) } } }
}
