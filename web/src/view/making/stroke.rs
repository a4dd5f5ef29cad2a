//! One jaw on its master jaw: teeth, screws and nut, where it is bored and where the ring bears; below, the stroke.

use holdround_core::findings::{Findings, Placing, RingSection};
use holdround_core::quantity::Kind;
use holdround_core::setup::{Setup, Side};
use maud::{Markup, html};

use super::frame::{Frame, WIDTH};
use super::{against_tooth, lines, metal, seat};
use crate::language::{fill_plain, say};
use crate::page::desk::Desk;
use crate::units::Units;
use crate::view::drawing::{Anchor, LETTER_HEIGHT, Point, closed, coordinate, letters, line_arrow, open};

/// Most teeth drawn: no master jaw has as many.
const MOST_TEETH: f64 = 400.0;
/// Room over the jaw for the metal left, and below it for the tooth and the stroke, view units.
const ABOVE: f64 = 44.0;
const BELOW: f64 = 150.0;
/// Ends of the stroke's line.
const STROKE: [f64; 2] = [30.0, WIDTH - 30.0];

/// The drawing, and the lines that it rests on.
pub(super) fn show(desk: &Desk, setup: &Setup, placing: &Placing, found: &Findings) -> Markup {
    let units = desk.units;
    let jaw = Jaw::of(setup, placing, units, ABOVE, 0.0);
    let against = against_tooth(found);
    html! {
        svg class="view making" viewBox=(jaw.frame.view_box(BELOW)) role="img" aria-labelledby="stroke-title stroke-desc"
            font-size="22" xmlns="http://www.w3.org/2000/svg" {
            title id="stroke-title" { (say("One jaw on its master jaw, while bored")) }
            desc id="stroke-desc" { (jaw.described()) }
            (jaw.master())
            (jaw.section())
            @if let Some(ring) = &placing.ring { (jaw.ring(ring, "ring")) }
            @if let Some(groove) = &placing.groove { (jaw.ring(groove, "groove")) }
            (jaw.metal_left())
            (jaw.tooth(LETTER_HEIGHT))
            (jaw.stroke())
        }
        p.tooth-told.stop[against.is_some()] { (against.as_deref().unwrap_or(say("This tooth serves."))) }
        (lines(found, &["stroke.tooth", "stroke.wall", "stroke.clearance"], desk))
    }
}

/// One jaw and where it stands.
pub(super) struct Jaw<'a> {
    setup: &'a Setup,
    placing: &'a Placing,
    units: Units,
    pub(super) frame: Frame,
    /// Inner and outer end of what is drawn, m.
    ends: [f64; 2],
    /// How deep the master jaw is drawn, m.
    depth: f64,
    outside: bool,
}

impl<'a> Jaw<'a> {
    /// With `above` view units left free over it, and `beside` to its right as a share of its length.
    pub(super) fn of(setup: &'a Setup, placing: &'a Placing, units: Units, above: f64, beside: f64) -> Self {
        let all = [placing.master, placing.jaw, placing.nut];
        let least = all.iter().flatten().copied().fold(f64::INFINITY, f64::min);
        let most = all.iter().flatten().copied().fold(f64::NEG_INFINITY, f64::max);
        let ring = placing.ring.unwrap_or_default().radii;
        let ends = [if ring[0] > 0.0 { least.min(ring[0]) } else { least - 0.1 * (most - least) }, most.max(ring[1])];
        let height = setup.jaws.height.value;
        let depth = 0.4 * height;
        let frame = Frame::of([ends[0], ends[1] + beside * (ends[1] - ends[0])], [-depth, height], above);
        Self { setup, placing, units, frame, ends, depth, outside: setup.grip.side == Side::Outside }
    }

    pub(super) fn length(&self, si: f64) -> String {
        self.units.show(Kind::Length, si)
    }

    /// Without its unit, which stands on the other dimensions.
    pub(super) fn bare_length(&self, si: f64) -> String {
        let said = self.length(si);
        said.split(' ').next().unwrap_or_default().to_owned()
    }

    /// Inner and outer end of the jaw.
    fn jaw(&self) -> [f64; 2] {
        let [end, far] = self.placing.jaw;
        [end.min(far), end.max(far)]
    }

    pub(super) fn master(&self) -> Markup {
        let Placing { master, pitch, tooth_height, nut, .. } = *self.placing;
        let teeth = ((master[1] - master[0]) / pitch).floor().clamp(0.0, MOST_TEETH);
        let mut top: Vec<Point> = (0..=(2.0 * teeth) as usize)
            .map(|at| self.frame.at(master[0] + 0.5 * at as f64 * pitch, if at % 2 == 0 { -tooth_height } else { 0.0 }))
            .collect();
        let foot = -self.depth;
        top.extend([
            self.frame.at(master[1], -tooth_height),
            self.frame.at(master[1], foot),
            self.frame.at(master[0], foot),
        ]);
        html! {
            path class="outline" d=(closed(&top)) {}
            path class="nut" d=(closed(&self.frame.rectangle(nut, [0.3 * foot, 0.8 * foot]))) {}
        }
    }

    /// The top jaw in section, with its counterbores.
    pub(super) fn section(&self) -> Markup {
        let [low, high] = self.jaw();
        let (face, seat, front) =
            (self.placing.bored_radius.max(low).min(high), seat(self.setup), self.setup.jaws.height.value);
        let steps = if self.outside {
            [(low, seat), (face, seat), (face, front), (high, front)]
        } else {
            [(low, front), (face, front), (face, seat), (high, seat)]
        };
        let mut outline = vec![self.frame.at(low, 0.0)];
        outline.extend(steps.map(|(x, y)| self.frame.at(x, y)));
        outline.push(self.frame.at(high, 0.0));
        let [wide, deep] = self.placing.counterbore;
        html! {
            path class="blank" d=(closed(&outline)) {}
            path class="cut" d=(closed(&outline)) fill="url(#hatch-jaw)" {}
            @for screw in self.placing.screws {
                @let top = if (screw > face) == self.outside { front } else { seat };
                path class="hole" d=(closed(&self.frame.rectangle([screw - wide / 2.0, screw + wide / 2.0], [top, (front - deep).min(top)]))) {}
                path class="chain" d=(open(&[self.frame.at(screw, -self.depth), self.frame.at(screw, front)])) {}
            }
            path class="contact" d=(open(&[self.frame.at(face, seat), self.frame.at(face, front)])) {}
        }
    }

    pub(super) fn ring(&self, section: &RingSection, class: &str) -> Markup {
        let [inner, outer] = section.radii.map(|radius| radius.max(self.ends[0]));
        html! { path class=(class) d=(closed(&self.frame.rectangle([inner, outer], section.heights))) {} }
    }

    /// Where the nearest counterbore begins, and the metal from the bored face to it, m.
    pub(super) fn to_counterbore(&self) -> (f64, f64) {
        let face = self.placing.bored_radius;
        let [near, far] = self.placing.screws.map(|screw| {
            let half = self.placing.counterbore[0] / 2.0;
            if screw > face { screw - half } else { screw + half }
        });
        let edge = if (near - face).abs() < (far - face).abs() { near } else { far };
        // Below 0 where the face runs into the counterbore.
        let told = self.placing.teeth.iter().find(|tooth| tooth.tooth == self.placing.tooth);
        (edge, told.map_or((edge - face).abs(), |tooth| tooth.wall))
    }

    /// From the bored face to the nearest counterbore.
    fn metal_left(&self) -> Markup {
        let face = self.placing.bored_radius;
        let (edge, left) = self.to_counterbore();
        let at = ABOVE - 8.0;
        let [from, to] = [face.min(edge), face.max(edge)].map(|x| self.frame.at(x, 0.0).0);
        let middle = (0.5 * (from + to)).clamp(110.0, WIDTH - 110.0);
        html! {
            (line_arrow((to + 18.0, at), (to, at), 8.0, "ink"))
            (line_arrow((from - 18.0, at), (from, at), 8.0, "ink"))
            path class="thin" d=(open(&[(from, at), (to, at)])) {}
            (letters((middle, at - 8.0), Anchor::Middle, "value", &fill_plain("metal {}", &[&metal(left, self.units)])))
        }
    }

    /// The tooth that the first groove of the blank sits on.
    pub(super) fn tooth(&self, letter: f64) -> Markup {
        let Placing { master, pitch, tooth_height, tooth, .. } = *self.placing;
        let right = master[0] + f64::from(tooth) * pitch;
        let corners = [(right - pitch, -tooth_height), (right - 0.5 * pitch, 0.0), (right, -tooth_height)]
            .map(|(x, y)| self.frame.at(x, y));
        let tip = (corners[1].0, corners[0].1 + 3.0);
        let foot = self.frame.height + 8.0;
        html! {
            path class="filled" d=(closed(&corners)) {}
            (line_arrow((tip.0, foot - 6.0), tip, 9.0, "ink"))
            (letters((tip.0.max(2.8 * letter).min(WIDTH - 2.8 * letter), foot + letter - 8.0), Anchor::Middle, "value", &fill_plain("tooth {}", &[&tooth])))
        }
    }

    /// The stroke as a line, its middle third, and where the jaw stands in it.
    fn stroke(&self) -> Markup {
        let Placing { stroke, bored_at, gripping_at, .. } = *self.placing;
        let line = self.frame.height + 88.0;
        let at = |position: f64| STROKE[0] + (STROKE[1] - STROKE[0]) * (position / stroke.max(1e-9)).clamp(-0.05, 1.05);
        let [least, nominal, most] = gripping_at.map(at);
        let bored = at(bored_at);
        let third = [at(stroke / 3.0), at(2.0 * stroke / 3.0)];
        let held = |x: f64| x.clamp(100.0, WIDTH - 100.0);
        html! {
            rect class="third" x=(coordinate(third[0])) y=(coordinate(line - 8.0)) width=(coordinate(third[1] - third[0])) height="16" {}
            path class="outline" d=(open(&[(STROKE[0], line - 12.0), (STROKE[0], line + 12.0), (STROKE[0], line), (STROKE[1], line), (STROKE[1], line - 12.0), (STROKE[1], line + 12.0)])) {}
            path class="filled" d=(closed(&[(bored, line), (bored - 8.0, line - 16.0), (bored + 8.0, line - 16.0)])) {}
            path class="filled" d=(closed(&[(nominal, line), (nominal - 8.0, line + 16.0), (nominal + 8.0, line + 16.0)])) {}
            path class="contact" d=(open(&[(least, line + 3.0), (most, line + 3.0)])) {}
            (letters((held(bored), line - 22.0), Anchor::Middle, "value", &fill_plain("bored at {}", &[&self.length(bored_at)])))
            (letters((held(nominal), line + 38.0), Anchor::Middle, "value", &fill_plain("grips at {}", &[&self.length(gripping_at[1])])))
            (letters((4.0, line + 38.0), Anchor::Start, "note", say("shut")))
            (letters((WIDTH - 4.0, line + 38.0), Anchor::End, "note", say("open")))
        }
    }

    fn described(&self) -> String {
        let placing = self.placing;
        let length = |si: f64| self.length(si);
        let thirds = |at: f64| {
            let off = (at - placing.stroke / 2.0).abs();
            say(if off <= placing.stroke / 6.0 + 1e-9 { "in the middle third" } else { "outside the middle third" })
        };
        let ring = placing.ring.map_or_else(String::new, |ring| {
            let [inner, outer] = ring.radii.map(|radius| length(2.0 * radius));
            let [low, high] = ring.heights.map(length);
            " ".to_owned()
                + &fill_plain(
                    "The ring it is bored on, {} inside and {} outside, lies {} to {} above the serrations.",
                    &[&inner, &outer, &low, &high],
                )
        });
        let jaw = fill_plain(
            "Seen along the chuck's face, the axis to the left. The first groove of the blank sits on tooth {}. Screws at {} and {} from the axis. The face is bored to radius {}. In a stroke of {} the jaw is bored at {}, {}, and grips between {} and {}, {}.",
            &[
                &placing.tooth,
                &length(placing.screws[0]),
                &length(placing.screws[1]),
                &length(placing.bored_radius),
                &length(placing.stroke),
                &length(placing.bored_at),
                &thirds(placing.bored_at),
                &length(placing.gripping_at[0]),
                &length(placing.gripping_at[2]),
                &thirds(placing.gripping_at[1]),
            ],
        );
        jaw + &ring
    }
}
