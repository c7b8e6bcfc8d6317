"""A line that is filled in, column by column, is the line that would be drawn along."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QGraphicsScene, QGraphicsWidget
from pytestqt.qtbot import QtBot

from ui import theme
from ui.charts.lines import MOST_ROW, Drawn, Lines, reaches
from ui.charts.reduction import Floats

WIDE, HIGH = 300, 120


def painted(t_s: Floats, values: Floats, finer: int = 1) -> QImage:
    """From 0 to 30 s and from 0 to 12."""
    scene, plot = QGraphicsScene(), QGraphicsWidget()
    plot.resize(WIDE, HIGH)
    scene.addItem(plot)
    lines = Lines(plot)
    lines.wear(theme.LIGHT, theme.LIGHT.volts, finer)
    lines.draw(Drawn(across=(0.0, 30.0), upward=(0.0, 12.0), readings=(t_s, values)))
    image = QImage(WIDE * finer, HIGH * finer, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    scene.render(painter, QRectF(0, 0, WIDE * finer, HIGH * finer), QRectF(0, 0, WIDE, HIGH))
    painter.end()
    return image


def inked(image: QImage) -> set[tuple[int, int]]:
    ink = QColor(theme.LIGHT.volts)
    return {(x, y) for x in range(image.width()) for y in range(image.height()) if image.pixelColor(x, y) == ink}


def test_filled_in_it_lies_where_the_drawn_one_lies(qtbot: QtBot) -> None:
    """Drawn along where there are few; so many more readings between the same ones that it is filled in."""
    t_s = np.arange(0.0, 30.01, 0.5)
    values = 6 + 5 * np.sin(t_s)
    fine_s = np.arange(0.0, 30.0, 0.01)
    drawn, filled = inked(painted(t_s, values)), inked(painted(fine_s, np.interp(fine_s, t_s, values)))
    assert drawn
    assert len(filled) > WIDE
    near = {(x + right, y + down) for x, y in filled for right in (-1, 0, 1) for down in (-1, 0, 1)}
    assert drawn <= near
    assert filled <= {(x + right, y + down) for x, y in drawn for right in (-1, 0, 1) for down in (-1, 0, 1)}


@pytest.mark.parametrize("finer", [1, 2])
@pytest.mark.parametrize("at", [0, 1234, 2999])
def test_a_kick_of_one_reading_among_many_has_ink_from_bottom_to_top(qtbot: QtBot, at: int, finer: int) -> None:
    t_s = np.arange(0.0, 30.0, 0.01)
    values = np.full(t_s.size, 1.0)
    values[at] = 11.0
    rows = {y for x, y in inked(painted(t_s, values, finer)) if abs(x / finer - t_s[at] * WIDE / 30) < 2}
    assert len(rows) >= 0.8 * HIGH * finer


def test_nothing_is_filled_in_before_its_first_and_after_its_last_reading(qtbot: QtBot) -> None:
    t_s = np.linspace(10.0, 20.0, 3000)
    columns = {x for x, _ in inked(painted(t_s, np.full(t_s.size, 6.0)))}
    assert set(range(101, 200)) <= columns <= set(range(99, 202))


@given(st.integers(1, 400), st.integers(1, 60), st.integers(0, 2**32 - 1))
def test_every_point_in_sight_is_reached_and_no_row_beyond_its_neighbours(count: int, columns: int, seed: int) -> None:
    source = np.random.default_rng(seed)
    x = np.sort(source.uniform(-2.0, columns + 2.0, count))
    y = source.uniform(-50.0, 50.0, count)
    least, greatest = reaches(x, y, columns)
    for at, level in zip(x, y, strict=True):
        if 0 <= at < columns:
            row = max(int(np.floor(level)), -1)
            assert least[int(at)] <= row <= greatest[int(at)]
    there = least < MOST_ROW
    assert not greatest[~there].max(initial=-1) > -1
    if there.any():
        assert least[there].min() >= max(-1, int(np.floor(y.min())))
        assert greatest[there].max() <= max(-1, int(np.floor(y.max())))
