"""Two plots of shares, 0 to 100 %: intervals as bars with ends and a dot, and how many were not back over the days.

Told apart by shape and by words at the lines themselves, never by colour alone.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from benchlog.history.rates import Rate
from benchlog.history.survival import Survival
from ui import retelling, texts, theme
from ui.theme import Tokens

ROW_PX, MOST_ROW_PX, DOT_PX, END_PX = 22.0, 30.0, 9.0, 9.0
FOOT_PX, NAME_SHARE, LEAST_DAYS = 20.0, 0.34, 90.0
GRID = (0.0, 0.25, 0.5, 0.75, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One line of the intervals."""

    name: str
    rate: Rate


class Shares(QWidget):
    """What both have: theme, type, an accessible name, a size that gives way."""

    def __init__(self, tokens: Tokens, name: str) -> None:
        super().__init__()
        self._tokens = tokens
        self.setObjectName(name)
        self.setFont(theme.font(theme.SECOND_PX))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(220, 120)

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(360, 150)

    def _pen(self, colour: str, width: float = 1.0, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
        return QPen(QColor(colour), width, style, Qt.PenCapStyle.FlatCap)

    def _words(
        self,
        painter: QPainter,
        box: QRectF,
        text: str,
        colour: str,
        flags: Qt.AlignmentFlag = Qt.AlignmentFlag.AlignLeft,
    ) -> None:
        painter.setPen(self._pen(colour))
        cut = QFontMetricsF(painter.font()).elidedText(text, Qt.TextElideMode.ElideRight, box.width() + 1)
        painter.drawText(box, flags | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextSingleLine, cut)


class Intervals(Shares):
    """`chosen` the number of a line that is pressed. More lines than have room are left out, and that is said."""

    chosen = Signal(int)

    def __init__(self, tokens: Tokens) -> None:
        super().__init__(tokens, "figures_intervals")
        self._bars: list[Bar] = []
        self._picked = -1

    def show_bars(self, bars: Sequence[Bar]) -> None:
        self._bars, self._picked = list(bars), -1
        told = "; ".join(f"{bar.name}: {retelling.told(bar.rate.text)}" for bar in bars)
        self.setAccessibleName(texts.INTERVALS_NAME.format(told=told or texts.NOTHING))
        self.update()

    def pick(self, number: int) -> None:
        self._picked = number
        self.update()

    def _room(self) -> tuple[int, float]:
        """How many lines are drawn, and how high each is."""
        high = max(0.0, self.height() - FOOT_PX)
        shown = min(len(self._bars), int(high // ROW_PX))
        return shown, min(MOST_ROW_PX, high / shown) if shown else ROW_PX

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        shown, high = self._room()
        # Around the picked one, so that it is always there.
        first = max(0, min(self._picked - shown // 2, len(self._bars) - shown))
        self._first = first
        left = NAME_SHARE * self.width()
        wide = self.width() - left - 14
        foot = shown * high
        for share in GRID:
            x = left + share * wide
            painter.setPen(self._pen(self._tokens.line))
            painter.drawLine(QPointF(x, 0), QPointF(x, foot))
            box = QRectF(x - 24, foot + 2, 48, FOOT_PX - 4)
            last = share == GRID[-1]
            self._words(
                painter,
                QRectF(self.width() - 60, foot + 2, 60, FOOT_PX - 4) if last else box,
                f"{100 * share:.0f} %" if last else f"{100 * share:.0f}",
                self._tokens.second,
                Qt.AlignmentFlag.AlignRight if last else Qt.AlignmentFlag.AlignHCenter,
            )
        for place, bar in enumerate(self._bars[first : first + shown]):
            self._draw(painter, bar, place * high, high, left, wide, picked=first + place == self._picked)
        if shown < len(self._bars):
            self._words(
                painter,
                QRectF(0, foot + 2, left - 26, FOOT_PX - 4),
                texts.INTERVALS_MORE.format(count=len(self._bars) - shown),
                self._tokens.second,
            )
        painter.end()

    def _draw(
        self, painter: QPainter, bar: Bar, top: float, high: float, left: float, wide: float, *, picked: bool
    ) -> None:
        tokens = self._tokens
        if picked:
            painter.fillRect(QRectF(0, top + 1, self.width(), high - 2), QColor(tokens.selection))
        self._words(painter, QRectF(4, top, left - 16, high), bar.name, tokens.ink)
        middle = top + high / 2
        if bar.rate.interval is None:
            self._words(painter, QRectF(left + 6, top, wide, high), texts.NEVER_TRIED, tokens.second)
            return
        low, upper = (left + share * wide for share in bar.rate.interval)
        painter.setPen(self._pen(tokens.ink, 2.0))
        painter.drawLine(QPointF(low, middle), QPointF(upper, middle))
        for x in (low, upper):
            painter.drawLine(QPointF(x, middle - END_PX / 2), QPointF(x, middle + END_PX / 2))
        painter.setBrush(QColor(tokens.ink))
        painter.setPen(self._pen(tokens.selection if picked else tokens.card, 1.5))
        painter.drawEllipse(QPointF(left + bar.rate.hits / bar.rate.count * wide, middle), DOT_PX / 2, DOT_PX / 2)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        shown, high = self._room()
        place = int(event.position().y() // high)
        if place < shown:
            self.chosen.emit(self._first + place)

    _first = 0


class NotBack(Shares):
    """Steps of Kaplan and Meier: the share not back after so many days, its 95 % limits dashed around it."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__(tokens, "figures_not_back")
        self._survival: Survival | None = None
        self._empty = texts.NOT_BACK_PICK

    def show_survival(self, label: str, survival: Survival | None) -> None:
        """None: nothing is picked, or nothing can be told; `label` then says so."""
        self._survival = survival if survival is not None and survival.times else None
        self._empty = label
        told = label
        if self._survival is not None:
            lefts = {days: self._survival.left(days) for days in (30, 90)}
            ends = [
                f"{texts.DAYS_MANY.format(days=days)}: {texts.NOTHING if left is None else retelling.told(left.text)}"
                for days, left in lefts.items()
            ]
            told = f"{label}, {', '.join(ends)}"
        self.setAccessibleName(texts.NOT_BACK_NAME.format(told=told))
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        survival, tokens = self._survival, self._tokens
        if survival is None:
            painter.setPen(self._pen(tokens.second))
            painter.drawText(QRectF(self.rect()), Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, self._empty)
            painter.end()
            return
        last = survival.times[-1]
        ends = max(LEAST_DAYS, min(last, 365.0))
        low = min([1.0, *(step.limits[0] for step in survival.steps if step.time <= ends)])
        left0 = survival.left(0)
        low = min(low, left0.low if left0 else 1.0)
        floor = 0.0 if low < 0.5 else 0.5
        box = QRectF(46, 10, max(10, self.width() - 46 - 92), max(10, self.height() - 10 - 24))

        def at(days: float, share: float) -> QPointF:
            return QPointF(
                box.left() + min(days, ends) / ends * box.width(),
                box.bottom() - (share - floor) / (1 - floor) * box.height(),
            )

        self._axes(painter, box, floor, ends)
        steps, lower, upper = self._corners(survival, min(last, ends))
        band = QPolygonF([at(*point) for point in (*upper, *reversed(lower))])
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(tokens.band))
        painter.drawPolygon(band)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(self._pen(tokens.second, 1.2, Qt.PenStyle.DashLine))
        for edge in (lower, upper):
            painter.drawPolyline(QPolygonF([at(*point) for point in edge]))
        painter.setPen(self._pen(tokens.ink, 2.0))
        painter.drawPolyline(QPolygonF([at(*point) for point in steps]))
        self._name_ends(painter, [at(*line[-1]) for line in (steps, lower, upper)])
        painter.end()

    def _axes(self, painter: QPainter, box: QRectF, floor: float, ends: float) -> None:
        tokens = self._tokens
        for share in (floor, (1 + floor) / 2, 1.0):
            y = box.bottom() - (share - floor) / (1 - floor) * box.height()
            painter.setPen(self._pen(tokens.line))
            painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
            self._words(
                painter, QRectF(0, y - 9, 40, 18), f"{100 * share:.0f} %", tokens.second, Qt.AlignmentFlag.AlignRight
            )
        days = 30 if ends <= 120 else 90
        number = 0
        while number * days <= ends:
            x = box.left() + number * days / ends * box.width()
            painter.setPen(self._pen(tokens.line))
            painter.drawLine(QPointF(x, box.bottom()), QPointF(x, box.bottom() + 4))
            last = (number + 1) * days > ends
            text = texts.DAYS_MANY.format(days=number * days) if last else str(number * days)
            self._words(
                painter, QRectF(x - 45, box.bottom() + 5, 90, 18), text, tokens.second, Qt.AlignmentFlag.AlignHCenter
            )
            number += 1

    def _corners(
        self, survival: Survival, ends: float
    ) -> tuple[list[tuple[float, float]], list[tuple[float, float]], list[tuple[float, float]]]:
        """The corners of the steps and of their limits, each from day 0 to the last that was seen."""
        begin = survival.left(-1)
        told = [(0.0, 1.0, begin.low if begin else 1.0, begin.high if begin else 1.0)]
        told += [(step.time, step.share, *step.limits) for step in survival.steps if step.time <= ends]
        lines: tuple[list[tuple[float, float]], ...] = ([], [], [])
        for time, *values in told:
            for line, value in zip(lines, values, strict=True):
                if line:
                    line.append((time, line[-1][1]))
                line.append((time, value))
        for line in lines:
            line.append((ends, line[-1][1]))
        return lines[0], lines[1], lines[2]

    def _name_ends(self, painter: QPainter, ends: Sequence[QPointF]) -> None:
        names = (texts.NOT_BACK_LINE, texts.NOT_BACK_LIMIT, texts.NOT_BACK_LIMIT)
        placed: list[float] = []
        for number, (point, name) in enumerate(zip(ends, names, strict=True)):
            y = min(max(point.y(), 9.0), self.height() - 34.0)
            if number and any(abs(y - other) < 16 for other in placed):
                continue
            placed.append(y)
            painter.setFont(theme.semibold(theme.SECOND_PX) if not number else theme.font(theme.SECOND_PX))
            colour = self._tokens.ink if not number else self._tokens.second
            self._words(painter, QRectF(point.x() + 6, y - 9, self.width() - point.x() - 6, 18), name, colour)
