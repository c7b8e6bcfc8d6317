"""A chart on the clipboard: twice as fine, in light colours, headed and marked."""

import numpy as np
import numpy.typing as npt
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QImage
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from ui import texts, theme
from ui.charts.copying import EDGE_PX, FINER, HEAD_PX, Caption, picture
from ui.charts.live_plot import LivePlot
from ui.charts.overlay_lines import Line
from ui.charts.overlay_plot import OverlayPlot

Chart = LivePlot | OverlayPlot


def pixels(image: QImage) -> npt.NDArray[np.uint8]:
    """Rows, columns, red green blue."""
    plain = image.convertToFormat(QImage.Format.Format_RGB32)
    flat = np.frombuffer(plain.constBits(), dtype=np.uint8)
    rows: npt.NDArray[np.uint8] = flat.reshape(plain.height(), plain.width(), 4)
    return rows[:, :, 2::-1]


def count(image: QImage, colour: str) -> int:
    """Pixels of nearly that colour."""
    ink = QColor(colour)
    wanted = np.array([ink.red(), ink.green(), ink.blue()])
    return int((np.abs(pixels(image).astype(int) - wanted).max(axis=2) < 12).sum())


@pytest.fixture(params=["live", "overlay"])
def chart(request: pytest.FixtureRequest, qtbot: QtBot) -> Chart:
    """In dark colours, with a line."""
    t_s = np.arange(0.0, 2.0, 0.01)
    made: Chart
    if request.param == "live":
        made = LivePlot(theme.DARK)
        made.add_readings(t_s, t_s * 4, t_s)
        made.finish()
    else:
        made = OverlayPlot(theme.DARK)
        made.show_starts([Line(name="start 1", t_s=t_s, volts=t_s * 4, amps=t_s)], picked=0)
    made.caption = Caption(of_job=lambda: "Job 0007 · Bilge pump", run="probe, 2026-11-25 14:03")
    qtbot.addWidget(made)
    made.resize(700, 320)
    with qtbot.waitExposed(made):
        made.show()
    return made


def test_it_is_twice_as_fine_and_light_below_a_head_and_the_screen_stays_dark(chart: Chart) -> None:
    before = chart.grab().toImage()
    image = picture(chart)
    size = chart.picture_size()
    assert image.width() == FINER * (size.width() + 2 * EDGE_PX)
    assert image.height() == FINER * (size.height() + HEAD_PX + EDGE_PX)
    assert image.pixelColor(2, 2) == QColor(theme.LIGHT.card)
    assert count(image, theme.LIGHT.amps) > 300
    assert not count(image, theme.DARK.amps)
    assert count(image.copy(0, 0, image.width(), FINER * HEAD_PX), theme.LIGHT.ink) > 300
    assert chart.grab().toImage() == before


def test_ctrl_c_puts_it_on_the_clipboard_and_a_sentence_says_so(chart: Chart) -> None:
    QGuiApplication.clipboard().clear()
    QTest.keyClick(chart, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    image = QGuiApplication.clipboard().image()
    assert not image.isNull()
    words = texts.CHART_COPIED.format(width=image.width(), height=image.height())
    assert chart.bar.isVisible()
    assert chart.bar.words.accessibleName() == words


def test_a_demonstration_is_marked_across_the_picture(chart: Chart) -> None:
    plain = pixels(picture(chart)).astype(int)
    chart.caption.demo = True
    marked = pixels(picture(chart)).astype(int)
    changed = np.argwhere(np.abs(plain - marked).max(axis=2) > 5)
    below = changed[changed[:, 0] > FINER * HEAD_PX]
    assert np.ptp(below[:, 1]) > 0.4 * plain.shape[1]
    assert (changed[:, 0] < FINER * HEAD_PX).any()


def test_a_caption_names_the_job_and_the_run_where_there_is_one() -> None:
    assert Caption(of_job=lambda: "Job 0007").words() == "Job 0007"
    assert Caption(of_job=lambda: "Job 0007", run="probe").words() == texts.CHART_CAPTION.format(
        job="Job 0007", run="probe"
    )
