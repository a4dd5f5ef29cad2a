mod independent;
mod properties;

use super::*;
use core::f64::consts::FRAC_PI_3;

const ORDINARY: Jaw = Jaw {
    shape: Shape::Ordinary { width: 0.040 },
    side: Side::Outside,
    count: 3,
    length: 0.070,
    height: 0.050,
    step: 0.010,
    bored_depth: 0.015,
    grip_radius: 0.050,
};

fn bored(jaw: Jaw) -> BoredJaw {
    BoredJaw::new(jaw).unwrap_or_else(|refusal| panic!("{jaw:?}: {refusal}"))
}

/// Jaws of every shape and side, with and without full clean-up.
fn samples() -> impl Iterator<Item = Jaw> {
    let shapes = [
        (Shape::Ordinary { width: 0.040 }, 3, 0.010),
        (Shape::Ordinary { width: 0.060 }, 2, 0.002),
        (Shape::Ordinary { width: 0.020 }, 6, 0.0),
        (Shape::Wide { included_angle: FRAC_PI_3 }, 3, 0.012),
        (Shape::Wide { included_angle: 2.0 * FRAC_PI_3 }, 3, 0.0),
        (Shape::Pie { saw_cut: 0.003 }, 3, 0.030),
        (Shape::Pie { saw_cut: 0.003 }, 6, 0.050),
        (Shape::Pie { saw_cut: 0.004 }, 2, 0.010),
        (Shape::Pie { saw_cut: 0.0 }, 3, 0.010),
    ];
    shapes.into_iter().flat_map(|(shape, count, step)| {
        let outside = Jaw { shape, count, step, ..ORDINARY };
        let inside = Jaw { side: Side::Inside, length: step + 0.020, ..outside };
        [outside, inside]
    })
}

#[test]
fn a_sector_without_bore_has_the_textbook_centroid() {
    // 2/3 (sin a / a) (b^3 - a^3) / (b^2 - a^2) for an annular sector (any mechanics textbook); the
    // bore is too shallow to matter: its share is 1e-6 / 0.05.
    let jaw = Jaw { shape: Shape::Wide { included_angle: FRAC_PI_3 }, bored_depth: 1e-6, ..ORDINARY };
    let (inner, outer) = (0.040, 0.110);
    let expected = 2.0 / 3.0 * (0.5 / (FRAC_PI_3 / 2.0)) * (outer * outer * outer - inner * inner * inner)
        / (outer * outer - inner * inner);
    assert!((bored(jaw).centroid_radius() / expected - 1.0).abs() < 2e-5, "expected {expected}");
}

#[test]
fn contact_arc_follows_the_outline() {
    // asin(20/50) = 23.578 degrees.
    let ordinary = bored(ORDINARY);
    assert!((ordinary.contact_half_angle().to_degrees() - 23.578).abs() < 1e-3, "ordinary");
    assert!(ordinary.cleans_up(), "a step of 10 mm is more than the arc's rise of 4.2 mm");
    let wide = bored(Jaw { shape: Shape::Wide { included_angle: FRAC_PI_3 }, ..ORDINARY });
    assert_eq!(wide.contact_half_angle(), FRAC_PI_3 / 2.0, "wide");
    let pie = bored(Jaw { shape: Shape::Pie { saw_cut: 0.003 }, ..ORDINARY });
    // 60 degrees less asin(1.5/50) = 1.7191 degrees.
    assert!((pie.contact_half_angle().to_degrees() - 58.2809).abs() < 1e-4, "pie");
}

#[test]
fn a_shallow_step_leaves_the_corners_uncut() {
    let shallow = bored(Jaw { step: 0.001, ..ORDINARY });
    assert!(!shallow.cleans_up(), "the arc's rise of 4.2 mm is more than the step");
    // The face ends where the flat front meets the circle: acos(49/50) = 11.478 degrees.
    assert!((shallow.contact_half_angle().to_degrees() - 11.478).abs() < 1e-3, "face ends at the flat");
}

#[test]
fn neighbours_that_overlap_are_refused_with_the_limit() {
    // Six blocks whose front is 40 mm from the axis: 2 x 40 tan 30 = 46.188 mm.
    let wide_block = Jaw { shape: Shape::Ordinary { width: 0.050 }, count: 6, ..ORDINARY };
    let Err(JawError::Overlap { dimension: Dimension::Width, limit, .. }) = BoredJaw::new(wide_block) else {
        panic!("overlapping blocks are refused");
    };
    assert!((limit - 0.046_188).abs() < 1e-6, "limit {limit}");
    let fits = bored(Jaw { shape: Shape::Ordinary { width: 0.046 }, ..wide_block });
    assert!(fits.inward_clearance() < 2e-4, "hardly any way inward left");
    let sector = Jaw { shape: Shape::Wide { included_angle: 2.2 }, ..ORDINARY };
    assert!(
        matches!(BoredJaw::new(sector), Err(JawError::Overlap { dimension: Dimension::IncludedAngle, .. })),
        "three sectors of 126 degrees"
    );
}

#[test]
fn jaws_moved_in_by_their_clearance_just_touch() {
    for jaw in samples() {
        let solid = bored(jaw);
        let pitch = PI / f64::from(jaw.count);
        let shift = solid.inward_clearance();
        // Innermost corner of the jaw, moved inward, measured from the bisector to the neighbour.
        let (x, y) = match jaw.shape {
            Shape::Ordinary { width } => (solid.inner_radius(), 0.5 * width),
            Shape::Wide { included_angle } => {
                let (sine, cosine) = libm::sincos(0.5 * included_angle);
                (solid.inner_radius() * cosine, solid.inner_radius() * sine)
            }
            Shape::Pie { saw_cut } => {
                let half = pitch - libm::asin(0.5 * saw_cut / solid.inner_radius());
                (solid.inner_radius() * libm::cos(half), solid.inner_radius() * libm::sin(half))
            }
        };
        let gap = (x - shift) * libm::sin(pitch) - y * libm::cos(pitch);
        assert!(gap.abs() < 1e-12, "{jaw:?}: gap {gap} m after moving in by {shift}");
    }
}

#[test]
fn impossible_jaws_are_refused_by_name() {
    let refused = |jaw: Jaw| BoredJaw::new(jaw).expect_err("an impossible jaw");
    assert_eq!(
        refused(Jaw { shape: Shape::Ordinary { width: 0.1 }, ..ORDINARY }),
        JawError::WiderThanGrip { width: 0.1, limit: 0.1 },
        "as wide as the circle"
    );
    assert_eq!(
        refused(Jaw { bored_depth: 0.05, ..ORDINARY }),
        JawError::BoredThrough { depth: 0.05, limit: 0.05 },
        "bored through"
    );
    assert_eq!(
        refused(Jaw { length: 0.01, ..ORDINARY }),
        JawError::NothingBehindFace { length: 0.01, limit: 0.01 },
        "nothing behind the face"
    );
    assert!(matches!(refused(Jaw { step: 0.06, ..ORDINARY }), JawError::CrossesAxis { .. }), "past the axis");
    assert!(
        matches!(refused(Jaw { shape: Shape::Pie { saw_cut: 0.09 }, ..ORDINARY }), JawError::CutAway { .. }),
        "saw cut takes the face"
    );
    for bad in [f64::NAN, f64::INFINITY, -0.01, 0.0] {
        assert!(
            matches!(
                refused(Jaw { height: bad, ..ORDINARY }),
                JawError::OutOfRange { dimension: Dimension::Height, .. }
            ),
            "height {bad}"
        );
    }
    assert!(bored(ORDINARY).mass(f64::NAN).is_err(), "density must be a number");
}
