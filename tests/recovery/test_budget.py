"""Sliding sums that never forget too early, and rests that are long enough."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.recovery.budget import WINDOW_S, Budget, SlidingSum
from benchlog.recovery.ceilings import Layer, Limits, intersect


@given(st.lists(st.tuples(st.floats(0.0, 20.0), st.floats(0.0, 5.0)), max_size=60), st.floats(0.0, 30.0))
def test_a_sliding_sum_is_never_below_what_went_in_during_the_last_minute(
    additions: list[tuple[float, float]], later_s: float
) -> None:
    total, at_s, log = SlidingSum(), 0.0, []
    for gap_s, amount in additions:
        at_s += gap_s
        total.add(at_s, amount)
        log.append((at_s, amount))
    now_s = at_s + later_s
    exact = sum(amount for when, amount in log if when >= now_s - WINDOW_S)
    assert total.total(now_s) >= exact - 1e-9


@given(st.lists(st.tuples(st.floats(0.2, 20.0), st.floats(0.01, 1.0)), min_size=1, max_size=30), st.floats(0.0, 3.0))
def test_after_the_wait_there_is_room(additions: list[tuple[float, float]], room: float) -> None:
    total, at_s = SlidingSum(), 0.0
    for gap_s, amount in additions:
        at_s += gap_s
        total.add(at_s, amount)
    assert total.total(at_s + total.wait_for(at_s, room) + 0.01) <= room + 1e-9


def test_time_shown_to_be_turning_is_taken_back() -> None:
    total = SlidingSum()
    total.add(1.0, 0.5)
    for k in range(10):
        total.add(2.0 + 0.1 * k, 0.1)
    assert total.take_back(1.9) == pytest.approx(1.0)
    assert total.total(3.0) == pytest.approx(0.5)


def test_a_rest_names_the_ceiling_that_asks_for_it_and_is_enough() -> None:
    ceilings = intersect({Layer.JOB: Limits(volts=12.0)})
    budget = Budget(ceilings, ambient_c=25.0, rated_volts=12.0)
    budget.learn(8.0)
    budget._heat.add(10.0, 15.0)
    rest_s, asked_by = budget.rest_for(10.0, joules=8.0)
    assert asked_by == "winding temperature"
    assert rest_s > 1.0
    assert budget._heat.winding_c_after(10.0 + rest_s, 8.0) <= ceilings.winding_c.value
