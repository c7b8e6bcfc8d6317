"""Thinning a line loses nothing that can be seen."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from ui.charts.reduction import BLOCK, Extremes, Floats, Places, outline

lines = st.builds(
    lambda count, seed: np.random.default_rng(seed).normal(size=count),
    st.integers(1, 9000),
    st.integers(0, 2**32 - 1),
)


def drawn(y: Floats, columns: int, first: int = 0, begin: int = 0, end: int | None = None) -> Places:
    """Places of `y` that are drawn; its first reading is number `first` of the run."""
    extremes = Extremes()
    block, last = -(-first // BLOCK), (first + y.size) // BLOCK
    if block < last:
        extremes.note(y[block * BLOCK - first : last * BLOCK - first], block)
    return outline(y, first, extremes, first + begin, first + (y.size if end is None else end), columns)


@given(lines, st.integers(1, 200), st.integers(0, 5000))
def test_highest_and_lowest_survive(y: Floats, columns: int, first: int) -> None:
    thinned = y[drawn(y, columns, first)]
    assert thinned.max() == y.max()
    assert thinned.min() == y.min()


@given(st.integers(500, 20000), st.integers(0, 5000), st.data())
def test_a_kick_of_one_reading_survives_wherever_it_is(count: int, first: int, data: st.DataObject) -> None:
    at = data.draw(st.integers(0, count - 1))
    y = np.zeros(count)
    y[at] = 12.0
    assert at in drawn(y, 20, first)


@given(lines, st.integers(1, 200), st.integers(0, 5000), st.data())
def test_a_part_is_drawn_by_few_of_its_own_in_order_with_both_ends(
    y: Floats, columns: int, first: int, data: st.DataObject
) -> None:
    begin = data.draw(st.integers(0, y.size - 1))
    end = data.draw(st.integers(begin + 1, y.size))
    kept = drawn(y, columns, first, begin, end)
    assert (np.diff(kept) > 0).all()
    assert kept[0] == begin
    assert kept[-1] == end - 1
    assert kept.size <= 4 * (columns + 2)
    assert y[kept].max() == y[begin:end].max()
    assert y[kept].min() == y[begin:end].min()


@pytest.mark.parametrize("columns", [50, 500])
def test_buckets_stay_put_while_the_view_moves(columns: int) -> None:
    y = np.random.default_rng(3).normal(size=40_000)
    before = drawn(y, columns, 0, 0, 30_000)
    after = drawn(y, columns, 0, 1000, 31_000)
    inner = before[(before > 3000) & (before < 28_000)]
    assert set(inner) <= set(after)


def test_no_columns_is_refused() -> None:
    with pytest.raises(ValueError, match="columns"):
        drawn(np.zeros(3), 0)
