"""Prints how often the chart is redrawn in a second by one core, against the plotting library's plain setData.

First as fast as it goes, three lines of n readings each: volts, amps, and one more of the same reduction. Then live:
the chart as it ships and its two lines by plain setData, each fed so many readings a second and redrawn so many times a
second by the clock; a redraw that is not begun before the next is due is missed. Needs no screen.

    python -m tests.benchmarks.chart_redraws [--seconds 6]
"""

import argparse
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
LIVE = ((100_000, 100, 60), (1_000_000, 50, 30), (1_000_000, 100, 30))
"""Readings there are, readings and redraws a second."""


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


def live_own(count: int) -> tuple[QWidget, Callable[[Floats], None], Callable[[], None]]:
    """The chart as it ships with its two lines in full view: more readings, and a redraw."""
    t_s, volts, amps, _ = lines(count)
    chart = LivePlot(theme.LIGHT)
    chart.resize(PICTURE)
    chart.set_ceilings(14.0, 2.0)
    chart.add_readings(t_s, volts, amps)
    chart.follow_whole(60.0)
    chart.show()

    def feed(fresh: Floats) -> None:
        chart.add_readings(fresh, np.full(fresh.size, 12.0), np.full(fresh.size, 1.5))

    def redraw() -> None:
        chart.redraw()
        chart.canvas.widget.viewport().repaint()

    return chart, feed, redraw


def live_plain(count: int) -> tuple[QWidget, Callable[[Floats], None], Callable[[], None]]:
    """The same two lines, every reading handed to the library. Room for what comes is there from the beginning."""
    t_s, volts, amps, _ = lines(count)
    kept = np.concatenate((np.stack((t_s, volts, amps)), np.empty((3, 100_000))), axis=1)
    widget = pg.GraphicsLayoutWidget()
    widget.resize(PICTURE)
    plots = [widget.addPlot(row=row, col=0) for row in (0, 1)]
    curves = [plot.plot(pen=pg.mkPen(colour, width=1)) for plot, colour in zip(plots, "br", strict=True)]
    widget.show()
    held = [count]

    def feed(fresh: Floats) -> None:
        kept[:, held[0] : held[0] + fresh.size] = fresh, np.full(fresh.size, 12.0), np.full(fresh.size, 1.5)
        held[0] += fresh.size

    def redraw() -> None:
        for curve, line in zip(curves, kept[1:], strict=True):
            curve.setData(kept[0, : held[0]], line[: held[0]])
        widget.viewport().repaint()

    return widget, feed, redraw


def live(
    feed: Callable[[Floats], None], redraw: Callable[[], None], begin_s: float, rates: tuple[int, int], seconds: float
) -> str:
    """Redraws reached a second, those missed, share of one core, and how long one took."""
    readings_per_s, per_s = rates
    period_s = 1 / per_s
    for _ in range(3):
        redraw()
    took, missed, fed, number = [], 0, 0, 0
    began, worked = time.perf_counter(), time.process_time()
    while (passed := time.perf_counter() - began) < seconds:
        due = number * period_s
        if passed < due:
            time.sleep(due - passed)
        elif passed >= due + period_s:
            late = int((passed - due) / period_s)
            missed, number = missed + late, number + late
        number += 1
        come = int((time.perf_counter() - began) * readings_per_s) - fed
        feed(begin_s + np.arange(fed + 1, fed + come + 1) / readings_per_s)
        fed += come
        at = time.perf_counter()
        redraw()
        took.append(time.perf_counter() - at)
    spent, passed = time.process_time() - worked, time.perf_counter() - began
    middle, worst = np.quantile(took, 0.5) * 1e3, max(took) * 1e3
    return f"{len(took) / passed:>6.1f} {missed:>7} {spent / passed:>5.0%} {middle:>7.1f} {worst:>7.1f}"


def cost_s(what: Callable[[], None]) -> float:
    """Seconds of one core for one call."""
    what()
    count, began = 0, time.process_time()
    while (spent := time.process_time() - began) < AT_LEAST_S or count < 3:
        what()
        count += 1
    return spent / count


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seconds", type=float, default=6.0, help="of each live part")
    asked = parser.parse_args()
    application = QApplication(sys.argv[:1])
    told_at_once(application)
    told_live(application, asked.seconds)


def told_live(application: QApplication, seconds: float) -> None:
    columns = f"{'/s':>6} {'missed':>7} {'core':>5} {'p50 ms':>7} {'worst':>7}"
    print(f"\n{'live, 2 lines of':>26} | {'the chart':<{len(columns)}} | plain setData")
    print(f"{'readings':>12} {'fed/s':>6} {'due/s':>6} | {columns} | {columns}")
    for count, *rates in LIVE:
        told = []
        for made in (live_own, live_plain):
            widget, feed, redraw = made(count)
            application.processEvents()
            told.append(live(feed, redraw, count / 100.0, (rates[0], rates[1]), seconds))
            widget.hide()
        print(f"{count:>12,} {rates[0]:>6} {rates[1]:>6} | {told[0]} | {told[1]}", flush=True)


def told_at_once(application: QApplication) -> None:
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
