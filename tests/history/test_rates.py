"""Rates with Wilson's interval, and the middle of a few figures, against published values and scipy."""

from statistics import quantiles

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest

from benchlog.history.rates import Rate, percents, spread


@pytest.mark.parametrize(
    ("hits", "count", "low", "high"),
    [
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0.0, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ],
)
def test_wilson_s_limits(hits: int, count: int, low: float, high: float) -> None:
    # Source: Newcombe 1998; the inputs as published, the limits from memory
    assert Rate(hits=hits, count=count).interval == pytest.approx((low, high), abs=6e-5)


@given(st.integers(1, 5000).flatmap(lambda count: st.tuples(st.integers(0, count), st.just(count))))
def test_wilson_s_limits_are_scipy_s_and_hold_the_share(share: tuple[int, int]) -> None:
    hits, count = share
    limits = Rate(hits=hits, count=count).interval
    told = binomtest(hits, count).proportion_ci(0.95, "wilson")
    assert limits == pytest.approx((told.low, told.high), abs=1e-9)
    assert limits is not None
    assert 0 <= limits[0] <= hits / count + 1e-12
    assert hits / count - 1e-12 <= limits[1] <= 1


@pytest.mark.parametrize(
    ("hits", "count", "text"),
    [
        (7, 9, "7 of 9 (45 to 94 %)"),
        (0, 0, "0 of 0"),
        (0, 9, "0 of 9 (0 to 30 %)"),
        (9, 9, "9 of 9 (70 to 100 %)"),
    ],
)
def test_a_rate_is_never_a_bare_percentage(hits: int, count: int, text: str) -> None:
    assert Rate(hits=hits, count=count).text == text


def test_limits_close_together_are_told_apart() -> None:
    assert Rate(hits=33_000, count=99_000).text == "33000 of 99000 (33.0 to 33.6 %)"
    assert percents(0.0, 0.0) == "0.0000 to 0.0000 %"


@pytest.mark.parametrize(("hits", "count"), [(3, 2), (-1, 2), (0, -1)])
def test_more_hits_than_tries_are_no_share(hits: int, count: int) -> None:
    with pytest.raises(ValueError, match="no share"):
        Rate(hits=hits, count=count)


def test_the_middle_of_nothing_and_of_one() -> None:
    assert spread([]) is None
    one = spread([4])
    assert one is not None
    assert (one.count, one.low, one.median, one.high) == (1, 4, 4, 4)


@given(st.lists(st.integers(0, 1000), min_size=2))
def test_quartiles_are_those_of_the_standard_library(values: list[int]) -> None:
    told = spread(values)
    assert told is not None
    assert (told.low, told.median, told.high) == pytest.approx(tuple(quantiles(values, method="inclusive")))
