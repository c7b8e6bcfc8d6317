"""One motor's starts against the spread between motors, against a published table and another library."""

import math

import numpy as np
import pytest
from scipy.stats import f_oneway

from benchlog.errors import Refused
from benchlog.motor.repeatability import repeatability

DYESTUFF = [
    [1545, 1440, 1440, 1520, 1580],
    [1540, 1555, 1490, 1560, 1495],
    [1595, 1550, 1605, 1510, 1560],
    [1445, 1440, 1595, 1465, 1545],
    [1595, 1630, 1515, 1635, 1625],
    [1520, 1455, 1450, 1480, 1445],
]
"""g of dyestuff, five samples of six batches. Source: Davies, Statistical Methods in Research and Production, 1947, as
analysed by Box and Tiao: variance 2451.25 within, 1764.05 between batches; from memory, and the table gives both."""


def drawn(between: float, within: float, units: int, starts: int, seed: int = 5) -> list[list[float]]:
    source = np.random.default_rng(seed)
    own = 1 + between * source.standard_normal((units, 1))
    values: list[list[float]] = (own + within * source.standard_normal((units, starts))).tolist()
    return values


def test_the_published_batches_of_dyestuff_have_the_published_variances() -> None:
    found = repeatability(DYESTUFF, label="yield")
    assert found.within**2 == pytest.approx(2451.25)
    assert found.between**2 == pytest.approx(1764.05)
    assert found.mean == pytest.approx(1527.5)
    assert found.can_tell is None
    assert found.ratio.low < found.ratio.value < found.ratio.high


def test_the_quotient_is_that_of_another_librarys_analysis_of_variance() -> None:
    """Computed by scipy.stats.f_oneway: F is one plus the starts times the ratio of the variances."""
    values = drawn(0.05, 0.02, units=7, starts=4)
    quotient = float(f_oneway(*values).statistic)
    assert 1 + 4 * repeatability(values, label="run-up").ratio.value ** 2 == pytest.approx(quotient)


def test_the_interval_of_the_ratio_holds_in_95_of_100_tries() -> None:
    """Computed: 1,000 drawn sets whose ratio is known; three standard errors allowed."""
    source = np.random.default_rng(3)
    tries, inside = 1000, 0
    for _ in range(tries):
        values = 2.0 * source.standard_normal((6, 1)) + source.standard_normal((6, 4))
        ratio = repeatability(values.tolist(), label="x").ratio
        inside += ratio.low <= 2.0 <= ratio.high
    assert inside / tries == pytest.approx(0.95, abs=3 * math.sqrt(0.95 * 0.05 / tries))


def test_motors_that_differ_by_far_more_than_one_repeats_are_told_apart_in_words() -> None:
    found = repeatability(
        [*drawn(0.06, 0.008, units=11, starts=3), [1.0 + 0.008 * (-1) ** k for k in range(10)]], label="run-up"
    )
    assert found.can_tell is True
    assert found.most_starts == 10
    assert found.words.startswith("One motor started 10 times spreads 0.")
    assert "% in run-up; the units spread" in found.words
    assert found.words.endswith("the test can tell them apart.")


def test_motors_that_differ_less_than_one_repeats_are_not() -> None:
    found = repeatability(drawn(0.0, 0.05, units=30, starts=10), label="ripple")
    assert found.can_tell is False
    assert found.between < found.within
    assert found.words.endswith("the test can't tell them apart.")


def test_values_that_are_all_the_same_tell_nothing() -> None:
    found = repeatability([[0.25, 0.25], [0.25, 0.25], [0.25, 0.25]], label="steady current")
    assert found.can_tell is None
    assert found.within == found.between == 0


def test_few_starts_leave_it_open() -> None:
    assert repeatability(drawn(0.03, 0.02, units=3, starts=2), label="energy").can_tell is None


def test_starts_that_are_all_alike_tell_motors_apart_without_limit() -> None:
    found = repeatability([[1.0, 1.0], [1.1, 1.1]], label="peak")
    assert found.within == 0
    assert found.ratio.value == math.inf
    assert found.can_tell is True


@pytest.mark.parametrize("values", [[], [[1.0, 1.1, 1.2]], [[1.0], [1.1], [1.2]], [[1.0, 1.1], []]])
def test_one_motor_or_no_second_start_is_refused(values: list[list[float]]) -> None:
    with pytest.raises(Refused, match="two motors or more"):
        repeatability(values, label="run-up")
