//! Limits over speed, shares of a spread, and a program read back, by the engines alone.

use std::f64::consts::PI;

use holdround_core::quantity::UnitSystem;
use holdround_core::sampling::{draw, first_order};
use holdround_core::setup::Setup;
use holdround_core::text::ENGLISH;
use holdround_core::window::{Curve, Keep, Over, Plane};
use holdround_core::{Engine, jaw_program};
use serde::Deserialize;

use super::engine::{Told, told};
use crate::job::{Job, listed};
use crate::program_reader::{Motion, read, run};

/// A limit that is reached at the pressure p₀ exp((ω / ω₀)²).
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Bent {
    pressure_at_rest: f64,
    speed_of_growth: f64,
    greatest_pressure: f64,
    greatest_speed: f64,
    speed: f64,
}

pub(super) fn limit_curve(given: Bent) -> Told {
    let plane = Plane { pressure: [0.0, given.greatest_pressure], speed: given.greatest_speed };
    let needed = |speed: f64| {
        let ratio = speed / given.speed_of_growth;
        given.pressure_at_rest * libm::exp(ratio * ratio)
    };
    let mut curve = Curve::new(Keep::AtLeast, Over::Every, plane);
    while curve.step(&|pressure, speed| pressure / needed(speed)) {}
    told([("pressure", curve.at(given.speed))])
}

/// A boundary of a whole job's window.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Boundary {
    job: Job,
    boundary: String,
    rev_per_min: f64,
}

pub(super) fn window(given: Boundary) -> Told {
    let setup = Setup::read(&given.job.entries()?).map_err(|faults| listed(&faults))?;
    let window = Engine::default().window(&setup);
    let boundary = window.boundaries.iter().find(|one| one.key == given.boundary).ok_or("no such boundary")?;
    told([("pressure", boundary.at(given.rev_per_min * PI / 30.0).ok_or("nothing is known of it")?)])
}

/// Draws of Ishigami and Homma's function sin x₁ + a sin² x₂ + b x₃⁴ sin x₁, each x between −π and π.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Ishigami {
    a: f64,
    b: f64,
    samples: u32,
}

pub(super) fn ishigami(given: Ishigami) -> Told {
    let draws = [0, 1, 2].map(|input| (0..given.samples).map(|sample| draw(1, sample, input)).collect::<Vec<f64>>());
    let outputs: Vec<f64> = (0..given.samples as usize)
        .map(|sample| {
            let [x, y, z] = [0, 1, 2].map(|input: usize| 2.0 * PI * draws[input][sample] - PI);
            let sine = libm::sin(y);
            libm::sin(x) + given.a * sine * sine + given.b * z * z * z * z * libm::sin(x)
        })
        .collect();
    let share = |input: usize| first_order(&draws[input], &outputs).map(|share| share.of_variance).ok_or("no share");
    told([("first input", share(0)?), ("second input", share(1)?), ("third input", share(2)?)])
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Drawn {
    samples: u32,
}

pub(super) fn draws(given: Drawn) -> Told {
    let count = f64::from(given.samples);
    let mean = |of: &dyn Fn(u32) -> f64| (0..given.samples).map(of).sum::<f64>() / count;
    let of = |input: u32| move |sample: u32| draw(1, sample, input);
    told([
        ("mean", mean(&of(0))),
        ("mean of squares", mean(&|sample| of(0)(sample) * of(0)(sample))),
        ("mean of products", mean(&|sample| of(0)(sample) * of(1)(sample))),
    ])
}

/// The program of a job, read by a reader that shares nothing with its writer. Lengths in mm.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Written {
    job: Job,
    inch: bool,
}

pub(super) fn program_read_back(given: Written) -> Told {
    let setup = Setup::read(&given.job.entries()?).map_err(|faults| listed(&faults))?;
    let (system, unit) = if given.inch { (UnitSystem::Inch, 25.4) } else { (UnitSystem::Metric, 1.0) };
    let motions = run(&read(&jaw_program(&setup, system, ENGLISH).map_err(|why| why.to_string())?)?, unit)?;
    let cuts = || motions.iter().filter(|motion| motion.feed > 0.0);
    let feed = cuts().next_back().ok_or("nothing is cut")?.feed;
    let along = |motion: &Motion| (motion.to[1] - motion.from[1]).abs();
    let finish = cuts().filter(|motion| motion.feed == feed).max_by(|a, b| along(a).total_cmp(&along(b)));
    let finish = finish.ok_or("nothing is finished")?;
    told([("diameter", 2.0 * finish.to[0]), ("depth", -finish.to[1].min(finish.from[1])), ("feed", feed)])
}
