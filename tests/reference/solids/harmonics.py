"""The engine's method once more, as one would write it with numpy: how long it takes, and how far off it is.

    venv/bin/python harmonics.py flange-far

A Fourier series around the axis, quadratic rings of eight nodes in the half section, one banded factor per
harmonic, and jaws pressed on at hats around the arc. It shares no line with the engine and takes the part, its jaws
and the best estimates from solids.json; the search for what touches is that of contact.py. Steps must be cylinders
with a bore. The last line it prints is JSON, as that of clock.py; the least of several runs is told.
"""

import os

for name in ("OMP_NUM_THREADS", "MKL_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(name, "1")

import json
import sys
import time
from pathlib import Path

import numpy as np
from scipy.linalg import cho_solve_banded, cholesky_banded

from contact import grip

SOLIDS = Path(__file__).with_name("solids.json")
RUNS = 5
HARMONICS = 30  # beside the mean, multiples of the number of jaws
SHORT_WAVES = 800  # up to so many the half-plane stands in for the part
ARC = 16  # cells of half a jaw's arc
SIZE = 4e-3  # m: largest side of an element
SHARP = 0.4e-3  # m: its side at a shoulder and at the end of the grip
GAUSS, WEIGHT = np.polynomial.legendre.leggauss(3)
# Corners, then middles of the sides, of the element on -1..1 squared.
NODES = np.array([(-1, -1), (1, -1), (1, 1), (-1, 1), (0, -1), (1, 0), (0, 1), (-1, 0)], float)


def shapes(s, t):
    """Shape functions of the eight nodes and their slopes in s and t."""
    value, by_s, by_t = np.zeros(8), np.zeros(8), np.zeros(8)
    for k, (a, b) in enumerate(NODES):
        if a and b:
            value[k] = (1 + a * s) * (1 + b * t) * (a * s + b * t - 1) / 4
            by_s[k] = a * (1 + b * t) * (2 * a * s + b * t) / 4
            by_t[k] = b * (1 + a * s) * (a * s + 2 * b * t) / 4
        elif b:
            value[k] = (1 - s * s) * (1 + b * t) / 2
            by_s[k], by_t[k] = -s * (1 + b * t), b * (1 - s * s) / 2
        else:
            value[k] = (1 + a * s) * (1 - t * t) / 2
            by_s[k], by_t[k] = a * (1 - t * t) / 2, -t * (1 + a * s)
    return value, by_s, by_t


def cut(stops, sharp):
    """Sides of elements from the first stop to the last: SHARP at the sharp stops, growing to SIZE away from them."""
    grid = [stops[0]]
    for low, high in zip(stops[:-1], stops[1:]):
        ends = [low in sharp, high in sharp]
        steps, left, k = [], high - low, 0
        while left > 0:
            steps.append(min(SHARP * 2**k if any(ends) else SIZE, SIZE))
            left -= steps[-1] * (2 if all(ends) else 1)
            k += 1
        if all(ends):
            steps = steps + steps[::-1]
        elif ends[1]:
            steps = steps[::-1]
        grid += list(low + (high - low) * np.cumsum(steps) / sum(steps))
    return np.array(grid)


class Section:
    """The half section in rings: nodes ordered along the axis, so that the stiffness is a band."""

    def __init__(self, part, jaws, planes):
        steps, ends = part["steps"], np.round(np.cumsum([0.0] + [s["length"] for s in part["steps"]]), 9)
        outer, inner = ([s[key][0] / 2 for s in steps] for key in ("outer_diameter", "inner_diameter"))
        straight = all(s[key][0] == s[key][1] for s in steps for key in ("outer_diameter", "inner_diameter"))
        assert straight and min(inner) > 0, "cylinders with a bore"
        edges = [z for z in (*ends[1:-1], *jaws["z"]) if 0 < z < part["length"]]
        z = cut(sorted({0.0, part["length"], *ends, *jaws["z"], *planes}), edges)
        radii = sorted({*outer, *inner})
        r = cut(radii, radii[1:-1])
        of = np.searchsorted(ends, (z[:-1] + z[1:]) / 2) - 1
        middle = (r[:-1] + r[1:]) / 2
        cells = [(i, j) for j, k in enumerate(of) for i in range(len(middle)) if inner[k] < middle[i] < outer[k]]
        i, j = np.array(cells).T
        # On the grid of half elements a node has even and odd places.
        key = lambda a, b: (2 * j + 1 + b) * (2 * len(r)) + 2 * i + 1 + a
        keys = np.array([key(int(a), int(b)) for a, b in NODES]).T
        known, self.elements = np.unique(keys, return_inverse=True)
        self.elements = self.elements.reshape(keys.shape)
        halves = lambda grid: np.interp(np.arange(2 * len(grid) - 1) / 2, np.arange(len(grid)), grid)
        self.r, self.z = halves(r)[known % (2 * len(r))], halves(z)[known // (2 * len(r))]
        self.sides = np.array([(r[i + 1] - r[i]) / 2, (z[j + 1] - z[j]) / 2])
        self.count = len(known)
        self._integrate(part)

    def _integrate(self, part):
        """Stiffness as K0 + n K1 + n^2 K2 in upper bands, and the load of spin."""
        young, poisson = part["young"], part["poisson"]
        shear, lame = young / (2 * (1 + poisson)), young * poisson / ((1 + poisson) * (1 - 2 * poisson))
        law = np.diag([2 * shear] * 3 + [shear] * 3)
        law[:3, :3] += lame
        count = len(self.elements)
        parts = np.zeros((3, count, 24, 24))
        self.spin = np.zeros(3 * self.count)
        for s, a in zip(GAUSS, WEIGHT):
            for t, b in zip(GAUSS, WEIGHT):
                value, by_s, by_t = shapes(s, t)
                r = self.r[self.elements] @ value
                by_r, by_z = by_s / self.sides[0][:, None], by_t / self.sides[1][:, None]
                over_r = value / r[:, None]
                # Strains rr, tt, zz, rz, rt, tz of u_r cos, u_t sin, u_z cos: those without n, those with it.
                plain, turning = np.zeros((2, count, 6, 24))
                plain[:, 0, 0::3], plain[:, 1, 0::3], plain[:, 2, 2::3] = by_r, over_r, by_z
                plain[:, 3, 0::3], plain[:, 3, 2::3] = by_z, by_r
                plain[:, 4, 1::3], plain[:, 5, 1::3] = by_r - over_r, by_z
                turning[:, 1, 1::3], turning[:, 4, 0::3], turning[:, 5, 2::3] = over_r, -over_r, -over_r
                weight = a * b * self.sides[0] * self.sides[1] * r
                stressed = [weight[:, None, None] * (law @ strain) for strain in (plain, turning)]
                turned = [strain.transpose(0, 2, 1) for strain in (plain, turning)]
                parts[0] += turned[0] @ stressed[0]
                parts[1] += turned[0] @ stressed[1] + turned[1] @ stressed[0]
                parts[2] += turned[1] @ stressed[1]
                np.add.at(self.spin, 3 * self.elements, (part["density"] * weight * r)[:, None] * value)
        at = (3 * self.elements[:, :, None] + np.arange(3)).reshape(count, 24)
        row, column = np.broadcast_arrays(at[:, :, None], at[:, None, :])
        upper = row <= column
        row, column = row[upper], column[upper]
        width = int((column - row).max())
        self.bands = np.zeros((3, width + 1, 3 * self.count))
        for band, whole in zip(self.bands, parts):
            np.add.at(band, (width + row - column, column), whole[upper])

    def solve(self, n, loads):
        """Displacements of the n-th harmonic."""
        band = self.bands[0] + n * self.bands[1] + n * n * self.bands[2]
        if n == 0:
            # Nothing turns, and nothing moves along the axis as a whole: springs that no load reaches.
            stiff = abs(band[-1]).max()
            band[-1, 1::3] += stiff
            band[-1, 2] += stiff
        return cho_solve_banded((cholesky_banded(band, check_finite=False), False), loads, check_finite=False)

    def at(self, radius, z):
        return int(np.argmin((self.r - radius) ** 2 + (self.z - z) ** 2))


def around(angles, orders):
    """Integrals of the hats over `angles` times cos(n theta), a row for every n; n = 0 comes first."""
    n = np.array(orders[1:], float)[:, None]
    slope = np.diff(np.cos(n * angles)) / np.diff(angles) / n**2
    none = np.zeros_like(n)
    hats = np.hstack([none, slope]) - np.hstack([slope, none])
    hats[:, -1:] += np.sin(n * angles[-1]) / n
    return np.vstack([np.convolve(np.diff(angles), [0.5, 0.5]), hats])


def along(section, radius, band):
    """Nodes of the grip, loads of pressure in hats between them, and the hats' own integrals."""
    nodes = np.flatnonzero((abs(section.r - radius) < 1e-9) & (section.z > band[0] - 1e-9) & (section.z < band[1] + 1e-9))
    z = section.z[nodes]
    loads, squares, sums = np.zeros((3 * section.count, len(z))), np.zeros((len(z), len(z))), np.zeros(len(z))
    for first in range(0, len(z) - 1, 2):
        for half in (0, 1):
            low = first + half
            for s, weight in zip(GAUSS, WEIGHT):
                weight *= radius * (z[low + 1] - z[low]) / 2
                hat = np.array([(1 - s) / 2, (1 + s) / 2])
                t = (s + 1) / 2 - 1 + half
                quadratic = np.array([t * (t - 1) / 2, 1 - t * t, t * (t + 1) / 2])
                loads[np.ix_(3 * nodes[first : first + 3], [low, low + 1])] += weight * np.outer(quadratic, hat)
                squares[low : low + 2, low : low + 2] += weight * np.outer(hat, hat)
                sums[low : low + 2] += weight * hat
    return nodes, loads, squares, sums


def work_out(case):
    """[(load, peak to valley or growth of each of its circles)], and the number of unknowns of a harmonic."""
    part, jaws = case["part"], case["jaws"]
    count, radius = jaws["count"], jaws["gripped_diameter"] / 2
    inward = 1.0 if jaws["side"] == "outside" else -1.0
    circles = [(line["radius"], line["z"]) for line in case["results"][0]["lines"]]
    section = Section(part, jaws, [z for _, z in circles])
    nodes, loads, squares, sums = along(section, radius, jaws["z"])
    read = 3 * np.array([section.at(*circle) for circle in circles])
    angles = jaws["half_angle"] * np.sin(np.pi * np.arange(ARC + 1) / (2 * ARC))

    orders = count * np.arange(SHORT_WAVES)
    hats = around(angles, orders)
    share = count / np.pi * np.where(orders > 0, 2.0, 1.0)
    # Displacement of the circles by pressure's waves; short ones move a circle only if it is pressed itself.
    half_plane = 2 * (1 - part["poisson"] ** 2) * radius / part["young"] / np.maximum(orders, 1)
    moved = -inward * half_plane[:, None, None] * (read[:, None] == 3 * nodes)
    compliance = 0.0
    for k in range(HARMONICS + 1):
        answer = section.solve(orders[k], -inward * loads)
        moved[k] = answer[read]
        compliance = compliance + share[k] * np.kron(np.outer(hats[k], hats[k]), -inward * loads.T @ answer)
    short = hats[HARMONICS + 1 :]
    weight = (share * half_plane)[HARMONICS + 1 :, None]
    compliance += np.kron(short.T @ (weight * short), squares)
    # From pressures to forces at the hats, and from integrals of the gap to its mean under them.
    areas = np.kron(hats[0], sums)
    cosine = np.kron(around(angles, [0, 1])[1], sums) / areas
    compliance /= np.outer(areas, areas)
    waves = np.cos(np.outer(orders, np.linspace(0, np.pi / count, 721)))

    def lobes(force):
        pressure = share[:, None] * hats @ (force / areas).reshape(len(angles), -1)
        return np.ptp(np.einsum("nck,nk->cn", moved, pressure) @ waves, axis=1)

    found = []
    for load in case["results"]:
        kind, half = load["load"], load.get("force_per_jaw", 0.0) / 2
        if kind == "uniform":
            found.append(lobes(half * areas / (areas @ cosine)))
        elif kind == "rigid":
            assert not load.get("taper"), "straight jaws"
            force, _, _ = grip(compliance, inward * load["mismatch"] * (1 - cosine), cosine, half)
            found.append(lobes(force))
        else:
            found.append(section.solve(0, load["speed"] ** 2 * section.spin)[read])
    return found, 3 * section.count


def main(name):
    case = next(c for c in json.loads(SOLIDS.read_text())["cases"] if c["name"] == name)
    seconds = []
    for _ in range(RUNS):
        start = time.process_time()
        found, unknowns = work_out(case)
        seconds.append(time.process_time() - start)
    off = dict(uniform=0.0, rigid=0.0, spin=0.0)
    for load, figures in zip(case["results"], found):
        figure = "mean" if load["load"] == "spin" else "peak_to_valley"
        best = np.array([line[figure]["value"] for line in load["lines"]])
        off[load["load"]] = max(off[load["load"]], abs(figures - best).max() / abs(best).max())
    print(f"growth under spin off by {100 * off['spin']:.3f} %")
    print(json.dumps(dict(seconds=min(seconds), unknowns=unknowns, off=[off["uniform"], off["rigid"]])))


if __name__ == "__main__":
    main(sys.argv[1])
