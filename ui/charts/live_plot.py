"""Volts over amps on one time axis, drawn while they happen.

Painted by hand rather than with a plotting library: every label has its place at the line it belongs to, a redraw costs
the same whether the run has a thousand readings or a million, and there is one widget to keep alive. The wheel looks
closer, a drag goes along, a double click goes back to following the run. It shows readbacks; it controls nothing.
"""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF, QWheelEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui import sayings, texts, theme
from ui.charts.marks import Band, Mark, fit_words
from ui.charts.readings import Floats, Readings
from ui.charts.reduction import thin
from ui.charts.scale import Scale, tick_text, ticks, top_above
from ui.theme import Tokens

LEFT, RIGHT, TOP, BETWEEN, BOTTOM = 48, 112, 34, 30, 28
BAND_GAP = 3
FAR = 4.0
"""A ceiling so many times above the highest reading would press the line flat."""
LEAST_SPAN_S, FOLLOW_SPAN_S = 26.0, 40.0
"""While a run goes on: from nothing up to LEAST_SPAN_S at first, then the last FOLLOW_SPAN_S."""


class LivePlot(QWidget):
    """Feed it with `add_readings`, `begin_band`, `add_mark`, `set_ceilings`; `finish` shows the whole run.

    Readings get the room: a ceiling far above them all is only named.
    """

    def __init__(self, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tokens = tokens
        self._readings = Readings()
        self._bands: list[Band] = []
        self._marks: list[Mark] = []
        self._ceilings: tuple[float | None, float | None] = (None, None)
        self._view: tuple[float, float] | None = None
        self._finished = False
        self._drag_from: float | None = None
        self._top = [0.0, 0.0]
        self.redraws = 0
        self.setMinimumSize(320, 200)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(texts.CHART_NAME)
        self.setToolTip(texts.CHART_HINT)

    # what is shown

    def clear(self) -> None:
        self._readings.clear()
        self._bands, self._marks, self._view, self._finished = [], [], None, False
        self._top = [0.0, 0.0]
        self.update()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def set_ceilings(self, volts: float | None, amps: float | None) -> None:
        self._ceilings = (volts, amps)
        self.update()

    def add_readings(self, t_s: Floats | list[float], volts: Floats | list[float], amps: Floats | list[float]) -> None:
        if len(t_s):
            self._readings.append(t_s, volts, amps)
            self._top = [max(self._top[0], float(max(volts))), max(self._top[1], float(max(amps)))]
            self.update()

    def begin_band(self, name: str, t_s: float, *, important: bool = False) -> None:
        self.end_band(t_s)
        self._bands.append(Band(name=name, begin_s=t_s, important=important))
        self.update()

    def end_band(self, t_s: float) -> None:
        if self._bands and self._bands[-1].end_s is None:
            self._bands[-1].end_s = t_s

    def add_mark(self, mark: Mark) -> None:
        self._marks.append(mark)
        self.update()

    def finish(self) -> None:
        """The run is over: the last band ends, and the whole of it is shown."""
        self.end_band(self.last_s)
        self._finished = True
        self.update()

    @property
    def last_s(self) -> float:
        return float(self._readings.t_s[-1]) if len(self._readings) else 0.0

    def view(self) -> tuple[float, float]:
        """The seconds that are shown: chosen by hand, the whole of a finished run, or following a live one."""
        if self._view is not None:
            return self._view
        if self._finished:
            return 0.0, max(1.0, self.last_s * 1.02)
        if self.last_s <= FOLLOW_SPAN_S:
            return 0.0, LEAST_SPAN_S if self.last_s <= LEAST_SPAN_S else FOLLOW_SPAN_S
        return self.last_s - FOLLOW_SPAN_S, self.last_s

    # how it is drawn

    def paintEvent(self, event: QPaintEvent) -> None:
        self.redraws += 1
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
        painter.setFont(theme.font(theme.SECOND_PX))
        plots = self._plots()
        low, high = self.view()
        across = Scale(low=low, high=high, start=plots[0].left(), end=plots[0].right())
        self._draw_bands(painter, plots, across)
        for plot, values, ceiling, unit, top, colour, name in (
            (
                plots[0],
                self._readings.volts,
                self._ceilings[0],
                "V",
                self._top[0],
                self._tokens.volts,
                texts.VOLTS_LINE,
            ),
            (plots[1], self._readings.amps, self._ceilings[1], "A", self._top[1], self._tokens.amps, texts.AMPS_LINE),
        ):
            up = _upward(plot, top, None if _far_above(top, ceiling) else ceiling)
            self._draw_grid(painter, plot, up)
            ceiling_label = self._draw_ceiling(painter, plot, up, ceiling, unit)
            self._draw_line(painter, plot, across, up, values, colour)
            self._draw_name(painter, plot, up, values, colour, name, ceiling_label)
        self._draw_time(painter, plots[1], across)
        self._draw_marks(painter, plots, across)
        if not len(self._readings):
            self._say_empty(painter, plots[0])
        painter.end()

    def _say_empty(self, painter: QPainter, plot: QRectF) -> None:
        width = painter.fontMetrics().horizontalAdvance(texts.CHART_EMPTY) + 24
        box = QRectF(plot.center().x() - width / 2, plot.center().y() - 12, width, 24)
        painter.fillRect(box, QColor(self._tokens.card))
        painter.setPen(QColor(self._tokens.second))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, texts.CHART_EMPTY)

    def _plots(self) -> tuple[QRectF, QRectF]:
        free = self.height() - TOP - BETWEEN - BOTTOM
        width = self.width() - LEFT - RIGHT
        upper = round(free * 0.54)
        return QRectF(LEFT, TOP, width, upper), QRectF(LEFT, TOP + upper + BETWEEN, width, free - upper)

    def _draw_bands(self, painter: QPainter, plots: tuple[QRectF, QRectF], across: Scale) -> None:
        left, right = plots[0].left(), plots[0].right()
        names = []
        for band in self._bands:
            begin = across.px(band.begin_s)
            end = across.px(self.last_s if band.end_s is None else band.end_s)
            if end < left or begin > right:
                continue
            begin, end = max(begin, left), min(max(end - BAND_GAP, begin + 1), right)
            painter.fillRect(
                QRectF(begin, plots[0].top(), end - begin, plots[1].bottom() - plots[0].top()),
                QColor(self._tokens.band),
            )
            names.append((begin + 2, band.name, band.important))
        painter.setPen(QColor(self._tokens.second))
        metrics = painter.fontMetrics()
        for word in fit_words(names, metrics.horizontalAdvance, right + RIGHT - 8):
            painter.drawText(QPointF(word.left, TOP - 12), word.text)

    def _draw_grid(self, painter: QPainter, plot: QRectF, up: Scale) -> None:
        for value in ticks(up.low, up.high, max(2, int(plot.height() / 44))):
            y = round(up.px(value)) + 0.5
            painter.setPen(QPen(QColor(self._tokens.line), 1))
            painter.drawLine(QPointF(plot.left(), y), QPointF(plot.right(), y))
            painter.setPen(QColor(self._tokens.second))
            box = QRectF(0, y - 10, LEFT - 8, 20)
            painter.drawText(box, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, tick_text(value))

    def _draw_ceiling(
        self, painter: QPainter, plot: QRectF, up: Scale, ceiling: float | None, unit: str
    ) -> float | None:
        """Returns where its label stands, so that the line's own keeps clear."""
        if ceiling is None:
            return None
        within = ceiling <= up.high
        y = round(up.px(min(ceiling, up.high)))
        if within:
            painter.setPen(QPen(QColor(self._tokens.third), 3))
            painter.drawLine(QPointF(plot.left(), y), QPointF(plot.right(), y))
        painter.setPen(QColor(self._tokens.second))
        box = QRectF(plot.right() + 8, y - 10, RIGHT - 10, 20)
        words = texts.CEILING_LABEL.format(value=sayings.short(ceiling, unit))
        painter.drawText(box, Qt.AlignmentFlag.AlignVCenter, words)
        if not within:
            x = box.left() + painter.fontMetrics().horizontalAdvance(words) + 10
            painter.drawPolyline(QPolygonF([QPointF(x - 4, y + 2), QPointF(x, y - 3), QPointF(x + 4, y + 2)]))
        return float(y)

    def _draw_line(
        self, painter: QPainter, plot: QRectF, across: Scale, up: Scale, values: Floats, colour: str
    ) -> None:
        t_s = self._readings.t_s
        first, last = t_s.searchsorted([across.low, across.high])
        first, last = max(0, int(first) - 1), min(t_s.size, int(last) + 1)
        if last - first < 2:
            return
        x, y = thin(t_s[first:last], values[first:last], int(plot.width()), self._readings.first_index + first)
        points = [QPointF(a, b) for a, b in zip(across.many(x).tolist(), up.many(y).tolist(), strict=True)]
        painter.save()
        painter.setClipRect(plot.adjusted(0, -4, 0, 8))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, len(points) < 4000)
        painter.setPen(QPen(QColor(colour), 1))
        painter.drawPolyline(QPolygonF(points))
        painter.restore()

    def _draw_name(
        self, painter: QPainter, plot: QRectF, up: Scale, values: Floats, colour: str, name: str, avoid: float | None
    ) -> None:
        """At the line's end, not in a legend."""
        y = up.px(float(values[-1])) if values.size else plot.bottom()
        y = min(max(y, plot.top() + 10), plot.bottom() - 8)
        if avoid is not None and abs(y - avoid) < 20:
            y = avoid + 20
        painter.save()
        painter.setFont(theme.semibold(theme.SECOND_PX + 1))
        painter.setPen(QColor(colour))
        painter.drawText(QRectF(plot.right() + 8, y - 10, RIGHT - 10, 20), Qt.AlignmentFlag.AlignVCenter, name)
        painter.restore()

    def _draw_time(self, painter: QPainter, plot: QRectF, across: Scale) -> None:
        painter.setPen(QColor(self._tokens.second))
        marks = ticks(across.low, across.high, max(2, int(plot.width() / 110)))
        for value in marks:
            text = texts.SECONDS_TICK.format(value=tick_text(value)) if value == marks[-1] else tick_text(value)
            box = QRectF(across.px(value) - 40, plot.bottom() + 6, 80, 18)
            painter.drawText(box, Qt.AlignmentFlag.AlignHCenter, text)

    def _draw_marks(self, painter: QPainter, plots: tuple[QRectF, QRectF], across: Scale) -> None:
        """Small triangles between the plots, with as many words as fit; strong ones come first."""
        y = plots[0].bottom() + BETWEEN / 2 + 1
        shown = [mark for mark in self._marks if across.low <= mark.t_s <= across.high]
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink = QColor(self._tokens.ink)
        for mark in shown:
            x = across.px(mark.t_s)
            if mark.strong:
                painter.setPen(QPen(ink, 1, Qt.PenStyle.DotLine))
                painter.drawLine(QPointF(x, plots[0].top()), QPointF(x, plots[1].bottom()))
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(ink if mark.strong else QColor(self._tokens.second))
            size = 5 if mark.strong else 4
            painter.drawPolygon(
                QPolygonF([QPointF(x, y - size), QPointF(x + size, y + size), QPointF(x - size, y + size)])
            )
        painter.setFont(theme.semibold(theme.SECOND_PX))
        painter.setPen(ink)
        metrics = painter.fontMetrics()
        words = fit_words(
            [(across.px(mark.t_s) + 9, mark.word, mark.strong) for mark in shown],
            metrics.horizontalAdvance,
            plots[0].right() + RIGHT,
        )
        for word in words:
            painter.drawText(QPointF(word.left, y + metrics.ascent() / 2 - 1), word.text)
        painter.restore()

    # looking closer

    def wheelEvent(self, event: QWheelEvent) -> None:
        low, high = self.view()
        across = Scale(low=low, high=high, start=LEFT, end=self.width() - RIGHT)
        at = across.value(event.position().x())
        factor = 0.8 if event.angleDelta().y() > 0 else 1.25
        self._view = (
            (at - (at - low) * factor, at + (high - at) * factor) if (high - low) * factor > 0.05 else self._view
        )
        self.update()
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._drag_from = event.position().x()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._drag_from is None:
            return
        low, high = self.view()
        moved_s = (event.position().x() - self._drag_from) * (high - low) / max(1, self.width() - LEFT - RIGHT)
        self._view = (low - moved_s, high - moved_s)
        self._drag_from = event.position().x()
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        self._drag_from = None

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self._view = None
        self.update()


def _upward(plot: QRectF, top: float, ceiling: float | None) -> Scale:
    highest = max(top, ceiling or 0.0) or 1.0
    return Scale(low=0.0, high=top_above(highest), start=plot.bottom(), end=plot.top())


def _far_above(top: float, ceiling: float | None) -> bool:
    return ceiling is not None and 0 < top < ceiling / FAR
