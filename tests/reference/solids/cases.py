"""The jobs solved. Radii in the code, m; forces in N; the set-ups are invented."""

from dataclasses import dataclass

import numpy as np

from body import Profile, Step, cylinder

STEEL = dict(young=206e9, poisson=0.29, density=7850.0)
ALUMINIUM = dict(young=70e9, poisson=0.33, density=2700.0)
IRON = dict(young=110e9, poisson=0.26, density=7200.0)

MM = 1e-3


def rpm(value):
    return value * 2 * np.pi / 60


@dataclass(frozen=True)
class Case:
    name: str
    purpose: str
    profile: Profile
    material: dict
    jaws: int
    half_angle: float  # degrees
    band: tuple  # z of the grip, m
    side: str  # "outside" or "inside"
    force: float  # N per jaw, resultant along the jaw's axis
    lines: tuple  # (surface, z)
    cells: dict
    mismatches: tuple = ()  # Rj - Rp, m, for rigid jaws
    tapers: tuple = ()  # slope of rigid jaws that fit: + opens toward the front face, - toward the back
    speed: float = 0.0  # rad/s, for spin alone
    uniform: bool = True
    core: float = None
    levels: tuple = (1, 2, 3)

    @property
    def edge(self):
        return np.radians(self.half_angle)

    @property
    def grip_radius(self):
        outer, inner = self.profile.radii(0.5 * sum(self.band))
        return outer if self.side == "outside" else inner


def lines(*pairs):
    return tuple((surface, z * MM) for surface, z in pairs)


def both(*z):
    return lines(*[(surface, x) for x in z for surface in ("bore", "outside")])


RING = Profile((cylinder(32 * MM, 60 * MM, 52 * MM),))
THICK = Profile((cylinder(26 * MM, 46 * MM, 25 * MM),))
TUBE = Profile((cylinder(63 * MM, 51 * MM, 43 * MM),))
CUP = Profile((cylinder(40 * MM, 56 * MM, 51 * MM), cylinder(9 * MM, 56 * MM, 0.0)))
FLANGED = Profile((cylinder(11 * MM, 61 * MM, 30 * MM), cylinder(45 * MM, 36 * MM, 30 * MM)))
LARGE = Profile((cylinder(28 * MM, 81 * MM, 72 * MM),))
THIN = Profile((cylinder(24 * MM, 60 * MM, 57.6 * MM),))
LONG = Profile((cylinder(90 * MM, 30 * MM, 24 * MM),))
FLAT = Profile((cylinder(8 * MM, 70 * MM, 45 * MM),))
CAP = Profile((cylinder(7 * MM, 48 * MM, 0.0), cylinder(38 * MM, 48 * MM, 42 * MM)))
CONED = Profile((Step(34 * MM, (34 * MM, 42 * MM), (28 * MM, 28 * MM)), cylinder(18 * MM, 42 * MM, 28 * MM)))
SLEEVE = Profile((cylinder(30 * MM, 45 * MM, 33 * MM),))
HUB = Profile((cylinder(12 * MM, 75 * MM, 40 * MM), cylinder(30 * MM, 50 * MM, 40 * MM)))
WIDE = Profile((cylinder(36 * MM, 65 * MM, 56 * MM),))
NECKED = Profile((cylinder(14 * MM, 55 * MM, 30 * MM), cylinder(40 * MM, 38 * MM, 30 * MM)))
POT = Profile((cylinder(36 * MM, 50 * MM, 44 * MM), cylinder(8 * MM, 50 * MM, 0.0)))
BLIND = Profile((cylinder(35 * MM, 32 * MM, 14 * MM), cylinder(25 * MM, 32 * MM, 0.0)))
FUNNEL = Profile((Step(40 * MM, (45 * MM, 45 * MM), (38 * MM, 30 * MM)),))
LINER = Profile((cylinder(80 * MM, 40 * MM, 34 * MM),))
BUSH = Profile((cylinder(40 * MM, 50 * MM, 35 * MM),))
BROAD = Profile((cylinder(45 * MM, 90 * MM, 78 * MM),))
COLLAR = Profile((cylinder(10 * MM, 100 * MM, 58 * MM), cylinder(40 * MM, 70 * MM, 58 * MM)))

CASES = (
    Case(
        "ring-narrow", "plain ring, narrow jaws over half its length", RING, STEEL, 3, 9.0,
        (16 * MM, 32 * MM), "outside", 2500.0, both(0, 16, 32),
        dict(theta=(4, 6), r=[2], z=(3, 3)), (0.0, 0.6 * MM, -0.6 * MM),
    ),
    Case(
        "ring-pie", "plain ring, pie jaws over its whole length", RING, STEEL, 3, 57.0,
        (0.0, 32 * MM), "outside", 4000.0, both(0, 16, 32),
        dict(theta=(8, 1), r=[2], z=(2, 2)), (0.0, 0.04 * MM, -0.04 * MM),
    ),
    Case(
        "thick-aluminium", "thick aluminium ring, ordinary jaws over half its length", THICK, ALUMINIUM, 3, 22.0,
        (13 * MM, 26 * MM), "outside", 6000.0, both(0, 13, 26),
        dict(theta=(5, 4), r=[3], z=(3, 3)), (0.0, 0.05 * MM, -0.05 * MM), speed=rpm(4000),
    ),
    Case(
        "inside-third", "tube gripped in the bore over a third of its length", TUBE, STEEL, 3, 25.0,
        (42 * MM, 63 * MM), "inside", 3000.0, both(0, 31.5, 63),
        dict(theta=(5, 4), r=[2], z=(4, 2, 3)), (0.0, 0.08 * MM, -0.08 * MM),
    ),
    Case(
        "cup-floor", "floored cup gripped at its floor", CUP, STEEL, 3, 26.0,
        (40 * MM, 49 * MM), "outside", 5000.0,
        lines(("bore", 0), ("outside", 0), ("bore", 20), ("outside", 20), ("outside", 49)),
        dict(theta=(4, 4), r=[1, 2], z=(2, 3, 2)), (0.0, 0.05 * MM, -0.05 * MM), speed=rpm(3000), core=24 * MM,
    ),
    Case(
        "flange-far", "flanged tube gripped at the end away from its flange", FLANGED, STEEL, 3, 30.0,
        (36 * MM, 56 * MM), "outside", 4500.0,
        lines(("bore", 0), ("outside", 0), ("bore", 11), ("bore", 56), ("outside", 56)),
        dict(theta=(5, 4), r=[2, 1], z=(2, 3, 3)), (0.0, 0.05 * MM, -0.05 * MM, -0.15 * MM), speed=rpm(3500),
    ),
    Case(
        "six-jaws", "cast-iron ring in six jaws", LARGE, IRON, 6, 13.0,
        (0.0, 28 * MM), "outside", 3000.0, both(0, 14, 28),
        dict(theta=(5, 4), r=[3], z=(2, 2)), (0.0, 0.1 * MM, -0.1 * MM),
    ),
    Case(
        "coned-outside", "part with a coned outside and a straight bore, gripped on its cylinder", CONED, STEEL, 3, 24.0,
        (34 * MM, 52 * MM), "outside", 5500.0,
        lines(("bore", 0), ("outside", 0), ("bore", 17), ("outside", 17), ("bore", 52), ("outside", 52)),
        dict(theta=(5, 4), r=[2], z=(2, 2, 3)), (0.0, 0.05 * MM, -0.05 * MM, -0.15 * MM), speed=rpm(4500),
    ),
    Case(
        "ring-tapered", "plain ring, rigid jaws bored with a taper either way", RING, STEEL, 3, 25.0,
        (12 * MM, 32 * MM), "outside", 2500.0, both(0, 12, 32),
        dict(theta=(5, 4), r=[2], z=(3, 4)), (0.0,), (1e-3, -1e-3),
    ),
    Case(
        "thin-wall", "ring with a wall of a twenty-fifth of its radius", THIN, STEEL, 3, 18.0,
        (12 * MM, 24 * MM), "outside", 400.0, both(0, 12, 24),
        dict(theta=(5, 5), r=[2], z=(3, 3)), (0.0, 0.1 * MM, -0.1 * MM),
    ),
    Case(
        "long-tube", "tube of one and a half diameters, gripped at its end", LONG, STEEL, 3, 28.0,
        (70 * MM, 90 * MM), "outside", 2500.0, both(0, 45, 90),
        dict(theta=(5, 4), r=[2], z=(3, 2, 3)), (0.0, 0.04 * MM, -0.04 * MM),
    ),
    Case(
        "flat-ring", "ring a seventeenth of its diameter long", FLAT, STEEL, 3, 20.0,
        (0.0, 8 * MM), "outside", 5000.0, both(0, 4, 8),
        dict(theta=(5, 4), r=[3], z=(2, 2)), (0.0, 0.08 * MM, -0.08 * MM), speed=rpm(4000),
    ),
    Case(
        "cup-rim", "floored cup gripped at its rim", CAP, STEEL, 3, 24.0,
        (33 * MM, 45 * MM), "outside", 3500.0,
        lines(("outside", 0), ("bore", 25), ("outside", 25), ("bore", 45), ("outside", 45)),
        dict(theta=(4, 4), r=[1, 2], z=(2, 2, 2, 3)), (0.0, 0.05 * MM, -0.05 * MM), core=20 * MM,
    ),
    Case(
        "two-jaws", "sleeve in two wide jaws", SLEEVE, STEEL, 2, 60.0,
        (10 * MM, 30 * MM), "outside", 4000.0, both(0, 10, 30),
        dict(theta=(7, 3), r=[2], z=(3, 4)), (0.0, 0.06 * MM, -0.06 * MM),
    ),
    Case(
        "flange-gripped", "cast-iron hub gripped on its flange in four jaws", HUB, IRON, 4, 20.0,
        (0.0, 12 * MM), "outside", 4000.0,
        lines(("bore", 0), ("outside", 0), ("bore", 12), ("bore", 42), ("outside", 42)),
        dict(theta=(5, 4), r=[2, 3], z=(3, 3)), (0.0, 0.08 * MM, -0.08 * MM), speed=rpm(2500),
    ),
    Case(
        "inside-six", "aluminium ring gripped in the bore in six jaws", WIDE, ALUMINIUM, 6, 14.0,
        (12 * MM, 36 * MM), "inside", 1500.0, both(0, 12, 36),
        dict(theta=(5, 4), r=[2], z=(3, 4)), (0.0, 0.06 * MM, -0.06 * MM), speed=rpm(3500),
    ),
    Case(
        "inside-flange", "flanged tube gripped in the bore under its flange", NECKED, STEEL, 3, 28.0,
        (0.0, 14 * MM), "inside", 5000.0,
        lines(("bore", 0), ("outside", 0), ("bore", 14), ("bore", 54), ("outside", 54)),
        dict(theta=(5, 4), r=[2, 2], z=(3, 4)), (0.0, 0.05 * MM, -0.05 * MM),
    ),
    Case(
        "inside-mouth", "floored cup gripped in the bore at its mouth", POT, STEEL, 3, 25.0,
        (0.0, 20 * MM), "inside", 3000.0,
        lines(("bore", 0), ("outside", 0), ("bore", 20), ("outside", 20), ("outside", 44)),
        dict(theta=(5, 4), r=[1, 2], z=(3, 2, 2)), (0.0, 0.05 * MM, -0.05 * MM), core=20 * MM,
    ),
    Case(
        "blind-bore", "stout part with a blind bore, gripped around the bore", BLIND, STEEL, 3, 24.0,
        (5 * MM, 30 * MM), "outside", 9000.0,
        lines(("bore", 0), ("outside", 0), ("bore", 17.5), ("outside", 17.5), ("outside", 60)),
        dict(theta=(5, 4), r=[1, 3], z=(2, 2, 2, 2, 3)), (0.0, 0.02 * MM, -0.02 * MM), core=7 * MM,
    ),
    Case(
        "coned-bore", "straight aluminium part with a coned bore", FUNNEL, ALUMINIUM, 3, 30.0,
        (20 * MM, 40 * MM), "outside", 3000.0, both(0, 20, 40),
        dict(theta=(5, 4), r=[2], z=(3, 4)), (0.0, 0.05 * MM, -0.05 * MM), speed=rpm(5000),
    ),
    Case(
        "middle-pie", "liner gripped around its middle in pie jaws", LINER, STEEL, 3, 55.0,
        (25 * MM, 55 * MM), "outside", 5000.0, both(0, 40, 80),
        dict(theta=(8, 1), r=[2], z=(3, 2, 2, 3)), (0.0, 0.03 * MM, -0.03 * MM),
    ),
    Case(
        "bush-tapered", "bush in rigid jaws bored with a slight taper either way", BUSH, STEEL, 3, 20.0,
        (10 * MM, 40 * MM), "outside", 8000.0, both(0, 10, 40),
        dict(theta=(5, 4), r=[2], z=(3, 4)), (0.0,), (0.5e-3, -0.5e-3),
    ),
    Case(
        "four-tapered", "aluminium ring in four rigid jaws bored with a taper", WIDE, ALUMINIUM, 4, 25.0,
        (10 * MM, 36 * MM), "outside", 3000.0, both(0, 10, 36),
        dict(theta=(5, 4), r=[2], z=(3, 4)), (0.0, 0.05 * MM), (1.5e-3,),
    ),
    Case(
        "inside-narrow", "ring gripped inside over a third by narrow jaws", BROAD, STEEL, 3, 17.0,
        (0.0, 15 * MM), "inside", 3000.0, both(0, 15, 45),
        dict(theta=(5, 4), r=[2], z=(3, 4)), (0.0, 0.05 * MM, -0.05 * MM), speed=rpm(2500),
    ),
    Case(
        "flange-six", "flanged tube gripped away from its flange in six jaws", COLLAR, STEEL, 6, 12.0,
        (34 * MM, 50 * MM), "outside", 2500.0,
        lines(("bore", 0), ("outside", 0), ("bore", 10), ("bore", 50), ("outside", 50)),
        dict(theta=(5, 4), r=[2, 1], z=(3, 3, 3)), (0.0, 0.05 * MM, -0.05 * MM), speed=rpm(3000),
    ),
    Case(
        "ring-far-off", "ring in jaws bored much too large and small", RING, STEEL, 3, 25.0,
        (12 * MM, 32 * MM), "outside", 2500.0, both(0, 12, 32),
        dict(theta=(5, 4), r=[2], z=(3, 4)), (0.3 * MM, -0.3 * MM, 0.02 * MM, -0.02 * MM), uniform=False,
    ),
)
