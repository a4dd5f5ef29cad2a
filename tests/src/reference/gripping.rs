//! Grip at rest and at speed, by the engines alone. Speeds in rev/min, as charts give them.

use std::f64::consts::PI;

use holdround_core::grip::{
    Cylinder, Demand, GripLine, PistonFace, Reading, RotatingMass, Share, Side, SpinLine, SpinReading, SpinningGrip,
    centrifugal_moment,
};
use serde::Deserialize;

use super::engine::{Told, refused, told};

const REV_PER_MIN: f64 = PI / 30.0;
/// Beyond any speed a check asks for, rad/s.
const NO_PLATE: f64 = 1e4;
/// Beyond any pressure a check asks for, Pa.
const NO_MARGIN: f64 = 1e9;
const CONFIDENCE: f64 = 0.95;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Spinning {
    rest_grip: f64,
    centrifugal_moment: f64,
    share: f64,
    rev_per_min: f64,
}

impl Spinning {
    fn on(&self, side: Side) -> Result<SpinningGrip, String> {
        let share = Share::new(self.share, self.share).map_err(refused)?;
        SpinningGrip::new(self.rest_grip, side, self.centrifugal_moment, share).map_err(refused)
    }
}

pub(super) fn spinning_grip(given: Spinning) -> Told {
    let speed = given.rev_per_min * REV_PER_MIN;
    let (outside, inside) = (given.on(Side::Outside)?, given.on(Side::Inside)?);
    told([
        ("centrifugal_force", outside.centrifugal_force(speed).map_err(refused)?),
        ("outside_grip", outside.at(speed).map_err(refused)?.lowest),
        ("inside_grip", inside.at(speed).map_err(refused)?.highest),
    ])
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Permissible {
    rest_grip: f64,
    centrifugal_moment: f64,
    cutting_grip: f64,
    cutting_factor: f64,
    rest_factor: f64,
}

pub(super) fn permissible_speed(given: Permissible) -> Told {
    let Permissible { rest_grip, centrifugal_moment, cutting_grip, cutting_factor, rest_factor } = given;
    let grip = SpinningGrip::new(rest_grip, Side::Outside, centrifugal_moment, Share::ALL).map_err(refused)?;
    let demand = Demand { cutting_grip, cutting_factor, rest_factor };
    let third = grip.speed_leaving(1.0 / 3.0).map_err(refused)?.ok_or("a third is always left")?;
    told([
        ("permissible", grip.permissible_speed(&demand, NO_PLATE).map_err(refused)? / REV_PER_MIN),
        ("grip_lost", grip.speed_of_lost_grip().ok_or("the grip is never lost")? / REV_PER_MIN),
        ("third_left", third / REV_PER_MIN),
    ])
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Thrown {
    mass: f64,
    radius: f64,
    jaws: usize,
    rev_per_min: f64,
}

pub(super) fn thrown_jaws(given: Thrown) -> Told {
    let jaw = RotatingMass { mass: given.mass, radius: given.radius };
    let force = |jaws: usize| {
        let moment = centrifugal_moment(&vec![jaw; jaws])?;
        SpinningGrip::new(1.0, Side::Inside, moment, Share::ALL)?.centrifugal_force(given.rev_per_min * REV_PER_MIN)
    };
    told([("one", force(1).map_err(refused)?), ("all", force(given.jaws).map_err(refused)?)])
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Actuator {
    bore: f64,
    rod: f64,
    pressure: f64,
}

pub(super) fn cylinder(given: Actuator) -> Told {
    let cylinder = Cylinder { bore: given.bore, rod: given.rod };
    let force = |face| cylinder.draw_force(given.pressure, face, 1.0).map_err(refused);
    told([
        ("rod_side_area", cylinder.effective_area(PistonFace::Rod).map_err(refused)?),
        ("pull", force(PistonFace::Rod)?),
        ("push", force(PistonFace::Full)?),
    ])
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Gauge {
    pressure: Vec<f64>,
    grip: Vec<f64>,
    /// A pressure at which a further reading is predicted.
    at: Option<f64>,
}

pub(super) fn gauge_line(given: Gauge) -> Told {
    if given.pressure.len() != given.grip.len() {
        return Err("as many pressures as grips".into());
    }
    let readings: Vec<Reading> =
        given.pressure.iter().zip(&given.grip).map(|(&pressure, &grip)| Reading { pressure, grip }).collect();
    let line = GripLine::fit(&readings).map_err(refused)?;
    let mut all = told([
        ("intercept", line.intercept()),
        ("slope", line.slope()),
        ("residual_deviation", line.residual_deviation().ok_or("two readings have no residual")?),
    ])?;
    if let Some(at) = given.at {
        let predicted = line.predict(at, NO_MARGIN, CONFIDENCE).map_err(refused)?;
        all.insert("predicted".into(), predicted.grip);
        all.insert("half_width".into(), predicted.scatter.ok_or("two readings have no scatter")?.half_width);
    }
    Ok(all)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Spun {
    speed: Vec<f64>,
    grip: Vec<f64>,
    side: String,
}

pub(super) fn spin_line(given: Spun) -> Told {
    let side = if given.side == "inside" { Side::Inside } else { Side::Outside };
    let pairs = given.speed.iter().zip(&given.grip);
    let readings: Vec<SpinReading> = pairs.map(|(&speed, &grip)| SpinReading { speed, grip }).collect();
    let line = SpinLine::fit(&readings, side).map_err(refused)?;
    let coefficient = line.coefficient(CONFIDENCE).map_err(refused)?;
    told([
        ("at_rest", line.at_rest()),
        ("coefficient", coefficient.value),
        ("half_width", coefficient.half_width.ok_or("two readings have no scatter")?),
        ("residual_deviation", line.residual_deviation().ok_or("two readings have no residual")?),
    ])
}
