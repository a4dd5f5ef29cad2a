"""Reference figures for held turned parts, by three-dimensional finite elements.

Independent of the product: the elements, their integration and their assembly are scikit-fem's, the
factorisation is PARDISO's (pypardiso), and no Fourier series around the axis is used.

Axes and signs
    z runs along the part's axis from its front face (z = 0, the side away from the chuck).
    theta = 0 is the middle of a jaw; one half pitch, 0 to pi / J, is modelled between its two
    symmetry planes. u_r is positive outward. cosine[n] is the coefficient of cos(n theta) in u_r;
    n = 0 is the mean. Peak to valley is the largest less the smallest u_r around the circle.
    Force per jaw is the resultant along the jaw's own axis: for uniform pressure p over half angle
    beta, length L and radius R it is p 2 R sin(beta) L.
    Rigid jaw: frictionless, unilateral, bored parallel to the part's axis to radius
    Rj = Rp + mismatch; its gap before gripping is +(Rj - Rp)(1 - cos theta) outside, - inside. A
    jaw with a taper has a further gap, slope times the distance from the end of the grip that
    touches first: the back end for a slope > 0, the front end for one < 0.
    Jaw travel is along its axis, positive toward the part, from touching at theta = 0 at zero load.
    Spin is rotation alone, no jaws.
    Everything is small displacement, linear elastic, SI.

Mesh error
    Each set-up is solved on three meshes of cell size 1, 1/2 and 1/3; `meshes` are their figures.
    `value` is Richardson's extrapolation from the two finer, with the order that the three show,
    held between 1.5 and 4. `mesh_error` (absolute, in the figure's unit) is the larger of that
    extrapolation's step beyond the finest mesh and half the difference of the two finer; where the
    three figures do not close in steadily, the whole difference takes the half's place. A figure
    near zero has a large error relative to itself: compare it on the scale of its part's largest.

Run
    python -m venv venv && venv/bin/pip install -r requirements.txt
    venv/bin/python checks.py              closed forms first
    venv/bin/python solve.py               every case, into solids.json (half an hour of one core)
    venv/bin/python solve.py ring-pie ...  these alone, replaced in solids.json
"""

import os

for name in ("OMP_NUM_THREADS", "MKL_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(name, "1")

import json
import platform
import sys
import time
from importlib.metadata import version
from pathlib import Path

import numpy as np
import scipy.sparse as sp

from body import half_pitch
from cases import CASES
from contact import grip
from elastic import Solid
from lines import amplitudes, peak_to_valley

OUT = Path(__file__).with_name("solids.json")


def line_radius(case, surface, z):
    """The surface's radius at z; at a shoulder, of the step in front of it."""
    outer, inner = case.profile.radii_before(z)
    return inner if surface == "bore" else outer


def on_level(case, level):
    """{load: {quantity: figure}} on one mesh, with the mesh's size."""
    start = time.process_time()
    mesh = half_pitch(
        case.profile, case.jaws, case.edge, case.band, case.grip_radius,
        [z for _, z in case.lines], case.cells, level, case.core,
    )
    solid = Solid(mesh, case.jaws, case.material["young"], case.material["poisson"])
    circles = []
    for surface, z in case.lines:
        nodes = solid.nodes_on(line_radius(case, surface, z), (z, z))
        circles.append(nodes[np.argsort(solid.theta[nodes])])
    gripped = solid.nodes_on(case.grip_radius, case.band, case.edge)
    keep = np.concatenate([gripped] + circles)
    inward = 1.0 if case.side == "outside" else -1.0

    def read(radial):
        """Every figure of every line, from u_r at the kept nodes."""
        found, at = {}, len(gripped)
        for (surface, z), nodes in zip(case.lines, circles):
            theta, u = solid.theta[nodes], radial[at : at + len(nodes)]
            at += len(nodes)
            found[surface, z, "peak_to_valley"] = peak_to_valley(u)
            orders = [k * case.jaws for k in range(4)]
            for n, a in zip(orders, amplitudes(theta, u, orders, solid.pitch)):
                found[surface, z, n] = a
        return found

    loads = {}
    if case.uniform:
        z0, z1 = case.band
        pressure = case.force / (2 * case.grip_radius * np.sin(case.edge) * (z1 - z0))
        load = pressure * solid.pressure(case.grip_radius, case.band, case.edge)
        cosine = np.cos(solid.theta)
        along = -inward * (load[: solid.count] * cosine - load[solid.count : 2 * solid.count] * np.sin(solid.theta)).sum()
        assert abs(along / (case.force / 2) - 1) < 1e-4, f"resultant of the pressure: {along} N"
        loads["uniform"] = read(solid.solve(load * (case.force / 2 / along), keep)[:, 0])
    rigid = [(mismatch, 0.0) for mismatch in case.mismatches] + [(0.0, taper) for taper in case.tapers]
    if rigid:
        count = len(gripped)
        push = sp.csc_matrix((np.full(count, -inward), (gripped, np.arange(count))), (3 * solid.count, count))
        answer = solid.solve(push, keep)
        compliance = -inward * answer[:count]
        lopsided = abs(compliance - compliance.T).max() / abs(compliance).max()
        assert lopsided < 1e-7, f"compliance is not symmetric: {lopsided}"
        compliance = 0.5 * (compliance + compliance.T)
        cosine = np.cos(solid.theta[gripped])
        for mismatch, taper in rigid:
            z, (front, back) = solid.z[gripped], case.band
            relief = abs(taper) * (back - z if taper > 0 else z - front)
            gap = inward * mismatch * (1 - cosine) + relief
            force, travel, rounds = grip(compliance, gap, cosine, case.force / 2)
            figures = read(answer @ force)
            figures["travel"] = travel
            loads["rigid", mismatch, taper] = figures
            print(f"    rigid {mismatch:+.2e}, taper {taper:+.2e}: {rounds} rounds, {np.count_nonzero(force)} of {count} nodes touch, "
                  f"outermost {np.degrees(solid.theta[gripped][force > 0]).max():.3f}, innermost {np.degrees(solid.theta[gripped][force > 0]).min():.3f} degrees")
    if case.speed:
        loads["spin"] = read(solid.solve(solid.spin(case.material["density"], case.speed), keep)[:, 0])
    size = dict(elements=int(mesh.nelements), unknowns=len(solid.free), gripped_nodes=len(gripped))
    solid.release()
    size["cpu_seconds"] = round(time.process_time() - start, 1)
    print(f"  level {level}: {size}", flush=True)
    return loads, size


ORDERS = (1.5, 4.0)  # least and most order of convergence that an extrapolation may take


def settled(levels, values):
    """(value, mesh error) from three meshes, coarse to fine."""
    size = 1 / np.array(levels)
    first, last = values[1] - values[0], values[2] - values[1]
    shown = lambda p: (size[0] ** p - size[1] ** p) / (size[1] ** p - size[2] ** p)
    orders = np.linspace(*ORDERS, 251)
    ratio = first / last if last != 0 else np.inf
    steady = ratio > shown(1.0)
    order = orders[np.argmin(abs(shown(orders) - ratio))] if steady else ORDERS[0]
    step = last / ((size[1] / size[2]) ** order - 1)
    return values[2] + step, max(abs(step), abs(last) * (0.5 if steady else 1.0))


def figure(levels, values):
    best, error = settled(levels, values)
    return dict(value=float(f"{best:.7g}"), mesh_error=float(f"{error:.2g}"), meshes=[float(f"{v:.7g}") for v in values])


def solve(case):
    print(case.name, flush=True)
    runs = [on_level(case, level) for level in case.levels]
    results = []
    for load in runs[0][0]:
        by_level = [run[0][load] for run in runs]
        kind = load if isinstance(load, str) else load[0]
        entry = dict(load=kind)
        if kind == "rigid":
            entry["mismatch"] = load[1]
            if load[2]:
                entry["taper"] = load[2]
            entry["jaw_travel"] = figure(case.levels, [b["travel"] for b in by_level])
        if kind == "spin":
            entry["speed"] = case.speed
        else:
            entry["force_per_jaw"] = case.force
        entry["lines"] = []
        for surface, z in case.lines:
            get = lambda key: figure(case.levels, [b[surface, z, key] for b in by_level])
            line = dict(surface=surface, z=round(z, 9), radius=round(float(line_radius(case, surface, z)), 9))
            if kind != "spin":
                line["peak_to_valley"] = get("peak_to_valley")
            line["mean"] = get(0)
            if kind != "spin":
                line["cosine"] = {str(n): get(n) for n in (case.jaws, 2 * case.jaws, 3 * case.jaws)}
            entry["lines"].append(line)
        results.append(entry)
    ends = case.profile.ends()
    return dict(
        name=case.name,
        purpose=case.purpose,
        part=dict(
            steps=[
                dict(length=s.length, outer_diameter=[round(2 * r, 9) for r in s.outer], inner_diameter=[round(2 * r, 9) for r in s.inner])
                for s in case.profile.steps
            ],
            length=round(float(ends[-1]), 9),
            **case.material,
        ),
        jaws=dict(
            count=case.jaws, half_angle=case.edge, half_angle_degrees=case.half_angle, side=case.side,
            z=[round(z, 9) for z in case.band], gripped_diameter=round(2 * case.grip_radius, 9),
        ),
        meshes=[size for _, size in runs],
        results=results,
    )


def made_by():
    names = ("scikit-fem", "scipy", "numpy", "pypardiso", "mkl")
    return dict(python=platform.python_version(), **{n: version(n) for n in names})


def main(wanted):
    known = {c["name"]: c for c in json.loads(OUT.read_text())["cases"]} if OUT.exists() else {}
    for case in CASES:
        if not wanted or case.name in wanted:
            known[case.name] = solve(case)
            whole = dict(
                about="Reference figures for held turned parts by three-dimensional finite elements; SI units; conventions, "
                "mesh errors and how to run again: solve.py beside this file",
                made_by=made_by(),
                cases=[known[c.name] for c in CASES if c.name in known],
            )
            OUT.write_text(json.dumps(whole, indent=1) + "\n")


if __name__ == "__main__":
    main(sys.argv[1:])
