"""Reference hold factors by a general cone solver.

Poses the lower-bound theorem directly, in three-dimensional contact forces and
without scaling, and hands it to Clarabel: the largest multiple of a load that
friction forces within mu N and pushing seat points can balance. Cases are drawn
at random. Writes hold_socp.json beside this file.

    pip install numpy scipy clarabel
    python hold_socp.py
"""

import json
import pathlib

import clarabel
import numpy as np
from scipy import sparse

SEAT_POINTS = 24


def columns(points, directions):
    """Wrench columns of unit forces at points."""
    return np.vstack([directions.T, np.cross(points, directions).T])


def factor(case, seat):
    """Largest load multiple. `seat` is None, "points", or a ring's radius."""
    position = np.array(case["position"])
    normal = np.array(case["normal"])
    limit = case["friction"] * np.array(case["normal_force"])
    unit = limit.sum()
    load = np.concatenate([case["force"], case["moment"]])
    load = load / np.linalg.norm(load[:3])
    n = len(limit)

    # Unknowns: multiple, 3 n contact forces over `unit`, seat unknowns.
    blocks = [load[:, None]]
    blocks += [columns(np.tile(p, (3, 1)), np.eye(3)) for p in position]
    z_seat = case["seat"]["z"] if seat is not None else 0.0
    if seat == "points":
        angle = 2 * np.pi * np.arange(SEAT_POINTS) / SEAT_POINTS
        radius = case["seat"]["radius"]
        ring = np.stack(
            [radius * np.cos(angle), radius * np.sin(angle), np.full(SEAT_POINTS, z_seat)], axis=1
        )
        blocks.append(columns(ring, np.tile([0.0, 0.0, 1.0], (SEAT_POINTS, 1))))
    elif seat is not None:
        # Push N and its two moments, |M| <= radius N.
        push = np.zeros((6, 3))
        push[2, 0] = push[3, 1] = push[4, 2] = 1.0
        blocks.append(push)
    balance = np.hstack(blocks)
    m = balance.shape[1]

    rows, right, cones = [balance], [np.zeros(6)], [clarabel.ZeroConeT(6)]
    square = np.zeros((n, m))
    for i in range(n):
        square[i, 1 + 3 * i : 4 + 3 * i] = normal[i]
    rows.append(square)
    right.append(np.zeros(n))
    cones.append(clarabel.ZeroConeT(n))
    if seat == "points":
        pushes = np.zeros((SEAT_POINTS, m))
        pushes[:, 1 + 3 * n :] = -np.eye(SEAT_POINTS)
        rows.append(pushes)
        right.append(np.zeros(SEAT_POINTS))
        cones.append(clarabel.NonnegativeConeT(SEAT_POINTS))
    elif seat is not None:
        cone = np.zeros((3, m))
        cone[:, 1 + 3 * n :] = -np.diag([seat, 1.0, 1.0])
        rows.append(cone)
        right.append(np.zeros(3))
        cones.append(clarabel.SecondOrderConeT(3))
    for i in range(n):
        cone = np.zeros((4, m))
        cone[1:, 1 + 3 * i : 4 + 3 * i] = -np.eye(3)
        rows.append(cone)
        right.append([limit[i] / unit, 0.0, 0.0, 0.0])
        cones.append(clarabel.SecondOrderConeT(4))

    cost = np.zeros(m)
    cost[0] = -1.0
    settings = clarabel.DefaultSettings()
    settings.verbose = False
    settings.tol_gap_abs = settings.tol_gap_rel = settings.tol_feas = 1e-10
    solver = clarabel.DefaultSolver(
        sparse.csc_matrix((m, m)),
        cost,
        sparse.csc_matrix(np.vstack(rows)),
        np.concatenate(right),
        cones,
        settings,
    )
    solution = solver.solve()
    if str(solution.status) != "Solved":
        return None
    return -solution.obj_val * unit / np.linalg.norm(case["force"])


def jaws(rng):
    """Patches of points on a cylinder, forces uneven."""
    count = int(rng.choice([2, 3, 4, 6]))
    radius, length = rng.uniform(0.02, 0.15), rng.uniform(0.01, 0.08)
    half = rng.uniform(0.05, 0.9 * np.pi / count)
    angle = np.concatenate(
        [2 * np.pi * j / count + half * rng.uniform(-1, 1, 5) for j in range(count)]
    )
    outward = np.stack([np.cos(angle), np.sin(angle), np.zeros_like(angle)], axis=1)
    position = radius * outward
    position[:, 2] = -length * rng.uniform(0, 1, len(angle))
    return position, -outward, radius, length


def scatter(rng):
    """Points and normals with no order at all."""
    n = int(rng.integers(4, 12))
    normal = rng.normal(size=(n, 3))
    normal /= np.linalg.norm(normal, axis=1, keepdims=True)
    return rng.uniform(-0.1, 0.1, (n, 3)), normal, 0.1, 0.1


def draw(rng, seated, ordered):
    position, normal, radius, length = jaws(rng) if ordered else scatter(rng)
    force = rng.normal(size=3) * 1000.0
    arm = np.array([*rng.uniform(-1.5, 1.5, 2) * radius, rng.uniform(0, 4) * length])
    case = {
        "position": position.tolist(),
        "normal": normal.tolist(),
        "normal_force": rng.uniform(100, 2000, len(position)).tolist(),
        "friction": float(rng.uniform(0.05, 0.4)),
        "force": force.tolist(),
        "moment": (np.cross(arm, force) + rng.normal(size=3) * 20.0).tolist(),
        "seat": {"radius": 0.8 * radius, "z": -length} if seated else None,
    }
    case["factor"] = factor(case, "points" if seated else None)
    if seated:
        radius = case["seat"]["radius"]
        case["ring_factor"] = factor(case, radius)
        case["inner_ring_factor"] = factor(case, radius * np.cos(np.pi / SEAT_POINTS))
    solved = [case[key] for key in case if key.endswith("factor")]
    return case if all(solved) else None


def main():
    rng = np.random.default_rng(20)
    cases = []
    for seated, ordered, wanted in [
        (False, True, 8),
        (True, True, 8),
        (False, False, 4),
        (True, False, 4),
    ]:
        kept = 0
        while kept < wanted:
            case = draw(rng, seated, ordered)
            if case is not None:
                cases.append(case)
                kept += 1
    path = pathlib.Path(__file__).with_suffix(".json")
    path.write_text("[\n" + ",\n".join(json.dumps(case) for case in cases) + "\n]\n")
    print(f"{len(cases)} cases")


if __name__ == "__main__":
    main()
