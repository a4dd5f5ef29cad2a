//! The tool on its path, on the section and on the face: drawn while it runs, and what it has cut so far.

use core::fmt::Write;

use holdround_core::findings::JawPath;
use holdround_core::program::{Move, Purpose};
use holdround_core::setup::Side;
use maud::{Markup, html};

use super::path::{place, tool};
use crate::view::Stage;
use crate::view::drawing::{Along, Point, Sheet, around, closed, coordinate};

/// What has been cut, and the tool, on either view.
pub(crate) const SECTION: [&str; 2] = ["section-swept", "section-tool"];
pub(crate) const FACE: [&str; 2] = ["face-swept", "face-tool"];

/// Room for them on the section; empty until the tool runs.
pub(in crate::view) fn on_section(stage: &Stage<'_>) -> Markup {
    let path = stage.findings.scene.jaw_path.as_ref();
    path.map_or_else(Markup::default, |path| overlay(SECTION, &shanks(stage, path)[0]))
}

/// Room for them on the face, over jaw 1.
pub(in crate::view) fn on_face(stage: &Stage<'_>) -> Markup {
    let path = stage.findings.scene.jaw_path.as_ref();
    path.map_or_else(Markup::default, |path| overlay(FACE, &shanks(stage, path)[1]))
}

/// The tool with its tip at the origin: in section, and on the face, where bar or shank is seen on end.
pub(in crate::view) fn shanks(stage: &Stage<'_>, path: &JawPath) -> [Markup; 2] {
    let scale = Sheet::of(stage).scale;
    let [bar, reach] = path.bar.map(|size| size * scale);
    let on_end = match stage.setup.grip.side {
        Side::Outside => html! { circle class="bar" cy=(coordinate(bar / 2.0)) r=(coordinate(bar / 2.0)) {} },
        Side::Inside => {
            let half = bar / 2.0;
            html! { path class="bar" d=(closed(&[(-half, 0.0), (half, 0.0), (half, -reach), (-half, -reach)])) {} }
        }
    };
    [tool(stage.setup, path, scale), on_end]
}

fn overlay([swept, at]: [&str; 2], tool: &Markup) -> Markup {
    html! {
        g class="boring-tool on-views" aria-hidden="true" {
            path class="swept" id=(swept) fill-rule="evenodd" {}
            g id=(at) { (tool) }
        }
    }
}

/// What has been cut and where the tool is after a share of its way: on the section, and on the face.
pub(crate) fn at(stage: &Stage<'_>, path: &JawPath, share: f64) -> [(String, String); 2] {
    let sheet = Sheet::of(stage);
    let along = Along::of(stage, sheet);
    let standing = sheet.radius(path.standing);
    let spot = |x: f64, z: f64| spot(stage, sheet, &along, x, z);
    let (step, x, z) = place(path, share);
    let outside = stage.setup.grip.side == Side::Outside;
    let (mut section, mut deepest) = (String::new(), standing);
    for ((at, to), from) in path.moves.iter().enumerate().skip(1).zip(&path.moves) {
        if at > step || !cuts(to) {
            continue;
        }
        // The move under way is cut as far as the tool is.
        let end = if at == step { spot(x, z) } else { spot(to.x, to.z) };
        let start = spot(from.x, from.z);
        section += &closed(&[start, end, (end.0, -standing), (start.0, -standing)]);
        if !matches!(to.purpose, Purpose::Skim | Purpose::Seat) {
            deepest = if outside { deepest.max(-end.1) } else { deepest.min(-end.1) };
        }
    }
    let ring = closed(&around(standing)) + &closed(&around(deepest));
    let (right, up) = spot(x, z);
    [(section, translated(right, up)), (if deepest == standing { String::new() } else { ring }, translated(0.0, up))]
}

/// Where the tip stands in section, on the diameter `x` and `z` m in front of the jaws.
pub(in crate::view) fn spot(stage: &Stage<'_>, sheet: Sheet, along: &Along, x: f64, z: f64) -> Point {
    let grip = &stage.setup.grip;
    let ahead =
        if z > 0.0 { along.front + z * sheet.scale } else { along.place(grip.start.value + grip.length.value + z) };
    (ahead, -sheet.radius(x))
}

fn cuts(step: &Move) -> bool {
    step.feed > 0.0 && !matches!(step.purpose, Purpose::Approach | Purpose::Retract)
}

/// The transform that puts what is drawn at the origin there.
pub(in crate::view) fn translated(right: f64, down: f64) -> String {
    let mut text = String::from("translate(");
    let _written = write!(text, "{} {})", coordinate(right), coordinate(down));
    text
}
