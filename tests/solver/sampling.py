"""First-order indices that the shares of `sampling::first_order` are held against.

Ishigami and Homma's function (a = 7, b = 0.1), by its closed form and by scipy.stats.sobol_indices; and a product of
even draws as a hold factor is one: friction times grip over force. Prints JSON, kept in sampling.json.
Needs numpy and scipy (1.11 or later).
"""

import json

import numpy as np
from scipy.stats import sobol_indices, uniform


def ishigami(x):
    return np.sin(x[0]) + 7 * np.sin(x[1]) ** 2 + 0.1 * x[2] ** 4 * np.sin(x[0])


def hold(x):
    friction, grip, force = x
    return friction * grip / force


def first(func, dists, seed):
    found = sobol_indices(func=func, n=2**16, dists=dists, random_state=np.random.default_rng(seed))
    return [round(float(s), 4) for s in found.first_order]


whole = [uniform(loc=-np.pi, scale=2 * np.pi)] * 3
ranges = [uniform(loc=1 - r, scale=2 * r) for r in (0.3, 0.15, 0.2)]
a, b = 7.0, 0.1
variance = a**2 / 8 + b * np.pi**4 / 5 + b**2 * np.pi**8 / 18 + 0.5
closed = [0.5 * (1 + b * np.pi**4 / 5) ** 2 / variance, a**2 / 8 / variance, 0.0]
draws = np.random.default_rng(1).uniform([0.7, 0.85, 0.8], [1.3, 1.15, 1.2], (10**7, 3)).T
print(
    json.dumps(
        {
            "ishigami_closed": [round(s, 4) for s in closed],
            "ishigami": first(ishigami, whole, 1),
            "hold": first(hold, ranges, 2),
            "hold_share_above": {"0.9": round(float((hold(draws) > 0.9).mean()), 4)},
        },
        indent=2,
    )
)
