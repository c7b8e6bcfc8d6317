"""Normal tolerance factors: mean ± factor × standard deviation holds a stated share of a population, with a stated
confidence, whatever its mean and spread are.

Exact for a normal population, not Howe's approximation, which at few units is too small by up to some per cent.
"""

from functools import lru_cache

import numpy as np

from benchlog.errors import Refused

LEAST_UNITS = 2
_NODES = 96
_FARTHEST = 9.0
"""Standard deviations of the mean beyond which nothing is left to integrate: under 1e-18."""


@lru_cache(maxsize=512)
def two_sided_factor(n: int, coverage: float, confidence: float) -> float:
    """k with P(share of the population in mean ± k s ≥ `coverage`) = `confidence`, from `n` independent normal values.

    Where the mean is off by d standard deviations, the share is held from half a width r(d) on, r² being a quantile of
    the noncentral chi-square; s then must not be under r/k. That chance is integrated over d ~ N(0, 1/n) and solved
    for k. Raises Refused for n < 2 or shares outside 0 to 1.
    Source: textbook (Wald and Wolfowitz 1946, integral form), from memory; values checked in the tests.
    """
    _check(n, coverage, confidence)
    from scipy import optimize, stats  # late: half a second that only judging needs

    nodes, weights = np.polynomial.legendre.leggauss(_NODES)
    off = 0.5 * _FARTHEST * (nodes + 1)
    weights = 0.5 * _FARTHEST * weights * 2 * np.exp(-0.5 * off * off) / np.sqrt(2 * np.pi)
    half_squared = stats.ncx2.ppf(coverage, 1, off * off / n)

    def missing(factor: float) -> float:
        return float(weights @ stats.chi2.sf((n - 1) * half_squared / factor**2, n - 1)) - confidence

    low = high = float(np.sqrt(stats.chi2.ppf(coverage, 1)))
    while missing(low) > 0:
        low /= 2
    while missing(high) < 0:
        high *= 2
    return float(optimize.brentq(missing, low, high, xtol=1e-10))


@lru_cache(maxsize=512)
def one_sided_factor(n: int, coverage: float, confidence: float) -> float:
    """k with P(share of the population below mean + k s ≥ `coverage`) = `confidence`; exact, noncentral t.

    Raises Refused for n < 2 or shares outside 0 to 1. Source: textbook, from memory; checked in the tests.
    """
    _check(n, coverage, confidence)
    from scipy import stats

    return float(stats.nct.ppf(confidence, n - 1, stats.norm.ppf(coverage) * np.sqrt(n)) / np.sqrt(n))


def _check(n: int, coverage: float, confidence: float) -> None:
    if n < LEAST_UNITS:
        raise Refused(f"a spread needs {LEAST_UNITS} values or more; there are {n}")
    for name, share in (("coverage", coverage), ("confidence", confidence)):
        if not 0.0 < share < 1.0:
            raise Refused(f"{name}: {share:g} is not between 0 and 1")
