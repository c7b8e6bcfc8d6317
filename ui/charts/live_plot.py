"""Volts over amps on one time axis, drawn while they happen.

The wheel looks closer, a drag goes along, a double click goes back to following the run. It shows readbacks; it
controls nothing. The plotting library takes a quarter of a second to load: it is not loaded before there is a window.
"""

import importlib
from typing import TYPE_CHECKING

from PySide6.QtCore import QElapsedTimer, QTimer
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from ui import texts
from ui.charts.framing import usual_span
from ui.charts.marks import Band, Mark, Shown
from ui.charts.reduction import Floats
from ui.theme import Tokens

if TYPE_CHECKING:
    from ui.charts.canvas import Canvas

REDRAW_EVERY_MS = 33


def load_library() -> None:
    """For a quiet moment, so that the first chart need not wait for it."""
    importlib.import_module("ui.charts.canvas")


class LivePlot(QWidget):
    """Feed it with `add_readings`, `begin_band`, `add_mark`, `set_ceilings`; `finish` shows the whole run.

    However fast it is fed, it is redrawn at most every REDRAW_EVERY_MS.
    """

    def __init__(self, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tokens = tokens
        self._shown = Shown()
        self._chosen: tuple[float, float] | None = None
        self._canvas: Canvas | None = None
        self._changed = True
        self._drawn = QElapsedTimer()
        self._due = QTimer(self)
        self._due.setSingleShot(True)
        self._due.timeout.connect(self.redraw)
        self._room = QVBoxLayout(self)
        self._room.setContentsMargins(0, 0, 0, 0)
        self.setMinimumSize(320, 200)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(texts.CHART_NAME)

    # what is shown

    def clear(self) -> None:
        self._shown.readings.clear()
        self._shown.under.clear()
        self._shown = Shown(readings=self._shown.readings, under=self._shown.under, ceilings=self._shown.ceilings)
        self._chosen = None
        self._change()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        if self._canvas is not None:
            self._canvas.wear(tokens)
        self._change()

    def set_ceilings(self, volts: float | None, amps: float | None) -> None:
        if self._shown.ceilings != (volts, amps):
            self._shown.ceilings = (volts, amps)
            self._change()

    def add_readings(self, t_s: Floats | list[float], volts: Floats | list[float], amps: Floats | list[float]) -> None:
        if len(t_s):
            self._shown.readings.append(t_s, volts, amps)
            high_v, high_a = self._shown.tops
            self._shown.tops = max(high_v, float(max(volts))), max(high_a, float(max(amps)))
            self._draw_soon()

    def lay_under(
        self, name: str, t_s: Floats | list[float], volts: Floats | list[float], amps: Floats | list[float]
    ) -> None:
        """Another run on the same axes, both from their own second 0, drawn dashed and named; "" and nothing: none."""
        shown = self._shown
        shown.under.clear()
        shown.under.append(t_s, volts, amps)
        shown.under_name = name
        high_v, high_a = (
            max([0.0, *(float(values.max()) for values in pair if values.size)])
            for pair in (
                (shown.readings.volts, shown.under.volts),
                (shown.readings.amps, shown.under.amps),
            )
        )
        shown.tops = high_v, high_a
        self._change()

    def begin_band(self, name: str, t_s: float, *, important: bool = False) -> None:
        self.end_band(t_s)
        self._shown.bands.append(Band(name=name, begin_s=t_s, important=important))

    def end_band(self, t_s: float) -> None:
        bands = self._shown.bands
        if bands and bands[-1].end_s is None:
            bands[-1].end_s = t_s
        self._change()

    def add_mark(self, mark: Mark) -> None:
        self._shown.marks.append(mark)
        self._change()

    def finish(self) -> None:
        """The run is over: the last band ends, and the whole of it is shown."""
        self._shown.finished = True
        self.end_band(self.last_s)

    @property
    def last_s(self) -> float:
        return self._shown.last_s

    def view(self) -> tuple[float, float]:
        """The seconds that are shown: chosen by hand, the whole of a finished run, or following a live one."""
        return self._chosen or usual_span(self._shown)

    def look(self, span: tuple[float, float] | None) -> None:
        """At these seconds; None: as the run goes."""
        self._chosen = span
        self._change()

    # when it is drawn

    @property
    def canvas(self) -> "Canvas":
        """Made when first asked for, which loads the plotting library."""
        if self._canvas is None:
            from ui.charts.canvas import Canvas

            self._canvas = Canvas(self, self._tokens)
            self._canvas.view_chosen.connect(lambda low, high: self.look((low, high)))
            self._canvas.view_released.connect(lambda: self.look(None))
            self._canvas.painting.connect(self._bring_up_to_date)
            self._room.addWidget(self._canvas.widget)
        return self._canvas

    def redraw(self) -> None:
        self._changed = False
        self._drawn.start()
        self.canvas.draw(self._shown, self.view())

    def _change(self) -> None:
        """Rarer than readings and due with the next paint, whoever asks for it."""
        self._changed = True
        self._draw_soon()

    def _draw_soon(self) -> None:
        if self.isVisible() and not self._due.isActive():
            waited = self._drawn.elapsed() if self._drawn.isValid() else REDRAW_EVERY_MS
            self._due.start(max(0, REDRAW_EVERY_MS - waited))

    def _bring_up_to_date(self) -> None:
        """Not for readings: each redraw asks for a paint, and readings may well come between the two."""
        if self._changed:
            self.redraw()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.redraw()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._change()
