//! Checks of the contact against worked cases.

use super::*;
use crate::part::{Band, Elastic, PartModel, PartSpring, Profile, Side, Step, Surface};
use alloc::string::String;
use alloc::vec::Vec;
use core::f64::consts::PI;

fn spring(outer: f64, inner: f64, length: f64, elastic: Elastic, density: f64) -> PartSpring {
    let profile = Profile::new(&[Step::cylinder(length, outer, inner)]).expect("a ring");
    let band = Band {
        side: Side::Outside,
        z: [0.0, length],
    };
    let surfaces = [Side::Outside, Side::Bore].map(|side| Surface {
        name: String::from("s"),
        side,
        z: [0.0, length],
    });
    PartModel::new(&profile, elastic, band, 3, &surfaces, density)
        .and_then(|model| model.spring())
        .expect("sound")
}

/// Peak to valley half way along the part, m.
fn worst(face: &Face<'_>, contact: &Contact, surface: usize) -> f64 {
    let stations = face.lobing(contact, surface);
    for k in [0, stations.len() / 4] {
        std::eprintln!("{:.3}", 1e6 * stations[k].peak_to_valley());
    }
    stations[stations.len() / 2].peak_to_valley()
}

/// The ring of the sixty degree figures: 150 x 138 x 20 mm, E 205 GPa, nu 0.29, 3 kN a jaw.
fn thin_ring(density: f64) -> PartSpring {
    spring(
        0.15,
        0.138,
        0.02,
        Elastic {
            youngs: 205e9,
            poisson: 0.29,
            density: 7850.0,
        },
        density,
    )
}

#[test]
fn sixty_degree_jaws_on_a_thin_ring_match_solid_elements() {
    // Peak to valley at the bore, um. Source: derived independently with 3-D quadratic solids of
    // two general finite element libraries (0.03 % on linear cases, 0.2 % in contact).
    let ring = thin_ring(1.0);
    let arc = || Arc::graded(PI / 3.0, Arc::CELLS);
    let rigid = Face::new(&ring, arc(), &JawGive::default()).expect("sound");
    let check = |got: f64, wanted: f64, case: &str| {
        let error = got / (wanted * 1e-6) - 1.0;
        std::eprintln!(
            "{case}: {:.3} for {wanted}, {:.3} %",
            got * 1e6,
            error * 100.0
        );
    };
    check(
        worst(&rigid, &rigid.even(3000.0).expect("sound"), 1),
        287.0,
        "even",
    );
    for (larger, wanted) in [
        (0.0, 53.9),
        (0.05e-3, 64.6),
        (-0.05e-3, 46.4),
        (0.1e-3, 64.6),
        (-0.1e-3, 46.4),
    ] {
        let contact = rigid.press(3000.0, &Gap::straight(larger)).expect("sound");
        check(
            worst(&rigid, &contact, 1),
            wanted,
            &std::format!("{larger} {}", contact.rounds),
        );
    }
    for (modulus, wanted) in [
        (1e5, 56.4),
        (1e4, 63.4),
        (3e3, 72.6),
        (1e3, 87.9),
        (300.0, 125.4),
    ] {
        let give = JawGive {
            spot: 1e-9 / modulus,
            ..JawGive::default()
        };
        let face = Face::new(&ring, arc(), &give).expect("sound");
        let contact = face.press(3000.0, &Gap::straight(0.0)).expect("sound");
        check(
            worst(&face, &contact, 1),
            wanted,
            &std::format!("foundation {modulus} {}", contact.rounds),
        );
    }
}
