"""Starts over one another: what is picked, looked at and read off, with mouse and with keys."""

from itertools import combinations
from typing import Any

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from benchlog.quantities import show
from tests.benchmarks.overlay_redraws import made_starts
from ui import theme
from ui.charts.overlay_lines import AMPS, VOLTS, BandOf, Line
from ui.charts.overlay_painting import Places
from ui.charts.overlay_painting import pens as pens_of
from ui.charts.overlay_plot import OverlayPlot

NO_KEYS = Qt.KeyboardModifier.NoModifier


def decay(name: str, tau_s: float, volts: float = 3.0) -> Line:
    t_s = np.arange(-0.1, 1.0, 0.015)
    amps = np.where(t_s < 0, 0.0, 0.25 + 1.1 * np.exp(-t_s / tau_s))
    return Line(name=name, t_s=t_s, volts=np.where(t_s < 0, 0.0, volts), amps=amps)


@pytest.fixture
def plot(qtbot: QtBot) -> OverlayPlot:
    made = OverlayPlot(theme.LIGHT)
    qtbot.addWidget(made)
    made.resize(800, 480)
    made.show_starts([decay("start 1", 0.1), decay("start 2", 0.11), decay("start 3", 0.4)], picked=2)
    made.set_trigger("trigger: output on")
    made.show()
    qtbot.waitExposed(made)
    return made


def painted(plot: OverlayPlot, colour: str) -> int:
    """How many pixels have it."""
    image = plot.grab().toImage().convertToFormat(QImage.Format.Format_RGB32)
    pixels = np.frombuffer(image.constBits(), dtype=np.uint32)
    return int(np.count_nonzero(pixels & 0xFFFFFF == int(colour.removeprefix("#"), 16)))


def wheel(plot: OverlayPlot, at: QPointF, notches: int, keys: Qt.KeyboardModifier = NO_KEYS) -> None:
    turned, buttons = QPoint(0, 120 * notches), Qt.MouseButton.NoButton
    phase = Qt.ScrollPhase.NoScrollPhase
    event = QWheelEvent(at, QPointF(plot.mapToGlobal(at.toPoint())), QPoint(), turned, buttons, keys, phase, False)
    QApplication.sendEvent(plot, event)


def test_only_the_one_picked_out_has_the_colour_of_amps(plot: OverlayPlot) -> None:
    assert painted(plot, theme.LIGHT.amps) > 100
    plot.pick(None)
    assert painted(plot, theme.LIGHT.amps) == 0
    assert "3 starts" in plot.accessibleName()


def test_the_wheel_looks_closer_at_what_is_under_it_and_a_double_click_returns(plot: OverlayPlot) -> None:
    whole = plot.view()
    at_s = plot.sheets()[AMPS].across.value(300.0)
    wheel(plot, QPointF(300, 200), 5)
    low, high = plot.view()
    assert high - low < (whole[1] - whole[0]) / 2
    assert plot.sheets()[AMPS].across.value(300.0) == pytest.approx(at_s, abs=1e-6)
    QTest.mouseDClick(plot, Qt.MouseButton.LeftButton, pos=QPoint(300, 200))
    assert plot.view() == whole


def test_amps_are_looked_at_closer_with_ctrl_and_home_returns(plot: OverlayPlot) -> None:
    before = plot.sheets()[AMPS].upward
    wheel(plot, QPointF(300, 200), 3, Qt.KeyboardModifier.ControlModifier)
    after = plot.sheets()[AMPS].upward
    assert after.high - after.low < before.high - before.low
    assert after.value(200.0) == pytest.approx(before.value(200.0))
    QTest.keyClick(plot, Qt.Key.Key_Home)
    assert plot.sheets()[AMPS].upward == before


def test_a_drag_goes_along_and_with_shift_a_box_is_looked_into(plot: OverlayPlot) -> None:
    low, high = plot.view()
    QTest.mousePress(plot, Qt.MouseButton.LeftButton, pos=QPoint(300, 200))
    QTest.mouseMove(plot, QPoint(200, 200))
    QTest.mouseRelease(plot, Qt.MouseButton.LeftButton, pos=QPoint(200, 200))
    moved = 100 * plot.sheets()[AMPS].across.per_px
    assert plot.view() == pytest.approx((low + moved, high + moved))
    plot.home()
    wanted = [plot.sheets()[AMPS].across.value(float(x)) for x in (200, 400)]
    shift = Qt.KeyboardModifier.ShiftModifier
    QTest.mousePress(plot, Qt.MouseButton.LeftButton, shift, QPoint(200, 100))
    QTest.mouseMove(plot, QPoint(400, 300))
    QTest.mouseRelease(plot, Qt.MouseButton.LeftButton, shift, QPoint(400, 300))
    assert plot.view() == pytest.approx(wanted)


def test_a_click_on_a_start_asks_for_it_and_the_arrow_keys_go_through_them(qtbot: QtBot, plot: OverlayPlot) -> None:
    plot.picked.connect(plot.pick)
    sheet = plot.sheets()[AMPS]
    line = plot.shown.crowd[0]
    at_s = 0.2
    spot = QPoint(round(sheet.across.px(at_s)), round(sheet.upward.px(float(np.interp(at_s, line.t_s, line.amps)))))
    QTest.mouseClick(plot, Qt.MouseButton.LeftButton, pos=spot)
    assert plot.shown.picked == 0
    QTest.keyClick(plot, Qt.Key.Key_Down)
    assert plot.shown.picked == 1
    assert "start 2" in plot.accessibleName()
    QTest.mouseClick(plot, Qt.MouseButton.LeftButton, pos=QPoint(700, 40))  # nothing near
    assert plot.shown.picked == 1


def test_two_cursors_read_time_volts_and_amps_between_them(plot: OverlayPlot) -> None:
    told: list[str] = []
    plot.cursor_read.connect(told.append)
    plot.show_cursors(True)
    assert plot.cursors is not None
    plot.cursors = plot.cursors.moved(1, 0.8).moved(0, 0.2)
    plot.pick(2)
    line = plot.shown.crowd[2]
    fall = np.interp(0.8, line.t_s, line.amps) - np.interp(0.2, line.t_s, line.amps)
    values = [
        [show(float(np.interp(at_s, line.t_s, of)), unit) for of, unit in ((line.volts, "V"), (line.amps, "A"))]
        for at_s in (0.2, 0.8)
    ]
    assert told[-1] == (
        f"start 3:  A 0.200 s, {', '.join(values[0])}   B 0.800 s, {', '.join(values[1])}"
        f"   Δt +0.600 s, ΔV 0 V, ΔI −{-fall * 1e3:.0f} mA"
    )
    plot.setFocus()
    QTest.keyClick(plot, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert plot.cursors.first_s == pytest.approx(0.2 + 10 * plot.sheets()[AMPS].across.per_px)
    QTest.keyClick(plot, Qt.Key.Key_X)
    assert plot.cursors.held == 1
    plot.show_cursors(False)
    assert (told[-1], plot.accessibleDescription()) == ("", "")


def test_a_cursor_is_taken_with_the_mouse(plot: OverlayPlot) -> None:
    plot.show_cursors(True)
    assert plot.cursors is not None
    across = plot.sheets()[AMPS].across
    QTest.mousePress(plot, Qt.MouseButton.LeftButton, pos=QPoint(round(across.px(plot.cursors.second_s)), 200))
    QTest.mouseMove(plot, QPoint(round(across.px(0.9)), 200))
    QTest.mouseRelease(plot, Qt.MouseButton.LeftButton, pos=QPoint(round(across.px(0.9)), 200))
    assert plot.cursors.second_s == pytest.approx(0.9, abs=0.01)
    assert plot.view() == plot.shown.span()  # the chart itself stayed


def test_volts_at_the_motor_are_those_read_less_what_the_leads_drop(plot: OverlayPlot) -> None:
    assert VOLTS not in plot.sheets()
    plot.show_volts(True, lead_ohm=0.5)
    assert set(plot.sheets()) == {AMPS, VOLTS}
    line = plot.shown.crowd[0]
    assert line.of(VOLTS, 0.5) == pytest.approx(line.volts - 0.5 * line.amps)
    assert line.of(AMPS, 0.5) is line.amps
    assert painted(plot, theme.LIGHT.volts) > 50
    plot.show_volts(False)
    assert VOLTS not in plot.sheets()


def test_the_axis_reaches_over_the_band_and_the_capture(plot: OverlayPlot) -> None:
    t_s = np.array([0.0, 1.0])
    plot.show_band(BandOf(name="band", t_s=t_s, low=np.array([1.0, 0.2]), high=np.array([2.6, 0.4])))
    assert plot.sheets()[AMPS].upward.high > 2.6
    plot.show_capture(Line(name="oscilloscope", t_s=np.array([0.0, 0.001, 30.0]), amps=np.array([0.0, 9.0, 0.1])))
    assert plot.sheets()[AMPS].upward.high > 9.0
    assert plot.view()[1] < 2.0  # a capture that goes on for long does not press the starts together


def test_a_start_that_is_being_captured_is_drawn_over_what_is_there(plot: OverlayPlot) -> None:
    plot.expect(0.1, 1.5)
    plot.pick(None)
    behind = plot.view()
    plot.show_live(Line(name="start 4", t_s=np.array([-0.1, 0.0, 0.1]), amps=np.array([0.0, 1.0, 0.5])))
    assert painted(plot, theme.LIGHT.amps) > 20
    assert plot.view() == behind
    plot.add_start(decay("start 4", 0.2))
    assert (plot.shown.live, plot.shown.picked, len(plot.shown.crowd)) == (None, 3, 4)


def test_hundreds_of_starts_are_drawn_and_the_odd_one_among_them_is_seen(plot: OverlayPlot) -> None:
    lines = made_starts(300, 200)
    odd = Line(name="odd", t_s=lines[0].t_s, amps=np.where(lines[0].t_s < 0, 0.0, 1.2))
    plot.show_starts([*lines, odd])
    sheet = plot.sheets()[AMPS]
    image = plot.grab().toImage()
    ground = QColor(theme.LIGHT.card).name()
    x = round(sheet.across.px(0.9))
    rows = {y: image.pixelColor(x, y) for y in range(20, 440)}
    level = round(sheet.upward.px(1.2))
    assert any(rows[y].name() != ground for y in range(level - 2, level + 3))
    many = round(sheet.upward.px(0.25))
    assert rows[many].lightness() < min(rows[y].lightness() for y in range(level - 2, level + 3))


def test_nothing_captured_is_said(qtbot: QtBot) -> None:
    empty = OverlayPlot(theme.DARK)
    qtbot.addWidget(empty)
    empty.resize(500, 300)
    assert "Nothing captured yet" in empty.accessibleName()
    assert not empty.grab().isNull()


def test_lines_that_lie_over_one_another_differ_in_more_than_colour() -> None:
    pens = list(pens_of(theme.LIGHT, theme.LIGHT.amps).values())
    for number, one in enumerate(pens):
        for other in pens[number + 1 :]:
            assert one.style() != other.style() or abs(one.widthF() - other.widthF()) >= 1.0


def test_looked_at_closer_it_says_so_in_its_corner_and_the_button_returns(plot: OverlayPlot) -> None:
    inside = plot.sheets()[AMPS].box
    plot.look((0.1, 0.4))
    assert plot.bar.isVisible()
    assert plot.bar.geometry().bottom() <= inside.top()  # it covers no line
    assert plot.sheets()[AMPS].box == inside
    QTest.mouseClick(plot.bar.button, Qt.MouseButton.LeftButton)
    assert plot.view() == plot.shown.span()
    assert not plot.bar.isVisible()


def test_a_c_is_left_to_the_scanner(plot: OverlayPlot) -> None:
    QTest.keyClicks(plot, "c")
    assert plot.cursors is None


def test_tab_takes_the_other_cursor(plot: OverlayPlot) -> None:
    plot.show_cursors(True)
    plot.activateWindow()
    plot.setFocus()
    QTest.keyClick(plot, Qt.Key.Key_Tab)
    assert plot.cursors is not None
    assert plot.cursors.held == 1


@pytest.mark.parametrize("volts_shown", [False, True])
@pytest.mark.parametrize("size", [(420, 140), (560, 200), (900, 500)])
def test_no_words_at_the_lines_cover_others_however_small_the_chart(
    plot: OverlayPlot, monkeypatch: pytest.MonkeyPatch, size: tuple[int, int], volts_shown: bool
) -> None:
    """Those of the start picked out, of the capture and of the start before are there in any case."""
    written: list[tuple[str, QRectF]] = []

    class Watched(Places):
        def put(self, painter: QPainter, words: str, *rest: Any, **more: Any) -> None:
            before = len(self.taken)
            super().put(painter, words, *rest, **more)
            written.extend((words, rect) for rect in self.taken[before:])

    monkeypatch.setattr("ui.charts.overlay_layers.Places", Watched)
    one = decay("unit 12, start 1", 0.1)
    band = BandOf(t_s=one.t_s, low=one.amps * 0.9, high=one.amps * 1.1, name="band of 5 known good (95 % of units)")
    plot.show_starts([one, decay("unit 11, start 1", 0.1)], picked=0, mean=decay("mean of 36", 0.1))
    plot.show_band(band)
    plot.show_before([decay("run 13", 0.3)], "before: run 13")
    plot.show_volts(volts_shown)
    plot.setMinimumSize(240, 140)
    plot.resize(*size)
    plot.grab()
    needed = {"unit 12, start 1", "before: run 13"}
    assert needed <= {words for words, _ in written}
    box = plot.sheets()[AMPS].box
    assert all(box.contains(rect) for _, rect in written)
    assert not [(first, other) for (first, a), (other, b) in combinations(written, 2) if a.intersects(b)]
    if size == (900, 500):
        assert {"mean of 36", band.name} <= {words for words, _ in written}
