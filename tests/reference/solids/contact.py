"""Unilateral frictionless contact of the gripped nodes with a rigid jaw.

The part's surface is condensed to the radial compliance between the gripped nodes. Unknown are the
nodal forces f >= 0 (of the half jaw) and the jaw's travel t along its axis:

    gap after gripping = gap0 + C f - t cos(theta) >= 0,   f . gap = 0,   sum f cos(theta) = F / 2

gap0 = +(Rj - Rp)(1 - cos(theta)) outside, - inside, with Rj the bored radius of the jaw and Rp the
gripped radius of the part; t is measured from the position in which jaw and part meet at theta = 0.
"""

import numpy as np


def grip(compliance, gap0, cosine, half_force, rounds=200):
    """(nodal forces, travel, rounds used) by a primal-dual active set."""
    touching = np.ones(len(gap0), bool)
    scale = 1.0 / np.mean(np.diag(compliance))
    for n in range(1, rounds + 1):
        on = np.flatnonzero(touching)
        system = np.zeros((len(on) + 1, len(on) + 1))
        system[:-1, :-1] = compliance[np.ix_(on, on)]
        system[:-1, -1] = system[-1, :-1] = -cosine[on]
        answer = np.linalg.solve(system, np.append(-gap0[on], -half_force))
        force = np.zeros(len(gap0))
        force[on] = answer[:-1]
        travel = answer[-1]
        gap = gap0 + compliance @ force - travel * cosine
        after = np.where(touching, force > 0.0, gap < -1e-13)
        if n > 60 and (after != touching).any():
            # The full exchange has cycled: exchange only the worst offender.
            worst = np.argmax(np.where(after != touching, np.where(touching, -force, -gap * scale), -np.inf))
            after = touching.copy()
            after[worst] = ~after[worst]
        if (after == touching).all():
            return force, travel, n
        touching = after
    raise RuntimeError("the active set did not settle")
