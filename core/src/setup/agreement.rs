//! Whether the entries of a set-up agree with each other.

use super::chuck::GripFrom;
use super::cut::CutKind;
use super::fault::range_words;
use super::job::Setup;
use super::reader::Reader;
use super::{
    Input, chuck_inputs as c, cut_inputs as t, gauge_inputs as g, jaw_inputs as j, part_inputs as p,
    profile_inputs as s,
};
use crate::grip::Side;
use crate::jaw::{BoredJaw, Dimension, JawError};
use crate::part::{LARGEST_DIAMETER, MAX_STEPS, ProfileError, Step, THINNEST_WALL};
use crate::quantity::decimal;
use crate::text::Text;

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
        let (least, most) = (-setup.grip.length.value, setup.overhang());
        // A grip that reaches beyond the part is told by itself, and leaves no place to name.
        if most < -1e-9 {
            continue;
        }
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

fn at_most(reader: &mut Reader<'_>, input: &Input, at: usize, value: f64, most: f64, remedy: &'static str) {
    // One part in a billion is rounding of unit conversions, not a fault.
    if value > most * (1.0 + 1e-9) {
        let allowed = Text::of("at most {}").with(Text::quantity(most, reader.unit_of(input, at)));
        reader.conflict(input, at, allowed, remedy);
    }
}

/// Tells why the steps make no part, at the entry that is easiest to put right.
pub(super) fn profile(reader: &mut Reader<'_>, error: &ProfileError, steps: &[Step], stepped: bool) {
    let (input, at, allowed, remedy) = match *error {
        ProfileError::NoSteps | ProfileError::TooManySteps { .. } => {
            (&s::STEP_LENGTH, 0, Text::of("1 to {} steps").with(MAX_STEPS), "Leave out what hardly matters.")
        }
        ProfileError::NotADimension { step } => (
            &s::STEP_OUTSIDE,
            step,
            Text::of("up to {} m").with(Text::number(decimal(LARGEST_DIAMETER, 3))),
            "Correct this step.",
        ),
        ProfileError::NoLength { step } => {
            (&s::STEP_LENGTH, step, "at least 1/2000 of the diameter".into(), "Make this step longer, or take it out.")
        }
        ProfileError::Crossed { step } | ProfileError::TooThin { step, .. } => {
            let bore = if stepped { &s::STEP_BORE } else { &p::BORE_DIAMETER };
            let outside = steps.get(step).map_or(0.0, |step| step.outer[0].max(step.outer[1]));
            let least = Text::quantity(outside / 2.0 * THINNEST_WALL, reader.unit_of(bore, step));
            let allowed = Text::of("a wall of at least {}, 1/150 of the outside radius").with(least);
            (&s::STEP_BORE, step, allowed, "Make the bore smaller or the outside larger.")
        }
        ProfileError::Gap { step } => {
            let allowed = Text::of("metal shared with step {}").with(step);
            (
                &s::STEP_BORE,
                step,
                allowed,
                "This step does not hang together with the one before it: correct a diameter of either.",
            )
        }
    };
    let (input, at) = match (stepped, error) {
        (true, _) => (input, at),
        (false, ProfileError::NoLength { .. }) => (&p::PART_LENGTH, 0),
        (false, ProfileError::NotADimension { .. }) => (&p::OUTSIDE_DIAMETER, 0),
        (false, _) => (&p::BORE_DIAMETER, 0),
    };
    reader.conflict(input, at, allowed, remedy);
}

fn check_part(setup: &Setup, reader: &mut Reader<'_>) {
    for (at, surface) in setup.part.surfaces.iter().enumerate() {
        let (from, to) = (surface.from.value, surface.to.value);
        at_most(reader, &s::SURFACE_TO, at, to, setup.part.length(), "The surface must be on the part.");
        at_most(reader, &s::SURFACE_FROM, at, from, to, "A surface starts before it ends.");
    }
    let (lower, upper) = (setup.grip.lower_deviation.value, setup.grip.upper_deviation.value);
    if lower > upper {
        let allowed = Text::of("at most {}").with(Text::quantity(upper, reader.unit_of(&p::SMALLEST_PART, 0)));
        reader.conflict(&p::SMALLEST_PART, 0, allowed, "The lower deviation cannot be above the upper one.");
    }
}

fn check_grip(setup: &Setup, reader: &mut Reader<'_>) {
    let (start, length) = (setup.grip.start.value, setup.grip.length.value);
    let left = setup.part.length() - start;
    if left <= 0.0 {
        at_most(reader, &p::GRIP_START, 0, start, setup.part.length() * 0.999, "The grip must start on the part.");
        return;
    }
    at_most(
        reader,
        &p::GRIP_LENGTH,
        0,
        length,
        left,
        "The jaws cannot hold more than the part is long from where the grip starts.",
    );
    let radius = setup.gripped_radius();
    if setup.grip.side == Side::Inside && radius * 2.0 < SMALLEST_GRIPPED_BORE {
        let bore = if setup.part.profile.steps().len() > 1 { &p::GRIP_START } else { &p::BORE_DIAMETER };
        let least = Text::quantity(SMALLEST_GRIPPED_BORE, reader.unit_of(bore, 0));
        let allowed = Text::of("a bore of at least {} for an inside grip").with(least);
        reader.conflict(bore, 0, allowed, "Grip the outside, or correct the bore.");
    }
    if let Some(why) = setup.no_centre().filter(|_| setup.grip.thrust.is_some()) {
        reader.conflict(&p::TAIL, 0, "no tail support", why);
    }
    check_band(setup, radius, reader);
    check_reach(setup, radius, reader);
}

/// The gripped band must be one cylinder.
fn check_band(setup: &Setup, radius: f64, reader: &mut Reader<'_>) {
    let (start, end) = (setup.grip.start.value, (setup.grip.start + setup.grip.length).value);
    let mut from = 0.0;
    for step in setup.part.profile.steps() {
        let to = from + step.length;
        let rounding = 1e-9 * to;
        let ends = if setup.grip.side == Side::Outside { step.outer } else { step.inner };
        let touched = to > start + rounding && from < end - rounding;
        if touched && ends.iter().any(|diameter| (diameter / 2.0 - radius).abs() > 1e-7 * radius) {
            let unit = reader.unit_of(&p::GRIP_LENGTH, 0);
            let allowed =
                Text::of("a length over which the gripped diameter stays {}").with(Text::quantity(2.0 * radius, unit));
            reader.conflict(
                &p::GRIP_LENGTH,
                0,
                allowed,
                "The diameter changes within the grip: shorten it, or start it elsewhere.",
            );
            return;
        }
        from = to;
    }
}

/// What lies behind the grip must leave room for the jaw's step.
fn check_reach(setup: &Setup, radius: f64, reader: &mut Reader<'_>) {
    let start = setup.grip.start.value;
    if start <= 1e-9 * setup.part.length() {
        return;
    }
    let mut from = 0.0;
    let mut room = f64::INFINITY;
    for step in setup.part.profile.steps() {
        if from < start * (1.0 - 1e-9) {
            for end in 0..2 {
                room = room.min(match setup.grip.side {
                    Side::Outside => radius - step.outer[end] / 2.0,
                    Side::Inside => step.inner[end] / 2.0 - radius,
                });
            }
        }
        from += step.length;
    }
    if setup.jaws.step.value > room + 1e-9 * radius {
        let allowed = Text::of("at most {}").with(Text::quantity(room.max(0.0), reader.unit_of(&j::JAW_STEP, 0)));
        let remedy = "The part behind the grip is in the way of the jaws: use a smaller step under the part, or start the grip elsewhere.";
        reader.conflict(&j::JAW_STEP, 0, allowed, remedy);
    }
}

fn check_jaws(setup: &Setup, reader: &mut Reader<'_>) {
    let Err(error) = BoredJaw::new(setup.jaw()) else { return };
    // Where there is no bore to grip in, that is told at the bore.
    if setup.grip.side == Side::Inside && setup.gripped_radius() * 2.0 < SMALLEST_GRIPPED_BORE {
        return;
    }
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
        JawError::NothingBehindFace { limit, .. } => Text::of("more than {}").with(Text::quantity(limit, unit)),
        JawError::CrossesAxis { .. } if setup.grip.side == Side::Inside => {
            Text::of("at most {}").with(Text::quantity(setup.gripped_radius() + setup.jaws.step.value, unit))
        }
        JawError::WiderThanGrip { limit, .. }
        | JawError::BoredThrough { limit, .. }
        | JawError::CrossesAxis { limit, .. }
        | JawError::Overlap { limit, .. }
        | JawError::CutAway { limit, .. } => Text::of("less than {}").with(Text::quantity(limit, unit)),
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
    if let Some(finish) = setup.finish_pressure {
        let remedy = "Finish at no more than the pressure for roughing, or mark the cuts the other way round.";
        at_most(reader, &j::FINISH_PRESSURE, 0, finish.value, setup.pressure.value, remedy);
    }
    let (least, most) = (setup.chuck.spin_share_least.value, setup.chuck.spin_share_most.value);
    at_most(reader, &c::SPIN_SHARE_LEAST, 0, least, most, "The least share cannot be more than the greatest.");
    let cylinder = match &setup.chuck.grip_from {
        GripFrom::Plate { cylinder, .. } => Some(cylinder),
        _ => setup.chuck.behind_gauge.as_ref(),
    };
    if let Some(cylinder) = cylinder.filter(|cylinder| cylinder.rod_side) {
        let most = cylinder.bore.value * 0.95;
        at_most(
            reader,
            &c::CYLINDER_ROD,
            0,
            cylinder.rod.value,
            most,
            "The rod must leave area for the oil to act on.",
        );
    }
    if let GripFrom::Gauge(readings) = &setup.chuck.grip_from {
        let lowest = readings.iter().map(|(pressure, _)| pressure.value).fold(f64::INFINITY, f64::min);
        let highest = readings.iter().map(|(pressure, _)| pressure.value).fold(0.0, f64::max);
        if highest < 1.05 * lowest {
            reader.conflict(
                &g::GAUGE_PRESSURE,
                1,
                "readings at two pressures at least 5 % apart",
                "Read the gauge at another pressure too.",
            );
        }
    }
    let spun = setup.chuck.spun.iter().map(|(speed, _)| speed.value);
    if setup.chuck.spun.is_empty() {
        return;
    }
    let (slowest, fastest) = (spun.clone().fold(f64::INFINITY, f64::min), spun.fold(0.0, f64::max));
    if fastest <= 1.2 * slowest {
        reader.conflict(
            &g::SPUN_SPEED,
            setup.chuck.spun.len() - 1,
            "readings at two speeds at least 20 % apart",
            "Read the gauge at standstill too, or take these readings out.",
        );
    }
}

fn check_cut(setup: &Setup, kind: &CutKind, at: usize, reader: &mut Reader<'_>) {
    let (outside, bore) = (setup.part.largest_outside(), setup.part.smallest_bore());
    let needs_resistance = !matches!(kind, CutKind::Power { .. });
    if needs_resistance && at == 0 && (setup.part.cutting_resistance.is_none() || setup.part.chip_exponent.is_none()) {
        let unknown =
            if setup.part.cutting_resistance.is_none() { &p::PART_CUTTING_RESISTANCE } else { &p::PART_CHIP_EXPONENT };
        reader.conflict(
            unknown,
            0,
            "a figure of your own",
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
        let floor =
            Text::of("more than 0 and at least {}").with(Text::quantity(bore, reader.unit_of(&t::CUT_DIAMETER, at)));
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

#[cfg(test)]
mod tests;
