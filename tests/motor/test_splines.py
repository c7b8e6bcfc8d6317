"""B-splines against those of scipy, their knots, and what is fitted by them."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.interpolate import BSpline

from benchlog.motor.splines import fitted, knots_of, splines


def test_they_are_the_splines_of_scipy() -> None:
    knots = knots_of(-0.1, 2.0, 0.02, fast_s=(-0.02, 0.4))
    at_s = np.sort(np.random.default_rng(1).uniform(-0.1, 2.0, 500))
    ends = np.concatenate([[knots[0]] * 3, knots, [knots[-1]] * 3])
    assert splines(at_s, knots) == pytest.approx(BSpline.design_matrix(at_s, ends, 3).toarray(), abs=1e-9)
    assert splines(knots[[0, -1]], knots).sum(axis=1) == pytest.approx([1.0, 1.0])


@settings(max_examples=60)
@given(st.floats(-1, 0), st.floats(0.1, 10), st.floats(0.001, 0.05), st.floats(-2, 1), st.floats(0, 2))
def test_knots_rise_from_end_to_end_and_are_close_where_it_is_fast(
    first_s: float, last_s: float, closest_s: float, begins_s: float, lasts_s: float
) -> None:
    knots = knots_of(first_s, last_s, closest_s, fast_s=(begins_s, begins_s + lasts_s))
    apart = np.diff(knots)
    assert (knots[0], knots[-1]) == pytest.approx((first_s, last_s))
    assert np.all(apart > 0)
    assert np.all(apart[:-1] >= 0.99 * closest_s) or len(knots) < 4
    within = (knots[:-1] >= begins_s) & (knots[1:] <= begins_s + lasts_s)
    assert np.all(apart[within][1:-1] <= 1.3 * closest_s)


def test_a_fit_goes_through_what_it_can_be_and_weighs_by_what_readings_are_worth() -> None:
    at_s = np.linspace(0.0, 1.0, 50)
    design = np.stack([np.ones(50), at_s], axis=1)
    line = 3.0 - 2.0 * at_s
    told, left = fitted(design, line)
    assert told == pytest.approx(line, abs=1e-6)
    assert left == pytest.approx(0.0, abs=1e-9)
    spoiled = line.copy()
    spoiled[10] += 100.0
    sigma = np.where(np.arange(50) == 10, 1e6, 1.0)
    told, _ = fitted(design, spoiled, sigma)
    assert told == pytest.approx(line, abs=1e-3)
