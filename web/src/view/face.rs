//! The chuck from the front: jaws, part, its shape magnified, grip and contact pressure.

mod words;

use core::f64::consts::TAU;

use holdround_core::quantity::Kind;
use holdround_core::setup::{JawShape, Side};
use maud::{Markup, html};

use super::Stage;
use super::drawing::{
    Anchor, Both, CUT_OFF, LEFT, PRESSURE_KEY, Point, REACH, RIGHT, State, TOP, arc, around, at_front, at_least,
    block_arrow, closed, coordinate, letters, line_arrow, open, polar, stand_back,
};
use super::making::on_views::on_face;
use crate::language::{fill, fill_plain, say};

pub(in crate::view) use words::{FIRST_LINE, LINE, RISE};

/// Length of the arrow that stands for the round force named in the key, view units.
pub(in crate::view) const FORCE_KEY: f64 = 40.0;
/// Beyond this, in any unit, no chuck grips, and the key has no room for the figure.
const MOST_FORCE: f64 = 1e6;
/// Farthest from the axis that a grip arrow reaches, view units.
const GRIP_REACH: f64 = 224.0;

/// Draws the chuck seen from the front.
pub(crate) fn draw(stage: &Stage<'_>) -> Markup {
    Face::of(stage).draw()
}

/// The face of what a stage shows.
pub(in crate::view) struct Face<'a> {
    stage: &'a Stage<'a>,
    both: Both<'a>,
    /// Radius of the bore at the front, view units; zero if it is closed there.
    pub(in crate::view) bore: f64,
}

impl<'a> Face<'a> {
    /// The face of what `stage` shows.
    pub(in crate::view) fn of(stage: &'a Stage<'a>) -> Self {
        let both = Both::of(stage);
        let bore = both.sheet.radius(at_front(&stage.setup.part));
        Self { stage, both, bore }
    }
}

impl Face<'_> {
    fn draw(&self) -> Markup {
        let classes = match self.both.shape.state {
            State::Released => "view face released".to_string(),
            State::AtRest => "view face clamped".to_string(),
            State::AtSpeed => format!("view face clamped spinning {}", spin_class(self.stage.setup.speed.value)),
        };
        html! {
            svg class=(classes) viewBox=(self.both.sheet.view_box()) role="group" aria-labelledby="face-title"
                font-size="22" xmlns="http://www.w3.org/2000/svg" {
                g role="img" aria-labelledby="face-title face-desc" {
                    title id="face-title" { (fill("Chuck from the front: {}", &[&self.state_words()])) }
                    desc id="face-desc" { (self.description()) }
                    @if self.both.sheet.broken {
                        defs { clipPath id="face-clip" { circle r=(coordinate(CUT_OFF)) {} } }
                    }
                    g clip-path=[self.clip()] { g class="spindle" {
                        circle class="outline body" r=(coordinate(self.both.sheet.radius(self.stage.setup.chuck.body_diameter.value))) {}
                        (self.each_jaw(&self.jaw_body()))
                        g class="held" { (self.part()) }
                    } }
                    @if self.both.sheet.broken { circle class="break" r=(coordinate(CUT_OFF)) {} }
                    @if self.both.shape.state != State::Released {
                        g class="spindle held" { (self.each_jaw_at(&|angle| self.contact(angle))) }
                    }
                    (on_face(self.stage))
                    (self.axes())
                    (self.headings())
                    (self.key())
                }
                g clip-path=[self.clip()] { g class="spindle" { (self.targets()) } }
            }
        }
    }

    fn clip(&self) -> Option<&'static str> {
        self.both.sheet.broken.then_some("url(#face-clip)")
    }

    /// What can be tapped: the jaws, and on top of them the part.
    fn targets(&self) -> Markup {
        html! { (self.jaw_target()) (self.part_target()) }
    }

    /// The jaws, to be tapped.
    pub(in crate::view) fn jaw_target(&self) -> Markup {
        let jaws = match self.stage.setup.jaws.shape {
            JawShape::Ordinary(_) => say("Ordinary jaws"),
            JawShape::Wide(_) => say("Wide jaws"),
            JawShape::Pie(_) => say("Pie jaws"),
        };
        html! {
            g class="dimension" role="button" tabindex="0" data-entry="jaws.kind"
                aria-label=(fill_plain("{}, change", &[&jaws])) {
                (self.each_jaw(&html! { path class="hit" d=(closed(&self.both.jaw.whole)) {} }))
            }
        }
    }

    /// The part, to be tapped.
    pub(in crate::view) fn part_target(&self) -> Markup {
        let setup = self.stage.setup;
        let size = self.stage.units.show(Kind::Length, setup.part.largest_outside());
        let entry = if setup.part.stepped { self.largest_step() } else { "part.outside_diameter".into() };
        let inner = if setup.part.smallest_bore() > 0.0 { closed(&around(self.narrowest())) } else { String::new() };
        let ring = closed(&around(self.both.outside)) + &inner;
        html! {
            g class="dimension" role="button" tabindex="0" data-entry=(entry)
                aria-label=(fill_plain("Part, outside diameter {}, change", &[&size])) {
                path class="hit" fill-rule="evenodd" d=(ring) {}
            }
        }
    }

    /// Entry of the largest outside of a part of steps.
    fn largest_step(&self) -> String {
        let largest = self.stage.setup.part.largest_outside();
        let steps = self.stage.setup.part.profile.steps().iter();
        let fields = steps
            .enumerate()
            .flat_map(|(at, step)| [(at, "outside", step.outer[0]), (at, "outside_end", step.outer[1])]);
        let found = fields.into_iter().find(|(_, _, outside)| *outside >= largest);
        found.map_or_else(|| "part.shape".into(), |(at, field, _)| format!("steps.{at}.{field}"))
    }

    fn narrowest(&self) -> f64 {
        self.both.sheet.radius(self.stage.setup.part.smallest_bore())
    }

    fn jaws(&self) -> u32 {
        self.stage.setup.chuck.jaws
    }

    fn each_jaw(&self, one: &Markup) -> Markup {
        self.each_jaw_at(&|_| one.clone())
    }

    fn each_jaw_at(&self, one: &dyn Fn(f64) -> Markup) -> Markup {
        let pitch = TAU / f64::from(self.jaws());
        html! {
            @for at in 0..self.jaws() {
                g transform={ "rotate(" (coordinate((f64::from(at) * pitch).to_degrees())) ")" } { (one(f64::from(at) * pitch)) }
            }
        }
    }

    fn jaw_body(&self) -> Markup {
        let (way, _) = stand_back(self.stage, self.both.sheet);
        html! {
            g class={ "jaw-slide " (way) } {
                path class="outline jaw" d=(closed(&self.both.jaw.whole)) {}
                path class="outline jaw" d=(closed(&self.both.jaw.front)) {}
            }
        }
    }

    fn part(&self) -> Markup {
        let outside = closed(&self.both.shape.outside_around(self.both.outside));
        let bore = if self.bore > 0.0 { closed(&self.both.shape.bore_around(self.bore)) } else { String::new() };
        let [outer, inner] = self.edges();
        html! {
            (self.behind_the_bore())
            path class="outline part" fill-rule="evenodd" d={ (outside) (bore) } {}
            @for radius in outer.iter().chain(&inner) { circle class="outline edge" r=(coordinate(*radius)) {} }
            circle class="true-shape" r=(coordinate(self.both.outside)) {}
            @if self.bore > 0.0 { circle class="true-shape" r=(coordinate(self.bore)) {} }
        }
    }

    /// What is seen of the part through the bore at its front.
    pub(in crate::view) fn behind_the_bore(&self) -> Markup {
        html! {
            @if self.bore > 0.0 && self.narrowest() < self.bore {
                @let through = if self.narrowest() > 0.0 { closed(&around(self.narrowest())) } else { String::new() };
                path class="part bare" fill-rule="evenodd" d={ (closed(&around(self.bore))) (through) } {}
            }
        }
    }

    /// Radii of the further edges that are seen from the front: on the outside, and in the bore.
    pub(in crate::view) fn edges(&self) -> [Vec<f64>; 2] {
        let mut outer: Vec<f64> = Vec::new();
        let mut inner: Vec<f64> = Vec::new();
        let (mut widest, mut narrowest) = (0.0, f64::INFINITY);
        for step in self.stage.setup.part.profile.steps().iter().rev() {
            for end in [1, 0] {
                let (outside, bore) =
                    (self.both.sheet.radius(step.outer[end]), self.both.sheet.radius(step.inner[end]));
                if outside > widest {
                    widest = outside;
                    outer.push(outside);
                }
                if bore < narrowest {
                    narrowest = bore;
                    inner.push(bore);
                }
            }
        }
        // The widest and the bore at the front are drawn with their lobes.
        outer.pop();
        inner.retain(|radius| *radius > 0.0 && *radius < self.bore);
        [outer, inner]
    }

    /// How far the gripped surface is drawn from its true circle at `angle` from jaw 1.
    fn gripped_shift(&self, angle: f64) -> f64 {
        match self.stage.setup.grip.side {
            Side::Outside => self.both.shape.outside_shift(angle),
            Side::Inside => self.both.shape.bore_shift(angle),
        }
    }

    /// Contact arc, pressure and grip of the jaw at `place` from jaw 1, its own axis up.
    fn contact(&self, place: f64) -> Markup {
        const POINTS: usize = 24;
        let on_part = |angle: f64| (self.both.jaw.grip + self.gripped_shift(place + angle)).max(0.0);
        let away = match self.stage.setup.grip.side {
            Side::Outside => 1.0,
            Side::Inside => -1.0,
        };
        let tail = |(angle, length): &(f64, f64)| polar(on_part(*angle) + away * length, *angle);
        let tails: Vec<Point> = self.both.pressure.around.iter().map(tail).collect();
        html! {
            @for (from, to) in &self.both.pressure.touching {
                @let line: Vec<Point> =
                    (0..=POINTS).map(|at| from + (to - from) * at as f64 / POINTS as f64).map(|a| polar(on_part(a), a)).collect();
                path class="contact" d=(open(&line)) {}
            }
            @if !self.both.pressure.touching.is_empty() {
                path class="band" d=(open(&tails)) {}
                @for ((angle, _), tail) in self.both.pressure.around.iter().zip(&tails) {
                    (line_arrow(*tail, polar(on_part(*angle), *angle), 7.0, "live"))
                }
            }
            (self.grip_arrows())
        }
    }

    /// Grip at rest, open, and at speed, full, side by side on the jaw's axis.
    fn grip_arrows(&self) -> Markup {
        const ASIDE: f64 = 8.0;
        const CLEAR: f64 = 6.0;
        let Some(scale) = self.force_scale() else { return html! {} };
        let scene = &self.stage.findings.scene;
        let near = self.grip_arrows_from();
        let arrow = |force: f64, x: f64, class: &str| {
            let length = force.max(0.0) * scale;
            let (low, high) = ((x, -near), (x, -near - length));
            match self.stage.setup.grip.side {
                Side::Outside => block_arrow(high, low, class),
                Side::Inside => block_arrow(low, high, class),
            }
        };
        html! {
            (arrow(scene.jaw_grip_at_rest, -ASIDE, "rest"))
            (arrow(scene.jaw_grip_at_speed, ASIDE, "speed"))
            @if scene.jaw_grip_at_speed <= 0.0 {
                path class="lost" d=(open(&[(ASIDE - CLEAR, -near - CLEAR), (ASIDE + CLEAR, -near + CLEAR)])) {}
                path class="lost" d=(open(&[(ASIDE - CLEAR, -near + CLEAR), (ASIDE + CLEAR, -near - CLEAR)])) {}
            }
        }
    }

    /// Where grip arrows end next to the part: clear of the pressure band, or of the part itself.
    pub(in crate::view) fn grip_arrows_from(&self) -> f64 {
        let clear = match self.stage.setup.grip.side {
            Side::Outside => PRESSURE_KEY + 6.0,
            Side::Inside => 10.0,
        };
        (self.both.outside + clear).min(GRIP_REACH - 20.0)
    }

    /// The round force drawn [`FORCE_KEY`] long, in its unit.
    pub(in crate::view) fn round_force(&self) -> Option<f64> {
        let scene = &self.stage.findings.scene;
        let most = scene.jaw_grip_at_rest.max(scene.jaw_grip_at_speed);
        let room = (GRIP_REACH - self.grip_arrows_from()).clamp(20.0, 60.0);
        at_least(self.stage.units.unit(Kind::Force).from_si(most) * FORCE_KEY / room)
            .filter(|force| *force <= MOST_FORCE)
    }

    /// View units for a newton.
    pub(in crate::view) fn force_scale(&self) -> Option<f64> {
        Some(FORCE_KEY / self.stage.units.unit(Kind::Force).to_si(self.round_force()?))
    }

    /// Centre lines, and where the section is taken.
    pub(in crate::view) fn axes(&self) -> Markup {
        let reach = REACH + 12.0;
        html! {
            path class="chain" d=(open(&[(-reach, 0.0), (RIGHT, 0.0)])) {}
            path class="chain" d=(open(&[(0.0, -reach), (0.0, reach)])) {}
            @for (from, to, base) in [(-247.0, -232.0, -234.0), (232.0, 247.0, 245.0)] {
                path class="cutting" d=(open(&[(0.0, from), (0.0, to)])) {}
                (line_arrow((0.0, (from + to) / 2.0), (14.0, (from + to) / 2.0), 9.0, "ink"))
                (letters((-8.0, base), Anchor::End, "heading", "A"))
            }
        }
    }

    fn headings(&self) -> Markup {
        // Forward is counter-clockwise to one who faces the chuck: common practice, no source.
        let round = CUT_OFF + 9.0;
        let turn: Vec<Point> = arc(round, 0.72, 0.44);
        let (tip, before) = (polar(round, 0.38), polar(round, 0.44));
        let (first, second) = (TOP + 24.0, TOP + 52.0);
        html! {
            (letters((LEFT + 6.0, first), Anchor::Start, "heading", self.state_words()))
            @if self.both.shape.state == State::AtSpeed {
                (letters((RIGHT - 6.0, first), Anchor::End, "value", &self.speed_words()))
                (letters((RIGHT - 6.0, second), Anchor::End, "note", say("forward, slowed")))
                path class="turn" d=(open(&turn)) {}
                (line_arrow(before, tip, 11.0, "ink"))
            }
        }
    }
}

/// The style sheet turns the spindle in three bands, each far slower than the machine.
fn spin_class(speed: f64) -> &'static str {
    // 500 and 1500 rev/min.
    const MEDIUM: f64 = 500.0 * TAU / 60.0;
    const FAST: f64 = 1500.0 * TAU / 60.0;
    if speed < MEDIUM {
        "spin-slow"
    } else if speed < FAST {
        "spin-medium"
    } else {
        "spin-fast"
    }
}
