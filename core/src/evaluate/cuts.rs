//! Each cut's load, as findings.

use alloc::format;
use alloc::vec::Vec;

use crate::cutting::{
    AxialFeed, Boring, Cut as CuttingCut, CuttingError, Directions, Drilling, Facing, ForceRatios, Grooving, Operation,
    RadialFeed, SpecificForce, SpindlePower, Surface, ToolPosition, Turning, twist_drill_thrust_ratio,
};
use crate::findings::{Finding, Step, Term, term};
use crate::quantity::Kind;
use crate::setup::{Cut, CutKind, FeedWay, Setup, Turned};
use crate::text::Text;

/// Point angle of the usual twist drill, rad (118°: common practice, no source).
const DRILL_POINT: f64 = 118.0 * core::f64::consts::PI / 180.0;
/// Chip thickness and width for which kc1.1 is given, m.
const UNIT_CHIP: f64 = 1e-3;

/// The cut in the terms of the cutting engine.
pub(super) fn load(setup: &Setup, cut: &Cut) -> Result<CuttingCut, CuttingError> {
    let material = SpecificForce {
        kc11: setup.part.cutting_resistance.map_or(0.0, |kc| kc.value),
        mc: setup.part.chip_exponent.map_or(0.0, |mc| mc.value),
    };
    let z = cut.distance.value;
    let edge = |turned: &Turned| {
        (
            turned.wear.value,
            ForceRatios { feed: turned.feed_share.value, passive: turned.passive_share.value },
            ToolPosition { radius: turned.diameter.value / 2.0, z },
        )
    };
    let (operation, (correction, ratios, tool)) = match &cut.kind {
        CutKind::Turning(turned, way) => {
            let Turned { depth, feed, approach, .. } = turned;
            let (depth, feed, approach) = (depth.value, feed.value, approach.value);
            (Operation::Turning(Turning { depth, feed, approach, direction: axial(*way) }), edge(turned))
        }
        CutKind::Boring(turned, way) => {
            let Turned { depth, feed, approach, .. } = turned;
            let (depth, feed, approach) = (depth.value, feed.value, approach.value);
            (Operation::Boring(Boring { depth, feed, approach, direction: axial(*way) }), edge(turned))
        }
        CutKind::Facing(turned) => {
            let Turned { depth, feed, approach, .. } = turned;
            let (depth, feed, approach) = (depth.value, feed.value, approach.value);
            (Operation::Facing(Facing { depth, feed, approach, direction: RadialFeed::Inward }), edge(turned))
        }
        CutKind::Grooving { diameter, width, feed, feed_share, wear } => (
            Operation::Grooving(Grooving { width: width.value, feed: feed.value, surface: Surface::Outside }),
            (
                wear.value,
                ForceRatios { feed: feed_share.value, passive: 0.0 },
                ToolPosition { radius: diameter.value / 2.0, z },
            ),
        ),
        CutKind::Drilling { drill, feed, wear } => (
            Operation::Drilling(Drilling {
                diameter: drill.value,
                pilot: 0.0,
                feed: feed.value,
                point_angle: DRILL_POINT,
            }),
            (
                wear.value,
                ForceRatios { feed: twist_drill_thrust_ratio(DRILL_POINT), passive: 0.0 },
                ToolPosition { radius: 0.0, z },
            ),
        ),
        CutKind::Power { diameter, power, feed_share, passive_share, feed_way } => (
            Operation::SpindlePower(SpindlePower {
                power: power.value,
                efficiency: 1.0,
                angular_speed: setup.speed.value,
                directions: Directions::Turning(axial(*feed_way)),
            }),
            (
                1.0,
                ForceRatios { feed: feed_share.value, passive: passive_share.value },
                ToolPosition { radius: diameter.value / 2.0, z },
            ),
        ),
    };
    // What the force is checked for once, load and hold need not ask again.
    let cutting = CuttingCut { operation, material, correction, ratios, tool };
    cutting.forces().map(|_| cutting)
}

fn axial(way: FeedWay) -> AxialFeed {
    match way {
        FeedWay::Toward => AxialFeed::TowardChuck,
        FeedWay::Away => AxialFeed::AwayFromChuck,
    }
}

pub(super) fn tell_forces(
    setup: &Setup,
    at: usize,
    name: &Text,
    cut: &Cut,
    cutting: &CuttingCut,
    found: &mut Vec<Finding>,
) {
    let Ok(forces) = cutting.forces() else { return };
    let force = Finding::new(
        format!("cuts.{at}.force"),
        Text::of("{}: cutting force").with(name.clone()),
        Kind::Force,
        forces.cutting,
    );
    found.push(match forces.chip {
        Some(chip) => force.step(kienzle(cutting, chip.width, chip.thickness, forces.cutting)),
        None => force.step(Step {
            says: "The force that takes this power at this diameter and speed",
            formula: "F_c = P / (ω r)",
            given: power_terms(setup, cut),
            result: term("F_c", forces.cutting, Kind::Force),
            source: "power is force times speed",
        }),
    });
    let torque = forces.torque;
    found.push(
        Finding::new(
            format!("cuts.{at}.torque"),
            Text::of("{}: torque on the part").with(name.clone()),
            Kind::Torque,
            torque,
        )
        .step(Step {
            says: "Cutting force times the radius at which it acts",
            formula: "M = F_c r",
            given: [
                term("F_c", forces.cutting, Kind::Force),
                term("r", torque / forces.cutting.max(f64::MIN_POSITIVE), Kind::Length),
            ]
            .into(),
            result: term("M", torque, Kind::Torque),
            source: "definition of torque",
        }),
    );
    let power = forces.torque * setup.speed.value;
    found.push(
        Finding::new(
            format!("cuts.{at}.power"),
            Text::of("{}: power at the cut").with(name.clone()),
            Kind::Power,
            power,
        )
        .step(Step {
            says: "Torque times speed; the drive needs more by its own losses",
            formula: "P = M ω",
            given: [term("M", forces.torque, Kind::Torque), term("ω", setup.speed.value, Kind::RotationalSpeed)].into(),
            result: term("P", power, Kind::Power),
            source: "definition of power",
        }),
    );
}

fn kienzle(cutting: &CuttingCut, width: f64, thickness: f64, force: f64) -> Step {
    let drilling = matches!(cutting.operation, Operation::Drilling(_));
    Step {
        says: if drilling {
            "Kienzle's rule for both lips, with the allowance for wear"
        } else {
            "Kienzle's rule, with the allowance for wear"
        },
        formula: if drilling {
            "F_c = 2 k_c1.1 b h (h / 1 mm)^(−m_c) w"
        } else {
            "F_c = k_c1.1 b h (h / 1 mm)^(−m_c) w"
        },
        given: [
            term("k_c1.1", cutting.material.kc11, Kind::Stress),
            term("b", width, Kind::Length),
            term("h", thickness, Kind::Length),
            term("h / 1 mm", thickness / UNIT_CHIP, Kind::Plain),
            term("m_c", cutting.material.mc, Kind::Plain),
            term("w", cutting.correction, Kind::Plain),
        ]
        .into(),
        result: term("F_c", force, Kind::Force),
        source: "Kienzle 1952, as in Klocke, Fertigungsverfahren 1, from memory",
    }
}

fn power_terms(setup: &Setup, cut: &Cut) -> Vec<Term> {
    match &cut.kind {
        CutKind::Power { power, diameter, .. } => [
            term("P", power.value, Kind::Power),
            term("ω", setup.speed.value, Kind::RotationalSpeed),
            term("r", diameter.value / 2.0, Kind::Length),
        ]
        .into(),
        _ => Vec::new(),
    }
}

pub(super) fn name_of(kind: &CutKind) -> &'static str {
    match kind {
        CutKind::Turning(..) => "turning",
        CutKind::Facing(..) => "facing",
        CutKind::Boring(..) => "boring",
        CutKind::Grooving { .. } => "grooving",
        CutKind::Drilling { .. } => "drilling",
        CutKind::Power { .. } => "from spindle power",
    }
}

pub(super) fn why(error: &CuttingError) -> Text {
    match error {
        CuttingError::Speed => "A cut given by its power needs a turning spindle.".into(),
        other => Text::of("The cut has no force: {}.").with(other),
    }
}
