//! The eight-node harmonic element.
//!
//! Displacement around the axis: `u_r = u cos(n t)`, `u_t = v sin(n t)`, `u_z = w cos(n t)`.
//! Strains are linear in n, so the stiffness is `K0 + n K1 + n^2 K2`: three integrals serve every
//! harmonic. Source: E. L. Wilson, "Structural analysis of axisymmetric solids", AIAA J. 3 (1965)
//! 2269-2274; O. C. Zienkiewicz and R. L. Taylor, *The Finite Element Method*, vol. 2, chapter on
//! semi-analytical methods (both from memory). All integrals are over (r, z) with weight r; the
//! factor pi (2 pi for n = 0) from around the axis is left to the loads.

use super::mesh::Mesh;

/// Elastic constants and density of one part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elastic {
    /// Young's modulus, Pa.
    pub youngs: f64,
    /// Poisson's ratio, above -1 and below 0.49 (quadratic elements lock near 0.5).
    pub poisson: f64,
    /// Density, kg/m3.
    pub density: f64,
}

impl Elastic {
    /// Whether the constants are those of a solid these elements cover.
    pub fn is_valid(&self) -> bool {
        self.youngs > 0.0
            && self.youngs.is_finite()
            && self.poisson > -1.0
            && self.poisson < 0.49
            && self.density >= 0.0
            && self.density.is_finite()
    }

    /// Lame's constants lambda and mu, Pa.
    pub(crate) fn lame(&self) -> (f64, f64) {
        let (e, nu) = (self.youngs, self.poisson);
        (e * nu / ((1.0 + nu) * (1.0 - 2.0 * nu)), e / (2.0 * (1.0 + nu)))
    }
}

/// Three-point Gauss rule on [-1, 1]: (abscissa, weight).
pub(crate) const GAUSS: [(f64, f64); 3] =
    [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];

/// Shape functions of a three-node side at `x` in [-1, 1], and their slopes.
#[cfg(test)]
pub(crate) fn side(x: f64) -> ([f64; 3], [f64; 3]) {
    ([x * (x - 1.0) / 2.0, 1.0 - x * x, x * (x + 1.0) / 2.0], [x - 0.5, -2.0 * x, x + 0.5])
}

/// Parent coordinates of the nodes.
const XI: [f64; 8] = [-1.0, 1.0, 1.0, -1.0, 0.0, 1.0, 0.0, -1.0];
const ETA: [f64; 8] = [-1.0, -1.0, 1.0, 1.0, -1.0, 0.0, 1.0, 0.0];

/// Shape functions and their slopes along xi and eta.
fn shape(x: f64, y: f64) -> [[f64; 3]; 8] {
    core::array::from_fn(|k| {
        let (a, b) = (XI[k], ETA[k]);
        let (p, q) = (1.0 + a * x, 1.0 + b * y);
        if k < 4 {
            let s = a * x + b * y - 1.0;
            [p * q * s / 4.0, a * q * (s + p) / 4.0, b * p * (s + q) / 4.0]
        } else if a == 0.0 {
            [(1.0 - x * x) * q / 2.0, -x * q, (1.0 - x * x) * b / 2.0]
        } else {
            [p * (1.0 - y * y) / 2.0, a * (1.0 - y * y) / 2.0, -p * y]
        }
    })
}

/// One integration point of an element: shape functions with their slopes along r and z, the
/// radius, and the weight `r dr dz`.
pub(crate) struct Point {
    pub(crate) n: [f64; 8],
    pub(crate) dr: [f64; 8],
    pub(crate) dz: [f64; 8],
    pub(crate) r: f64,
    pub(crate) weight: f64,
}

/// The nine integration points of an element.
pub(crate) fn points(mesh: &Mesh, element: &[usize; 8]) -> [Point; 9] {
    let at = element.map(|k| mesh.nodes[k]);
    core::array::from_fn(|k| {
        let ((x, wx), (y, wy)) = (GAUSS[k % 3], GAUSS[k / 3]);
        let shapes = shape(x, y);
        let mut jacobian = [[0.0; 2]; 2];
        let mut r = 0.0;
        for (s, p) in shapes.iter().zip(&at) {
            r += s[0] * p[0];
            for (a, row) in jacobian.iter_mut().enumerate() {
                for (b, entry) in row.iter_mut().enumerate() {
                    *entry += s[a + 1] * p[b];
                }
            }
        }
        let [[rx, zx], [ry, zy]] = jacobian;
        let det = rx * zy - zx * ry;
        Point {
            n: shapes.map(|s| s[0]),
            dr: shapes.map(|s| (zy * s[1] - zx * s[2]) / det),
            dz: shapes.map(|s| (rx * s[2] - ry * s[1]) / det),
            r,
            weight: wx * wy * det * r,
        }
    })
}

/// A 3 x 3 block coupling (u, v, w) of one node to (u, v, w) of another.
pub(crate) type Block = [[f64; 3]; 3];

/// Blocks of K0, K1 and K2 between local nodes `i` and `j`.
pub(crate) fn blocks(points: &[Point; 9], elastic: &Elastic, i: usize, j: usize) -> [Block; 3] {
    let (lambda, mu) = elastic.lame();
    let stiff = lambda + 2.0 * mu;
    let mut k0 = [[0.0; 3]; 3];
    let mut k1 = [[0.0; 3]; 3];
    let mut k2 = [[0.0; 3]; 3];
    for p in points {
        let w = p.weight;
        let (ri, zi, hi) = (p.dr[i], p.dz[i], p.n[i] / p.r);
        let (rj, zj, hj) = (p.dr[j], p.dz[j], p.n[j] / p.r);
        let (twist_i, twist_j) = (ri - hi, rj - hj);
        k0[0][0] += w * (stiff * (ri * rj + hi * hj) + lambda * (ri * hj + hi * rj) + mu * zi * zj);
        k0[0][2] += w * (lambda * (ri + hi) * zj + mu * zi * rj);
        k0[2][0] += w * (lambda * zi * (rj + hj) + mu * ri * zj);
        k0[2][2] += w * (stiff * zi * zj + mu * ri * rj);
        k0[1][1] += w * mu * (twist_i * twist_j + zi * zj);
        k1[0][1] += w * ((lambda * ri + stiff * hi) * hj - mu * twist_j * hi);
        k1[1][0] += w * ((lambda * rj + stiff * hj) * hi - mu * twist_i * hj);
        k1[2][1] += w * (lambda * zi * hj - mu * zj * hi);
        k1[1][2] += w * (lambda * zj * hi - mu * zi * hj);
        let hoop = w * hi * hj;
        k2[0][0] += mu * hoop;
        k2[1][1] += stiff * hoop;
        k2[2][2] += mu * hoop;
    }
    [k0, k1, k2]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn constants_of_no_solid_and_of_nearly_incompressible_ones_are_refused() {
        let solid = Elastic { youngs: 2e11, poisson: 0.3, density: 0.0 };
        let bad = [
            Elastic { poisson: 0.49, ..solid },
            Elastic { poisson: -1.0, ..solid },
            Elastic { youngs: 0.0, ..solid },
            Elastic { density: -1.0, ..solid },
        ];
        assert!(solid.is_valid() && bad.iter().all(|elastic| !elastic.is_valid()), "each bound is left out");
    }

    #[test]
    fn shape_functions_are_one_at_their_node_and_sum_to_one() {
        for k in 0..8 {
            let at = shape(XI[k], ETA[k]);
            for (j, s) in at.iter().enumerate() {
                let wanted = if j == k { 1.0 } else { 0.0 };
                assert!((s[0] - wanted).abs() < 1e-15, "node {j} seen from node {k}: {}", s[0]);
            }
        }
        let s = shape(0.3, -0.7);
        assert!((s.iter().map(|s| s[0]).sum::<f64>() - 1.0).abs() < 1e-15, "unity");
        for d in 1..3 {
            assert!(s.iter().map(|s| s[d]).sum::<f64>().abs() < 1e-15, "slopes cancel");
        }
    }
}
