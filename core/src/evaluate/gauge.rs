//! What a grip gauge tells of the chuck itself: its condition, and what of the spin force the part feels.

use alloc::vec::Vec;

use super::grip_at_rest::{CONFIDENCE, RestGrip, why};
use crate::findings::{Finding, Step, term};
use crate::grip::{Cylinder, PistonFace, Plate, SpinLine, SpinReading};
use crate::quantity::Kind;
use crate::setup::Setup;
use crate::text::Text;

/// Said wherever grip at speed hangs on it.
pub(super) const SHARE_READ: &str =
    "What the spin takes or gives is from readings of a grip gauge at speed, not from the plate.";

/// The chuck's condition: what the gauge reads over what plate and cylinder promise.
pub(super) fn condition(
    setup: &Setup,
    plate: &Plate,
    behind: &crate::setup::Cylinder,
    rest: &RestGrip,
) -> Option<Finding> {
    let face = if behind.rod_side { PistonFace::Rod } else { PistonFace::Full };
    let cylinder = Cylinder { bore: behind.bore.value, rod: behind.rod.value };
    let draw = cylinder.draw_force(setup.pressure.value, face, behind.efficiency.value).ok()?;
    let promised = plate.grip(draw, 1.0).ok()?;
    let [ratio, least, most] = [rest.expected, rest.least, rest.most].map(|grip| grip / promised);
    let finding = Finding::new("gauge.condition", "Condition of the chuck by its gauge", Kind::Plain, ratio)
        .entry("chuck.grip_from")
        .caution(if most < 0.7 {
            "Far below its plate: grease it, work it through its stroke, and read again before you rely on it."
        } else if least > 1.1 {
            "Above its plate: the cylinder, its pressure gauge or the plate is not as entered. Check them."
        } else {
            "The gauge readings are used for the grip, at rest and at speed, in place of plate and cylinder."
        })
        .step(Step {
            says: "Grip by the gauge over what cylinder and plate promise at this pressure for a chuck as tested when new",
            formula: "c = F₀ / (F_d (F_max / F_d,max))",
            given: [term("F₀", rest.expected, Kind::Force), term("F_d", draw, Kind::Force)].into(),
            result: term("c", ratio, Kind::Plain),
            source: "definition; the interval is that of the gauge line",
        });
    Some(if least < most { finding.band(least, most) } else { finding })
}

/// The ends of the share of the spin force that readings at speed leave; none if there are none, or why they tell none.
/// `moment` is that of all jaws, kg m.
pub(super) fn spin_share(setup: &Setup, moment: f64, found: &mut Vec<Finding>) -> Option<Result<[f64; 2], Text>> {
    if setup.chuck.spun.is_empty() {
        return None;
    }
    let spun = setup.chuck.spun.iter();
    let readings: Vec<SpinReading> =
        spun.map(|(speed, grip)| SpinReading { speed: speed.value, grip: grip.value }).collect();
    let fitted = SpinLine::fit(&readings, setup.grip.side).and_then(|line| Ok((line, line.coefficient(CONFIDENCE)?)));
    let (line, coefficient) = match fitted {
        Ok(fitted) => fitted,
        Err(error) => return Some(Err(why(&error))),
    };
    let share = coefficient.value / moment;
    // Without scatter nothing narrows it: half as much and half as much again, our own choice.
    let half = coefficient.half_width.map_or(0.5 * libm::fabs(share), |half| half / moment);
    let (least, most) = (share - half, share + half);
    let name = "Share of the spin force that the part feels, by the gauge";
    if !(least <= 1.0 && most >= 0.0) {
        let why = if most < 0.0 {
            "The gauge readings at speed change the wrong way for this grip. Read them again, clamped anew before each."
        } else {
            "By the gauge the spin changes the grip by more than all of the jaws' spin force. Weigh the jaws, or correct their sizes or the master jaw; until then no grip at speed is told."
        };
        found.push(Finding::refused("gauge.spin_share", name, Kind::Plain, why).entry("chuck.master_mass"));
        return Some(Err(why.into()));
    }
    let ends = [least.max(0.0), most.min(1.0)];
    let finding = Finding::new("gauge.spin_share", name, Kind::Plain, share).band(ends[0], ends[1]).step(Step {
        says: "Straight line of least squares through grip against the square of speed; its slope over the jaws' own",
        formula: "k = |dF / d(ω²)| / M_c",
        given: [
            term("F at standstill", line.at_rest(), Kind::Force),
            term("scatter", line.residual_deviation().unwrap_or(0.0), Kind::Force),
            term("M_c, kg m", moment, Kind::Plain),
        ]
        .into(),
        result: term("k", share, Kind::Plain),
        source: "linear regression with the interval of its slope: S. M. Ross, Introduction to Probability and Statistics for Engineers and Scientists, from memory",
    });
    found.push(match coefficient.half_width {
        Some(_) => finding
            .caution("It holds for these jaws at about this diameter, and replaces the shares entered with the chuck."),
        None => finding.caution(
            "Two readings always make a line: it is taken for good to half of itself, our own choice. A third tells.",
        ),
    });
    Some(Ok(ends))
}
