"""Two small buttons in the corner of a chart that leaves room there: cursors, and the picture to copy."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from ui import texts
from ui.charts.chart_bar import BUTTON_PX, small_button

LEAST_WIDE_PX, LEAST_HIGH_PX = 480, 170
"""Of a chart that has room for them; the keys are there at any size."""


class ChartCorner(QWidget):
    """At the top right of its parent, which calls `place` when its size changes."""

    cursors_wanted = Signal(bool)
    copy_wanted = Signal()

    def __init__(self, chart: QWidget) -> None:
        super().__init__(chart)
        self._chart = chart
        self.cursors = small_button(texts.CHART_CURSORS, "chart_cursors", texts.CHART_CURSORS_NAME)
        self.cursors.setCheckable(True)
        self.cursors.clicked.connect(self.cursors_wanted)
        self.copying = small_button(texts.CHART_COPY, "chart_copy", texts.CHART_COPY_NAME)
        self.copying.clicked.connect(lambda: self.copy_wanted.emit())
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        for one in (self.cursors, self.copying):
            one.setToolTip(one.accessibleName())
            row.addWidget(one)

    def show_cursors(self, shown: bool) -> None:
        self.cursors.setChecked(shown)

    def place(self) -> None:
        chart = self._chart
        self.setVisible(chart.width() >= LEAST_WIDE_PX and chart.height() >= LEAST_HIGH_PX)
        self.resize(self.sizeHint().width(), BUTTON_PX)
        self.move(chart.width() - self.width() - 4, 3)
