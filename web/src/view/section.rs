//! The section along the axis through jaw 1: chuck face, jaws as bored, part, tools and dimensions.

mod centre;
mod handles;
mod sizes;

use core::f64::consts::{PI, TAU};

use holdround_core::quantity::{Kind, UnitSystem};
use holdround_core::setup::Side;
use maud::{Markup, html};

use super::Stage;
use super::drawing::{
    Along, Anchor, Both, CUT_OFF, Half, JawOutline, LEFT, Outline, Point, RIGHT, THINNEST_HATCHED, TOP, Tool, closed,
    coordinate, hatchings, heights, is_hollow, letters, line_arrow, off_axis, open, stand_back, wavy,
};
use super::making::on_views::on_section;
use crate::language::{fill, fill_plain, say};

pub(in crate::view) use sizes::{JAW_LINE, LINE_UNDER};

/// Where what does not fit is cut off, above and below the axis.
pub(in crate::view) const CLIP: f64 = CUT_OFF;
/// Gap between an outline and what is drawn off it.
pub(in crate::view) const CLEAR: f64 = 4.0;

/// Draws the section along the axis through jaw 1.
pub(crate) fn draw(stage: &Stage<'_>) -> Markup {
    let both = Both::of(stage);
    let along = Along::of(stage, both.sheet);
    Section::of(stage, &both, &along).draw()
}

/// The section of what a stage shows.
pub(in crate::view) struct Section<'a> {
    stage: &'a Stage<'a>,
    both: &'a Both<'a>,
    along: &'a Along,
    part: Outline<'a>,
    /// Smallest radius of the bore, view units; zero if solid somewhere.
    bore: f64,
}

impl<'a> Section<'a> {
    /// The section of what `stage` shows.
    pub(in crate::view) fn of(stage: &'a Stage<'a>, both: &'a Both<'a>, along: &'a Along) -> Self {
        let part = Outline::of(stage, both.sheet, along, &both.shape);
        let bore = both.sheet.radius(stage.setup.part.smallest_bore());
        Self { stage, both, along, part, bore }
    }
}

impl Section<'_> {
    fn draw(&self) -> Markup {
        let state = if self.stage.clamped { "clamped" } else { "released" };
        let tools = Tool::all(self.stage, self.both.sheet, self.along);
        html! {
            svg class={ "view section " (state) } viewBox=(self.both.sheet.view_box()) role="group"
                aria-labelledby="section-title" font-size="22" xmlns="http://www.w3.org/2000/svg" {
                g role="img" aria-labelledby="section-title section-desc" {
                    title id="section-title" { (fill("Section A–A along the axis through jaw 1: {}", &[&say(state)])) }
                    desc id="section-desc" { (self.description()) }
                    (hatchings())
                    defs {
                        clipPath id="section-clip" {
                            rect x=(coordinate(LEFT)) y=(coordinate(-CLIP)) width=(coordinate(RIGHT - LEFT)) height=(coordinate(2.0 * CLIP)) {}
                        }
                    }
                    g clip-path="url(#section-clip)" {
                        (self.chuck())
                        (self.jaws_behind())
                        g class="held" { (self.part()) }
                        @if self.stage.setup.grip.thrust.is_some() { (self.centre()) }
                        (self.cut_jaws())
                        (self.breaks())
                        (on_section(self.stage))
                    }
                    (self.cut_off())
                    path class="chain" d=(open(&[(LEFT, 0.0), (self.along.end + 16.0, 0.0)])) {}
                    (letters((RIGHT - 6.0, TOP + 24.0), Anchor::End, "heading", &format!("A–A, {}", say(state))))
                    @if self.touches() {
                        (letters((LEFT + 6.0, TOP + 24.0), Anchor::Start, "note", say("Arrows: mean over the arc")))
                    }
                }
                g class="dimensions" {
                    (self.dimensions())
                    (letters((LEFT + 6.0, self.both.sheet.rows.note), Anchor::Start, "note",
                        &fill_plain("In {}. Tools from jaw front:", &[&self.unit_words()])))
                    @for tool in &tools { (tool.listed(self.stage, self.both.sheet)) }
                }
                g class="handles" { (self.handles()) }
                // Last, so that a number stays readable on whatever line it falls.
                g class="tools" aria-hidden="true" { @for tool in &tools { (tool.mark()) } }
            }
        }
    }

    /// Whether a jaw stands opposite jaw 1, and so is cut as well.
    fn opposite(&self) -> bool {
        self.stage.setup.chuck.jaws.is_multiple_of(2)
    }

    pub(in crate::view) fn chuck(&self) -> Markup {
        let body = self.both.sheet.radius(self.stage.setup.chuck.body_diameter.value);
        let Along { back, chuck: face, .. } = *self.along;
        let outline = [(back, -body), (face, -body), (face, body), (back, body)];
        html! {
            path class="outline" d=(open(&outline)) {}
            path class="thin" d=(open(&wavy((back, -body), (back, body)))) {}
        }
    }

    /// A jaw's section above the axis.
    pub(in crate::view) fn jaw_section(&self) -> Vec<Point> {
        self.jaw_section_at(self.both.jaw.grip, 0.0)
    }

    /// The same with its face at the radius `grip`, and proud in front by `more`, view units.
    pub(in crate::view) fn jaw_section_at(&self, grip: f64, more: f64) -> Vec<Point> {
        let chuck = self.along.chuck;
        let front = self.along.front + more;
        let seat = self.step();
        let JawOutline { inner, outer, .. } = self.both.jaw;
        let grip = grip.max(inner).min(outer);
        match self.stage.setup.grip.side {
            Side::Outside => {
                vec![(chuck, -inner), (chuck, -outer), (front, -outer), (front, -grip), (seat, -grip), (seat, -inner)]
            }
            Side::Inside => {
                vec![(chuck, -inner), (chuck, -outer), (seat, -outer), (seat, -grip), (front, -grip), (front, -inner)]
            }
        }
    }

    fn cut_jaws(&self) -> Markup {
        let (way, _) = stand_back(self.stage, self.both.sheet);
        let section = closed(&self.jaw_section());
        let one = html! {
            g class={ "jaw-slide " (way) } {
                (self.master_jaw())
                path class="blank" d=(section) {}
                path class="cut" d=(section) fill="url(#hatch-jaw)" {}
                @if self.touches() { g class="held" { (self.contact()) } }
            }
        };
        html! {
            (one)
            @if self.opposite() { g transform="scale(1 -1)" { (one) } }
        }
    }

    /// Whether the jaws touch the part: clamped, and not thrown off it by the spin.
    fn touches(&self) -> bool {
        let lost = self.stage.spinning && self.stage.findings.scene.jaw_grip_at_speed <= 0.0;
        self.stage.clamped && !lost
    }

    /// The master jaw's end under the top jaw, with the serrations between them.
    pub(in crate::view) fn master_jaw(&self) -> Markup {
        const DEPTH: f64 = 26.0;
        const TOOTH: f64 = 3.0;
        let face = self.along.chuck;
        let body = self.both.sheet.radius(self.stage.setup.chuck.body_diameter.value);
        let (low, high) = (self.both.jaw.inner, self.both.jaw.outer.min(body).max(self.both.jaw.inner));
        let teeth = ((high - low) / (2.0 * TOOTH)).floor().clamp(1.0, 200.0);
        let serrations: Vec<Point> = (0..=(2.0 * teeth) as usize)
            .map(|at| {
                let height = low + (high - low) * at as f64 / (2.0 * teeth);
                (if at % 2 == 0 { face } else { face - TOOTH }, -height)
            })
            .collect();
        html! {
            path class="thin" d=(open(&[(face, -low), (face - DEPTH, -low), (face - DEPTH, -high), (face, -high)])) {}
            path class="thin" d=(open(&serrations)) {}
        }
    }

    /// The jaws that are seen beyond the cut.
    fn jaws_behind(&self) -> Markup {
        let Along { chuck, front, .. } = *self.along;
        let seat = self.step();
        let (_, back) = stand_back(self.stage, self.both.sheet);
        html! {
            @for angle in self.angles_behind() {
                @let shift = if self.stage.clamped { 0.0 } else { -back * libm::cos(angle) };
                g transform={ "translate(0 " (coordinate(shift)) ")" } {
                    @for (points, from, to) in [(&self.both.jaw.whole, chuck, seat), (&self.both.jaw.front, seat, front)] {
                        @let (low, high) = heights(points, angle);
                        path class="outline jaw" d=(closed(&[(from, -low), (from, -high), (to, -high), (to, -low)])) {}
                    }
                }
            }
        }
    }

    fn angles_behind(&self) -> impl Iterator<Item = f64> {
        let jaws = self.stage.setup.chuck.jaws;
        (1..jaws).map(move |at| TAU * f64::from(at) / f64::from(jaws)).filter(|angle| *angle < PI - 1e-6)
    }

    /// Where the jaws' step is drawn: under the part, or a little off it.
    pub(in crate::view) fn step(&self) -> f64 {
        const OFF_THE_PART: f64 = 3.0;
        let off = if self.stage.setup.grip.seated { 0.0 } else { OFF_THE_PART };
        (self.along.seat - off).max(self.along.chuck)
    }

    /// Where jaw 1 bears on the part, and how hard: arrows as long as the mean across the jaw at each place.
    fn contact(&self) -> Markup {
        let outside = self.stage.setup.grip.side == Side::Outside;
        let away = if outside { 1.0 } else { -1.0 };
        let surface = |z: f64| self.both.jaw.grip + self.part.gripped_shift(z, outside);
        let [from, to] = self.stage.setup.bearing();
        let face: Vec<Point> = [0.0, 0.25, 0.5, 0.75, 1.0]
            .map(|share| from + (to - from) * share)
            .map(|z| (self.along.place(z), -surface(z)))
            .into();
        let places = self.both.pressure.along.iter().map(|(z, length)| (*z, self.along.place(*z), *length));
        let arrows: Vec<(Point, Point)> = places
            .filter(|(_, x, _)| !self.along.is_broken_at(*x))
            .map(|(z, x, length)| ((x, -(surface(z) + away * length)), (x, -surface(z))))
            .collect();
        let tails: Vec<Point> = arrows.iter().map(|(tail, _)| *tail).collect();
        html! {
            path class="contact" d=(open(&face)) {}
            path class="band" d=(open(&tails)) {}
            @for (tail, tip) in &arrows { (line_arrow(*tail, *tip, 7.0, "live")) }
        }
    }

    fn part(&self) -> Markup {
        let thin = self.part.thickest() < THINNEST_HATCHED;
        html! {
            @for (x, radius) in self.part.edges_beyond() {
                path class="outline" d=(open(&[(x, -radius), (x, radius)])) {}
            }
            @for half in [Half::Upper, Half::Lower] {
                @let wall = self.part.moved_half(half);
                path class="blank" d=(closed(&wall)) {}
                @if thin {
                    path class="metal filled" d=(closed(&wall)) {}
                } @else {
                    path class="metal" d=(closed(&wall)) fill="url(#hatch-part)" {}
                }
                @if let Some(mesh) = self.stage.mesh { g class="mesh" { path d=(self.part.mesh(mesh, half)) {} } }
                path class="outline" d=(off_axis(&wall)) {}
                path class="true-shape" d=(off_axis(&self.part.true_half(half))) {}
            }
        }
    }

    /// Lowest height above the axis at which a jaw is seen.
    fn lowest(&self) -> f64 {
        if self.opposite() {
            return -self.both.jaw.outer;
        }
        self.angles_behind().map(|angle| heights(&self.both.jaw.whole, angle).0).fold(self.both.jaw.inner, f64::min)
    }

    /// Breaks in what is too long for the sheet.
    pub(in crate::view) fn breaks(&self) -> Markup {
        let jaws = (self.lowest(), self.both.jaw.outer);
        let part = (-self.both.outside, self.both.outside);
        let extents = [jaws, (jaws.0.min(part.0), jaws.1.max(part.1)), part];
        html! {
            @for (lines, (low, high)) in self.along.breaks().into_iter().zip(extents) {
                @if let Some((left, right)) = lines {
                    @let (low, high) = (low.max(-CLIP) - CLEAR, high.min(CLIP) + CLEAR);
                    @let near = wavy((left, -low), (left, -high));
                    @let far = wavy((right, -low), (right, -high));
                    @let gap: Vec<Point> = near.iter().chain(far.iter().rev()).copied().collect();
                    path class="blank" d=(closed(&gap)) {}
                    path class="thin" d=(open(&near)) {}
                    path class="thin" d=(open(&far)) {}
                }
            }
        }
    }

    /// Break lines where chuck or jaws run off the sheet.
    pub(in crate::view) fn cut_off(&self) -> Markup {
        let body = self.both.sheet.radius(self.stage.setup.chuck.body_diameter.value) > CLIP;
        let jaws = self.both.jaw.outer > CLIP;
        let from = if body { self.along.back } else { self.along.chuck };
        let to = |jaw_here: bool| {
            if jaws && jaw_here { self.along.outer_end(self.stage.setup.grip.side) } else { self.along.chuck }
        };
        html! {
            @for (height, end) in [(-CLIP, to(true)), (CLIP, to(self.lowest() < -CLIP))] {
                @if end > from { path class="thin" d=(open(&wavy((from, height), (end, height)))) {} }
            }
        }
    }

    pub(in crate::view) fn unit_words(&self) -> &'static str {
        match self.stage.units.system {
            UnitSystem::Metric => say("millimetres"),
            UnitSystem::Inch => say("inches"),
        }
    }

    fn description(&self) -> String {
        let setup = self.stage.setup;
        let show = |si: f64| self.stage.units.show(Kind::Length, si);
        let part = if setup.part.stepped {
            let kind = if is_hollow(&setup.part) { say("hollow") } else { say("solid") };
            fill_plain(
                "A part of {} steps, largest outside {}, {}, length {}",
                &[
                    &setup.part.profile.steps().len(),
                    &show(setup.part.largest_outside()),
                    &kind,
                    &show(setup.part.length()),
                ],
            )
        } else if self.bore > 0.0 {
            fill_plain(
                "A ring, outside {}, bore {}, length {}",
                &[&show(setup.part.largest_outside()), &show(setup.part.smallest_bore()), &show(setup.part.length())],
            )
        } else {
            fill_plain(
                "A solid part, outside {}, length {}",
                &[&show(setup.part.largest_outside()), &show(setup.part.length())],
            )
        };
        let seat = if setup.grip.seated {
            say("resting on the jaw step")
        } else {
            say("held by friction alone, off the jaw step")
        };
        let tail = if setup.grip.thrust.is_some() { say(", a live centre in its tail end") } else { "" };
        let tools: Vec<String> = setup
            .cuts
            .iter()
            .enumerate()
            .map(|(at, cut)| fill_plain("tool {} {} in front of the jaws", &[&(at + 1), &show(cut.distance.value)]))
            .collect();
        fill_plain(
            "{}, {} over {} by jaws {} high with a step of {}, {}{}; {}. Arrows on the jaw: pressure along it, as a mean over its arc, to the scale of the other view.",
            &[
                &part,
                &self.both.way,
                &show(setup.grip.length.value),
                &show(setup.jaws.height.value),
                &show(setup.jaws.step.value),
                &seat,
                &tail,
                &tools.join(", "),
            ],
        )
    }
}
