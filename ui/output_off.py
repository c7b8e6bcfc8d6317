"""The one control that is always there: the button and the keys that switch the output off.

The keys are taken by a filter on the whole application, because a shortcut of Qt's does not fire while a modal dialog,
a menu or a combo's popup is open. One press can come through the filter several times; switching off is idempotent.
"""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from ui import texts, theme
from ui.density import ROOMY, Density
from ui.preferences import Preferences
from ui.taught_keys import Role, taught
from ui.theme import Tokens

KEY_GAP_PX = 6.0
OFF_KEYS = frozenset({Qt.Key.Key_Escape, Qt.Key.Key_Pause})


class OutputOffKeys(QObject):
    """Install with `QApplication.installEventFilter`, as the last one: the last sees a press first. Lets it go on to
    whoever else wants it. `liked` may name one more key."""

    pressed = Signal()

    def __init__(self, parent: QObject | None = None, *, liked: Callable[[], Preferences] = Preferences) -> None:
        super().__init__(parent)
        self._liked = liked

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if (
            event.type() in (QEvent.Type.KeyPress, QEvent.Type.ShortcutOverride)
            and isinstance(event, QKeyEvent)
            and (event.key() in OFF_KEYS or self._taught(event))
        ):
            self.pressed.emit()
        return False

    def _taught(self, event: QKeyEvent) -> bool:
        """Other keys held as well take nothing away: whoever presses this one wants the output off."""
        wanted = taught(Role.OFF, self._liked())
        if wanted is None or wanted.key() != event.key():
            return False
        return event.modifiers() & wanted.keyboardModifiers() == wanted.keyboardModifiers()


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
        self._density, self._taught = ROOMY, ""

    def show_taught(self, key: str) -> None:
        """The key that was taught for it as well, as this system calls it; "" for none."""
        self._taught = key
        told = texts.OUTPUT_OFF_TAUGHT.format(key=key) if key else texts.OUTPUT_OFF_ACCESSIBLE
        self.setAccessibleName(told)
        self.setToolTip(told)
        self.update()

    def fit(self, density: Density) -> None:
        self._density = density
        self.updateGeometry()

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(self._density.panel_px, self._density.off_px)

    def minimumSizeHint(self) -> QSize:
        return QSize(self._density.panel_px, self._density.off_px)

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
        narrow, px = self._density.narrow, theme.SENTENCE_PX
        side, mark, wide = (10, 16, 38) if narrow else (18, 26, 46)
        painter.fillRect(QRectF(box.left() + side, box.center().y() - mark / 2, mark, mark), ground)
        key = QRectF(box.right() - side + 2 - wide, box.center().y() - 0.325 * wide, wide, 0.65 * wide)
        keys = [(key, texts.OUTPUT_OFF_KEY)]
        if self._taught and 2 * (key.height() + KEY_GAP_PX) <= box.height():
            apart = (key.height() + KEY_GAP_PX) / 2
            keys = [(key.translated(0, -apart), texts.OUTPUT_OFF_KEY), (key.translated(0, apart), self._taught)]
        words = QRectF(box.left() + 1.6 * side + mark, box.top(), 0, box.height())
        words.setRight(key.left() - 0.4 * side)
        painter.setPen(ground)
        painter.setFont(theme.semibold(px))
        while px > theme.SECOND_PX and painter.fontMetrics().horizontalAdvance(self.text()) > words.width():
            px -= 1
            painter.setFont(theme.semibold(px))
        painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, self.text())
        painter.setPen(QPen(ground, 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setFont(theme.semibold(theme.SECOND_PX if narrow else theme.BODY_PX))
        for place, name in keys:
            painter.drawRoundedRect(place, 5, 5)
            room = place.width() - KEY_GAP_PX
            shown = painter.fontMetrics().elidedText(name, Qt.TextElideMode.ElideRight, int(room))
            painter.drawText(place, Qt.AlignmentFlag.AlignCenter, shown)
        painter.end()
