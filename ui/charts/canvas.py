"""The picture of a run on the plotting library: two plots over one time axis, and what goes through both."""

import pyqtgraph as pg
from pyqtgraph.GraphicsScene.mouseEvents import MouseClickEvent
from PySide6.QtCore import QObject, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QGraphicsRectItem, QSizePolicy, QWidget

from ui import texts, theme
from ui.charts.backdrop import Backdrop
from ui.charts.cursor_marks import CursorMarks
from ui.charts.cursors import Cursors
from ui.charts.marks import Shown
from ui.charts.pane import RIGHT, Axis, Pane
from ui.charts.readings import AMPS, VOLTS
from ui.theme import Tokens

TOP, BETWEEN, BOTTOM = 34, 30, 28
UPPER, LOWER = 54, 46
"""Shares of the height."""


class Canvas(QObject):
    """`view_chosen` (seconds) by wheel or drag, `view_released` by a double click; `painting` just before it is;
    `resized` by whoever lays it out."""

    view_chosen = Signal(float, float)
    view_released = Signal()
    painting = Signal()
    resized = Signal()

    def __init__(self, parent: QWidget, tokens: Tokens) -> None:
        super().__init__(parent)
        self.paints = 0
        self.widget = pg.GraphicsLayoutWidget(parent)
        self.widget.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)
        self.widget.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._layout = self.widget.ci
        self.volts = Pane(self._layout, 0, texts.VOLTS_LINE, "V")
        self.amps = Pane(self._layout, 2, texts.AMPS_LINE, "A")
        self.time = Axis("bottom", unit=texts.SECONDS_UNIT)
        self.backdrop = Backdrop(self._layout, (self.volts.view, self.amps.view))
        self._views = (self.volts.view, self.amps.view, self.backdrop.view)
        self.cursors = CursorMarks(self._layout, (self.volts.view, self.amps.view), self)
        self.ring = QGraphicsRectItem(self._layout)
        self.ring.setZValue(30)
        self.empty = pg.TextItem(texts.CHART_EMPTY, anchor=(0.5, 0.5))
        self.empty.setParentItem(self._layout)  # within a view it would invert that one's scale, which may yet be none
        self._lay_out()
        self._link()
        self.wear(tokens)

    def _lay_out(self) -> None:
        grid = self._layout.layout
        grid.setContentsMargins(0, TOP, RIGHT, 0)
        grid.setSpacing(0)
        grid.setRowFixedHeight(1, BETWEEN)
        for row, share in ((0, UPPER), (2, LOWER)):
            grid.setRowPreferredHeight(row, share)
            grid.setRowStretchFactor(row, share)
        self.time.setHeight(BOTTOM)
        self.time.setStyle(tickAlpha=0)
        self.time.linkToView(self.amps.view)
        self._layout.addItem(self.time, row=3, col=1)
        self.empty.setFont(theme.font(theme.SECOND_PX))

    def _link(self) -> None:
        """The seconds in view are the same everywhere, wherever they were chosen: each is told with the next draw."""
        for view in self._views:
            view.setToolTip(texts.CHART_HINT)
            view.sigRangeChangedManually.connect(lambda *_, of=view: self.view_chosen.emit(*of.viewRange()[0]))
        self.widget.sigDeviceRangeChanged.connect(lambda *_: self.resized.emit())
        scene = self.widget.scene()
        scene.sigMouseClicked.connect(self._click)
        scene.sigPrepareForPaint.connect(self._prepare)

    def wear(self, tokens: Tokens, finer: int = 1) -> None:
        self.widget.setBackground(tokens.card)
        self.volts.wear(tokens, tokens.volts, finer)
        self.amps.wear(tokens, tokens.amps, finer)
        self.time.wear(tokens)
        self.backdrop.wear(tokens)
        self.cursors.wear(tokens)
        self.ring.setPen(QPen(QColor(tokens.ink), 2))
        self.empty.setColor(tokens.second)
        self.empty.fill = pg.mkBrush(tokens.card)

    def draw(
        self,
        shown: Shown,
        span: tuple[float, float],
        cursors: Cursors | None,
        *,
        focus: bool = False,
        corner: float = 0,
    ) -> None:
        """`focus`: the keys go here, which is shown; `corner`: px that something else takes at the top right."""
        readings = shown.readings
        under = shown.under
        for view in self._views:
            if view.viewRange()[0] != [*span]:
                view.setXRange(*span, padding=0)
        for index, (pane, line, values, below) in enumerate(
            (
                (self.volts, VOLTS, readings.volts, under.volts),
                (self.amps, AMPS, readings.amps, under.amps),
            )
        ):
            pane.draw(
                span,
                readings.outline(line, *span, pane.columns),
                float(values[-1]) if values.size else 0.0,
                shown.tops[index],
                shown.ceilings[index],
                under=under.outline(line, *span, pane.columns) if len(under) else None,
                under_last=float(below[-1]) if below.size else 0.0,
                under_name=shown.under_name,
            )
        right = self._layout.rect().right() - 8
        self.backdrop.draw(shown.bands, shown.marks, shown.last_s, right, right - corner)
        self.cursors.draw(cursors, focus=focus)
        self.ring.setVisible(focus)
        self.ring.setRect(QRectF(self.widget.viewport().rect()).adjusted(1, 1, -1, -1))
        self.empty.setVisible(not len(readings))
        self.empty.setPos(self.volts.view.geometry().center())
        for view in self._views:
            view.updateMatrix()  # left to the paint, it would ask for a second one

    def paint(self, painter: QPainter) -> None:
        """All that is drawn, on something else than the screen."""
        box = self.widget.viewport().rect()
        self.widget.render(painter, QRectF(box), box)

    def _prepare(self) -> None:
        self.paints += 1
        self.painting.emit()

    def _click(self, event: MouseClickEvent) -> None:
        if event.double():
            self.view_released.emit()
