"""What goes through both plots: steps as pale bands with their names on top, events as marks with a word between."""

from collections.abc import Sequence

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF
from PySide6.QtWidgets import QGraphicsSimpleTextItem

from ui import theme
from ui.charts.marks import Band, Mark, Word, fit_words
from ui.theme import Tokens

BAND_GAP_PX = 3
NAME_GAP_PX = 10
STRONG_PX, PLAIN_PX = 11, 8


class Words:
    """A line of words at places of their own; as many text items as were ever needed at once."""

    def __init__(self, layout: pg.GraphicsLayout, font: QFont) -> None:
        self._layout, self._font = layout, font
        self._metrics = QFontMetricsF(font)
        self._items: list[QGraphicsSimpleTextItem] = []
        self._colour = QColor()
        self.height = self._metrics.height()

    def wear(self, colour: str) -> None:
        self._colour = QColor(colour)
        for item in self._items:
            item.setBrush(self._colour)

    def show(
        self,
        wanted: Sequence[tuple[float, str, bool]],
        top: float,
        right_edge: float,
        taken: Sequence[tuple[float, float]] = (),
    ) -> None:
        """(left edge, word, important) each; what has no room beside the others and what is taken is left away."""
        words = fit_words(wanted, self._metrics.horizontalAdvance, right_edge, taken)
        while len(self._items) < len(words):
            item = QGraphicsSimpleTextItem(self._layout)
            item.setFont(self._font)
            item.setBrush(self._colour)
            self._items.append(item)
        for index, item in enumerate(self._items):
            item.setVisible(index < len(words))
            if index < len(words):
                item.setText(words[index].text)
                item.setPos(round(words[index].left), round(top))

    def texts(self) -> list[Word]:
        """What stands there now."""
        return [Word(left=item.x(), text=item.text()) for item in self._items if item.isVisible()]


class Backdrop:
    """A view behind the plots, over their common height: across in seconds as they are, upward from 0 to 1."""

    def __init__(self, layout: pg.GraphicsLayout, plots: tuple[pg.ViewBox, pg.ViewBox]) -> None:
        self._plots = plots
        self.view = pg.ViewBox(enableMenu=False)
        self.view.setParentItem(layout)  # given to the constructor, it would never be told of coming paints
        self.view.disableAutoRange()
        self.view.setMouseEnabled(x=True, y=False)
        self.view.setYRange(0, 1, padding=0)
        self.view.setZValue(plots[0].zValue() - 2)
        self.bands = pg.BarGraphItem(x0=[], x1=[], y0=0, y1=1, pen=None)
        self.lines = pg.PlotCurveItem(connect="pairs")
        self.marks = pg.ScatterPlotItem(symbol="t1", pen=None)
        for item in (self.bands, self.lines, self.marks):
            self.view.addItem(item, ignoreBounds=True)
        self.names = Words(layout, theme.font(theme.SECOND_PX))
        self.words = Words(layout, theme.semibold(theme.SECOND_PX))
        self._bands: tuple[list[float], list[float]] = [], []
        self._marks: tuple[Sequence[Mark], float] = [], 0.0

    def wear(self, tokens: Tokens) -> None:
        self._marks = [], 0.0  # painted anew with the next draw
        self._ink, self._second = pg.mkBrush(tokens.ink), pg.mkBrush(tokens.second)
        self.bands.setOpts(brush=tokens.band, pen=None)
        self.lines.setPen(pg.mkPen(tokens.ink, width=1, style=Qt.PenStyle.DotLine))
        self.names.wear(tokens.second)
        self.words.wear(tokens.ink)

    def draw(
        self, bands: Sequence[Band], marks: Sequence[Mark], now_s: float, right_edge: float, names_edge: float
    ) -> None:
        """`now_s`: where a band that goes on ends; words end at the right edge, the names on top at their own."""
        upper, lower = self._plots[0].geometry(), self._plots[1].geometry()
        self.view.setGeometry(QRectF(upper.topLeft(), lower.bottomRight()))
        low, high = self._plots[0].viewRange()[0]
        px_s = (high - low) / max(1.0, upper.width())
        begins: list[float] = []
        ends: list[float] = []
        names = []
        for band in bands:
            begin, end = max(band.begin_s, low), now_s if band.end_s is None else band.end_s
            if begin <= high and end >= low:
                begins.append(begin)
                ends.append(max(end - BAND_GAP_PX * px_s, begin + px_s))
                names.append((upper.left() + (begin - low) / px_s + 2, band.name, band.important))
        if self._bands != (begins, ends):
            self._bands = begins, ends
            self.bands.setOpts(x0=np.array(begins), x1=np.array(ends))
        self.names.show(names, upper.top() - NAME_GAP_PX - self.names.height, names_edge)
        self._draw_marks([mark for mark in marks if low <= mark.t_s <= high], low, px_s, right_edge)

    def _draw_marks(self, marks: Sequence[Mark], low: float, px_s: float, right_edge: float) -> None:
        upper, lower = self._plots[0].geometry(), self._plots[1].geometry()
        between = (upper.bottom() + lower.top()) / 2 + 1
        level = (lower.bottom() - between) / (lower.bottom() - upper.top())
        if self._marks != (marks, level):
            self._marks = marks, level
            self.marks.setVisible(bool(marks))
            self.marks.setData(
                x=[mark.t_s for mark in marks],
                y=[level] * len(marks),
                size=[STRONG_PX if mark.strong else PLAIN_PX for mark in marks],
                brush=[self._ink if mark.strong else self._second for mark in marks],
            )
            strong = np.repeat([mark.t_s for mark in marks if mark.strong], 2)
            self.lines.setData(strong, np.tile([0.0, 1.0], strong.size // 2))
        places = [upper.left() + (mark.t_s - low) / px_s for mark in marks]
        words = [(place + 9, mark.word, mark.strong) for place, mark in zip(places, marks, strict=True)]
        signs = [(place - 2, place) for place in places]  # half of each: a word stands right beside its own
        self.words.show(words, between - self.words.height / 2, right_edge, signs)
