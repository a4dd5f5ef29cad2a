//! Tooth, ring and recut, from entries.

use alloc::vec::Vec;

use super::chuck::Chuck;
use super::job::Jaws;
use super::placing::{OwnRing, Placing, Plan, Recut};
use super::reader::Reader;
use super::{Input, recut_inputs as b, ring_inputs as r, stroke_inputs as s};
use crate::boring_ring::{Bearing, Ring, Section};
use crate::recut::Old;
use crate::stroke::{Blank, MasterJaw, SERRATIONS, Serration};
use crate::text::Text;

/// Reads where the jaws stand; none when something asked for cannot be read, which is then a fault noted.
pub(super) fn read(reader: &mut Reader<'_>, chuck: Option<&Chuck>, jaws: Option<&Jaws>) -> Option<Placing> {
    // What is left out is no assumption about the job, and is not listed as one.
    let planned = !reader.is_chosen(&s::PLAN, "no") && reader.choice(&s::PLAN, 0)? == "yes";
    let plan = planned.then(|| read_plan(reader, chuck, jaws));
    let back = !reader.is_chosen(&b::RECUT_JAWS, "new") && reader.choice(&b::RECUT_JAWS, 0)? == "bored";
    let recut = back.then(|| read_recut(reader));
    Some(Placing { plan: asked(plan)?, recut: asked(recut)? })
}

/// What was not asked for may be missing; what was may not.
fn asked<T>(read: Option<Option<T>>) -> Option<Option<T>> {
    match read {
        None => Some(None),
        Some(found) => found.map(Some),
    }
}

fn read_plan(reader: &mut Reader<'_>, chuck: Option<&Chuck>, jaws: Option<&Jaws>) -> Option<Plan> {
    let stroke = reader.plain(&s::STROKE);
    let serration = read_serration(reader);
    let first_groove = reader.plain(&s::FIRST_GROOVE);
    let face = reader.plain(&s::FACE);
    let turned = reader.choice(&s::MOUNTED, 0);
    let blank_groove = reader.plain(&s::BLANK_GROOVE);
    let near_screw = reader.plain(&s::NEAR_SCREW);
    let far_screw = reader.plain(&s::FAR_SCREW);
    let counterbore = reader.plain(&s::COUNTERBORE);
    let counterbore_depth = reader.plain(&s::COUNTERBORE_DEPTH);
    let nut = reader.plain(&s::NUT);
    let least_wall = reader.plain(&s::LEAST_WALL);
    let least_clearance = reader.plain(&s::LEAST_CLEARANCE);
    let passing = reader.plain(&s::PASSING);
    let tooth = whole(reader, &s::TOOTH);
    let bored_at = reader.plain(&s::BORED_AT);
    let bearing = read_bearing(reader);
    let rings: Vec<_> = (0..reader.count("rings")).map(|at| read_ring(reader, at)).collect();
    let ring_used = read_ring_used(reader, rings.len());
    let thickness = reader.plain(&r::RING_THICKNESS);
    let height = reader.plain(&r::RING_SECTION_HEIGHT);
    let tool_clearance = reader.plain(&r::TOOL_CLEARANCE);
    let serration = serration?;
    let as_measured = Blank {
        length: jaws?.length.value,
        first_groove: blank_groove?,
        near_screw: near_screw?,
        far_screw: far_screw?,
        counterbore: counterbore?,
        counterbore_depth: counterbore_depth?,
        nut: nut?,
    };
    let turned = turned? == "turned";
    Some(Plan {
        master: MasterJaw {
            stroke: stroke?,
            first_groove: first_groove?,
            face: face?,
            body: chuck?.body_diameter.value / 2.0,
            serration,
        },
        blank: if turned { as_measured.turned(serration.pitch) } else { as_measured },
        turned,
        least_wall: least_wall?,
        least_clearance: least_clearance?,
        passing,
        tooth,
        bored_at,
        bearing: bearing?,
        ring_used,
        section: Section { thickness: thickness?, height: height? },
        tool_clearance: tool_clearance?,
        rings: rings.into_iter().collect::<Option<_>>()?,
    })
}

fn read_serration(reader: &mut Reader<'_>) -> Option<Serration> {
    let key = reader.choice(&s::SERRATION, 0)?;
    if let Some((_, serration)) = SERRATIONS.iter().find(|(known, _)| *known == key) {
        return Some(*serration);
    }
    let pitch = reader.plain(&s::PITCH);
    let angle = reader.plain(&s::SERRATION_ANGLE);
    Some(Serration { pitch: pitch?, angle: angle? })
}

fn read_bearing(reader: &mut Reader<'_>) -> Option<Bearing> {
    Some(match reader.choice(&r::BEARING, 0)? {
        "plug" => Bearing::Plug,
        "groove" => Bearing::Groove,
        "around" => Bearing::Around,
        _ => Bearing::Counterbores,
    })
}

fn read_ring(reader: &mut Reader<'_>, at: usize) -> Option<OwnRing> {
    let name = reader.item_words(&r::OWN_RING_NAME, at);
    let outside = reader.item_length(&r::OWN_RING_OUTSIDE, at);
    let inside = reader.item_length(&r::OWN_RING_INSIDE, at);
    let height = reader.item_length(&r::OWN_RING_HEIGHT, at);
    let ring = Ring { outside: outside?.value, inside: inside?.value, height: height?.value };
    if ring.inside >= ring.outside {
        reader.conflict(
            &r::OWN_RING_INSIDE,
            at,
            "less than its outside",
            "A ring has metal between inside and outside: correct either.",
        );
        return None;
    }
    Some(OwnRing { name: name?, ring })
}

fn read_ring_used(reader: &mut Reader<'_>, count: usize) -> Option<usize> {
    let number = whole(reader, &r::RING_USED)?;
    let place = usize::try_from(number).ok().filter(|number| (1..=count).contains(number));
    if place.is_none() {
        let allowed =
            if count == 0 { "nothing, while the list is empty".into() } else { Text::of("1 to {}").with(count) };
        reader.conflict(&r::RING_USED, 0, allowed, "Enter the ring in the list of your own rings first.");
    }
    place.map(|number| number - 1)
}

/// A whole number, where one was typed.
fn whole(reader: &mut Reader<'_>, input: &Input) -> Option<i32> {
    let typed = reader.plain(input)?;
    if typed == libm::round(typed) {
        return Some(typed as i32);
    }
    reader.conflict(input, 0, "a whole number", "Leave out what stands behind the decimal point.");
    None
}

fn read_recut(reader: &mut Reader<'_>) -> Option<Recut> {
    let standing = reader.plain(&b::STANDING);
    let as_before = reader.choice(&b::AS_BEFORE, 0);
    let runout = reader.plain(&b::OLD_RUNOUT);
    let measured = !reader.assumed.iter().any(|assumed| assumed.path == b::OLD_RUNOUT.path);
    let taper = reader.plain(&b::OLD_TAPER);
    let depth = reader.plain(&b::OLD_DEPTH);
    let damage = reader.plain(&b::DAMAGE);
    let stock = reader.plain(&b::STOCK);
    let tolerance = reader.plain(&b::REUSE_TOLERANCE);
    let metal = reader.plain(&b::METAL_LEFT);
    Some(Recut {
        standing,
        as_before: match as_before? {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        },
        old: Old { runout: runout?, measured, taper: taper?, damage: damage? },
        depth,
        stock: stock?,
        tolerance: tolerance?,
        metal,
    })
}
