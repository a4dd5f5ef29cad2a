//! The jaw as a solid and as a spring, and jaws pressed on parts, by the engines alone. SI.

use std::f64::consts::PI;

use holdround_core::contact::{Arc, Contact, Face, Gap, JawGive};
use holdround_core::grip::Side as Gripped;
use holdround_core::jaw::{BoredJaw, Jaw, Shape};
use holdround_core::jaw_spring::{JawColumn, MasterJaw, Section};
use holdround_core::part::{Band, Elastic, MAX_ORDER, PartModel, PartSpring, Profile, Response, Side, Step, Surface};
use holdround_core::ring::{Annulus, Edge};
use serde::Deserialize;

use super::engine::{Told, refused, told};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Blank {
    shape: Outline,
    inside: bool,
    jaws: u32,
    length: f64,
    height: f64,
    step: f64,
    bored_depth: f64,
    grip_radius: f64,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Outline {
    /// Its width.
    Ordinary(f64),
    /// Its included angle, degrees.
    Wide(f64),
    /// The saw cut between two of them.
    Pie(f64),
}

pub(super) fn bored_jaw(given: Blank) -> Told {
    let jaw = Jaw {
        shape: match given.shape {
            Outline::Ordinary(width) => Shape::Ordinary { width },
            Outline::Wide(degrees) => Shape::Wide { included_angle: degrees.to_radians() },
            Outline::Pie(saw_cut) => Shape::Pie { saw_cut },
        },
        side: if given.inside { Gripped::Inside } else { Gripped::Outside },
        count: given.jaws,
        length: given.length,
        height: given.height,
        step: given.step,
        bored_depth: given.bored_depth,
        grip_radius: given.grip_radius,
    };
    let bored = BoredJaw::new(jaw).map_err(refused)?;
    told([
        ("volume", bored.volume()),
        ("centroid radius", bored.centroid_radius()),
        ("centroid height", bored.centroid_height()),
        ("half of the arc, degrees", bored.contact_half_angle().to_degrees()),
    ])
}

/// A jaw standing on its master jaw.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Standing {
    /// Length along the height, width and depth of each section, from the serrations up.
    sections: Vec<[f64; 3]>,
    youngs_modulus: f64,
    poisson: f64,
    master_radial: f64,
    master_tilt: f64,
    tilt_depth: f64,
    force: f64,
    force_at: f64,
    seen_at: f64,
}

pub(super) fn jaw_column(given: Standing) -> Told {
    let sections: Vec<Section> =
        given.sections.iter().map(|&[length, width, depth]| Section { length, width, depth }).collect();
    let master = MasterJaw { radial: given.master_radial, tilt: given.master_tilt, depth: given.tilt_depth };
    let column = JawColumn::new(&sections, given.youngs_modulus, given.poisson, master).map_err(refused)?;
    told([("moves by", given.force * column.give(given.seen_at, given.force_at))])
}

/// Rigid jaws of the part's own radius, and of radii larger and smaller by `mismatch`, on a ring.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Pressed {
    outer: f64,
    inner: f64,
    length: f64,
    youngs_modulus: f64,
    poisson: f64,
    jaws: usize,
    half_angle_degrees: f64,
    force_per_jaw: f64,
    mismatch: f64,
    /// Whether the bore is looked at, half way along; else the outside.
    bore: bool,
    /// Cells along half a face, where they are not as many as the page takes.
    cells: Option<usize>,
}

pub(super) fn rigid_jaws(given: Pressed) -> Told {
    let profile = Profile::new(&[Step::cylinder(given.length, 2.0 * given.outer, 2.0 * given.inner)]);
    let profile = profile.map_err(refused)?;
    let elastic = Elastic { youngs: given.youngs_modulus, poisson: given.poisson, density: 7850.0 };
    let z = [0.0, given.length];
    let band = Band { side: Side::Outside, z, cells: Band::CELLS };
    let seen = Surface { name: "seen".into(), side: if given.bore { Side::Bore } else { Side::Outside }, z };
    let part = PartModel::new(&profile, elastic, band, given.jaws, &[seen], 1.0).and_then(|model| model.spring());
    let part = part.map_err(refused)?;
    let arc = Arc::graded(2.0 * given.half_angle_degrees.to_radians(), given.cells.unwrap_or(Arc::CELLS));
    let face = Face::new(&part, arc, &JawGive::default()).map_err(refused)?;
    let lobes = |larger: f64| -> Result<f64, String> {
        let contact = face.press(given.force_per_jaw, &Gap::straight(larger)).map_err(refused)?;
        let middle = part.stations[0].at.len() / 2;
        face.station(&contact, 0, middle)
            .map(|lobing| lobing.peak_to_valley())
            .ok_or_else(|| "a surface has stations".into())
    };
    told([
        ("jaws of the same radius", lobes(0.0)?),
        ("jaws of a larger radius", lobes(given.mismatch)?),
        ("jaws of a smaller radius", lobes(-given.mismatch)?),
    ])
}

/// A disc in a hole of the same material in plane strain, a metre long, pressed along one radius.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct InHole {
    radius: f64,
    hole_larger_by: f64,
    youngs_modulus: f64,
    poisson: f64,
    force_per_length: f64,
    /// Arc over which contact is sought, and in how many cells.
    arc: f64,
    cells: usize,
}

/// The half-angle of contact comes from the square of the pressure, which goes straight to zero at its edge.
pub(super) fn disc_in_hole(given: InHole) -> Told {
    let InHole { radius, youngs_modulus, poisson, .. } = given;
    let elastic = Elastic { youngs: youngs_modulus, poisson, density: 7850.0 };
    // A plane-stress disc with these constants is one in plane strain (Timoshenko and Goodier).
    let flat = Annulus {
        inner: 0.0,
        outer: radius,
        modulus: youngs_modulus / (1.0 - poisson * poisson),
        poisson: poisson / (1.0 - poisson),
    };
    let mass: Vec<f64> = [2.0, 1.0, 1.0, 2.0].map(|share| share * radius / 6.0).to_vec();
    let response = |order: usize| {
        // Order 1 moves the disc as a whole.
        let give = match order {
            1 => 0.0,
            // What a pull moves outward, the same pressure moves inward.
            _ => flat.response(order as u32, Edge::Outside, 1.0).map_err(refused)?.outside.radial,
        };
        let band = mass.iter().map(|area| area * give).collect();
        Ok(Response { order, band, surfaces: Vec::new(), spin: Vec::new() })
    };
    let part = PartSpring {
        radius,
        side: Side::Outside,
        jaws: 1,
        elastic,
        points: vec![0.0, 1.0],
        goes_on: [false; 2],
        mass: mass.clone(),
        responses: (0..=MAX_ORDER).map(response).collect::<Result<_, String>>()?,
        stations: Vec::new(),
        spin: Vec::new(),
    };
    let give = JawGive { body: Some(elastic), ..JawGive::default() };
    let face = Face::new(&part, Arc::even(given.arc, given.cells), &give).map_err(refused)?;
    let contact: Contact = face.press(given.force_per_length, &Gap::straight(given.hole_larger_by)).map_err(refused)?;
    let pressure: Vec<f64> = contact.pressure.iter().step_by(2).copied().collect();
    let last = pressure.iter().rposition(|pressure| *pressure > 0.0).filter(|last| *last >= 3);
    let last = last.ok_or("too few cells bear")?;
    let square = |at: usize| pressure[at] * pressure[at];
    let angles = face.arc().angles();
    let [a, b] = [last - 3, last - 1];
    let edge = angles[b] + (angles[b] - angles[a]) * square(b) / (square(a) - square(b));
    told([
        ("half-angle of contact, degrees", edge * 180.0 / PI),
        ("greatest pressure", pressure.iter().copied().fold(0.0, f64::max)),
    ])
}
