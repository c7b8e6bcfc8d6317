"""The chart stays alive, quick and honest about what is in view."""

import time

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from ui import texts, theme
from ui.charts.framing import FOLLOW_SPAN_S, LEAST_SPAN_S
from ui.charts.live_plot import LivePlot
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


def paint(plot: LivePlot) -> None:
    plot.redraw()
    plot.canvas.widget.viewport().repaint()


def turn_wheel(plot: LivePlot, degrees: int) -> None:
    viewport = plot.canvas.widget.viewport()
    at = QPointF(viewport.rect().center())
    event = QWheelEvent(
        at,
        QPointF(viewport.mapToGlobal(at.toPoint())),
        QPoint(),
        QPoint(0, 8 * degrees),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(viewport, event)


def drag(plot: LivePlot, qtbot: QtBot, begin: QPointF, end: QPointF) -> None:
    """By the left button. The library takes at most 100 moves a second."""
    viewport = plot.canvas.widget.viewport()
    QTest.mousePress(viewport, Qt.MouseButton.LeftButton, pos=begin.toPoint())
    for step in range(1, 6):
        at = begin + (end - begin) * step / 5
        qtbot.wait(15)
        left = Qt.MouseButton.LeftButton
        where = QPointF(viewport.mapToGlobal(at.toPoint()))
        event = QMouseEvent(
            QEvent.Type.MouseMove, at, where, Qt.MouseButton.NoButton, left, Qt.KeyboardModifier.NoModifier
        )
        QApplication.sendEvent(viewport, event)
    QTest.mouseRelease(viewport, Qt.MouseButton.LeftButton, pos=end.toPoint())


def near(colour: QColor, wanted: str) -> bool:
    other = QColor(wanted)
    pairs = ((colour.red(), other.red()), (colour.green(), other.green()), (colour.blue(), other.blue()))
    return all(abs(one - two) < 12 for one, two in pairs)


def rows_of(picture: QImage, wanted: str, left: int, right: int) -> list[int]:
    """Pixel rows in which the colour is found between two columns."""
    return [
        y for y in range(picture.height()) if any(near(picture.pixelColor(x, y), wanted) for x in range(left, right))
    ]


def test_it_redraws_four_hundred_times_and_lives(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    plot.set_ceilings(12.0, 2.0)
    before = plot.canvas.paints
    for index in range(400):
        feed(plot, 0.1, begin=index * 0.1)
        if index % 40 == 0:
            plot.begin_band(f"{index} V", index * 0.1)
            plot.add_mark(Mark(t_s=index * 0.1, word="turning", strong=True))
        paint(plot)
    assert plot.canvas.paints - before >= 400


def test_a_redraw_of_a_million_readings_leaves_the_event_loop_alive(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    t_s = np.linspace(0, 1000, 1_000_000)
    rng = np.random.default_rng(1)
    plot.add_readings(t_s, rng.random(t_s.size), rng.random(t_s.size))
    plot.finish()
    took = []
    for _ in range(10):
        began = time.perf_counter()
        paint(plot)
        took.append(time.perf_counter() - began)
    assert min(took) < 0.033


def test_however_fast_it_is_fed_it_is_drawn_thirty_times_a_second(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    before, began = plot.canvas.paints, time.perf_counter()
    for index in range(300):
        feed(plot, 0.01, begin=index * 0.01)
        qtbot.wait(1)
    elapsed = time.perf_counter() - began
    assert 2 <= plot.canvas.paints - before <= elapsed * 31 + 4


def test_unseen_it_costs_no_redraw_and_no_library(qtbot: QtBot) -> None:
    plot = LivePlot(theme.LIGHT)
    qtbot.addWidget(plot)
    feed(plot, 5)
    plot.finish()
    qtbot.wait(50)
    assert plot._canvas is None


def test_it_draws_with_no_reading_at_all_and_with_one(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    paint(plot)
    assert plot.canvas.empty.isVisible()
    plot.add_readings([0.0], [0.0], [0.0])
    plot.finish()
    paint(plot)
    assert not plot.canvas.empty.isVisible()
    assert plot.view()[0] < plot.view()[1]


def test_where_it_has_no_height_yet_no_scale_of_nothing_is_inverted(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(scale: object) -> None:
        raise AssertionError("the library takes this where a scale has no inverse")

    monkeypatch.setattr(np.linalg, "pinv", refuse)
    plot = shown(qtbot)
    plot.resize(850, 30)
    paint(plot)
    plot.resize(850, 440)
    paint(plot)
    inside = plot.canvas.volts.view.geometry()
    assert plot.canvas.empty.mapRectToParent(plot.canvas.empty.boundingRect()).center() == inside.center()


@pytest.mark.parametrize("height", [0, 30, 80])
def test_a_picture_of_it_is_copied_where_it_has_no_height_yet(qtbot: QtBot, height: int) -> None:
    plot = LivePlot(theme.LIGHT)
    qtbot.addWidget(plot)
    plot.resize(850, height)
    feed(plot, 100.0)
    plot.copy()
    assert not QApplication.clipboard().image().isNull()


def test_a_kick_of_one_reading_leaves_ink_on_a_long_run(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    t_s = np.linspace(0, 10_000, 1_000_000)
    volts = np.zeros(t_s.size)
    volts[456_789] = 12.0
    plot.add_readings(t_s, volts, np.zeros(t_s.size))
    plot.finish()
    picture = plot.grab().toImage()
    inside = plot.canvas.volts.view.sceneBoundingRect()
    rows = rows_of(picture, theme.LIGHT.volts, 100, int(inside.right()) - 1)
    assert len(rows) > 0.7 * inside.height()  # a line from top to bottom


def test_a_line_at_zero_is_seen(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    plot.add_readings([0.0, 10.0], [0.0, 0.0], [0.0, 0.0])
    plot.finish()
    picture = plot.grab().toImage()
    inside = plot.canvas.amps.view.sceneBoundingRect()
    assert rows_of(picture, theme.LIGHT.volts, 100, 200)
    (row,) = rows_of(picture, theme.LIGHT.amps, 100, 200)
    assert inside.bottom() - 8 < row < inside.bottom()


def test_both_plots_show_the_same_seconds_at_any_size(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 100)
    plot.finish()
    for size in ((500, 300), (1200, 700), (640, 260)):
        plot.resize(*size)
        plot.grab()
        canvas = plot.canvas
        for view in (canvas.volts.view, canvas.amps.view, canvas.backdrop.view):
            assert view.viewRange()[0] == pytest.approx(plot.view())
            assert not any(view.autoRangeEnabled())
        assert canvas.volts.view.geometry().left() == canvas.amps.view.geometry().left()


def test_a_ceiling_is_a_line_with_its_value_level_with_it(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 10)
    plot.set_ceilings(12.0, 1.83)
    picture = plot.grab().toImage()
    pane = plot.canvas.volts
    rows = rows_of(picture, theme.LIGHT.third, 200, 210)
    inside = pane.view.sceneBoundingRect()
    upper = [row for row in rows if row < inside.bottom()]
    label = pane.ceiling_label.sceneBoundingRect()
    assert pane.ceiling_label.text() == "ceiling 12 V"
    assert label.left() > inside.right()
    assert abs(label.center().y() - np.mean(upper)) < 2
    assert 2 <= len(upper) <= 5


def test_a_ceiling_far_above_is_named_and_does_not_press_the_line_flat(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    plot.set_ceilings(42.0, None)
    feed(plot, 10)
    plot.redraw()
    pane = plot.canvas.volts
    assert pane.view.viewRange()[1][1] < 10
    assert pane.lines.drawn.ceiling is None
    assert pane.ceiling_label.text() == texts.CEILING_ABOVE_LABEL.format(value="42 V")
    assert not plot.canvas.amps.ceiling_label.isVisible()


def test_the_lines_name_stands_at_its_end_and_clear_of_the_ceilings(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    plot.set_ceilings(5.0, 2.0)
    feed(plot, 10)
    plot.redraw()
    volts, amps = plot.canvas.volts, plot.canvas.amps
    assert not volts.name.sceneBoundingRect().intersects(volts.ceiling_label.sceneBoundingRect())
    level = amps.view.mapViewToScene(QPointF(0, 0.5)).y()
    assert abs(amps.name.sceneBoundingRect().center().y() - level) < 2


def test_bands_lie_over_both_plots_from_step_to_step_with_a_gap_and_a_name(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 20)
    plot.begin_band("7.2 V", 2.0)
    plot.begin_band("9.6 V", 8.0)
    plot.redraw()
    canvas = plot.canvas
    opts = canvas.backdrop.bands.opts
    assert opts["x0"].tolist() == [2.0, 8.0]
    assert 7.8 < opts["x1"][0] < 8.0
    assert opts["x1"][1] == pytest.approx(plot.last_s, abs=0.2)
    assert canvas.backdrop.view.geometry().top() == canvas.volts.view.geometry().top()
    assert canvas.backdrop.view.geometry().bottom() == canvas.amps.view.geometry().bottom()
    names = canvas.backdrop.names.texts()
    assert [name.text for name in names] == ["7.2 V", "9.6 V"]
    assert names[0].left == pytest.approx(canvas.volts.view.mapViewToScene(QPointF(2.0, 0)).x(), abs=4)


def test_marks_stand_between_the_plots_with_their_word(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 20)
    plot.add_mark(Mark(t_s=4.0, word="by hand"))
    plot.add_mark(Mark(t_s=12.0, word="turning", strong=True))
    plot.redraw()
    backdrop, canvas = plot.canvas.backdrop, plot.canvas
    assert [word.text for word in backdrop.words.texts()] == ["by hand", "turning"]
    assert backdrop.lines.getData()[0].tolist() == [12.0, 12.0]
    x, y = backdrop.marks.getData()
    place = backdrop.view.mapViewToScene(QPointF(x[1], y[1]))
    assert canvas.volts.view.sceneBoundingRect().bottom() < place.y() < canvas.amps.view.sceneBoundingRect().top()
    plot.look((5.0, 15.0))
    plot.redraw()
    assert [word.text for word in backdrop.words.texts()] == ["turning"]


def test_another_theme_changes_every_colour_while_it_is_shown(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 20)
    plot.begin_band("7.2 V", 2.0)
    plot.set_tokens(theme.DARK)
    picture = plot.grab().toImage()
    assert near(picture.pixelColor(3, 3), theme.DARK.card)
    assert rows_of(picture, theme.DARK.volts, 60, 100)
    assert rows_of(picture, theme.DARK.band, 200, 203)
    assert not rows_of(picture, theme.LIGHT.volts, 60, 100)


def test_a_picture_asked_for_at_once_shows_what_has_happened(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 5)
    plot.grab()
    plot.add_mark(Mark(t_s=2.0, word="moved"))
    plot.grab()
    assert [word.text for word in plot.canvas.backdrop.words.texts()] == ["moved"]


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
    paint(plot)
    whole = plot.view()
    upward = plot.canvas.volts.view.viewRange()[1]
    turn_wheel(plot, 15)
    low, high = plot.view()
    assert high - low < whole[1] - whole[0]
    assert plot.canvas.volts.view.viewRange()[1] == upward
    feed(plot, 1, begin=100)
    assert plot.view() == (low, high)
    viewport = plot.canvas.widget.viewport()
    QTest.mouseDClick(viewport, Qt.MouseButton.LeftButton)
    QTest.mouseRelease(viewport, Qt.MouseButton.LeftButton)
    assert plot.view() == pytest.approx((0.0, plot.last_s * 1.02))


def test_a_drag_goes_along(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 100)
    plot.finish()
    paint(plot)
    low, high = plot.view()
    for place in (plot.canvas.volts, plot.canvas.amps):
        begin = place.view.sceneBoundingRect().center()
        drag(plot, qtbot, begin, begin - QPointF(100, 0))
        moved = plot.view()
        assert moved[0] > low + 5
        assert moved[1] - moved[0] == pytest.approx(high - low)
        low, high = moved


def test_the_librarys_own_menu_and_buttons_stay_away(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    viewport = plot.canvas.widget.viewport()
    QTest.mouseClick(viewport, Qt.MouseButton.RightButton, pos=viewport.rect().center())
    assert QApplication.activePopupWidget() is None


def test_another_run_is_laid_under_it_on_the_same_axes_and_named(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    plot.add_readings([0.0, 1.0, 2.0], [0.0, 5.0, 5.0], [0.0, 1.0, 1.0])
    plot.finish()
    paint(plot)
    plot.lay_under("job 0007", [0.0, 1.0, 4.0], [0.0, 9.0, 5.0], [0.0, 2.0, 2.0])
    paint(plot)
    assert plot.view()[1] == pytest.approx(4.08)
    volts = plot.canvas.volts
    assert volts.under_name.isVisible()
    assert volts.under_name.text() == "job 0007"
    assert volts.view.viewRange()[1][1] >= 9.0
    assert volts.lines.drawn.under[0].tolist() == [0.0, 1.0, 4.0]
    assert not volts.name.sceneBoundingRect().intersects(volts.under_name.sceneBoundingRect())
    plot.lay_under("", [], [], [])
    paint(plot)
    assert not volts.under_name.isVisible()
    assert plot.view()[1] == pytest.approx(2.04)
    plot.lay_under("job 0007", [0.0], [1.0], [1.0])
    plot.clear()
    assert not len(plot._shown.under)


def test_a_kick_of_one_reading_has_its_pixel_at_every_zoom(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    t_s = np.arange(1_000_000) / 100.0
    volts = np.zeros(t_s.size)
    volts[456_789] = 12.0
    plot.add_readings(t_s, volts, np.zeros(t_s.size))
    plot.finish()
    for span_s in (10_000.0, 900.0, 47.0, 3.0):
        plot.look((4567.89 - 0.4 * span_s, 4567.89 + 0.6 * span_s))
        picture = plot.grab().toImage()
        inside = plot.canvas.volts.view.sceneBoundingRect()
        x = plot.canvas.volts.view.mapViewToScene(QPointF(4567.89, 0)).x()
        assert len(rows_of(picture, theme.LIGHT.volts, int(x) - 2, int(x) + 3)) > 0.7 * inside.height(), span_s


def test_looked_at_closer_it_says_so_and_the_way_back_is_one_press(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 60)
    assert not plot.bar.isVisible()
    plot.look((10.0, 20.0))
    assert plot.bar.isVisible()
    assert plot.bar.words.accessibleName() == texts.CHART_NOT_FOLLOWED.format(low="10 s", high="20 s")
    assert texts.CHART_NOT_FOLLOWED.format(low="10 s", high="20 s") in plot.accessibleDescription()
    assert plot.bar.button.text() == texts.CHART_FOLLOW
    QTest.mouseClick(plot.bar.button, Qt.MouseButton.LeftButton)
    assert plot.view()[1] == plot.last_s
    assert not plot.bar.isVisible()
    plot.look((10.0, 20.0))
    plot.finish()
    assert plot.bar.button.text() == texts.CHART_BACK
    QTest.keyClick(plot, Qt.Key.Key_Home)
    assert plot.view()[0] == 0.0
    assert not plot.bar.isVisible()


def test_cursors_come_and_go_with_a_key_and_are_drawn_and_read(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    t_s = np.arange(0.0, 100.0, 0.1)
    plot.add_readings(t_s, t_s / 10, t_s / 100)
    plot.finish()
    QTest.keyClick(plot, Qt.Key.Key_C)
    cursors = plot.cursors
    assert cursors is not None
    paint(plot)
    drawn = [[line.value() for line in lines] for lines in plot.canvas.cursors.lines]
    assert drawn == [[cursors.first_s] * 2, [cursors.second_s] * 2]
    assert "ΔV +" in plot.accessibleDescription()
    assert plot.corner.cursors.isChecked()
    QTest.keyClick(plot, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert plot.cursors is not None
    assert plot.cursors.first_s > cursors.first_s
    plot.canvas.cursors.moved.emit(1, 42.0)
    assert plot.cursors.second_s == 42.0
    QTest.keyClick(plot, Qt.Key.Key_C)
    paint(plot)
    assert not any(line.isVisible() for lines in plot.canvas.cursors.lines for line in lines)
    plot.show_cursors(True)
    plot.clear()
    assert plot.cursors is None


def test_a_cursor_is_drawn_along_with_the_mouse(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 100)
    plot.finish()
    plot.show_cursors(True)
    paint(plot)
    view, cursors = plot.canvas.volts.view, plot.cursors
    assert cursors is not None
    begin = view.mapViewToScene(QPointF(cursors.first_s, 2.0))
    drag(plot, qtbot, begin, begin + QPointF(80, 0))
    assert plot.cursors is not None
    assert plot.cursors.first_s == pytest.approx(view.mapSceneToView(begin + QPointF(80, 0)).x(), abs=1.0)
    assert plot.cursors.held == 0
    assert plot.view()[0] == 0.0


def test_with_the_focus_tab_takes_the_other_cursor_and_a_ring_shows_where_the_keys_go(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    feed(plot, 10)
    plot.show_cursors(True)
    plot.activateWindow()
    plot.setFocus()
    qtbot.waitUntil(plot.hasFocus)
    paint(plot)
    assert plot.canvas.ring.isVisible()
    QTest.keyClick(plot, Qt.Key.Key_Tab)
    assert plot.cursors is not None
    assert plot.cursors.held == 1
    assert plot.hasFocus()
    QTest.keyClick(plot, Qt.Key.Key_Tab)
    assert not plot.hasFocus()
    paint(plot)
    assert not plot.canvas.ring.isVisible()


def test_keys_of_the_window_and_characters_of_a_scanner_are_left_alone(qtbot: QtBot) -> None:
    plot = LivePlot(theme.LIGHT, characters=False)
    qtbot.addWidget(plot)
    with qtbot.waitExposed(plot):
        plot.show()
    feed(plot, 10)
    before = plot.view()
    QTest.keyClicks(plot, "C+-x=")
    QTest.keyClick(plot, Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert plot.cursors is None
    assert plot.view() == before
    QTest.keyClick(plot, Qt.Key.Key_Right)
    assert plot.view() != before


def test_no_two_labels_beside_the_plots_cover_each_other_at_any_size(qtbot: QtBot) -> None:
    plot = shown(qtbot)
    for height in (150, 200, 440):
        plot.resize(500, height)
        for ceilings in ((5.0, 0.5), (5.2, None), (42.0, 0.02), (5.0, 4.0)):
            for last in (0.0, 5.0):
                plot.clear()
                plot.set_ceilings(*ceilings)
                plot.add_readings([0.0, 1.0, 2.0], [0.0, 5.0, last], [0.0, 0.5, last / 10])
                plot.lay_under("job 0007", [0.0, 1.0], [5.0, last], [0.5, last / 10])
                plot.finish()
                plot.grab()
                labels = [
                    label.sceneBoundingRect().adjusted(0, 2, 0, -2)
                    for pane in (plot.canvas.volts, plot.canvas.amps)
                    for label in (pane.ceiling_label, pane.name, pane.under_name)
                    if label.isVisible()
                ]
                for number, one in enumerate(labels):
                    assert not any(one.intersects(other) for other in labels[number + 1 :]), (height, ceilings, last)
                    assert QRectF(plot.canvas.widget.viewport().rect()).contains(one)
