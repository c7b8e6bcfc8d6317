"""What a chart says of itself below the picture: that it is looked at closer, what the cursors read, what was copied.

It is there only while there is something to say, so that the picture keeps its room.
"""

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from ui import texts, theme
from ui.pieces import Elided, set_look

BRIEFLY_MS = 6000
BAR_PX, BUTTON_PX = 30, 26


def small_button(text: str, name: str, accessible: str = "") -> QPushButton:
    """For charts: pressed with a mouse, or not at all, since every one of them has a key."""
    made = QPushButton(text)
    made.setObjectName(name)
    made.setAccessibleName(accessible or text)
    made.setFont(theme.font(theme.SECOND_PX))
    made.setFixedHeight(BUTTON_PX)
    made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    made.setCursor(Qt.CursorShape.PointingHandCursor)
    set_look(made, "chart")
    return made


class ChartBar(QWidget):
    """`back` is pressed to see the whole again."""

    back = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFixedHeight(BAR_PX)
        self.words = Elided("", "second", px=theme.SECOND_PX)
        self.words.setObjectName("chart_words")
        self.button = small_button("", "chart_back", accessible=texts.CHART_BACK)
        self.button.clicked.connect(self.back)
        row = QHBoxLayout(self)
        row.setContentsMargins(10, 0, 6, 4)
        row.setSpacing(8)
        row.addWidget(self.words, 1)
        row.addWidget(self.button)
        self._lasting = self._brief = ""
        self._ends = QTimer(self)
        self._ends.setSingleShot(True)
        self._ends.setInterval(BRIEFLY_MS)
        self._ends.timeout.connect(lambda: self._say_briefly(""))
        self.hide()

    def show_state(self, words: str, *, back: str = "", look: bool = False) -> None:
        """What holds for now, "" for nothing; `back`: what the way back is called; `look`: it wants attention."""
        self._lasting = words
        self.button.setVisible(bool(back))
        if back and self.button.text() != back:
            self.button.setText(back)
            self.button.setAccessibleName(back)
        set_look(self.words, "look" if look else "second", name="tone")
        self._show()

    def say_briefly(self, words: str) -> None:
        """Instead of what holds, for a few seconds."""
        self._say_briefly(words)
        self._ends.start()

    def _say_briefly(self, words: str) -> None:
        self._brief = words
        self._show()

    def _show(self) -> None:
        words = self._brief or self._lasting
        self.setVisible(bool(words) or not self.button.isHidden())
        self.words.say(words)
        self.words.setAccessibleName(words)
