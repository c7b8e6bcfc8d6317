"""Which keys can be taught for start, next and off, and the teaching itself.

A foot switch or a large key beside the bench types like a keyboard. What is typed into fields, or has a meaning
everywhere in the window, is refused: one press must not be two things.
"""

from collections.abc import Callable
from enum import StrEnum

from PySide6.QtCore import QEvent, QKeyCombination, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence

from ui import shortcuts, texts
from ui.preferences import Preferences, Preferring


class Role(StrEnum):
    """The values are the names of the fields in `Preferences`."""

    OFF = "off_key"
    START = "start_key"
    NEXT = "next_key"


_KEYPAD = Qt.KeyboardModifier.KeypadModifier
_COMMAND = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier
_ALONE = frozenset(
    {
        Qt.Key.Key_Shift,
        Qt.Key.Key_Control,
        Qt.Key.Key_Alt,
        Qt.Key.Key_AltGr,
        Qt.Key.Key_Meta,
        Qt.Key.Key_Super_L,
        Qt.Key.Key_Super_R,
        Qt.Key.Key_Hyper_L,
        Qt.Key.Key_Hyper_R,
    }
)
"""Only held with another: the other one is waited for."""
_LOCKS = frozenset({Qt.Key.Key_CapsLock, Qt.Key.Key_NumLock, Qt.Key.Key_ScrollLock, Qt.Key.Key_Mode_switch})
_TAKEN = frozenset(
    {
        Qt.Key.Key_Escape,
        Qt.Key.Key_Pause,
        Qt.Key.Key_Space,
        Qt.Key.Key_Return,
        Qt.Key.Key_Enter,
        Qt.Key.Key_Tab,
        Qt.Key.Key_Backtab,
    }
)
"""Of the window itself, with any other key held or none."""
_MOVES = frozenset(
    {
        Qt.Key.Key_Left,
        Qt.Key.Key_Right,
        Qt.Key.Key_Up,
        Qt.Key.Key_Down,
        Qt.Key.Key_Home,
        Qt.Key.Key_End,
        Qt.Key.Key_PageUp,
        Qt.Key.Key_PageDown,
        Qt.Key.Key_Backspace,
        Qt.Key.Key_Delete,
        Qt.Key.Key_Insert,
    }
)
_EDITS = frozenset({Qt.Key.Key_A, Qt.Key.Key_C, Qt.Key.Key_V, Qt.Key.Key_X, Qt.Key.Key_Y, Qt.Key.Key_Z})
_NOT_KEYS = frozenset({0, int(Qt.Key.Key_unknown)})
_FIRST_NAMED = 0x01000000
"""Qt's codes from here on stand for keys that type nothing. Source: Qt's list of keys."""


def refusal(pressed: QKeyCombination, role: Role, now: Preferences) -> str:
    """Why this key can't have this role; "" where it can."""
    key, held = pressed.key(), pressed.keyboardModifiers()
    if int(key) in _NOT_KEYS or key in _ALONE or _read(written(pressed)) != pressed:
        return texts.KEY_WITHOUT_NAME
    if key in _LOCKS:
        return texts.KEY_LOCKS
    commands = bool(held & _COMMAND)
    if key in _TAKEN or (key == Qt.Key.Key_M and not commands):
        return texts.KEY_OF_WINDOW.format(key=shown(written(pressed)))
    if written(pressed) in {keys for one in shortcuts.TABLE for keys in one.keys}:
        return texts.KEY_OF_WINDOW.format(key=shown(written(pressed)))
    if key == Qt.Key.Key_F4 and held & Qt.KeyboardModifier.AltModifier:
        return texts.KEY_CLOSES
    keypad = bool(held & _KEYPAD)
    if keypad and int(key) < _FIRST_NAMED and role is Role.OFF:
        return texts.KEY_NUM_LOCK
    types = key in _MOVES or (int(key) < _FIRST_NAMED and not keypad)
    if (types and not commands) or (key in _EDITS | _MOVES and held & Qt.KeyboardModifier.ControlModifier):
        return texts.KEY_TYPES
    for other in Role:
        if other is not role and written(pressed) == getattr(now, other.value):
            return texts.KEY_TWICE.format(key=shown(written(pressed)), role=role_text(other))
    return ""


def role_text(role: Role) -> str:
    return {Role.OFF: texts.ROLE_OFF, Role.START: texts.ROLE_START, Role.NEXT: texts.ROLE_NEXT}[role]


def written(pressed: QKeyCombination) -> str:
    """As it is kept."""
    return QKeySequence(pressed).toString(QKeySequence.SequenceFormat.PortableText)


def shown(kept: str) -> str:
    """As this system calls it."""
    return QKeySequence(kept, QKeySequence.SequenceFormat.PortableText).toString(QKeySequence.SequenceFormat.NativeText)


def taught(role: Role, now: Preferences) -> QKeyCombination | None:
    """The key of a role; None where there is none, or where what is kept could not have been taught."""
    pressed = _read(getattr(now, role.value))
    return None if pressed is None or refusal(pressed, role, now) else pressed


def _read(kept: str) -> QKeyCombination | None:
    made = QKeySequence(kept, QKeySequence.SequenceFormat.PortableText)
    return made[0] if made.count() == 1 else None  # type: ignore[index]


class Teaching(QObject):
    """Takes the next key that is pressed for a role, and keeps it. Install with `QApplication.installEventFilter`,
    before the keys of "Output off": these are to see every press first.

    `heard` role and key, as this system calls it. `refused` role and why; then it goes on listening. `ended` role: by
    Esc, by a key that was heard, or because a run begins. `changed` role: also where a key was forgotten.
    """

    heard = Signal(str, str)
    refused = Signal(str, str)
    ended = Signal(str)
    changed = Signal(str)

    def __init__(
        self, preferring: Preferring, parent: QObject | None = None, *, in_the_way: Callable[[], str] = lambda: ""
    ) -> None:
        super().__init__(parent)
        self._preferring, self._in_the_way = preferring, in_the_way
        self.role: Role | None = None

    def begin(self, role: str) -> bool:
        """Listens for this role's key from now on. Refused while an output may be on."""
        wanted = Role(role)
        if why := self._in_the_way():
            self.refused.emit(wanted.value, why)
            return False
        self.end()
        self.role = wanted
        return True

    def end(self) -> None:
        role, self.role = self.role, None
        if role is not None:
            self.ended.emit(role.value)

    def forget(self, role: str) -> None:
        self._keep(Role(role), "")

    def text(self, role: str) -> str:
        """The role's key as this system calls it; "" for none."""
        pressed = taught(Role(role), self._preferring.now)
        return "" if pressed is None else shown(written(pressed))

    def _keep(self, role: Role, key: str) -> None:
        self._preferring.change(**{role.value: key})
        self.changed.emit(role.value)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if self.role is None or not isinstance(event, QKeyEvent):
            return False
        if event.key() == Qt.Key.Key_Escape:
            if event.type() is QEvent.Type.KeyPress:
                self.end()
            return False
        event.accept()
        if event.type() is QEvent.Type.KeyPress and not event.isAutoRepeat() and event.key() not in _ALONE:
            self._hear(event.keyCombination())
        return True

    def _hear(self, pressed: QKeyCombination) -> None:
        role = self.role
        assert role is not None
        if why := refusal(pressed, role, self._preferring.now):
            self.refused.emit(role.value, why)
            return
        self._keep(role, written(pressed))
        self.heard.emit(role.value, shown(written(pressed)))
        self.end()
