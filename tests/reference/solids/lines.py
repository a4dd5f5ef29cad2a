"""What is read along a circle of the part: u_r(theta) over the half pitch, quadratic between nodes."""

import numpy as np

GAUSS, WEIGHT = np.polynomial.legendre.leggauss(8)


def _shapes(s):
    """Quadratic shape functions of the nodes at -1, 0, 1."""
    return np.array([0.5 * s * (s - 1), 1 - s * s, 0.5 * s * (s + 1)])


def _elements(values):
    return np.array([values[0:-1:2], values[1::2], values[2::2]])


def amplitudes(theta, radial, orders, pitch):
    """Coefficients of cos(n theta) in u_r, n over orders; n = 0 is the mean."""
    t = np.einsum("ae,aq->eq", _elements(theta), _shapes(GAUSS))
    u = np.einsum("ae,aq->eq", _elements(radial), _shapes(GAUSS))
    weight = 0.5 * (theta[2::2] - theta[0:-1:2])[:, None] * WEIGHT
    return [float((weight * u * np.cos(n * t)).sum() * (1 if n == 0 else 2) / pitch) for n in orders]


def peak_to_valley(radial):
    """Largest less smallest u_r, looked for between the nodes too."""
    u = np.einsum("ae,aq->eq", _elements(radial), _shapes(np.linspace(-1, 1, 21)))
    return float(u.max() - u.min())
