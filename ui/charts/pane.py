"""One quantity's plot: its line with a name at the end, its ceiling with the value, a few calm ticks."""

import math

import pyqtgraph as pg
from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QStaticText
from PySide6.QtWidgets import QGraphicsSimpleTextItem, QStyleOptionGraphicsItem, QWidget

from ui import sayings, texts, theme
from ui.charts.framing import LEAST_VIEW_S, height
from ui.charts.lines import NOTHING, Drawn, Lines, Outline
from ui.charts.marks import free_level
from ui.theme import Tokens

LEFT, RIGHT = 48, 112
BELOW = 0.03
"""A plot goes so much of its height below zero: a line that lies at zero is seen."""
ABOVE_PX, BELOW_PX = 4.0, 6.0
"""From so far below its top to so far below its bottom labels stand: clear of the other plot's."""
LEAST_TICK_PX = 28.0
TIMES = ((10_800.0, 3600.0, texts.HOURS_UNIT), (600.0, 60.0, texts.MINUTES_UNIT), (0.0, 1.0, texts.SECONDS_UNIT))
"""From how many s in sight on a time is written in which unit, and how many s that has."""


LaidOut = tuple[list[QLineF], list[tuple[QPointF, QStaticText]]]


class Axis(pg.AxisItem):  # type: ignore[misc]
    """Round figures without superfluous zeros; `unit` after the last one."""

    picture: LaidOut | None

    def __init__(self, side: str, unit: str = "") -> None:
        self.unit = unit
        super().__init__(side, maxTickLength=0)
        self.enableAutoSIPrefix(False)
        self.setPen(None)
        self.setStyle(
            tickFont=theme.font(theme.SECOND_PX), maxTickLevel=0, tickTextOffset=8, hideOverlappingLabels=False
        )

    def tickSpacing(self, low: float, high: float, size: float) -> list[tuple[float, float]]:
        """The library's own round figures, but not so many that a low plot becomes a ladder."""
        wide = high - low
        per = self._per(wide)[0]
        spacing: list[tuple[float, float]] = super().tickSpacing(0.0, wide / per, size)
        while spacing and per * spacing[0][0] * size < LEAST_TICK_PX * (high - low):
            wide *= 2
            spacing = super().tickSpacing(0.0, wide / per, size)
        return [(per * step, per * offset) for step, offset in spacing]

    def _per(self, wide: float) -> tuple[float, str]:
        """How much of the axis' own unit is one of those written beside it, and which."""
        if self.unit != texts.SECONDS_UNIT:
            return 1.0, self.unit
        return next((per, unit) for least, per, unit in TIMES if wide >= least)

    def tickStrings(self, values: list[float], scale: float, spacing: float) -> list[str]:
        per, unit = self._per(self.range[1] - self.range[0])
        strings = [f"{round(value / per, 9) + 0.0:.12g}" for value in values]
        if unit and strings:
            strings[-1] = f"{strings[-1]} {unit}"
        return strings

    def wear(self, tokens: Tokens) -> None:
        self.setTextPen(tokens.second)
        self.setTickPen(tokens.line)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:
        """As the library would, but laid out far sooner: while a run is followed, that is for every paint."""
        if self.picture is None:  # which is how the library says that something has changed
            self.picture = self._lay_out()
        grid, words = self.picture
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        painter.setPen(self.tickPen())
        painter.drawLines(grid)
        painter.setPen(self.textPen())
        painter.setFont(self.style["tickFont"])
        for place, word in words:
            painter.drawStaticText(place, word)

    def _lay_out(self) -> LaidOut:
        """The lines across the plot, upward only, and where which figure stands."""
        low, high = self.range
        across, upward = self.size().width(), self.orientation == "left"
        length = self.size().height() if upward else across
        if length <= 0:  # not laid out yet, and already painted on something else than the screen
            return [], []
        spacing, offset = self.tickSpacing(low, high, length)[0]
        first = math.ceil((low - offset) / spacing)
        values = [number * spacing + offset for number in range(first, int((high - offset) / spacing) + 1)]
        metrics, gap = QFontMetricsF(self.style["tickFont"]), self.style["tickTextOffset"][0 if upward else 1]
        grid, words = [], []
        for value, text in zip(values, self.tickStrings(values, 1.0, spacing), strict=True):
            along = (value - low) / (high - low) * length
            wide = metrics.horizontalAdvance(text)
            if upward:
                grid.append(QLineF(across, length - along, across - self.style["tickLength"], length - along))
                place = QPointF(across - gap - wide, length - along - metrics.height() / 2)
            else:
                place = QPointF(along - wide / 2, gap)
            words.append((place, QStaticText(text)))
        return grid, words


class Pane:
    """In row `row` of a layout, its axis in the first column."""

    def __init__(self, layout: pg.GraphicsLayout, row: int, name: str, unit: str) -> None:
        self._unit = unit
        self.view = layout.addViewBox(row=row, col=1, enableMenu=False)
        self.view.disableAutoRange()
        self.view.setMouseEnabled(x=True, y=False)
        self.view.setLimits(minXRange=LEAST_VIEW_S)
        self.axis = Axis("left")
        self.axis.setWidth(LEFT)
        self.axis.setZValue(self.view.zValue() - 1)
        self.axis.linkToView(self.view)
        layout.addItem(self.axis, row=row, col=0)
        self.lines = Lines(self.view)
        self.ceiling_label = QGraphicsSimpleTextItem(layout)
        self.ceiling_label.setFont(theme.font(theme.SECOND_PX))
        self.name = QGraphicsSimpleTextItem(name, layout)
        self.name.setFont(theme.semibold(theme.SECOND_PX + 1))
        self.under_name = QGraphicsSimpleTextItem(layout)
        self.under_name.setFont(theme.font(theme.SECOND_PX))
        self._taken: list[float] = []
        self._high = 1.0

    def wear(self, tokens: Tokens, colour: str, finer: int = 1) -> None:
        self.axis.wear(tokens)
        self.lines.wear(tokens, colour, finer)
        self.ceiling_label.setBrush(QColor(tokens.second))
        self.name.setBrush(QColor(colour))
        self.under_name.setBrush(QColor(tokens.ink))

    @property
    def columns(self) -> int:
        return max(1, int(self.view.width()))

    def draw(
        self,
        span: tuple[float, float],
        line: Outline,
        last: float,
        highest: float,
        ceiling: float | None,
        under: Outline | None = None,
        under_last: float = 0.0,
        under_name: str = "",
    ) -> None:
        """`last`: the newest reading, in view or not; the line's name stands level with it.

        `under`: another run; its name stands level with its end, or as near to it as there is room.
        """
        high = height(highest, ceiling)
        if self.view.viewRange()[1] != [-BELOW * high, high]:
            self.view.setYRange(-BELOW * high, high, padding=0)
        if self.axis.style["tickLength"] != -self.columns:  # ticks as long as the plot is wide are its grid
            self.axis.setStyle(tickLength=-self.columns)
        self.lines.draw(
            Drawn(
                across=span,
                upward=(-BELOW * high, high),
                readings=line,
                under=under or NOTHING,
                ceiling=ceiling if ceiling is not None and ceiling <= high else None,
            )
        )
        self._high, self._taken = high, self._draw_ceiling(ceiling, high)
        self._place_free(self.name, last)
        self.under_name.setVisible(under is not None)
        if under is not None:
            self.under_name.setText(under_name)
            self._place_free(self.under_name, under_last)

    def _place_free(self, label: QGraphicsSimpleTextItem, value: float) -> None:
        """Clear of the labels of this plot that stand already, of the other plot's, and of what is above the upper."""
        inside = self.view.geometry()
        wanted = min(max(self._level(value, self._high), inside.top() + 10), inside.bottom() - 8)
        level = free_level(wanted, self._taken, *self._reach())
        self._place(label, level)
        self._taken.append(level)

    def _reach(self) -> tuple[float, float]:
        inside = self.view.geometry()
        return inside.top() + ABOVE_PX, inside.bottom() + BELOW_PX

    def _draw_ceiling(self, ceiling: float | None, high: float) -> list[float]:
        """Where its label stands, if it has one. A ceiling far above all readings is only named, with an arrow."""
        self.ceiling_label.setVisible(ceiling is not None)
        if ceiling is None:
            return []
        words = texts.CEILING_LABEL if ceiling <= high else texts.CEILING_ABOVE_LABEL
        self.ceiling_label.setText(words.format(value=sayings.short(ceiling, self._unit)))
        low_px, high_px = self._reach()
        level = min(max(self._level(min(ceiling, high), high), low_px), high_px)
        self._place(self.ceiling_label, level)
        return [level]

    def _level(self, value: float, high: float) -> float:
        inside: QRectF = self.view.geometry()
        return inside.bottom() - (value / high + BELOW) / (1 + BELOW) * inside.height()

    def _place(self, label: QGraphicsSimpleTextItem, level: float) -> None:
        label.setPos(QPointF(self.view.geometry().right() + 8, round(level - label.boundingRect().height() / 2)))
