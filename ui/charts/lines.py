"""The lines of one plot, painted in its pixels: the ceiling, another run dashed, and over both the readings.

Where several readings fall on each column of pixels the line is no longer drawn along but filled in, from the lowest
to the highest of every column: the same picture in far less time, and no kick is lost.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from pyqtgraph.functions import arrayToQPolygonF
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPen
from PySide6.QtWidgets import QGraphicsItem, QGraphicsWidget, QStyleOptionGraphicsItem, QWidget

from ui.charts.reduction import Floats
from ui.charts.scale import Scale
from ui.theme import Tokens

CEILING_DOTS = 3
DENSE = 2
"""From so many points of a line a column on it is filled in."""

Outline = tuple[Floats, Floats]
Rows = npt.NDArray[np.int16]
MOST_ROW = 32767
NOTHING: Outline = (np.empty(0), np.empty(0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """What lies on a plot now, in seconds and in its own unit. `under` is another run."""

    across: tuple[float, float] = (0.0, 1.0)
    upward: tuple[float, float] = (0.0, 1.0)
    readings: Outline = NOTHING
    under: Outline = NOTHING
    ceiling: float | None = None


class Lines(QGraphicsItem):
    """Over the whole of `plot`, which cuts off what would lie outside of it."""

    def __init__(self, plot: QGraphicsWidget) -> None:
        super().__init__(plot)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)
        self.setZValue(-1)  # below what the plotting library lays on the plot: the cursors
        self._plot, self.drawn = plot, Drawn()
        self._box = QRectF()

    def wear(self, tokens: Tokens, colour: str, finer: int) -> None:
        """`finer`: dots a pixel, since a line is so many dots wide whatever it is painted on."""
        self._pen = _pen(colour, finer)
        self._ceiling_pen = _pen(tokens.third, CEILING_DOTS * finer)
        self._under_pen = _pen(tokens.ink, finer, Qt.PenStyle.DashLine)
        self.update()

    def draw(self, drawn: Drawn) -> None:
        box = self._plot.rect()
        if box != self._box:
            self.prepareGeometryChange()
            self._box = box
        self.drawn = drawn
        self.update()

    def boundingRect(self) -> QRectF:
        return self._box

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:
        drawn, box = self.drawn, self._box
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        across = Scale(low=drawn.across[0], high=drawn.across[1], begin=0.0, end=box.width())
        upward = Scale(low=drawn.upward[0], high=drawn.upward[1], begin=box.height(), end=0.0)
        if drawn.ceiling is not None:
            level = upward.px(drawn.ceiling)
            painter.setPen(self._ceiling_pen)
            painter.drawLine(QLineF(0.0, level, box.width(), level))
        for (t_s, values), pen in ((drawn.under, self._under_pen), (drawn.readings, self._pen)):
            x, y = across.many_px(t_s), upward.many_px(values)
            if pen.width() == 1 and pen.style() is Qt.PenStyle.SolidLine and x.size > DENSE * box.width():
                _fill(painter, box, x, y, pen.color())
            elif x.size:
                painter.setPen(pen)
                painter.drawPolyline(arrayToQPolygonF(x, y))


def _pen(colour: str, dots: int, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
    made = QPen(QColor(colour), dots, style)
    made.setCosmetic(True)
    return made


def _fill(painter: QPainter, box: QRectF, x: Floats, y: Floats, ink: QColor) -> None:
    """Dot by dot of what is painted on, whichever part of a pixel that is."""
    to_dots = painter.deviceTransform()
    dots = to_dots.mapRect(box).toRect()
    left, top = to_dots.dx() - dots.left(), to_dots.dy() - dots.top()
    highest, lowest = reaches(x * to_dots.m11() + left, y * to_dots.m22() + top, dots.width())
    rows = np.arange(dots.height(), dtype=np.int16)[:, None]
    picture = ((rows >= highest) & (rows <= lowest)) * np.uint32(ink.rgba())
    image = QImage(
        picture.data, dots.width(), dots.height(), 4 * dots.width(), QImage.Format.Format_ARGB32_Premultiplied
    )
    image.setDevicePixelRatio(to_dots.m11())
    painter.drawImage(QPointF(-left / to_dots.m11(), -top / to_dots.m22()), image)


def reaches(x: Floats, y: Floats, columns: int) -> tuple[Rows, Rows]:
    """The least and the greatest row that a line reaches in each column; where it is not, the least is MOST_ROW."""
    at_edges = np.interp(np.arange(columns + 1), x, y, left=np.nan, right=np.nan)
    least = np.fmin(at_edges[:-1], at_edges[1:])
    greatest = np.fmax(at_edges[:-1], at_edges[1:])
    begin, end = x.searchsorted([0, columns])
    inside = y[begin:end]
    if inside.size:
        column = x[begin:end].astype(np.int64)
        begins = np.concatenate(([0], np.flatnonzero(column[1:] > column[:-1]) + 1))
        at = column[begins]
        least[at] = np.fmin(least[at], np.minimum.reduceat(inside, begins))
        greatest[at] = np.fmax(greatest[at], np.maximum.reduceat(inside, begins))
    # fmin and fmax pass over NaN.
    rows = np.fmax(np.fmin(np.floor(least), MOST_ROW), -1), np.fmin(np.fmax(np.floor(greatest), -1), MOST_ROW)
    return rows[0].astype(np.int16), rows[1].astype(np.int16)
