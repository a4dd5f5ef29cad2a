"""Writes the checks of indicator readings and of the grip gauge, by numpy and scipy.

    pip install -r requirements.txt
    python readings.py

Rewrites ../indicator.json, ../grip_gauge.json and circles.json beside this file. Readings are drawn from fixed numbers,
so that the files come out the same every time.
"""

import json
from pathlib import Path

import numpy as np
from scipy import stats
from scipy.optimize import linprog

HERE = Path(__file__).parent
NUMPY = f"numpy {np.__version__}, linalg.lstsq; scipy {__import__('scipy').__version__}, stats.t"


def rounded(value):
    """Enough digits for the tolerances, few enough to read."""
    return float(f"{value:.12g}")


def orders(jaws):
    return sorted({1, 2, jaws, 2 * jaws})


def fourier(stations, jaws, start, waves, noise, missing, seed):
    """One set of readings and its fit; `waves` holds order: (cosine, sine) in m."""
    random = np.random.default_rng(seed)
    angle = start + 2 * np.pi * np.arange(stations) / stations
    y = sum(a * np.cos(n * angle) + b * np.sin(n * angle) for n, (a, b) in waves.items())
    y = y + noise * random.standard_normal(stations) + 12e-6
    read = [None if at in missing else rounded(value) for at, value in enumerate(y)]
    keep = [at for at in range(stations) if at not in missing]
    y, angle = np.array([read[at] for at in keep]), angle[keep]
    names, columns = ["mean"], [np.ones_like(angle)]
    for n in orders(jaws):
        if 2 * n < stations:
            names += [f"cos {n}", f"sin {n}"]
            columns += [np.cos(n * angle), np.sin(n * angle)]
        elif 2 * n == stations:
            names.append(f"cos {n}")
            columns.append(np.cos(n * angle))
    x = np.stack(columns, axis=1)
    solution, *_ = np.linalg.lstsq(x, y, rcond=None)
    expect = {name: rounded(value) for name, value in zip(names, solution)}
    free = len(y) - len(names)
    resolution = 1e-6
    one = 2 * resolution / np.sqrt(12)
    if free:
        scatter = np.sqrt(np.sum((y - x @ solution) ** 2) / free)
        expect["scatter"] = rounded(scatter)
        one = max(one, stats.t.ppf(0.975, free) * scatter)
    covariance = np.linalg.inv(x.T @ x)
    for n in orders(jaws):
        at = [names.index(name) for name in (f"cos {n}", f"sin {n}") if name in names]
        if at:
            way = solution[at] / np.linalg.norm(solution[at])
            expect[f"uncertainty {n}"] = rounded(one * np.sqrt(way @ covariance[np.ix_(at, at)] @ way))
    lost = f", {len(missing)} of them missing" if missing else ""
    return {
        "claim": f"Waves in {stations} stations under {jaws} jaws{lost}, with noise of {noise * 1e6:g} um",
        "source": NUMPY,
        "tolerance": {"relative": 1e-8, "absolute": 1e-15, "because": "rounding: numpy works through a decomposition, we by normal equations"},
        "engine": "fourier_fit",
        "inputs": {"departures": read, "start": start, "jaws": jaws, "resolution": resolution},
        "expect": expect,
    }


def waves(jaws, seed):
    random = np.random.default_rng(seed)
    return {n: tuple(random.uniform(-20e-6, 20e-6, 2)) for n in orders(jaws)}


def gauge(pairs, at, claim):
    pressure, grip = np.array(pairs).T
    line = stats.linregress(pressure, grip)
    assert np.allclose(np.polyfit(pressure, grip, 1), [line.slope, line.intercept])
    n = len(pairs)
    deviation = np.sqrt(np.sum((grip - line.intercept - line.slope * pressure) ** 2) / (n - 2))
    spread = np.sqrt(1 + 1 / n + (at - pressure.mean()) ** 2 / np.sum((pressure - pressure.mean()) ** 2))
    return {
        "claim": claim,
        "source": f"scipy {__import__('scipy').__version__}, stats.linregress and stats.t; numpy polyfit agrees",
        "tolerance": {"relative": 1e-9, "because": "rounding"},
        "engine": "gauge_line",
        "inputs": {"pressure": pressure.tolist(), "grip": grip.tolist(), "at": at},
        "expect": {
            "slope": rounded(line.slope),
            "intercept": rounded(line.intercept),
            "residual_deviation": rounded(deviation),
            "predicted": rounded(line.intercept + line.slope * at),
            "half_width": rounded(stats.t.ppf(0.975, n - 2) * deviation * spread),
        },
    }


def spin(pairs, side, claim):
    speed, grip = np.array(pairs).T
    line = stats.linregress(speed**2, grip)
    n = len(pairs)
    deviation = np.sqrt(np.sum((grip - line.intercept - line.slope * speed**2) ** 2) / (n - 2))
    return {
        "claim": claim,
        "source": f"scipy {__import__('scipy').__version__}, stats.linregress on the square of speed, and stats.t",
        "tolerance": {"relative": 1e-9, "because": "rounding"},
        "engine": "spin_line",
        "inputs": {"speed": speed.tolist(), "grip": grip.tolist(), "side": side},
        "expect": {
            "at_rest": rounded(line.intercept),
            "coefficient": rounded(-line.slope if side == "outside" else line.slope),
            "half_width": rounded(stats.t.ppf(0.975, n - 2) * line.stderr),
            "residual_deviation": rounded(deviation),
        },
    }


class Draws:
    """A linear congruential generator that any language repeats to the digit: 31 bits, of which the upper 15 are used."""

    def __init__(self, seed):
        self.state = seed

    def below(self, bound):
        self.state = (1103515245 * self.state + 12345) % 2**31
        return (self.state >> 16) % bound


def profile(seed):
    """A profile as departures in um at equal angles; circles.rs draws the same."""
    draws = Draws(seed)
    count = 8 + draws.below(65)
    lobes, height, noise = 2 + draws.below(6), draws.below(40), 1 + draws.below(100)
    off = draws.below(60)
    angle = 2 * np.pi * np.arange(count) / count
    scatter = np.array([draws.below(1000) for _ in range(count)]) / 1000 * noise
    return angle, off * np.cos(angle) + height * np.cos(lobes * angle) + scatter


def programmed(cost, rows, bounds, free):
    found = linprog(cost, A_ub=rows, b_ub=bounds, bounds=free, method="highs-ds", options={"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10})
    assert found.status == 0, found.message
    return found


def circles(seed):
    """Widths of zones in um: minimum zone, and peak to valley from the circumscribed and the inscribed circle's radius."""
    angle, e = profile(seed)
    cos, sin, one = np.cos(angle), np.sin(angle), np.ones_like(angle)
    free = [(None, None)] * 3
    zone = programmed([1, 0, 0, 0], np.vstack([np.stack([-one, -one, -cos, -sin], 1), np.stack([-one, one, cos, sin], 1)]), np.concatenate([-e, e]), [(0, None)] + free)
    outer = programmed([1, 0, 0], np.stack([-one, -cos, -sin], 1), -e, free)
    inner = programmed([-1, 0, 0], np.stack([one, cos, sin], 1), e, free)
    least = np.linalg.lstsq(np.stack([one, cos, sin], 1), e, rcond=None)[0]
    off = e - np.stack([one, cos, sin], 1) @ least
    return [rounded(value) for value in (np.ptp(off), 2 * zone.fun, outer.fun, -inner.fun)]


def write(name, what):
    (HERE / name).write_text(json.dumps(what, indent=2) + "\n")


if __name__ == "__main__":
    cases = [
        (6, 3, 0.0, 0.0, [], 1), (6, 2, 0.0, 1e-6, [], 2), (8, 3, 0.0, 2e-6, [], 3), (8, 4, 0.0, 1e-6, [], 4),
        (9, 3, 0.2, 1e-6, [4], 5), (10, 3, 0.0, 3e-6, [0], 6), (12, 3, 0.0, 1e-6, [], 7), (12, 3, 0.4, 5e-6, [2, 7], 8),
        (12, 6, 0.0, 1e-6, [5], 9), (13, 6, -0.3, 2e-6, [], 10), (16, 4, 0.0, 1e-6, [1, 2, 9], 11), (18, 5, 0.1, 2e-6, [3, 4], 12),
        (20, 3, 0.0, 2e-6, [6, 13], 13), (24, 3, 0.0, 1e-6, list(range(5, 10)), 14), (24, 6, 0.5, 4e-6, [0, 8, 16], 15),
        (30, 2, 0.0, 3e-6, [29], 16), (36, 3, 0.0, 0.5e-6, [], 17), (36, 6, -1.0, 10e-6, [4, 5, 6, 20, 31], 18),
    ]
    checks = [fourier(n, jaws, start, waves(jaws, seed), noise, missing, seed + 100) for n, jaws, start, noise, missing, seed in cases]
    write("../indicator.json", {"topic": "Waves in readings of an indicator", "checks": checks})
    gauges = [
        gauge([(1e6, 18.2e3), (1.5e6, 27.9e3), (2e6, 38.4e3), (2.5e6, 46.6e3)], 2e6, "Grip of a gauge line with four readings, at one of them"),
        gauge([(1e6, 18.2e3), (1.5e6, 27.9e3), (2e6, 38.4e3), (2.5e6, 46.6e3)], 2.8e6, "Grip of a gauge line with four readings, beyond them"),
        gauge([(0.8e6, 11e3), (1.2e6, 20.5e3), (1.6e6, 25e3)], 1.4e6, "Grip of a gauge line with three readings has a wide interval"),
        gauge([(p * 1e5, 2.1e3 * p + 900 * ((-1) ** p)) for p in range(6, 18)], 1.1e6, "Grip of a gauge line with twelve readings"),
        spin([(0, 60.1e3), (100, 57.7e3), (200, 51.6e3), (300, 42.9e3)], "outside", "What the spin takes from an outside grip, by four readings"),
        spin([(50, 30.2e3), (150, 33.8e3), (250, 43.9e3), (250, 43.1e3), (320, 52.2e3)], "inside", "What the spin adds to an inside grip, by five readings"),
    ]
    write("../grip_gauge.json", {"topic": "Lines through readings of a grip gauge", "checks": gauges})
    told = [circles(seed) for seed in range(1, 1001)]
    lines = ",\n".join("    " + json.dumps(one) for one in told)
    text = f'{{\n  "source": "scipy {__import__("scipy").__version__}, optimize.linprog, dual simplex; least squares: numpy linalg.lstsq",\n  "profiles": [\n{lines}\n  ]\n}}\n'
    (HERE / "circles.json").write_text(text)
