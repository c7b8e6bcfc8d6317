"""Histograms: every value in a box, what is outside in black, nothing beyond the paper."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.reports.drawing import INK, Boxes, Drawing, Line, Words
from benchlog.reports.histogram import INSIDE, PANE, Pane, draw_histograms


def counted(drawing: Drawing, ink: str, top: float) -> int:
    """Values in the boxes of that ink, where the axis ends at `top`."""
    return sum(
        round(box[3] / PANE * top)
        for mark in drawing.marks
        if isinstance(mark, Boxes) and mark.ink == ink
        for box in mark.boxes
    )


def axis_top(drawing: Drawing) -> float:
    ends = [mark.text for mark in drawing.marks if isinstance(mark, Words) and mark.anchor == "end"]
    return max(float(text) for text in ends if "farther" not in text)


@given(st.lists(st.floats(0.01, 100.0), min_size=1, max_size=200))
def test_every_value_is_in_one_box_and_those_outside_are_black(values: list[float]) -> None:
    low, high = float(np.percentile(values, 10)), float(np.percentile(values, 90))
    drawing = draw_histograms([Pane(title="run-up", unit="s", values=tuple(values), low=low, high=high)])
    out = sum(value < low or value > high for value in values)
    top = axis_top(drawing)
    assert counted(drawing, INK, top) == out
    assert counted(drawing, INSIDE, top) == len(values) - out
    assert f"{out} outside" in drawing.told


def test_one_value_and_values_all_alike_are_drawn() -> None:
    drawing = draw_histograms(
        [
            Pane(title="energy", unit="J", values=(3.3, 3.3, 3.3)),
            Pane(title="ripple", unit="A", values=(0.01,), high=0.02),
        ]
    )
    assert [box[3] for mark in drawing.marks if isinstance(mark, Boxes) for box in mark.boxes] == [PANE, PANE]
    assert "1 value from 10 to 10 mA, limits to 20 mA, 0 outside" in drawing.told


def test_one_far_off_stands_at_the_edge_with_its_count_and_leaves_the_limits_their_room() -> None:
    values = (1.0, 1.1, 1.2, 1.3, 1.2, 40.0, 50.0, -30.0)
    drawing = draw_histograms([Pane(title="peak readback", unit="A", values=values, low=0.9, high=1.5)])
    low, high = (mark.points[0][0] for mark in drawing.marks if isinstance(mark, Line) and mark.dash)
    assert high - low > 28.0, "mm: two fifths of a pane and more lie between the limits"
    assert [mark.text for mark in drawing.marks if isinstance(mark, Words) and "farther" in mark.text] == [
        "1 farther left, 2 farther right"
    ]
    assert counted(drawing, INK, axis_top(drawing)) == 3
    assert "8 values from -30 to 50 A" in drawing.told


def test_nothing_lies_beyond_the_paper_and_limits_are_dashed() -> None:
    panes = [Pane(title="x", unit="A", values=(1.0, 2.0, 9.0), low=1.5, high=3.0)] * 5
    drawing = draw_histograms(panes)
    for mark in drawing.marks:
        match mark:
            case Line():
                places = list(mark.points)
            case Boxes():
                places = [(x, y) for x, y, _, _ in mark.boxes] + [(x + w, y + h) for x, y, w, h in mark.boxes]
            case Words():
                places = [mark.at]
        assert all(0 <= x <= drawing.width and 0 <= y <= drawing.height for x, y in places)
    assert sum(isinstance(mark, Line) and bool(mark.dash) for mark in drawing.marks) == 10


def test_none_is_refused() -> None:
    with pytest.raises(ValueError, match="nothing to draw"):
        draw_histograms([])
