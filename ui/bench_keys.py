"""Keys for hands that are at the shaft: one that is held while current may flow, one that says "it moved".

A foot switch that types the same key does as well. The keys are taken by a filter on the whole application. A text
field keeps them for itself, and Space is for whatever was reached with the keyboard: whoever means an answer must not
put current on the motor. To let go counts always, whatever has the focus by then.
"""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QLineEdit,
    QPlainTextEdit,
    QTextEdit,
)

HOLD_KEY, MOVED_KEY = Qt.Key.Key_Space, Qt.Key.Key_M
HOLD_BUTTON = "free_hold"
SPACES = frozenset({0x20, 0xA0, 0x2009, 0x202F})
"""What the space bar is called with Shift or AltGr, in layouts that have them. Source: Unicode's names of spaces."""
_WALKED = frozenset(
    {Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason, Qt.FocusReason.ShortcutFocusReason}
)
_BACK_AGAIN = frozenset(
    {Qt.FocusReason.ActiveWindowFocusReason, Qt.FocusReason.PopupFocusReason, Qt.FocusReason.MenuBarFocusReason}
)
"""The focus is where it was before."""
_LOST = frozenset({QEvent.Type.ApplicationDeactivate, QEvent.Type.WindowDeactivate, QEvent.Type.Close})


class BenchKeys(QObject):
    """Install with `QApplication.installEventFilter`. `held` tells each change, `moved` a press."""

    held = Signal(bool)
    moved = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.listening = False
        """A run is on: "it moved" counts."""
        self.armed = False
        """A run with the hand on the shaft is on: the key may be held."""
        self.down = False
        self.in_sight: Callable[[], bool] = lambda: True
        """Whether the page is in front on which the key is told of."""
        self._scan = 0
        self._walked = False
        """What has the focus was reached with the keyboard, and not by a click on the way to the shaft."""

    def heed(self, *, listening: bool, armed: bool) -> None:
        self.listening, self.armed = listening, armed
        if not armed:
            self.hold(False)

    def hold(self, down: bool) -> None:
        """From the key, or from the button on the screen; only while armed and in sight."""
        down = down and self.armed and self.in_sight()
        if down != self.down:
            self.down = down
            self.held.emit(down)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in _LOST:
            self.hold(False)
        elif event.type() is QEvent.Type.MouseButtonPress:
            self._walked = False
        elif isinstance(event, QFocusEvent) and event.gotFocus():
            if event.reason() not in _BACK_AGAIN:
                self._walked = event.reason() in _WALKED
            if typing():
                self.hold(False)
        elif isinstance(event, QKeyEvent) and self.listening:
            if self.down and self._lets_go(event):
                self.hold(False)
                return True
            if not typing():
                return self._key(event)
        return False

    def _lets_go(self, event: QKeyEvent) -> bool:
        """Whether the key that is held comes up: it may be called otherwise than when it went down."""
        if event.type() is not QEvent.Type.KeyRelease or event.isAutoRepeat():
            return False
        return int(event.key()) in SPACES or bool(self._scan and event.nativeScanCode() == self._scan)

    def _for_another(self) -> bool:
        focus = QApplication.focusWidget()
        return self._walked and focus is not None and focus.objectName() != HOLD_BUTTON

    def _key(self, event: QKeyEvent) -> bool:
        """Whether it was one of ours, and so nobody else's."""
        if event.key() == HOLD_KEY and self.armed:
            if not self.down and (self._for_another() or not self.in_sight()):
                return False
            if event.type() is not QEvent.Type.KeyRelease and not event.isAutoRepeat():
                self._scan = event.nativeScanCode()
                self.hold(True)
            return True
        if event.key() == MOVED_KEY and not event.modifiers():
            if event.type() is QEvent.Type.KeyPress and not event.isAutoRepeat():
                self.moved.emit()
            return event.type() is not QEvent.Type.ShortcutOverride
        return False


def typing() -> bool:
    """Whether what is typed belongs to a text field."""
    focus = QApplication.focusWidget()
    if isinstance(focus, QLineEdit | QPlainTextEdit | QTextEdit | QAbstractSpinBox):
        return not focus.isReadOnly()
    return isinstance(focus, QComboBox) and focus.isEditable()
