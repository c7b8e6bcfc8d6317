"""Kaplan and Meier, and the log-rank test, against published data and scipy."""

import math
import warnings
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.stats import CensoredData, binomtest, ecdf, logrank

from benchlog.history.survival import Followed, kaplan_meier, log_rank

TREATED = Followed(
    ended=[6, 6, 6, 7, 10, 13, 16, 22, 23], out=[6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35]
)  # Source: Le, ex. 11.1 (6-MP), as published
PLACEBO = Followed(ended=[1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23])
# Source: the same trial's other arm, from memory

days = st.integers(0, 120).map(float)
groups = st.builds(Followed, ended=st.lists(days, max_size=40), out=st.lists(days, max_size=40))


def test_the_published_data_with_ties_and_censored_ones() -> None:
    told = kaplan_meier(TREATED)
    # Source: computed from the published data
    shares = [0.8571, 0.8067, 0.7529, 0.6902, 0.6275, 0.5378, 0.4482]
    assert [step.share for step in told.steps] == pytest.approx(shares, abs=6e-5)
    assert [step.time for step in told.steps] == [6, 7, 10, 13, 16, 22, 23]
    assert [step.at_risk for step in told.steps] == [21, 17, 15, 12, 11, 7, 6]
    assert told.median == 23
    assert told.ended == 9


def test_the_last_one_ends_and_none_are_left() -> None:
    told = kaplan_meier(Followed(ended=[1, 1, 4, 5, 9, 22], out=[6, 9]))
    # Source: Bewick 2004, table 2, as published
    assert [step.share for step in told.steps] == pytest.approx([0.75, 0.625, 0.5, 0.333, 0], abs=5e-4)
    assert told.median == 5
    assert told.steps[-1].limits == pytest.approx((0.0, 0.7935), abs=1e-4)  # Wilson of 0 of 1: z²/(1 + z²), computed
    left = told.left(100)
    assert left is not None
    assert left.share == 0


def test_log_rank_of_the_published_data() -> None:
    told = log_rank(TREATED, PLACEBO)
    assert told is not None
    assert told.chi_square == pytest.approx(16.7929, abs=5e-5)  # Source: computed
    swapped = log_rank(PLACEBO, TREATED)
    assert swapped is not None
    assert swapped.chi_square == pytest.approx(told.chi_square)


@given(groups)
def test_steps_and_limits_are_scipy_s(followed: Followed) -> None:
    assume(followed.ended)
    told = kaplan_meier(followed)
    theirs: Any = ecdf(CensoredData(uncensored=followed.ended, right=followed.out)).sf
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", RuntimeWarning)  # where none are left its limits are undefined
        limits = theirs.confidence_interval(0.95, method="log-log")
    for step in told.steps:
        assert float(theirs.evaluate(step.time)) == pytest.approx(step.share, abs=1e-12)
        if 0 < step.share < 1:
            both = float(limits.low.evaluate(step.time)), float(limits.high.evaluate(step.time))
            assert step.limits == pytest.approx(both, abs=1e-9)


@given(groups, groups)
def test_log_rank_is_scipy_s(one: Followed, other: Followed) -> None:
    assume(one.ended and other.ended)
    told = log_rank(one, other)
    assume(told is not None)
    assert told is not None
    theirs = logrank(
        CensoredData(uncensored=one.ended, right=one.out), CensoredData(uncensored=other.ended, right=other.out)
    )
    assert told.chi_square == pytest.approx(theirs.statistic**2, abs=1e-9)
    assert told.p == pytest.approx(theirs.pvalue, abs=1e-9)


@given(groups, st.floats(0, 130))
def test_the_curve_falls_within_its_limits(followed: Followed, time: float) -> None:
    told = kaplan_meier(followed)
    shares = [1.0, *(step.share for step in told.steps)]
    assert all(later < earlier for earlier, later in pairwise(shares))
    left, back = told.left(time), told.ended_by(time)
    assert (left is None) == (back is None)
    if left is None or back is None:
        assert time > max(followed.out, default=-1)
    else:
        assert 0 <= left.low <= left.share <= left.high <= 1
        assert back.share == pytest.approx(1 - left.share)
        assert back.low <= back.share <= back.high


@given(groups)
def test_one_more_still_out_never_makes_it_look_worse_and_is_no_success(followed: Followed) -> None:
    more = kaplan_meier(Followed(ended=followed.ended, out=[*followed.out, 0.0]))
    first = min(followed.ended, default=math.inf)
    assume(first > 0)
    assert more.steps == kaplan_meier(followed).steps  # out for no time at all: says nothing


def test_all_still_out_bound_the_share_by_how_many_were_followed_so_long() -> None:
    told = kaplan_meier(Followed(out=[10.0] * 5 + [40.0] * 20))
    assert told.median is None
    left = told.left(30)
    assert left is not None
    assert (left.share, left.high, left.at_risk) == (1, 1, 20)
    assert left.low == pytest.approx(binomtest(20, 20).proportion_ci(0.95, "wilson").low)
    back = told.ended_by(30)
    assert back is not None
    assert back.text == "0 % (0 to 16 %)"


def test_nothing_is_said_of_longer_than_any_was_followed() -> None:
    assert kaplan_meier(Followed()).left(0) is None
    told = kaplan_meier(Followed(ended=[3.0], out=[10.0, 20.0]))
    assert told.left(20) is not None
    assert told.left(20.1) is None


def test_exactly_half_left_is_the_median_in_spite_of_rounding() -> None:
    told = kaplan_meier(Followed(ended=range(1, 13), out=[99] * 12))
    assert told.steps[-1].share > 0.5  # by the last digit
    assert told.median == 12


def test_log_rank_of_nothing_can_not_be_told() -> None:
    assert log_rank(Followed(), Followed(ended=[1.0])) is None
    assert log_rank(Followed(out=[3.0]), Followed(out=[4.0])) is None


@pytest.mark.parametrize("time", [-1.0, math.nan, math.inf])
def test_a_time_that_is_none_is_refused(time: float) -> None:
    with pytest.raises(ValueError, match="negative or no number"):
        Followed(out=[1.0, time])
