//! Whether the entries of a set-up agree with each other.

use alloc::format;

use super::fault::range_words;
use super::job::{CutKind, GripFrom, Setup};
use super::reader::Reader;
use super::{Input, chuck_inputs as c, cut_inputs as t, jaw_inputs as j, part_inputs as p};
use crate::grip::Side;
use crate::jaw::{BoredJaw, Dimension, JawError};
use crate::quantity::shown;

/// Thinnest wall, as a share of the outside radius, for which the ring solution is checked.
const THINNEST_WALL: f64 = 0.005;
/// Smallest bore that jaws are thought to reach into, m.
const SMALLEST_GRIPPED_BORE: f64 = 5e-3;
/// Checks what no single entry can tell, each fault at the entry easiest to put right.
pub(super) fn check(setup: &Setup, reader: &mut Reader<'_>) {
    check_part(setup, reader);
    check_grip(setup, reader);
    check_jaws(setup, reader);
    check_chuck(setup, reader);
    for (at, cut) in setup.cuts.iter().enumerate() {
        check_cut(setup, &cut.kind, at, reader);
        let (least, most) = (-setup.grip.length.value, (setup.part.length - setup.grip.length).value);
        if cut.distance.value < least || cut.distance.value > most + 1e-9 {
            let allowed = range_words(least, most, reader.unit_of(&t::CUT_DISTANCE, at));
            reader.conflict(
                &t::CUT_DISTANCE,
                at,
                allowed,
                "The tool must be on the part: correct this, the part length or the grip length.",
            );
        }
    }
}

fn at_most(reader: &mut Reader<'_>, input: &Input, at: usize, value: f64, most: f64, remedy: &str) {
    // One part in a billion is rounding of unit conversions, not a fault.
    if value > most * (1.0 + 1e-9) {
        let allowed = format!("at most {}", shown(most, reader.unit_of(input, at)));
        reader.conflict(input, at, allowed, remedy);
    }
}

fn check_part(setup: &Setup, reader: &mut Reader<'_>) {
    let outside = setup.part.outside_diameter.value;
    let most = outside * (1.0 - THINNEST_WALL);
    let remedy = "The bore must leave a wall of at least 1/200 of the outside radius: make the bore smaller or the outside larger.";
    at_most(reader, &p::BORE_DIAMETER, 0, setup.part.bore_diameter.value, most, remedy);
    if setup.grip.side == Side::Inside && setup.part.bore_diameter.value < SMALLEST_GRIPPED_BORE {
        let allowed = format!(
            "at least {} for an inside grip",
            shown(SMALLEST_GRIPPED_BORE, reader.unit_of(&p::BORE_DIAMETER, 0))
        );
        reader.conflict(&p::BORE_DIAMETER, 0, allowed, "Grip the outside, or correct the bore.");
    }
}

fn check_grip(setup: &Setup, reader: &mut Reader<'_>) {
    let length = setup.grip.length.value;
    at_most(
        reader,
        &p::GRIP_LENGTH,
        0,
        length,
        setup.part.length.value,
        "The jaws cannot hold more than the part's length.",
    );
}

fn check_jaws(setup: &Setup, reader: &mut Reader<'_>) {
    let Err(error) = BoredJaw::new(setup.jaw()) else { return };
    let (input, remedy) = match error {
        JawError::OutOfRange { dimension, .. } => (input_of(dimension), "Correct this, or the gripped diameter."),
        JawError::WiderThanGrip { .. } => {
            (&j::JAW_WIDTH, "Use narrower jaws, or pie jaws: the bore would never leave the sides of these.")
        }
        JawError::NothingBehindFace { .. } => {
            (&j::JAW_LENGTH, "Some of the jaw must stand behind the gripping face: use longer jaws or a smaller step.")
        }
        JawError::BoredThrough { .. } => {
            (&p::GRIP_LENGTH, "Some of the jaw must stay under the part: bore less deep, or use taller jaws.")
        }
        JawError::CrossesAxis { .. } if setup.grip.side == Side::Outside => {
            (&j::JAW_STEP, "The step cannot reach past the axis.")
        }
        JawError::CrossesAxis { .. } => {
            (&j::JAW_LENGTH, "Jaws in a bore cannot reach past the axis: use shorter jaws, or a larger step.")
        }
        JawError::Overlap { dimension, .. } => {
            (input_of(dimension), "Neighbouring jaws would meet: use narrower ones, or ones that reach less far in.")
        }
        JawError::CutAway { .. } => {
            (&j::SAW_CUT, "The saw cuts must leave a gripping face: use a thinner saw, or a larger diameter.")
        }
    };
    let unit = reader.unit_of(input, 0);
    let allowed = match error {
        JawError::OutOfRange { least, greatest, .. } => range_words(least, greatest, unit),
        JawError::NothingBehindFace { limit, .. } => format!("more than {}", shown(limit, unit)),
        JawError::CrossesAxis { .. } if setup.grip.side == Side::Inside => {
            format!("at most {}", shown(setup.gripped_radius() + setup.jaws.step.value, unit))
        }
        JawError::WiderThanGrip { limit, .. }
        | JawError::BoredThrough { limit, .. }
        | JawError::CrossesAxis { limit, .. }
        | JawError::Overlap { limit, .. }
        | JawError::CutAway { limit, .. } => format!("less than {}", shown(limit, unit)),
    };
    reader.conflict(input, 0, allowed, remedy);
}

/// The input a dimension of the jaw is typed in.
fn input_of(dimension: Dimension) -> &'static Input {
    match dimension {
        Dimension::Count => &c::JAW_COUNT,
        Dimension::Length => &j::JAW_LENGTH,
        Dimension::Height => &j::JAW_HEIGHT,
        Dimension::Step => &j::JAW_STEP,
        Dimension::BoredDepth => &p::GRIP_LENGTH,
        Dimension::GripRadius => &p::OUTSIDE_DIAMETER,
        Dimension::Width => &j::JAW_WIDTH,
        Dimension::IncludedAngle => &j::JAW_ANGLE,
        Dimension::SawCut => &j::SAW_CUT,
        Dimension::Density => &j::JAW_MATERIAL,
    }
}

fn check_chuck(setup: &Setup, reader: &mut Reader<'_>) {
    let (least, most) = (setup.chuck.spin_share_least.value, setup.chuck.spin_share_most.value);
    at_most(reader, &c::SPIN_SHARE_LEAST, 0, least, most, "The least share cannot be more than the greatest.");
    match &setup.chuck.grip_from {
        GripFrom::Plate { cylinder, .. } if cylinder.rod_side => {
            at_most(
                reader,
                &c::CYLINDER_ROD,
                0,
                cylinder.rod.value,
                cylinder.bore.value * 0.95,
                "The rod must leave area for the oil to act on.",
            );
        }
        GripFrom::Gauge(readings) => {
            let lowest = readings.iter().map(|(pressure, _)| pressure.value).fold(f64::INFINITY, f64::min);
            let highest = readings.iter().map(|(pressure, _)| pressure.value).fold(0.0, f64::max);
            if highest < 1.05 * lowest {
                reader.conflict(
                    &c::GAUGE_PRESSURE,
                    1,
                    "readings at two pressures at least 5 % apart".into(),
                    "Read the gauge at another pressure too.",
                );
            }
        }
        _ => {}
    }
}

fn check_cut(setup: &Setup, kind: &CutKind, at: usize, reader: &mut Reader<'_>) {
    let (outside, bore) = (setup.part.outside_diameter.value, setup.part.bore_diameter.value);
    let needs_resistance = !matches!(kind, CutKind::Power { .. });
    if needs_resistance && at == 0 && (setup.part.cutting_resistance.is_none() || setup.part.chip_exponent.is_none()) {
        let unknown =
            if setup.part.cutting_resistance.is_none() { &p::PART_CUTTING_RESISTANCE } else { &p::PART_CHIP_EXPONENT };
        reader.conflict(
            unknown,
            0,
            "a figure of your own".into(),
            "The table has no cutting resistance for this material: type one, or take the cut from spindle power.",
        );
    }
    let (diameter, depth) = match kind {
        CutKind::Turning(cut, _) | CutKind::Facing(cut) | CutKind::Boring(cut, _) => {
            (cut.diameter.value, Some(cut.depth.value))
        }
        CutKind::Grooving { diameter, .. } | CutKind::Power { diameter, .. } => (diameter.value, None),
        CutKind::Drilling { drill, .. } => {
            at_most(reader, &t::DRILL_DIAMETER, at, drill.value, outside, "The drill cannot be larger than the part.");
            return;
        }
    };
    at_most(
        reader,
        &t::CUT_DIAMETER,
        at,
        diameter,
        outside,
        "The tool must be on the part: correct this or the outside diameter.",
    );
    if diameter < bore * (1.0 - 1e-9) || diameter <= 0.0 {
        let floor = format!("more than 0 and at least {}", shown(bore, reader.unit_of(&t::CUT_DIAMETER, at)));
        reader.conflict(
            &t::CUT_DIAMETER,
            at,
            floor,
            "The tool must be on the part: correct this or the bore diameter.",
        );
    }
    if let (Some(depth), CutKind::Turning(..)) = (depth, kind) {
        at_most(reader, &t::CUT_DEPTH, at, depth, diameter / 2.0, "A cut cannot go deeper than the axis.");
    }
}
