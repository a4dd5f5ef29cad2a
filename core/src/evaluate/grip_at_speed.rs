//! The grip at speed, as findings.

use alloc::vec::Vec;

use super::gauge;
use super::grip_at_rest::RestGrip;
use super::jaw::top_jaw;
use crate::findings::{Finding, Scene, Step, term};
use crate::grip::{GripRange, RotatingMass, Share, Side, SpinningGrip, centrifugal_moment};
use crate::jaw::BoredJaw;
use crate::quantity::Kind;
use crate::setup::Setup;

/// The grip, at rest and at the set speed.
#[derive(Clone, Copy)]
pub(super) struct Spinning {
    /// The careful grip at rest, with which slip is judged.
    pub(super) careful: SpinningGrip,
    /// Share of the spin force that the part feels.
    pub(super) share: Share,
    /// Least grip at rest, N.
    pub(super) least_at_rest: f64,
    /// Greatest grip at rest, N.
    pub(super) most_at_rest: f64,
    /// Grip at the set speed, N.
    pub(super) at_speed: GripRange,
    /// One top jaw as a lump that turns.
    pub(super) top_jaw: RotatingMass,
    /// Height of its centre of mass above the serrations, m.
    pub(super) centre_height: f64,
}

/// Grip at the set speed, for both ends of what may reach the part.
pub(super) fn tell(
    setup: &Setup,
    jaw: &BoredJaw,
    rest: RestGrip,
    found: &mut Vec<Finding>,
    scene: &mut Scene,
) -> Option<Spinning> {
    let (chuck, side, speed) = (&setup.chuck, setup.grip.side, setup.speed.value);
    let top = top_jaw(setup, jaw);
    let master = RotatingMass { mass: chuck.master_mass.value, radius: chuck.master_radius.value };
    let jaws = f64::from(chuck.jaws);
    let one = centrifugal_moment(&[top, master]).ok()?;
    let refuse = |found: &mut Vec<Finding>| {
        let why = "No grip is left at rest, so there is none at speed.";
        found.push(Finding::refused("grip.speed", "Total grip at speed", Kind::Force, why));
    };
    let [least_share, most_share] = match gauge::spin_share(setup, jaws * one, found) {
        None => [chuck.spin_share_least.value, chuck.spin_share_most.value],
        Some(Ok(measured)) => measured,
        Some(Err(why)) => {
            found.push(Finding::refused("grip.speed", "Total grip at speed", Kind::Force, why));
            return None;
        }
    };
    let share = Share::new(least_share, most_share).ok()?;
    let spun = SpinningGrip::new(rest.least, side, jaws * one, share)
        .and_then(|careful| Ok((careful, careful.centrifugal_force(speed)?, careful.at(speed)?)));
    let most = SpinningGrip::new(rest.most, side, jaws * one, share).and_then(|grip| grip.at(speed));
    let (Ok((careful, force, least)), Ok(most)) = (spun, most) else {
        refuse(found);
        return None;
    };
    found.push(
        Finding::new("spin.force", "Spin force of all jaws", Kind::Force, force).entry("run.speed").step(Step {
            says: "Each jaw with its master jaw, nuts and screws is thrown outward",
            formula: "F_c = J (m r + m_m r_m) ω²",
            given: [
                term("J", jaws, Kind::Plain),
                term("m", top.mass, Kind::Mass),
                term("r", top.radius, Kind::Length),
                term("m_m", master.mass, Kind::Mass),
                term("r_m", master.radius, Kind::Length),
                term("ω", speed, Kind::RotationalSpeed),
            ]
            .into(),
            result: term("F_c", force, Kind::Force),
            source: "VDI 3106:2004 as quoted in secondary literature; Newton's second law",
        }),
    );
    let at_speed = GripRange { lowest: least.lowest, highest: most.highest };
    found.push(speed_finding(setup, rest.least, force, share, at_speed));
    scene.jaw_grip_at_rest = rest.expected / jaws;
    scene.jaw_grip_at_speed = at_speed.lowest / jaws;
    scene.shape_share_at_speed = if rest.most > 0.0 { at_speed.highest / rest.most } else { 0.0 };
    Some(Spinning {
        careful,
        share,
        least_at_rest: rest.least,
        most_at_rest: rest.most,
        at_speed,
        top_jaw: top,
        centre_height: jaw.centroid_height(),
    })
}

/// Share of the grip at rest below which an outside grip at speed is called too little.
pub(super) const LEAST_LEFT: f64 = 1.0 / 3.0;

fn speed_finding(setup: &Setup, rest: f64, force: f64, share: Share, at_speed: GripRange) -> Finding {
    let outside = setup.grip.side == Side::Outside;
    let (formula, k) = if outside { ("F = F₀ − k F_c", share.high()) } else { ("F = F₀ + k F_c", share.low()) };
    let finding = Finding::new("grip.speed", "Total grip at speed", Kind::Force, at_speed.lowest)
        .band(at_speed.lowest, at_speed.highest)
        .entry("run.speed")
        .step(Step {
            says: "For slip, with the share of the spin force that leaves least grip",
            formula,
            given: [term("F₀", rest, Kind::Force), term("k", k, Kind::Plain), term("F_c", force, Kind::Force)].into(),
            result: term("F", at_speed.lowest, Kind::Force),
            source: "VDI 3106:2004 as quoted in secondary literature; share k from part and mechanism as springs in series",
        });
    let finding = if setup.chuck.spun.is_empty() { finding } else { finding.caution(gauge::SHARE_READ) };
    if outside {
        finding.at_least(
            rest * LEAST_LEFT,
            "a third of the grip at rest, which rated speeds leave (EN 1550, DIN 6386 as quoted in manuals)",
        )
    } else {
        finding
    }
}
