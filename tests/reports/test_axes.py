"""Round numbers along an axis: few, even, and over all of it."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.reports.axes import ticks_between


@given(st.floats(-1e3, 1e3), st.floats(1e-3, 1e4), st.integers(2, 12))
def test_they_are_few_and_evenly_apart_from_the_first_inside_to_the_first_beyond(
    low: float, span: float, count: int
) -> None:
    high = low + span
    ticks = ticks_between(low, high, count)
    assert 1 <= len(ticks) <= count + 2
    step = ticks[1] - ticks[0] if len(ticks) > 1 else span
    assert low - 1e-5 * step <= ticks[0] <= low + step * 1.001
    assert ticks[-1] >= high - 0.002 * step
    assert all(abs(b - a - step) < 1e-6 * step + 1e-9 for a, b in pairwise(ticks))


def test_they_are_numbers_that_people_count_in() -> None:
    assert ticks_between(0, 1.8, 6) == [0, 0.5, 1.0, 1.5, 2.0]
    assert ticks_between(-0.1, 0.98, 9) == [-0.0, 0.2, 0.4, 0.6, 0.8, 1.0]
    assert ticks_between(1.64, 1.9, 6) == [1.65, 1.7, 1.75, 1.8, 1.85, 1.9]


@pytest.mark.parametrize(("low", "high"), [(1.0, 1.0), (2.0, 1.0), (0.0, float("nan")), (0.0, float("inf"))])
def test_what_is_no_axis_is_said(low: float, high: float) -> None:
    with pytest.raises(ValueError, match="no axis"):
        ticks_between(low, high, 5)
