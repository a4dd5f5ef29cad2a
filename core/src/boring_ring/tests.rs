use super::*;
use crate::grip::Side;
use crate::stroke::Blank;
use proptest::prelude::*;

const MM: f64 = 1e-3;
const ROUNDING: f64 = 1e-15;

fn blank() -> Blank {
    Blank {
        length: 80.0 * MM,
        first_groove: 1.5 * MM,
        near_screw: 35.0 * MM,
        far_screw: 60.0 * MM,
        counterbore: 20.0 * MM,
        counterbore_depth: 30.0 * MM,
        nut: 40.0 * MM,
    }
}

fn place(side: Side) -> Place {
    let end_closed = if side == Side::Outside { 38.0 * MM } else { 118.0 * MM };
    let bored_radius = if side == Side::Outside { 50.0 * MM } else { 110.0 * MM };
    Place { side, end_closed, bored_radius, height: 45.0 * MM, bored_depth: 20.0 * MM }
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= ROUNDING
}

#[test]
fn a_ring_pushes_back_the_way_the_part_will() {
    use Bearing::{Around, Counterbores, Groove, Plug};
    let stops = |side| Bearing::ALL.into_iter().filter(|bearing| bearing.stops(side)).collect::<alloc::vec::Vec<_>>();
    assert_eq!(stops(Side::Outside), [Counterbores, Plug, Groove], "jaws that close");
    assert_eq!(stops(Side::Inside), [Counterbores, Groove, Around], "jaws that open");
}

#[test]
fn the_ring_for_mid_stroke_is_that_of_the_sketch() {
    // Closing: outer wall of the counterbore, 2 (38 + 2 + 35 + 10) mm; plug 2 (38 + 2) mm.
    let outside = |bearing| gauged_diameter(bearing, &place(Side::Outside), &blank(), 2.0 * MM);
    assert!(near(outside(Bearing::Counterbores).unwrap(), 0.170), "counterbores {:?}", outside(Bearing::Counterbores));
    assert!(near(outside(Bearing::Plug).unwrap(), 0.080), "plug {:?}", outside(Bearing::Plug));
    assert_eq!(outside(Bearing::Groove), None, "a groove is cut to suit");
    // Opening: inner wall, 2 (118 + 2 − 35 − 10) mm; around 2 (118 + 2) mm.
    let inside = |bearing| gauged_diameter(bearing, &place(Side::Inside), &blank(), 2.0 * MM);
    assert!(near(inside(Bearing::Counterbores).unwrap(), 0.150), "counterbores {:?}", inside(Bearing::Counterbores));
    assert!(near(inside(Bearing::Around).unwrap(), 0.240), "around {:?}", inside(Bearing::Around));
}

#[test]
fn a_ring_clears_the_cut_beside_it_or_below_it() {
    let ring = Ring { outside: 170.0 * MM, inside: 150.0 * MM, height: 8.0 * MM };
    let free = cut_clearance(&ring, &place(Side::Outside), 40.0 * MM);
    assert!(near(free, 25.0 * MM), "75 − 50 mm: {free}");
    let free = cut_clearance(&ring, &place(Side::Inside), 40.0 * MM);
    assert!(near(free, 25.0 * MM), "110 − 85 mm: {free}");
    let plug = Ring { outside: 80.0 * MM, inside: 0.0, height: 8.0 * MM };
    let free = cut_clearance(&plug, &place(Side::Outside), 20.0 * MM);
    assert!(near(free, 1.0 * MM), "45 − 20 deep leaves 25 mm, the plug ends at 24: {free}");
    let deep = cut_clearance(&plug, &place(Side::Outside), 22.0 * MM);
    assert!(near(deep, -MM), "a plug any higher is cut into: {deep}");
    let under = Ring { outside: 96.0 * MM, inside: 76.0 * MM, height: 8.0 * MM };
    let free = cut_clearance(&under, &place(Side::Outside), 19.0 * MM);
    assert!(near(free, 2.0 * MM), "a ring in deep counterbores under the part: {free}");
}

#[test]
fn a_bar_must_go_between_the_jaw_ends_and_through_the_ring() {
    let ring = Ring { outside: 85.0 * MM, inside: 65.0 * MM, height: 8.0 * MM };
    let spare = |middle: f64, end: f64| bar_clearance(&ring, &place(Side::Outside), middle, end, 32.0 * MM);
    assert!(near(spare(40.0 * MM, 40.0 * MM), 33.0 * MM), "the ring is narrower than the jaw ends");
    assert!(near(spare(20.0 * MM, 40.0 * MM), 48.0 * MM), "below the bore it is not in the way");
    assert!(spare(20.0 * MM, 15.0 * MM) < 0.0, "a bar of 32 mm does not go into 30 mm");
}

#[test]
fn a_groove_takes_the_first_strip_of_whole_metal() {
    let section = Section { thickness: 6.0 * MM, height: 8.0 * MM };
    let found = groove(&place(Side::Outside), &blank(), 2.0 * MM, section, 3.0 * MM, 1.0 * MM).unwrap();
    // The face lies 10 mm from the gripping end at 40 mm; the groove from 13 to 20 mm, short of 25 − 3.
    assert!(near(found.inside, 106.0 * MM) && near(found.outside, 120.0 * MM), "{found:?}");
    assert!(near(found.ring.outside, 120.0 * MM) && near(found.ring.inside, 108.0 * MM), "{:?}", found.ring);
    assert!(near(found.depth, found.ring.height), "the ring lies flush");
    // Two more millimetres do not fit there, nor between the counterbores (5 mm), nor behind (10 mm).
    let wide = Section { thickness: 9.0 * MM, ..section };
    let refused = groove(&place(Side::Outside), &blank(), 2.0 * MM, wide, 3.0 * MM, 1.0 * MM).unwrap_err();
    assert!(near(refused.needed, 10.0 * MM) && near(refused.widest, 9.0 * MM), "{refused:?}");
}

proptest! {
    #[test]
    fn a_ring_of_the_needed_diameter_puts_the_jaws_where_it_was_needed(
        position in -1e-3..5e-3_f64, inside in any::<bool>(),
    ) {
        let side = if inside { Side::Inside } else { Side::Outside };
        let gauging = |bearing: &Bearing| bearing.stops(side) && *bearing != Bearing::Groove;
        for bearing in Bearing::ALL.into_iter().filter(gauging) {
            let diameter = gauged_diameter(bearing, &place(side), &blank(), position).unwrap();
            let ring = Ring::to_make(bearing, side, diameter, Section { thickness: 5e-3, height: 8e-3 });
            let stands = position_on(bearing, &ring, &place(side), &blank()).unwrap();
            prop_assert!(near(stands, position), "{bearing:?}: {stands} for {position}");
        }
    }

    #[test]
    fn a_groove_leaves_its_walls_and_fits_its_ring(
        thickness in 1e-3..9e-3_f64, wall in 0.0..4e-3_f64, inside in any::<bool>(),
    ) {
        let side = if inside { Side::Inside } else { Side::Outside };
        let (place, play) = (place(side), 0.5e-3);
        let Ok(found) = groove(&place, &blank(), 2e-3, Section { thickness, height: 8e-3 }, wall, play) else {
            return Ok(());
        };
        prop_assert!(near(found.outside - found.inside, 2.0 * (thickness + play)), "as wide as ring and play");
        prop_assert!(found.ring.outside <= found.outside + ROUNDING && found.ring.inside >= found.inside - ROUNDING, "{found:?}");
        let wall_that_bears = if inside { found.inside } else { found.outside };
        prop_assert!(near(found.ring.bearing_diameter(side), wall_that_bears), "the ring lies on the far wall");
        let clearance = cut_clearance(&found.ring, &place, place.height - 0.5 * found.ring.height);
        prop_assert!(clearance >= wall - ROUNDING, "{clearance} from the cut, {wall} wanted");
        for screw in [blank().near_screw, blank().far_screw].map(|screw| place.radius(screw, 2e-3)) {
            let middle = 0.25 * (found.inside + found.outside);
            let apart = (middle - screw).abs() - 0.25 * (found.outside - found.inside) - 0.5 * blank().counterbore;
            prop_assert!(apart >= wall - ROUNDING, "{apart} from the counterbore at {screw}");
        }
    }
}
