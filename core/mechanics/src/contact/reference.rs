//! Checks of the contact against worked cases.

use super::*;
use crate::part::{Band, Elastic, MAX_ORDER, PartModel, PartSpring, Profile, Response, Side, Step, Surface};
use alloc::vec::Vec;
use core::f64::consts::PI;

fn spring(outer: f64, inner: f64, length: f64, elastic: Elastic) -> PartSpring {
    let profile = Profile::new(&[Step::cylinder(length, outer, inner)]).expect("a ring");
    let band = Band { side: Side::Outside, z: [0.0, length], cells: Band::CELLS };
    let surfaces = [Side::Outside, Side::Bore].map(|side| Surface { name: "s".into(), side, z: [0.0, length] });
    PartModel::new(&profile, elastic, band, 3, &surfaces, 1.0).and_then(|model| model.spring()).expect("sound")
}

/// Peak to valley half way along the part, m.
fn mid_length(face: &Face<'_>, contact: &Contact, surface: usize) -> f64 {
    let stations = face.part().stations[surface].at.len();
    face.station(contact, surface, stations / 2).expect("a surface").peak_to_valley()
}

/// The ring of the sixty degree figures: 150 x 138 x 20 mm.
fn thin_ring() -> PartSpring {
    spring(0.15, 0.138, 0.02, Elastic { youngs: 205e9, poisson: 0.29, density: 7850.0 })
}

fn pie(arc: f64) -> Arc {
    Arc::graded(arc, Arc::CELLS)
}

#[test]
fn sixty_degree_jaws_on_a_thin_ring_match_solid_elements() {
    // Peak to valley at the bore half way along, um, 3 kN a jaw. Source: derived independently
    // with 3-D quadratic solids of two general finite element libraries (0.03 % on linear cases,
    // 0.2 % in contact; figures rounded to 0.1). Foundations in N/mm3.
    let ring = thin_ring();
    let rigid = Face::new(&ring, pie(PI / 3.0), &JawGive::default()).expect("sound");
    let check = |got: f64, wanted: f64, tolerance: f64, case: &str| {
        let error = got / (wanted * 1e-6) - 1.0;
        assert!(error.abs() < tolerance, "{case}: {:.2} um for {wanted}", got * 1e6);
    };
    // The figure for even pressure counts the 3 kN around the arc, not along the jaw's axis.
    let around = libm::sin(PI / 6.0) / (PI / 6.0);
    let even = rigid.even(3000.0 * around).expect("sound");
    check(mid_length(&rigid, &even, 1), 287.0, 2.5e-3, "even pressure");
    for (larger, wanted) in [(0.0, 53.9), (0.05e-3, 64.6), (-0.05e-3, 46.4)] {
        let contact = rigid.press(3000.0, &Gap::straight(larger)).expect("sound");
        check(mid_length(&rigid, &contact, 1), wanted, 2.5e-3, "rigid");
    }
    for (modulus, wanted) in [(1e5, 56.4), (1e4, 63.4), (3e3, 72.6), (1e3, 87.9), (300.0, 125.4)] {
        let give = JawGive { spot: 1e-9 / modulus, ..JawGive::default() };
        let face = Face::new(&ring, pie(PI / 3.0), &give).expect("sound");
        let contact = face.press(3000.0, &Gap::straight(0.0)).expect("sound");
        check(mid_length(&face, &contact, 1), wanted, 5e-3, "on a foundation");
    }
}

/// A ring in plane stress: OD 100, ID 90, E 207 GPa, nu 0.3, thin as a disc; 10 kN a jaw on 40 mm.
const DISC: f64 = 0.0002;
const LOAD: f64 = 10e3 * DISC / 0.04;

fn flat_ring() -> PartSpring {
    spring(0.1, 0.09, DISC, Elastic { youngs: 207e9, poisson: 0.3, density: 7850.0 })
}

#[test]
fn rigid_arcs_on_a_plane_ring_match_the_table() {
    // Peak to valley at the outside, um, for jaws of radius 50.00, 50.05, 49.95 mm and half arc
    // beta. Source: an independent plane stress solution, converged to about 0.3 %.
    let table = [
        (10.0, [332.1, 332.1, 332.1]),
        (15.0, [273.9, 273.9, 273.9]),
        (30.0, [47.9, 59.3, 40.5]),
        (45.0, [6.76, 27.96, 14.94]),
        (60.0, [3.585, 27.66, 26.25]),
    ];
    let ring = flat_ring();
    for (beta, row) in table {
        let arc = pie(2.0 * beta * PI / 180.0);
        let face = Face::new(&ring, arc, &JawGive::default()).expect("sound");
        for (larger, wanted) in [0.0, 0.05e-3, -0.05e-3].into_iter().zip(row) {
            let contact = face.press(LOAD, &Gap::straight(larger)).expect("sound");
            let got = mid_length(&face, &contact, 0) * 1e6;
            let error = got / wanted - 1.0;
            assert!(error.abs() < 8e-3, "half arc {beta}, {larger} larger: {got} um for {wanted}");
        }
    }
}

#[test]
fn a_full_circle_bored_to_the_shrunk_radius_leaves_no_lobes() {
    // u0 = 6.433352542 um: Lame's shrink of the outside under p = W / (b L 2 sin 60).
    let ring = flat_ring();
    let face = Face::new(&ring, pie(2.0 * PI / 3.0), &JawGive::default()).expect("sound");
    let best = face.press(LOAD, &Gap::straight(-6.433352542e-6)).expect("sound");
    let lobes = mid_length(&face, &best, 0);
    let missed = face.press(LOAD, &Gap::straight(0.0)).expect("sound");
    let wrong = mid_length(&face, &missed, 0);
    assert!(lobes < 1e-3 * wrong, "{lobes:e} at best, {wrong:e} when bored to size");
    assert!(face.contact_share(&best) > 0.999, "all of the face bears");
}

#[test]
fn equal_radius_contact_is_linear_and_balances_the_force() {
    let ring = thin_ring();
    let face = Face::new(&ring, pie(PI / 3.0), &JawGive::default()).expect("sound");
    let one = face.press(1000.0, &Gap::straight(0.0)).expect("sound");
    let three = face.press(3000.0, &Gap::straight(0.0)).expect("sound");
    for (a, b) in one.pressure.iter().zip(&three.pressure) {
        assert!((3.0 * a - b).abs() <= 1e-9 * b.abs(), "{a} times three is {b}");
    }
    for larger in [0.0, 0.05e-3, -0.05e-3] {
        let contact = face.press(3000.0, &Gap::straight(larger)).expect("sound");
        let error = face.force(&contact) / 3000.0 - 1.0;
        assert!(error.abs() < 1e-9, "the force of a jaw: {error:e}");
        let along: f64 = face.force_along(&contact).iter().sum();
        assert!((along / 3000.0 - 1.0).abs() < 1e-9, "the force along the face");
    }
}

#[test]
fn a_larger_bore_bears_in_the_middle_a_smaller_one_at_the_edges() {
    let ring = flat_ring();
    let face = Face::new(&ring, pie(PI / 3.0), &JawGive::default()).expect("sound");
    let bearing = |larger: f64| face.edge_bearing(&face.press(LOAD / 100.0, &Gap::straight(larger)).expect("sound"));
    let (large, small) = (bearing(0.2e-3), bearing(-0.2e-3));
    assert!(large < 0.3 && small > 0.9, "larger {large}, smaller {small}");
    let even = face.edge_bearing(&face.even(LOAD).expect("sound"));
    assert!((even - 0.5).abs() < 1e-9, "even pressure lies half way: {even}");
}

#[test]
fn the_part_turned_end_for_end_or_by_a_jaw_gives_the_same_lobes() {
    let cup = |flip: bool| {
        let mut steps = [Step::cylinder(0.006, 0.1, 0.0), Step::cylinder(0.03, 0.1, 0.09)];
        let mut bore = [0.006, 0.036];
        let mut z = [0.0, 0.012];
        if flip {
            steps.reverse();
            bore = [0.0, 0.03];
            z = [0.024, 0.036];
        }
        let surface = Surface { name: "bore".into(), side: Side::Bore, z: bore };
        let steel = Elastic { youngs: 207e9, poisson: 0.3, density: 7850.0 };
        let profile = Profile::new(&steps).expect("a cup");
        let band = Band { side: Side::Outside, z, cells: Band::CELLS };
        let part = PartModel::new(&profile, steel, band, 6, &[surface], 0.6).and_then(|m| m.spring()).expect("sound");
        let face = Face::new(&part, pie(PI / 6.0), &JawGive::default()).expect("sound");
        let contact = face.press(5e3, &Gap::straight(0.02e-3)).expect("sound");
        face.lobing(&contact, 0)
    };
    let (forth, mut back) = (cup(false), cup(true));
    back.reverse();
    for (a, b) in forth.iter().zip(&back) {
        let (p, q) = (a.peak_to_valley(), b.peak_to_valley());
        assert!((p - q).abs() < 1e-6 * p.max(1e-9), "end for end: {p:e} and {q:e}");
        let turned = a.at(0.3 + PI / 3.0) - a.at(0.3);
        let mirrored = a.at(-0.3) - a.at(0.3);
        assert!(turned.abs() < 1e-9 * p && mirrored.abs() < 1e-9 * p, "turned, mirrored");
    }
}

/// A disc of radius 50 mm in plane strain on one jaw that is a plate with a hole, with all orders
/// but 1 (which moves either body as a whole): a disc loaded at its centre. Steel on steel.
fn disc_in_plate() -> (PartSpring, JawGive) {
    let steel = Elastic { youngs: 207e9, poisson: 0.3, density: 7850.0 };
    let (radius, length) = (0.05, 1.0);
    let mass: Vec<f64> = [2.0, 1.0, 1.0, 2.0].map(|m| m * radius * length / 6.0).to_vec();
    let responses = (0..=MAX_ORDER)
        .map(|order| {
            let give = compliance::body_give(&steel, radius, false, order);
            let band = mass.iter().map(|m| m * give).collect();
            Response { order, band, surfaces: Vec::new(), spin: Vec::new() }
        })
        .collect();
    let part = PartSpring {
        radius,
        side: Side::Outside,
        jaws: 1,
        elastic: steel,
        points: alloc::vec![0.0, length],
        goes_on: [false; 2],
        mass,
        responses,
        stations: Vec::new(),
        spin: Vec::new(),
    };
    (part, JawGive { body: Some(steel), ..JawGive::default() })
}

/// Half-angle of contact, rad, from the square of the pressure going straight to zero at its
/// edge, and greatest pressure, Pa.
fn extent(face: &Face<'_>, contact: &Contact) -> (f64, f64) {
    let pressure: Vec<f64> = contact.pressure.iter().step_by(2).copied().collect();
    let last = pressure.iter().rposition(|p| *p > 0.0).expect("in contact");
    let (a, b) = (last - 3, last - 1);
    let (pa, pb) = (pressure[a] * pressure[a], pressure[b] * pressure[b]);
    let angles = face.arc().angles();
    let edge = angles[b] + (angles[b] - angles[a]) * pb / (pa - pb);
    (edge, pressure.iter().copied().fold(0.0, f64::max))
}

#[test]
fn a_disc_in_a_slightly_larger_hole_touches_as_hertz_says() {
    // R1 50, R2 50.5 mm, 250 N/mm, steel on steel: a = 3.759423692 mm, p0 = 42.33493114 MPa.
    // Source: Hertz line contact (Johnson, *Contact Mechanics*), evaluated independently.
    let (part, give) = disc_in_plate();
    let face = Face::new(&part, Arc::even(0.2, 40), &give).expect("sound");
    let contact = face.press(250e3, &Gap::straight(0.5e-3)).expect("sound");
    let (edge, peak) = extent(&face, &contact);
    assert!((edge * 0.05 / 3.759423692e-3 - 1.0).abs() < 0.01, "half width {edge}");
    assert!((peak / 42.33493114e6 - 1.0).abs() < 0.01, "greatest pressure {peak:e}");
}

#[test]
fn a_disc_in_a_closely_fitting_hole_touches_as_persson_says() {
    // E dR / Q = (2 - ln(b^2 + 1) - 2 b^4) / (pi b^2 (b^2 + 1)), b = tan(eps / 2), similar
    // materials; plane strain by E / (1 - nu^2). Source: Persson 1964 as given by Ciavarella and
    // Decuzzi, Int. J. Solids Struct. 38 (2001) 4507 (from memory, confirmed numerically).
    let (part, give) = disc_in_plate();
    let modulus = 207e9 / (1.0 - 0.09);
    for (degrees, ratio) in [(10.0, 82.22057876), (20.0, 19.5352507), (45.0, 2.823121258), (60.0, 1.067202437)] {
        let half: f64 = degrees * PI / 180.0;
        let face = Face::new(&part, Arc::even(2.4 * half, 48), &give).expect("sound");
        let load = 1e6;
        let contact = face.press(load, &Gap::straight(ratio * load / modulus)).expect("sound");
        let (edge, _) = extent(&face, &contact);
        let b = libm::tan(half / 2.0);
        let (b2, b4) = (b * b, b * b * b * b);
        let formula = (2.0 - libm::log(b2 + 1.0) - 2.0 * b4) / (PI * b2 * (b2 + 1.0));
        assert!((formula / ratio - 1.0).abs() < 1e-8, "the tabled value is the formula's");
        // A cell is 2.5 % of the half-angle.
        assert!((edge / half - 1.0).abs() < 0.01, "{degrees} degrees: {}", edge / half);
    }
}

#[test]
fn pressure_at_a_rigid_edge_has_a_mean_but_no_peak() {
    let ring = thin_ring();
    let pressures = |cells: usize| {
        let arc = Arc::graded(PI / 3.0, cells);
        let face = Face::new(&ring, arc, &JawGive::default()).expect("sound");
        let contact = face.press(3000.0, &Gap::straight(0.0)).expect("sound");
        [0.0, 2e-3].map(|length| face.greatest_mean_pressure(&contact, length))
    };
    let (coarse, fine) = (pressures(16), pressures(32));
    assert!(fine[0] > 1.3 * coarse[0], "the peak grows with the grid: {coarse:?}, {fine:?}");
    assert!((fine[1] / coarse[1] - 1.0).abs() < 0.02, "the mean stays: {coarse:?}, {fine:?}");
}

#[test]
fn a_jaw_body_answers_as_a_plate_with_a_hole() {
    // Elements on a plate forty times as wide as its hole, in plane stress: the closed form with
    // plane strain constants turned back, E / (1 - nu^2) and nu / (1 - nu) for E and nu.
    let flat = Elastic { youngs: 207e9, poisson: 0.3, density: 7850.0 };
    let profile = Profile::new(&[Step::cylinder(0.0006, 1.0, 0.025)]).expect("a plate");
    let band = Band { side: Side::Bore, z: [0.0, 0.0006], cells: Band::CELLS };
    let model = PartModel::new(&profile, flat, band, 3, &[], 1.0).expect("sound");
    let nu = flat.poisson / (1.0 + flat.poisson);
    let strain = Elastic { youngs: flat.youngs * (1.0 - nu * nu), poisson: nu, density: 0.0 };
    // Shorter waves no longer see a thin plate.
    for order in [0, 3, 6] {
        let response = model.respond(order).expect("regular");
        let give = response.band.iter().sum::<f64>() / (0.0125 * 0.0006);
        let wanted = compliance::body_give(&strain, 0.0125, true, order);
        let error = give / wanted - 1.0;
        assert!(error.abs() < 3e-3, "order {order}: {error:e}");
    }
}

#[test]
fn what_cannot_be_pressed_is_refused() {
    let ring = flat_ring();
    let face = |arc: f64| Face::new(&ring, pie(arc), &JawGive::default()).map(|_| ());
    assert_eq!(face(2.2), Err(ContactError::Arc), "three arcs of 126 degrees overlap");
    assert_eq!(face(0.0), Err(ContactError::Arc), "no arc");
    assert_eq!(face(f64::NAN), Err(ContactError::Arc), "not a number");
    let short = JawGive { column: alloc::vec![1e-9], ..JawGive::default() };
    let column = Face::new(&ring, pie(1.0), &short).map(|_| ());
    assert_eq!(column, Err(ContactError::Give), "a column for one point");
    let sound = Face::new(&ring, pie(1.0), &JawGive::default()).expect("sound");
    let press = |force: f64, gap: Gap| sound.press(force, &gap).map(|_| ());
    assert_eq!(press(0.0, Gap::straight(0.0)), Err(ContactError::Force), "no force");
    assert_eq!(press(f64::NAN, Gap::straight(0.0)), Err(ContactError::Force), "not a number");
    assert_eq!(press(1.0, Gap::straight(f64::NAN)), Err(ContactError::Gap), "no gap");
}
