"""The way of the job down the left: six stages on one line, each with what was found there."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from benchlog.records import Stage
from ui import texts, theme
from ui.pieces import plain_hint
from ui.record.rail_row import RecordRow
from ui.shapes import draw_sign
from ui.theme import Tokens
from ui.way import Milestone, Standing, Way

ROW_PX, CIRCLE_PX, TEXT_LEFT = 78, 24, 34


class StageRail(QWidget):
    """Emits `picked` for a stage that may be looked at or begun."""

    picked = Signal(Stage)

    def __init__(self, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedWidth(192)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        self.rows: dict[Stage, StageRow] = {}
        for number, stage in enumerate(Stage, start=1):
            row = StageRow(stage, number, tokens, self)
            row.clicked.connect(lambda _checked=False, picked=stage: self.picked.emit(picked))
            rows.addWidget(row)
            self.rows[stage] = row
        self.record = RecordRow(tokens)
        rows.addWidget(self.record)
        rows.addStretch(1)

    def show_way(self, way: Way, here: Stage | None) -> None:
        """`here`: the stage that is shown; None where none is."""
        for milestone in way.milestones:
            row = self.rows[milestone.stage]
            row.show_milestone(milestone, here=milestone.stage is here)
            row.setEnabled(way.may_go_to(milestone.stage))

    def say_live(self, stage: Stage, words: str) -> None:
        """What is being found there, while a run is on."""
        self.rows[stage].say_live(words)

    def set_tokens(self, tokens: Tokens) -> None:
        self.record.set_tokens(tokens)
        for row in self.rows.values():
            row.set_tokens(tokens)


class StageRow(QAbstractButton):
    """One stage: done ✓, here filled, to come hollow."""

    def __init__(self, stage: Stage, number: int, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tokens = tokens
        self._number = number
        self._milestone = Milestone(stage=stage, standing=Standing.TO_COME)
        self._here = False
        self._live = ""
        self.setObjectName(f"stage_{stage.name.lower()}")
        self.setText(texts.STAGE_NAMES[stage])
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def show_milestone(self, milestone: Milestone, *, here: bool) -> None:
        self._milestone, self._here, self._live = milestone, here, ""
        standing = texts.STANDING_HERE if here else milestone.standing.words
        self.setAccessibleName(
            texts.STAGE_ACCESSIBLE.format(
                number=self._number, name=self.text(), standing=standing, found=milestone.found or texts.NOTHING
            )
        )
        self.setToolTip(plain_hint(milestone.found))
        self.update()

    def say_live(self, words: str) -> None:
        if words != self._live:
            self._live = words
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(192, ROW_PX)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._draw_line(painter)
        self._draw_circle(painter)
        self._draw_words(painter)
        if self.hasFocus():
            painter.setPen(QPen(QColor(self._tokens.second), 1, Qt.PenStyle.DotLine))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -4.5), 4, 4)
        painter.end()

    def _draw_line(self, painter: QPainter) -> None:
        if self._milestone.stage is Stage.CLOSE:
            return
        painter.setPen(QPen(QColor(self._tokens.line), 2))
        middle = 2 + CIRCLE_PX // 2
        painter.drawLine(middle, CIRCLE_PX + 6, middle, ROW_PX)

    def _draw_circle(self, painter: QPainter) -> None:
        done = self._milestone.standing is Standing.DONE
        box = QRectF(3, 4, CIRCLE_PX - 2, CIRCLE_PX - 2)
        strong = QColor(self._tokens.ink if self._here else self._tokens.second)
        pale = QColor(self._tokens.third)
        near = done or self._milestone.standing is Standing.NEXT
        painter.setPen(QPen(strong if near or self._here else pale, 2))
        painter.setBrush(strong if self._here else QColor(self._tokens.ground))
        painter.drawEllipse(box)
        inside = QColor(self._tokens.ground) if self._here else (strong if near else pale)
        if done:
            draw_sign(painter, box.adjusted(5, 5, -5, -5), "done", inside)
        else:
            painter.setPen(inside)
            painter.setFont(theme.semibold(theme.SECOND_PX - 1))
            mark = "–" if self._milestone.standing is Standing.SKIPPED else str(self._number)
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, mark)

    def _draw_words(self, painter: QPainter) -> None:
        to_come = self._milestone.standing in (Standing.TO_COME, Standing.SKIPPED) and not self._here
        painter.setFont(theme.semibold())
        painter.setPen(QColor(self._tokens.third if to_come else self._tokens.ink))
        painter.drawText(QRectF(TEXT_LEFT, 4, self.width() - TEXT_LEFT, 22), Qt.AlignmentFlag.AlignVCenter, self.text())
        painter.setFont(theme.font(theme.SECOND_PX))
        painter.setPen(QColor(self._tokens.second))
        box = QRectF(TEXT_LEFT, 27, self.width() - TEXT_LEFT - 4, ROW_PX - 29)
        painter.drawText(box, Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignTop, self._shortened(painter, box))

    def _shortened(self, painter: QPainter, box: QRectF) -> str:
        """At most what two lines hold; the whole is in the tooltip."""
        words = self._live or self._milestone.found
        metrics = painter.fontMetrics()
        room = int(box.width() * 1.8)
        return metrics.elidedText(words, Qt.TextElideMode.ElideRight, room)
