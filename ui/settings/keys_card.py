"""Keys that are taught: which there are, and a press that teaches or forgets one."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QPushButton, QWidget

from ui import sayings, texts, theme
from ui.pieces import button, card, grey, label
from ui.preferences import Preferences
from ui.taught_keys import Role, role_text, shown, taught, written


class KeysCard(QWidget):
    """`teach` and `forget` carry the value of a Role."""

    teach = Signal(str)
    forget = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        around = QHBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        frame = card()
        around.addWidget(frame)
        grid = QGridLayout(frame)
        grid.setContentsMargins(20, 12, 20, 14)
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(6)
        grid.setColumnStretch(0, 1)
        grid.setColumnStretch(1, 3)
        grid.addWidget(label(texts.CARD_KEYS, bold=True), 0, 0)
        grid.addWidget(label(texts.KEYS_WHY, "second", px=theme.SECOND_PX, wrap=True), 1, 0, 1, 4)
        self.keys = {role: label("", wrap=True) for role in Role}
        self.teaches: dict[Role, QPushButton] = {}
        self.forgets: dict[Role, QPushButton] = {}
        self._kept, self._why, self._asked = Preferences(), "", ""
        self.teach.connect(self._note_asked)
        for row, role in enumerate(Role, start=2):
            word = role_text(role)
            word = word[:1].upper() + word[1:]
            grid.addWidget(label(word, "second", px=theme.SECOND_PX, wrap=True), row, 0)
            self.keys[role].setObjectName(f"settings_{role.value}")
            grid.addWidget(self.keys[role], row, 1)
            self.teaches[role] = button(
                texts.KEY_TEACH, f"settings_teach_{role.value}", accessible=texts.KEY_TEACH_NAME.format(role=word)
            )
            self.forgets[role] = button(
                texts.KEY_FORGET, f"settings_forget_{role.value}", accessible=texts.KEY_FORGET_NAME.format(role=word)
            )
            self.teaches[role].clicked.connect(lambda _=False, one=role: self.teach.emit(one.value))
            self.forgets[role].clicked.connect(lambda _=False, one=role: self.forget.emit(one.value))
            for place, one in ((2, self.teaches[role]), (3, self.forgets[role])):
                one.setMinimumHeight(theme.TOUCH_PX - 4)
                grid.addWidget(one, row, place)
        self.words = label("", "ask", px=theme.SECOND_PX, wrap=True)
        self.words.setObjectName("settings_keys_words")
        self.words.hide()
        grid.addWidget(self.words, 0, 1, 1, 3)  # in sight wherever the card is cut by the edge of the window

    def show_kept(self, kept: Preferences) -> None:
        self._kept = kept
        self._follow()

    def offer(self, why: str) -> None:
        """Why no key is taught now; "" where it may."""
        self._why = why
        self._follow()

    def _follow(self) -> None:
        for role in Role:
            pressed = taught(role, self._kept)
            self.keys[role].setText(texts.KEY_NONE if pressed is None else shown(written(pressed)))
            grey(self.teaches[role], self._why)
            grey(self.forgets[role], self._why or ("" if pressed is not None else texts.KEY_NONE_TO_FORGET))

    def _note_asked(self, role: str) -> None:
        word = role_text(Role(role))
        self._asked = word[:1].upper() + word[1:]

    def say(self, words: str) -> None:
        """Of the key that is being taught; "" for nothing."""
        self.words.setText(texts.KEY_SAID.format(role=self._asked, words=sayings.sentence(words)) if words else "")
        self.words.setVisible(bool(words))
