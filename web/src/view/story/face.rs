//! The face of the film: jaws on the chuck, ring, part, its shape, grip and pressure.

use core::f64::consts::TAU;

use holdround_core::quantity::{Kind, decimal};
use holdround_core::setup::Side;
use maud::{Markup, html};

use super::film::{Change, Shown, TOOL, turned};
use crate::language::{fill_plain, number, say};
use crate::view::Stage;
use crate::view::drawing::{
    Anchor, Both, CUT_OFF, LEFT, PRESSURE_KEY, Point, TOP, around, block, block_arrow, closed, coordinate, corners,
    letters, line_arrow, open, polar, stand_back,
};
use crate::view::face::{FIRST_LINE, FORCE_KEY, Face, LINE, RISE};
use crate::view::making::on_views::{shanks, translated};

/// Longest cutting force that is drawn, view units.
const LONGEST_CUT: f64 = 150.0;
/// The line of the stroke: from its left end, how long.
const STROKE: [f64; 2] = [LEFT + 8.0, 200.0];

/// What moves on the face, worked out once.
#[derive(Clone, Debug)]
pub(super) struct Moving {
    jaws: u32,
    /// How far jaws that stand back are drawn outward.
    back: f64,
    /// Radius of outside and bore.
    radii: [f64; 2],
    /// Shifts of both around, clamped at rest; with the directions they are drawn in.
    shifts: [Vec<f64>; 2],
    directions: Vec<Point>,
    inside: bool,
    grip: f64,
    /// Angle from the middle of a jaw, shift there, length of the pressure's arrow.
    pressure: Vec<[f64; 3]>,
    touching: Vec<Vec<[f64; 2]>>,
    /// Where grip arrows end, and view units for a newton.
    arrows: (f64, f64),
    /// Radius at which each cut bites, whether it is inside the bore, and its force, view units.
    cuts: Vec<(f64, bool, f64)>,
    /// Where the jaws stand in the stroke, as shares: on the ring, on the part, and standing back from either.
    stroke: Option<[f64; 3]>,
}

impl Moving {
    pub(super) fn of(stage: &Stage<'_>, both: &Both<'_>) -> Self {
        let face = Face::of(stage);
        let inside = stage.setup.grip.side == Side::Inside;
        let whole = both.shape.with_shares([1.0, 1.0]);
        let gripped = |angle: f64| if inside { whole.bore_shift(angle) } else { whole.outside_shift(angle) };
        let on_circle = around(1.0);
        let angles: Vec<f64> = (0..on_circle.len()).map(|at| TAU * at as f64 / on_circle.len() as f64).collect();
        let touching = both.pressure.touching.iter().map(|(from, to)| {
            (0..=16).map(|at| from + (to - from) * f64::from(at) / 16.0).map(|angle| [angle, gripped(angle)]).collect()
        });
        let scale = face.force_scale().unwrap_or(0.0);
        let force = |at: usize| stage.findings.value(&format!("cuts.{at}.force")).unwrap_or(0.0);
        let cuts = stage.setup.cuts.iter().enumerate().map(|(at, cut)| {
            let (diameter, (_, down)) = crate::view::drawing::direction(cut, &stage.setup.part);
            (both.sheet.radius(diameter), down < 0.0, (force(at) * scale).min(LONGEST_CUT))
        });
        Self {
            jaws: stage.setup.chuck.jaws,
            back: stand_back(stage, both.sheet).1,
            radii: [both.outside, face.bore],
            shifts: [
                angles.iter().map(|angle| whole.outside_shift(*angle)).collect(),
                angles.iter().map(|angle| whole.bore_shift(*angle)).collect(),
            ],
            directions: on_circle,
            inside,
            grip: both.jaw.grip,
            pressure: both.pressure.around.iter().map(|(angle, length)| [*angle, gripped(*angle), *length]).collect(),
            touching: touching.collect(),
            arrows: (face.grip_arrows_from(), scale),
            cuts: cuts.collect(),
            stroke: stage.findings.scene.placing.as_ref().filter(|placing| placing.stroke > 0.0).map(|placing| {
                let share = |at: f64| at / placing.stroke;
                let (on_ring, on_part) = (share(placing.bored_at), share(placing.gripping_at[1]));
                let away = if inside { 0.0 } else { 1.0 };
                [on_ring, on_part, away]
            }),
        }
    }

    /// The outline of a surface with so much of its lobes.
    fn outline(&self, surface: usize, lobes: f64) -> String {
        let radius = self.radii[surface];
        if radius <= 0.0 {
            return String::new();
        }
        let points: Vec<Point> = self
            .directions
            .iter()
            .zip(&self.shifts[surface])
            .map(|((x, y), shift)| {
                let at = (radius + shift * lobes).max(0.0);
                (x * at, y * at)
            })
            .collect();
        closed(&points)
    }

    /// What is drawn over jaw 1, over each jaw.
    fn each(&self, points: &[Point], closing: bool) -> String {
        let draw = if closing { closed } else { open };
        (0..self.jaws).map(|jaw| draw(&turned(points, f64::from(jaw) * TAU / f64::from(self.jaws)))).collect()
    }

    /// Bearing, band of pressure and its arrows, grip at rest and now.
    fn grip(&self, shown: &Shown<'_>) -> [(&'static str, String); 5] {
        let lobes = shown.lobes[usize::from(self.inside)];
        let away = if self.inside { -1.0 } else { 1.0 };
        let on = |angle: f64, shift: f64, off: f64| polar((self.grip + shift * lobes + away * off).max(0.0), angle);
        let mut drawn = [
            ("story-bears", String::new()),
            ("story-band", String::new()),
            ("story-comb", String::new()),
            ("story-rest", String::new()),
            ("story-now", String::new()),
        ];
        if shown.pressure > 0.0 {
            for line in &self.touching {
                let points: Vec<Point> = line.iter().map(|[angle, shift]| on(*angle, *shift, 0.0)).collect();
                drawn[0].1 += &self.each(&points, false);
            }
            let ends = |[angle, shift, length]: &[f64; 3]| {
                [on(*angle, *shift, 0.0), on(*angle, *shift, length * shown.pressure)]
            };
            let ends: Vec<[Point; 2]> = self.pressure.iter().map(ends).collect();
            let foot = ends.iter().map(|[foot, _]| *foot);
            let band: Vec<Point> = foot.chain(ends.iter().rev().map(|[_, tail]| *tail)).collect();
            drawn[1].1 = self.each(&band, true);
            drawn[2].1 = ends.iter().map(|pair| self.each(pair, false)).collect();
        }
        let (near, scale) = self.arrows;
        for (slot, force, aside) in [(3, shown.grip[1], -8.0), (4, shown.grip[0], 8.0)] {
            let (low, high) = ((aside, -near), (aside, -near - force * scale));
            let [tail, tip] = if self.inside { [low, high] } else { [high, low] };
            if let Some(points) = block(tail, tip) {
                drawn[slot].1 = self.each(&points, true);
            }
        }
        drawn
    }

    pub(super) fn frame(&self, shown: &Shown<'_>) -> Vec<Change> {
        let moment = &shown.moment;
        // Forward is counter-clockwise to one who faces the chuck: common practice, no source.
        let spin = format!("rotate({})", coordinate(-360.0 * moment.turn.fract()));
        let mut changes = vec![
            Change::of("story-spin", "transform", spin.clone()),
            Change::of("story-spin-grip", "transform", spin),
            Change::of("story-jaws", "opacity", coordinate(moment.mounted)),
            Change::of("story-ring-face", "opacity", coordinate(moment.ring)),
            Change::of("story-part-face", "opacity", coordinate(moment.part)),
            Change::of("story-between", "opacity", coordinate(moment.told)),
        ];
        let slide = translated(0.0, -self.back * moment.open);
        changes.extend((0..self.jaws).map(|jaw| Change::of(format!("story-jaw-{jaw}"), "transform", slide.clone())));
        if moment.part > 0.0 {
            let outside = self.outline(0, shown.lobes[0]);
            let bore = self.outline(1, shown.lobes[1]);
            if moment.told > 0.0 {
                // Between the surface as it came out and its true circle: what is cut out of round.
                let between = outside.clone() + &self.outline(0, 0.0) + &bore + &self.outline(1, 0.0);
                changes.push(Change::of("story-between", "d", between));
            }
            changes.push(Change::of("story-outline", "d", outside + &bore));
        }
        changes.extend(self.grip(shown).map(|(id, data)| Change::of(id, "d", data)));
        let [_, (swept, tool)] = &shown.bored;
        changes.push(Change::of("story-swept-face", "d", swept.clone()));
        changes.push(Change::of("story-bar-face", "transform", tool.clone()));
        if let Some((radius, in_bore, force)) = shown.cut.and_then(|(cut, _)| self.cuts.get(cut)) {
            let points = (0.0, if *in_bore { -1.0 } else { 1.0 });
            changes.push(Change::of("story-tool-face", "d", closed(&corners((0.0, -radius), points, TOOL))));
            // The part comes from the right over the top, and is pushed back.
            let arrow = block((0.0, -radius), (*force, -radius)).map_or_else(String::new, |points| closed(&points));
            changes.push(Change::of("story-cut-force", "d", arrow));
        }
        if let Some([on_ring, on_part, open_at]) = self.stroke {
            let closed_at = if shown.told.chapter.makes_jaws() { on_ring } else { on_part };
            let at = closed_at + (open_at - closed_at) * moment.open;
            changes.push(Change::of("story-stroke", "transform", translated(STROKE[0] + STROKE[1] * at, 0.0)));
        }
        changes
    }
}

/// The face, once; what moves is put in place afterwards.
pub(super) fn draw(stage: &Stage<'_>, both: &Both<'_>) -> Markup {
    let face = Face::of(stage);
    let jaws = stage.setup.chuck.jaws;
    let pitch = TAU / f64::from(jaws);
    let all: String = (0..jaws).map(|at| closed(&turned(&both.jaw.whole, f64::from(at) * pitch))).collect();
    let clip = both.sheet.broken.then_some("url(#face-clip)");
    html! {
        svg id="story-face" class="view story" viewBox=(both.sheet.view_box()) role="group" aria-labelledby="story-face-step"
            font-size="22" xmlns="http://www.w3.org/2000/svg" {
            g role="img" aria-labelledby="story-face-step story-face-says" {
                title id="story-face-step" {}
                desc id="story-face-says" {}
                defs {
                    clipPath id="face-clip" { circle r=(coordinate(CUT_OFF)) {} }
                    clipPath id="story-bar-clip" { circle r=(coordinate(CUT_OFF)) {} }
                    clipPath id="story-jaws-clip" { path d=(all) {} }
                }
                g clip-path=[clip] { g id="story-spin" {
                    circle class="outline body" r=(coordinate(both.sheet.radius(stage.setup.chuck.body_diameter.value))) {}
                    g id="story-jaws" {
                        @for at in 0..jaws {
                            g transform={ "rotate(" (coordinate((f64::from(at) * pitch).to_degrees())) ")" } { g id={ "story-jaw-" (at) } {
                                path class="outline jaw" d=(closed(&both.jaw.whole)) {}
                                path class="outline jaw of-bored" d=(closed(&both.jaw.front)) {}
                            } }
                        }
                        g clip-path="url(#story-jaws-clip)" { path id="story-swept-face" class="swept of-boring" fill-rule="evenodd" {} }
                    }
                    (ring(stage, both))
                    g id="story-part-face" class="of-holding" { (part(both, &face)) }
                } }
                @if both.sheet.broken { circle class="break" r=(coordinate(CUT_OFF)) {} }
                g id="story-spin-grip" class="of-holding" {
                    path id="story-band" class="band" {}
                    path id="story-comb" class="comb" {}
                    path id="story-bears" class="contact" {}
                    path id="story-rest" class="force rest" {}
                    path id="story-now" class="force speed" {}
                }
                @if let Some(path) = &stage.findings.scene.jaw_path {
                    g class="of-boring" clip-path="url(#story-bar-clip)" { g id="story-bar-face" { (shanks(stage, path)[1]) } }
                }
                g class="of-cutting" {
                    path id="story-cut-force" class="force cutting-force" {}
                    path id="story-tool-face" class="tool" {}
                }
                (face.axes())
                text id="story-number" class="letters heading" x=(coordinate(LEFT + 6.0)) y=(coordinate(TOP + 24.0)) {}
                (keys(stage, both, &face))
            }
            g clip-path=[clip] {
                (face.jaw_target())
                g class="of-holding" { (face.part_target()) }
            }
        }
    }
}

fn ring(stage: &Stage<'_>, both: &Both<'_>) -> Markup {
    let ring = stage.findings.scene.placing.as_ref().and_then(|placing| placing.ring);
    let circle = |radius: f64| closed(&around(radius * both.sheet.scale));
    html! {
        @if let Some(ring) = ring {
            @let inner = if ring.radii[0] > 0.0 { circle(ring.radii[0]) } else { String::new() };
            path id="story-ring-face" class="ring-face of-ring" fill-rule="evenodd" d={ (circle(ring.radii[1])) (inner) } {}
        }
    }
}

fn part(both: &Both<'_>, face: &Face<'_>) -> Markup {
    let [outer, inner] = face.edges();
    html! {
        (face.behind_the_bore())
        path id="story-outline" class="outline part" fill-rule="evenodd" {}
        path id="story-between" class="between" fill-rule="evenodd" {}
        @for radius in outer.iter().chain(&inner) { circle class="outline edge" r=(coordinate(*radius)) {} }
        circle class="true-shape" r=(coordinate(both.outside)) {}
        @if face.bore > 0.0 { circle class="true-shape" r=(coordinate(face.bore)) {} }
    }
}

/// What arrows and lines stand for, under the view.
fn keys(stage: &Stage<'_>, both: &Both<'_>, face: &Face<'_>) -> Markup {
    let line = |at: usize| FIRST_LINE + LINE * at as f64;
    let left = LEFT + 6.0;
    let note = |at: usize, words: &str| letters((left, line(at)), Anchor::Start, "note", words);
    let lobes = both.shape.magnification.map_or_else(
        || say("No lobes drawn: no shape was worked out.").to_owned(),
        |factor| fill_plain("Lobes × {}. Dashed: true shape.", &[&number(decimal(factor, 3))]),
    );
    let unit = stage.units.unit(Kind::Force);
    html! {
        g class="of-holding" {
            (note(0, &lobes))
            @if let Some(force) = face.round_force() {
                (block_arrow((left, line(1) - RISE), (left + FORCE_KEY, line(1) - RISE), "speed"))
                (letters((left + FORCE_KEY + 8.0, line(1)), Anchor::Start, "note",
                    &format!("= {} {}", number(decimal(force, 3)), unit.symbol)))
                (letters((left, line(2)), Anchor::Start, "note", say("Each jaw: open at rest, filled now.")))
            }
            @if let Some(pressure) = both.pressure.round {
                @let unit = stage.units.unit(Kind::Stress);
                (line_arrow((-64.0, line(1) - RISE), (PRESSURE_KEY - 64.0, line(1) - RISE), 7.0, "live"))
                (letters((PRESSURE_KEY - 56.0, line(1)), Anchor::Start, "note",
                    &fill_plain("= {} {} pressure", &[&number(decimal(pressure, 3)), &unit.symbol])))
            }
            text id="story-force" class="letters note" x=(coordinate(left)) y=(coordinate(line(3))) {}
        }
        g class="of-making" {
            @if let Some(placing) = &stage.findings.scene.placing {
                @let (from, to) = (STROKE[0], STROKE[0] + STROKE[1]);
                @let base = line(1) - 4.0;
                @let third = |share: f64| from + STROKE[1] * share;
                path class="third" d=(closed(&[(third(1.0 / 3.0), base - 8.0), (third(2.0 / 3.0), base - 8.0), (third(2.0 / 3.0), base + 8.0), (third(1.0 / 3.0), base + 8.0)])) {}
                path class="outline" d=(open(&[(from, base - 8.0), (from, base + 8.0), (from, base), (to, base), (to, base - 8.0), (to, base + 8.0)])) {}
                g id="story-stroke" { path class="marked" d=(closed(&[(0.0, base), (-8.0, base - 16.0), (8.0, base - 16.0)])) {} }
                (letters((to + 14.0, line(1)), Anchor::Start, "note",
                    &fill_plain("stroke {}", &[&stage.units.show(Kind::Length, placing.stroke)])))
            } @else {
                (note(1, say("Stroke and ring are not planned.")))
            }
            g class="of-boring" {
                (note(2, say("Tinted: metal cut away.")))
                (note(3, say("Dashed: rapid. Solid: cut.")))
            }
        }
    }
}
