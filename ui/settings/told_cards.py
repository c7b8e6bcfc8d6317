"""What is only told: the owner's ceilings, what a bundle for a helper holds, and the licences."""

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPlainTextEdit, QVBoxLayout

from benchlog.settings import Settings
from ui import sayings, texts, theme
from ui.pieces import Elided, button, label
from ui.settings.framing import framed


def _told(part: QFrame, title: str, why: str) -> QVBoxLayout:
    column = framed(part, QVBoxLayout())
    column.setSpacing(6)
    column.addWidget(label(title, bold=True, wrap=True))
    column.addWidget(label(why, "second", px=theme.SECOND_PX, wrap=True))
    return column


class LimitsCard(QFrame):
    """Read only: the owner's file is written by the owner, in an editor."""

    copied = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        column = _told(self, texts.CARD_LIMITS, texts.LIMITS_WHY)
        self.words = label("", wrap=True)
        self.words.setObjectName("settings_limits")
        column.addWidget(self.words)
        self.path = Elided("", "second", px=theme.SECOND_PX)
        self.path.setObjectName("settings_limits_path")
        self._path = Path()
        copy = button(
            texts.COPY_PATH,
            "settings_limits_copy",
            accessible=texts.COPY_PATH_NAME.format(name=texts.PLACE_NAMES["owner"]),
        )
        copy.setMinimumHeight(theme.TOUCH_PX - 8)
        copy.setFont(theme.font(theme.SECOND_PX))
        copy.clicked.connect(lambda: self.copied.emit(self._path))
        row = QHBoxLayout()
        row.addWidget(self.path, 1)
        row.addWidget(copy)
        column.addLayout(row)

    def show_limits(self, settings: Settings, path: Path) -> None:
        usual, unlocked = sayings.limits_text(settings.ceilings), sayings.limits_text(settings.unlocked)
        said = [texts.LIMITS_USUAL.format(limits=usual) if usual else texts.LIMITS_NONE]
        said.append(texts.LIMITS_UNLOCKED.format(limits=unlocked) if unlocked else texts.LIMITS_NO_UNLOCK)
        self._show(" ".join(said), path)

    def show_trouble(self, what: str, path: Path) -> None:
        self._show(texts.LIMITS_WRONG.format(what=what), path)

    def _show(self, words: str, path: Path) -> None:
        self._path = path
        self.words.setText(words)
        self.path.say(str(path) if path.exists() else f"{path} · {texts.PLACE_NOT_THERE}")


class BundleCard(QFrame):
    """`wanted` when it is to be made."""

    wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        column = _told(self, texts.CARD_BUNDLE, texts.BUNDLE_WHY)
        self.words = label("", px=theme.SECOND_PX, wrap=True)
        self.words.setObjectName("settings_bundle_words")
        self.make = button(texts.BUNDLE_MAKE, "settings_bundle")
        self.make.clicked.connect(self.wanted)
        row = QHBoxLayout()
        row.addWidget(self.words, 1)
        row.addWidget(self.make)
        column.addLayout(row)


class LicencesCard(QFrame):
    """Read and copied from; long, so it scrolls in itself."""

    def __init__(self) -> None:
        super().__init__()
        column = _told(self, texts.CARD_LICENCES, texts.LICENCES_WHY)
        self.list = QPlainTextEdit()
        self.list.setObjectName("settings_licences")
        self.list.setAccessibleName(texts.LICENCES_NAME)
        self.list.setReadOnly(True)
        self.list.setTabChangesFocus(True)
        self.list.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self.list.setFont(theme.font(theme.SECOND_PX))
        self.list.setFixedHeight(220)
        column.addWidget(self.list)
