"""Prints how often the chart is redrawn in a second by one core, against the plotting library's plain setData.

Three lines of n readings each: volts, amps, and one more of the same reduction. Needs no screen.
"""

import os
import sys
import time
from collections.abc import Callable

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QSize
from PySide6.QtWidgets import QApplication, QWidget

from ui import theme
from ui.charts.live_plot import LivePlot
from ui.charts.readings import VOLTS, Readings
from ui.charts.reduction import Floats

SIZES = (20_000, 100_000, 1_000_000)
AT_LEAST_S = 1.5
PICTURE = QSize(850, 440)
REDRAWS_PER_S = 30


def lines(count: int) -> tuple[Floats, Floats, Floats, Floats]:
    """Seconds and three noisy lines with a kick now and then."""
    source = np.random.default_rng(1)
    t_s = np.arange(count) / 100.0
    kicks = np.where(t_s % 10 < 0.5, 12.0, 0.0)
    return t_s, kicks + source.normal(0, 0.02, count), kicks / 8 + source.normal(0, 0.005, count), kicks / 2


def own(count: int) -> tuple[QWidget, Callable[[], None], Callable[[], None]]:
    """The chart itself with a third line: the widget, a new reading and its redraw, and the reduction in it alone."""
    t_s, volts, amps, more = lines(count)
    chart = LivePlot(theme.LIGHT)
    chart.resize(PICTURE)
    chart.set_ceilings(14.0, 2.0)
    third, curve = Readings(), pg.PlotCurveItem(pen=pg.mkPen("g"), skipFiniteCheck=True)
    third.append(t_s, more, more)
    chart.add_readings(t_s, volts, amps)
    chart.finish()
    chart.show()
    plot = chart.canvas.volts
    plot.view.addItem(curve, ignoreBounds=True)

    def redraw() -> None:
        chart.add_readings([chart.last_s + 0.01], [0.0], [0.0])
        curve.setData(*third.outline(VOLTS, *chart.view(), plot.columns))
        chart.redraw()
        chart.canvas.widget.viewport().repaint()

    def reduce() -> None:
        for _ in range(3):
            third.outline(VOLTS, *chart.view(), plot.columns)

    return chart, redraw, reduce


def plain(count: int) -> tuple[QWidget, Callable[[], None]]:
    """Every reading handed to the library, twice over as the chart does: two plots, pen of width 1."""
    t_s, *values = lines(count)
    widget = pg.GraphicsLayoutWidget()
    widget.resize(PICTURE)
    upper, lower = widget.addPlot(row=0, col=0), widget.addPlot(row=1, col=0)
    curves = [plot.plot(pen=pg.mkPen(colour, width=1)) for plot, colour in ((upper, "b"), (lower, "r"), (upper, "g"))]
    widget.show()

    def redraw() -> None:
        for curve, line in zip(curves, values, strict=True):
            curve.setData(t_s, line)
        widget.viewport().repaint()

    return widget, redraw


def cost_s(what: Callable[[], None]) -> float:
    """Seconds of one core for one call."""
    what()
    count, began = 0, time.process_time()
    while (spent := time.process_time() - began) < AT_LEAST_S or count < 3:
        what()
        count += 1
    return spent / count


def main() -> None:
    application = QApplication(sys.argv)
    print(f"{'3 lines of':>12} {'redraws/s':>10} {'ms each':>8} {'reduction ms':>13} {'at 30/s':>8} {'setData/s':>10}")
    for count in SIZES:
        widget, redraw, reduce = own(count)
        application.processEvents()
        took, reduction = cost_s(redraw), cost_s(reduce)
        widget.hide()
        other, redraw_plainly = plain(count)
        application.processEvents()
        plainly = cost_s(redraw_plainly)
        other.hide()
        print(
            f"{count:>12,} {1 / took:>10.0f} {took * 1e3:>8.2f} {reduction * 1e3:>13.2f}"
            f" {took * REDRAWS_PER_S:>8.0%} {1 / plainly:>10.1f}"
        )


if __name__ == "__main__":
    main()
