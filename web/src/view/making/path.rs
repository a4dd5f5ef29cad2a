//! The path that bores the jaws, in section: rapid moves dashed, feeds solid, the tool where it stands on its way.

use holdround_core::findings::{Findings, JawPath, Scene};
use holdround_core::program::{Move, Purpose};
use holdround_core::quantity::Kind;
use holdround_core::setup::{Setup, Side};
use maud::{Markup, html};

use super::frame::Frame;
use super::lines;
use super::on_views::translated;
use crate::language::{fill, fill_plain, said, say};
use crate::page::desk::Desk;
use crate::units::Units;
use crate::view::drawing::{Anchor, Point, closed, coordinate, letters, open};

/// The tool on the drawing, its slider and what is said of where it stands.
pub(crate) const TOOL: &str = "run-tool";
pub(crate) const SLIDER: &str = "run-at";
pub(crate) const BUTTON: &str = "run";
pub(crate) const PLACE: &str = "run-place";
/// Steps of the slider.
pub(crate) const STEPS: f64 = 1000.0;
/// How much faster the tool is shown where it does not cut.
const RAPID: f64 = 4.0;
/// Behind the tip the edge leaves the face by this much, m, as the collision check has it.
const BEHIND_TIP: f64 = 0.25e-3;
/// What is cut, in the order of the legend.
const CUTS: [Purpose; 6] =
    [Purpose::Skim, Purpose::Rough, Purpose::Chamfer, Purpose::Finish, Purpose::Relief, Purpose::Seat];

/// The drawing with its legend, what would be hit, and the way through it.
pub(super) fn show(desk: &Desk, setup: &Setup, found: &Findings, path: &JawPath) -> Markup {
    let units = desk.units;
    let frame = frame(setup, &found.scene, path);
    html! {
        svg class="view making" viewBox=(frame.view_box(0.0)) role="img" aria-labelledby="path-title path-desc"
            font-size="22" xmlns="http://www.w3.org/2000/svg" {
            title id="path-title" { (say("Boring path in section through a jaw")) }
            desc id="path-desc" { (described(setup, path, units)) }
            (jaw(setup, found, path, frame))
            (moves(path, frame))
            g id=(TOOL) class="boring-tool" transform=(tool_at(setup, &found.scene, path, 0.0)) { (tool(setup, path, frame.scale)) }
        }
        ul.legend {
            li { svg class="view sample" viewBox="0 0 44 16" aria-hidden="true" { path class="rapid" d="M2 8H42" {} } " " (say("rapid")) }
            @for (at, purpose) in present(path) {
                li { svg class="view sample" viewBox="0 0 44 16" aria-hidden="true" { path class=(class(purpose)) d="M2 8H42" {} } " " (at + 1) ": " (say(purpose.words())) }
            }
        }
        @for hit in &path.collisions {
            p.stop {
                (fill(
                    "Move {} ({}): the {} would hit: {}.",
                    &[&(hit.step + 1), &words(path, hit.step), &say(hit.part.words()), &say(hit.obstacle)],
                ))
            }
        }
        @if path.collisions.is_empty() {
            @if let Some(says) = found.get("program.collisions").and_then(|finding| finding.caution.as_ref()) { p { (said(says)) } }
        }
        div.run {
            button type="button" id=(BUTTON) data-act="run" { (say("Play")) }
            label for=(SLIDER) { (say("Along the path")) }
            input type="range" id=(SLIDER) min="0" max=(coordinate(STEPS)) step="1" value="0";
            output id=(PLACE) for=(SLIDER) {}
        }
        (lines(found, &["boring.speed", "program.passes", "program.feed", "bore.corner"], desk))
    }
}

/// What the path cuts, numbered as on the drawing.
fn present(path: &JawPath) -> impl Iterator<Item = (usize, Purpose)> {
    let cuts = |purpose: Purpose| path.moves.iter().any(|step| step.purpose == purpose);
    CUTS.into_iter().enumerate().filter(move |(_, purpose)| cuts(*purpose))
}

fn class(purpose: Purpose) -> &'static str {
    match purpose {
        Purpose::Skim | Purpose::Rough => "rough",
        _ => "finish",
    }
}

fn words(path: &JawPath, step: usize) -> &'static str {
    path.moves.get(step).map_or("", |step| say(step.purpose.words()))
}

/// The depth to be bored and as much around it, with the ring; what the tool does farther off is cut off at the edge.
fn frame(setup: &Setup, scene: &Scene, path: &JawPath) -> Frame {
    let depth = setup.grip.length.value;
    let radii = path.shape.iter().map(|[radius, _]| *radius).chain([path.standing / 2.0]);
    let (low, high) = radii.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), r| (low.min(r), high.max(r)));
    // A ring far off would leave nothing to be seen of the path.
    let ring = scene.placing.as_ref().and_then(|placing| placing.ring).map_or(low, |ring| ring.radii[0]);
    let low = low.min(ring.max(low - depth));
    let air = 0.2 * depth;
    Frame::of([-1.3 * depth, 0.6 * depth], [(low - air).max(0.0), high + air], 12.0)
}

/// The jaw as it is left, what it was before, its counterbores and the ring.
fn jaw(setup: &Setup, found: &Findings, path: &JawPath, frame: Frame) -> Markup {
    let height = setup.jaws.height.value;
    let scene = &found.scene;
    let far = if setup.grip.side == Side::Outside { scene.jaw_outer_radius } else { scene.jaw_inner_radius };
    let mut metal: Vec<Point> = path.shape.iter().map(|[radius, z]| frame.at(*z, *radius)).collect();
    let seat = path.shape.last().copied().unwrap_or_default();
    metal.extend([frame.at(-height, seat[0]), frame.at(-height, far), frame.at(0.0, far)]);
    let stands = path.standing / 2.0;
    let before = [(seat[1], stands), (path.skim, stands), (path.skim, far)].map(|(z, r)| frame.at(z, r));
    html! {
        path class="cut" d=(closed(&metal)) fill="url(#hatch-jaw)" {}
        path class="true-shape" d=(open(&before)) {}
        @if let Some(placing) = &scene.placing {
            @let [wide, deep] = placing.counterbore;
            @for screw in placing.screws {
                @let beyond = (screw > placing.bored_radius) == (setup.grip.side == Side::Outside);
                @let top = if beyond { 0.0 } else { seat[1] };
                path class="hole" d=(closed(&frame.rectangle([-deep, top.max(-deep)], [screw - wide / 2.0, screw + wide / 2.0]))) {}
            }
            @if let Some(ring) = placing.ring {
                path class="ring" d=(closed(&frame.rectangle(ring.heights.map(|above| above - height), ring.radii))) {}
            }
        }
    }
}

fn moves(path: &JawPath, frame: Frame) -> Markup {
    let at = |step: &Move| frame.at(step.z, step.x / 2.0);
    let pairs = || path.moves.windows(2).filter_map(|pair| Some((pair.first()?, pair.last()?)));
    let drawn = |wanted: &dyn Fn(&Move) -> bool| -> String {
        pairs().filter(|(_, to)| wanted(to)).map(|(from, to)| open(&[at(from), at(to)])).collect()
    };
    html! {
        path class="rapid" d=(drawn(&|to| to.feed <= 0.0)) {}
        @for (number, purpose) in present(path) {
            path class=(class(purpose)) d=(drawn(&|to| to.purpose == purpose)) {}
            @if let Some((from, to)) = pairs().find(|(_, to)| to.purpose == purpose) {
                @let (a, b) = (at(from), at(to));
                (letters((0.5 * (a.0 + b.0), 0.5 * (a.1 + b.1) + 8.0), Anchor::Middle, "value", &(number + 1).to_string()))
            }
        }
        @for hit in path.collisions.iter().filter_map(|hit| path.moves.get(hit.step)) {
            @let (x, y) = at(hit);
            path class="lost" d=(open(&[(x - 10.0, y - 10.0), (x + 10.0, y + 10.0), (x, y), (x - 10.0, y + 10.0), (x + 10.0, y - 10.0)])) {}
        }
    }
}

/// The tool with its tip at the origin.
pub(super) fn tool(setup: &Setup, path: &JawPath, scale: f64) -> Markup {
    let [bar, reach] = path.bar.map(|size| size * scale);
    let (nose, behind) = (path.nose * scale, BEHIND_TIP * scale);
    // Down the drawing is toward the axis.
    let (down, box_) = match setup.grip.side {
        Side::Outside => (1.0, [behind, reach, behind, behind + bar]),
        Side::Inside => (-1.0, [behind, behind + bar, behind, behind + reach]),
    };
    let [left, right, near, far] = box_;
    let corners = [(left, near * down), (right, near * down), (right, far * down), (left, far * down)];
    html! {
        path class="bar" d=(closed(&corners)) {}
        circle class="nose" cx=(coordinate(nose)) cy=(coordinate(nose * down)) r=(coordinate(nose)) {}
    }
}

/// How long a move is shown.
fn time(from: &Move, to: &Move) -> f64 {
    let (across, along) = (0.5 * (to.x - from.x), to.z - from.z);
    holdround_core::sqrt(across * across + along * along) / if to.feed > 0.0 { 1.0 } else { RAPID }
}

/// Each move with the one before it.
pub(in crate::view) fn pairs(path: &JawPath) -> impl Iterator<Item = (&Move, &Move)> {
    path.moves.iter().zip(path.moves.iter().skip(1))
}

/// The share of the way that is behind the tool where moves for `purpose` begin.
pub(in crate::view) fn share_before(path: &JawPath, purpose: Purpose) -> Option<f64> {
    let first = path.moves.iter().position(|step| step.purpose == purpose)?;
    let times = || pairs(path).map(|(from, to)| time(from, to));
    let (before, whole): (f64, f64) = (times().take(first.saturating_sub(1)).sum(), times().sum());
    (whole > 0.0).then(|| before / whole)
}

/// Where the tool is after a share of its way: the move it is on, and diameter and z of its tip, m.
pub(super) fn place(path: &JawPath, share: f64) -> (usize, f64, f64) {
    if let Some(first) = path.moves.first().filter(|_| share <= 0.0) {
        return (0, first.x, first.z);
    }
    let whole: f64 = pairs(path).map(|(from, to)| time(from, to)).sum();
    let mut left = share * whole;
    for (at, (from, to)) in pairs(path).enumerate() {
        let takes = time(from, to);
        if left <= takes && takes > 0.0 {
            let part = left / takes;
            return (at + 1, from.x + (to.x - from.x) * part, from.z + (to.z - from.z) * part);
        }
        left -= takes;
    }
    path.moves.last().map_or((0, 0.0, 0.0), |last| (path.moves.len() - 1, last.x, last.z))
}

/// The tool's transform after a share of its way.
pub(crate) fn tool_at(setup: &Setup, scene: &Scene, path: &JawPath, share: f64) -> String {
    let (_, x, z) = place(path, share);
    let (right, down) = frame(setup, scene, path).at(z, x / 2.0);
    translated(right, down)
}

/// Where the tool is after a share of its way, in words.
pub(crate) fn told(path: &JawPath, share: f64, units: Units) -> String {
    let (step, x, z) = place(path, share);
    let length = |si: f64| units.show(Kind::Length, si);
    fill_plain(
        "Move {} of {}, {}: diameter {}, Z {}",
        &[&(step + 1), &path.moves.len(), &words(path, step), &length(x), &length(z)],
    )
}

fn described(setup: &Setup, path: &JawPath, units: Units) -> String {
    let length = |si: f64| units.show(Kind::Length, si);
    let cuts: Vec<&str> = present(path).map(|(_, purpose)| say(purpose.words())).collect();
    fill_plain(
        "Chuck to the left, axis below. {} moves, which cut in this order: {}. The jaws stand at {} before and are cut to {} over {}. The legend has the numbers on the drawing.",
        &[
            &path.moves.len(),
            &cuts.join(", "),
            &length(path.standing),
            &length(2.0 * path.shape.iter().map(|[radius, _]| *radius).fold(0.0, f64::max)),
            &length(setup.grip.length.value),
        ],
    )
}
