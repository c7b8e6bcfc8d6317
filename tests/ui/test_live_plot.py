"""The chart stays alive, quick and honest about what is in view."""

import time

import numpy as np
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from ui import theme
from ui.charts.live_plot import FOLLOW_SPAN_S, LEAST_SPAN_S, LivePlot
from ui.charts.marks import Mark


def shown(qtbot: QtBot) -> LivePlot:
    plot = LivePlot(theme.LIGHT)
    qtbot.addWidget(plot)
    plot.resize(850, 440)
    with qtbot.waitExposed(plot):
        plot.show()
    return plot


def feed(plot: LivePlot, seconds: float, rate: float = 100.0, begin: float = 0.0) -> None:
    t_s = np.arange(begin, begin + seconds, 1 / rate)
    plot.add_readings(t_s, np.full(t_s.size, 5.0), np.full(t_s.size, 0.5))


def test_it_redraws_four_hundred_times_and_lives(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    plot.set_ceilings(12.0, 2.0)
    for index in range(400):
        feed(plot, 0.1, begin=index * 0.1)
        if index % 40 == 0:
            plot.begin_band(f"{index} V", index * 0.1)
            plot.add_mark(Mark(t_s=index * 0.1, word="turning", strong=True))
        plot.repaint()
    assert plot.redraws >= 400


def test_a_redraw_of_a_million_readings_leaves_the_event_loop_alive(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    t_s = np.linspace(0, 1000, 1_000_000)
    rng = np.random.default_rng(1)
    plot.add_readings(t_s, rng.random(t_s.size), rng.random(t_s.size))
    plot.finish()
    took = []
    for _ in range(10):
        began = time.perf_counter()
        plot.repaint()
        took.append(time.perf_counter() - began)
    assert min(took) < 0.1


def test_it_draws_with_no_reading_at_all_and_with_one(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    plot.repaint()
    plot.add_readings([0.0], [0.0], [0.0])
    plot.finish()
    plot.repaint()
    assert plot.view()[0] < plot.view()[1]


def test_a_kick_of_one_reading_leaves_ink_on_a_long_run(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    t_s = np.linspace(0, 170, 17_000)
    volts = np.zeros(t_s.size)
    volts[8_500] = 12.0
    plot.add_readings(t_s, volts, np.zeros(t_s.size))
    plot.finish()
    picture = plot.grab().toImage()
    blue = [
        y
        for y in range(60, 120)
        for x in range(100, picture.width() - 120)
        if (colour := picture.pixelColor(x, y)).blue() > colour.red() + 60
    ]
    assert len(set(blue)) > 40  # a line from top to bottom of that stretch


def test_while_it_runs_the_view_grows_and_then_follows(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 5)
    assert plot.view() == (0.0, LEAST_SPAN_S)
    feed(plot, 95, begin=5)
    low, high = plot.view()
    assert high == plot.last_s
    assert high - low == FOLLOW_SPAN_S


def test_a_finished_run_is_shown_whole(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 100)
    plot.finish()
    low, high = plot.view()
    assert low == 0.0
    assert high > plot.last_s


def test_the_wheel_looks_closer_and_a_double_click_goes_back(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 100)
    plot.finish()
    whole = plot.view()
    at = QPointF(plot.rect().center())
    plot.wheelEvent(
        QWheelEvent(
            at,
            at,
            QPoint(),
            QPoint(0, 120),
            Qt.MouseButton.NoButton,
            Qt.KeyboardModifier.NoModifier,
            Qt.ScrollPhase.NoScrollPhase,
            False,
        )
    )
    low, high = plot.view()
    assert high - low < whole[1] - whole[0]
    QTest.mouseDClick(plot, Qt.MouseButton.LeftButton)
    assert plot.view() == whole
