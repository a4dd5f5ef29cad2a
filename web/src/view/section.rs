//! The section along the axis through jaw 1: chuck face, jaws as bored, part, tools and dimensions.

use core::f64::consts::{PI, TAU};

use holdround_core::quantity::{Kind, UnitSystem};
use holdround_core::setup::Side;
use maud::{Markup, html};

use super::Stage;
use super::drawing::{
    Along, Anchor, CUT_OFF, Callout, Dimension, JawOutline, LEFT, Point, RIGHT, Sheet, THINNEST_HATCHED, Tool, closed,
    coordinate, hatchings, heights, letters, open, stand_back, wavy,
};

/// Where the chuck is broken off behind its face.
const CHUCK_BACK: f64 = LEFT + 8.0;
/// Where what does not fit is cut off, above and below the axis.
const CLIP: f64 = CUT_OFF;
/// Lines of the dimensions along the axis.
const JAW_LINE: f64 = -208.0;
const GRIP_LINE: f64 = 218.0;
const LENGTH_LINE: f64 = 262.0;
/// Lines of the diameters.
const BORE_LINE: f64 = 170.0;
const OUTSIDE_LINE: f64 = 214.0;
/// Gap between an outline and what is drawn off it.
const CLEAR: f64 = 4.0;

/// Draws the section along the axis through jaw 1.
pub(crate) fn draw(stage: &Stage<'_>) -> Markup {
    let sheet = Sheet::of(stage);
    let view = Section {
        stage,
        sheet,
        along: Along::of(stage, sheet),
        jaw: JawOutline::of(stage, sheet),
        outside: sheet.radius(stage.setup.part.outside_diameter.value),
        bore: sheet.radius(stage.setup.part.bore_diameter.value),
    };
    view.draw()
}

struct Section<'a> {
    stage: &'a Stage<'a>,
    sheet: Sheet,
    along: Along,
    jaw: JawOutline,
    /// Radius of the outside, view units.
    outside: f64,
    /// Radius of the bore, view units; zero if solid.
    bore: f64,
}

impl Section<'_> {
    fn draw(&self) -> Markup {
        let state = if self.stage.clamped { "clamped" } else { "released" };
        let tools = Tool::all(self.stage, self.sheet, &self.along);
        html! {
            svg class={ "view section " (state) } viewBox=(self.sheet.view_box()) role="group"
                aria-labelledby="section-title" font-size="16" xmlns="http://www.w3.org/2000/svg" {
                g role="img" aria-labelledby="section-title section-desc" {
                    title id="section-title" { "Section A–A along the axis through jaw 1: " (state) }
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
                        (self.part())
                        (self.cut_jaws())
                        (self.breaks())
                    }
                    (self.cut_off())
                    path class="chain" d=(open(&[(LEFT, 0.0), (self.along.end + 16.0, 0.0)])) {}
                    (letters((RIGHT - 6.0, -232.0), Anchor::End, "heading", &format!("A–A through jaw 1, {state}")))
                }
                g class="dimensions" {
                    (self.dimensions())
                    (letters((LEFT + 6.0, 300.0), Anchor::Start, "note", &format!(
                        "In {}. Tools in front of the jaws by:", self.unit_words())))
                    @for tool in &tools { (tool.listed(self.stage)) }
                }
                // Last, so that a number stays readable on whatever line it falls.
                g class="tools" aria-hidden="true" { @for tool in &tools { (tool.mark()) } }
            }
        }
    }

    /// Whether a jaw stands opposite jaw 1, and so is cut as well.
    fn opposite(&self) -> bool {
        self.stage.setup.chuck.jaws.is_multiple_of(2)
    }

    fn chuck(&self) -> Markup {
        let body = self.sheet.radius(self.stage.setup.chuck.body_diameter.value);
        let face = self.along.chuck;
        let outline = [(CHUCK_BACK, -body), (face, -body), (face, body), (CHUCK_BACK, body)];
        html! {
            path class="outline" d=(open(&outline)) {}
            path class="thin" d=(open(&wavy((CHUCK_BACK, -body), (CHUCK_BACK, body)))) {}
        }
    }

    /// A jaw's section above the axis.
    fn jaw_section(&self) -> Vec<Point> {
        let Along { chuck, seat, front, .. } = self.along;
        let JawOutline { inner, outer, .. } = self.jaw;
        let grip = self.jaw.grip.clamp(inner, outer);
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
        let (way, _) = stand_back(self.stage, self.sheet);
        let section = closed(&self.jaw_section());
        let one = html! {
            g class={ "jaw-slide " (way) } {
                (self.master_jaw())
                path class="blank" d=(section) {}
                path class="cut" d=(section) fill="url(#hatch-jaw)" {}
                @if self.touches() {
                    path class="contact" d=(open(&[(self.back_end(), -self.jaw.grip), (self.along.front, -self.jaw.grip)])) {}
                }
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
    fn master_jaw(&self) -> Markup {
        const DEPTH: f64 = 26.0;
        const TOOTH: f64 = 3.0;
        let face = self.along.chuck;
        let body = self.sheet.radius(self.stage.setup.chuck.body_diameter.value);
        let (low, high) = (self.jaw.inner, self.jaw.outer.min(body).max(self.jaw.inner));
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
        let Along { chuck, seat, front, .. } = self.along;
        let (_, back) = stand_back(self.stage, self.sheet);
        html! {
            @for angle in self.angles_behind() {
                @let shift = if self.stage.clamped { 0.0 } else { -back * libm::cos(angle) };
                g transform={ "translate(0 " (coordinate(shift)) ")" } {
                    @for (points, from, to) in [(&self.jaw.whole, chuck, seat), (&self.jaw.front, seat, front)] {
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

    /// Where the part's back end is drawn: on the step, or a little off it.
    fn back_end(&self) -> f64 {
        const OFF_THE_STEP: f64 = 3.0;
        let off = if self.stage.setup.grip.seated { 0.0 } else { OFF_THE_STEP };
        (self.along.seat + off).min(self.along.front)
    }

    fn part(&self) -> Markup {
        let (from, to) = (self.back_end(), self.along.end.max(self.back_end()));
        let wall = |low: f64, high: f64| closed(&[(from, -low), (from, -high), (to, -high), (to, -low)]);
        let walls = if self.bore > 0.0 {
            vec![wall(self.bore, self.outside), wall(-self.outside, -self.bore)]
        } else {
            vec![wall(-self.outside, self.outside)]
        };
        let thin = (self.outside - self.bore).min(to - from) < THINNEST_HATCHED;
        html! {
            @if self.bore > 0.0 {
                path class="outline" d=(open(&[(from, -self.bore), (from, self.bore)])) {}
                path class="outline" d=(open(&[(to, -self.bore), (to, self.bore)])) {}
            }
            @for wall in walls {
                path class="blank" d=(wall) {}
                @if thin {
                    path class="cut filled" d=(wall) {}
                } @else {
                    path class="cut" d=(wall) fill="url(#hatch-part)" {}
                }
            }
        }
    }

    /// Lowest height above the axis at which a jaw is seen.
    fn lowest(&self) -> f64 {
        if self.opposite() {
            return -self.jaw.outer;
        }
        self.angles_behind().map(|angle| heights(&self.jaw.whole, angle).0).fold(self.jaw.inner, f64::min)
    }

    /// Breaks in what is too long for the sheet.
    fn breaks(&self) -> Markup {
        let jaws = (self.lowest(), self.jaw.outer);
        let part = (-self.outside, self.outside);
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
    fn cut_off(&self) -> Markup {
        let body = self.sheet.radius(self.stage.setup.chuck.body_diameter.value) > CLIP;
        let jaws = self.jaw.outer > CLIP;
        let from = if body { CHUCK_BACK } else { self.along.chuck };
        let to = |jaw_here: bool| {
            if jaws && jaw_here { self.along.outer_end(self.stage.setup.grip.side) } else { self.along.chuck }
        };
        html! {
            @for (height, end) in [(-CLIP, to(true)), (CLIP, to(self.lowest() < -CLIP))] {
                @if end > from { path class="thin" d=(open(&wavy((from, height), (end, height)))) {} }
            }
        }
    }

    fn dimensions(&self) -> Markup {
        let setup = self.stage.setup;
        let Along { chuck, seat, front, end, .. } = self.along;
        let length = |entry: &str, name: &str, sign: &str, si: f64| Callout::length(self.stage, entry, name, sign, si);
        let bore = length("part.bore_diameter", "Bore diameter", "Ø", setup.part.bore_diameter.value);
        let under = self.outside + CLEAR;
        let beside = end + CLEAR;
        html! {
            (Dimension { from: chuck, to: front, edge: -(self.jaw.outer.min(CLIP) + CLEAR), at: JAW_LINE }
                .horizontal(&length("jaws.height", "Jaw height", "", setup.jaws.height.value)))
            (Dimension { from: seat, to: end, edge: under, at: LENGTH_LINE }
                .horizontal(&length("part.length", "Length", "", setup.part.length.value)))
            (Dimension { from: seat, to: front, edge: under, at: GRIP_LINE }
                .horizontal(&length("grip.length", "Grip length", "", setup.grip.length.value)))
            (Dimension { from: -self.outside, to: self.outside, edge: beside, at: OUTSIDE_LINE }
                .vertical(&length("part.outside_diameter", "Outside diameter", "Ø", setup.part.outside_diameter.value)))
            @if self.bore > 0.0 {
                (Dimension { from: -self.bore, to: self.bore, edge: beside, at: BORE_LINE }.vertical(&bore))
            } @else {
                (bore.reading("solid").standing(BORE_LINE))
            }
        }
    }

    fn unit_words(&self) -> &'static str {
        match self.stage.units.system {
            UnitSystem::Metric => "millimetres",
            UnitSystem::Inch => "inches",
        }
    }

    fn description(&self) -> String {
        let setup = self.stage.setup;
        let show = |si: f64| self.stage.units.show(Kind::Length, si);
        let part = if self.bore > 0.0 {
            format!(
                "A ring, outside {}, bore {}, length {}",
                show(setup.part.outside_diameter.value),
                show(setup.part.bore_diameter.value),
                show(setup.part.length.value)
            )
        } else {
            format!(
                "A solid part, outside {}, length {}",
                show(setup.part.outside_diameter.value),
                show(setup.part.length.value)
            )
        };
        let way = match setup.grip.side {
            Side::Outside => "gripped on its outside",
            Side::Inside => "gripped in its bore",
        };
        let seat =
            if setup.grip.seated { "resting on the jaw step" } else { "held by friction alone, off the jaw step" };
        let tools: Vec<String> = setup
            .cuts
            .iter()
            .enumerate()
            .map(|(at, cut)| format!("tool {} {} in front of the jaws", at + 1, show(cut.distance.value)))
            .collect();
        format!(
            "{part}, {way} over {} by jaws {} high with a step of {}, {seat}; {}.",
            show(setup.grip.length.value),
            show(setup.jaws.height.value),
            show(setup.jaws.step.value),
            tools.join(", ")
        )
    }
}
