"""The loudest thing the window can say: the output may be on, and nothing here can switch it off."""

from PySide6.QtCore import QEvent, QObject, QRect, Qt
from PySide6.QtGui import QHideEvent, QRegion, QShowEvent
from PySide6.QtWidgets import QApplication, QFrame, QHBoxLayout, QVBoxLayout, QWidget

from ui import texts, theme
from ui.alarm_looks import word_of
from ui.alarms import Level
from ui.pieces import label
from ui.shapes import Sign
from ui.theme import Tokens

GAP_PX = 12
_ROOMY = 440
"""From this height on with large type."""


class RedCard(QFrame):
    """Stands over all of `ground` but `beside`, where "Output off" is, and above it the one button that ends this: what
    the card stands over (`under`) can't be used until then. It has the keyboard: a stray key must not end it."""

    def __init__(self, tokens: Tokens, ground: QWidget, beside: QWidget, under: tuple[QWidget, ...]) -> None:
        super().__init__(ground)
        self._beside, self._under = beside, under
        self.setObjectName("red_card")
        self.setProperty("look", "alarm")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(texts.RED_NAME)
        self.sign = Sign(tokens.red, side=84)
        self.level = label("", "alarm", bold=True)
        self.level.setObjectName("red_level")
        self.do = label(texts.RED_DO, "alarm", bold=True, wrap=True)
        self.do.setObjectName("red_do")
        self.why = label("", wrap=True)
        self.why.setObjectName("red_why")
        self.since = label("", wrap=True, bold=True)
        self.since.setObjectName("red_since")
        self.then = label(texts.RED_THEN, bold=True, wrap=True)
        self.then.setObjectName("red_then")
        self._row = QHBoxLayout(self)
        words = QVBoxLayout()
        words.setSpacing(GAP_PX)
        words.addStretch(2)
        for part in (self.level, self.do, self.why, self.since, self.then):
            words.addWidget(part)
        words.addStretch(3)
        self._row.addWidget(self.sign, 0, Qt.AlignmentFlag.AlignVCenter)
        self._row.addLayout(words, 1)
        self.set_tokens(tokens)
        ground.installEventFilter(self)
        beside.installEventFilter(self)
        self.hide()

    def show_alarm(self, why: str, at: str) -> None:
        self.level.setText(f"{word_of(Level.ACT_NOW)}   {at}")
        self.say(why)
        self.say_since("")
        self._stand()
        self.show()

    def say(self, why: str) -> None:
        """What happened, where more of it has become known."""
        self.why.setText(why)

    def say_since(self, words: str) -> None:
        self.since.setText(words)
        self.since.setVisible(bool(words))

    def set_tokens(self, tokens: Tokens) -> None:
        self.sign.show_sign("alarm", tokens.red)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.ShortcutOverride and self.isVisible():
            event.accept()  # the window's own shortcuts rest
            return True
        if event.type() in (QEvent.Type.Resize, QEvent.Type.Move, QEvent.Type.LayoutRequest):
            self._stand()
        return False

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        for part in self._under:
            part.setEnabled(False)
        application = QApplication.instance()
        if application is not None:
            application.installEventFilter(self)
        self.raise_()
        self.setFocus()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        application = QApplication.instance()
        if application is not None:
            application.removeEventFilter(self)
        if self.isHidden():  # not only minimized
            for part in self._under:
                part.setEnabled(True)

    def _stand(self) -> None:
        """Over all of the ground but the supply's side, with the words in the largest part of it."""
        ground = self.parentWidget()
        if ground is None:
            return
        whole = ground.rect()
        taken = QRect(self._beside.mapTo(ground, self._beside.rect().topLeft()), self._beside.size())
        free = (
            QRect(0, 0, taken.left(), whole.height()),
            QRect(0, 0, whole.width(), taken.top()),
            QRect(taken.right(), 0, whole.width() - taken.right(), whole.height()),
            QRect(0, taken.bottom(), whole.width(), whole.height() - taken.bottom()),
        )
        self.setGeometry(whole)
        self.setMask(QRegion(whole) - QRegion(taken.adjusted(-GAP_PX // 2, -GAP_PX // 2, GAP_PX // 2, GAP_PX // 2)))
        self._place(max(free, key=lambda one: max(one.width(), 0) * max(one.height(), 0)))

    def _place(self, room: QRect) -> None:
        roomy = room.height() >= _ROOMY and room.width() >= 2 * _ROOMY
        edge, whole = 56 if roomy else 16, self.rect()
        self._row.setContentsMargins(
            room.left() + edge,
            room.top() + 12,
            whole.width() - room.left() - room.width() + edge,
            whole.height() - room.top() - room.height() + 12,
        )
        self._row.setSpacing(40 if roomy else 16)
        self.sign.setVisible(roomy)
        for part, large, small in ((self.level, 30, 18), (self.do, 34, 20), (self.since, 19, 14), (self.then, 19, 14)):
            part.setFont(theme.semibold(large if roomy else small))
        self.why.setFont(theme.font(19 if roomy else 14))
