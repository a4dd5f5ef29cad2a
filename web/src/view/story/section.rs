//! The section of the film: jaws on their serrations, ring, boring path, part, tools.

use core::f64::consts::{PI, TAU};

use holdround_core::findings::JawPath;
use holdround_core::setup::{CutKind, FeedWay, Side};
use maud::{Markup, html};

use super::film::{Change, Shown, TOOL};
use crate::language::{fill_plain, say};
use crate::view::Stage;
use crate::view::drawing::{
    Along, Anchor, Both, Callout, Dimension, Half, LEFT, Outline, Point, RIGHT, THINNEST_HATCHED, TOP, closed,
    coordinate, corners, direction, hatchings, heights, letters, off_axis, open, stand_back,
};
use crate::view::making::on_views::{shanks, spot, translated};
use crate::view::making::path::pairs;
use crate::view::section::{CLEAR, CLIP, JAW_LINE, LINE_UNDER, Section};

/// How far in front of its place a jaw, a ring and the part are drawn before they go in.
const OFF_TEETH: f64 = 40.0;
const RING_AWAY: f64 = 150.0;
const PART_AWAY: f64 = 150.0;
/// How far from the metal a tool begins.
const TOOL_AWAY: f64 = 16.0;

/// A half of the part's section: its corners, and how far lobes of outside and bore move each.
#[derive(Clone, Debug)]
struct Wall {
    at: Vec<Point>,
    moved: [Vec<f64>; 2],
}

/// What moves on the section, worked out once.
#[derive(Clone, Debug)]
pub(super) struct Moving {
    back: f64,
    /// How many of the jaws are cut: jaw 1, and one opposite.
    cut_jaws: usize,
    /// How much of its travel each jaw behind the section shows.
    behind: Vec<f64>,
    walls: [Wall; 2],
    inside: bool,
    /// Along the face: place, radius, shift, length of the pressure's arrow.
    pressure: Vec<[f64; 4]>,
    /// Where each cut's tool begins and ends, and which way it points.
    tools: Vec<[Point; 3]>,
}

impl Moving {
    pub(super) fn of(stage: &Stage<'_>, both: &Both<'_>) -> Self {
        let along = Along::of(stage, both.sheet);
        let inside = stage.setup.grip.side == Side::Inside;
        let wall = |half: Half| {
            let corners = |shares: [f64; 2]| {
                let shape = both.shape.with_shares(shares);
                Outline::of(stage, both.sheet, &along, &shape).moved_half(half)
            };
            let at = corners([0.0, 0.0]);
            let moved = [[1.0, 0.0], [0.0, 1.0]]
                .map(|shares| corners(shares).iter().zip(&at).map(|(to, from)| to.1 - from.1).collect());
            Wall { at, moved }
        };
        let whole = both.shape.with_shares([1.0, 1.0]);
        let surface = Outline::of(stage, both.sheet, &along, &whole);
        let pressure = both
            .pressure
            .along
            .iter()
            .map(|(z, length)| [along.place(*z), both.jaw.grip, surface.gripped_shift(*z, !inside), *length]);
        Self {
            back: stand_back(stage, both.sheet).1,
            cut_jaws: if stage.setup.chuck.jaws.is_multiple_of(2) { 2 } else { 1 },
            behind: behind(stage.setup.chuck.jaws).map(libm::cos).collect(),
            walls: [wall(Half::Upper), wall(Half::Lower)],
            inside,
            pressure: pressure.filter(|[x, ..]| !along.is_broken_at(*x)).collect(),
            tools: tools(stage, both, &along),
        }
    }

    pub(super) fn frame(&self, shown: &Shown<'_>) -> Vec<Change> {
        let moment = &shown.moment;
        let up = -self.back * moment.open;
        let mut changes = vec![
            Change::of("story-ring-section", "transform", translated(RING_AWAY * (1.0 - moment.ring), 0.0)),
            Change::of("story-ring-bears", "opacity", coordinate(moment.on_ring)),
            Change::of("story-part-section", "transform", translated(PART_AWAY * (1.0 - moment.part), 0.0)),
            Change::of("story-part-section", "opacity", coordinate((4.0 * moment.part).min(1.0))),
        ];
        for jaw in 0..self.cut_jaws {
            let on_teeth = OFF_TEETH * (1.0 - moment.mounted);
            changes.push(Change::of(format!("story-master-{jaw}"), "transform", translated(0.0, up)));
            changes.push(Change::of(format!("story-cut-{jaw}"), "transform", translated(on_teeth, up)));
        }
        for (at, share) in self.behind.iter().enumerate() {
            let moved = translated(OFF_TEETH * (1.0 - moment.mounted), up * share);
            changes.push(Change::of(format!("story-behind-{at}"), "transform", moved));
        }
        if moment.part > 0.0 {
            for (at, wall) in self.walls.iter().enumerate() {
                let points: Vec<Point> = (0..wall.at.len())
                    .filter_map(|k| {
                        let (x, y) = wall.at.get(k)?;
                        let [outside, bore] = [wall.moved[0].get(k)?, wall.moved[1].get(k)?];
                        Some((*x, y + outside * shown.lobes[0] + bore * shown.lobes[1]))
                    })
                    .collect();
                changes.push(Change::of(format!("story-wall-{at}"), "d", closed(&points)));
                changes.push(Change::of(format!("story-edge-{at}"), "d", off_axis(&points)));
            }
        }
        changes.extend(self.grip(shown));
        let [(swept, tool), _] = &shown.bored;
        changes.push(Change::of("story-bar-section", "transform", tool.clone()));
        for jaw in 0..self.cut_jaws {
            changes.push(Change::of(format!("story-swept-{jaw}"), "d", swept.clone()));
        }
        if let Some((share, [from, to, points])) =
            shown.cut.and_then(|(cut, share)| Some((share, self.tools.get(cut)?)))
        {
            let at = (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share);
            changes.push(Change::of("story-tool-section", "d", closed(&corners(at, *points, TOOL))));
        }
        changes
    }

    /// Where the jaws bear, and the band of pressure on them.
    fn grip(&self, shown: &Shown<'_>) -> Vec<Change> {
        let lobes = shown.lobes[usize::from(self.inside)];
        let away = if self.inside { -1.0 } else { 1.0 };
        let (mut line, mut band, mut comb) = (String::new(), String::new(), String::new());
        if shown.pressure > 0.0 {
            let ends = |[x, radius, shift, length]: &[f64; 4]| {
                let foot = radius + shift * lobes;
                [(*x, -foot), (*x, -foot - away * length * shown.pressure)]
            };
            let ends: Vec<[Point; 2]> = self.pressure.iter().map(ends).collect();
            let feet: Vec<Point> = ends.iter().map(|[foot, _]| *foot).collect();
            line = open(&feet);
            band = closed(&feet.iter().copied().chain(ends.iter().rev().map(|[_, tail]| *tail)).collect::<Vec<_>>());
            comb = ends.iter().map(|pair| open(pair)).collect();
        }
        let drawn = [("bears", line), ("press", band), ("comb", comb)];
        let each = (0..self.cut_jaws).flat_map(|jaw| {
            drawn.iter().map(move |(what, data)| Change::of(format!("story-{what}-{jaw}"), "d", data.clone()))
        });
        each.collect()
    }
}

/// Angles of the jaws behind the section.
fn behind(jaws: u32) -> impl Iterator<Item = f64> {
    (1..jaws).map(move |at| TAU * f64::from(at) / f64::from(jaws)).filter(|angle| *angle < PI - 1e-6)
}

/// The ways of the tools that cut the part, each to where its cut is judged.
fn tools(stage: &Stage<'_>, both: &Both<'_>, along: &Along) -> Vec<[Point; 3]> {
    let way = |cut: &holdround_core::setup::Cut| {
        let (diameter, points) = direction(cut, &stage.setup.part);
        let to = (along.tool(cut.distance.value), -both.sheet.radius(diameter));
        let from = match &cut.kind {
            CutKind::Turning(..) | CutKind::Boring(..) => (along.end + TOOL_AWAY, to.1),
            CutKind::Facing(_) => (to.0, -both.outside - TOOL_AWAY),
            CutKind::Drilling { .. } => (along.end + TOOL_AWAY, to.1),
            CutKind::Grooving { .. } | CutKind::Power { .. } => {
                (to.0 - points.0 * TOOL_AWAY, to.1 - points.1 * TOOL_AWAY)
            }
        };
        let back = matches!(&cut.kind, CutKind::Turning(_, FeedWay::Away) | CutKind::Boring(_, FeedWay::Away));
        if back { [to, from, points] } else { [from, to, points] }
    };
    stage.setup.cuts.iter().map(way).collect()
}

/// The section, once; what moves is put in place afterwards.
pub(super) fn draw(stage: &Stage<'_>, both: &Both<'_>) -> Markup {
    let along = Along::of(stage, both.sheet);
    let section = Section::of(stage, both, &along);
    let [master, blank, bored] =
        [section.master_jaw(), metal(&before(stage, both, &section)), metal(&section.jaw_section())];
    let holes = counterbores(stage, both, &along);
    let cut_jaw = |jaw: usize| {
        html! {
            g id={ "story-master-" (jaw) } { (master) }
            g id={ "story-cut-" (jaw) } {
                g class="of-blank" { (blank) }
                g class="of-bored" { (bored) }
                (holes)
                path id={ "story-swept-" (jaw) } class="swept of-boring" {}
                g class="of-holding" {
                    path id={ "story-press-" (jaw) } class="band" {}
                    path id={ "story-comb-" (jaw) } class="comb" {}
                    path id={ "story-bears-" (jaw) } class="contact" {}
                }
            }
        }
    };
    html! {
        svg id="story-section" class="view story" viewBox=(both.sheet.view_box()) role="group" aria-labelledby="story-section-step"
            font-size="22" xmlns="http://www.w3.org/2000/svg" {
            g role="img" aria-labelledby="story-section-step story-section-says" {
                title id="story-section-step" {}
                desc id="story-section-says" {}
                (hatchings())
                defs {
                    clipPath id="section-clip" {
                        rect x=(coordinate(LEFT)) y=(coordinate(-CLIP)) width=(coordinate(RIGHT - LEFT)) height=(coordinate(2.0 * CLIP)) {}
                    }
                }
                g clip-path="url(#section-clip)" {
                    (section.chuck())
                    @for (at, angle) in behind(stage.setup.chuck.jaws).enumerate() {
                        g id={ "story-behind-" (at) } { (jaw_behind(both, &along, &section, angle)) }
                    }
                    g id="story-part-section" class="of-holding" { (part(stage, both, &along)) }
                    (cut_jaw(0))
                    @if stage.setup.chuck.jaws.is_multiple_of(2) { g transform="scale(1 -1)" { (cut_jaw(1)) } }
                    (ring(stage, both, &along))
                    (section.breaks())
                    @if let Some(path) = &stage.findings.scene.jaw_path {
                        g class="of-boring" {
                            (way(stage, both, &along, path))
                            g id="story-bar-section" { (shanks(stage, path)[0]) }
                        }
                    }
                }
                (section.cut_off())
                path class="chain" d=(open(&[(LEFT, 0.0), (along.end + 16.0, 0.0)])) {}
                (letters((RIGHT - 6.0, TOP + 24.0), Anchor::End, "heading", "A–A"))
                text id="story-name" class="letters heading" x=(coordinate(LEFT + 6.0)) y=(coordinate(TOP + 24.0)) {}
                path id="story-tool-section" class="tool of-cutting" {}
            }
            g class="dimensions of-seated" { (section.dimensions()) }
            g class="dimensions of-making" { (sizes(stage, both, &along)) }
            g class="dimensions" {
                (letters((LEFT + 6.0, both.sheet.rows.note), Anchor::Start, "note",
                    &fill_plain("In {}.", &[&section.unit_words()])))
            }
        }
    }
}

fn metal(outline: &[Point]) -> Markup {
    let data = closed(outline);
    html! {
        path class="blank" d=(data) {}
        path class="cut" d=(data) fill="url(#hatch-jaw)" {}
    }
}

/// A jaw's section before it is cut, proud by the skim.
fn before(stage: &Stage<'_>, both: &Both<'_>, section: &Section<'_>) -> Vec<Point> {
    match &stage.findings.scene.jaw_path {
        Some(path) => section.jaw_section_at(both.sheet.radius(path.standing), path.skim * both.sheet.scale),
        None if stage.setup.grip.side == Side::Outside => section.jaw_section_at(both.jaw.inner, 0.0),
        None => section.jaw_section_at(both.jaw.outer, 0.0),
    }
}

/// Counterbores of the screws, open to the front, where the blank's sizes are known.
fn counterbores(stage: &Stage<'_>, both: &Both<'_>, along: &Along) -> Markup {
    let Some(placing) = &stage.findings.scene.placing else { return html! {} };
    let [wide, deep] = placing.counterbore;
    let left = above_teeth(stage, along, stage.setup.jaws.height.value - deep);
    let radius = |metres: f64| metres * both.sheet.scale;
    let bored = both.jaw.grip;
    let hole = |screw: f64| {
        let [low, high] = [radius(screw - wide / 2.0), radius(screw + wide / 2.0)];
        // What has been bored away has no hole in it.
        let [low, high] =
            if stage.setup.grip.side == Side::Outside { [low.max(bored), high] } else { [low, high.min(bored)] };
        (high > low).then(|| open(&[(along.front, -low), (left, -low), (left, -high), (along.front, -high)]))
    };
    let drawn: String = placing.screws.into_iter().filter_map(hole).collect();
    html! { path class="hole" d=(drawn) {} }
}

fn jaw_behind(both: &Both<'_>, along: &Along, section: &Section<'_>, angle: f64) -> Markup {
    let Along { chuck, front, .. } = *along;
    let seat = section.step();
    let block = |points: &[Point], from: f64, to: f64| {
        let (low, high) = heights(points, angle);
        html! { path class="outline jaw" d=(closed(&[(from, -low), (from, -high), (to, -high), (to, -low)])) {} }
    };
    html! {
        g class="of-blank" { (block(&both.jaw.whole, chuck, front)) }
        g class="of-bored" { (block(&both.jaw.whole, chuck, seat)) (block(&both.jaw.front, seat, front)) }
    }
}

/// The ring, cut above and below the axis, and where it bears.
fn ring(stage: &Stage<'_>, both: &Both<'_>, along: &Along) -> Markup {
    let Some(ring) = stage.findings.scene.placing.as_ref().and_then(|placing| placing.ring) else {
        // Its size is not known; how high it stands is.
        let x = above_teeth(stage, along, stage.setup.jaws.ring_height.value);
        let reach = both.jaw.outer.min(CLIP);
        return html! { path class="rapid of-ring" d=(open(&[(x, -reach), (x, reach)])) {} };
    };
    let [inner, outer] = ring.radii.map(|radius| radius * both.sheet.scale);
    let [left, right] = ring.heights.map(|height| above_teeth(stage, along, height));
    let half = |low: f64, high: f64| closed(&[(left, low), (right, low), (right, high), (left, high)]);
    let bears = if stage.setup.grip.side == Side::Outside { outer } else { inner };
    html! {
        g id="story-ring-section" class="of-ring" {
            path class="ring" d={ (half(-inner, -outer)) (half(inner, outer)) } {}
            path id="story-ring-bears" class="contact" d=(open(&[(left, -bears), (right, -bears)])) {}
        }
    }
}

/// Where a height above the serrations stands, m.
fn above_teeth(stage: &Stage<'_>, along: &Along, height: f64) -> f64 {
    let below = stage.setup.jaws.height.value - stage.setup.grip.length.value;
    let from_front = height - stage.setup.jaws.height.value;
    if from_front > 0.0 {
        return along.front + from_front * along.scale;
    }
    along.place(stage.setup.grip.start.value + height - below)
}

fn part(stage: &Stage<'_>, both: &Both<'_>, along: &Along) -> Markup {
    let outline = Outline::of(stage, both.sheet, along, &both.shape);
    let thin = outline.thickest() < THINNEST_HATCHED;
    html! {
        @for (x, radius) in outline.edges_beyond() {
            path class="outline" d=(open(&[(x, -radius), (x, radius)])) {}
        }
        @for (at, half) in [Half::Upper, Half::Lower].into_iter().enumerate() {
            @if thin {
                path id={ "story-wall-" (at) } class="metal filled" {}
            } @else {
                g class="part" { path id={ "story-wall-" (at) } class="metal" fill="url(#hatch-part)" {} }
            }
            path id={ "story-edge-" (at) } class="outline" {}
            path class="true-shape" d=(off_axis(&outline.true_half(half))) {}
        }
    }
}

/// The path that cuts the jaws: rapid moves dashed, cuts solid.
fn way(stage: &Stage<'_>, both: &Both<'_>, along: &Along, path: &JawPath) -> Markup {
    let line = |rapid: bool| -> String {
        pairs(path)
            .filter(|(_, to)| (to.feed <= 0.0) == rapid)
            .map(|(from, to)| open(&[from, to].map(|step| spot(stage, both.sheet, along, step.x, step.z))))
            .collect()
    };
    html! {
        path class="rapid" d=(line(true)) {}
        path class="rough" d=(line(false)) {}
    }
}

/// Sizes of the jaws as they are made.
fn sizes(stage: &Stage<'_>, both: &Both<'_>, along: &Along) -> Markup {
    let setup = stage.setup;
    let Along { chuck, seat, front, .. } = *along;
    let length = |entry: &str, name: &str, sign: &str, si: f64| Callout::length(stage, entry, name, sign, si);
    let bored = setup.bored_radius();
    let radius = both.sheet.radius(2.0 * bored);
    let under = both.outside + CLEAR;
    let ring = setup.jaws.ring_height.value;
    html! {
        (Dimension { from: chuck, to: front, edge: -(both.jaw.outer.min(CLIP) + CLEAR), at: JAW_LINE }
            .horizontal(&length("jaws.height", say("Jaw height"), "", setup.jaws.height.value)))
        (Dimension { from: -radius, to: radius, edge: front + CLEAR, at: along.diameter_lines().1 }
            .vertical(&length("jaws.bored_diameter", say("Bored diameter"), "Ø", 2.0 * bored)))
        (Dimension { from: seat, to: front, edge: under, at: both.sheet.rows.grip + LINE_UNDER }
            .horizontal(&length("grip.length", say("Depth, as the grip"), "", setup.grip.length.value)))
        (Dimension { from: chuck, to: above_teeth(stage, along, ring), edge: under, at: both.sheet.rows.lengths + LINE_UNDER }
            .horizontal(&length("jaws.ring_height", say("Height of the boring ring"), "", ring)))
    }
}
