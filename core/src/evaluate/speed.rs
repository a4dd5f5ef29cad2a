//! How fast the spindle may turn, and the least pressure that holds, as findings.

use alloc::vec::Vec;

use super::grip_at_speed::{LEAST_LEFT, Spinning};
use super::hold::LeastHold;
use crate::findings::{Finding, Step, term};
use crate::grip::{Demand, Side};
use crate::quantity::Kind;
use crate::setup::{GripFrom, Setup};

/// The set speed against the least of every limit on it; `finish` is the set-up while finishing, where that is another.
pub(super) fn limits(
    setup: &Setup,
    spinning: Option<&Spinning>,
    hold: Option<LeastHold>,
    finish: Option<(&Setup, &Spinning, Option<LeastHold>)>,
    found: &mut Vec<Finding>,
) {
    let plate = setup.chuck.max_speed.value;
    let mut limit = (plate, "the chuck's plate");
    if let Some(spinning) = spinning {
        if let Some(lost) = spinning.careful.speed_of_lost_grip() {
            found.push(
                Finding::new("speed.grip_lost", "Speed at which the grip is gone", Kind::RotationalSpeed, lost).step(
                    Step {
                        says: "All of the grip at rest is eaten by the spin force",
                        formula: "n = √(F₀ / (k M_c))",
                        given: [
                            term("F₀", spinning.least_at_rest, Kind::Force),
                            term("k", spinning.share.high(), Kind::Plain),
                        ]
                        .into(),
                        result: term("n", lost, Kind::RotationalSpeed),
                        source: "VDI 3106:2004 as quoted in secondary literature",
                    },
                ),
            );
        }
        if let Ok(Some(third)) = spinning.careful.speed_leaving(LEAST_LEFT) {
            let name = "Speed at which a third of the grip is left";
            found.push(Finding::new("speed.third_left", name, Kind::RotationalSpeed, third).step(Step {
                says: "Two thirds of the grip at rest are eaten by the spin force",
                formula: "n = √(⅔ F₀ / (k M_c))",
                given: [
                    term("F₀", spinning.least_at_rest, Kind::Force),
                    term("k", spinning.share.high(), Kind::Plain),
                ]
                .into(),
                result: term("n", third, Kind::RotationalSpeed),
                source: "EN 1550 and DIN 6386 as quoted in manuals; VDI 3106:2004 as quoted in secondary literature",
            }));
            if third < limit.0 {
                limit = (third, "a third of the grip at rest, which must be left");
            }
        }
        if let Some(holding) = hold.and_then(|hold| holding_speed(setup, spinning, hold, found))
            && holding < limit.0
        {
            limit = (holding, "the hold factor you want");
        }
    }
    if let Some((setup, spinning, hold)) = finish {
        if let Ok(Some(third)) = spinning.careful.speed_leaving(LEAST_LEFT)
            && third < limit.0
        {
            limit = (third, "a third of the grip at rest, which must be left while finishing");
        }
        if let Some(holding) = hold.and_then(|hold| holding_speed(setup, spinning, hold, &mut Vec::new()))
            && holding < limit.0
        {
            limit = (holding, "the hold factor you want while finishing");
        }
    }
    let set = Finding::new("speed.set", "Spindle speed", Kind::RotationalSpeed, setup.speed.value)
        .entry("run.speed")
        .step(Step {
            says: "As typed, against the least of the plate's speed, the speed that leaves a third of the grip, and the speed that leaves the hold factor wanted",
            formula: "n ≤ n_limit",
            given: [term("n_limit", limit.0, Kind::RotationalSpeed)].into(),
            result: term("n", setup.speed.value, Kind::RotationalSpeed),
            source: "VDI 3106:2004 as quoted in secondary literature",
        });
    found.push(if limit.0 > 0.0 {
        set.at_most(limit.0, limit.1)
    } else {
        set.at_most(0.0, limit.1).caution("The part is not held even at standstill.")
    });
}

/// Greatest speed at which the least hold factor is still the one wanted; also tells the least pressure.
fn holding_speed(setup: &Setup, spinning: &Spinning, hold: LeastHold, found: &mut Vec<Finding>) -> Option<f64> {
    if hold.at_rest <= 0.0 {
        return Some(0.0);
    }
    let demand = Demand {
        cutting_grip: spinning.least_at_rest / hold.at_rest,
        cutting_factor: setup.grip.required_hold.value,
        rest_factor: 1.0,
    };
    if let Ok(needed) = spinning.careful.needed_rest_grip(&demand, setup.speed.value) {
        found.push(
            Finding::new("grip.needed", "Grip at rest that gives the hold factor wanted", Kind::Force, needed).step(
                Step {
                    says: "What the cut asks for at this speed, with what the spin takes or gives",
                    formula: if setup.grip.side == Side::Outside {
                        "F₀ = S F_cut + k F_c"
                    } else {
                        "F₀ = S F_cut − k F_c"
                    },
                    given: [
                        term("S", demand.cutting_factor, Kind::Plain),
                        term("F_cut", demand.cutting_grip, Kind::Force),
                    ]
                    .into(),
                    result: term("F₀", needed, Kind::Force),
                    source: "VDI 3106:2004 as quoted in secondary literature",
                },
            ),
        );
        // A gauge line does not pass through zero; there the user reads the pressure off their own readings.
        if !matches!(setup.chuck.grip_from, GripFrom::Gauge(_)) {
            let pressure = setup.pressure.value * needed / spinning.least_at_rest;
            found.push(
                Finding::new("pressure.least", "Least pressure that holds", Kind::Pressure, pressure)
                    .step(Step {
                        says: "Grip follows pressure in proportion",
                        formula: "p_least = p F_needed / F₀",
                        given: [
                            term("p", setup.pressure.value, Kind::Pressure),
                            term("F_needed", needed, Kind::Force),
                            term("F₀", spinning.least_at_rest, Kind::Force),
                        ]
                        .into(),
                        result: term("p_least", pressure, Kind::Pressure),
                        source: "grip proportional to pressure: common practice, no source",
                    })
                    .caution("With the cut and speed as entered. Pressure lowered after clamping does not let the grip down: unclamp and clamp again."),
            );
        }
    }
    match setup.grip.side {
        Side::Outside => {
            spinning.careful.permissible_speed(&demand, setup.chuck.max_speed.value).map_or(Some(0.0), Some)
        }
        Side::Inside => {
            // Spin only adds grip here: what holds at standstill holds at any speed.
            let holds = demand.cutting_factor * demand.cutting_grip <= spinning.at_speed.lowest;
            (!holds).then_some(0.0)
        }
    }
}
