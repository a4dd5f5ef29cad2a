//! How the engine's answers come closer with a finer mesh, against what is known exactly.

use holdround_core::Engine;
use holdround_core::contact::Arc;
use holdround_core::part::{Band, Elastic, PartModel, Profile, Side, Step, Surface};
use holdround_core::ring::{Annulus, Edge};
use maud::{Markup, html};
use serde_json::json;

use super::figure::{number, percent};
use super::plot::{self, Series};
use super::table::table;
use crate::reference::run;

/// Densities of the mesh.
const DENSITIES: [f64; 5] = [0.5, 0.7, 1.0, 1.4, 2.0];

/// One quantity at every fineness.
pub(super) struct Study {
    name: &'static str,
    runs: Vec<Run>,
}

struct Run {
    fineness: f64,
    unknowns: usize,
    error: f64,
}

impl Study {
    fn points(&self) -> Vec<[f64; 2]> {
        self.runs.iter().map(|run| [run.fineness, run.error]).collect()
    }
}

/// Thin discs in plane stress, whose bending under waves of pressure Michell's solution gives exactly.
///
/// # Errors
/// An engine's refusal.
pub(super) fn of_parts() -> Result<Vec<Study>, String> {
    [("wall a tenth, 3 waves", 1.1, 3), ("wall a half, 3 waves", 2.0, 3), ("wall a quarter, 6 waves", 1.3, 6)]
        .map(|(name, ratio, order)| study(name, ratio, order))
        .into_iter()
        .collect()
}

/// A disc this much thinner than its radius is in plane stress to 3e-5.
const THIN: f64 = 1.0 / 500.0;
const STEEL: Elastic = Elastic { youngs: 207e9, poisson: 0.3, density: 7850.0 };

fn study(name: &'static str, ratio: f64, order: u32) -> Result<Study, String> {
    let outer = 0.05;
    let ring = Annulus { inner: outer / ratio, outer, modulus: STEEL.youngs, poisson: STEEL.poisson };
    let exact = ring.response(order, Edge::Outside, 1.0).map_err(|error| error.to_string())?;
    let exact = exact.bore.ok_or("a ring has a bore")?.radial;
    let runs = DENSITIES.iter().map(|density| {
        let length = outer * THIN;
        let step = Step::cylinder(length, 2.0 * outer, 2.0 * outer / ratio);
        let profile = Profile::new(&[step]).map_err(|error| error.to_string())?;
        let band = Band { side: Side::Outside, z: [0.0, length], cells: Band::CELLS };
        let surfaces = [Surface { name: "bore".into(), side: Side::Bore, z: [0.0, length] }];
        let model = PartModel::new(&profile, STEEL, band, order as usize, &surfaces, *density);
        let model = model.map_err(|error| error.to_string())?;
        let response = model.respond(order as usize).map_err(|error| error.to_string())?;
        // Even pressure is that of every hat along the band at once, and the disc is too thin to bulge.
        let stations = response.surfaces[0].len() as f64 / (response.band.len() as f64).sqrt();
        let mean = response.surfaces[0].iter().sum::<f64>() / stations;
        let error = (mean / exact - 1.0).abs();
        Ok(Run { fineness: *density, unknowns: model.unknowns(), error })
    });
    Ok(Study { name, runs: runs.collect::<Result<_, String>>()? })
}

/// Cells along the face of a jaw, and as many as stand for endlessly many.
const CELLS: [usize; 4] = [6, 12, 24, 48];
const FINEST: usize = 128;

/// Rigid jaws on a plane ring of 100 by 90 mm: lobes of its outside, against those with the finest cells.
///
/// # Errors
/// An engine's refusal.
pub(super) fn of_contact() -> Result<Vec<Study>, String> {
    [("30 degrees each side, same radius", 30.0, "same"), ("60 degrees each side, larger radius", 60.0, "larger")]
        .map(|(name, half_angle, radius)| {
            let lobes = |cells: usize| {
                let given = json!({
                    "outer": 0.05, "inner": 0.045, "length": 2e-4, "youngs_modulus": STEEL.youngs,
                    "poisson": STEEL.poisson, "jaws": 3, "half_angle_degrees": half_angle, "force_per_jaw": 50.0,
                    "mismatch": 5e-5, "bore": false, "cells": cells,
                });
                let told = run("rigid_jaws", &given)?;
                told.into_iter()
                    .find(|(name, _)| name.contains(radius))
                    .map(|(_, lobes)| lobes)
                    .ok_or_else(|| "no lobes".to_string())
            };
            let finest = lobes(FINEST)?;
            let runs = CELLS.iter().map(|&cells| {
                Ok(Run {
                    fineness: cells as f64,
                    unknowns: 2 * (cells + 1),
                    error: (lobes(cells)? / finest - 1.0).abs(),
                })
            });
            Ok(Study { name, runs: runs.collect::<Result<_, String>>()? })
        })
        .into_iter()
        .collect()
}

/// A drawing and its table; `fineness` names what is made finer.
fn shown(studies: &[Study], fineness: &'static str) -> Markup {
    let series: Vec<Series> = studies.iter().map(|study| Series { name: study.name, points: study.points() }).collect();
    let rows = html! {
        @for study in studies {
            @for (at, run) in study.runs.iter().enumerate() {
                tr {
                    @if at == 0 { th scope="rowgroup" rowspan=(study.runs.len()) { (study.name) } }
                    td { (number(run.fineness)) }
                    td { (run.unknowns) }
                    td { (percent(run.error)) }
                    @if at == 0 { td rowspan=(study.runs.len()) { (format!("{:.1}", -plot::power(&study.points()))) } }
                }
            }
        }
    };
    html! {
        (plot::draw(&format!("Error against {fineness}, as in the table"), [fineness, "error"], &series))
        (table(&format!("Errors by {fineness}"), &["Case", fineness, "Unknowns", "Error", "Order seen"], &rows))
    }
}

/// The drawings and their tables.
pub(super) fn section(parts: &[Study], contact: &[Study]) -> Markup {
    html! {
        section #meshes {
            h2 { "How far is a mesh from its limit?" }
            p {
                "The part. Discs under waves of pressure outside: radial displacement of the bore against Michell's "
                "solution. The engine begins with density " (number(Engine::DENSITIES[0])) " and refines until the shape "
                "changes by no more than " (percent(Engine::SETTLED)) ", to "
                (number(Engine::DENSITIES[Engine::DENSITIES.len() - 1]))
                " at most; the finding says by how much it still changed."
            }
            (shown(parts, "density of the mesh"))
            p {
                "The contact. Rigid jaws on a plane ring: lobes of its outside, against those with " (FINEST) " cells. The "
                "page takes " (Arc::CELLS) "."
            }
            (shown(contact, "cells along the face"))
        }
    }
}
