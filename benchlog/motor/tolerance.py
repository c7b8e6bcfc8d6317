"""Normal tolerance factors: mean ± factor × standard deviation holds a stated share of a population, with a stated
confidence, whatever its mean and spread are.

Exact for a normal population, not Howe's approximation, which at few units is off by up to some per cent.
"""

from functools import lru_cache

import numpy as np

from benchlog.errors import Refused

LEAST_UNITS = 2
_NODES = 96
_FARTHEST = 9.0
"""Standard deviations of the mean beyond which nothing is left to integrate: under 1e-18."""
_HALVINGS = 60


@lru_cache(maxsize=512)
def two_sided_factor(n: int, coverage: float, confidence: float) -> float:
    """k with P(share of the population in mean ± k s ≥ `coverage`) = `confidence`, from `n` independent normal values.

    Where the mean is off by d standard deviations, the share is held from half a width r(d) on; s then must not be
    under r/k. That chance, by chi-square, is integrated over d ~ N(0, 1/n) and solved for k.
    Raises Refused for n < 2 or shares outside 0 to 1.
    Source: textbook (Wald and Wolfowitz 1946, integral form), from memory; values checked in the tests.
    """
    _check(n, coverage, confidence)
    from scipy import special  # late: a fifth of a second that only limits need

    nodes, weights = np.polynomial.legendre.leggauss(_NODES)
    off = 0.5 * _FARTHEST * (nodes + 1) / np.sqrt(n)
    weights = _FARTHEST * weights * np.exp(-0.5 * n * off * off) / np.sqrt(2 * np.pi)
    low, high = np.zeros_like(off), off + special.ndtri(0.5 + 0.5 * coverage)
    for _ in range(_HALVINGS):
        half = 0.5 * (low + high)
        enough = special.ndtr(half - off) - special.ndtr(-half - off) >= coverage
        low, high = np.where(enough, low, half), np.where(enough, half, high)
    least, most = 0.0, 1.0

    def held(factor: float) -> bool:
        return bool(weights @ special.chdtrc(n - 1, (n - 1) * (high / factor) ** 2) >= confidence)

    while not held(most):
        most *= 2
    for _ in range(_HALVINGS):
        factor = 0.5 * (least + most)
        least, most = (least, factor) if held(factor) else (factor, most)
    return most


@lru_cache(maxsize=512)
def one_sided_factor(n: int, coverage: float, confidence: float) -> float:
    """k with P(share of the population below mean + k s ≥ `coverage`) = `confidence`; exact, noncentral t.

    Raises Refused for n < 2 or shares outside 0 to 1. Source: textbook, from memory; checked in the tests.
    """
    _check(n, coverage, confidence)
    from scipy import special

    return float(special.nctdtrit(n - 1, special.ndtri(coverage) * np.sqrt(n), confidence) / np.sqrt(n))


def _check(n: int, coverage: float, confidence: float) -> None:
    if n < LEAST_UNITS:
        raise Refused(f"a spread needs {LEAST_UNITS} values or more; there are {n}")
    for name, share in (("coverage", coverage), ("confidence", confidence)):
        if not 0.0 < share < 1.0:
            raise Refused(f"{name}: {share:g} is not between 0 and 1")
