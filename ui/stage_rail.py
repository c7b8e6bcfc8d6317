"""The way of the job down the left: six stages on one line, each with what was found there."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from benchlog.records import Stage
from ui import sayings, texts, theme
from ui.density import ROOMY, Density
from ui.pieces import grey, plain_hint, why_grey
from ui.record.rail_row import RecordRow
from ui.shapes import draw_focus, draw_sign
from ui.theme import Tokens
from ui.way import Milestone, Standing, Way

CIRCLE_PX, TEXT_LEFT = 24, 34


class StageRail(QWidget):
    """Emits `picked` for a stage that may be looked at or begun."""

    picked = Signal(Stage)

    def __init__(self, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedWidth(ROOMY.rail_px)
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
            grey(row, _why_not(way, milestone))
            row.show_milestone(milestone, here=milestone.stage is here)

    def say_live(self, stage: Stage, words: str) -> None:
        """What is being found there, while a run is on."""
        self.rows[stage].say_live(words)

    def fit(self, density: Density) -> None:
        """Where it is narrow only the circles are left; what was found is told by each one's tooltip."""
        self.setFixedWidth(density.rail_px)

    def set_tokens(self, tokens: Tokens) -> None:
        self.record.set_tokens(tokens)
        for row in self.rows.values():
            row.set_tokens(tokens)


def _why_not(way: Way, milestone: Milestone) -> str:
    """Why its page can't be looked at; "" where it can."""
    if way.may_go_to(milestone.stage):
        return ""
    if milestone.standing is Standing.SKIPPED:
        return sayings.sentence(milestone.found)
    return texts.COMES_AFTER.format(stage=texts.STAGE_NAMES[way.next()])


class StageRow(QAbstractButton):
    """One stage: done ✓, here filled, to come hollow."""

    def __init__(self, stage: Stage, number: int, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tokens = tokens
        self._number = number
        self._milestone = Milestone(stage=stage, standing=Standing.TO_COME)
        self._here = False
        self._live = ""
        self._density = ROOMY
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
        self._hint()
        self.update()

    def _hint(self) -> None:
        """Where the name has no room it is told here as well."""
        found = self._milestone.found
        told = (self.text(), found) if self._density.narrow else (found,)
        if why := why_grey(self):
            told = *told[:-1], why
        self.setToolTip(plain_hint(": ".join(part for part in told if part)))

    def fit(self, density: Density) -> None:
        self._density = density
        self._hint()
        self.updateGeometry()

    def say_live(self, words: str) -> None:
        if words != self._live:
            self._live = words
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(self._density.rail_px, self._density.rail_row_px)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._draw_line(painter)
        self._draw_circle(painter)
        if not self._density.narrow:
            self._draw_words(painter)
        if self.hasFocus():
            draw_focus(painter, QRectF(self.rect()).adjusted(0, 0, 0, -4), self._tokens)
        painter.end()

    def _draw_line(self, painter: QPainter) -> None:
        if self._milestone.stage is Stage.CLOSE:
            return
        painter.setPen(QPen(QColor(self._tokens.line), 2))
        top = self._circle().top()
        middle = int(self._circle().center().x())
        painter.drawLine(middle, int(top) + CIRCLE_PX + 2, middle, self.height())
        if top > 4:
            painter.drawLine(middle, 0, middle, int(top) - 4)

    def _circle(self) -> QRectF:
        side = CIRCLE_PX - 2
        left, top = ((self.width() - side) / 2, (self.height() - side) / 2) if self._density.narrow else (3, 4)
        return QRectF(left, top, side, side)

    def _draw_circle(self, painter: QPainter) -> None:
        done = self._milestone.standing is Standing.DONE
        box = self._circle()
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
        box = QRectF(TEXT_LEFT, 27, self.width() - TEXT_LEFT - 4, self.height() - 29)
        painter.drawText(box, Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignTop, self._shortened(painter, box))

    def _shortened(self, painter: QPainter, box: QRectF) -> str:
        """At most what two lines hold; the whole is in the tooltip."""
        words = self._live or self._milestone.found
        metrics = painter.fontMetrics()
        room = int(box.width() * 1.8)
        return metrics.elidedText(words, Qt.TextElideMode.ElideRight, room)
