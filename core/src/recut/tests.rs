use super::*;
use crate::grip::Side;
use proptest::prelude::*;

const INCH: f64 = 0.0254;

#[test]
fn what_the_old_faces_need_is_half_the_runout_the_change_of_taper_and_the_damage() {
    let old = Old { runout: 60e-6, measured: true, taper: 20e-6, damage: 0.1e-3 };
    assert!((needed_stock(&old, 30e-6) - 140e-6).abs() < 1e-15, "30 + 10 + 100 µm");
    assert!((needed_stock(&old, 20e-6) - 130e-6).abs() < 1e-15, "the same taper costs nothing");
}

#[test]
fn the_outlook_follows_the_stock() {
    let of = |stock: f64| Outlook::of(stock * INCH, 0.002 * INCH, 0.010 * INCH);
    assert_eq!(of(-0.001), Outlook::TooLarge, "jaws already beyond the target");
    assert_eq!(of(0.001), Outlook::TooLittle, "old face would stay");
    assert_eq!(of(0.0075), Outlook::Enough, "the trade's example");
    assert_eq!(of(0.012), Outlook::Enough, "all that may be spent");
    assert_eq!(of(0.013), Outlook::Wasteful, "more than that");
}

#[test]
fn jaws_are_used_as_they_are_only_when_nothing_has_changed() {
    let sound = Old { runout: 10e-6, measured: true, taper: 0.0, damage: 0.0 };
    let on = |standing, old: Old| reusable(standing, 0.1, 20e-6, &old, 30e-6);
    assert!(on(0.100_015, sound), "on size, sound, running true");
    assert!(!on(0.100_025, sound), "off size");
    assert!(!on(0.1, Old { damage: 1e-6, ..sound }), "dented");
    assert!(!on(0.1, Old { runout: 31e-6, ..sound }), "running out");
    assert!(on(0.1, Old { runout: 31e-6, measured: false, ..sound }), "an assumed run-out condemns nothing");
}

proptest! {
    #[test]
    fn jaws_entered_by_their_middle_clean_up_just_when_the_one_with_least_stock_does(
        faces in prop::collection::vec(0.0999..0.1001_f64, 3..6),
        target in 0.0999..0.1001_f64,
        inside: bool,
    ) {
        let side = if inside { Side::Inside } else { Side::Outside };
        let (small, large) = faces.iter().fold((f64::MAX, f64::MIN), |(a, b), face| (a.min(*face), b.max(*face)));
        // An indicator reads radii: its run-out is half of what lies between the diameters.
        let old = Old { runout: (large - small) / 2.0, measured: true, taper: 0.0, damage: 0.0 };
        let spare = stock_per_side(side, f64::midpoint(small, large), target) - needed_stock(&old, 0.0);
        let least = faces.iter().map(|face| stock_per_side(side, *face, target)).fold(f64::MAX, f64::min);
        prop_assert!((spare - least).abs() < 1e-15, "{spare} to spare by the middle, {least} on the worst jaw");
    }

    #[test]
    fn the_other_grip_turns_the_sign(standing in 0.01..0.5_f64, target in 0.01..0.5_f64) {
        let (outside, inside) =
            (stock_per_side(Side::Outside, standing, target), stock_per_side(Side::Inside, standing, target));
        prop_assert_eq!(outside, -inside);
        prop_assert_eq!(outside, stock_per_side(Side::Inside, target, standing), "and so does swapping the diameters");
    }

    #[test]
    fn the_ring_told_leaves_the_stock_wanted(
        stock in -0.01..0.01_f64, wanted in 0.0..1e-3_f64, inside in any::<bool>(),
    ) {
        let side = if inside { Side::Inside } else { Side::Outside };
        // On a ring larger by so much, the jaws stand larger by as much.
        let (standing, target) = (0.1, 0.1 + if inside { -2.0 } else { 2.0 } * stock);
        let ringed = standing + ring_change(side, stock, wanted);
        prop_assert!((stock_per_side(side, ringed, target) - wanted).abs() < 1e-15);
    }

    #[test]
    fn moved_by_the_teeth_told_the_master_jaw_stands_within_half_a_pitch_of_the_middle(
        position in -0.05..0.05_f64, stroke in 1e-3..0.02_f64, pitch in 1e-3..4e-3_f64,
    ) {
        let after = position - pitch * f64::from(teeth_to_middle(position, stroke, pitch));
        prop_assert!((after - 0.5 * stroke).abs() <= 0.5 * pitch + 1e-12, "{after}");
    }

    #[test]
    fn each_recut_taken_leaves_one_less(metal in 0.0..0.05_f64, wall in 0.0..5e-3_f64, stock in 1e-5..2e-3_f64) {
        let left = recuts_left(metal, wall, stock);
        prop_assert!(metal - f64::from(left) * stock >= wall - 1e-8 * stock || left == 0, "the wall stands: {left}");
        prop_assert!(metal - f64::from(left + 1) * stock < wall + 1e-8 * stock, "one more would not: {left}");
        if left > 0 {
            prop_assert_eq!(recuts_left(metal - stock, wall, stock), left - 1);
        }
    }
}
