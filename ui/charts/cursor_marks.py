"""The two cursors as they lie on the plots of a run: a line through both, a letter at its top, taken with the mouse."""

import pyqtgraph as pg
from PySide6.QtCore import QObject, QRectF, Signal
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QGraphicsRectItem, QGraphicsSimpleTextItem

from ui import curve_texts, theme
from ui.charts.cursors import Cursors
from ui.theme import Tokens

FLAG_PX = 17.0


class CursorMarks(QObject):
    """`moved` tells which cursor was drawn along, and to how many s."""

    moved = Signal(int, float)

    def __init__(self, layout: pg.GraphicsLayout, plots: tuple[pg.ViewBox, ...], parent: QObject) -> None:
        super().__init__(parent)
        self._plots, self._layout = plots, layout
        self.lines: tuple[list[pg.InfiniteLine], list[pg.InfiniteLine]] = ([], [])
        self._flags: list[tuple[QGraphicsRectItem, QGraphicsSimpleTextItem]] = []
        self._shown: Cursors | None = None

    def _make(self) -> None:
        """When first shown: most runs are looked at without."""
        for number, lines in enumerate(self.lines):
            for plot in self._plots:
                line = pg.InfiniteLine(angle=90, movable=True)
                line.setZValue(20)
                line.sigDragged.connect(lambda one, which=number: self.moved.emit(which, float(one.value())))
                plot.addItem(line, ignoreBounds=True)
                lines.append(line)
            flag = QGraphicsRectItem(QRectF(0, 0, FLAG_PX, FLAG_PX), self._layout)
            letter = QGraphicsSimpleTextItem(flag)
            letter.setFont(theme.semibold(theme.SECOND_PX))
            flag.setZValue(21)
            self._flags.append((flag, letter))
        self.wear(self._tokens)

    def wear(self, tokens: Tokens) -> None:
        self._tokens = tokens
        for flag, letter in self._flags:
            flag.setBrush(QColor(tokens.ink))
            flag.setPen(QColor(tokens.ink))
            letter.setBrush(QColor(tokens.card))
        if self._flags:
            self._draw_lines(None, focus=False)

    def draw(self, cursors: Cursors | None, *, focus: bool) -> None:
        """`focus`: the one that the keys move is drawn heavier."""
        if cursors is None and self._shown is None:
            return
        if not self._flags:
            self._make()
        self._shown = cursors
        self._draw_lines(cursors, focus=focus)
        (low, high), inside = self._plots[0].viewRange()[0], self._plots[0].geometry()
        for number, (flag, letter) in enumerate(self._flags):
            at_s = None if cursors is None else cursors.both[number]
            flag.setVisible(at_s is not None and low <= at_s <= high)
            if at_s is None:
                continue
            x = inside.left() + (at_s - low) / max(high - low, 1e-12) * inside.width()
            flag.setPos(round(x - FLAG_PX / 2), inside.top())
            letter.setText(curve_texts.CURSOR_LETTERS[number])
            size = letter.boundingRect()
            letter.setPos((FLAG_PX - size.width()) / 2, (FLAG_PX - size.height()) / 2)

    def _draw_lines(self, cursors: Cursors | None, *, focus: bool) -> None:
        for number, lines in enumerate(self.lines):
            held = focus and cursors is not None and cursors.held == number
            for line in lines:
                line.setVisible(cursors is not None)
                line.setPen(pg.mkPen(self._tokens.ink, width=2 if held else 1))
                line.setHoverPen(pg.mkPen(self._tokens.ink, width=3))
                if cursors is not None and line.value() != cursors.both[number]:
                    line.setValue(cursors.both[number])
