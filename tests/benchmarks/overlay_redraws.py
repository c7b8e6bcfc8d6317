"""Prints how long a redraw of many overlaid starts takes one core, against the plotting library's plain setData.

`python -m tests.benchmarks.overlay_redraws [--starts 500] [--points 2000]`. Needs no screen. The view moves with every
redraw but those that only pick another start out; both are painted into the same size.
"""

import argparse
import os
import sys
import time
from collections.abc import Callable, Iterator
from itertools import count, cycle

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QSize
from PySide6.QtWidgets import QApplication

from ui import theme
from ui.charts.overlay_lines import Line
from ui.charts.overlay_plot import OverlayPlot

PICTURE = QSize(880, 500)
ROUNDS, PLAIN_ROUNDS = 60, 5
BEFORE_S, ON_S = 0.1, 1.5


def made_starts(starts: int, points: int, seed: int = 1) -> list[Line]:
    """Decays with noise, each read at its own times."""
    source = np.random.default_rng(seed)
    lines = []
    for number in range(starts):
        t_s = np.sort(source.uniform(-BEFORE_S, ON_S, points))
        tau_s = 0.15 * source.normal(1.0, 0.05)
        amps = np.where(t_s < 0, 0.0, 0.25 + 1.1 * np.exp(-t_s / tau_s)) + source.normal(0, 0.005, points)
        lines.append(Line(name=f"start {number + 1}", t_s=t_s, volts=np.where(t_s < 0, 0.0, 3.0), amps=amps))
    return lines


def cost_ms(what: Callable[[int], None], rounds: int) -> list[float]:
    """Of one core, for each of so many calls after one that is not counted, least first."""
    what(0)
    took = []
    for number in range(1, rounds + 1):
        began = time.process_time()
        what(number)
        took.append((time.process_time() - began) * 1e3)
    return sorted(took)


def own(lines: list[Line], views: Iterator[tuple[float, float]] | None, *, volts: bool) -> list[float]:
    """Moving through `views`; without any another start is picked out each time."""
    chart = OverlayPlot(theme.LIGHT)
    chart.resize(PICTURE)
    chart.show_starts(lines, picked=0)
    chart.show_volts(volts)
    chart.show()
    QApplication.processEvents()

    def redraw(number: int) -> None:
        if views is None:
            chart.pick(number % len(lines))
        else:
            chart.look(next(views))
        chart.repaint()

    took = cost_ms(redraw, ROUNDS)
    chart.hide()
    return took


def plain(lines: list[Line]) -> list[float]:
    """Every start a curve of the library's, given its data anew; pen of width 1."""
    widget = pg.PlotWidget()
    widget.resize(PICTURE)
    curves = [widget.plot(pen=pg.mkPen("k", width=1)) for _ in lines]
    widget.show()
    QApplication.processEvents()

    def redraw(_: int) -> None:
        for curve, line in zip(curves, lines, strict=True):
            curve.setData(line.t_s, line.amps)
        widget.viewport().repaint()

    took = cost_ms(redraw, PLAIN_ROUNDS)
    widget.hide()
    return took


def sliding(width_s: float) -> Iterator[tuple[float, float]]:
    begins = (-BEFORE_S + 0.001 * (number % 50) for number in count())
    return ((begin, begin + width_s) for begin in begins)


def zooming() -> Iterator[tuple[float, float]]:
    """From the whole in to a twentieth, step by step of the wheel, and out again."""
    factors = [1.2**-step for step in range(17)]
    return cycle([(0.0, (BEFORE_S + ON_S) * factor) for factor in (*factors, *reversed(factors))])


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--starts", type=int, default=500)
    parser.add_argument("--points", type=int, default=2000)
    asked = parser.parse_args()
    application = QApplication(sys.argv[:1])
    lines = made_starts(asked.starts, asked.points)
    application.processEvents()
    print(f"{asked.starts} starts of {asked.points} points, {PICTURE.width()} x {PICTURE.height()} px")
    print(f"{'redraw':34} {'p50 ms':>8} {'p95 ms':>8} {'worst ms':>9}")
    whole = BEFORE_S + ON_S
    for words, views, volts in (
        ("the whole, moving along", sliding(whole), False),
        ("a tenth of it, moving along", sliding(whole / 10), False),
        ("the wheel in and out", zooming(), False),
        ("another start picked out", None, False),
        ("the whole, amps and volts", sliding(whole), True),
    ):
        _tell(words, own(lines, views, volts=volts))
    _tell("plain setData of each", plain(lines))


def _tell(words: str, took: list[float]) -> None:
    p50, p95 = (took[int(share * (len(took) - 1))] for share in (0.5, 0.95))
    print(f"{words:34} {p50:8.1f} {p95:8.1f} {took[-1]:9.1f}")


if __name__ == "__main__":
    main()
