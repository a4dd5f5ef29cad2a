//! Checks against what shops report: common practice, no source. Dimensions not reported are
//! plausible ones for a chuck of about 200 mm.

use super::*;
use crate::jaw_spring::{JawColumn, MasterJaw, Section};
use crate::part::{Band, Elastic, PartModel, PartSpring, Profile, Side, Step, Surface};
use alloc::string::String;
use alloc::vec::Vec;

const STEEL: Elastic = Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 };
const ALUMINIUM: Elastic = Elastic { youngs: 69e9, poisson: 0.33, density: 2700.0 };

/// A thousandth of an inch, m.
const THOU: f64 = 25.4e-6;

/// Force of a jaw for a cylinder pressure, N per psi.
const PER_PSI: f64 = 90.0;

/// Openings at the tip of a jaw `height` tall, bored `deep` at one pressure under a ring at its
/// root and clamped on a true slug at another, m: in contact, and if the pressure were spread evenly.
fn opening(jaw: Elastic, height: f64, deep: f64, bored: f64, clamped: f64) -> (f64, f64) {
    let profile = Profile::new(&[Step::cylinder(0.12, 0.075, 0.0)]).expect("a slug");
    let band = Band { side: Side::Outside, z: [0.0, deep] };
    let part = PartModel::new(&profile, STEEL, band, 3, &[], 0.6).and_then(|m| m.spring()).expect("sound");
    let sections = [
        Section { length: height - deep, width: 0.04, depth: 0.06 },
        Section { length: deep, width: 0.04, depth: 0.05 },
    ];
    let column = JawColumn::new(&sections, jaw.youngs, jaw.poisson, MasterJaw::default()).expect("a jaw");
    let heights: Vec<f64> = part.points.iter().map(|z| height - deep + z).collect();
    let give = JawGive { column: column.matrix(&heights), body: Some(jaw), ..JawGive::default() };
    let face = Face::new(&part, Arc::graded(1.0, Arc::CELLS), &give).expect("sound");
    let relief = column.bored_relief(0.005, bored * PER_PSI, &heights);
    let force = clamped * PER_PSI;
    let spread = |z: f64| force * column.give(z, height - deep / 2.0);
    let even = spread(height) - spread(height - deep) - (relief[0] - relief[relief.len() - 1]);
    let contact = face.press(force, &Gap { larger: 0.0, relief }).expect("sound");
    (contact.clearance[part.points.len() - 1], even)
}

#[test]
fn bored_jaws_open_at_the_tip_as_shops_report() {
    // Steel bored 1 in deep at 100 psi and aluminium bored 1.5 in deep at 100 psi, both short,
    // clamped at 300 psi: less than 0.001 in. Aluminium 4 in tall, bored deep at 50 psi, clamped
    // at 400 psi: about 0.004 in.
    let (steel, _) = opening(STEEL, 0.05, 0.0254, 100.0, 300.0);
    assert!(steel > 0.0 && steel < THOU, "short steel: {:.2} thou", steel / THOU);
    let (short, _) = opening(ALUMINIUM, 0.05, 0.0381, 100.0, 300.0);
    assert!(short > 0.0 && short < THOU, "short aluminium: {:.2} thou", short / THOU);
    let (tall, even) = opening(ALUMINIUM, 0.1016, 0.09, 50.0, 400.0);
    assert!(tall > 3.0 * THOU && tall < 5.0 * THOU, "tall aluminium: {:.2} thou", tall / THOU);
    assert!(even > 2.0 * tall, "evenly spread it would open {:.2} thou", even / THOU);
}

/// A steel ring gripped from inside by three jaws, surface: its outside.
fn ring() -> PartSpring {
    let profile = Profile::new(&[Step::cylinder(0.03, 0.15, 0.13)]).expect("a ring");
    let surface = Surface { name: String::from("outside"), side: Side::Outside, z: [0.0, 0.03] };
    let band = Band { side: Side::Bore, z: [0.0, 0.03] };
    PartModel::new(&profile, STEEL, band, 3, &[surface], 1.0).and_then(|m| m.spring()).expect("sound")
}

/// Run-out of the outside half way along at 250 psi, m, on jaws `larger` (m, on the diameter).
fn run_out(face: &Face<'_>, larger: f64) -> f64 {
    let contact = face.press(250.0 * PER_PSI, &Gap::straight(larger / 2.0)).expect("sound");
    let stations = face.lobing(&contact, 0);
    stations[stations.len() / 2].peak_to_valley()
}

fn aluminium_face(part: &PartSpring, arc: f64) -> Face<'_> {
    let give = JawGive { body: Some(ALUMINIUM), ..JawGive::default() };
    Face::new(part, Arc::graded(arc, Arc::CELLS), &give).expect("sound")
}

#[test]
fn a_thin_ring_runs_out_thirty_times_less_on_pie_jaws() {
    // Gripped from inside at 250 psi: about 0.015 in on ordinary jaws, about 0.0005 in on pie jaws.
    let ring = ring();
    let ordinary = run_out(&aluminium_face(&ring, 0.625), 0.0) / THOU;
    let pie = run_out(&aluminium_face(&ring, 2.0), 0.0) / THOU;
    assert!(ordinary > 8.0 && ordinary < 20.0, "ordinary jaws: {ordinary:.2} thou");
    assert!(pie > 0.25 && pie < 1.0, "pie jaws: {pie:.2} thou");
}

#[test]
fn missing_the_nominal_diameter_of_pie_jaws_costs_roundness_either_way() {
    let ring = ring();
    let face = aluminium_face(&ring, 2.0);
    let nominal = run_out(&face, 0.0);
    for missed in [-0.2e-3, -0.1e-3, 0.1e-3, 0.2e-3] {
        let wrong = run_out(&face, missed);
        assert!(wrong > 1.5 * nominal, "{missed} off: {wrong:e}, nominal {nominal:e}");
    }
    assert!(run_out(&face, 0.2e-3) > run_out(&face, 0.1e-3), "further off is worse, larger");
    assert!(run_out(&face, -0.2e-3) > run_out(&face, -0.1e-3), "further off is worse, smaller");
}
