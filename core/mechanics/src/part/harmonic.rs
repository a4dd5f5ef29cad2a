//! The part's stiffness for each harmonic, and its factor.

use super::element::{Elastic, blocks, points};
use super::envelope::Envelope;
use super::mesh::{Mesh, TooLarge};
use super::numbering::{first_neighbours, order, positions};
use alloc::vec::Vec;

/// Most numbers kept of one matrix: four such make 100 MB, and a harmonic takes a tenth of a
/// second.
const MOST_NUMBERS: usize = 3_000_000;

/// Stiffness of a meshed part: `K0 + n K1 + n^2 K2` for harmonic n.
#[derive(Clone, Debug)]
pub(crate) struct Stiffness {
    envelope: Envelope,
    parts: [Vec<f64>; 3],
    /// Position of each node among the block rows.
    pub(crate) position: Vec<usize>,
    /// Block rows of nodes on the axis.
    axis: Vec<usize>,
}

/// The factored stiffness of one harmonic.
pub(crate) struct Factor<'a> {
    stiffness: &'a Stiffness,
    n: usize,
    values: Vec<f64>,
}

impl Stiffness {
    /// Of a part that is to be loaded at the nodes `loaded`.
    pub(crate) fn new(mesh: &Mesh, elastic: &Elastic, loaded: &[usize]) -> Result<Self, TooLarge> {
        let order = order(mesh, loaded);
        let position = positions(&order);
        let envelope = Envelope::new(first_neighbours(mesh, &position));
        if envelope.len() > MOST_NUMBERS {
            return Err(TooLarge { nodes: mesh.nodes.len() });
        }
        let mut parts: [Vec<f64>; 3] = core::array::from_fn(|_| alloc::vec![0.0; envelope.len()]);
        for element in &mesh.elements {
            let points = points(mesh, element);
            for i in 0..8 {
                for j in 0..8 {
                    let (row, col) = (position[element[i]], position[element[j]]);
                    if col > row {
                        continue;
                    }
                    for (part, block) in parts.iter_mut().zip(blocks(&points, elastic, i, j)) {
                        for (a, line) in block.iter().enumerate() {
                            let at = envelope.index(row, a, col, 0);
                            for (sum, value) in part[at..at + 3].iter_mut().zip(line) {
                                *sum += value;
                            }
                        }
                    }
                }
            }
        }
        let axis = (0..order.len()).filter(|&at| mesh.nodes[order[at]][0] == 0.0).collect();
        Ok(Self { envelope, parts, position, axis })
    }

    /// Unknowns: three for each node.
    pub(crate) fn unknowns(&self) -> usize {
        3 * self.envelope.rows()
    }

    /// Numbers in the envelope of the matrix.
    pub(crate) fn numbers(&self) -> usize {
        self.envelope.len()
    }

    /// The matrix of harmonic `n` before anything is held.
    fn free(&self, n: usize) -> Vec<f64> {
        let n = n as f64;
        let [k0, k1, k2] = &self.parts;
        k0.iter().zip(k1).zip(k2).map(|((a, b), c)| a + n * (b + n * c)).collect()
    }

    /// Product of the free matrix of harmonic `n` with displacements: the forces they need.
    #[cfg(test)]
    pub(crate) fn forces(&self, n: usize, displacements: &[f64]) -> Vec<f64> {
        self.envelope.product(&self.free(n), displacements)
    }

    /// Unknowns that harmonic `n` holds at zero, so that the rest is unique and smooth on the
    /// axis: for n = 0 the spin, one axial motion and the radial motion of the axis; for n >= 2
    /// the whole axis. Harmonic 1 moves the part as a whole and is absent with equal jaws.
    fn held(&self, n: usize) -> Vec<usize> {
        if n == 0 {
            let mut held: Vec<usize> = (0..self.envelope.rows()).map(|row| 3 * row + 1).collect();
            held.extend(self.axis.iter().map(|row| 3 * row));
            held.push(2);
            held
        } else {
            self.axis.iter().flat_map(|row| (0..3).map(move |a| 3 * row + a)).collect()
        }
    }

    /// Factors harmonic `n` (0 or at least 2). None if the matrix is singular to rounding.
    pub(crate) fn factor(&self, n: usize) -> Option<Factor<'_>> {
        let mut values = self.free(n);
        for unknown in self.held(n) {
            self.hold(&mut values, unknown);
        }
        self.envelope.factor(&mut values).then_some(Factor { stiffness: self, n, values })
    }

    fn hold(&self, values: &mut [f64], unknown: usize) {
        let (node, a) = (unknown / 3, unknown % 3);
        for col in self.envelope.first(node)..=node {
            let at = self.envelope.index(node, a, col, 0);
            values[at..at + 3].fill(0.0);
        }
        for row in node..self.envelope.rows() {
            if self.envelope.first(row) <= node {
                for b in 0..3 {
                    values[self.envelope.index(row, b, node, a)] = 0.0;
                }
            }
        }
        values[self.envelope.index(node, a, node, a)] = 1.0;
    }
}

impl Factor<'_> {
    /// Displacements under `sides` loads, both as 3 x nodes lines of `sides` numbers in the
    /// order of `position`.
    pub(crate) fn solve(&self, loads: &mut [f64], sides: usize) {
        for unknown in self.stiffness.held(self.n) {
            loads[unknown * sides..(unknown + 1) * sides].fill(0.0);
        }
        let from = loads.iter().position(|x| *x != 0.0).unwrap_or(0) / (3 * sides);
        self.stiffness.envelope.solve(&self.values, loads, sides, from);
    }
}
