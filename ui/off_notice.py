"""What is known about the output being off, in words with a shape."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QPushButton

from ui import texts, theme
from ui.density import ROOMY, Density
from ui.off_state import OffState
from ui.pieces import label
from ui.shapes import Sign
from ui.theme import Tokens


class OffNotice(QFrame):
    """What is known about the output being off. In red with a shape where it is not confirmed, until acknowledged."""

    acknowledged = Signal()

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens = tokens
        self.setObjectName("off_notice")
        self._density = ROOMY
        row = self._row = QGridLayout(self)
        row.setContentsMargins(12, 8, 12, 8)
        row.setHorizontalSpacing(8)
        row.setColumnStretch(1, 1)
        self.sign = Sign(tokens.second, side=22)
        self.words = label("", "second", px=theme.SECOND_PX, wrap=True)
        self.words.setObjectName("off_words")
        self.seen = QPushButton(texts.OFF_ACKNOWLEDGE)
        self.seen.setObjectName("off_acknowledge")
        self.seen.setAccessibleName(texts.OFF_ACKNOWLEDGE)
        self.seen.setProperty("look", "alarm")
        self.seen.setFont(theme.semibold(theme.SECOND_PX))
        self.seen.setMinimumHeight(theme.TOUCH_PX)
        self.seen.clicked.connect(self.acknowledged)
        row.addWidget(self.sign, 0, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.words, 0, 1)
        row.addWidget(self.seen, 1, 0, 1, 2)
        self._state = OffState.IDLE
        self._on: bool | None = None
        self.show_state(OffState.IDLE, texts.OFF_IDLE)

    def show_state(self, state: OffState, words: str, on: bool | None = None) -> None:
        """`on`: what the last reading of a run says; None where there is none yet."""
        self._state, self._on = state, on
        alarm = state is OffState.NOT_CONFIRMED
        self.setProperty("look", "alarm" if alarm else "quiet")
        self.words.setProperty("tone", "alarm" if alarm else "second")
        self.words.setText(words)
        self.seen.setVisible(alarm)
        sign = {
            OffState.NOT_CONFIRMED: "alarm",
            OffState.CONFIRMED: "done",
            OffState.RUNNING: {None: "unknown", True: "on", False: "resting"}[on],
            OffState.COMMANDED: "creeping",
            OffState.IDLE: "resting",
        }[state]
        self.sign.show_sign(sign, self._tokens.red if alarm else self._tokens.second)
        for part in (self, self.words):
            part.style().unpolish(part)
            part.style().polish(part)
        # After polishing: that puts back the font a label had when it was polished first.
        px = theme.SECOND_PX + 1 if self._density.narrow else theme.BODY_PX + 1
        self.words.setFont(theme.semibold(px) if alarm else theme.font(theme.SECOND_PX))
        self.seen.setFont(theme.semibold(theme.SECOND_PX - 2 if self._density.narrow else theme.SECOND_PX))
        self._keep_words_whole()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._keep_words_whole()

    def _keep_words_whole(self) -> None:
        """A layout that is short of room takes it from a label that wraps."""
        edges = self._row.contentsMargins()
        width = self.width() - edges.left() - edges.right() - self.sign.sizeHint().width() - 10
        self.words.setMinimumHeight(0)  # it would be counted for what they need
        self.words.setMinimumHeight(self.words.heightForWidth(max(width, 40)))
        self.seen.setText(in_lines(self.seen.text(), self.seen.fontMetrics(), self.width() - 2 * edges.left() - 8))

    def fit(self, density: Density) -> None:
        self._density = density
        across, down = (8, 5) if density.narrow else (12, 8)
        self._row.setContentsMargins(across, down, across, down)
        self.show_state(self._state, self.words.text(), self._on)

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.show_state(self._state, self.words.text(), self._on)


def in_lines(text: str, metrics: QFontMetrics, width: int) -> str:
    """In two lines, broken nearest its middle, where one is too wide: a button does not wrap."""
    whole = text.replace("\n", " ")
    breaks = [place for place, character in enumerate(whole) if character == " "]
    if not breaks or metrics.horizontalAdvance(whole) <= width:
        return whole
    middle = min(breaks, key=lambda place: abs(place - len(whole) / 2))
    return f"{whole[:middle]}\n{whole[middle + 1 :]}"
