"""The window's own keys in one table, which the help shows. None begins a run; Esc and Pause are Output off, elsewhere.

A field that is typed into keeps its own keys (copy, paste, undo): it takes them before a shortcut is looked for.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from ui import texts


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """`name` as in texts.KEY_WORDS; `keys` as Qt writes them, any of them."""

    name: str
    keys: tuple[str, ...]


TABLE = (
    Key(name="bench", keys=("Ctrl+1",)),
    Key(name="curves", keys=("Ctrl+2",)),
    Key(name="history", keys=("Ctrl+3",)),
    Key(name="settings", keys=("Ctrl+,",)),
    Key(name="help", keys=("F1",)),
    Key(name="back", keys=("Alt+Left",)),
    Key(name="new_job", keys=("Ctrl+N",)),
    Key(name="find", keys=("Ctrl+F",)),
    Key(name="paper", keys=("Ctrl+P",)),
    Key(name="keep", keys=("Ctrl+S",)),
    Key(name="paste", keys=("Ctrl+V",)),
    Key(name="full", keys=("F11",)),
    Key(name="close", keys=("Ctrl+Q", "Ctrl+W")),
)


def put_on(window: QWidget, does: Mapping[str, Callable[[], object]]) -> dict[str, QShortcut]:
    """What each of the table does, by its name. Raises KeyError where one has nothing to do."""
    made = {}
    for key in TABLE:
        for written in key.keys:
            shortcut = QShortcut(QKeySequence(written), window)
            shortcut.setContext(Qt.ShortcutContext.WindowShortcut)
            shortcut.setAutoRepeat(False)
            shortcut.activated.connect(does[key.name])
            made[written] = shortcut
    return made


def told() -> list[tuple[str, str]]:
    """Every key of the window with what it does, for the help: these, and those of pages and charts."""
    native = QKeySequence.SequenceFormat.NativeText
    own = [
        (", ".join(QKeySequence(one).toString(native) for one in key.keys), texts.KEY_WORDS[key.name]) for key in TABLE
    ]
    off, *others = texts.OTHER_KEYS
    return [off, *own, *others]
