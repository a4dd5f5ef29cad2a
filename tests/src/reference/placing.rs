//! Tooth, boring ring and recut, by the engines alone. Lengths in mm, as sketches have them.

use holdround_core::boring_ring::{Bearing, Place, Ring, bar_clearance, cut_clearance, gauged_diameter, groove};
use holdround_core::boring_ring::{Section, position_on};
use holdround_core::grip::Side;
use holdround_core::jaw::{Jaw, Shape};
use holdround_core::recut::{Old, needed_stock, recuts_left, ring_change, stock_per_side, teeth_to_middle};
use holdround_core::stroke::{Blank, MasterJaw, SERRATIONS, Serration, Stand, Task, place};
use serde::Deserialize;

use super::engine::{Told, told};

const MM: f64 = 1e-3;

fn side(inside: bool) -> Side {
    if inside { Side::Inside } else { Side::Outside }
}

fn serration(key: &str) -> Result<Serration, String> {
    let found = SERRATIONS.iter().find(|(known, _)| *known == key);
    found.map(|(_, serration)| *serration).ok_or(format!("no serration {key}"))
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Key {
    key: String,
}

pub(super) fn serrations(given: Key) -> Told {
    let found = serration(&given.key)?;
    told([
        ("pitch", found.pitch / MM),
        ("angle_degrees", found.angle.to_degrees()),
        ("diameter_per_tooth", 2.0 * found.pitch / MM),
        ("sharp_height", found.height() / MM),
    ])
}

/// The blank and the master jaw of a sketch.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Sketch {
    inside: bool,
    serration: String,
    stroke: f64,
    first_groove: f64,
    blank_groove: f64,
    length: f64,
    width: f64,
    near_screw: f64,
    far_screw: f64,
    counterbore: f64,
    nut: f64,
    bored_diameter: f64,
    part_diameter: f64,
    passing_diameter: f64,
    tooth: i32,
    bored_at: f64,
}

pub(super) fn tooth(given: Sketch) -> Told {
    let master = MasterJaw {
        stroke: given.stroke * MM,
        first_groove: given.first_groove * MM,
        face: 1.0,
        body: 1.0,
        serration: serration(&given.serration)?,
    };
    let blank = Blank {
        length: given.length * MM,
        first_groove: given.blank_groove * MM,
        near_screw: given.near_screw * MM,
        far_screw: given.far_screw * MM,
        counterbore: given.counterbore * MM,
        counterbore_depth: 30.0 * MM,
        nut: given.nut * MM,
    };
    let jaw = Jaw {
        shape: Shape::Ordinary { width: given.width * MM },
        side: side(given.inside),
        count: 3,
        length: blank.length,
        height: 45.0 * MM,
        step: 0.0,
        bored_depth: 15.0 * MM,
        grip_radius: given.bored_diameter / 2.0 * MM,
    };
    let task = Task {
        jaw,
        part: [given.part_diameter / 2.0 * MM; 3],
        passing: given.passing_diameter / 2.0 * MM,
        least_wall: 0.0,
        least_clearance: 0.0,
        swing: None,
        stand: Stand::At(given.bored_at * MM),
    };
    let placed = place(&master, &blank, &task, given.tooth);
    told([
        ("end_radius", placed.end / MM),
        ("step", placed.step / MM),
        ("wall", placed.wall / MM),
        ("near_screw_radius", placed.screws[0] / MM),
        ("nut_inner_closed", placed.nut[0] / MM),
        ("nut_outer_closed", placed.nut[1] / MM),
        ("gripping_at", placed.gripping_at[1] / MM),
        ("travel", placed.travel / MM),
        ("clearance", placed.clearance / MM),
        ("swing_diameter", 2.0 * placed.swing / MM),
    ])
}

/// A jaw on its ring.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct OnRing {
    inside: bool,
    bearing: String,
    end_closed: f64,
    position: f64,
    bored_diameter: f64,
    length: f64,
    near_screw: f64,
    far_screw: f64,
    counterbore: f64,
    thickness: f64,
    height: f64,
    wall: f64,
    play: f64,
    bar: f64,
    middle: f64,
}

pub(super) fn boring_ring(given: OnRing) -> Told {
    let bearing = match given.bearing.as_str() {
        "counterbores" => Bearing::Counterbores,
        "plug" => Bearing::Plug,
        "groove" => Bearing::Groove,
        "around" => Bearing::Around,
        other => return Err(format!("no bearing {other}")),
    };
    let place = Place {
        side: side(given.inside),
        end_closed: given.end_closed * MM,
        bored_radius: given.bored_diameter / 2.0 * MM,
        height: 45.0 * MM,
        bored_depth: 20.0 * MM,
    };
    let blank = Blank {
        length: given.length * MM,
        first_groove: 0.0,
        near_screw: given.near_screw * MM,
        far_screw: given.far_screw * MM,
        counterbore: given.counterbore * MM,
        counterbore_depth: 30.0 * MM,
        nut: 40.0 * MM,
    };
    let section = Section { thickness: given.thickness * MM, height: given.height * MM };
    let position = given.position * MM;
    if bearing == Bearing::Groove {
        let made = groove(&place, &blank, position, section, given.wall * MM, given.play * MM)
            .map_err(|room| format!("no room: {room:?}"))?;
        return told([
            ("groove_inside", made.inside / MM),
            ("groove_outside", made.outside / MM),
            ("groove_depth", made.depth / MM),
            ("ring_inside", made.ring.inside / MM),
            ("ring_outside", made.ring.outside / MM),
        ]);
    }
    let diameter = gauged_diameter(bearing, &place, &blank, position).ok_or("no room")?;
    let ring = Ring::to_make(bearing, place.side, diameter, section);
    let (end, middle) = (place.radius(0.0, position), given.middle * MM);
    told([
        ("diameter", diameter / MM),
        ("clearance", cut_clearance(&ring, &place, middle) / MM),
        ("bar_to_spare", bar_clearance(&ring, &place, middle, end, given.bar * MM) / MM),
        ("position_on_it", position_on(bearing, &ring, &place, &blank).ok_or("a groove")? / MM),
    ])
}

/// Jaws that came back.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Back {
    inside: bool,
    standing: f64,
    target: f64,
    runout: f64,
    old_taper: f64,
    new_taper: f64,
    damage: f64,
    wanted: f64,
    metal: f64,
    least: f64,
    spend: f64,
    position: f64,
    stroke: f64,
    pitch: f64,
}

pub(super) fn recut(given: Back) -> Told {
    let stock = stock_per_side(side(given.inside), given.standing, given.target);
    let old = Old { runout: given.runout, measured: true, taper: given.old_taper, damage: given.damage };
    told([
        ("stock", stock),
        ("needed", needed_stock(&old, given.new_taper)),
        ("ring_change", ring_change(side(given.inside), stock, given.wanted)),
        ("left", f64::from(recuts_left(given.metal, given.least, given.spend))),
        ("teeth", f64::from(teeth_to_middle(given.position, given.stroke, given.pitch))),
    ])
}
