"""How the layers of an overlay are painted: axes, the crowd, single lines, and words at places that are free."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import product

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QImage, QPainter, QPen, QPolygonF

from ui import theme
from ui.charts.crowd import Crowd, columns_of
from ui.charts.overlay_lines import BandOf
from ui.charts.reduction import Floats
from ui.charts.scale import Scale, tick_text
from ui.theme import Tokens

FEW = 60
"""So many lines are drawn one by one, smooth; more as a crowd."""
TICK_PX, TIME_TICK_PX, GAP_PX = 46.0, 110.0, 5.0
DOT_PX, MOST_DOTS = 5.6, 260
MOST_WIDE = 400
"""Points of a line wider than a pixel: the painter takes 4 µs for each. Longer ones are drawn thin, side by side."""
_PLACES = (0.52, 0.62, 0.42, 0.72, 0.32, 0.82, 0.2, 0.9, 1.0)
_ASIDE = (14.0, 22.0, 34.0, 50.0, 70.0)
_COVERED = 5.0
"""Trouble of covering another word; of lying on a line with all of its width: 1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One plot: where it lies, and its two scales."""

    box: QRectF
    across: Scale
    upward: Scale
    unit: str


def polygon(x: Floats, y: Floats) -> QPolygonF:
    """The plotting library's way of filling one without a call for each point. It loads with the first chart."""
    from pyqtgraph.functions import arrayToQPolygonF

    made: QPolygonF = arrayToQPolygonF(np.ascontiguousarray(x), np.ascontiguousarray(y))
    return made


def pens(tokens: Tokens, colour: str) -> dict[str, QPen]:
    """Of the single lines that may lie over one another. Each differs from the others in its dashes or in its width."""
    return {
        name: QPen(QColor(ink), width, style)
        for name, ink, width, style in (
            ("before", tokens.ink, 1.2, Qt.PenStyle.DashLine),
            ("mean", tokens.second, 1.8, Qt.PenStyle.DashDotLine),
            ("capture", tokens.ink, 1.0, Qt.PenStyle.SolidLine),
            ("filled in", tokens.second, 1.4, Qt.PenStyle.DotLine),
            ("picked", colour, 2.2, Qt.PenStyle.SolidLine),
        )
    }


def axes(painter: QPainter, sheet: Sheet, tokens: Tokens, *, times: bool, seconds: str) -> None:
    """Grid lines with round figures at the left, and with `times` below; the last of each with its unit."""
    painter.setFont(theme.font(theme.SECOND_PX))
    box = sheet.box
    levels = sheet.upward.ticks(TICK_PX)
    for number, level in enumerate(levels):
        y = round(sheet.upward.px(level)) + 0.5
        painter.setPen(QPen(QColor(tokens.line), 1))
        painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
        painter.setPen(QColor(tokens.second))
        last = number == len(levels) - 1
        words = f"{tick_text(level)} {sheet.unit}" if last else tick_text(level)
        align = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        painter.drawText(QRectF(0, y - 10, box.left() - 10, 20), align, words)
    if not times:
        return
    moments = sheet.across.ticks(TIME_TICK_PX)
    for number, at in enumerate(moments):
        x = sheet.across.px(at)
        words = f"{tick_text(at)} {seconds}" if number == len(moments) - 1 else tick_text(at)
        painter.drawText(QRectF(x - 50, box.bottom() + 6, 100, 20), Qt.AlignmentFlag.AlignCenter, words)


def band(painter: QPainter, sheet: Sheet, area: BandOf, tokens: Tokens) -> None:
    x = sheet.across.many_px(area.t_s)
    outline = np.concatenate((x, x[::-1]))
    edges = np.concatenate((sheet.upward.many_px(area.high), sheet.upward.many_px(area.low)[::-1]))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(tokens.selection))
    painter.drawPolygon(polygon(outline, edges))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def crowd(painter: QPainter, sheet: Sheet, lines: Crowd, each: Sequence[tuple[Floats, Floats]], colour: str) -> None:
    """Few as lines, many as a picture of how many lie where."""
    if len(lines) <= FEW:
        painter.setPen(QPen(_faded(colour, 0.75), 1.0))
        for t_s, values in each:
            line(painter, sheet, t_s, values)
        return
    box, ratio = sheet.box, painter.device().devicePixelRatio()
    height = max(1, round(box.height() * ratio))
    reaches = lines.reaches(sheet.across.low, sheet.across.high, max(1, round(box.width() * ratio)))
    columns = reaches[0].shape[0]
    upward = Scale(low=sheet.upward.low, high=sheet.upward.high, begin=float(height), end=0.0)
    ink = QColor(colour)
    pixels = lines.picture(reaches, upward, (ink.red(), ink.green(), ink.blue()))
    image = QImage(pixels.data, columns, height, 4 * columns, QImage.Format.Format_ARGB32_Premultiplied)
    painter.drawImage(box, image)


def line(painter: QPainter, sheet: Sheet, t_s: Floats, values: Floats) -> None:
    """With the painter's pen. No more points than draw the same picture."""
    if t_s.size < 2:
        return
    across = sheet.across
    t_s, values = columns_of(t_s, values, across.low, across.high, max(1, int(sheet.box.width())))
    x, y = across.many_px(t_s), sheet.upward.many_px(values)
    pen = painter.pen()
    if t_s.size <= MOST_WIDE or pen.widthF() <= 1:
        painter.drawPolyline(polygon(x, y))
        return
    aside = (pen.widthF() - 1) / 2
    painter.setPen(QPen(pen.color(), 1.0, pen.style()))
    for right, down in ((0.0, -aside), (0.0, aside), (aside, 0.0)):
        painter.drawPolyline(polygon(x + right, y + down))


def dots(painter: QPainter, sheet: Sheet, t_s: Floats, values: Floats, colour: str) -> None:
    """The readings themselves, where they are not so many that they would be a line again."""
    seen = (t_s >= sheet.across.low) & (t_s <= sheet.across.high)
    if not 0 < np.count_nonzero(seen) <= MOST_DOTS:
        return
    painter.setBrush(QColor(colour))
    painter.setPen(Qt.PenStyle.NoPen)
    for x, y in zip(sheet.across.many_px(t_s[seen]), sheet.upward.many_px(values[seen]), strict=True):
        painter.drawEllipse(QPointF(x, y), DOT_PX / 2, DOT_PX / 2)
    painter.setBrush(Qt.BrushStyle.NoBrush)


@dataclass(slots=True, kw_only=True)
class Places:
    """Words at lines: each at the first place where it lies on no line and on no other word; else where it covers least
    of lines, which are then paler behind it. Words that would only cover others are left out, unless they have to be
    there."""

    sheet: Sheet
    ground: str
    lines: list[tuple[Floats, Floats]] = field(default_factory=list)
    taken: list[QRectF] = field(default_factory=list)

    def put(
        self,
        painter: QPainter,
        words: str,
        font: QFont,
        colour: str,
        along: tuple[Floats, Floats],
        *,
        above: bool,
        needed: bool,
    ) -> None:
        """Beside the line `along`, on the side named where there is room."""
        metrics = QFontMetricsF(font)
        wide, high = metrics.horizontalAdvance(words), metrics.height()
        best, least = None, float("inf")
        for rect in self._candidates(along, wide, high, above=above):
            trouble = self._trouble(rect)
            if trouble < least:
                best, least = rect, trouble
            if not trouble:
                break
        if best is None or (least >= _COVERED and not needed):
            return
        if least:
            painter.fillRect(best, _faded(self.ground, 0.75))
        painter.setFont(font)
        painter.setPen(QColor(colour))
        painter.drawText(best, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextDontClip, words)
        self.taken.append(best)

    def _candidates(self, along: tuple[Floats, Floats], wide: float, high: float, *, above: bool) -> Iterator[QRectF]:
        """The best first: near the line before far from it, on the side named before the other."""
        t_s, values = along
        sheet, inside = self.sheet, self.sheet.box.adjusted(4, 2, -4, -2)
        trigger = sheet.across.px(0.0)
        if inside.left() < trigger < inside.center().x():
            inside.setLeft(trigger + 4)
        if t_s.size < 2:
            return
        for aside, way in product(_ASIDE, (-1, 1) if above else (1, -1)):
            for share in _PLACES:
                x = sheet.box.left() + share * sheet.box.width()
                at = sheet.across.value(x)
                if t_s[0] <= at <= t_s[-1]:
                    y = sheet.upward.px(float(np.interp(at, t_s, values)))
                    middle = min(max(x, inside.left() + wide / 2), inside.right() - wide / 2)
                    top = y + way * aside - (high if way < 0 else 0)
                    top = min(max(top, inside.top()), inside.bottom() - high)
                    rect = QRectF(middle - wide / 2, top, wide, high)
                    if inside.contains(rect):
                        yield rect

    def _trouble(self, rect: QRectF) -> float:
        """How many words it would cover, and how much of its width lies on lines."""
        wider = rect.adjusted(-GAP_PX, 0, GAP_PX, 0)
        trouble = _COVERED * sum(wider.intersects(other) for other in self.taken)
        x = np.linspace(rect.left(), rect.right(), 12)
        at = np.asarray(self.sheet.across.value(x))  # type: ignore[arg-type]
        for t_s, values in self.lines:
            if t_s.size > 1:
                y = self.sheet.upward.many_px(np.interp(at, t_s, values, left=np.nan, right=np.nan))
                with np.errstate(invalid="ignore"):
                    trouble += float(np.mean((y > rect.top() - 1) & (y < rect.bottom() + 1)))
        return trouble


def _faded(colour: str, alpha: float) -> QColor:
    made = QColor(colour)
    made.setAlphaF(alpha)
    return made
