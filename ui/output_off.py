"""The one control that is always there: the button and the keys that switch the output off.

The keys are taken by a filter on the whole application, because a shortcut of Qt's does not fire while a modal dialog,
a menu or a combo's popup is open. One press can come through the filter several times; switching off is idempotent.
"""

from PySide6.QtCore import QEvent, QObject, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from ui import texts, theme
from ui.theme import Tokens

OFF_KEYS = frozenset({Qt.Key.Key_Escape, Qt.Key.Key_Pause})


class OutputOffKeys(QObject):
    """Install with `QApplication.installEventFilter`. Sees the press and lets it go on to whoever else wants it."""

    pressed = Signal()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if (
            event.type() in (QEvent.Type.KeyPress, QEvent.Type.ShortcutOverride)
            and isinstance(event, QKeyEvent)
            and event.key() in OFF_KEYS
        ):
            self.pressed.emit()
        return False


class OutputOffButton(QAbstractButton):
    """The heaviest thing on the screen. Acts when pressed, not when let go; can't be disabled."""

    def __init__(self, tokens: Tokens, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tokens = tokens
        self.setObjectName("output_off")
        self.setText(texts.OUTPUT_OFF)
        self.setAccessibleName(texts.OUTPUT_OFF_ACCESSIBLE)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(256, 82)

    def minimumSizeHint(self) -> QSize:
        return QSize(220, 82)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.EnabledChange and not self.isEnabled():
            self.setEnabled(True)

    def paintEvent(self, event: QPaintEvent) -> None:
        ink, ground = QColor(self._tokens.ink), QColor(self._tokens.ground)
        if self.isDown():
            ink = QColor(self._tokens.red)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(ink)
        box = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        painter.drawRoundedRect(box, 8, 8)
        if self.hasFocus():
            painter.setPen(QPen(ground, 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box.adjusted(4, 4, -4, -4), 5, 5)
        painter.fillRect(QRectF(box.left() + 18, box.center().y() - 13, 26, 26), ground)
        painter.setPen(ground)
        painter.setFont(theme.semibold(theme.SENTENCE_PX))
        painter.drawText(
            box.adjusted(58, 0, -60, 0), Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, self.text()
        )
        key = QRectF(box.right() - 62, box.center().y() - 15, 46, 30)
        painter.setPen(QPen(ground, 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(key, 5, 5)
        painter.setFont(theme.semibold())
        painter.drawText(key, Qt.AlignmentFlag.AlignCenter, texts.OUTPUT_OFF_KEY)
        painter.end()
