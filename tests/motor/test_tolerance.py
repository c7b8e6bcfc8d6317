"""Tolerance factors against published tables and against drawing lots."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import chi2, norm

from benchlog.errors import Refused
from benchlog.motor.tolerance import one_sided_factor, two_sided_factor


@pytest.mark.parametrize(("n", "published"), [(4, 6.34), (10, 3.39), (20, 2.76), (30, 2.55), (60, 2.34)])
def test_the_exact_two_sided_factor_is_that_of_the_published_table(n: int, published: float) -> None:
    """Source: a text's table of exact 95/95 factors, published to two decimals."""
    assert round(two_sided_factor(n, 0.95, 0.95), 2) == published


def test_howes_approximation_of_the_handbook_is_near_and_below_the_exact_factor() -> None:
    """Source: NIST/SEMATECH handbook 7.2.6.3, N 43, 90 % with 99 %: Howe's approximation 2.2173159, published."""
    exact = two_sided_factor(43, 0.90, 0.99)
    assert exact == pytest.approx(2.2173159, rel=3e-3)
    assert exact > 2.2173159


def test_the_one_sided_factor_is_near_natrellas_approximation_of_the_handbook() -> None:
    """Source: NIST/SEMATECH handbook 7.2.6.3, N 43, 90 % with 99 %: Natrella's approximation 1.8751896, published."""
    assert one_sided_factor(43, 0.90, 0.99) == pytest.approx(1.8751896, rel=1e-3)


@pytest.mark.parametrize("n", [2, 5, 20])
def test_drawn_samples_hold_the_coverage_with_the_confidence(n: int) -> None:
    """Computed: 400,000 drawn means and spreads, independent of the integral; three standard errors allowed."""
    source = np.random.default_rng(11)
    factor, times = two_sided_factor(n, 0.90, 0.95), 400_000
    mean, spread = (
        source.standard_normal(times) / np.sqrt(n),
        np.sqrt(chi2.rvs(n - 1, size=times, random_state=source) / (n - 1)),
    )
    held = np.mean(norm.cdf(mean + factor * spread) - norm.cdf(mean - factor * spread) >= 0.90)
    assert held == pytest.approx(0.95, abs=3 * np.sqrt(0.95 * 0.05 / times))


@settings(max_examples=20)
@given(st.integers(2, 60), st.floats(0.6, 0.99), st.floats(0.75, 0.99))
def test_one_more_unit_never_widens_the_limits(n: int, coverage: float, confidence: float) -> None:
    two, one = two_sided_factor(n, coverage, confidence), one_sided_factor(n, coverage, confidence)
    assert two > one > 0
    assert two_sided_factor(n + 1, coverage, confidence) <= two * (1 + 1e-9)


def test_many_units_come_to_the_quantile_of_the_normal_distribution() -> None:
    assert two_sided_factor(200_000, 0.95, 0.95) == pytest.approx(float(norm.ppf(0.975)), rel=5e-3)


@pytest.mark.parametrize("factor", [two_sided_factor, one_sided_factor])
def test_one_value_has_no_spread_and_is_refused(factor: object) -> None:
    assert callable(factor)
    with pytest.raises(Refused, match="2 values or more; there are 1"):
        factor(1, 0.95, 0.95)


@pytest.mark.parametrize(("coverage", "confidence"), [(0.0, 0.95), (1.0, 0.95), (0.95, 1.0), (0.95, float("nan"))])
def test_a_share_that_is_none_is_refused(coverage: float, confidence: float) -> None:
    with pytest.raises(Refused, match="is not between 0 and 1"):
        two_sided_factor(10, coverage, confidence)
