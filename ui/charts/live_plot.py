"""Volts over amps on one time axis, drawn while they happen.

The wheel looks closer, a drag goes along, a double click goes back to following the run; with the focus, keys do the
same (ui.charts.keys). It shows readbacks; it controls nothing. The plotting library takes a quarter of a second to
load: it is not loaded before there is a window.
"""

import importlib
from typing import TYPE_CHECKING

from PySide6.QtCore import QElapsedTimer, QSize, Qt, QTimer
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from ui import texts
from ui.charts import keys
from ui.charts.chart_bar import ChartBar
from ui.charts.chart_corner import ChartCorner
from ui.charts.copying import Caption, copy_chart
from ui.charts.cursors import Cursors
from ui.charts.keys import Asked
from ui.charts.looking import Looking
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

    def __init__(self, tokens: Tokens, parent: QWidget | None = None, *, characters: bool = True) -> None:
        """`characters`: whether keys that write one are the chart's; not where a scanner types."""
        super().__init__(parent)
        self._characters = characters
        self._tokens = tokens
        self._shown = Shown()
        self._looking = Looking(shown=self._shown)
        self._canvas: Canvas | None = None
        self._changed = True
        self._drawn = QElapsedTimer()
        self._due = QTimer(self)
        self._due.setSingleShot(True)
        self._due.timeout.connect(self.redraw)
        self.caption = Caption()
        self.bar, self.corner = ChartBar(self), ChartCorner(self)
        self.bar.back.connect(lambda: self.look(None))
        self.corner.cursors_wanted.connect(self.show_cursors)
        self.corner.copy_wanted.connect(self.copy)
        self._room = QVBoxLayout(self)
        self._room.setContentsMargins(0, 0, 0, 0)
        self._room.setSpacing(0)
        self._room.addStretch(0)
        self._room.addWidget(self.bar)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(320, 200)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(texts.CHART_NAME)
        self.setAccessibleDescription(texts.CHART_HINT)

    # what is shown

    def clear(self) -> None:
        self._shown.readings.clear()
        self._shown.under.clear()
        self._shown = Shown(
            readings=self._shown.readings,
            under=self._shown.under,
            ceilings=self._shown.ceilings,
            whole_s=self._shown.whole_s,
        )
        self._looking = Looking(shown=self._shown)
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
        return self._looking.view()

    def look(self, span: tuple[float, float] | None) -> None:
        """At these seconds; None: as the run goes."""
        self._looking.chosen = span
        self._change()

    def follow_whole(self, least_s: float) -> None:
        """All of a run is in view while it goes on, and at least so many s: not only the latest of it."""
        self._shown.whole_s = least_s
        self._change()

    # cursors, and what is said below

    @property
    def cursors(self) -> Cursors | None:
        return self._looking.cursors

    def show_cursors(self, shown: bool) -> None:
        self._looking.show_cursors(shown)
        self._change()

    def move_cursor(self, which: int, to_s: float) -> None:
        self._looking.move_cursor(which, to_s)
        self._change()

    def _tell(self) -> None:
        looking = self._looking
        read, looked = looking.read(), looking.looked()
        self.bar.show_state(read or looked, back=looking.way_back(), look=looking.unfollowed and not read)
        self.corner.show_cursors(looking.cursors is not None)
        self.setAccessibleDescription(" ".join(words for words in (looked, read, texts.CHART_HINT) if words))

    # as a picture

    def copy(self) -> None:
        self.bar.say_briefly(copy_chart(self))

    def picture_size(self) -> QSize:
        size: QSize = self.canvas.widget.size()
        return size

    def picture_words(self) -> str:
        return self._looking.read() or self._looking.looked()

    def paint_picture(self, painter: QPainter, tokens: Tokens, finer: int) -> None:
        """In other colours for a moment, between two paints of the screen."""
        canvas = self.canvas
        canvas.wear(tokens, finer)
        self._changed = False
        canvas.draw(self._shown, self.view(), self.cursors)
        canvas.paint(painter)
        canvas.wear(self._tokens)
        self.redraw()

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
            self._canvas.resized.connect(self._change)
            self._canvas.cursors.moved.connect(self.move_cursor)
            self._room.insertWidget(0, self._canvas.widget, 1)
            self.corner.raise_()
        return self._canvas

    def redraw(self) -> None:
        self._changed = False
        self._drawn.start()
        corner = self.corner.width() if self.corner.isVisible() else 0
        self.canvas.draw(self._shown, self.view(), self.cursors, focus=self.hasFocus(), corner=corner)

    def _change(self) -> None:
        """Rarer than readings and due with the next paint, whoever asks for it."""
        self._changed = True
        self._tell()
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
        self.corner.place()
        self._change()

    # keys

    def keyPressEvent(self, event: QKeyEvent) -> None:
        asked = keys.asked(event, characters=self._characters)
        if asked is Asked.COPY:
            self.copy()
        elif asked is not None and self._looking.obey(
            asked, steps=keys.steps(event), columns=self.canvas.volts.columns
        ):
            self._change()
        else:
            super().keyPressEvent(event)

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes from one cursor to the other before it leaves."""
        after = None if self.cursors is None or not self.hasFocus() else self.cursors.next(forward=forward)
        if after is None:
            return super().focusNextPrevChild(forward)
        self._looking.cursors = after
        self._change()
        return True

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._change()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self._change()
