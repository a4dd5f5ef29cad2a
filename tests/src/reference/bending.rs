//! Rings under pressure, spin and jaws, and the roundness of a profile, by the engines alone.

use std::f64::consts::PI;

use holdround_core::ring::{Annulus, Edge, JawLoad};
use holdround_core::roundness::Profile;
use serde::Deserialize;

use super::engine::{Told, refused, told};

/// Figures are told without unit, as tables of rings give them, for a pressure p cos(m theta).
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Harmonic {
    outer_over_inner: f64,
    order: u32,
    poisson: f64,
    pressed: Surface,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Surface {
    Outside,
    Bore,
}

impl Surface {
    fn edge(self) -> Edge {
        match self {
            Self::Outside => Edge::Outside,
            Self::Bore => Edge::Bore,
        }
    }
}

pub(super) fn annulus_harmonic(given: Harmonic) -> Told {
    let inner = 1.0 / given.outer_over_inner;
    let ring = Annulus { inner, outer: 1.0, modulus: 1.0, poisson: given.poisson };
    let response = ring.response(given.order, given.pressed.edge(), -1.0).map_err(refused)?;
    let bore = response.bore.ok_or("a ring has a bore")?;
    told([
        ("E ur(b) / (p b)", response.outside.radial),
        ("E ur(a) / (p b)", bore.radial),
        ("E ut(b) / (p b)", response.outside.tangential),
        ("E ur(a) / (p a)", bore.radial / inner),
        ("hoop(a) / p", bore.hoop),
    ])
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Pressed {
    inner: f64,
    outer: f64,
    modulus: f64,
    poisson: f64,
    pressure: f64,
    pressed: Surface,
}

pub(super) fn uniform_pressure(given: Pressed) -> Told {
    let Pressed { inner, outer, modulus, poisson, pressure, pressed } = given;
    let ring = Annulus { inner, outer, modulus, poisson };
    let response = ring.response(0, pressed.edge(), -pressure).map_err(refused)?;
    let bore = response.bore.ok_or("a ring has a bore")?;
    told([("outside_growth", response.outside.radial), ("bore_growth", bore.radial), ("bore_hoop", bore.hoop)])
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Disc {
    inner: f64,
    outer: f64,
    modulus: f64,
    poisson: f64,
    density: f64,
    rev_per_min: f64,
}

pub(super) fn rotating_disc(given: Disc) -> Told {
    let Disc { inner, outer, modulus, poisson, density, rev_per_min } = given;
    let ring = Annulus { inner, outer, modulus, poisson };
    let spin = ring.spin(rev_per_min * PI / 30.0, density).map_err(refused)?;
    told([
        ("peak_hoop", spin.peak_hoop),
        ("outside_growth", spin.outside_growth),
        ("bore_growth", spin.bore_growth.ok_or("a ring has a bore")?),
    ])
}

/// Equal jaws on a ring with a wall of 1/2000 of its radius; figures of the bore in W R³ / (E I), with W
/// the integral of each jaw's pressure over its arc.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Jaws {
    jaws: u32,
    half_angle_degrees: f64,
}

pub(super) fn thin_ring(given: Jaws) -> Told {
    let ring = Annulus { inner: 0.099_975, outer: 0.100_025, modulus: 207e9, poisson: 0.3 };
    let half_angle = given.half_angle_degrees * PI / 180.0;
    let load = JawLoad { edge: Edge::Outside, jaws: given.jaws, half_angle, force_per_jaw: 1e3, length: 0.04 };
    let bore = ring.squeeze(&load).map_err(refused)?.bore.ok_or("a ring has a bore")?;
    // The engine's force is the resultant along the jaw's axis.
    let integral = if half_angle > 0.0 { 1e3 * half_angle / libm::sin(half_angle) } else { 1e3 };
    let (wall, mean) = (ring.outer - ring.inner, 0.5 * (ring.outer + ring.inner));
    let inertia = load.length * wall * wall * wall / 12.0;
    let unit = integral * mean * mean * mean / (ring.modulus * inertia);
    told([
        ("inward at a load", (bore.mean - bore.radial(0.0)) / unit),
        ("outward midway", (bore.radial(PI / f64::from(given.jaws)) - bore.mean) / unit),
        ("peak to valley", bore.peak_to_valley() / unit),
    ])
}

/// A ring of finite wall in equal jaws from outside. SI.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Squeezed {
    jaws: u32,
    inner: f64,
    outer: f64,
    length: f64,
    modulus: f64,
    poisson: f64,
    force_per_jaw: f64,
    half_angle_degrees: f64,
}

pub(super) fn squeezed_ring(given: Squeezed) -> Told {
    let Squeezed { jaws, inner, outer, length, modulus, poisson, force_per_jaw, .. } = given;
    let half_angle = given.half_angle_degrees * PI / 180.0;
    let load = JawLoad { edge: Edge::Outside, jaws, half_angle, force_per_jaw, length };
    let shape = Annulus { inner, outer, modulus, poisson }.squeeze(&load).map_err(refused)?;
    told([
        ("bore peak to valley", shape.bore.ok_or("a ring has a bore")?.peak_to_valley()),
        ("outside growth on release", -2.0 * shape.outside.mean),
    ])
}

/// A profile as a sum of cosines, `[order, amplitude]`, read at equal angles.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Lobes {
    stations: u32,
    cosines: Vec<(u32, f64)>,
}

pub(super) fn roundness(given: Lobes) -> Told {
    let departure = |station: u32| {
        let angle = 2.0 * PI * f64::from(station) / f64::from(given.stations);
        given.cosines.iter().map(|&(order, amplitude)| amplitude * libm::cos(f64::from(order) * angle)).sum()
    };
    let departures: Vec<f64> = (0..given.stations).map(departure).collect();
    let found = Profile::equally_spaced(&departures).map_err(refused)?.assess();
    told([
        ("least squares", found.least_squares.roundness()),
        ("minimum zone", found.minimum_zone.roundness()),
        ("minimum circumscribed", found.minimum_circumscribed.roundness()),
        ("maximum inscribed", found.maximum_inscribed.roundness()),
        ("least squares centre x", found.least_squares.x),
        ("least squares centre y", found.least_squares.y),
        ("peak", found.least_squares.peak),
        ("valley", found.least_squares.valley),
        ("indicator about the spindle", found.total_indicator_reading),
        ("two-point range", found.two_point_range.ok_or("no opposite readings")?),
    ])
}
