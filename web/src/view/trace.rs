//! The roundness trace: the released profile on a polar sheet, magnified, with its four reference circles.

use core::f64::consts::{PI, TAU};

use holdround_core::findings::{Findings, Trace, TraceCircle};
use holdround_core::quantity::{Kind, decimal};
use maud::{Markup, html};

use super::Stage;
use super::drawing::{Anchor, Point, at_least, closed, coordinate, letters, polar};
use crate::language::{fill, fill_plain, number, said, say};

/// Radius at which the surface's own circle is drawn, in view units.
const SURFACE: f64 = 140.0;
/// Farthest the profile is drawn from it.
const ROOM: f64 = 70.0;
/// Where the directions of the jaws are marked.
const RIM: f64 = 222.0;
/// Points around the profile.
const STATIONS: usize = 360;
/// Least number of rings between the surface's circle and the profile's farthest point.
const RINGS: f64 = 2.5;

/// How one of the four circles is told from the others without colour: its key and where its letter stands, as a
/// share of the pitch from jaw to jaw.
struct Style {
    key: &'static str,
    letter: &'static str,
    share: f64,
}

/// Least squares, minimum zone, minimum circumscribed, maximum inscribed.
const STYLES: [Style; 4] = [
    Style { key: "least-squares", letter: "A", share: 0.5 },
    Style { key: "zone", letter: "B", share: 0.25 },
    Style { key: "circumscribed", letter: "C", share: 0.36 },
    Style { key: "inscribed", letter: "D", share: 0.64 },
];

/// The trace with its legend, or why there is none.
pub(crate) fn show(stage: &Stage<'_>) -> Markup {
    match &stage.findings.scene.trace {
        Some(trace) => Sheet::of(stage, trace).draw(),
        None => html! { p { (fill("No trace. {}", &[&refused(stage.findings)])) } },
    }
}

fn refused(findings: &Findings) -> String {
    let why = findings.get("shape.roundness").and_then(|finding| finding.value.as_ref().err());
    why.map_or_else(|| say("There is no released shape.").to_owned(), said)
}

struct Sheet<'a> {
    stage: &'a Stage<'a>,
    trace: &'a Trace,
    /// View units per metre of departure.
    scale: f64,
    /// Over the scale at which the surface's own circle is drawn.
    magnification: f64,
    /// From ring to ring, m.
    division: f64,
}

impl<'a> Sheet<'a> {
    fn of(stage: &'a Stage<'a>, trace: &'a Trace) -> Self {
        let farthest = trace.circles.iter().map(farthest).fold(0.0, f64::max);
        let surface = SURFACE / trace.radius;
        // The greatest round magnification that leaves the profile on the sheet; 1 for a surface that stays round.
        let fits = ROOM / farthest / surface;
        let magnification = at_least(1.0 / fits).map_or(1.0, |divisor| 1.0 / divisor);
        let unit = stage.units.unit(Kind::Departure);
        let division = at_least(unit.from_si(farthest) / RINGS).map_or(0.0, |step| unit.to_si(step));
        Self { stage, trace, scale: magnification * surface, magnification, division }
    }

    fn draw(&self) -> Markup {
        html! {
            svg class="view polar" viewBox="-250 -250 500 500" role="img" aria-labelledby="trace-title trace-desc"
                font-size="16" xmlns="http://www.w3.org/2000/svg" {
                title id="trace-title" { (fill("Roundness trace of the {}, released", &[&self.surface()])) }
                desc id="trace-desc" { (self.described()) }
                (self.rings())
                (self.jaws())
                @for (circle, style) in self.trace.circles.iter().zip(&STYLES) { (self.circle(circle, style)) }
                path class="profile" d=(closed(&self.profile())) {}
                @for (circle, style) in self.trace.circles.iter().zip(&STYLES) { (self.letter(circle, style)) }
            }
            div.legend {
                @let released = html! { strong { (fill("Released {}", &[&self.surface()])) } };
                p { (fill("{}, departures × {}.", &[&released, &number(decimal(self.magnification, 0))])) }
                p {
                    @if self.division > 0.0 { (fill("Circles {} apart.", &[&self.shown(self.division)])) " " }
                    (say("Peak to valley RONt by:"))
                }
                ul {
                    @for (circle, style) in self.trace.circles.iter().zip(&STYLES) {
                        li {
                            (sample(style))
                            span.name { (style.letter) ": " (say(circle.name)) }
                            " "
                            span.value { (self.shown(circle.roundness)) }
                        }
                    }
                }
            }
        }
    }

    fn surface(&self) -> String {
        said(&self.trace.surface)
    }

    fn shown(&self, departure: f64) -> String {
        self.stage.units.show(Kind::Departure, departure)
    }

    fn described(&self) -> String {
        let circles: Vec<String> = self
            .trace
            .circles
            .iter()
            .map(|circle| format!("{} {}", say(circle.name), self.shown(circle.roundness)))
            .collect();
        fill_plain(
            "Departures are magnified {} times. Jaw 1 is at the top, of {}. Roundness by its reference circles: {}.",
            &[&number(decimal(self.magnification, 0)), &self.jaw_count(), &circles.join("; ")],
        )
    }

    fn jaw_count(&self) -> u32 {
        self.stage.setup.chuck.jaws
    }

    /// The polar grid: rings a round departure apart, counted from the mean of the profile. There the circle of least
    /// squares lies, and a ring would fill the gaps of its line.
    fn rings(&self) -> Markup {
        let step = self.division * self.scale;
        let count = if step > 1.0 { (ROOM / step) as i32 } else { 0 };
        html! {
            @for ring in (-count..=count).filter(|ring| *ring != 0) {
                circle class="ring" r=(coordinate(SURFACE + f64::from(ring) * step)) {}
            }
            path class="ring" d={ "M" (coordinate(-RIM)) " 0H" (coordinate(RIM)) "M0 " (coordinate(-RIM)) "V" (coordinate(RIM)) } {}
        }
    }

    /// The direction of each jaw, marked from outside.
    fn jaws(&self) -> Markup {
        let pitch = TAU / f64::from(self.jaw_count().max(1));
        html! {
            @for at in 0..self.jaw_count() {
                @let angle = f64::from(at) * pitch;
                @let (tip, left, right) = (polar(RIM - 16.0, angle), polar(RIM + 2.0, angle - 0.02), polar(RIM + 2.0, angle + 0.02));
                path class="filled" d=(closed(&[tip, left, right])) {}
                @let (x, y) = polar(RIM + 15.0, angle);
                (letters((x, y + 5.0), Anchor::Middle, "", &(at + 1).to_string()))
            }
        }
    }

    fn profile(&self) -> Vec<Point> {
        // The lobes repeat from jaw to jaw and mirror about each.
        let half = (STATIONS / 2).div_ceil(self.jaw_count().max(1) as usize);
        let pitch = TAU / f64::from(self.jaw_count().max(1));
        let departures: Vec<f64> =
            (0..=half).map(|at| self.trace.released.at(pitch / 2.0 * at as f64 / half as f64)).collect();
        let around = 2 * half * self.jaw_count().max(1) as usize;
        (0..around)
            .map(|at| {
                let within = at % (2 * half);
                let departure = departures.get(within.min(2 * half - within)).copied().unwrap_or(0.0);
                polar(self.radius(departure), TAU * at as f64 / around as f64)
            })
            .collect()
    }

    fn radius(&self, departure: f64) -> f64 {
        (SURFACE + departure * self.scale).clamp(0.0, RIM)
    }

    /// Where a circle's centre is drawn.
    fn centre(&self, circle: &TraceCircle) -> Point {
        (circle.y * self.scale, -circle.x * self.scale)
    }

    fn circle(&self, circle: &TraceCircle, style: &Style) -> Markup {
        let (x, y) = self.centre(circle);
        let one = |class: &str, departure: f64| {
            html! { circle class=(class) cx=(coordinate(x)) cy=(coordinate(y)) r=(coordinate(self.radius(departure))) {} }
        };
        html! {
            @if style.key == "zone" {
                @let half = circle.roundness / 2.0;
                (one(style.key, circle.radius + half))
                (one(style.key, circle.radius - half))
            } @else {
                (one(style.key, circle.radius))
            }
        }
    }

    /// The circle's letter, beside its line: outside the outer ones, inside the inner one.
    fn letter(&self, circle: &TraceCircle, style: &Style) -> Markup {
        let aside = match style.key {
            "zone" => circle.roundness / 2.0 * self.scale + 12.0,
            "circumscribed" => 12.0,
            "inscribed" => -12.0,
            _ => 0.0,
        };
        let angle = TAU / f64::from(self.jaw_count().max(1)) * style.share;
        let (x, y) = polar(self.radius(circle.radius) + aside, angle.min(PI));
        let (dx, dy) = self.centre(circle);
        letters((x + dx, y + dy + 5.0), Anchor::Middle, "heading", style.letter)
    }
}

/// How far the profile leaves the surface's circle, as its reference circles show.
fn farthest(circle: &TraceCircle) -> f64 {
    circle.radius.abs() + libm::hypot(circle.x, circle.y)
}

/// A piece of a circle's line, for the legend.
fn sample(style: &Style) -> Markup {
    html! {
        svg class="view polar sample" viewBox="0 0 44 16" aria-hidden="true" {
            @if style.key == "zone" {
                path class=(style.key) d="M1 4H43M1 12H43" {}
            } @else {
                path class=(style.key) d="M2 8H43" {}
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use holdround_core::evaluate;
    use holdround_core::findings::Wave;
    use holdround_core::quantity::UnitSystem;
    use holdround_core::setup::{Entries, Setup};

    use super::*;
    use crate::units::Units;

    fn stage<'a>(setup: &'a Setup, findings: &'a Findings) -> Stage<'a> {
        Stage::of(setup, findings, Units::of(UnitSystem::Metric))
    }

    fn drawn(setup: &Setup, findings: &Findings) -> String {
        format!("<div>{}</div>", show(&stage(setup, findings)).into_string())
    }

    fn job(jaws: &str) -> (Setup, Findings) {
        let mut entries = Entries::default();
        entries.set("chuck.jaws", jaws);
        let setup = Setup::read(&entries).unwrap();
        let findings = evaluate(&setup);
        (setup, findings)
    }

    /// Radii of the points of the profile.
    fn radii(markup: &str) -> Vec<f64> {
        let document = roxmltree::Document::parse(markup).unwrap();
        let profile = document.descendants().find(|node| node.attribute("class") == Some("profile")).unwrap();
        let points = profile.attribute("d").unwrap().trim_end_matches('Z').split(['M', 'L']).skip(1);
        points
            .map(|point| {
                let (x, y) = point.split_once(' ').unwrap();
                libm::hypot(x.parse().unwrap(), y.parse().unwrap())
            })
            .collect()
    }

    #[test]
    fn the_profile_lies_between_the_circles_and_touches_both() {
        for jaws in ["2", "3", "5"] {
            let (setup, findings) = job(jaws);
            let trace = findings.scene.trace.as_ref().unwrap();
            let markup = drawn(&setup, &findings);
            let stage = stage(&setup, &findings);
            let sheet = Sheet::of(&stage, trace);
            let [_, _, outer, inner] = trace.circles.map(|circle| sheet.radius(circle.radius));
            let radii = radii(&markup);
            assert_eq!(radii.len(), STATIONS, "{jaws} jaws: a point for every station");
            let (low, high) = radii.iter().fold((f64::MAX, f64::MIN), |(low, high), r| (low.min(*r), high.max(*r)));
            // Coordinates are written to two decimals.
            assert!((high - outer).abs() < 0.02 && (low - inner).abs() < 0.02, "{jaws} jaws: {low} to {high}");
            assert!(high - SURFACE <= ROOM + 0.02 && SURFACE - low <= ROOM + 0.02, "{jaws} jaws: on the sheet");
        }
    }

    #[test]
    fn each_circle_is_named_with_its_roundness_and_its_own_kind_of_line() {
        let (setup, findings) = job("3");
        let markup = drawn(&setup, &findings);
        for (circle, style) in findings.scene.trace.as_ref().unwrap().circles.iter().zip(&STYLES) {
            let told = Units::of(UnitSystem::Metric).show(Kind::Departure, circle.roundness);
            assert!(markup.contains(&format!("{}: {}", style.letter, circle.name)), "{} is named", circle.name);
            assert!(markup.contains(&told), "{} is told: {told}", circle.name);
            assert!(markup.matches(style.key).count() >= 2, "{} is drawn, and shown in the legend", circle.name);
        }
        assert!(markup.contains("departures × "), "the magnification is stated");
    }

    #[test]
    fn no_shape_is_said_and_a_broken_one_breaks_nothing() {
        let (setup, mut findings) = job("3");
        let whole = findings.scene.trace.take().unwrap();
        assert!(drawn(&setup, &findings).contains("No trace. "), "nothing is drawn");
        for value in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e300, 1e-300] {
            let mut broken = whole.clone();
            broken.released = Wave { mean: value, harmonics: vec![(3, value)] };
            broken.radius = value;
            broken.circles = whole.circles.map(|circle| TraceCircle { radius: value, roundness: value, ..circle });
            findings.scene.trace = Some(broken);
            let markup = drawn(&setup, &findings);
            assert!(!markup.contains("NaN") && !markup.contains("inf\""), "{value} must not reach the drawing");
            assert!(roxmltree::Document::parse(&markup).is_ok(), "{value} leaves the markup whole");
        }
    }
}
