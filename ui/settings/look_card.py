"""How the window looks and sounds: choices that show what holds and say what is wanted."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QFrame, QGridLayout, QPushButton, QWidget

from ui import texts, theme
from ui.pieces import Chooser, Tick, grey, label
from ui.pieces import button as made_button
from ui.preferences import COLOURS, SIZES, Preferences
from ui.settings.framing import framed
from ui.wrapping import WrapRow

LANGUAGES = ("", "en", "de")


class LookCard(QFrame):
    """`wanted` carries the name of a preference and its new value; what is shown changes with show_kept only."""

    wanted = Signal(str, object)

    def __init__(self) -> None:
        super().__init__()
        self._grid = framed(self, QGridLayout())
        self._grid.setHorizontalSpacing(16)
        self._grid.setVerticalSpacing(8)
        self._grid.setColumnStretch(1, 1)
        self._grid.addWidget(label(texts.CARD_LOOK, bold=True), 0, 0, 1, 2)
        self.colours = self._choices(
            1, texts.FIELD_COLOURS, "colours", [(one, texts.COLOUR_NAMES[one], texts.COLOUR_CHOICE) for one in COLOURS]
        )
        self.contrast = Tick(texts.FIELD_CONTRAST, "settings_contrast")
        self.contrast.clicked.connect(lambda on: self.wanted.emit("contrast", on))
        self._grid.addWidget(self.contrast, 2, 1)
        percents = [(size, texts.SIZE_PERCENT.format(percent=round(100 * size)), texts.SIZE_CHOICE) for size in SIZES]
        self.sizes = self._choices(3, texts.FIELD_SIZE, "size", percents)
        self.size_note = self._note(4)
        self.language = Chooser("settings_language", texts.FIELD_LANGUAGE)
        for code in LANGUAGES:
            self.language.addItem(texts.LANGUAGE_NAMES[code], code)
        self.language.activated.connect(lambda _: self.wanted.emit("language", str(self.language.currentData())))
        self.language.setMaximumWidth(260)
        named = label(texts.FIELD_LANGUAGE, "second", px=theme.SECOND_PX)
        named.setBuddy(self.language)
        self._grid.addWidget(named, 5, 0)
        self._grid.addWidget(self.language, 5, 1)
        self.language_note = self._note(6)
        self.beep = Tick(texts.FIELD_BEEP, "settings_beep")
        self.beep.clicked.connect(lambda on: self.wanted.emit("beep", on))
        self._grid.addWidget(label(texts.CARD_SOUND, "second", px=theme.SECOND_PX), 7, 0)
        self._grid.addWidget(self.beep, 7, 1)
        self._began: Preferences | None = None

    def _note(self, row: int) -> QWidget:
        """That it has to wait: shown once something was chosen that does."""
        made = label(texts.NEXT_START, "look", px=theme.SECOND_PX)
        made.hide()
        self._grid.addWidget(made, row, 1)
        return made

    def _choices(
        self, row: int, title: str, name: str, choices: Sequence[tuple[object, str, str]]
    ) -> list[QPushButton]:
        named = label(title, "second", px=theme.SECOND_PX)
        self._grid.addWidget(named, row, 0)
        group, line, made = QButtonGroup(self), WrapRow(spacing=6), []
        for value, words, accessible in choices:
            one = made_button(words, f"settings_{name}_{value}", "choice", accessible=accessible.format(name=words))
            one.setCheckable(True)
            one.setMinimumHeight(theme.TOUCH_PX - 4)
            one.setProperty("value", value)
            one.clicked.connect(lambda _=False, chosen=value: self.wanted.emit(name, chosen))
            group.addButton(one)
            line.add(one)
            made.append(one)
        self._grid.addLayout(line, row, 1)
        return made

    def offer(self, why: str) -> None:
        """Why the window is not dressed anew now; "" where it may be."""
        for one in (*self.colours, self.contrast):
            grey(one, why)

    def show_kept(self, kept: Preferences) -> None:
        """What holds now. The first time it is what the window began with."""
        self._began = self._began or kept
        for one in self.colours:
            one.setChecked(one.property("value") == kept.colours)
        for one in self.sizes:
            one.setChecked(one.property("value") == kept.size)
        self.contrast.setChecked(kept.contrast)
        self.beep.setChecked(kept.beep)
        self.language.setCurrentIndex(max(0, self.language.findData(kept.language)))
        self.size_note.setVisible(kept.size != self._began.size)
        self.language_note.setVisible(kept.language != self._began.language)
