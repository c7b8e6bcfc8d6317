"""The picture of very many lines says what each line says: no reading is lost, and none is made up."""

import numpy as np
import pytest

from ui.charts.crowd import CELLS, Crowd, columns_of, counts
from ui.charts.scale import Scale

COLUMNS, HEIGHT = 400, 200
UPWARD = Scale(low=0.0, high=2.0, begin=float(HEIGHT), end=0.0)


def crowd_of(*lines: tuple[list[float], list[float]]) -> Crowd:
    made = Crowd()
    made.put([(np.array(t_s), np.array(values)) for t_s, values in lines])
    return made


def test_a_level_line_lies_on_its_own_row_and_two_are_counted_twice() -> None:
    made = crowd_of(([0.0, 1.0], [1.0, 1.0]), ([0.0, 1.0], [1.0, 1.0]), ([0.0, 1.0], [0.5, 0.5]))
    count = counts(made.reaches(0.0, 1.0, COLUMNS), UPWARD, HEIGHT)
    assert count.shape == (COLUMNS, HEIGHT)
    assert (count[:, 100] == 2).all()
    assert (count[:, 150] == 1).all()
    assert count.sum() == 3 * COLUMNS


@pytest.mark.parametrize("span", [(0.0, 1.0), (0.45, 0.55), (0.4999, 0.5001)])
def test_one_reading_that_stands_out_is_seen_from_afar_and_close_up(span: tuple[float, float]) -> None:
    t_s = np.linspace(0.0, 1.0, 20_001)
    values = np.full(t_s.size, 0.5)
    values[10_000] = 1.9
    made = Crowd()
    made.put([(t_s, values)])
    low, high = made.reaches(*span, COLUMNS)
    assert low.min() == pytest.approx(0.5)
    assert high.max() == pytest.approx(1.9, abs=0.02)


@pytest.mark.parametrize("columns", [200, 2 * CELLS])
def test_reaches_are_those_of_a_plain_loop_over_all_readings(columns: int) -> None:
    source = np.random.default_rng(5)
    lines = [(np.sort(source.uniform(-0.1, 1.0, 300)), source.normal(1.0, 0.3, 300)) for _ in range(7)]
    made = Crowd()
    made.put(lines)
    low, high = made.reaches(-0.1, 1.0, columns)
    edges = np.linspace(-0.1, 1.0, low.shape[0] + 1)
    for number, (t_s, values) in enumerate(lines):
        for column in range(3, low.shape[0] - 3, 17):
            if not t_s[0] < edges[column] < edges[column + 1] < t_s[-1]:
                continue
            within = values[(t_s >= edges[column]) & (t_s <= edges[column + 1])]
            ends = np.interp(edges[[column, column + 1]], t_s, values)
            expected = np.concatenate((within, ends)) if columns == 200 else ends
            # cells reach over a column's edges by no more than half of it
            over = (edges[1] - edges[0]) / 2
            wider = (edges[column] - over, edges[column + 1] + over)
            around = np.concatenate((values[(t_s >= wider[0]) & (t_s <= wider[1])], np.interp(wider, t_s, values)))
            assert low[column, number] <= expected.min() + 1e-5
            assert high[column, number] >= expected.max() - 1e-5
            assert low[column, number] >= np.minimum(around.min(), expected.min()) - 1e-5
            assert high[column, number] <= np.maximum(around.max(), expected.max()) + 1e-5


def test_where_a_line_is_not_nothing_is_painted() -> None:
    made = crowd_of(([0.0, 0.5], [1.0, 1.0]), ([0.25, 1.0], [0.5, 0.5]))
    for columns in (COLUMNS, 4 * CELLS):
        count = counts(made.reaches(-1.0, 2.0, columns), UPWARD, HEIGHT)
        third = count.shape[0] // 3
        assert count[: third - 2].sum() == 0
        assert count[2 * third + 2 :].sum() == 0
        assert (count[third + 2 : third + third // 4 - 2].sum(axis=1) == 1).all()


def test_what_lies_above_the_plot_or_below_it_is_cut_off() -> None:
    made = crowd_of(([0.0, 1.0], [5.0, 5.0]), ([0.0, 1.0], [-3.0, -3.0]))
    assert counts(made.reaches(0.0, 1.0, COLUMNS), UPWARD, HEIGHT).sum() == 0


def test_a_picture_is_darker_where_more_lines_lie_and_clear_where_none_does() -> None:
    made = crowd_of(*([([0.0, 1.0], [1.0, 1.0])] * 50), ([0.0, 1.0], [0.5, 0.5]))
    pixels = made.picture(made.reaches(0.0, 1.0, COLUMNS), UPWARD, (140, 140, 140))
    alpha = pixels >> 24
    assert pixels.shape == (HEIGHT, COLUMNS)
    assert alpha[100, 10] > alpha[150, 10] > 20
    assert alpha[20, 10] == 0


def test_a_single_line_keeps_its_extremes_whatever_is_left_out() -> None:
    t_s = np.arange(100_000) / 1e5
    values = np.random.default_rng(2).normal(0.0, 0.1, t_s.size)
    values[54_321] = 7.0
    few_t, few = columns_of(t_s, values, 0.0, 1.0, 500)
    assert few.size < 2600
    assert (few.max(), few.min()) == (7.0, values.min())
    assert (np.diff(few_t) > 0).all()
    assert columns_of(t_s[:100], values[:100], 0.0, 1.0, 500)[0].size == 100
