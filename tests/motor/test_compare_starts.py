"""Captured starts against others: means with intervals, and a difference said only where it is sure."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.motor.compare_starts import changes, together, verdict
from benchlog.motor.fit import Fitted
from benchlog.motor.start_figures import FIGURES, StartFigures

STEADY = next(kind for kind in FIGURES if kind.name == "steady_amps")


def start(steady: float | None, half: float = 0.0, **others: float) -> StartFigures:
    told = others | ({} if steady is None else {"steady_amps": steady})
    values = {name: Fitted(value=value, low=value - half, high=value + half) for name, value in told.items()}
    return StartFigures(values=values, why={}, interval_s=0.02, jitter_s=0.0, readings=50)


def test_the_mean_of_starts_has_the_textbook_interval() -> None:
    # 2.776 is Student's t for 95 % at 4 degrees of freedom. Source: any table, from memory.
    values = [0.50, 0.52, 0.49, 0.51, 0.53]
    found = together([start(value) for value in values], STEADY)
    assert found is not None
    spread = float(np.std(values, ddof=1))
    assert found.count == 5
    assert found.mean == pytest.approx(0.51)
    assert found.spread == pytest.approx(spread)
    assert found.high - found.mean == pytest.approx(2.776 * spread / math.sqrt(5), rel=1e-3)


def test_what_a_reading_may_be_off_does_not_grow_less_with_more_starts() -> None:
    for count in (1, 10):
        found = together([start(0.5, half=0.02)] * count, STEADY)
        assert found is not None
        assert found.high - found.mean == pytest.approx(0.02)


def test_an_interval_does_not_reach_below_zero_where_no_start_does() -> None:
    found = together([start(0.001), start(0.002)], STEADY)
    assert found is not None
    assert found.low == 0.0
    assert found.high > 0.002
    below = together([start(-0.001), start(0.002)], STEADY)
    assert below is not None
    assert below.low < -0.001


def test_a_figure_that_no_start_tells_is_none_and_no_difference() -> None:
    assert together([start(None, peak_amps=1.8)], STEADY) is None
    names = [one.name for one in changes([start(None, peak_amps=1.8)], [[start(0.5, peak_amps=1.8)]])]
    assert names == ["peak readback"]


def test_a_motor_that_turns_more_freely_is_told_and_which_way() -> None:
    before = [start(value, half=0.003, run_up_s=0.24) for value in (0.50, 0.51, 0.505)]
    after = [start(value, half=0.003, run_up_s=0.24) for value in (0.34, 0.345, 0.335)]
    found = changes(after, [before])
    assert [one.name for one in found if one.sure] == ["steady current"]
    assert verdict(found, []) == ("Steady current fell, 505 mA to 340 mA. It turns more freely, or with less load.")
    assert "turns harder, or with more load" in verdict(changes(before, [after]), [])


def test_what_lies_within_the_spread_is_no_difference() -> None:
    one = [start(value) for value in (0.50, 0.52, 0.51)]
    other = [start(value) for value in (0.505, 0.515, 0.525)]
    assert verdict(changes(one, [other]), []) == "No difference that these starts can show."


def test_against_several_it_is_how_far_a_new_one_lies_from_their_mean() -> None:
    good = [[start(value)] for value in (0.48, 0.50, 0.52, 0.49, 0.51)]
    (near,) = changes([start(0.54)], good)
    (far,) = changes([start(0.56)], good)
    # 0.50 + 2.776 · 0.0158 · √(1 + 1/5) = 0.548: the prediction interval, computed by hand.
    assert (near.sure, far.sure) == (False, True)


def test_tests_that_differ_are_named_and_nothing_is_said_of_the_figures() -> None:
    found = changes([start(0.3)], [[start(0.5)]])
    assert verdict(found, ["12.0 V against 11.0 V"]) == "Not comparable: 12.0 V against 11.0 V."
    assert verdict([], []) == "No figure is told in both: nothing to compare."


@given(st.lists(st.floats(0.1, 1.0), min_size=2, max_size=8), st.lists(st.floats(0.1, 1.0), min_size=2, max_size=8))
def test_the_other_way_round_it_is_the_same_difference_with_the_other_sign(
    one: list[float], other: list[float]
) -> None:
    (there,) = changes([start(value) for value in one], [[start(value) for value in other]])
    (back,) = changes([start(value) for value in other], [[start(value) for value in one]])
    assert there.low == pytest.approx(-back.high, abs=1e-9)
    assert there.sure == back.sure


def test_equal_motors_are_told_apart_no_more_often_than_one_in_twenty() -> None:
    drawn = np.random.default_rng(5)
    wrong = 0
    for _ in range(1000):
        one, other = (drawn.normal(0.5, 0.01, 5) for _ in range(2))
        (found,) = changes([start(float(value)) for value in one], [[start(float(value)) for value in other]])
        wrong += found.sure
    assert wrong <= 50 + 3 * math.sqrt(50)
