"""Thinning a line loses nothing that can be seen."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from ui.charts.reduction import thin

lines = st.builds(
    lambda count, seed: np.random.default_rng(seed).normal(size=count),
    st.integers(1, 3000),
    st.integers(0, 2**32 - 1),
)


@given(lines, st.integers(1, 200), st.integers(0, 5000))
def test_highest_and_lowest_survive(y: np.ndarray, columns: int, first_index: int) -> None:
    x = np.arange(y.size, dtype=np.float64)
    _, thinned = thin(x, y, columns, first_index)
    assert thinned.max() == y.max()
    assert thinned.min() == y.min()


@given(st.integers(500, 5000), st.data())
def test_a_kick_of_one_reading_survives_wherever_it_is(count: int, data: st.DataObject) -> None:
    at = data.draw(st.integers(0, count - 1))
    y = np.zeros(count)
    y[at] = 12.0
    x, thinned = thin(np.arange(count, dtype=np.float64), y, 20)
    assert x[thinned == 12.0].tolist() == [float(at)]


@given(lines, st.integers(1, 200), st.integers(0, 5000))
def test_points_are_real_ones_in_order_ends_kept_and_few(y: np.ndarray, columns: int, first_index: int) -> None:
    x = np.arange(y.size, dtype=np.float64)
    kept, thinned = thin(x, y, columns, first_index)
    assert (np.diff(kept) > 0).all()
    assert (y[kept.astype(int)] == thinned).all()
    assert kept[0] == 0
    assert kept[-1] == y.size - 1
    assert kept.size <= 4 * (columns + 2)


def test_buckets_stay_put_while_the_view_moves() -> None:
    y = np.random.default_rng(3).normal(size=4000)
    x = np.arange(4000, dtype=np.float64)
    before, _ = thin(x[:3000], y[:3000], 50, 0)
    after, _ = thin(x[100:3100], y[100:3100], 50, 100)
    inner = (before > 300) & (before < 2800)
    assert set(before[inner]) <= set(after)


def test_no_columns_is_refused() -> None:
    with pytest.raises(ValueError, match="columns"):
        thin(np.zeros(3), np.zeros(3), 0)
