//! Surfaces of interest and the gripped band: where on the mesh they lie.

use super::mesh::{Edge, Mesh};
use crate::text::Text;
use alloc::vec::Vec;

/// Which boundary of the part a surface belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Outer diameters; displacement is reported along r, outward.
    Outside,
    /// Inner diameters; displacement is reported along r, outward.
    Bore,
    /// Faces across the axis; displacement is reported along z. Order 0 holds a shift of the whole
    /// part that is the same everywhere: only differences count.
    Face,
}

/// A named surface of the part.
#[derive(Clone, Debug, PartialEq)]
pub struct Surface {
    /// Its name.
    pub name: Text,
    /// The boundary it belongs to.
    pub side: Side,
    /// From and to along the axis, m; for a face, a range that holds its plane.
    pub z: [f64; 2],
}

/// How much closer together points of the band stand towards its ends than a cosine would put them, as a share; by
/// trial against solids, whose edges more of it meets better and whose middle worse.
const CROWDED: f64 = 0.06;

/// The band of the part that the jaws touch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// `Outside` or `Bore`.
    pub side: Side,
    /// From and to along the axis, m.
    pub z: [f64; 2],
    /// Cells between the points along it at which pressure is told; see [`Band::CELLS`].
    pub cells: usize,
}

impl Band {
    /// Cells by default.
    pub const CELLS: usize = 12;

    /// z of its points, m, ascending: cells shorten towards both ends, where the pressure of a stiff jaw is singular.
    pub(crate) fn points(&self) -> Vec<f64> {
        let [from, to] = self.z;
        let cells = self.cells.max(1);
        let turn = core::f64::consts::PI / cells as f64;
        let share = |k: usize| {
            let at = turn * k as f64;
            (1.0 - libm::cos(at - CROWDED / 2.0 * libm::sin(2.0 * at))) / 2.0
        };
        (0..=cells).map(|k| if k == cells { to } else { from + (to - from) * share(k) }).collect()
    }
}

/// Sides of the mesh boundary that lie in a range along z.
pub(crate) fn sides(mesh: &Mesh, side: Side, z: [f64; 2]) -> Vec<Edge> {
    let all = match side {
        Side::Outside => &mesh.outside,
        Side::Bore => &mesh.bore,
        Side::Face => &mesh.faces,
    };
    let length = mesh.nodes.iter().fold(0.0, |most: f64, n| most.max(n[1]));
    let slack = 1e-7 * length;
    all.iter()
        .filter(|e| {
            let (a, b) = (mesh.nodes[e[0]][1], mesh.nodes[e[2]][1]);
            a >= z[0] - slack && b <= z[1] + slack
        })
        .copied()
        .collect()
}

/// Nodes of sides, each once, in the order of the sides.
pub(crate) fn nodes(sides: &[Edge]) -> Vec<usize> {
    let mut nodes: Vec<usize> = Vec::new();
    for side in sides {
        for &n in side {
            if !nodes.contains(&n) {
                nodes.push(n);
            }
        }
    }
    nodes
}
