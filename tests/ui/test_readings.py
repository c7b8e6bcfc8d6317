"""What the chart keeps of a run's readings."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from ui.charts.readings import AMPS, VOLTS, Readings


@given(st.integers(1, 40), st.lists(st.integers(0, 60), max_size=20))
def test_the_newest_are_kept_in_order_and_numbered(capacity: int, batches: list[int]) -> None:
    readings = Readings(capacity)
    total = 0
    for size in batches:
        t_s = np.arange(total, total + size, dtype=np.float64)
        readings.append(t_s, t_s * 2, t_s * 3)
        total += size
    kept = min(total, capacity)
    assert readings.t_s.tolist() == list(range(total - kept, total))
    assert readings.volts.tolist() == [2.0 * t for t in readings.t_s]
    assert readings.amps.tolist() == [3.0 * t for t in readings.t_s]
    assert readings.first_index == total - kept


def test_lists_of_different_length_are_refused() -> None:
    readings = Readings()
    with pytest.raises(ValueError, match="inhomogeneous"):
        readings.append([0.0, 1.0], [1.0], [1.0])
    assert len(readings) == 0


def test_cleared_it_begins_anew() -> None:
    readings = Readings(3)
    readings.append([0.0] * 5, [0.0] * 5, [0.0] * 5)
    readings.clear()
    readings.append([7.0], [1.0], [2.0])
    assert readings.t_s.tolist() == [7.0]
    assert readings.first_index == 0


@given(st.integers(1, 400), st.lists(st.integers(0, 900), min_size=1, max_size=12), st.integers(1, 20))
def test_their_outline_keeps_the_extremes_of_what_is_kept(capacity: int, batches: list[int], columns: int) -> None:
    readings, source, total = Readings(capacity), np.random.default_rng(1), 0
    for size in batches:
        t_s = np.arange(total, total + size, dtype=np.float64)
        readings.append(t_s, source.normal(size=size), source.normal(size=size))
        total += size
    for line, values in ((VOLTS, readings.volts), (AMPS, readings.amps)):
        t_s, drawn = readings.outline(line, 0.0, float(total), columns)
        assert (drawn == values[(t_s - readings.first_index).astype(int)]).all()
        if values.size:
            assert (drawn.min(), drawn.max()) == (values.min(), values.max())


def test_an_outline_reaches_one_reading_beyond_the_view() -> None:
    readings = Readings()
    t_s = np.arange(10.0)
    readings.append(t_s, t_s, t_s)
    assert readings.outline(VOLTS, 3.5, 5.5, 100)[0].tolist() == [3.0, 4.0, 5.0, 6.0]


@pytest.mark.parametrize("at", [0, 63, 64, 314_159, 777_777, 999_999])
def test_one_kick_of_one_reading_among_a_million_is_drawn_at_every_zoom(at: int) -> None:
    readings = Readings()
    volts = np.zeros(1_000_000)
    volts[at] = 12.0
    readings.append(np.arange(1_000_000) / 100.0, volts, volts)
    for columns in (1, 7, 640, 1920):
        for span_s in 10_000 / 1.7 ** np.arange(24):
            for share in (0.0, 0.37, 1.0):
                low_s = at / 100.0 - share * span_s
                t_s, drawn = readings.outline(VOLTS, low_s, low_s + span_s, columns)
                assert drawn.max() == 12.0
                assert t_s[drawn.argmax()] == at / 100.0
                assert t_s.size <= 4 * (columns + 2) + 2
