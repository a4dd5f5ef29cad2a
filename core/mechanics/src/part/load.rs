//! Loads on a meshed part, per unit of the factor pi (2 pi for n = 0) around the axis.

use super::element::{Elastic, points};
use super::mesh::Mesh;
#[cfg(test)]
use super::{
    element::{GAUSS, side},
    mesh::Edge,
};

/// Integration points of a side: shape functions, (r, z), and the length weight.
#[cfg(test)]
pub(crate) fn side_points(mesh: &Mesh, edge: &Edge) -> [([f64; 3], [f64; 2], f64); 3] {
    let at = edge.map(|n| mesh.nodes[n]);
    GAUSS.map(|(x, weight)| {
        let (n, slope) = side(x);
        let sum = |f: &[f64; 3], d: usize| f.iter().zip(&at).map(|(f, p)| f * p[d]).sum::<f64>();
        let length = libm::hypot(sum(&slope, 0), sum(&slope, 1));
        (n, [sum(&n, 0), sum(&n, 1)], weight * length)
    })
}

/// Adds the nodal forces of a body force `force(r, z)` (N/m3, along r, theta and z) to `loads`.
pub(crate) fn add_body_force(mesh: &Mesh, position: &[usize], loads: &mut [f64], force: impl Fn(f64, f64) -> [f64; 3]) {
    for element in &mesh.elements {
        for p in &points(mesh, element) {
            let z = element.iter().zip(&p.n).map(|(&k, n)| n * mesh.nodes[k][1]).sum();
            let f = force(p.r, z);
            for (&node, n) in element.iter().zip(&p.n) {
                for (a, f) in f.iter().enumerate() {
                    loads[3 * position[node] + a] += p.weight * n * f;
                }
            }
        }
    }
}

/// Adds the load of spinning at 1 rad/s: the body force `density r` outward, harmonic 0.
pub(crate) fn add_spin(mesh: &Mesh, elastic: &Elastic, position: &[usize], loads: &mut [f64]) {
    add_body_force(mesh, position, loads, |r, _| [elastic.density * r, 0.0, 0.0]);
}

/// Adds the nodal forces of a traction `(r, z) -> N/m2 along r, theta, z` on one side.
#[cfg(test)]
pub(crate) fn add_traction(
    mesh: &Mesh,
    edge: &Edge,
    position: &[usize],
    loads: &mut [f64],
    traction: impl Fn(f64, f64) -> [f64; 3],
) {
    for (n, [r, z], weight) in side_points(mesh, edge) {
        let t = traction(r, z);
        for (&node, n) in edge.iter().zip(n) {
            for (a, t) in t.iter().enumerate() {
                loads[3 * position[node] + a] += weight * r * n * t;
            }
        }
    }
}
