"""Where the ledger, its copies and everything else lie on this computer."""

from collections.abc import Mapping
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QGridLayout, QPushButton

from ui import texts, theme
from ui.pieces import Elided, button, grey, label
from ui.settings.framing import framed


class PlacesCard(QFrame):
    """`copied` and `opened` carry a path: its folder is what is opened."""

    copied = Signal(object)
    opened = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._grid = framed(self, QGridLayout())
        self._grid.setHorizontalSpacing(12)
        self._grid.setVerticalSpacing(6)
        self._grid.setColumnStretch(1, 1)
        self._grid.addWidget(label(texts.CARD_PLACES, bold=True, wrap=True), 0, 0, 1, 4)
        self._why = ""
        self._rows: dict[str, tuple[Elided, QPushButton]] = {}
        self._paths: dict[str, Path] = {}

    def show_places(self, places: Mapping[str, Path]) -> None:
        """By the names of texts.PLACE_NAMES."""
        self._paths = dict(places)
        for name in places:
            if name not in self._rows:
                self._rows[name] = self._row(name)
        self._follow()

    def _row(self, name: str) -> tuple[Elided, QPushButton]:
        row, word = len(self._rows) + 1, texts.PLACE_NAMES[name]
        said = Elided("", px=theme.SECOND_PX)
        said.setObjectName(f"place_{name}")
        copy = button(texts.COPY_PATH, f"place_copy_{name}", accessible=texts.COPY_PATH_NAME.format(name=word))
        folder = button(texts.OPEN_FOLDER, f"place_open_{name}", accessible=texts.OPEN_FOLDER_NAME.format(name=word))
        copy.clicked.connect(lambda: self.copied.emit(self._paths[name]))
        folder.clicked.connect(lambda: self.opened.emit(self._paths[name]))
        self._grid.addWidget(label(word, "second", px=theme.SECOND_PX, wrap=True), row, 0)
        self._grid.addWidget(said, row, 1)
        for place, one in ((2, copy), (3, folder)):
            one.setMinimumHeight(theme.TOUCH_PX - 8)
            one.setFont(theme.font(theme.SECOND_PX))
            self._grid.addWidget(one, row, place)
        return said, folder

    def offer(self, why: str) -> None:
        """Why no folder is opened now; "" where one may be."""
        self._why = why
        self._follow()

    def _follow(self) -> None:
        for name, (said, folder) in self._rows.items():
            path = self._paths[name]
            said.say(str(path) if path.exists() else f"{path} · {texts.PLACE_NOT_THERE}")
            grey(folder, self._why or ("" if folder_of(path).is_dir() else texts.FOLDER_NOT_THERE))


def folder_of(path: Path) -> Path:
    """The folder itself, or the one that a file is in."""
    return path if path.is_dir() or not path.suffix else path.parent
