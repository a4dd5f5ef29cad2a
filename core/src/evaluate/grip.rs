//! The jaws, and the grip at rest and at speed, as findings.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use uom::si::pressure::pascal;

use super::gauge;
use crate::findings::{Finding, Scene, Step, term};
use crate::grip::{
    ChartPoint, Cylinder, GripError, GripLine, GripRange, PistonFace, Plate, Reading, RotatingMass, Share, Side,
    SpinningGrip, centrifugal_moment,
};
use crate::jaw::BoredJaw;
use crate::quantity::{Force, Kind, Pressure};
use crate::setup::chuck_inputs::CONDITION;
use crate::setup::{GripFrom, Setup};

/// Confidence of the band about a line through gauge readings.
pub(super) const CONFIDENCE: f64 = 0.95;
/// How far beyond the readings their line is trusted, as a share of their span.
pub(super) const BEYOND_READINGS: f64 = 0.25;

/// Total grip at rest: what is expected, and the ends of its band.
#[derive(Clone, Copy)]
pub(super) struct RestGrip {
    pub(super) expected: f64,
    pub(super) least: f64,
    pub(super) most: f64,
}

impl RestGrip {
    /// The grip of a chuck that grips `factor` times as well.
    pub(super) fn times(self, factor: f64) -> Self {
        Self { expected: self.expected * factor, least: self.least * factor, most: self.most * factor }
    }
}

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

/// The bored jaw, its mass and its swing.
pub(super) fn jaw(setup: &Setup, found: &mut Vec<Finding>, scene: &mut Scene) -> Option<BoredJaw> {
    let jaw = match BoredJaw::new(setup.jaw()) {
        Ok(jaw) => jaw,
        Err(error) => {
            let why = format!("These jaws cannot be: {error}.");
            found.push(Finding::refused("jaw.mass", "Mass of one top jaw", Kind::Mass, why));
            return None;
        }
    };
    scene.contact_half_angle = jaw.contact_half_angle();
    scene.jaw_inner_radius = jaw.inner_radius();
    scene.jaw_outer_radius = jaw.outer_radius();
    scene.swing_radius = jaw.swing_radius();
    let density = setup.jaws.material.density.value;
    let mass = top_jaw(setup, &jaw);
    found.push(match setup.jaws.weighed {
        Some(_) => Finding::new("jaw.mass", "Mass of one top jaw, weighed", Kind::Mass, mass.mass).step(Step {
            says: "As typed",
            formula: "m",
            given: Vec::new(),
            result: term("m", mass.mass, Kind::Mass),
            source: "the scales",
        }),
        None => Finding::new("jaw.mass", "Mass of one top jaw", Kind::Mass, mass.mass)
            .caution("Screw holes are not taken off. Weigh the jaw to be sure.")
            .step(Step {
                says: "Volume of the jaw as bored, times its density",
                formula: "m = ρ V",
                given: [term("ρ", density, Kind::Density), term("height", setup.jaws.height.value, Kind::Length)]
                    .into(),
                result: term("m", mass.mass, Kind::Mass),
                source: "geometry of the solid",
            }),
    });
    let arc = 2.0 * jaw.contact_half_angle();
    found.push(Finding::new("jaw.wrap", "Angle over which one jaw touches", Kind::Angle, arc).step(Step {
        says: "Where the bored circle leaves the sides of the jaw",
        formula: "2 β",
        given:
            [term("R", setup.gripped_radius(), Kind::Length), term("β", jaw.contact_half_angle(), Kind::Angle)].into(),
        result: term("2 β", arc, Kind::Angle),
        source: "geometry of the solid",
    }));
    let swing = 2.0 * jaw.swing_radius();
    let swing = Finding::new("jaw.swing", "Swing of the jaws, on diameter", Kind::Length, swing).step(Step {
        says: "Circle of the farthest corner of a jaw, where it grips",
        formula: "D = 2 r_corner",
        given: [term("r_corner", jaw.swing_radius(), Kind::Length)].into(),
        result: term("D", swing, Kind::Length),
        source: "geometry of the solid",
    });
    found.push(match setup.chuck.max_swing {
        Some(limit) => swing.at_most(limit.value, "the chuck's manual or guard").entry("chuck.max_swing"),
        None => swing,
    });
    Some(jaw)
}

/// One top jaw as a lump that turns.
fn top_jaw(setup: &Setup, jaw: &BoredJaw) -> RotatingMass {
    let computed =
        RotatingMass { mass: jaw.volume() * setup.jaws.material.density.value, radius: jaw.centroid_radius() };
    match &setup.jaws.weighed {
        None => computed,
        Some(weighed) => RotatingMass {
            mass: weighed.mass.value,
            radius: weighed.radius.map_or(computed.radius, |radius| radius.value),
        },
    }
}

/// Grip at rest by whichever way it is known, against the plate.
pub(super) fn at_rest(setup: &Setup, found: &mut Vec<Finding>) -> Option<RestGrip> {
    let chuck = &setup.chuck;
    let plate = plate(setup);
    let pressure = setup.pressure.value;
    found.push(
        Finding::new("pressure.set", "Clamping pressure", Kind::Pressure, pressure)
            .at_most(chuck.max_pressure.value, "the cylinder's plate")
            .entry("run.pressure")
            .step(Step {
                says: "As typed",
                formula: "p",
                given: Vec::new(),
                result: term("p", pressure, Kind::Pressure),
                source: "the gauge on the machine",
            }),
    );
    match known(setup, &plate, setup.pressure, found) {
        Ok((rest, finding)) => {
            if let Some(cylinder) = &chuck.behind_gauge {
                found.extend(gauge::condition(setup, &plate, cylinder, &rest));
            }
            let finding =
                if setup.is_from_indicator(CONDITION.path) { finding.caution(CONDITION_READ) } else { finding };
            let allowed = plate.grip_limit(setup.jaws.height.value).unwrap_or(plate.greatest_grip);
            let origin = if allowed < plate.greatest_grip {
                "the plate, less for jaws taller than it is given for"
            } else {
                "the chuck's plate"
            };
            found.push(finding.at_most(allowed, origin).entry("run.pressure"));
            let per_jaw = rest.expected / f64::from(chuck.jaws);
            found.push(Finding::new("grip.per_jaw", "Grip of one jaw at rest", Kind::Force, per_jaw).step(Step {
                says: "The jaws share the grip equally; each share is the resultant along the jaw's own axis",
                formula: "F₁ = F₀ / J",
                given: [term("F₀", rest.expected, Kind::Force), term("J", f64::from(chuck.jaws), Kind::Plain)].into(),
                result: term("F₁", per_jaw, Kind::Force),
                source: "symmetry",
            }));
            Some(rest)
        }
        Err(why) => {
            found.push(Finding::refused("grip.rest", "Total grip at rest", Kind::Force, why).entry("run.pressure"));
            None
        }
    }
}

/// Said wherever grip is worked out with a condition that readings told.
const CONDITION_READ: &str = "The chuck's condition in it is from measured readings of the indicator, not from its plate. Check it with a grip gauge.";

/// What is known of the grip at rest at a pressure.
fn known(setup: &Setup, plate: &Plate, pressure: Pressure, found: &mut Vec<Finding>) -> Known {
    match &setup.chuck.grip_from {
        GripFrom::Plate { cylinder, condition } => from_plate(pressure.value, plate, cylinder, condition.value, found),
        GripFrom::Chart { pressure: at, grip, condition } => {
            from_chart(pressure.value, &ChartPoint { pressure: at.value, grip: grip.value }, condition.value)
        }
        GripFrom::Gauge(readings) => {
            // The gauge tells the grip; what the draw tube pulls is the cylinder's, and has its own limit.
            if let Some(cylinder) = &setup.chuck.behind_gauge {
                draw(pressure.value, plate, cylinder, found)?;
            }
            from_gauge(pressure.value, readings)
        }
    }
}

/// Total grip at rest expected at another pressure, N, or why none can be given.
pub(super) fn at_pressure(setup: &Setup, pressure: Pressure) -> Result<f64, String> {
    known(setup, &plate(setup), pressure, &mut Vec::new()).map(|(rest, _)| rest.expected)
}

/// Pressure at which the grip at rest begins, Pa: none by plate and chart, where a gauge's line has it otherwise.
pub(super) fn begins_at(setup: &Setup) -> f64 {
    match &setup.chuck.grip_from {
        GripFrom::Gauge(readings) => line(readings).map_or(0.0, |line| -line.intercept() / line.slope()),
        _ => 0.0,
    }
}

/// Grip at rest at another pressure, Pa, over that at the one set; without pressure there is none.
pub(super) fn over(setup: &Setup, pressure: f64) -> f64 {
    let begins = begins_at(setup);
    if pressure > 0.0 { ((pressure - begins) / (setup.pressure.value - begins)).max(0.0) } else { 0.0 }
}

/// Pressure under which the grip at rest is `share` of that under the one set: [`over`] the other way round.
pub(super) fn pressure_of(setup: &Setup, share: f64) -> Pressure {
    let begins = Pressure::new::<pascal>(begins_at(setup));
    begins + share * (setup.pressure - begins)
}

/// What the chuck's plate says.
fn plate(setup: &Setup) -> Plate {
    Plate {
        greatest_grip: setup.chuck.max_grip.value,
        greatest_draw_force: setup.chuck.max_draw.value,
        jaw_height: setup.chuck.reference_height.value,
    }
}

type Known = Result<(RestGrip, Finding), String>;

fn exact(grip: f64) -> RestGrip {
    RestGrip { expected: grip, least: grip, most: grip }
}

/// What the draw tube pulls, N, against the chuck's plate.
fn draw(
    pressure: f64,
    plate: &Plate,
    cylinder: &crate::setup::Cylinder,
    found: &mut Vec<Finding>,
) -> Result<f64, String> {
    let face = if cylinder.rod_side { PistonFace::Rod } else { PistonFace::Full };
    let efficiency = cylinder.efficiency.value;
    let solid = Cylinder { bore: cylinder.bore.value, rod: cylinder.rod.value };
    let draw = solid.draw_force(pressure, face, efficiency).map_err(|error| why(&error))?;
    let area = draw / (pressure * efficiency);
    let formula = if cylinder.rod_side { "F_d = η p π (D² − d²) / 4" } else { "F_d = η p π D² / 4" };
    found.push(
        Finding::new("grip.draw", "Draw force", Kind::Force, draw)
            .at_most(plate.greatest_draw_force, "the chuck's plate")
            .entry("run.pressure")
            .step(Step {
                says: "Oil pressure on the piston, less what seals and draw tube take",
                formula,
                given: [
                    term("η", efficiency, Kind::Plain),
                    term("p", pressure, Kind::Pressure),
                    term("D", solid.bore, Kind::Length),
                    term("d", solid.rod, Kind::Length),
                    term("√(4A/π)", crate::sqrt(4.0 * area / core::f64::consts::PI), Kind::Length),
                ]
                .into(),
                result: term("F_d", draw, Kind::Force),
                source: "force is pressure times area",
            }),
    );
    Ok(draw)
}

fn from_plate(
    pressure: f64,
    plate: &Plate,
    cylinder: &crate::setup::Cylinder,
    condition: f64,
    found: &mut Vec<Finding>,
) -> Known {
    let draw = draw(pressure, plate, cylinder, found)?;
    let grip = plate.grip(draw, condition).map_err(|error| why(&error))?;
    let ratio = plate.greatest_grip / plate.greatest_draw_force;
    let finding = Finding::new("grip.rest", "Total grip at rest", Kind::Force, grip)
        .caution("Worked out from plates. Check it with a grip gauge.")
        .step(Step {
            says: "The chuck multiplies the draw force as its plate says, less what its condition costs",
            formula: "F₀ = F_d (F_max / F_d,max) c",
            given: [
                term("F_d", draw, Kind::Force),
                term("F_max / F_d,max", ratio, Kind::Plain),
                term("c", condition, Kind::Plain),
            ]
            .into(),
            result: term("F₀", grip, Kind::Force),
            source: "grip proportional to draw force, as chuck makers' charts show it: common practice, no source",
        });
    Ok((exact(grip), finding))
}

fn from_chart(pressure: f64, point: &ChartPoint, condition: f64) -> Known {
    let grip = point.grip_at(pressure).map_err(|error| why(&error))? * condition;
    let finding = Finding::new("grip.rest", "Total grip at rest", Kind::Force, grip)
        .caution("Worked out from one point of a chart. Check it with a grip gauge.")
        .step(Step {
            says: "Grip rises in proportion to pressure, less what the chuck's condition costs",
            formula: "F₀ = F_chart (p / p_chart) c",
            given: [
                term("F_chart", point.grip, Kind::Force),
                term("p", pressure, Kind::Pressure),
                term("p_chart", point.pressure, Kind::Pressure),
                term("c", condition, Kind::Plain),
            ]
            .into(),
            result: term("F₀", grip, Kind::Force),
            source: "common practice, no source",
        });
    Ok((exact(grip), finding))
}

fn line(readings: &[(Pressure, Force)]) -> Result<GripLine, GripError> {
    let readings: Vec<Reading> =
        readings.iter().map(|(pressure, grip)| Reading { pressure: pressure.value, grip: grip.value }).collect();
    GripLine::fit(&readings)
}

fn from_gauge(pressure: f64, readings: &[(Pressure, Force)]) -> Known {
    let line = line(readings).map_err(|error| why(&error))?;
    let (lowest, highest) = line.measured_range();
    let predicted =
        line.predict(pressure, BEYOND_READINGS * (highest - lowest), CONFIDENCE).map_err(|error| why(&error))?;
    let finding = Finding::new("grip.rest", "Total grip at rest", Kind::Force, predicted.grip).step(Step {
        says: "Straight line of least squares through the gauge readings",
        formula: "F₀ = a + b p",
        given: [
            term("a", line.intercept(), Kind::Force),
            term("b, per MPa", line.slope() * 1e6, Kind::Force),
            term("p", pressure, Kind::Pressure),
        ]
        .into(),
        result: term("F₀", predicted.grip, Kind::Force),
        source: "linear regression with its prediction interval: Draper and Smith, Applied Regression Analysis, from memory",
    });
    Ok(match predicted.scatter {
        None => (
            exact(predicted.grip),
            finding.caution("Two readings always make a line: a third tells how far to trust it."),
        ),
        Some(scatter) => {
            let least = (predicted.grip - scatter.half_width).max(0.0);
            let most = predicted.grip + scatter.half_width;
            (RestGrip { expected: predicted.grip, least, most }, finding.band(least, most))
        }
    })
}

/// A refusal in words.
pub(super) fn why(error: &GripError) -> String {
    match error {
        GripError::OutsideReadings { .. } => {
            "This pressure lies too far from the gauge readings. Read the gauge nearer to it.".to_string()
        }
        GripError::NoGrip { .. } => "The line through the gauge readings gives no grip at this pressure.".to_string(),
        GripError::GripDoesNotRise { .. } => {
            "The gauge readings do not rise with pressure. Read them again.".to_string()
        }
        other => format!("No grip can be given: {other}."),
    }
}

/// Grip at the set speed, for both ends of what may reach the part.
pub(super) fn at_speed(
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
