"""Many starts over one another from their trigger on: amps, and volts in a pane of their own when asked for.

What changes with the view alone (axes, band, the crowd) is painted once and kept; a start picked out, cursors and a
start that is being captured go over it.
"""

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui import curve_texts as texts
from ui import texts as window_texts
from ui.charts import keys
from ui.charts.chart_bar import ChartBar
from ui.charts.copying import Caption, copy_chart
from ui.charts.crowd import Crowd
from ui.charts.cursors import GRAB_PX, Cursors, laid_on, read_out
from ui.charts.keys import CLOSER, Asked
from ui.charts.looking import looked_words
from ui.charts.overlay_layers import Layers
from ui.charts.overlay_lines import AMPS, VOLTS, BandOf, Line, Overlaid
from ui.charts.overlay_painting import Sheet
from ui.charts.scale import Scale, round_step
from ui.moments import clock_text, day_text, now_utc
from ui.theme import Tokens

LEFT, RIGHT, TOP, BOTTOM, BETWEEN = 58.0, 26.0, 34.0, 34.0, 22.0
VOLTS_SHARE = 0.32
BELOW, ABOVE = 0.04, 0.1
"""Shares of the height below zero and above the highest."""
LEAST_SPAN_S = 0.002
NEAR_PX = 24.0
"""How near a click must be to a start to pick it out."""


class OverlayPlot(QWidget):
    """`picked` the number of a start that was clicked; `cursor_read` what lies between the cursors, as words."""

    picked = Signal(int)
    cursor_read = Signal(str)

    def __init__(self, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tokens = tokens
        self.shown = Overlaid()
        self._crowds = {AMPS: Crowd(), VOLTS: Crowd()}
        self._view: tuple[float, float] | None = None
        self._levels: tuple[float, float] | None = None
        self.volts_shown, self.lead_ohm = False, 0.0
        self.cursors: Cursors | None = None
        self.characters = True
        """Whether keys that write a character are its own, and not of whoever is typed or scanned to."""
        self._behind: QPixmap | None = None
        self._painted: dict[str, Sheet] = {}
        self._dragged: QPointF | None = None
        self._box: tuple[QPointF, QPointF] | None = None
        self._grabbed: int | None = None
        self.caption = Caption()
        self.bar = ChartBar(self)
        self.bar.back.connect(self.home)
        self.setMinimumSize(320, 200)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setToolTip(texts.OVERLAY_HINT)
        self._name_it()

    # what is shown

    def show_starts(self, crowd: Sequence[Line], *, picked: int | None = None, mean: Line | None = None) -> None:
        """In place of those that were shown; the view stays where it was chosen."""
        self.shown.crowd, self.shown.picked, self.shown.mean = list(crowd), picked, mean
        self._put_crowds()
        self._anew()

    def add_start(self, line: Line, *, pick: bool = True) -> None:
        """One more, as it was captured."""
        self.shown.crowd = [*self.shown.crowd, line]
        if pick:
            self.shown.picked = len(self.shown.crowd) - 1
        self.shown.live = None
        self._put_crowds()
        self._anew()

    def pick(self, number: int | None) -> None:
        """One start picked out. What is behind stays as it was painted."""
        self.shown.picked = number if number is None or number < len(self.shown.crowd) else None
        self._name_it()
        self._tell_cursors()
        self.update()

    def show_band(self, area: BandOf | None) -> None:
        self.shown.band = area
        self._anew()

    def show_before(self, lines: Sequence[Line], name: str = "") -> None:
        self.shown.before, self.shown.before_name = list(lines), name
        self._anew()

    def show_capture(self, line: Line | None) -> None:
        self.shown.capture = line
        self._anew()

    def show_filled_in(self, line: Line | None) -> None:
        self.shown.filled_in = line
        self.update()

    def show_live(self, line: Line | None) -> None:
        """The start that is being captured, as far as it is read."""
        self.shown.live = line
        self.update()

    def expect(self, before_s: float, on_s: float) -> None:
        """How long the coming starts are, so that the axis need not move while they are read."""
        self.shown.expected = -before_s, on_s
        self.update()

    def set_trigger(self, words: str) -> None:
        self.shown.trigger = words
        self.update()

    def show_volts(self, shown: bool, *, lead_ohm: float = 0.0) -> None:
        """With `lead_ohm` the volts at the motor: what the leads drop is taken out."""
        self.volts_shown, self.lead_ohm = shown, lead_ohm
        self._put_crowds()
        self._anew()

    def clear(self) -> None:
        self.shown = Overlaid(trigger=self.shown.trigger)
        self._put_crowds()
        self.cursors = None
        self.home()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self._anew()

    # where one looks

    def view(self) -> tuple[float, float]:
        return self._view or self.shown.span()

    def look(self, span: tuple[float, float] | None, levels: tuple[float, float] | None = None) -> None:
        """At these seconds, and these amps; None for the whole."""
        if span is not None and span[1] - span[0] < LEAST_SPAN_S:
            middle = (span[0] + span[1]) / 2
            span = middle - LEAST_SPAN_S / 2, middle + LEAST_SPAN_S / 2
        self._view, self._levels = span, levels
        self.bar.show_state(self._looked(), back=window_texts.CHART_BACK if self._looked() else "")
        self._anew()

    def _looked(self) -> str:
        """Which part is in view; "" for the whole."""
        if self._view is None:
            return texts.LEVELS_LOOKED if self._levels is not None else ""
        low, high = self.shown.span()
        return looked_words(window_texts.CHART_ZOOMED, self._view, high - low)

    def home(self) -> None:
        self.look(None)

    def show_cursors(self, shown: bool) -> None:
        self.cursors = laid_on(*self.view()) if shown else None
        self._tell_cursors()
        self.update()

    # how it is laid out

    def sheets(self) -> dict[str, Sheet]:
        """Amps, and volts below them where they are asked for."""
        low, high = self.view()
        left, right = LEFT, max(LEFT + 40.0, self.width() - RIGHT)
        top, bottom = TOP, max(TOP + 40.0, self.height() - BOTTOM)
        split = bottom - VOLTS_SHARE * (bottom - top) if self.volts_shown else bottom
        across = Scale(low=low, high=high, begin=left, end=right)
        boxes = {AMPS: QRectF(left, top, right - left, split - top)}
        if self.volts_shown:
            boxes[VOLTS] = QRectF(left, split + BETWEEN, right - left, bottom - split - BETWEEN)
        return {
            what: Sheet(box=box, across=across, upward=self._upward(what, box), unit=unit)
            for (what, box), unit in zip(boxes.items(), ("A", "V"), strict=False)
        }

    def _upward(self, what: str, box: QRectF) -> Scale:
        if what == AMPS and self._levels is not None:
            low, high = self._levels
        else:
            lead_ohm = self.lead_ohm if what == VOLTS else 0.0
            most = max(self._crowds[what].tops[1], self.shown.most(what, lead_ohm))
            high = _round_top(most if most > 0 else 1.0)
            low = -BELOW * high
        return Scale(low=low, high=high, begin=box.bottom(), end=box.top())

    def _put_crowds(self) -> None:
        for what, crowd in self._crowds.items():
            wanted = what == AMPS or self.volts_shown
            crowd.put([(line.t_s, line.of(what, self.lead_ohm)) for line in self.shown.crowd] if wanted else [])

    def _anew(self) -> None:
        self._behind = None
        self._name_it()
        self._tell_cursors()
        self.update()

    def _name_it(self) -> None:
        count = len(self.shown.crowd)
        starts = texts.OVERLAY_EMPTY if not count else texts.starts(count)
        picked = "" if self.shown.picked is None else self.shown.crowd[self.shown.picked].name
        self.setAccessibleName(texts.OVERLAY_TOLD.format(name=texts.OVERLAY_NAME, starts=starts, picked=picked))

    def main_line(self) -> Line | None:
        """The one that cursors read: picked out, or being captured, or the mean."""
        picked = None if self.shown.picked is None else self.shown.crowd[self.shown.picked]
        return picked or self.shown.live or self.shown.mean or self.shown.capture

    def _tell_cursors(self) -> None:
        told = "" if self.cursors is None else read_out(self.cursors, self.main_line(), self.lead_ohm)
        self.setAccessibleDescription(told)
        self.cursor_read.emit(told)

    # painting

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        sheets, ratio = self.sheets(), self.devicePixelRatioF()
        layers = self._layers(self._tokens)
        if self._behind is None or self._painted != sheets:
            self._behind, self._painted = layers.behind(sheets, self.size(), ratio), sheets
        layers.paint(painter, sheets, self._behind)
        if self._box is not None:
            painter.setPen(QPen(QColor(self._tokens.ink), 1, Qt.PenStyle.DashLine))
            painter.drawRect(QRectF(*self._box).normalized())
        painter.end()

    def _layers(self, tokens: Tokens) -> Layers:
        return Layers(
            shown=self.shown,
            crowds=self._crowds,
            tokens=tokens,
            lead_ohm=self.lead_ohm,
            cursors=self.cursors,
            held=self.hasFocus(),
        )

    # as a picture

    def copy(self) -> None:
        now = now_utc()  # starts of many days may lie over one another: the picture has the day of its own
        self.caption.run = texts.PICTURED.format(day=day_text(now), at=clock_text(now))
        self.bar.say_briefly(copy_chart(self))

    def picture_size(self) -> QSize:
        return self.size()

    def picture_words(self) -> str:
        read = "" if self.cursors is None else read_out(self.cursors, self.main_line(), self.lead_ohm)
        return read or self._looked()

    def paint_picture(self, painter: QPainter, tokens: Tokens, finer: int) -> None:
        """In other colours; what is kept for the screen stays as it is."""
        sheets, layers = self.sheets(), self._layers(tokens)
        layers.paint(painter, sheets, layers.behind(sheets, self.size(), float(finer)))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.bar.setGeometry(int(LEFT) - 10, 2, self.width() - int(LEFT), self.bar.height())
        self._behind = None

    # hands and keys

    def wheelEvent(self, event: QWheelEvent) -> None:
        factor = CLOSER ** (-event.angleDelta().y() / 120.0)
        sheet = self.sheets()[AMPS]
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            at = sheet.upward.value(event.position().y())
            self.look(self._view, (at + (sheet.upward.low - at) * factor, at + (sheet.upward.high - at) * factor))
        else:
            self._closer(factor, sheet.across.value(event.position().x()))
        event.accept()

    def _closer(self, factor: float, at_s: float) -> None:
        low, high = self.view()
        self.look((at_s + (low - at_s) * factor, at_s + (high - at_s) * factor), self._levels)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() is not Qt.MouseButton.LeftButton:
            return
        self._grabbed = self._cursor_at(event.position())
        if self._grabbed is not None and self.cursors is not None:
            self.cursors = self.cursors.moved(self._grabbed, self.cursors.both[self._grabbed])
        elif event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            self._box = (event.position(), event.position())
        else:
            self._dragged = self._pressed = event.position()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        at, across = event.position(), self.sheets()[AMPS].across
        if self._grabbed is not None and self.cursors is not None:
            self._hold(self.cursors.moved(self._grabbed, across.value(at.x())))
        elif self._box is not None:
            self._box = (self._box[0], at)
            self.update()
        elif self._dragged is not None:
            apart = (self._dragged.x() - at.x()) * across.per_px
            self._dragged = at
            if apart:
                self.look((across.low + apart, across.high + apart), self._levels)
        else:
            near = self._cursor_at(at) is not None
            self.setCursor(Qt.CursorShape.SplitHCursor if near else Qt.CursorShape.ArrowCursor)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        at, sheet = event.position(), self.sheets()[AMPS]
        if self._box is not None:
            box = QRectF(self._box[0], at).normalized()
            self._box = None
            if box.width() > 4 and box.height() > 4:
                span = sheet.across.value(box.left()), sheet.across.value(box.right())
                self.look(span, (sheet.upward.value(box.bottom()), sheet.upward.value(box.top())))
            self.update()
        elif self._dragged is not None and (at - self._pressed).manhattanLength() < 3:
            self._pick_near(at)
        self._dragged, self._grabbed = None, None

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self._dragged = None
        self.home()

    _pressed = QPointF()

    def _cursor_at(self, at: QPointF) -> int | None:
        if self.cursors is None:
            return None
        across = self.sheets()[AMPS].across
        apart = [abs(across.px(at_s) - at.x()) for at_s in self.cursors.both]
        return int(np.argmin(apart)) if min(apart) <= GRAB_PX else None

    def _pick_near(self, at: QPointF) -> None:
        """The start that is nearest, straight up or down."""
        sheet = self.sheets()[AMPS]
        at_s = sheet.across.value(at.x())
        levels = [
            np.interp(at_s, line.t_s, line.amps) if line.t_s[0] <= at_s <= line.t_s[-1] else np.inf
            for line in self.shown.crowd
        ]
        if levels:
            apart = np.abs(sheet.upward.many_px(np.array(levels)) - at.y())
            if apart.min() <= NEAR_PX:
                self.picked.emit(int(apart.argmin()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        asked, (low, high) = keys.asked(event, characters=self.characters), self.view()
        if asked is Asked.CURSORS or event.key() == Qt.Key.Key_Equal:
            asked = None  # a scan may begin with it
        way = {Asked.LEFT: -1, Asked.RIGHT: 1}.get(asked, 0) if asked is not None else 0
        if asked is Asked.COPY:
            self.copy()
        elif asked is Asked.WHOLE:
            self.home()
        elif asked is Asked.CLOSER or asked is Asked.WIDER:
            self._closer(CLOSER if asked is Asked.WIDER else 1 / CLOSER, (low + high) / 2)
        elif way and self.cursors is not None:
            moved = self.cursors.both[self.cursors.held] + way * keys.steps(event) * self.sheets()[AMPS].across.per_px
            self._hold(self.cursors.moved(self.cursors.held, moved))
        elif way:
            along = way * keys.ALONG * (high - low)
            self.look((low + along, high + along), self._levels)
        elif asked is Asked.OTHER_CURSOR and self.cursors is not None:
            self._hold(self.cursors.other())
        elif event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down) and self.shown.crowd:
            way = 1 if event.key() == Qt.Key.Key_Down else -1
            self.picked.emit(
                ((self.shown.picked if self.shown.picked is not None else -1) + way) % len(self.shown.crowd)
            )
        else:
            super().keyPressEvent(event)

    def _hold(self, cursors: Cursors) -> None:
        self.cursors = cursors
        self._tell_cursors()
        self.update()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes from one cursor to the other before it leaves."""
        after = None if self.cursors is None or not self.hasFocus() else self.cursors.next(forward=forward)
        if after is None:
            return super().focusNextPrevChild(forward)
        self._hold(after)
        return True


def _round_top(most: float) -> float:
    """A little above the highest, on a round figure so that it moves seldom while readings rise."""
    step = round_step(most * (1 + ABOVE) / 8)
    return step * float(np.ceil(most * (1 + ABOVE) / step - 1e-9))
