"""What a key asks of a chart that has the focus, the same for every chart."""

from enum import Enum, auto

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QKeySequence

CLOSER = 1.2
"""By so much one turn of the wheel or one key looks closer."""
ALONG = 1 / 20
"""Of what is in view: by so much an arrow goes along."""


class Asked(Enum):
    """C, X, Left and Right, + and −, Home, Ctrl+C."""

    CURSORS = auto()
    OTHER_CURSOR = auto()
    LEFT = auto()
    RIGHT = auto()
    CLOSER = auto()
    WIDER = auto()
    WHOLE = auto()
    COPY = auto()


_PLAIN = {
    Qt.Key.Key_C: Asked.CURSORS,
    Qt.Key.Key_X: Asked.OTHER_CURSOR,
    Qt.Key.Key_Left: Asked.LEFT,
    Qt.Key.Key_Right: Asked.RIGHT,
    Qt.Key.Key_Plus: Asked.CLOSER,
    Qt.Key.Key_Equal: Asked.CLOSER,
    Qt.Key.Key_Minus: Asked.WIDER,
    Qt.Key.Key_Home: Asked.WHOLE,
}
_OTHERS = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier


def asked(event: QKeyEvent, *, characters: bool = True) -> Asked | None:
    """None for what is no chart's business: keys with Ctrl or Alt are the window's, but for Ctrl+C.

    Without `characters` keys that write one are left to whoever is typed or scanned to.
    """
    if event.matches(QKeySequence.StandardKey.Copy):
        return Asked.COPY
    if not characters and event.text().isprintable() and event.text():
        return None
    return None if event.modifiers() & _OTHERS else _PLAIN.get(Qt.Key(event.key()))


def steps(event: QKeyEvent) -> int:
    """Pixels that an arrow moves a cursor by; with Shift more."""
    return 10 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
