//! The grip at rest, as findings.

use alloc::vec::Vec;

use uom::si::pressure::pascal;

use super::gauge;
use crate::findings::{Finding, Step, term};
use crate::grip::{ChartPoint, Cylinder, GripError, GripLine, PistonFace, Plate, Reading};
use crate::quantity::{Force, Kind, Pressure};
use crate::setup::chuck_inputs::CONDITION;
use crate::setup::{GripFrom, Setup};
use crate::text::Text;

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

/// Grip at rest by whichever way it is known, against the plate.
pub(super) fn tell(setup: &Setup, found: &mut Vec<Finding>) -> Option<RestGrip> {
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
pub(super) fn at_pressure(setup: &Setup, pressure: Pressure) -> Result<f64, Text> {
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

type Known = Result<(RestGrip, Finding), Text>;

fn exact(grip: f64) -> RestGrip {
    RestGrip { expected: grip, least: grip, most: grip }
}

/// What the draw tube pulls, N, against the chuck's plate.
fn draw(
    pressure: f64,
    plate: &Plate,
    cylinder: &crate::setup::Cylinder,
    found: &mut Vec<Finding>,
) -> Result<f64, Text> {
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
pub(super) fn why(error: &GripError) -> Text {
    match error {
        GripError::OutsideReadings { .. } => {
            "This pressure lies too far from the gauge readings. Read the gauge nearer to it.".into()
        }
        GripError::NoGrip { .. } => "The line through the gauge readings gives no grip at this pressure.".into(),
        GripError::GripDoesNotRise { .. } => "The gauge readings do not rise with pressure. Read them again.".into(),
        other => Text::of("No grip can be given: {}.").with(other),
    }
}
