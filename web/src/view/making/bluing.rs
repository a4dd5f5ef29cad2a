//! The taper: how the jaw's face would mark in blue with too little, with the right and with too much of it.

use holdround_core::findings::{BluingPicture, Finding, Findings, PressureMap};
use holdround_core::quantity::Kind;
use holdround_core::setup::Setup;
use maud::{Markup, html};

use super::{both, lines};
use crate::language::{fill, fill_plain, said, say};
use crate::page::desk::Desk;
use crate::units::Units;
use crate::view::drawing::{Point, closed};

/// The pictures by the ids of their findings, in the order of the scene.
const PICTURES: [(&str, &str); 4] = [
    ("taper.bluing.little", "Too little"),
    ("taper.bluing.right", "Right"),
    ("taper.bluing.much", "Too much"),
    ("taper.bluing.set", "As the jaws are set"),
];
/// The face on its picture, and the room for the gap beside it.
const FACE: [f64; 2] = [6.0, 96.0];
const GAP: [f64; 2] = [104.0, 154.0];
const HEIGHT: [f64; 2] = [134.0, 6.0];

/// The recommended taper beside the planned one, the pictures, and what readings teach.
pub(super) fn show(desk: &Desk, setup: &Setup, found: &Findings) -> Markup {
    let units = desk.units;
    let scene = &found.scene;
    let told = PICTURES.iter().filter(|(id, _)| found.get(id).is_some_and(|finding| finding.value.is_ok()));
    let widest = scene.bluing.iter().flat_map(|picture| &picture.gap).copied().fold(1e-9, f64::max);
    html! {
        (lines(found, &["taper.right", "taper.right.diameter", "taper.even", "taper.unseen", "taper.blued", "taper.tilt", "taper.next", "taper.next.diameter"], desk))
        @if let Some(cut) = scene.cut_taper {
            p id="taper-planned" {
                @let to_cut = if cut > 0.0 { both(cut, units) } else { say("straight, no taper").to_owned() };
                (fill("Planned: {}. To cut: {}.", &[&both(setup.jaws.taper.value, units), &to_cut]))
            }
            @if units.show(Kind::Departure, setup.jaws.taper.value) == units.show(Kind::Departure, cut) {
                p id="taper-settled" tabindex="-1" data-after="adopt-taper" { (say("That is what is planned: nothing to change.")) }
            } @else {
                div.buttons { button type="button" id="adopt-taper" data-act="adopt-taper" { (say("Use it")) span.heard { (say(": plan the taper to cut")) } } }
            }
        }
        @if let Some(told) = found.get("taper.next").or_else(|| found.get("taper.right")) {
            @match (&told.value, &told.caution) {
                (Err(why), _) => p.stop { (said(why)) },
                (_, why) => p id="taper-why" { (why.as_ref().map(said).unwrap_or_default()) },
            }
        }
        @if !scene.bluing.is_empty() {
            p { (say("Bluing on the face of a jaw: filled where it rubs off, tip above, base at the seat below. Beside it the feeler gap in the middle of the jaw, all to one scale."))
                @if let Some(pressure) = found.get("taper.blued").and_then(|blued| blued.value.as_ref().ok()) {
                    @let pressure = html! { b { (units.show(Kind::Pressure, *pressure)) } };
                    " " (fill("Blued under {}, not under the pressure of the run.", &[&pressure]))
                }
            }
        }
        div.bluings {
            @for ((id, title), picture) in told.zip(&scene.bluing) {
                figure {
                    svg class="view bluing" viewBox="0 0 160 140" role="img" aria-labelledby={ "title-" (id) " says-" (id) } xmlns="http://www.w3.org/2000/svg" {
                        (drawn(picture, &scene.pressure, widest))
                    }
                    figcaption {
                        strong id={ "title-" (id) } { (say(title)) }
                        span id={ "says-" (id) } { ": " (described(picture, found.get(id), units)) }
                    }
                }
            }
        }
    }
}

fn described(picture: &BluingPicture, finding: Option<&Finding>, units: Units) -> String {
    let small = |si: f64| units.show(Kind::Departure, si);
    let end = |gap: Option<&f64>| small(gap.copied().unwrap_or(0.0).max(0.0));
    let words = finding.and_then(|finding| finding.caution.as_ref()).map(said).unwrap_or_default();
    fill_plain(
        "{}. {} Gap at the tip {}, at the base {}.",
        &[&both(picture.taper, units), &words, &end(picture.gap.last()), &end(picture.gap.first())],
    )
}

fn drawn(picture: &BluingPicture, map: &PressureMap, widest: f64) -> Markup {
    let (Some(edge), Some(base), Some(tip)) = (map.angles.last(), map.heights.first(), map.heights.last()) else {
        return html! {};
    };
    let middle = 0.5 * (FACE[0] + FACE[1]);
    let across = |angle: f64| (middle - FACE[0]) * angle / edge.max(1e-9);
    let up = |height: f64| HEIGHT[0] + (HEIGHT[1] - HEIGHT[0]) * (height - base) / (tip - base).max(1e-9);
    let mut marked = String::new();
    for (at, _) in picture.rubbed.iter().enumerate().filter(|(_, rubbed)| **rubbed) {
        let (angle, height) = (at / map.heights.len(), at % map.heights.len());
        let [near, far] = between(&map.angles, angle).map(across);
        let [low, high] = between(&map.heights, height).map(up);
        for (left, right) in [(middle + near, middle + far), (middle - far, middle - near)] {
            marked += &closed(&[(left, low), (right, low), (right, high), (left, high)]);
        }
    }
    let gap = |gap: f64| GAP[0] + (GAP[1] - GAP[0]) * (gap / widest).max(0.0);
    let mut curve: Vec<Point> = vec![(GAP[0], HEIGHT[0])];
    curve.extend(picture.gap.iter().zip(&map.heights).map(|(wide, height)| (gap(*wide), up(*height))));
    curve.push((GAP[0], HEIGHT[1]));
    html! {
        path class="marked" d=(marked) {}
        path class="outline" d=(closed(&[(FACE[0], HEIGHT[0]), (FACE[1], HEIGHT[0]), (FACE[1], HEIGHT[1]), (FACE[0], HEIGHT[1])])) {}
        path class="open" d=(closed(&curve)) {}
    }
}

/// From halfway to the point before to halfway to the one after.
fn between(points: &[f64], at: usize) -> [f64; 2] {
    let point = points.get(at).copied().unwrap_or(0.0);
    let middle = |other: Option<&f64>| other.map_or(point, |other| 0.5 * (point + other));
    [middle(at.checked_sub(1).and_then(|before| points.get(before))), middle(points.get(at + 1))]
}
