//! From entries to a valid set-up, or to every fault there is.

use alloc::vec::Vec;

use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;

use super::chuck::{Chuck, Cylinder, GripFrom};
use super::cut::{Cut, CutKind, FeedWay, Turned};
use super::job::{Grip, JawShape, Jaws, Setup, Weighed};
use super::part::{Part, PartSurface, SurfaceSide};
use super::ranges::Ranges;
use super::read_boring::read_boring;
use super::reader::Reader;
use super::{
    Entries, Fault, agreement, chuck_inputs as c, cut_inputs as t, gauge_inputs as g, indicator_inputs as d,
    jaw_inputs as j, part_inputs as p, profile_inputs as s, read_indicator, read_placing,
};
use crate::grip::Side;
use crate::part::{Profile, Step};
use crate::quantity::{Length, Pressure, Ratio};

impl Setup {
    /// Reads and validates entries.
    ///
    /// # Errors
    /// Every fault found, each naming the entry, its value, what is allowed and what to do.
    ///
    /// ```
    /// use holdround_core::setup::{Entries, Setup};
    /// let mut entries = Entries::default();
    /// assert!(Setup::read(&entries).is_ok(), "all defaults make a valid job");
    /// entries.set("part.length", "-3 mm");
    /// entries.set("chuck.jaws", "7");
    /// assert_eq!(Setup::read(&entries).unwrap_err().len(), 2);
    /// ```
    pub fn read(entries: &Entries) -> Result<Self, Vec<Fault>> {
        let mut reader = Reader::new(entries);
        let name = reader.words(&p::JOB_NAME);
        let grip = read_grip(&mut reader);
        let part = read_part(&mut reader);
        let chuck = read_chuck(&mut reader);
        let jaws = read_jaws(&mut reader);
        let pressure = reader.pressure(&j::PRESSURE, 0);
        let two = reader.choice(&j::PRESSURES, 0) == Some("two");
        let finish = if two { reader.pressure(&j::FINISH_PRESSURE, 0) } else { None };
        let finish_pressure = if two { finish.or(pressure) } else { None };
        let speed = reader.rotation(&j::SPEED);
        let cuts = read_cuts(&mut reader);
        let ranges = Ranges::read(&mut reader);
        let boring = read_boring(&mut reader);
        let placing = read_placing::read(&mut reader, chuck.as_ref(), jaws.as_ref());
        let indicator = read_indicator::read(&mut reader, part.as_ref(), grip.as_ref());
        let whole = (|| {
            Some(Self {
                name: name?,
                part: part?,
                grip: grip?,
                chuck: chuck?,
                jaws: jaws?,
                pressure: pressure?,
                finish_pressure,
                speed: speed?,
                cuts: cuts?,
                ranges: ranges?,
                boring: boring?,
                placing: placing?,
                indicator: indicator?,
                assumed: Vec::new(),
            })
        })();
        if let Some(setup) = &whole {
            agreement::check(setup, &mut reader);
        }
        match whole {
            Some(setup) if reader.faults.is_empty() => Ok(Self { assumed: reader.assumed, ..setup }),
            _ => Err(reader.faults),
        }
    }
}

fn read_part(reader: &mut Reader<'_>) -> Option<Part> {
    let profile = read_profile(reader);
    let stepped = reader.is_chosen(&p::PART_SHAPE, "steps");
    let surfaces: Vec<_> = (0..reader.count("surfaces")).map(|at| read_surface(reader, at)).collect();
    let material = reader.material(&p::PART_MATERIAL);
    let roundness_limit = reader.length(&p::ROUNDNESS_LIMIT);
    let runout_limit = reader.length(&p::RUNOUT_LIMIT);
    let size_limit = reader.length(&p::SIZE_LIMIT);
    let modulus = reader.pressure(&p::PART_MODULUS, 0);
    let yield_stress = reader.pressure(&p::PART_YIELD, 0);
    let resistance = reader.pressure(&p::PART_CUTTING_RESISTANCE, 0);
    let exponent = reader.ratio(&p::PART_CHIP_EXPONENT, 0);
    let material = material?;
    Some(Part {
        profile: profile?,
        stepped,
        surfaces: surfaces.into_iter().collect::<Option<_>>()?,
        material,
        modulus: modulus.unwrap_or_else(|| Pressure::new::<pascal>(material.youngs_modulus.value)),
        yield_stress: yield_stress
            .or_else(|| material.yield_strength.map(|figure| Pressure::new::<pascal>(figure.value))),
        cutting_resistance: resistance
            .or_else(|| material.cutting.map(|cutting| Pressure::new::<pascal>(cutting.specific_force.value))),
        chip_exponent: exponent.or_else(|| material.cutting.map(|cutting| Ratio::new::<ratio>(cutting.exponent.value))),
        roundness_limit: roundness_limit?,
        runout_limit: runout_limit?,
        size_limit,
    })
}

/// The steps of the part; a plain ring is one step.
fn read_profile(reader: &mut Reader<'_>) -> Option<Profile> {
    let stepped = reader.choice(&p::PART_SHAPE, 0)? == "steps";
    let steps: Option<Vec<Step>> = if stepped {
        let steps: Vec<_> = (0..reader.count("steps").max(1)).map(|at| read_step(reader, at)).collect();
        steps.into_iter().collect()
    } else {
        let outside = reader.length(&p::OUTSIDE_DIAMETER);
        let bore = reader.length(&p::BORE_DIAMETER);
        let length = reader.length(&p::PART_LENGTH);
        Some([Step::cylinder(length?.value, outside?.value, bore?.value)].into())
    };
    let steps = steps?;
    match Profile::new(&steps) {
        Ok(profile) => Some(profile),
        Err(error) => {
            agreement::profile(reader, &error, &steps, stepped);
            None
        }
    }
}

fn read_step(reader: &mut Reader<'_>, at: usize) -> Option<Step> {
    let length = reader.item_length(&s::STEP_LENGTH, at);
    let outside = reader.item_length(&s::STEP_OUTSIDE, at);
    let outside_end = reader.item_length(&s::STEP_OUTSIDE_END, at);
    let bore = reader.item_length(&s::STEP_BORE, at);
    let bore_end = reader.item_length(&s::STEP_BORE_END, at);
    let (outside, bore) = (outside?, bore?);
    Some(Step {
        length: length?.value,
        outer: [outside.value, outside_end.unwrap_or(outside).value],
        inner: [bore.value, bore_end.unwrap_or(bore).value],
    })
}

fn read_surface(reader: &mut Reader<'_>, at: usize) -> Option<PartSurface> {
    let name = reader.item_words(&s::SURFACE_NAME, at);
    let side = reader.choice(&s::SURFACE_SIDE, at);
    let from = reader.item_length(&s::SURFACE_FROM, at);
    let to = reader.item_length(&s::SURFACE_TO, at);
    let side = match side? {
        "outside" => SurfaceSide::Outside,
        "bore" => SurfaceSide::Bore,
        _ => SurfaceSide::Face,
    };
    Some(PartSurface { name: name?, side, from: from?, to: to? })
}

fn read_grip(reader: &mut Reader<'_>) -> Option<Grip> {
    let side = reader.choice(&p::GRIP_SIDE, 0);
    // A plain ring is gripped from its end; only steps ask where.
    let stepped = reader.is_chosen(&p::PART_SHAPE, "steps");
    let start = if stepped { reader.length(&p::GRIP_START) } else { Some(Length::new::<meter>(0.0)) };
    let length = reader.length(&p::GRIP_LENGTH);
    let upper_deviation = reader.length(&p::LARGEST_PART);
    let lower_deviation = reader.length(&p::SMALLEST_PART);
    let seat = reader.choice(&p::SEATED, 0);
    let tail = reader.choice(&p::TAIL, 0);
    let thrust = if tail == Some("centre") { reader.force(&p::THRUST, 0) } else { None };
    let friction = reader.ratio(&p::FRICTION, 0);
    let required_hold = reader.ratio(&p::REQUIRED_HOLD, 0);
    Some(Grip {
        side: if side? == "inside" { Side::Inside } else { Side::Outside },
        start: start?,
        length: length?,
        upper_deviation: upper_deviation?,
        lower_deviation: lower_deviation?,
        seated: seat? == "seated",
        thrust,
        friction: friction?,
        required_hold: required_hold?,
    })
}

fn read_chuck(reader: &mut Reader<'_>) -> Option<Chuck> {
    let jaws = reader.choice(&c::JAW_COUNT, 0).and_then(|key| key.parse().ok());
    let body_diameter = reader.length(&c::BODY_DIAMETER);
    let max_speed = reader.rotation(&c::MAX_SPEED);
    let max_grip = reader.force(&c::MAX_GRIP, 0);
    let max_draw = reader.force(&c::MAX_DRAW, 0);
    let max_pressure = reader.pressure(&c::MAX_PRESSURE, 0);
    let reference_height = reader.length(&c::REFERENCE_HEIGHT);
    let max_swing = reader.length(&c::MAX_SWING);
    let grip_from = read_grip_from(reader);
    let gauged = reader.is_chosen(&c::GRIP_FROM, "gauge");
    let behind_gauge = if gauged { Some(read_cylinder(reader)) } else { None };
    let spun: Vec<_> = (0..if gauged { reader.count("spun") } else { 0 })
        .map(|at| reader.item_rotation(&g::SPUN_SPEED, at).zip(reader.force(&g::SPUN_GRIP, at)))
        .collect();
    if !gauged {
        reader.adopted(&c::CONDITION, &d::ADOPTED);
    }
    reader.adopted(&c::TILT_STIFFNESS, &d::ADOPTED_TILT);
    let master_mass = reader.mass(&c::MASTER_MASS);
    let master_radius = reader.length(&c::MASTER_RADIUS);
    let tilt_stiffness = reader.plain(&c::TILT_STIFFNESS);
    let radial_stiffness = reader.plain(&c::RADIAL_STIFFNESS);
    let spin_share_least = reader.ratio(&c::SPIN_SHARE_LEAST, 0);
    let spin_share_most = reader.ratio(&c::SPIN_SHARE_MOST, 0);
    Some(Chuck {
        jaws: jaws?,
        body_diameter: body_diameter?,
        max_speed: max_speed?,
        max_grip: max_grip?,
        max_draw: max_draw?,
        max_pressure: max_pressure?,
        reference_height: reference_height?,
        max_swing,
        grip_from: grip_from?,
        behind_gauge: match behind_gauge {
            Some(cylinder) => Some(cylinder?),
            None => None,
        },
        spun: spun.into_iter().collect::<Option<_>>()?,
        master_mass: master_mass?,
        master_radius: master_radius?,
        tilt_stiffness: tilt_stiffness?,
        radial_stiffness: radial_stiffness?,
        spin_share_least: spin_share_least?,
        spin_share_most: spin_share_most?,
    })
}

fn read_grip_from(reader: &mut Reader<'_>) -> Option<GripFrom> {
    match reader.choice(&c::GRIP_FROM, 0)? {
        "plate" => {
            let cylinder = read_cylinder(reader);
            let condition = reader.ratio(&c::CONDITION, 0);
            Some(GripFrom::Plate { cylinder: cylinder?, condition: condition? })
        }
        "chart" => {
            let pressure = reader.pressure(&c::CHART_PRESSURE, 0);
            let grip = reader.force(&c::CHART_GRIP, 0);
            let condition = reader.ratio(&c::CONDITION, 0);
            Some(GripFrom::Chart { pressure: pressure?, grip: grip?, condition: condition? })
        }
        _ => {
            // Two readings make a line; fewer are asked for by name.
            let readings: Vec<_> = (0..reader.count("gauge").max(2))
                .map(|at| (reader.pressure(&g::GAUGE_PRESSURE, at), reader.force(&g::GAUGE_GRIP, at)))
                .collect();
            readings
                .into_iter()
                .map(|(pressure, grip)| Some((pressure?, grip?)))
                .collect::<Option<_>>()
                .map(GripFrom::Gauge)
        }
    }
}

fn read_cylinder(reader: &mut Reader<'_>) -> Option<Cylinder> {
    let bore = reader.length(&c::CYLINDER_BORE);
    let rod = reader.length(&c::CYLINDER_ROD);
    let side = reader.choice(&c::CYLINDER_SIDE, 0);
    let efficiency = reader.ratio(&c::CYLINDER_EFFICIENCY, 0);
    Some(Cylinder { bore: bore?, rod: rod?, rod_side: side? == "rod", efficiency: efficiency? })
}

fn read_jaws(reader: &mut Reader<'_>) -> Option<Jaws> {
    let shape = match reader.choice(&j::JAW_KIND, 0) {
        Some("ordinary") => reader.length(&j::JAW_WIDTH).map(JawShape::Ordinary),
        Some("wide") => reader.angle(&j::JAW_ANGLE, 0).map(JawShape::Wide),
        Some(_) => reader.length(&j::SAW_CUT).map(JawShape::Pie),
        None => None,
    };
    let material = reader.material(&j::JAW_MATERIAL);
    let length = reader.length(&j::JAW_LENGTH);
    let height = reader.length(&j::JAW_HEIGHT);
    let step = reader.length(&j::JAW_STEP);
    let bored_diameter = reader.length(&j::BORED_DIAMETER);
    let taper = reader.length(&j::TAPER);
    let boring_pressure = reader.pressure(&j::BORING_PRESSURE, 0);
    let ring_height = reader.length(&j::RING_HEIGHT);
    let weighed = match reader.choice(&j::JAW_MASS_FROM, 0)? {
        "weighed" => {
            let mass = reader.mass(&j::JAW_MASS);
            let radius = reader.length(&j::JAW_MASS_RADIUS);
            Some(Weighed { mass: mass?, radius })
        }
        _ => None,
    };
    Some(Jaws {
        shape: shape?,
        material: material?,
        length: length?,
        height: height?,
        step: step?,
        bored_diameter,
        taper: taper?,
        boring_pressure,
        ring_height: ring_height?,
        weighed,
    })
}

fn read_cuts(reader: &mut Reader<'_>) -> Option<Vec<Cut>> {
    let cuts: Vec<_> = (0..reader.count("cuts").max(1)).map(|at| read_cut(reader, at)).collect();
    cuts.into_iter().collect()
}

fn read_cut(reader: &mut Reader<'_>, at: usize) -> Option<Cut> {
    let key = reader.choice(&t::CUT_KIND, at)?;
    let two = reader.is_chosen(&j::PRESSURES, "two");
    let finishing = two && reader.choice(&t::CUT_STAGE, at) == Some("finish");
    let distance = reader.item_length(&t::CUT_DISTANCE, at);
    let kind = match key {
        "turning" => {
            let turned = read_turned(reader, at);
            let way = read_feed_way(reader, at);
            turned.zip(way).map(|(turned, way)| CutKind::Turning(turned, way))
        }
        "boring" => {
            let turned = read_turned(reader, at);
            let way = read_feed_way(reader, at);
            turned.zip(way).map(|(turned, way)| CutKind::Boring(turned, way))
        }
        "facing" => read_turned(reader, at).map(CutKind::Facing),
        "grooving" => read_grooving(reader, at),
        "drilling" => {
            let drill = reader.item_length(&t::DRILL_DIAMETER, at);
            let feed = reader.item_length(&t::CUT_FEED, at);
            let wear = reader.ratio(&t::WEAR, at);
            Some(CutKind::Drilling { drill: drill?, feed: feed?, wear: wear? })
        }
        _ => read_power(reader, at),
    };
    Some(Cut { kind: kind?, finishing, distance: distance? })
}

fn read_turned(reader: &mut Reader<'_>, at: usize) -> Option<Turned> {
    let diameter = reader.item_length(&t::CUT_DIAMETER, at);
    let depth = reader.item_length(&t::CUT_DEPTH, at);
    let feed = reader.item_length(&t::CUT_FEED, at);
    let approach = reader.angle(&t::APPROACH_ANGLE, at);
    let feed_share = reader.ratio(&t::FEED_SHARE, at);
    let passive_share = reader.ratio(&t::PASSIVE_SHARE, at);
    let wear = reader.ratio(&t::WEAR, at);
    Some(Turned {
        diameter: diameter?,
        depth: depth?,
        feed: feed?,
        approach: approach?,
        feed_share: feed_share?,
        passive_share: passive_share?,
        wear: wear?,
    })
}

fn read_feed_way(reader: &mut Reader<'_>, at: usize) -> Option<FeedWay> {
    let key = reader.choice(&t::FEED_WAY, at)?;
    Some(if key == "away" { FeedWay::Away } else { FeedWay::Toward })
}

fn read_grooving(reader: &mut Reader<'_>, at: usize) -> Option<CutKind> {
    let diameter = reader.item_length(&t::CUT_DIAMETER, at);
    let width = reader.item_length(&t::CUT_WIDTH, at);
    let feed = reader.item_length(&t::CUT_FEED, at);
    let feed_share = reader.ratio(&t::FEED_SHARE, at);
    let wear = reader.ratio(&t::WEAR, at);
    Some(CutKind::Grooving { diameter: diameter?, width: width?, feed: feed?, feed_share: feed_share?, wear: wear? })
}

fn read_power(reader: &mut Reader<'_>, at: usize) -> Option<CutKind> {
    let diameter = reader.item_length(&t::CUT_DIAMETER, at);
    let power = reader.power(&t::CUT_POWER, at);
    let feed_share = reader.ratio(&t::FEED_SHARE, at);
    let passive_share = reader.ratio(&t::PASSIVE_SHARE, at);
    let feed_way = read_feed_way(reader, at);
    Some(CutKind::Power {
        diameter: diameter?,
        power: power?,
        feed_share: feed_share?,
        passive_share: passive_share?,
        feed_way: feed_way?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_assumed_job_can_be_gripped_either_way_by_any_jaws() {
        for side in ["outside", "inside"] {
            for kind in ["ordinary", "wide", "pie"] {
                // Five wide jaws of the assumed 90 degrees do not go around any part.
                let most = if kind == "wide" { 4 } else { 6 };
                for jaws in 2..=most {
                    let mut entries = Entries::default();
                    entries.set("grip.side", side);
                    entries.set("jaws.kind", kind);
                    entries.set("chuck.jaws", &alloc::format!("{jaws}"));
                    let faults = Setup::read(&entries).err();
                    assert!(faults.is_none(), "{side} grip, {jaws} {kind} jaws: {faults:?}");
                }
            }
        }
    }
}
