//! Sketches for the printed sheet: the jaw on its serrations and the ring it is bored on, with their dimensions.

use holdround_core::findings::{Placing, RingSection};
use holdround_core::setup::Setup;
use maud::{Markup, html};

use super::frame::WIDTH;
use super::seat;
use super::stroke::Jaw;
use crate::language::say;
use crate::units::Units;
use crate::view::drawing::{Anchor, LETTER_HEIGHT, Point, figures_width, letters, line_arrow, open};

/// Size of the letters, view units: a sketch is printed half as wide as a view is drawn. The style sheet repeats it.
const LETTER: f64 = 26.0;
/// Room over the jaw for two rows of dimensions, and below it for the tooth.
const ABOVE: f64 = 72.0;
const BELOW: f64 = 38.0;
/// Room beside the jaw for its heights, as a share of its length.
const BESIDE: f64 = 0.38;
/// Head of a dimension's arrow.
const HEAD: f64 = 12.0;

/// Tooth and ring; nothing while they are not planned.
pub(crate) fn show(setup: &Setup, placing: &Placing, units: Units) -> Markup {
    let sketch = Sketch { jaw: Jaw::of(setup, placing, units, ABOVE, BESIDE), setup, placing };
    let box_of = sketch.jaw.frame.view_box(BELOW);
    let rings = [("Boring ring or plug", &placing.ring), ("Groove for the ring", &placing.groove)];
    html! {
        figure {
            svg class="view sketch" viewBox=(box_of) aria-hidden="true" xmlns="http://www.w3.org/2000/svg" {
                (sketch.jaw.master()) (sketch.jaw.section()) (sketch.jaw.tooth(LETTER)) (sketch.tooth())
            }
            figcaption { (say("Jaw on its tooth, bored")) }
        }
        @for (title, ring) in rings.into_iter().filter_map(|(title, ring)| Some((title, ring.as_ref()?))) {
            figure {
                svg class="view sketch" viewBox=(box_of) aria-hidden="true" xmlns="http://www.w3.org/2000/svg" {
                    (sketch.jaw.section()) (sketch.jaw.ring(ring, "ring")) (sketch.ring(ring))
                }
                figcaption { (say(title)) }
            }
        }
    }
}

/// Room that a figure takes, view units.
fn room(figure: &str) -> f64 {
    figures_width(figure) * LETTER / LETTER_HEIGHT
}

struct Sketch<'a> {
    jaw: Jaw<'a>,
    setup: &'a Setup,
    placing: &'a Placing,
}

impl Sketch<'_> {
    /// The bored diameter, the metal left, how deep it is bored and how tall the jaw is.
    fn tooth(&self) -> Markup {
        let front = self.setup.jaws.height.value;
        let face = self.placing.bored_radius;
        let (edge, metal) = self.jaw.to_counterbore();
        let said = self.jaw.length(metal);
        let wide = room(&said);
        let at = |x: f64, y: f64| self.jaw.frame.at(x, y);
        let row = ABOVE - 10.0;
        let [from, to] = [face.min(edge), face.max(edge)].map(|x| at(x, 0.0).0);
        html! {
            (self.diameter(face, front))
            (self.between((from, row), (to, row)))
            // Beside the leader of the diameter, which comes down at the face.
            @if edge < face { (letters(((from - 8.0).max(wide), row + 6.0), Anchor::End, "value", &said)) }
            @else { (letters(((to + 8.0).min(WIDTH - wide), row + 6.0), Anchor::Start, "value", &said)) }
            (self.heights([[0.0, front], [seat(self.setup), front]]))
        }
    }

    /// Outside and inside of the ring, and between what heights above the serrations it lies.
    fn ring(&self, ring: &RingSection) -> Markup {
        let [low, high] = ring.heights;
        html! {
            (self.diameter(ring.radii[1], high))
            @if ring.radii[0] > 0.0 { (self.inner_diameter(ring.radii[0], high)) }
            (self.heights([[0.0, low], [low, high]]))
        }
    }

    /// A diameter in the upper row, its leader down to where it is measured.
    fn diameter(&self, radius: f64, height: f64) -> Markup {
        self.leader(radius, height, LETTER, Anchor::Middle)
    }

    /// A smaller one below it.
    fn inner_diameter(&self, radius: f64, height: f64) -> Markup {
        self.leader(radius, height, 2.0 * LETTER + 8.0, Anchor::End)
    }

    fn leader(&self, radius: f64, height: f64, base: f64, anchor: Anchor) -> Markup {
        let tip = self.jaw.frame.at(radius, height);
        let said = format!("Ø{}", self.jaw.length(2.0 * radius));
        let wide = room(&said);
        let (left, right, beside) =
            if anchor == Anchor::End { (wide, 0.0, 6.0) } else { (wide / 2.0, wide / 2.0, 0.0) };
        html! {
            (line_arrow((tip.0, base + 4.0), tip, HEAD, "ink"))
            (letters(((tip.0 - beside).max(left).min(WIDTH - right), base), anchor, "value", &said))
        }
    }

    /// Two heights beside the jaw, the second farther out.
    fn heights(&self, spans: [[f64; 2]; 2]) -> Markup {
        let [_, far] = self.placing.jaw.map(|end| self.jaw.frame.at(end, 0.0).0);
        let right = far
            .max(self.jaw.frame.at(self.placing.jaw[0], 0.0).0)
            .max(self.jaw.frame.at(self.placing.master[1], 0.0).0);
        let [whole, part] = spans;
        // The figure of the first stands beside what the second leaves free of it, the second's at the edge.
        let clear = if part[0] > whole[0] { [whole[0], part[0]] } else { whole };
        let figures = spans.map(|[low, high]| self.jaw.bare_length(high - low));
        let outer = WIDTH - room(&figures[1]) - 4.0;
        let places = [right + 14.0, outer.max(right + 28.0)];
        html! {
            @for (((x, [low, high]), said), beside) in places.into_iter().zip(spans).zip(&figures).zip([clear, part]) {
                @let [bottom, top] = [low, high].map(|height| self.jaw.frame.at(0.0, height).1);
                @let middle = self.jaw.frame.at(0.0, f64::midpoint(beside[0], beside[1])).1;
                (self.between((x, bottom), (x, top)))
                (letters((x + 4.0, middle + 14.0), Anchor::Start, "value", said))
            }
        }
    }

    /// A line between two places with an arrow at either end.
    fn between(&self, from: Point, to: Point) -> Markup {
        let middle = (f64::midpoint(from.0, to.0), f64::midpoint(from.1, to.1));
        html! {
            (line_arrow(middle, from, HEAD, "ink"))
            (line_arrow(middle, to, HEAD, "ink"))
            path class="thin" d=(open(&[from, to])) {}
        }
    }
}

#[cfg(test)]
mod tests {
    use holdround_core::examples::EXAMPLES;
    use holdround_core::quantity::UnitSystem;
    use roxmltree::Document;

    use super::*;
    use crate::page::desk::Desk;

    #[test]
    fn no_figure_runs_over_the_edge_of_its_sketch_in_either_unit() {
        let mut seen = 0;
        for system in [UnitSystem::Metric, UnitSystem::Inch] {
            for example in EXAMPLES {
                let mut entries = crate::document::entries(example.json).unwrap();
                assert!(entries.set("stroke.plan", "yes"), "declared");
                let mut desk = Desk::worked_out(entries);
                desk.units = Units::of(system);
                let Some((setup, findings)) = &desk.good else { continue };
                let Some(placing) = &findings.scene.placing else { continue };
                let markup = html! { div { (show(setup, placing, desk.units)) } }.into_string();
                let document = Document::parse(&markup).unwrap();
                for text in
                    document.descendants().filter(|node| node.has_tag_name(("http://www.w3.org/2000/svg", "text")))
                {
                    let words = text.text().unwrap_or_default();
                    let x: f64 = text.attribute("x").unwrap().parse().unwrap();
                    let wide = room(words);
                    let (left, right) = match text.attribute("text-anchor") {
                        Some("end") => (x - wide, x),
                        Some("middle") => (x - wide / 2.0, x + wide / 2.0),
                        _ => (x, x + wide),
                    };
                    assert!(
                        left >= -0.01 && right <= WIDTH + 0.01,
                        "{}, {system:?}: {words} from {left} to {right}",
                        example.id
                    );
                    seen += 1;
                }
            }
        }
        assert!(seen > 50, "only {seen} figures");
    }
}
