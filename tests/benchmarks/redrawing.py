"""Two of the window's charts with so many readings each, redrawn 30 times a second until ended: for trip_latency."""

import os
import sys

import numpy as np
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from ui import theme
from ui.charts.live_plot import LivePlot


def main() -> int:
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    points = int(sys.argv[1])
    application = QApplication(sys.argv)
    source = np.random.default_rng(1)
    t_s = np.arange(points) / 100.0
    charts = [LivePlot(theme.LIGHT) for _ in range(2)]
    for chart in charts:
        chart.resize(850, 430)
        chart.add_readings(t_s, source.normal(12.0, 0.1, points), source.normal(1.0, 0.05, points))
        chart.finish()
        chart.show()
    last_s = [float(t_s[-1])]

    def feed() -> None:
        last_s[0] += 0.01
        for chart in charts:
            chart.add_readings([last_s[0]], [12.0], [1.0])

    timer = QTimer()
    timer.timeout.connect(feed)
    timer.start(33)
    return application.exec()


if __name__ == "__main__":
    sys.exit(main())
