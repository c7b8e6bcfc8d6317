"""The way to the record and costs of a job: below its stages, in their look."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy

from ui import texts, theme
from ui.density import ROOMY, Density
from ui.pieces import grey, plain_hint, why_grey
from ui.shapes import draw_focus
from ui.theme import Tokens

LESS_PX, SIGN_PX, TEXT_LEFT = 12, 24, 34


class RecordRow(QAbstractButton):
    """Filled while the page is shown; `say` is its second line."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens, self._said, self._here, self._density = tokens, "", False, ROOMY
        self.setObjectName("rail_record")
        self.setText(texts.RECORD)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        grey(self, texts.NEEDS_JOB)
        self.say("", here=False)

    def say(self, words: str, *, here: bool) -> None:
        self._said, self._here = words, here
        standing = texts.STANDING_HERE if here else ""
        self.setAccessibleName(". ".join(part for part in (texts.RECORD, standing, words) if part))
        self._hint()
        self.update()

    def _hint(self) -> None:
        said = why_grey(self) or self._said
        told = (texts.RECORD, said) if self._density.narrow else (said,)
        self.setToolTip(plain_hint(": ".join(part for part in told if part)))

    def fit(self, density: Density) -> None:
        self._density = density
        self._hint()
        self.updateGeometry()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def sizeHint(self) -> QSize:
        wide, high = self._density.rail_px, self._density.rail_row_px
        return QSize(wide, high if self._density.narrow else high - LESS_PX)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter, t = QPainter(self), self._tokens
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        strong = QColor((t.ink if self._here else t.second) if self.isEnabled() else t.third)
        side = SIGN_PX - 4
        left, top = ((self.width() - side) / 2, (self.height() - side) / 2) if self._density.narrow else (4, 5)
        box = QRectF(left, top, side, side)
        painter.setPen(QPen(strong, 2))
        painter.setBrush(strong if self._here else QColor(t.ground))
        painter.drawRoundedRect(box, 4, 4)
        painter.setPen(QPen(QColor(t.ground) if self._here else strong, 1.5))
        for row in (6, 10, 14):
            painter.drawLine(int(box.left()) + 5, int(box.top()) + row, int(box.right()) - 5, int(box.top()) + row)
        if not self._density.narrow:
            self._draw_words(painter)
        if self.hasFocus():
            draw_focus(painter, QRectF(self.rect()), t)
        painter.end()

    def _draw_words(self, painter: QPainter) -> None:
        t = self._tokens
        painter.setFont(theme.semibold())
        painter.setPen(QColor(t.ink if self.isEnabled() else t.third))
        room = self.width() - TEXT_LEFT
        painter.drawText(QRectF(TEXT_LEFT, 4, room, 22), Qt.AlignmentFlag.AlignVCenter, self.text())
        painter.setFont(theme.font(theme.SECOND_PX))
        painter.setPen(QColor(t.second))
        words = painter.fontMetrics().elidedText(self._said, Qt.TextElideMode.ElideRight, int((room - 4) * 1.8))
        painter.drawText(QRectF(TEXT_LEFT, 27, room - 4, self.height() - 29), Qt.TextFlag.TextWordWrap, words)
