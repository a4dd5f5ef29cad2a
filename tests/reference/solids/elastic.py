"""Linear elasticity on a half pitch, in cylindrical components at the nodes.

Unknowns are stored as [u_r at all nodes, u_theta at all nodes, u_z at all nodes]. Both symmetry
planes hold u_theta = 0, the axis holds u_r = u_theta = 0, and one node holds u_z = 0: with two or
more equal jaws nothing else can move freely.
"""

import numpy as np
import scipy.sparse as sp
import skfem
from scipy.spatial import cKDTree
from pypardiso import PyPardisoSolver

INTEGRATION = 5  # 3 Gauss points each way; 4 (order 7) move the annulus checks by less than 4e-6


class Solid:
    """A factorised elastic solid on a half-pitch mesh."""

    def __init__(self, mesh, jaws, young, poisson, flat=False):
        """flat: hold u_z = 0 everywhere (plane strain)."""
        self.mesh, self.pitch = mesh, np.pi / jaws
        self.element = skfem.ElementHex2()
        self.basis = skfem.Basis(mesh, self.element, intorder=INTEGRATION)
        x, y, self.z = self.basis.doflocs
        self.r, self.theta = np.hypot(x, y), np.arctan2(y, x)
        self.count = len(x)
        lame = young * poisson / ((1 + poisson) * (1 - 2 * poisson))
        shear = young / (2 * (1 + poisson))
        cos, sin = sp.diags(np.cos(self.theta)), sp.diags(np.sin(self.theta))
        # Columns: the Cartesian components of unit u_r, u_theta, u_z.
        self.turn = sp.bmat([[cos, -sin, None], [sin, cos, None], [None, None, sp.identity(self.count)]], format="csr")
        stiffness = (self.turn.T @ self._cartesian(lame, shear) @ self.turn).tocsr()

        on_axis = self.r < 1e-9
        on_plane = (self.theta < 1e-7) | (self.theta > self.pitch - 1e-7)
        held = np.concatenate([on_axis, on_axis | on_plane, np.full(self.count, flat)])
        if not flat:
            held[2 * self.count + int(np.argmax(self.z))] = True
        self.free = np.flatnonzero(~held)
        self._matrix = sp.triu(stiffness[self.free][:, self.free]).tocsr()
        self._matrix.sort_indices()
        self._solver = PyPardisoSolver(mtype=2)
        self._solver.factorize(self._matrix)

    def _cartesian(self, lame, shear):
        """Stiffness in x, y, z blocks from the nine integrals of d_i N_a d_j N_b."""

        def product(i, j):
            form = skfem.BilinearForm(lambda u, v, w: v.grad[i] * u.grad[j])
            return form.assemble(self.basis)

        d = [[None] * 3 for _ in range(3)]
        for i in range(3):
            for j in range(i, 3):
                d[i][j] = product(i, j)
                d[j][i] = d[i][j].T
        trace = d[0][0] + d[1][1] + d[2][2]
        block = lambda i, j: lame * d[i][j] + shear * d[j][i] + (shear * trace if i == j else 0 * trace)
        return sp.bmat([[block(i, j) for j in range(3)] for i in range(3)], format="csr")

    def solve(self, loads, keep=None):
        """Displacements (rows `keep`, or all) under nodal loads (unknowns, columns)."""
        loads = loads.reshape(3 * self.count, -1)
        kept = np.arange(3 * self.count) if keep is None else keep
        out = np.zeros((len(kept), loads.shape[1]))
        for start in range(0, loads.shape[1], 64):
            part = loads[:, start : start + 64]
            part = part.toarray() if sp.issparse(part) else part
            full = np.zeros((3 * self.count, part.shape[1]))
            right = np.asfortranarray(part[self.free])
            full[self.free] = self._solver.solve(self._matrix, right).reshape(len(self.free), -1)
            out[:, start : start + 64] = full[kept]
        return out

    def release(self):
        self._solver.free_memory(everything=True)

    def nodes_on(self, radius, z, theta_to=np.inf):
        """Nodes on the cylinder of this radius, between z[0] and z[1], up to theta_to."""
        return np.flatnonzero(
            (abs(self.r - radius) < 1e-8) & (self.z > z[0] - 1e-8) & (self.z < z[1] + 1e-8) & (self.theta < theta_to + 1e-7)
        )

    def pressure(self, radius, z, theta_to, law=lambda theta: np.ones_like(theta)):
        """Nodal loads of pressure law(theta) (Pa), pushing into the material.

        Integrated over the unrolled cylinder (theta, z), whose nodes are the solid's own.
        """
        nodes = self.nodes_on(radius, z, theta_to)
        vertex = nodes[nodes < self.mesh.nvertices]
        grid = [np.unique(np.round(x, 9)) for x in (self.theta[vertex], self.z[vertex])]
        unrolled = skfem.Basis(skfem.MeshQuad.init_tensor(*grid), skfem.ElementQuad2(), intorder=8)
        apart, match = cKDTree(np.array([self.theta[nodes], self.z[nodes]]).T).query(unrolled.doflocs.T)
        assert len(match) == len(nodes) and apart.max() < 1e-8, "the surface's nodes are not a grid"
        into = -1.0 if (self.r[self.mesh.t].max(axis=0)[self._touching(nodes)] < radius + 1e-8).all() else 1.0
        load = np.zeros((3, self.count))
        for i, along in enumerate((np.cos, np.sin)):
            form = skfem.LinearForm(lambda v, w: into * radius * law(w.x[0]) * along(w.x[0]) * v)
            load[i, nodes[match]] = form.assemble(unrolled)
        return self.turn.T @ load.ravel()

    def _touching(self, nodes):
        """Elements with a whole side on these nodes."""
        return np.isin(self.mesh.t, nodes).sum(axis=0) == 4

    def spin(self, density, speed):
        """Nodal loads of rotation at `speed` (rad/s)."""
        across = lambda i: skfem.LinearForm(lambda v, w: density * speed**2 * w.x[i] * v).assemble(self.basis)
        return self.turn.T @ np.concatenate([across(0), across(1), np.zeros(self.count)])
