"""The way to the record and costs of a job: below its stages, in their look."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy

from ui import texts, theme
from ui.pieces import plain_hint
from ui.theme import Tokens

ROW_PX, SIGN_PX, TEXT_LEFT = 66, 24, 34


class RecordRow(QAbstractButton):
    """Filled while the page is shown; `say` is its second line."""

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens, self._said, self._here = tokens, "", False
        self.setObjectName("rail_record")
        self.setText(texts.RECORD)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setEnabled(False)
        self.say("", here=False)

    def say(self, words: str, *, here: bool) -> None:
        self._said, self._here = words, here
        standing = texts.STANDING_HERE if here else ""
        self.setAccessibleName(". ".join(part for part in (texts.RECORD, standing, words) if part))
        self.setToolTip(plain_hint(words))
        self.update()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(192, ROW_PX)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter, t = QPainter(self), self._tokens
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        strong = QColor((t.ink if self._here else t.second) if self.isEnabled() else t.third)
        box = QRectF(4, 5, SIGN_PX - 4, SIGN_PX - 4)
        painter.setPen(QPen(strong, 2))
        painter.setBrush(strong if self._here else QColor(t.ground))
        painter.drawRoundedRect(box, 4, 4)
        painter.setPen(QPen(QColor(t.ground) if self._here else strong, 1.5))
        for row in (6, 10, 14):
            painter.drawLine(int(box.left()) + 5, int(box.top()) + row, int(box.right()) - 5, int(box.top()) + row)
        painter.setFont(theme.semibold())
        painter.setPen(QColor(t.ink if self.isEnabled() else t.third))
        room = self.width() - TEXT_LEFT
        painter.drawText(QRectF(TEXT_LEFT, 4, room, 22), Qt.AlignmentFlag.AlignVCenter, self.text())
        painter.setFont(theme.font(theme.SECOND_PX))
        painter.setPen(QColor(t.second))
        words = painter.fontMetrics().elidedText(self._said, Qt.TextElideMode.ElideRight, int((room - 4) * 1.8))
        painter.drawText(QRectF(TEXT_LEFT, 27, room - 4, ROW_PX - 29), Qt.TextFlag.TextWordWrap, words)
        if self.hasFocus():
            painter.setPen(QPen(QColor(t.second), 1, Qt.PenStyle.DotLine))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -2.5), 4, 4)
        painter.end()
