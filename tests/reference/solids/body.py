"""Half pitch of a body of revolution in quadratic hexahedra (27 nodes).

The half pitch runs from theta = 0, the middle of a jaw, to theta = pi / J, midway to the next jaw.
A part is a list of steps along z. Between neighbouring radii and neighbouring z the mesh is a
regular grid; it is graded toward the jaw's edge, the ends of the grip and re-entrant corners. A
floor that closes on the axis gets a four-sided core around the axis, so no element collapses.
"""

from dataclasses import dataclass

import numpy as np
import skfem

SAME = 1e-9  # m: points nearer than this are one point
# Grading: cell boundaries go as this power of their number, counted from the sharp end.
POWER = dict(jaw=2.2, beside=2.6, r=2.0, z=1.6)


@dataclass(frozen=True)
class Step:
    """A length of the part: radii (m) at its two ends; inner 0 is solid."""

    length: float
    outer: tuple
    inner: tuple


def cylinder(length, outer, inner):
    return Step(length, (outer, outer), (inner, inner))


@dataclass(frozen=True)
class Profile:
    """Steps from the front face (z = 0) along +z."""

    steps: tuple

    def ends(self):
        return np.concatenate([[0.0], np.cumsum([s.length for s in self.steps])])

    def radii(self, z):
        """(outer, inner) radius at z; at a shoulder, of the step behind it."""
        ends = self.ends()
        k = min(max(np.searchsorted(ends, z, side="right") - 1, 0), len(self.steps) - 1)
        step, t = self.steps[k], (z - ends[k]) / self.steps[k].length
        return (
            step.outer[0] + t * (step.outer[1] - step.outer[0]),
            step.inner[0] + t * (step.inner[1] - step.inner[0]),
        )

    def radii_before(self, z):
        """(outer, inner) radius just before z: at a shoulder, of the step in front of it."""
        return self.radii(z - 1e-12) if z > 0 else self.radii(0.0)

    def corners(self):
        """Re-entrant corners (r, z), where stress is singular."""
        found = []
        for z in self.ends()[1:-1]:
            (outer_a, inner_a), (outer_b, inner_b) = self.radii_before(z), self.radii(z)
            if abs(outer_a - outer_b) > SAME:
                found.append((min(outer_a, outer_b), z))
            if abs(inner_a - inner_b) > SAME:
                found.append((max(inner_a, inner_b), z))
        return found

    def curves(self):
        """Grid lines r(z), from the inside out, as functions of z."""
        cones = any(abs(s.outer[0] - s.outer[1]) + abs(s.inner[0] - s.inner[1]) > SAME for s in self.steps)
        if not cones:
            radii = sorted({round(r, 9) for s in self.steps for r in s.outer + s.inner if r > 0})
            return [lambda z, r=r: np.full_like(z, r) for r in radii]
        # A coned part without shoulders: its bore and its outside are the only grid lines.
        z = self.ends()
        outer = [self.radii_before(x)[0] for x in z]
        inner = [self.radii_before(x)[1] for x in z]
        return [lambda x: np.interp(x, z, inner), lambda x: np.interp(x, z, outer)]


def graded(lo, hi, cells, at_lo, at_hi, power):
    """Cell boundaries from lo to hi, crowded toward the marked ends."""
    s = np.linspace(0.0, 1.0, cells + 1)
    if at_lo and at_hi:
        s = np.where(s < 0.5, 0.5 * (2 * s) ** power, 1 - 0.5 * (2 * (1 - s)) ** power)
    elif at_lo:
        s = s**power
    elif at_hi:
        s = 1 - (1 - s) ** power
    return lo + s * (hi - lo)


def joined(pieces):
    """Grids that share end points, as one grid."""
    return np.concatenate([pieces[0]] + [p[1:] for p in pieces[1:]])


def near(value, values):
    return any(abs(value - v) < SAME for v in values)


class Core:
    """Four-sided block around the axis: corners on the axis, at A, C and B.

    Its outer sides A-C and C-B are straight, square to the two symmetry planes, and meet at the
    jaw's edge angle; a point of either side is known by its theta.
    """

    def __init__(self, size, edge, pitch):
        self.size, self.edge, self.pitch = size, edge, pitch
        self.c = size * np.array([1.0, np.tan(edge)])
        self.reach_b = size / np.cos(edge) * np.cos(pitch - edge)
        self.b = self.reach_b * np.array([np.cos(pitch), np.sin(pitch)])

    def radius(self, theta):
        return np.where(
            theta <= self.edge, self.size / np.cos(theta), self.reach_b / np.cos(self.pitch - theta)
        )

    def place(self, theta_a, theta_b):
        v = np.tan(theta_a) / np.tan(self.edge)
        u = np.tan(self.pitch - theta_b) / np.tan(self.pitch - self.edge)
        a = np.array([self.size, 0.0])
        return tuple(u * (1 - v) * a[i] + u * v * self.c[i] + (1 - u) * v * self.b[i] for i in (0, 1))


def half_pitch(profile, jaws, edge, band, grip_radius, line_z, cells, level=1, core_size=None):
    """Mesh of the half pitch.

    edge: half angle of the jaw (rad); band: (z, z) of the grip; line_z: further z that must be grid
    lines; cells: dict of base counts - "theta" (under the jaw, beside it), "r" (per gap between
    radii, with the one around the core first), "z" (per gap between z); level multiplies them.
    """
    pitch = np.pi / jaws
    count = lambda n: int(n * level)
    theta = [graded(0.0, edge, count(cells["theta"][0]), False, edge < pitch - SAME, POWER["jaw"])]
    if edge < pitch - SAME:
        theta.append(graded(edge, pitch, count(cells["theta"][1]), True, False, POWER["beside"]))
    split, theta = len(theta[0]) - 1, joined(theta)

    corners = profile.corners()
    length = profile.ends()[-1]
    sharp_z = [z for _, z in corners] + [z for z in band if SAME < z < length - SAME]
    stops = sorted({round(z, 9) for z in [*profile.ends(), *band, *line_z]})
    z_grid = joined([
        graded(a, b, count(n), near(a, sharp_z), near(b, sharp_z), POWER["z"])
        for a, b, n in zip(stops[:-1], stops[1:], cells["z"], strict=True)
    ])

    curves = profile.curves()
    core = None
    if core_size is not None:
        core = Core(core_size, edge, pitch)
        curves = [None] + curves
    sharp_r = [r for r, _ in corners] + [grip_radius]

    def rim(k, t, z):
        return core.radius(t) if curves[k] is None else curves[k](z)

    blocks = []  # (place function, low corners (n, 3), high corners (n, 3))
    middle = lambda x: 0.5 * (x[:-1] + x[1:])
    z_mid = middle(z_grid)
    for k in range(len(curves) - 1):
        start = np.array([0.0])
        sharp = [False if curves[i] is None else near(float(curves[i](np.array([band[0]]))[0]), sharp_r) for i in (k, k + 1)]
        s = graded(0.0, 1.0, count(cells["r"][k]), *sharp, POWER["r"])
        filled = []
        for m, z in enumerate(z_mid):
            outer, inner = profile.radii(z)
            at = np.array([z])
            low = 0.0 if curves[k] is None else float(curves[k](at)[0])
            r = 0.5 * (low + float(curves[k + 1](at)[0]))
            if inner < r < outer:
                filled.append(m)
        i, j, m = (x.ravel() for x in np.meshgrid(np.arange(len(s) - 1), np.arange(len(theta) - 1), filled, indexing="ij"))
        m = m.astype(int)

        def place(q, k=k):
            s, t, z = q
            r = (1 - s) * rim(k, t, z) + s * rim(k + 1, t, z)
            return np.array([r * np.cos(t), r * np.sin(t), z])

        blocks.append((place, np.array([s[i], theta[j], z_grid[m]]), np.array([s[i + 1], theta[j + 1], z_grid[m + 1]])))
    if core is not None:
        filled = [m for m, z in enumerate(z_mid) if profile.radii(z)[1] < SAME]
        i, j, m = (x.ravel() for x in np.meshgrid(np.arange(split), np.arange(split, len(theta) - 1), filled, indexing="ij"))

        def place_core(q):
            x, y = core.place(q[0], q[1])
            return np.array([x, y, q[2] + 0.0 * x])

        blocks.append((place_core, np.array([theta[i], theta[j], z_grid[m]]), np.array([theta[i + 1], theta[j + 1], z_grid[m + 1]])))

    reference = skfem.ElementHex2().doflocs  # (27, 3) in the unit cube, corners first
    points = np.concatenate(
        [
            place(low[:, None, :] + reference.T[:, :, None] * (high - low)[:, None, :])
            for place, low, high in blocks
        ],
        axis=2,
    )  # (3, 27, elements)
    corner = points[:, :8, :].reshape(3, -1)
    _, first, index = np.unique(np.round(corner / SAME).astype(np.int64), axis=1, return_index=True, return_inverse=True)
    straight = skfem.MeshHex(np.ascontiguousarray(corner[:, first]), np.ascontiguousarray(index.reshape(8, -1)))
    dofs = skfem.Basis(straight, skfem.ElementHex2(), intorder=1).element_dofs
    nodes = np.zeros((3, dofs.max() + 1))
    nodes[:, dofs] = points
    return skfem.MeshHex2(nodes, straight.t)
