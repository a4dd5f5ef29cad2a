use super::*;
use proptest::prelude::*;

fn any_jaw() -> impl Strategy<Value = Jaw> {
    let shape = prop_oneof![
        (0.005..0.12_f64).prop_map(|width| Shape::Ordinary { width }),
        (0.05..2.1_f64).prop_map(|included_angle| Shape::Wide { included_angle }),
        (0.0..0.01_f64).prop_map(|saw_cut| Shape::Pie { saw_cut }),
    ];
    let side = prop_oneof![Just(Side::Outside), Just(Side::Inside)];
    (shape, side, 2..8_u32, 0.01..0.15_f64, 0.01..0.1_f64, 0.0..0.05_f64, 0.02..0.98_f64, 0.01..0.2_f64).prop_map(
        |(shape, side, count, length, height, step, share, grip_radius)| Jaw {
            shape,
            side,
            count,
            length,
            height,
            step,
            bored_depth: share * height,
            grip_radius,
        },
    )
}

proptest! {
    #[test]
    fn every_accepted_jaw_is_a_real_solid(jaw in any_jaw()) {
        let Ok(solid) = BoredJaw::new(jaw) else { return Err(TestCaseError::reject("not a jaw")) };
        let half = solid.contact_half_angle();
        prop_assert!(half >= 0.0 && half <= PI / f64::from(jaw.count) + 1e-12, "arc {half}");
        prop_assert!(solid.volume() > 0.0, "volume");
        prop_assert!((0.0..jaw.height).contains(&solid.centroid_height()), "centroid within the height");
        prop_assert!(solid.centroid_radius() < solid.outer_radius(), "centroid within the blank");
        prop_assert!(solid.centroid_radius() > 0.0, "centroid on the jaw's side of the axis");
        prop_assert!(solid.swing_radius() >= solid.outer_radius(), "swing");
    }

    #[test]
    fn volume_scales_as_the_cube(jaw in any_jaw(), k in 0.5..2.0_f64) {
        let Ok(solid) = BoredJaw::new(jaw) else { return Err(TestCaseError::reject("not a jaw")) };
        let shape = match jaw.shape {
            Shape::Ordinary { width } => Shape::Ordinary { width: k * width },
            Shape::Wide { .. } => jaw.shape,
            Shape::Pie { saw_cut } => Shape::Pie { saw_cut: k * saw_cut },
        };
        let Ok(scaled) = BoredJaw::new(Jaw {
            shape,
            length: k * jaw.length,
            height: k * jaw.height,
            step: k * jaw.step,
            bored_depth: k * jaw.bored_depth,
            grip_radius: k * jaw.grip_radius,
            ..jaw
        }) else { return Err(TestCaseError::reject("not a jaw")) };
        prop_assert!((scaled.volume() / solid.volume() / (k * k * k) - 1.0).abs() < 1e-6, "volume");
        prop_assert!((scaled.centroid_radius() / solid.centroid_radius() / k - 1.0).abs() < 1e-6, "radius");
        prop_assert!((scaled.swing_radius() / solid.swing_radius() / k - 1.0).abs() < 1e-12, "swing");
    }

    #[test]
    fn boring_deeper_makes_the_jaw_no_heavier(jaw in any_jaw(), more in 0.0..0.9_f64) {
        let deeper = Jaw { bored_depth: jaw.bored_depth + more * (jaw.height - jaw.bored_depth), ..jaw };
        let (Ok(a), Ok(b)) = (BoredJaw::new(jaw), BoredJaw::new(deeper)) else {
            return Err(TestCaseError::reject("not a jaw"))
        };
        prop_assert!(b.volume() <= a.volume() * (1.0 + 1e-12), "lighter");
        if jaw.side == Side::Outside {
            prop_assert!(b.centroid_radius() >= a.centroid_radius() * (1.0 - 1e-12), "centroid moves out");
        }
    }
}
